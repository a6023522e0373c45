//! What is seen: thin views over the store, as plain functions that give an erased view.

mod bank;
mod catalogue;
mod chargers;
mod dialogs;
mod field;
mod habits;
mod inverter;
mod leaf;
mod load_editor;
mod load_list;
mod loads;
mod mend;
mod outlook;
mod own_climate;
mod place;
mod question;
mod replay;
mod schedule;
mod shell;
pub(crate) mod shut;
mod sources;
mod start;
mod strip;
mod table;
mod toast;
mod wrong_entry;

pub(crate) use field::button;
pub(crate) use load_list::Loads;
pub(crate) use place::has_place;
pub(crate) use shell::shell;
