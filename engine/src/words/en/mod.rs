//! English.

pub mod appliances;
pub mod countries;
