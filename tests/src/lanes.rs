//! The lanes of the engine beside their reference by NumPy.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};

use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::sizing::lanes::{Flat, Hour, HoursOfDay, MONTHS};
use sunlarder_engine::sizing::{Course, Promise, Sizing, Store};
use sunlarder_engine::system::System;

/// A plan ready to be sized.
///
/// # Errors
/// If it is refused.
pub fn sizing_of(plan: &Document, years: usize) -> Result<Sizing, Problem> {
    let system = System::assemble(plan, Climate::embedded(), &mut ())?;
    let spread = SpreadGrid::embedded().at(system.site);
    Ok(Sizing::new(&system, &Outlook::of(&system), &spread, years))
}

/// The first hours of the course by which a promise is judged.
#[must_use]
pub fn hours_of(sizing: &Sizing, promise: &Promise, most: usize) -> Vec<Hour> {
    let track = sizing.track(&Course::of(sizing, promise));
    track.days().flat_map(|day| day.hours).take(most).collect()
}

/// What the reference made of some hours.
#[derive(Debug)]
pub struct Reference {
    /// Time for a cell and a step \[ns\].
    pub nanoseconds: f64,
    /// State of charge in each cell.
    pub charge: Vec<f32>,
    /// What was left over the reserve at the worst.
    pub margin: Vec<f32>,
}

/// Runs the reference; none where there is no Python with NumPy.
#[must_use]
pub fn by_numpy(store: &Store, arrays: &[f32], hours: &[Hour]) -> Option<Reference> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/lanes.py");
    let mut python = Command::new("python3")
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    let mut text = format!("{store:?}\n");
    for array in arrays {
        let _ = write!(text, "{array} ");
    }
    for hour in hours {
        let _ = write!(text, "\n{hour:?}");
    }
    python.stdin.take()?.write_all(text.as_bytes()).ok()?;
    let output = python.wait_with_output().ok().filter(|output| output.status.success())?;
    let said = String::from_utf8(output.stdout).ok()?;
    let mut lines = said.lines();
    let nanoseconds = lines.next()?.parse().ok()?;
    let mut numbers =
        || lines.next()?.split(' ').map(|number| number.parse().ok()).collect::<Option<Vec<f32>>>();
    Some(Reference { nanoseconds, charge: numbers()?, margin: numbers()? })
}

/// What the program for browsers made of a row through one year: nanoseconds per cell and step, and what happened in each array and month.
#[derive(Debug)]
pub struct InWasm {
    /// Time for a cell and a step \[ns\].
    pub nanoseconds: f64,
    /// By array, then by month.
    pub counts: Vec<u8>,
}

/// Runs the program for browsers in node; none where there is none, or no node. `SUNLARDER_LANES` is its folder.
#[must_use]
pub fn in_wasm(stores: &[Store; MONTHS], arrays: &[f32], days: &[HoursOfDay]) -> Option<InWasm> {
    let folder = std::env::var_os("SUNLARDER_LANES")?;
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("lanes.mjs");
    let mut node = Command::new("node")
        .arg(script)
        .arg(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .ok()?;
    let mut parts = [Vec::new(), arrays.to_vec(), Vec::new()];
    stores.write(&mut parts[0]);
    for day in days {
        day.write(&mut parts[2]);
    }
    let lengths = parts.iter().flat_map(|part| (part.len() as u32).to_le_bytes());
    let numbers = parts.iter().flatten().flat_map(|number| number.to_le_bytes());
    let bytes: Vec<u8> = lengths.chain(numbers).collect();
    node.stdin.take()?.write_all(&bytes).ok()?;
    let output = node.wait_with_output().ok().filter(|output| output.status.success())?;
    let said = String::from_utf8(output.stdout).ok()?;
    let (first, second) = said.trim().split_once('\n')?;
    let counts = second.split(' ').map(|number| number.parse().ok()).collect::<Option<_>>()?;
    Some(InWasm { nanoseconds: first.parse().ok()?, counts })
}
