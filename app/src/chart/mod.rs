//! Pictures of figures: pure scales, ticks, paths and label places with their tests, and thin views over them.
//!
//! No word stands here and no unit is chosen here: labels come in ready to show. Nor does a chart trust its numbers: a series
//! may be empty, have one point, be flat, negative or of any size, and the picture stays within its frame.
//!
//! [`remaining_curve`] lays itself out in pixels for the width it has. The bars of [`month_balance`] and [`day_strip`] only
//! stretch, so they are drawn once in units of their own and their labels are ordinary text beside them.

mod bars;
mod curve;
mod curve_plot;
mod day;
mod label;
mod months;
mod path;
mod scale;
mod shape;
mod start_handle;
mod time;
mod width;

pub(crate) use curve::{printed_curve, remaining_curve};
pub(crate) use curve_plot::{BandHour, CurveData};
pub(crate) use day::{DayData, day_strip};
pub(crate) use months::{MonthBar, MonthData, month_balance};
pub(crate) use start_handle::Start;
pub(crate) use time::midnights;
