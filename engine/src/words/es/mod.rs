//! Spanish.

pub mod appliances;
pub mod calendar;
pub mod chances;
#[cfg(feature = "cli")]
pub mod command_line;
#[cfg(feature = "towns")]
pub mod countries;
pub mod labels;
pub mod page;
pub mod pictures;
pub mod problems;
pub mod replay;
pub mod verdict;
pub mod weather_file;
pub mod working;
