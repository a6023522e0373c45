//! What is seen: thin components over the store.
#![allow(unreachable_pub, reason = "the component macro writes `pub` items of its own")]

mod bank;
mod dialogs;
mod field;
mod inverter;
mod load_editor;
mod loads;
mod outlook;
mod own_climate;
mod place;
mod question;
mod schedule;
mod shell;
mod sources;
mod start;
mod working;

pub(crate) use shell::Shell;
