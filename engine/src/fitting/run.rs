//! A run: a pair of conductors from one thing to another, with its current, its conductor and its fuse.
//!
//! **Method.** The thinnest gauge that may carry the fuse, whose fuse carries 125 % of the continuous current, and whose drop at the
//! temperature that the current gives it is within what is allowed. A conductor at its limit is as warm as its insulation may be; under
//! it the rise over the air goes with the square of the current. What lies beyond the tables is refused, run by run.

use super::ampacity::{Surroundings, largest_fuse};
use super::basis::{Basis, Tables};
use super::conductor::{Gauge, Stretch, cable_resistance, loop_resistance};
use super::fuse::{Fuse, FusePlace, NEAR_MM, ROOM, next_rating};
use super::short_circuit::Prospective;
use crate::quantity::{Amps, Celsius, Metres, Ohms, Percent, SquareMillimetres, Volts, Watts};
use crate::working::{Formula, Source, Symbol, Trace, term};

/// What a run joins; loads and arrays by their place in the plan, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RunKind {
    /// Each string of batteries to where all are joined.
    BatteryString,
    /// The bank to the bus bars.
    Battery,
    /// The bus bars to the inverter.
    Inverter,
    /// The bus bars to the panel that distributes.
    Distribution,
    /// The panel to a load; the bus bars to one that is too large for the panel.
    Branch(u16),
    /// A charge controller to the bus bars.
    Controller(u16),
    /// An array to its controller.
    Array(u16),
    /// Each string of modules to the box that joins them.
    ModuleString(u16),
    /// The charger on the engine to the bus bars.
    Alternator,
    /// The charger on shore power or mains to the bus bars.
    Shore,
    /// The charger of a generator to the bus bars.
    Generator,
}

/// The current of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunCurrent {
    /// What flows for hours, at the lowest working voltage: what fuse and conductor must carry.
    pub continuous: Amps,
    /// What flows for a moment.
    pub peak: Amps,
    /// What the drop is reckoned with; of arrays that at the best point.
    pub working: Amps,
    /// The voltage that belongs to it.
    pub volts: Volts,
    /// Where that comes from.
    pub volts_source: Source,
}

/// What is known of a run before its conductor is chosen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// What it joins.
    pub kind: RunKind,
    /// How many alike there are.
    pub count: f64,
    /// Its current.
    pub current: RunCurrent,
    /// Length one way.
    pub length: Metres,
    /// Where that comes from.
    pub length_source: Source,
    /// The drop that is allowed.
    pub allowed: Percent,
    /// What surrounds it.
    pub surroundings: Surroundings,
    /// Where its fuse sits; none where nothing can drive more through it than it carries.
    pub fused: Option<FusePlace>,
}

/// A conductor with its fuse, and what becomes of the current in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wire {
    /// Its size.
    pub gauge: Gauge,
    /// The metric size for it.
    pub metric: SquareMillimetres,
    /// What it may carry there.
    pub ampacity: Amps,
    /// How warm it gets.
    pub temperature: Celsius,
    /// Its resistance then, out and back.
    pub resistance: Ohms,
    /// The drop, out and back.
    pub drop: Volts,
    /// The same as a share of the working voltage.
    pub drop_share: Percent,
    /// The heat in it.
    pub loss: Watts,
    /// Its fuse.
    pub fuse: Option<Fuse>,
}

/// Why there is no conductor for a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Refusal {
    /// Its current is beyond the tables.
    Current {
        /// What the fuse must carry.
        needed: Amps,
        /// What the thickest conductor may carry, or the largest fuse if that is less.
        most: Amps,
    },
    /// It is too long.
    Drop {
        /// The drop over the thickest conductor.
        share: Percent,
        /// What is allowed.
        allowed: Percent,
    },
    /// No kind of fuse breaks the short circuit.
    Interrupting {
        /// Its current.
        current: Amps,
        /// Its voltage.
        volts: Volts,
    },
    /// The array would destroy its controller in the cold.
    ColdVoltage {
        /// Its open-circuit voltage.
        voltage: Volts,
        /// What the controller takes.
        limit: Volts,
    },
}

/// A run with its conductor, or why there is none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// What was asked.
    pub asked: Asked,
    /// What it gets.
    pub wire: Result<Wire, Refusal>,
}

/// The short circuit that a run's fuse may meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fault {
    /// Its current.
    pub(super) current: Amps,
    /// Its voltage.
    pub(super) volts: Volts,
}

impl Fault {
    pub(super) fn at_post(own: &Prospective) -> Self {
        Self { current: own.current, volts: own.volts }
    }
}

