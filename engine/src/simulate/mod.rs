//! The simulation: one step, used by everything that asks how charge moves through time.
//!
//! **Question answered:** how full is the bank in each quarter-hour from a start on, and where did the charge come from and go?
//!
//! Steps are at most 15 minutes. The weather is the mean of the month; its spread is for later rooms.

mod days;
mod run;
mod step;

pub use days::{Day, TypicalDays, day, inside_air, sky_of, typical_sky, weekdays_differ};
pub use run::{Calendar, Run, STEP, Sample, Sun, run, run_month};
pub use step::{After, Flows, Forcing, Prepared, State};
