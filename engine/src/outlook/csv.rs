//! A run as a table for spreadsheets: one row a step, with points for decimals and commas between.
//!
//! Values are those at the end of the step or its mean. Clock time is that of the start's date, without a change to summer time
//! during the run. Currents are means of the step, as used: what the bank could not take is curtailed, what the loads
//! could not get is unmet. Names of columns are part of the format, and the same in every language.

use chrono::{NaiveDateTime, Timelike};

use super::clock_time;
use crate::document::date_text;
use crate::quantity::{AmpHours, Hours, Percent};
use crate::simulate::{Run, Sample};
use crate::system::System;

/// The columns, each with its unit.
const COLUMNS: &str = "since_start_h,clock_time,state_of_charge_pct,bank_v,bank_c,load_a,solar_a,engine_a,shore_a,unmet_a,curtailed_a,protection_a,stored_a,turbine_a,generator_a";

/// A run of a system as a table.
#[must_use]
pub fn csv(system: &System, run: &Run) -> String {
    let mut text = String::from(COLUMNS);
    text.push('\n');
    let mut before = Hours::ZERO;
    for sample in &run.samples {
        row(system, sample, sample.at - before, &mut text);
        before = sample.at;
    }
    text
}

fn row(system: &System, sample: &Sample, time: Hours, text: &mut String) {
    number(sample.at.0, text);
    text.push(',');
    text.push_str(&moment(clock_time(system, sample.at)));
    let state = [Percent::of_ratio(sample.charge).0, sample.volts.0, sample.forcing.temperature.0];
    let flows = &sample.flows;
    let mean = |charge: AmpHours| (charge / time).0;
    let currents = [
        flows.load,
        flows.solar,
        flows.engine,
        flows.shore,
        flows.unmet,
        flows.curtailed,
        flows.protection,
        flows.stored,
        flows.turbine,
        flows.generator,
    ];
    for value in state.into_iter().chain(currents.map(mean)) {
        text.push(',');
        number(value, text);
    }
    text.push('\n');
}

/// `2026-11-26T16:05`.
fn moment(at: NaiveDateTime) -> String {
    format!("{}T{:02}:{:02}", date_text(at.date()), at.hour(), at.minute())
}

/// A number with four decimals, made with whole numbers: the worker carries no writing of floats for this. A rounded zero
/// carries no sign.
fn number(value: f64, text: &mut String) {
    let units = (value * 1e4).round() as i64;
    let sign = if units < 0 { "-" } else { "" };
    let (whole, rest) = (units.unsigned_abs() / 10_000, units.unsigned_abs() % 10_000);
    text.push_str(&format!("{sign}{whole}.{rest:04}"));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use crate::outlook::Outlook;
    use crate::place::Climate;

    #[test]
    fn numbers_have_four_decimals() {
        let said = |value| {
            let mut text = String::new();
            number(value, &mut text);
            text
        };
        let cases = [12.345_67, -0.5, -0.000_01, 0.0, -101.0, 1e-4];
        assert_eq!(
            cases.map(said),
            ["12.3457", "-0.5000", "0.0000", "0.0000", "-101.0000", "0.0001"]
        );
    }

    #[test]
    fn every_step_has_a_row_of_every_column() {
        let plan = Document { standing_a: 0.5, ..Document::default() };
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        let table = csv(&system, &outlook.dark);
        let mut rows = table.lines();
        let columns = rows.next().unwrap().split(',').count();
        let rows: Vec<&str> = rows.collect();
        assert_eq!(rows.len(), outlook.dark.samples.len());
        assert!(rows.iter().all(|row| row.split(',').count() == columns));
        assert!(rows[0].starts_with("0.2500,2020-01-01T16:15,"), "{}", rows[0]);
    }
}
