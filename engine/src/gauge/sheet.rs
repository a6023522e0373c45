//! What is measured before a system is trusted, in the order in which it is done.
//!
//! **Method.** Each check has what is expected and what still passes. Expected currents are those of two loads of the plan, expected
//! drops are those of the cables that the plan states, as `fitting` has them. Voltages pass within a tenth of a volt in 12 V, the margin that the gauge itself has to its full
//! voltage. How near two meters must agree is a choice, wider than clamp meters are off.
//!
//! **Left out:** everything at mains voltage, and figures of torque and insulation: they are the maker's, and a licensed person's.

use super::card::Card;
use super::chargers::ChargerPoints;
use super::setting::Kind;
use crate::document::{Document, Supply};
use crate::fitting::{Basis, Fitting, Lengths, RunKind};
use crate::load::Load;
use crate::outlook::Outlook;
use crate::quantity::{Amps, Celsius, Percent, Unit, Volts, Watts};
use crate::system::System;
use crate::working::{Formula, Source, Tag, Trace, term};

/// Gauge and clamp meter may differ by so much of the current.
pub const METERS_SHARE: Percent = Percent(5.0);
/// And by so much of any.
pub const METERS_LEAST: Amps = Amps(0.2);
/// A load may take so much more or less than the plan says.
const PLAN_SHARE: f64 = 0.25;
/// A drop may be so much over what is expected: contacts, and cable that is warmer or colder.
const DROP_SHARE: f64 = 0.25;
/// And so much in any case.
const DROP_LEAST: Volts = Volts(0.02);
/// A voltage passes within so much of the nominal one: 0.1 V in 12 V.
const VOLTS_SHARE: f64 = 0.1 / 12.0;
/// What a gauge must show after the first full charge \[%\].
const FULL: (f64, f64) = (99.0, 100.0);
/// The smaller of two loads has at least so much of the current of the larger.
const SMALLER: f64 = 0.2;

/// A drop that somebody expects over a run, at a current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedDrop {
    /// Which run.
    pub run: RunKind,
    /// The current.
    pub current: Amps,
    /// The drop at it, out and back.
    pub drop: Volts,
}

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Point {
    /// Voltage and sign where the bank is connected, before it is.
    Polarity,
    /// Every post, stud and lug by the maker's figures.
    Tightness,
    /// Insulation of an array against earth and frame.
    Insulation(u16),
    /// What the gauge reads with everything off.
    ZeroCurrent,
    /// The current of a load, by clamp meter and by gauge.
    LoadCurrent(u16),
    /// The drop over a run under its load.
    Drop {
        /// Which run.
        run: RunKind,
        /// At which current.
        current: Amps,
    },
    /// Absorption voltage as the charger tells it.
    Absorption,
    /// Float voltage as the charger tells it.
    Float,
    /// Low cut-off as the device tells it.
    CutOff,
    /// What the gauge shows when the first full charge has ended.
    FirstFull,
}

/// A check: what is expected, and what passes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    /// What is checked.
    pub point: Point,
    /// What is expected; none where it is done or not.
    pub expected: Option<f64>,
    /// The least that passes.
    pub least: f64,
    /// The most that passes.
    pub most: f64,
}

impl Point {
    /// The unit of its figure; none where it is done or not.
    #[must_use]
    pub const fn unit(&self) -> Option<Unit> {
        match self {
            Self::Tightness | Self::Insulation(_) => None,
            Self::ZeroCurrent | Self::LoadCurrent(_) => Some(Unit::Amp),
            Self::Polarity | Self::Drop { .. } => Some(Unit::Volt),
            Self::Absorption | Self::Float | Self::CutOff => Some(Unit::Volt),
            Self::FirstFull => Some(Unit::Percent),
        }
    }
}

/// What is measured before a plan's system is trusted.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The checks, in order.
    pub checks: Vec<Check>,
}

impl ExpectedDrop {
    /// Those of every run that has a conductor.
    #[must_use]
    pub fn of(fitting: &Fitting) -> Vec<Self> {
        let wired = fitting.runs.iter().filter_map(|run| {
            let wire = run.wire.as_ref().ok()?;
            let asked = &run.asked;
            Some(Self { run: asked.kind, current: asked.current.working, drop: wire.drop })
        });
        wired.collect()
    }
}

impl Sheet {
    /// The sheet of a plan with the cables that it states; none where nothing can be said of them. `system` and `outlook` must be its own.
    #[must_use]
    pub fn of_plan((plan, system, outlook): (&Document, &System, &Outlook), card: &Card) -> Self {
        let (basis, lengths) = (Basis::stated(plan), Lengths::stated(plan));
        let fitting = Fitting::of(plan, system, outlook, &basis, &lengths);
        let drops = fitting.map(|own| ExpectedDrop::of(&own)).unwrap_or_default();
        Self::of(system, card, &drops)
    }

