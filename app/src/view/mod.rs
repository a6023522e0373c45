//! What is seen: thin views over the store, as plain functions that give an erased view.

mod bank;
mod chargers;
mod compare;
mod dialogs;
mod drop;
mod field;
mod guess;
mod habits;
mod help;
mod inverter;
mod leaf;
mod load_editor;
mod loads;
mod outlook;
mod own_climate;
mod place;
mod question;
mod replay;
mod schedule;
mod share;
mod sheet;
mod shell;
pub(crate) mod shut;
mod sources;
mod start;
mod table;
mod world_map;

pub(crate) use field::button;
pub(crate) use place::has_place;
pub(crate) use shell::shell;
