//! What a plan takes for granted, and who chose it, as a table of the printed sheet.

use sunlarder_engine::document::Losses;
use sunlarder_engine::place::{Origin, TemperatureOrigin};
use sunlarder_engine::quantity::Percent;
use sunlarder_engine::words::sheet::OnSheet as S;
use sunlarder_engine::working::Source;

use super::About;
use super::parts::row;
use crate::paper::Paper;

/// What it is, its value, and whose.
type Row = (S, String, S);

/// Typical unless the plan states it.
fn by(source: Source) -> S {
    if source == Source::Plan { S::Yours } else { S::Typical }
}

fn stated(is: bool) -> S {
    if is { S::Yours } else { S::Typical }
}

/// The table with the sentences about the climate.
pub(super) fn assumed(paper: &mut Paper, about: About<'_>) {
    let words = about.words;
    let mut rows = of_place(about);
    rows.extend(of_bank(about));
    rows.extend(of_sources(about));
    let climate = &about.system.climate;
    paper
        .class("section", "sheet-assumed")
        .said("h2", "", words.on_sheet(S::Assumed))
        .class("div", "sheet-pair");
    for rows in rows.chunks(rows.len().div_ceil(2).max(1)) {
        paper.open("table").open("tbody");
        for (what, value, whose) in rows {
            row(paper, &[words.on_sheet(*what), value, words.on_sheet(*whose)]);
        }
        paper.close().close();
    }
    paper
        .close()
        .class("p", "sheet-note")
        .text(words.climate_origin(climate.origin))
        .text(" ")
        .text(words.temperatures_from(climate.temperature_origin))
        .close()
        .close();
}

fn of_place(about: About<'_>) -> Vec<Row> {
    let About { words, system, outlook, .. } = about;
    let climate = &system.climate;
    let month = outlook.months.get(outlook.month);
    let sun = if climate.origin == Origin::Own { S::Yours } else { S::FromMap };
    let air = match climate.temperature_origin {
        TemperatureOrigin::Own => S::Yours,
        TemperatureOrigin::Reanalysis => S::FromMap,
    };
    let word = |own: S| words.on_sheet(own).to_owned();
    let horizon = match system.horizon {
        Some(_) => (S::Horizon, word(S::Entered), S::Yours),
        None => (S::Horizon, word(S::Level), S::Typical),
    };
    let record = match system.record_low {
        Some(low) => (S::RecordLow, words.amount(low), S::Yours),
        None => (S::RecordLow, "–".to_owned(), S::NotStated),
    };
    let mut rows = Vec::new();
    rows.extend(month.map(|month| (S::Sun, words.amount(month.irradiation), sun)));
    rows.extend(
        climate.temperature.get(outlook.month).map(|own| (S::Air, words.amount(*own), air)),
    );
    rows.extend([
        (S::BankTemperature, words.amount(outlook.bank_temperature), S::WorkedOut),
        horizon,
        record,
    ]);
    rows
}

fn of_bank(about: About<'_>) -> Vec<Row> {
    let About { words, system, .. } = about;
    let bank = &system.bank;
    let efficiency = words.amount(Percent::of_ratio(bank.mean_efficiency));
    vec![
        (S::ChargeEfficiency, efficiency, by(bank.efficiency_source)),
        (S::HourRate, words.amount(bank.hour_rate), by(bank.hour_rate_source)),
        (S::Health, words.amount(bank.health), S::Yours),
    ]
}

fn of_sources(about: About<'_>) -> Vec<Row> {
    let About { words, document, system, .. } = about;
    let mut rows = Vec::new();
    if let (Some(inverter), Some(section)) = (&system.inverter, &document.inverter) {
        let half = words.amount(Percent::of_ratio(inverter.curve.efficiency(0.5)));
        rows.push((S::InverterEfficiency, half, stated(section.efficiency_half_pct.is_some())));
    }
    let counted =
        system.arrays.iter().filter_map(|own| document.arrays.get(usize::from(own.place)));
    for (array, section) in system.arrays.iter().zip(counted) {
        let kept =
            [array.dirt, array.cable, array.ageing, array.other].map(|loss| 1.0 - loss.ratio());
        let lost = words.amount(Percent::of_ratio(1.0 - kept.iter().product::<f64>()));
        rows.push((S::ArrayLosses, lost, stated(section.losses != Losses::default())));
    }
    rows
}
