//! The logbook.

mod consumption;
mod estimate;
mod evidence;
mod expected;
mod fit;
mod learned;
mod matrix;
mod posterior;
mod reading;

pub use estimate::Estimate;
pub use expected::{Expected, Stretch};
pub use learned::{Learned, Study, What};
pub use reading::{
    Bounds, GaugeSetUp, MOST_DAYS, MOST_READINGS, Part, Reading, Readings, Shown, Slip,
};
