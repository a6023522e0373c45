//! The logbook: what readings of a gauge say about a plan.
//!
//! **Question answered:** does it agree, and if not, why? How much is really used, what does the bank really hold, does current pass the
//! shunt, was a full a false one; what do the readings not tell, and which to take next?
//!
//! **Method.** [`Readings`] are put in order ([`paste()`] reads them from text). The gauge counts what flows, so nights tell the use ([`Study`]).
//! The voltage knows nothing of the gauge: charge by count against charge by open-circuit voltage tells capacity, hidden currents and
//! false fulls, each with the interval that holds it nine times in ten. What is beyond chance is an alarm; what is no better than
//! before the readings is said to be untold, with the reading that would tell it ([`Next`]).
//! From a symptom, [`suspects()`] rank the causes by plan and readings.
//!
//! **Assumptions.** Readings are by the clock of the place. The gauge was told what [`GaugeSetUp`] says. At most one fault is looked for
//! beside false fulls.
//!
//! **Left out.** The temperature of the day, use that changes with the weeks, several faults that hide each other, gauges that forget.
//! How well it does is held by `tests/tests/logbook_recovery.rs`.

mod adopt;
mod care;
mod consumption;
mod estimate;
mod evidence;
mod expected;
mod fit;
mod kept;
mod learned;
mod matrix;
mod meter;
mod next;
mod paste;
mod posterior;
mod reading;
mod suspects;
mod symptom;

pub use adopt::{Adoption, adoptable, from_newest, start_at_newest};
pub use care::{Care, lay_up, upkeep};
pub use estimate::Estimate;
pub use expected::{Expected, Stretch};
pub use kept::Taken;
pub use learned::{Learned, Study, What};
pub use meter::MeterTest;
pub use next::Next;
pub use paste::{Columns, Guess, Hints, MOST_LINES, Order, Pasted, paste};
pub use reading::{
    Bounds, GaugeSetUp, MOST_DAYS, MOST_READINGS, Part, Reading, Readings, Shown, Slip,
};
pub use suspects::{Standing, Suspect, suspects};
pub use symptom::{Cause, Symptom};