    /// The sheet of a plan with the card of its gauge and the drops that are expected.
    #[must_use]
    pub fn of(system: &System, card: &Card, drops: &[ExpectedDrop]) -> Self {
        let done = |point| Check { point, expected: None, least: 1.0, most: 1.0 };
        let mut checks = vec![polarity(system), done(Point::Tightness)];
        checks.extend(system.arrays.iter().map(|own| done(Point::Insulation(own.place))));
        let threshold = card.setting(Kind::Threshold).map_or(0.0, |own| own.value);
        let zero = Point::ZeroCurrent;
        checks.push(Check { point: zero, expected: Some(0.0), least: -threshold, most: threshold });
        checks.extend(two_loads(system).into_iter().flatten().map(|load| {
            let current = load_current(system, load, &mut ()).0;
            let (least, most) = (current * (1.0 - PLAN_SHARE), current * (1.0 + PLAN_SHARE));
            let point = Point::LoadCurrent(load.place);
            Check { point, expected: Some(current), least, most }
        }));
        checks.extend(drops.iter().map(|own| {
            let most = own.drop * (1.0 + DROP_SHARE) + DROP_LEAST;
            let point = Point::Drop { run: own.run, current: own.current };
            Check { point, expected: Some(own.drop.0), least: 0.0, most: most.0 }
        }));
        checks.extend(set_points(system));
        let point = Point::FirstFull;
        checks.push(Check { point, expected: Some(FULL.1), least: FULL.0, most: FULL.1 });
        Self { checks }
    }
}

/// The bank's voltage at rest: that of the start, between its low cut-off and the voltage that chargers hold.
fn polarity(system: &System) -> Check {
    let bank = &system.bank;
    let (least, most) = (bank.low_voltage(), bank.absorption_voltage(Celsius(25.0)));
    let expected = bank.open_circuit(system.start.charge).at_least(least).at_most(most);
    let expected = Some(expected.0);
    Check { point: Point::Polarity, expected, least: least.0, most: most.0 }
}

fn set_points(system: &System) -> impl Iterator<Item = Check> {
    let points = ChargerPoints::of(&system.bank);
    let off = (system.bank.nominal * VOLTS_SHARE).0;
    let near = move |point, volts: Volts| {
        let (least, most) = (volts.0 - off, volts.0 + off);
        Check { point, expected: Some(volts.0), least, most }
    };
    let float = points.float.map(|(least, most)| {
        let expected = (least + most) / 2.0;
        Check {
            point: Point::Float,
            expected: Some(expected.0),
            least: least.0 - off,
            most: most.0 + off,
        }
    });
    let absorption = near(Point::Absorption, points.absorption);
    let cut_off = near(Point::CutOff, points.cut_off);
    [Some(absorption), float, Some(cut_off)].into_iter().flatten()
}

/// Power that a load draws from the bank while it runs alone.
fn at_bank(system: &System, load: &Load) -> Option<Watts> {
    let running = load.running();
    match (load.supply, &system.inverter) {
        (Supply::Dc, _) => Some(running),
        (Supply::Ac, Some(inverter)) => Some(inverter.input_of(running, load.apparent(running))),
        (Supply::Ac, None) => None,
    }
}

/// The load that draws most, and the smallest that is not too small beside it.
fn two_loads(system: &System) -> [Option<&Load>; 2] {
    let power = |load: &&Load| at_bank(system, load).map_or(0.0, |own| own.0);
    let most = |one: &&Load, other: &&Load| power(one).total_cmp(&power(other));
    let Some(largest) = system.loads.iter().max_by(most).filter(|own| power(own) > 0.0) else {
        return [None, None];
    };
    let enough =
        |own: &&Load| own.place != largest.place && power(own) >= SMALLER * power(&largest);
    [system.loads.iter().filter(enough).min_by(most), Some(largest)]
}

/// The current of a load of a plan while it runs alone, at the voltage of the bank at rest; with its working.
pub fn load_current(system: &System, load: &Load, trace: &mut impl Trace) -> Amps {
    let power = at_bank(system, load).unwrap_or_default();
    let volts = system.bank.open_circuit(system.start.charge);
    let tag = Tag::Load(load.place);
    let [of_one, count, at] =
        [term(load.power).of(tag), term(load.quantity), term(volts).from(Source::Steps)];
    let current = power / volts;
    match (load.supply, &system.inverter) {
        (Supply::Dc, _) => {
            trace.step_of(tag, Formula::RunningCurrent, current, &[of_one, count, at])
        }
        (Supply::Ac, None) => current,
        (Supply::Ac, Some(inverter)) => {
            let curve = &inverter.curve;
            let [idle, linear, square] =
                [curve.p0, curve.k1, curve.k2].map(|own| term(own).from(Source::Typical));
            let (rated, factor) = (term(inverter.rated), term(load.power_factor));
            let inputs = [of_one, count, at, rated, idle, linear, square, factor];
            trace.step_of(tag, Formula::RunningByInverter, current, &inputs)
        }
    }
}
