//! English.

pub mod appliances;
pub mod calendar;
pub mod countries;
