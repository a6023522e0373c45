//! Energy budgets, solar yield and autonomy of anything that lives from a battery.

pub mod load;
pub mod place;
pub mod quantity;
pub mod words;
pub mod working;
