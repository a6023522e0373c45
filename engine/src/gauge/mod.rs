//! Setting up a battery gauge, checking that it tells the truth, and a gauge that is simulated beside the truth.
//!
//! **Question answered:** which figures belong into a gauge that counts through a shunt, how is it checked, what would it show through the
//! year, and by what does one know that something about it is wrong?
//!
//! **Method.** A [`Card`] derives every setting from the plan, with its working. A [`Sheet`] is the list of what is measured before a system is
//! trusted; [`Check::judge`] says what a reading means. A [`Course`] is the plan as it truly goes in one of the weathers of its ensemble; a
//! [`Trial`] takes a [`Gauge`] through it. A [`Mistake`] is a gauge with one thing wrong, and its [`Telltale`] can be seen in the trial.
//!
//! **Truth** is the state of charge by amp-hours, between empty and full at the temperature and age that the plan has, for lead-acid too: what a
//! fast discharge leaves bound in its plates is still there.
//!
//! **Left out:** heating of the shunt, gauges that estimate from voltage alone, how often a gauge samples.

mod card;
mod chargers;
mod counter;
mod course;
mod judge;
mod knob;
mod misset;
mod mistake;
mod note;
mod setting;
mod sheet;
mod shunt;
mod taken;
mod trial;
mod years;

pub use card::{Card, setting};
pub use chargers::{ChargerPoints, Equalise, Span};
pub use counter::{Counter, Gauge, Unseen};
pub use course::{Course, Moment, Truth};
pub use judge::{Judged, Reading, Todo, Unread};
pub use knob::Knob;
pub use misset::{Figure, Misset};
pub use mistake::{Mistake, Telltale, Tried};
pub use note::Note;
pub use setting::{Ask, Kind, Setting};
pub use sheet::{Check, ExpectedDrop, METERS_LEAST, METERS_SHARE, Point, Sheet, load_current};
pub use shunt::{CurrentError, Shunt};
pub use trial::{Jump, MARGIN, Shown, Trial};
pub use years::Years;
