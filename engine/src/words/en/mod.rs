//! English.

pub mod appliances;
pub mod calendar;
pub mod countries;
pub mod labels;
pub mod page;
pub mod problems;
pub mod verdict;
pub mod working;
