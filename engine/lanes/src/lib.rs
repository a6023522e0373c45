//! The step of the simulation for many sizes of bank and array at once, and the loop that takes them through years of weather.
//!
//! **Why apart.** It is a program of its own in browsers that have vectors, built for speed where the page is built for size, so it knows
//! plain numbers alone: what acts in an [`Hour`], a bank as a [`Store`]. How they are made of a plan is the engine's.
//!
//! **Rooms.** `hour` what acts · `store` a bank in one month · `lanes` the step · `track` all hours, and rows of sizes through them · `flat` all of that as
//! plain lists of numbers, as programs pass them to each other.

/// Whether this is a program where room counts more than speed: the page's, which does it itself only where the other cannot run.
const COMPACT: bool = cfg!(all(target_arch = "wasm32", not(target_feature = "simd128")));

mod flat;
mod hour;
mod lanes;
mod store;
mod track;

pub use flat::Flat;
pub use hour::{HOURS, Hour, HoursOfDay};
pub use lanes::{AMPLE, Lanes, accepted_by_plates, fuller_conducts, kept_by_plates, open_circuit};
pub use store::{KNEES, PLATE_KNEES, Store};
pub use track::{Counting, Counts, LANES, MONTHS, Rows, Track};
