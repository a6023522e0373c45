//! Energy budgets, solar yield and autonomy of anything that lives from a battery.

pub mod document;
pub mod place;
pub mod quantity;
pub mod share;
pub mod working;
