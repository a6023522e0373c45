//! The run as a table: one row a step, for spreadsheets.
//!
//! Values are those at the end of the step or its mean. Clock time is that of the start's date, without a change to summer time
//! during the run. Currents are means of the step, as used: what the bank could not take is curtailed, what the loads
//! could not get is unmet.

use sunlarder_engine::outlook::clock_time;
use sunlarder_engine::quantity::{AmpHours, Hours, Percent};
use sunlarder_engine::simulate::Sample;

use super::Answered;

/// The columns, each with its unit.
const COLUMNS: &str = "since_start_h,clock_time,state_of_charge_pct,bank_v,bank_c,load_a,solar_a,engine_a,shore_a,unmet_a,curtailed_a,protection_a,stored_a,turbine_a,generator_a";

/// The run that was asked for.
pub(crate) fn csv(answered: &Answered) -> String {
    let mut text = String::from(COLUMNS);
    text.push('\n');
    let mut before = Hours::ZERO;
    for sample in &answered.run().samples {
        row(answered, sample, sample.at - before, &mut text);
        before = sample.at;
    }
    text
}

fn row(answered: &Answered, sample: &Sample, time: Hours, text: &mut String) {
    let clock = clock_time(&answered.system, sample.at).format("%Y-%m-%dT%H:%M");
    text.push_str(&format!("{:.4},{clock}", sample.at.0));
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
        // A rounded zero carries no sign.
        let value = if value.abs() < 0.000_05 { 0.0 } else { value };
        text.push_str(&format!(",{value:.4}"));
    }
    text.push('\n');
}