/// Chooses the conductor and the fuse of a run, with their working.
pub(super) fn wire(
    asked: &Asked,
    basis: &Basis,
    fault: Fault,
    trace: &mut impl Trace,
) -> Result<Wire, Refusal> {
    let needed = asked.current.continuous * ROOM;
    let inputs = [term(asked.current.continuous)];
    let needed = trace.step(Formula::LeastFuse, needed, &inputs);
    let rating = match asked.fused {
        Some(_) => next_rating(needed),
        None => Some(needed),
    };
    let carry = |gauge| basis.ampacity(gauge, asked.surroundings, &mut super::untold());
    let carries = |gauge: Gauge| {
        rating.is_some_and(|rating| {
            let may = asked.fused.and_then(|_| largest_fuse(basis.tables, gauge));
            carry(gauge).is_some_and(|own| own >= rating) && may.is_none_or(|may| rating <= may)
        })
    };
    let Some(rating) = rating.filter(|_| Gauge::all().any(carries)) else {
        let most = Gauge::all().filter_map(carry).fold(Amps::ZERO, Amps::at_least);
        return Err(Refusal::Current { needed, most });
    };
    let fuse = match asked.fused {
        None => None,
        Some(place) => {
            let Fault { current, volts } = fault;
            let (class, breaks) = place
                .class(rating, current, volts)
                .ok_or(Refusal::Interrupting { current, volts })?;
            Some(Fuse { rating, class, place, must_break: current, breaks, volts })
        }
    };
    let holds = |gauge: Gauge| {
        let share = of_gauge(gauge, asked, basis, &mut super::untold()).map(|own| own.drop_share);
        share.is_some_and(|share| share <= asked.allowed) && holds_marine(gauge, asked, basis)
    };
    let able = |gauge: &Gauge| carries(*gauge) && holds(*gauge);
    let Some(gauge) = Gauge::all().find(able) else {
        let thickest =
            Gauge::all().last().and_then(|own| of_gauge(own, asked, basis, &mut super::untold()));
        let share = thickest.map_or(Percent(100.0), |own| own.drop_share);
        return Err(Refusal::Drop { share, allowed: asked.allowed });
    };
    let wire = of_gauge(gauge, asked, basis, trace);
    wire.map(|own| Wire { fuse, ..own }).ok_or(Refusal::Current { needed, most: Amps::ZERO })
}

/// Whether the form of the marine tables holds too, where they count.
fn holds_marine(gauge: Gauge, asked: &Asked, basis: &Basis) -> bool {
    let current = asked.current.working;
    let allowed = asked.current.volts * asked.allowed.ratio();
    basis.tables == Tables::Land
        || gauge.holds_marine_form(&Stretch { current, length: asked.length, allowed })
}

/// What becomes of a run's current in a gauge; nothing if the gauge is in no table.
fn of_gauge(gauge: Gauge, asked: &Asked, basis: &Basis, trace: &mut impl Trace) -> Option<Wire> {
    let RunCurrent { continuous, working, volts, .. } = asked.current;
    let ampacity = basis.ampacity(gauge, asked.surroundings, trace)?;
    let (ambient, ambient_source, _) = basis.around(asked.surroundings);
    let limit = basis.insulation.temperature();
    let load = continuous / ampacity;
    let temperature = ambient + Celsius((limit - ambient).0 * load * load);
    let temperature = trace.step(
        Formula::ConductorTemperature,
        temperature,
        &[
            term(ambient).from(ambient_source),
            term(limit).from(basis.insulation_source()),
            term(continuous),
            term(ampacity),
        ],
    );
    let source = (asked.length_source, &mut *trace);
    let resistance = cable_resistance(asked.length, gauge, temperature, source);
    // Of arrays the drop is reckoned at the best point, of all others with the current that flows for hours at the low cut-off.
    let of_array = matches!(asked.kind, RunKind::Array(_) | RunKind::ModuleString(_));
    let (current, voltage) = if of_array {
        (Symbol::WorkingCurrent, Symbol::WorkingVoltage)
    } else {
        (Symbol::RunCurrent, Symbol::CutOffVoltage)
    };
    let inputs = [term(working).named(current), term(resistance)];
    let drop = trace.step(Formula::WireDrop, working * resistance, &inputs);
    let loss = trace.step(Formula::WireLoss, working * drop, &inputs);
    let share = Percent::of_ratio(drop / volts);
    let voltage = term(volts).named(voltage).from(asked.current.volts_source);
    let share = trace.step(Formula::DropShare, share, &[term(drop), voltage]);
    Some(Wire {
        gauge,
        metric: gauge.metric(),
        ampacity,
        temperature,
        resistance,
        drop,
        drop_share: share,
        loss,
        fuse: None,
    })
}

impl Wire {
    /// Resistance out and back when it is cold, with all the copper that its metric size may have: what limits a short circuit least.
    pub(super) fn cold_resistance(&self, length: Metres) -> Ohms {
        loop_resistance(length, self.metric, Celsius(20.0))
    }
}

impl Run {
    /// The fuse, if there is one.
    #[must_use]
    pub fn fuse(&self) -> Option<&Fuse> {
        self.wire.as_ref().ok().and_then(|wire| wire.fuse.as_ref())
    }

    /// How far its fuse may sit from what feeds it \[mm\]; in a panel it sits in the panel.
    #[must_use]
    pub fn fuse_within_mm(&self) -> Option<f64> {
        let near = |fuse: &&Fuse| !matches!(fuse.place, FusePlace::Panel | FusePlace::Combiner);
        self.fuse().filter(near).map(|_| NEAR_MM)
    }
}
