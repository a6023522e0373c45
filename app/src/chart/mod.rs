//! Pictures of figures: pure scales, ticks, paths and label places with their tests, and thin views over them.
//!
//! No word stands here and no unit is chosen here: labels come in ready to show. Nor does a chart trust its numbers: a series
//! may be empty, have one point, be flat, negative or of any size, and the picture stays within its frame.
//!
//! [`RemainingCurve`] lays itself out in pixels for the width it has. The bars of [`MonthBalance`] and [`DayStrip`] only
//! stretch, so they are drawn once in units of their own and their labels are ordinary text beside them.

#![allow(
    unreachable_pub,
    reason = "the component macro writes `pub` for a component of any visibility"
)]

mod bars;
mod curve;
mod curve_plot;
mod day;
mod label;
mod months;
mod path;
mod scale;
mod time;
mod width;

pub(crate) use curve::RemainingCurve;
pub(crate) use curve_plot::CurveData;
pub(crate) use day::{DayData, DayStrip};
pub(crate) use months::{MonthBalance, MonthBar, MonthData};
pub(crate) use time::midnights;
