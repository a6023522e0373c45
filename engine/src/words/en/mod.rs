//! English.

pub mod appliances;
pub mod calendar;
pub mod climate;
#[cfg(feature = "cli")]
pub mod command_line;
pub mod countries;
pub mod problems;
pub mod verdict;
pub mod working;
