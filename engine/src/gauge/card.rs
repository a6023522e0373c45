//! The settings of a gauge for a plan.
//!
//! **Method.** *How big:* what the bank holds at the temperature and age of the month of the start, not the label. *When full:* 0.1 to 0.2 V
//! in 12 V under the lowest voltage that chargers hold, which for lead-acid is that of the hottest hour; the current at which charging
//! ends; for some minutes, so that a cloud does not count. *What is lost:* efficiency, exponent and standing losses of the bank. *When to warn:* a
//! quarter of a day's use over what is not to be undercut.
//!
//! **How sure.** Margins, times and ranges are typical of the trade; the maker's sheet comes first. An efficiency is one figure for what is
//! better than that half empty and worse near full, so between two times at full a gauge of lead-acid strays by some per cent.

use super::counter::{Gauge, Unseen};
use super::setting::{Kind, Setting};
use super::shunt::CurrentError;
use crate::bank::{Bank, ChargeEfficiency, MONTH_HOURS};
use crate::document::Chemistry;
use crate::outlook::Outlook;
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Percent, Volts, Within};
use crate::simulate::{Almanac, Sunlight};
use crate::system::System;
use crate::working::{Formula, Source, Symbol, Trace, Working, term};

/// Share of the nominal voltage by which a gauge may say full under the voltage that chargers hold: 0.1 to 0.2 V in 12 V.
const UNDER: [f64; 3] = [0.1 / 12.0, 0.0125, 0.2 / 12.0];
/// How long the bank must look full: 3 to 10 minutes \[h\].
const HOLD: [f64; 3] = [3.0 / 60.0, 5.0 / 60.0, 10.0 / 60.0];
/// The highest tail current that is usual \[%\]: a few per cent.
const TAIL_MOST: f64 = 4.0;
/// Over what the current is averaged for the time left \[h\]: a few cycles of a compressor. A choice.
const AVERAGED: [f64; 3] = [0.1, 0.5, 3.0];
/// Rated hours that are usual \[h\].
const HOUR_RATES: (f64, f64) = (5.0, 100.0);
/// The least threshold: the larger of the usual offsets of a gauge, 10 and 20 mA.
const LEAST_THRESHOLD: Amps = Amps(0.02);
/// A gauge warns at no more than this \[%\].
const WARN_MOST: f64 = 95.0;
/// Part of a day's use that is left over the floor when it warns.
const DAY_PART: f64 = 4.0;
/// Temperature of the set-points.
const STATED_AT: Celsius = Celsius(25.0);

/// The settings of a gauge for a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// What the label says, of all strings.
    pub label: AmpHours,
    /// What age has left of it.
    pub health: Percent,
    /// Share that the temperature leaves (ratio).
    pub cold: f64,
    /// Share that the current leaves for good (ratio); 1 for lead-acid.
    pub rate: f64,
    /// The settings, by the questions of [`Ask`](super::Ask).
    pub settings: Vec<Setting>,
    /// Current in ten hours of the capacity.
    ten_hours: Amps,
}

impl Card {
    /// The card of a plan; `outlook` must be its own. With a working that nobody reads, so that a setting is compiled once.
    #[must_use]
    pub fn of(system: &System, outlook: &Outlook) -> Self {
        let bank = &system.bank;
        let full = outlook.capacity.full;
        let plates = bank.lead_acid.as_ref();
        Self {
            label: bank.rated,
            health: bank.health,
            cold: outlook.capacity.cold,
            rate: if plates.is_some() { 1.0 } else { outlook.capacity.rate },
            settings: Kind::ALL
                .into_iter()
                .filter_map(|kind| setting(kind, system, outlook, &mut Working::new()))
                .collect(),
            ten_hours: plates.map_or(full / Hours(10.0), |own| own.ten_hour_current(full)),
        }
    }

    /// A setting, if this card has it.
    #[must_use]
    pub fn setting(&self, kind: Kind) -> Option<&Setting> {
        self.settings.iter().find(|own| own.kind == kind)
    }

    fn value(&self, kind: Kind) -> Option<f64> {
        self.setting(kind).map(|own| own.value)
    }

