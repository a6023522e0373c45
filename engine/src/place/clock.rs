//! Temporary until the clock room is merged.
use serde::{Deserialize, Serialize};
/// Rule.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SummerTime {
    /// None.
    #[default]
    None,
    /// EU.
    Europe,
}
impl SummerTime {
    /// All.
    pub const ALL: &[Self] = &[Self::None, Self::Europe];
}
/// Clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clock {
    /// Offset.
    pub utc_offset_min: i16,
    /// Rule.
    pub summer_time: SummerTime,
}
