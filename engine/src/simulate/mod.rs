//! The simulation: one step, used by everything that asks how charge moves through time.
//!
//! **Question answered:** how full is the bank in each quarter-hour from a start on, and where did the charge come from and go?
//!
//! Runs go by quarter-hours in the mean weather of the month. An [`Ensemble`] goes by hours through weather that might be, a
//! [`replay`] by quarter-hours through weather that was.

mod acting;
mod almanac;
mod chances;
mod days;
mod ensemble;
mod flows;
mod month;
mod prepared;
mod replay;
mod run;
mod step;

pub use acting::{Acting, HourlyDay};
pub use almanac::{Almanac, LitDay, Sunlight};
pub use chances::{Chances, GeneratorYears, Range};
pub use days::{Day, inside_air, sky_of, typical_sky};
pub use ensemble::{BLOCK_YEARS, Ensemble, Extent, RUN_DAYS, SETTLING_DAYS};
pub use flows::{Flows, Forcing};
pub use month::{MonthRun, run_month};
pub use prepared::{Prepared, State};
pub use replay::{CONTRADICTS, FAR_KM, REPLAY_DAYS, Replayed, ReplayedMonth, replay};
pub use run::{Run, STEP, Sample, Sun, run};
pub use step::After;
