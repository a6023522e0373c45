//! What is seen: thin views over the store, as plain functions that give an erased view.

mod bank;
mod chargers;
mod curve;
mod dialogs;
mod field;
mod habits;
mod inverter;
mod leaf;
mod load_editor;
mod loads;
mod outlook;
mod own_climate;
mod pictures;
mod place;
mod question;
mod reader;
mod replay;
mod schedule;
mod shell;
pub(crate) mod shut;
mod sources;
mod start;
mod table;

pub(crate) use field::button;
pub(crate) use place::has_place;
pub(crate) use shell::shell;
