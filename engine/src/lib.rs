//! Energy budgets, solar yield and autonomy of anything that lives from a battery.

pub mod bank;
pub mod document;
pub mod gauge;
pub mod load;
pub mod outlook;
pub mod place;
pub mod quantity;
pub mod share;
pub mod simulate;
pub mod sky;
pub mod source;
pub mod sun;
pub mod system;
pub mod words;
pub mod working;
