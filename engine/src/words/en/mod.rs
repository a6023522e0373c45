//! English.

pub mod appliances;
pub mod calendar;
pub mod chances;
#[cfg(feature = "cli")]
pub mod command_line;
pub mod compare;
#[cfg(feature = "towns")]
pub mod countries;
pub mod explained;
pub mod labels;
pub mod loads;
pub mod logbook;
pub mod page;
pub mod pictures;
pub mod problems;
pub mod replay;
pub mod sheet;
pub mod sizes;
pub mod sizing;
pub mod symptoms;
pub mod verdict;
pub mod weather_file;
pub mod working;
