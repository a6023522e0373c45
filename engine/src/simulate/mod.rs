//! The simulation: one step, used by everything that asks how charge moves through time.
//!
//! **Question answered:** how full is the bank in each step from a start on, and where did the charge come from and go?
//!
//! **Method.** What acts in a step ([`Forcing`]) is known before, whatever the bank does; the step ([`Prepared::step`]) turns
//! it into what flows ([`Flows`]). A [`Run`] goes by quarter-hours in the mean weather of each month, or without sun;
//! [`run_month`] repeats a month's typical days; an [`Ensemble`] goes by hours through weather that might be, a [`replay()`] by
//! quarter-hours through weather that was. All of them use the very same step, and every step adds up in charge and in energy:
//! a test holds both for every step of every example.
//!
//! **Assumptions.** Within a step everything that acts is constant. The bank holds what it holds in the month of the start
//! (runs), or of the day (ensembles).
//!
//! **Left out:** warmth that the bank makes, wear within a run, and people who save when it runs low.

mod acting;
mod almanac;
mod chances;
mod days;
mod ensemble;
mod flows;
mod month;
mod passing;
mod prepared;
mod replay;
mod run;
mod step;
mod wants;
mod year;

pub use acting::{Acting, HourlyDay};
pub use almanac::{Almanac, LitDay, Sunlight};
pub use chances::{Chances, GeneratorYears, Range};
pub use days::{Day, inside_air, sky_of, typical_diffuse_share, typical_sky};
pub use ensemble::{BLOCK_YEARS, Ensemble, Extent, RUN_DAYS, SETTLING_DAYS};
pub use flows::{Flows, Forcing};
pub use month::{MonthRun, run_month};
pub use passing::{Passed, pass};
pub use prepared::{Prepared, State};
pub use replay::{CONTRADICTS, FAR_KM, REPLAY_DAYS, Replayed, ReplayedMonth, replay};
pub use run::{Run, STEP, Sample, Sun, run};
pub use step::After;
pub use year::{YearHour, YearMonth, YearRun, mean_year, weather_year};
