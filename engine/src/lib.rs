//! Energy budgets, solar yield and autonomy of anything that lives from a battery.

pub mod quantity;
pub mod working;
