//! The lanes of the engine as a program of their own, built for browsers that have vectors (`./dev build` does it).
//!
//! It keeps the hours of one course and takes rows of sizes through them; numbers go in and out as plain lists
//! ([`Flat`]), so that it stays small. Whoever calls it is an implementation of [`Rows`] in the page's program.

use std::cell::RefCell;

use sunlarder_lanes::{Counting, Counts, Flat, HoursOfDay, MONTHS, Rows, Store, Track};
use wasm_bindgen::prelude::wasm_bindgen;

/// Half the size of std's, as quick.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

thread_local! {
    static TRACK: RefCell<Track> = RefCell::new(Track::default());
}

/// Does something with the track; nobody else ever has it, as no call calls another.
fn with_track(work: impl FnOnce(&mut Track)) {
    TRACK.with(|track| {
        if let Ok(mut track) = track.try_borrow_mut() {
            work(&mut track);
        }
    });
}

/// Forgets all hours and counts like this from now on, see [`Counting`].
#[wasm_bindgen]
pub fn begin(trial_days: u32, months: u16, enough: u16) {
    let counting = Counting { trial_days: trial_days as usize, months, enough };
    with_track(|track| track.begin(counting));
}

/// Takes over the hours of the next days, which count for this year.
#[wasm_bindgen]
pub fn add(year: u32, days: &[f32]) {
    let mut numbers = days.iter();
    let days = (0..days.len() / HoursOfDay::NUMBERS).filter_map(|_| HoursOfDay::read(&mut numbers));
    with_track(|track| track.add(year as usize, days.collect()));
}

/// One bank of twelve months beside arrays through the years from one up to another: what happened, by array, year and month; nothing if the
/// bank is not whole.
#[wasm_bindgen]
pub fn row(stores: &[f32], arrays: &[f32], from: u32, to: u32) -> Vec<u8> {
    let Some(stores) = <[Store; MONTHS]>::read(&mut stores.iter()) else { return Vec::new() };
    let years = from as usize..to as usize;
    let mut counts = vec![Counts::default(); arrays.len() * years.len()];
    with_track(|track| track.row(&stores, arrays, years, &mut counts));
    counts.into_iter().flatten().collect()
}
