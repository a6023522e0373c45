//! English.

pub mod appliances;
