//! Energy budgets, solar yield and autonomy of anything that lives from a battery.

pub mod place;
pub mod quantity;
pub mod sky;
pub mod sun;
pub mod working;
