//! The shunt of the battery gauge, and the bus bars that lugs share.
//!
//! **Method.** A shunt carries at most two thirds of its rating for hours, or it warms and strays. More than four lugs do not share a
//! stud (usual practice): then there are bus bars, for the sum of what flows to one side of the bank. On a stud the lug with the largest
//! current lies lowest, flat on it.

use super::{Fitting, FusePlace, RunKind};
use crate::gauge::Shunt;
use crate::quantity::{Amps, Percent, Volts, Watts};
use crate::working::{Formula, Source, Trace, term};

/// Ratings of shunts \[A\]: typical of the trade.
const SHUNTS: [f64; 8] = [50.0, 100.0, 150.0, 200.0, 300.0, 500.0, 600.0, 1000.0];
/// Voltage over a shunt at its rating: the most usual of 50, 60, 75 and 100 mV.
const SHUNT_DROP: Volts = Volts(0.05);
/// Error of a shunt that suffices for a gauge: class 0.5.
const SHUNT_CLASS: Percent = Percent(0.5);
/// Rating of a shunt over what it carries for hours.
const SHUNT_ROOM: f64 = 1.5;
/// Ratings of bus bars \[A\]: typical of the trade.
const BARS: [f64; 8] = [100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 600.0, 1000.0];
/// Lugs that may share a stud: usual practice.
const LUGS_ON_A_STUD: usize = 4;

/// The shunt of a battery gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShuntChoice {
    /// It.
    pub shunt: Shunt,
    /// Its class: by how much it may be wrong.
    pub class: Percent,
    /// What it carries for hours.
    pub current: Amps,
    /// The heat in it then.
    pub heat: Watts,
}

/// The shunt for a current, with its working; none where that is beyond those that are common.
pub(super) fn shunt(current: Amps, trace: &mut impl Trace) -> Option<ShuntChoice> {
    let least = current * SHUNT_ROOM;
    let least = trace.step(Formula::LeastShunt, least, &[term(current).from(Source::Plan)]);
    let rated = SHUNTS.into_iter().find(|rated| *rated >= least.0).map(Amps)?;
    let shunt = Shunt { rated, drop: SHUNT_DROP };
    Some(ShuntChoice { shunt, class: SHUNT_CLASS, current, heat: shunt.heat(current) })
}

/// Where the runs of the bank meet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BusBars {
    /// Whether studs of the bank would not do.
    pub needed: bool,
    /// Lugs on each side, that of the bank among them.
    pub lugs: usize,
    /// The smallest rating that carries what flows; none beyond those that are common.
    pub rating: Option<Amps>,
    /// The runs that meet there, the one whose lug lies lowest first.
    pub order: Vec<RunKind>,
}

/// The bus bars of a fitting whose runs are there.
pub(super) fn bus_bars(fitting: &Fitting) -> BusBars {
    let bank = |kind| matches!(kind, RunKind::Battery | RunKind::BatteryString);
    let at_bus = |kind, place| place == Some(FusePlace::Bus) || bank(kind);
    let mut met: Vec<_> = fitting
        .runs
        .iter()
        .map(|run| &run.asked)
        .filter(|asked| asked.kind != RunKind::BatteryString && at_bus(asked.kind, asked.fused))
        .collect();
    met.sort_by(|a, b| b.current.continuous.0.total_cmp(&a.current.continuous.0));
    let strings = fitting.run(RunKind::BatteryString).is_some();
    let whole = met.first().map_or(Amps::ZERO, |asked| asked.current.continuous);
    let fuse = fitting.run(RunKind::Battery).and_then(|run| run.fuse());
    let carried = fuse.map_or(whole * super::ROOM, |fuse| fuse.rating);
    BusBars {
        needed: met.len() > LUGS_ON_A_STUD || strings,
        lugs: met.len(),
        rating: BARS.into_iter().find(|rating| *rating >= carried.0).map(Amps),
        order: met.iter().map(|asked| asked.kind).collect(),
    }
}