    /// The gauge that is set up by this card and wired as it should be.
    #[must_use]
    pub fn gauge(&self) -> Gauge {
        let or = |kind, other: f64| self.value(kind).unwrap_or(other);
        Gauge {
            capacity: AmpHours(or(Kind::Capacity, self.label.0)),
            hour_rate: Hours(or(Kind::HourRate, 20.0)),
            exponent: or(Kind::Exponent, 1.0),
            efficiency: ChargeEfficiency::Flat(or(Kind::Efficiency, 100.0) / 100.0),
            ten_hours: self.ten_hours,
            self_discharge: Percent(or(Kind::SelfDischarge, 0.0)),
            inside: Amps(or(Kind::Inside, 0.0)),
            full_voltage: Volts(or(Kind::FullVoltage, 0.0)),
            tail: Percent(or(Kind::Tail, 0.0)),
            hold: Hours(or(Kind::Hold, 0.0)),
            floor: Percent(or(Kind::Floor, 0.0)),
            averaged: Hours(or(Kind::Averaged, 1.0)),
            threshold: Amps(or(Kind::Threshold, 0.0)),
            error: CurrentError { offset: Amps::ZERO, gain: Percent(0.0) },
            unseen: Unseen::default(),
            start: None,
        }
    }
}

/// A figure, the range in which it makes sense, and where it comes from.
type Found = (f64, (f64, f64), Source);

/// A setting of a plan with its working; none where the chemistry has none.
pub fn setting(
    kind: Kind,
    system: &System,
    outlook: &Outlook,
    trace: &mut impl Trace,
) -> Option<Setting> {
    let bank = &system.bank;
    let (value, (least, most), source) = match kind {
        Kind::Capacity => {
            let full = outlook.capacity_worked(system, trace).full.0;
            let months = outlook.months.iter().map(|month| month.full.0);
            let least = months.clone().fold(full, f64::min);
            (full, (least, months.fold(full, f64::max)), Source::Steps)
        }
        Kind::FullVoltage => {
            let lowest = lowest_absorption(system, trace);
            let under = |share: f64| (lowest - bank.nominal * share).0;
            let value = full_voltage(bank, lowest, trace).0;
            (value, (under(UNDER[2]), under(UNDER[0])), Source::Typical)
        }
        Kind::Tail => {
            let tail = tail(system, outlook, trace).0;
            (tail, (tail, TAIL_MOST), Source::Steps)
        }
        Kind::Threshold => {
            let value = threshold(system, trace).0;
            (value, (LEAST_THRESHOLD.0 / 2.0, system.standing.0), Source::Choice)
        }
        Kind::Warn => {
            let value = warn(system, outlook, trace).0;
            (value, (floor(bank).0.0, WARN_MOST), Source::Choice)
        }
        _ => of_bank(kind, bank)?,
    };
    let (least, most) = (least.min(value), most.max(value));
    Some(Setting { kind, value, least, most, source })
}

/// What is taken as the bank has it, without a working.
fn of_bank(kind: Kind, bank: &Bank) -> Option<Found> {
    let usual = usual(bank.chemistry);
    let lead_acid = bank.lead_acid.is_some();
    Some(match kind {
        Kind::HourRate if lead_acid => (bank.hour_rate.0, HOUR_RATES, bank.hour_rate_source),
        Kind::Exponent if lead_acid => (bank.exponent, usual.exponent, bank.exponent_source),
        Kind::Hold => (HOLD[1], (HOLD[0], HOLD[2]), Source::Typical),
        Kind::Efficiency => {
            let value = Percent::of_ratio(bank.mean_efficiency).0;
            (value, usual.efficiency, bank.efficiency_source)
        }
        Kind::SelfDischarge => {
            let value = Percent::of_ratio(bank.self_discharge_per_hour * MONTH_HOURS).0;
            (value, usual.self_discharge, Source::Typical)
        }
        Kind::Inside if bank.protection.0 > 0.0 => {
            (bank.protection.0, (0.0, 0.0), bank.protection_source)
        }
        Kind::Floor => {
            let (floor, source) = floor(bank);
            (floor.0, (bank.charge_at_cut_off() * 100.0, bank.typical.reserve.0), source)
        }
        Kind::Averaged => (AVERAGED[1], (AVERAGED[0], AVERAGED[2]), Source::Choice),
        _ => return None,
    })
}

/// What is usual of a chemistry.
struct Usual {
    exponent: (f64, f64),
    /// \[%\]
    efficiency: (f64, f64),
    /// \[% a month\]
    self_discharge: (f64, f64),
}

