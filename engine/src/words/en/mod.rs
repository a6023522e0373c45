//! English.

pub mod appliances;
pub mod calendar;
pub mod countries;
pub mod problems;
pub mod working;