/// Ranges typical of the trade.
fn usual(chemistry: Chemistry) -> Usual {
    match chemistry {
        Chemistry::FloodedLeadAcid => {
            Usual { exponent: (1.15, 1.3), efficiency: (85.0, 92.0), self_discharge: (5.0, 12.0) }
        }
        Chemistry::Agm => {
            Usual { exponent: (1.05, 1.15), efficiency: (92.0, 97.0), self_discharge: (2.0, 3.0) }
        }
        Chemistry::Gel => {
            Usual { exponent: (1.1, 1.2), efficiency: (92.0, 97.0), self_discharge: (2.0, 3.0) }
        }
        Chemistry::Lifepo4 | Chemistry::Nmc => {
            Usual { exponent: (1.0, 1.05), efficiency: (99.0, 100.0), self_discharge: (1.0, 3.0) }
        }
        Chemistry::SodiumIon => {
            Usual { exponent: (1.0, 1.05), efficiency: (95.0, 100.0), self_discharge: (2.0, 4.0) }
        }
    }
}

/// The warmest that the bank becomes on a typical day of any month.
fn hottest(system: &System) -> Celsius {
    let mut sunlight = Sunlight::default();
    let mut almanac = Almanac::new(system, &mut sunlight);
    let mut hottest = Celsius(f64::NEG_INFINITY);
    for month in 0..12 {
        for forcing in almanac.day(month, 0) {
            hottest = hottest.at_least(forcing.temperature);
        }
    }
    hottest
}

/// The lowest voltage that chargers hold through the year.
pub(super) fn lowest_absorption(system: &System, trace: &mut impl Trace) -> Volts {
    let bank = &system.bank;
    if bank.lead_acid.is_none() {
        return bank.absorption_voltage(STATED_AT);
    }
    let hot = hottest(system);
    let stated = bank.absorption_voltage(STATED_AT);
    let by_kelvin = stated - bank.absorption_voltage(STATED_AT + Celsius(1.0));
    trace.step(
        Formula::HotAbsorption,
        bank.absorption_voltage(hot),
        &[
            term(stated).from(absorption_source(bank)),
            term(by_kelvin).from(Source::Typical),
            term(hot).from(Source::Steps),
            term(STATED_AT).from(Source::Typical),
        ],
    )
}

/// Where the voltage that chargers hold comes from.
fn absorption_source(bank: &Bank) -> Source {
    let typical = bank.set_points.absorption == bank.typical.cell_absorption;
    if typical { Source::Typical } else { Source::Plan }
}

fn full_voltage(bank: &Bank, lowest: Volts, trace: &mut impl Trace) -> Volts {
    let held = match bank.lead_acid {
        Some(_) => term(lowest),
        None => term(lowest).named(Symbol::Absorption).from(absorption_source(bank)),
    };
    let full = lowest - bank.nominal * UNDER[1];
    trace.step(Formula::FullVoltage, full, &[held, term(bank.nominal)])
}

fn tail(system: &System, outlook: &Outlook, trace: &mut impl Trace) -> Percent {
    let bank = &system.bank;
    let full = outlook.capacity_worked(system, trace).full;
    let own = bank.set_points.tail;
    let source = if own == bank.typical.tail { Source::Typical } else { Source::Plan };
    trace.step(
        Formula::GaugeTail,
        own * (bank.rated / full),
        &[term(own).from(source), term(bank.rated), term(full)],
    )
}

fn threshold(system: &System, trace: &mut impl Trace) -> Amps {
    let standing = system.standing;
    trace.step(
        Formula::Threshold,
        (standing / 2.0).at_least(LEAST_THRESHOLD),
        &[term(standing), term(LEAST_THRESHOLD).from(Source::Typical)],
    )
}

/// What is not to be undercut: the reserve, or what is left at the low cut-off if that is more.
fn floor(bank: &Bank) -> (Percent, Source) {
    let left = Percent::of_ratio(bank.charge_at_cut_off());
    if left > bank.reserve { (left, Source::Typical) } else { (bank.reserve, Source::Plan) }
}

fn warn(system: &System, outlook: &Outlook, trace: &mut impl Trace) -> Percent {
    let full = outlook.capacity_worked(system, trace).full;
    let need = outlook.budget_worked(system, trace).total;
    let (floor, source) = floor(&system.bank);
    let kept = match source {
        Source::Plan => term(floor),
        _ => term(floor).named(Symbol::ChargeAtCutOff).from(source),
    };
    let warn = floor.0 + need / (full * DAY_PART) * 100.0;
    let warn = Percent(if warn < WARN_MOST { warn } else { WARN_MOST }.within(0.0, WARN_MOST));
    trace.step(Formula::WarnCharge, warn, &[kept, term(need), term(full)])
}
