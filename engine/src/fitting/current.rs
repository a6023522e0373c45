//! The current of each run at the lowest working voltage, by what feeds it and what it feeds.
//!
//! **Method.** Inverter: its rated output over its efficiency at full output and the low cut-off. Loads on direct current: all at once, at
//! the low cut-off; nothing is taken off because some rest. Chargers and controllers: their limits. Arrays: 125 % of the short-circuit
//! current of all strings, since light over the edge of clouds is stronger than in the standard test; with the room of the fuse that is
//! 125 % of 125 % (NFPA 70 690.8), and counts afloat too. Bank: what all loads draw or all chargers give, whichever is more. A string of
//! batteries: what the others would leave to it if one of them were off.
//!
//! **Left out:** turbines, whose plan states means and no highest current; two motors that start in the same moment.

use super::ampacity::Surroundings;
use super::basis::{Basis, Lengths};
use super::fuse::{FusePlace, LARGEST_BRANCH, ROOM};
use super::run::{Asked, RunCurrent, RunKind};
use crate::document::{ControllerKind, Document, Supply};
use crate::load::Load;
use crate::load::catalogue::Appliance;
use crate::quantity::{Amps, Percent, Volts, Within};
use crate::source::Array;
use crate::system::System;
use crate::working::{Formula, Source, Symbol, Tag, Term, Trace, term};

/// Light over the edge of a cloud over that of the standard test (NFPA 70 690.8).
pub(super) const BRIGHT: f64 = 1.25;

/// The drops that are allowed, run by run \[%\]. From bank to consumer they add up to 3 % for what is critical (lights to be seen by,
/// bilge, radio, what lives depend on, an inverter) and to 10 % for all other (ABYC E-11), from a charger to the bank to 2 %.
#[derive(Clone, Copy)]
struct Allowed {
    /// Strings of batteries to where they join; nothing with one string.
    string: f64,
    /// From there to the bus bars.
    bank: f64,
    /// Bus bars to the panel.
    panel: f64,
    /// Chargers to the bus bars.
    charger: f64,
}

impl Allowed {
    /// How the drop is shared out.
    const fn of(strings: f64) -> Self {
        if strings > 1.0 {
            Self { string: 0.5, bank: 0.75, panel: 0.75, charger: 0.75 }
        } else {
            Self { string: 0.0, bank: 1.0, panel: 1.0, charger: 1.0 }
        }
    }

    /// What is left from the bus bars on, or from where what stays alive is tapped.
    fn beyond_bus(self, critical: bool) -> f64 {
        (if critical { CRITICAL } else { OTHER }) - self.string - self.bank
    }

    /// What is left from the panel on.
    fn beyond_panel(self, critical: bool) -> f64 {
        self.beyond_bus(critical) - self.panel
    }
}

/// All the way to something critical \[%\] (ABYC E-11).
const CRITICAL: f64 = 3.0;
/// All the way to anything else \[%\] (ABYC E-11).
const OTHER: f64 = 10.0;
/// Strings of modules to where they join \[%\].
const MODULE_STRING: f64 = 1.0;
/// Least and most of an array \[%\], whatever loss its plan counts with.
const ARRAY: (f64, f64) = (1.0, 3.0);

/// A plan whose runs are asked for.
#[derive(Clone, Copy)]
pub(super) struct Wiring<'a> {
    pub(super) plan: &'a Document,
    pub(super) system: &'a System,
    pub(super) basis: &'a Basis,
    pub(super) lengths: &'a Lengths,
}

/// How a load on direct current is connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Feed {
    /// From the panel.
    Panel,
    /// From the bus bars: too large for a panel.
    Bus,
    /// Ahead of the isolator: it must stay alive.
    Ahead,
}

impl<'a> Wiring<'a> {
    fn cut_off(&self) -> Volts {
        self.system.bank.low_voltage()
    }

    fn appliance(&self, load: &Load) -> Option<Appliance> {
        let section = self.plan.loads.get(usize::from(load.place))?;
        section.appliance.and_then(Appliance::from_number)
    }

    /// Loads on direct current.
    pub(super) fn direct(&self) -> impl Iterator<Item = &'a Load> {
        self.system.loads.iter().filter(|load| load.supply == Supply::Dc && load.running().0 > 0.0)
    }

    /// Whether a load must stay alive when somebody opens the isolator: what lives depend on, bilge pumps and alarms.
    pub(super) fn stays_alive(&self, load: &Load) -> bool {
        use Appliance as A;
        load.vital || matches!(self.appliance(load), Some(A::BilgePump | A::Alarm | A::GasDetector))
    }

    /// Whether a drop of 3 % is all that may be lost on the way to a load.
    fn critical(&self, load: &Load) -> bool {
        use Appliance as A;
        self.stays_alive(load)
            || matches!(
                self.appliance(load),
                Some(A::NavigationLights | A::AnchorLight | A::VhfListening | A::VhfTransmitting)
            )
    }

    /// How a load on direct current is connected.
    pub(super) fn feed(&self, load: &Load) -> Feed {
        if self.stays_alive(load) {
            Feed::Ahead
        } else if load.running().0 / self.cut_off().0 * ROOM > LARGEST_BRANCH.0 {
            Feed::Bus
        } else {
            Feed::Panel
        }
    }

    fn array(&self, place: u16) -> Option<&'a Array> {
        self.system.arrays.iter().find(|array| array.place == place)
    }

    fn at(&self, continuous: Amps) -> RunCurrent {
        RunCurrent {
            continuous,
            peak: continuous,
            working: continuous,
            volts: self.cut_off(),
            volts_source: source_of(self.plan.bank.low_cut_off_v),
        }
    }

    fn inverter(&self, trace: &mut impl Trace) -> Option<RunCurrent> {
        let inverter = self.system.inverter?;
        let (efficiency, volts) = (inverter.curve.efficiency(1.0), self.cut_off());
        let stated = self.plan.inverter.as_ref().and_then(|own| own.efficiency_full_pct);
        let source = source_of(stated);
        let continuous = Amps(inverter.rated.0 / (efficiency * volts.0));
        let inputs = [
            term(inverter.rated),
            term(Percent::of_ratio(efficiency)).from(source),
            self.term_of_cut_off(),
        ];
        let continuous = trace.step(Formula::InverterCurrent, continuous, &inputs);
        let peak = Amps(inverter.surge.0 / (efficiency * volts.0)).at_least(continuous);
        Some(RunCurrent { peak, ..self.at(continuous) })
    }

    fn term_of_cut_off(&self) -> Term {
        term(self.cut_off()).from(source_of(self.plan.bank.low_cut_off_v))
    }

    fn load(&self, load: &Load, trace: &mut impl Trace) -> RunCurrent {
        let (volts, tag) = (self.cut_off(), Tag::Load(load.place));
        let inputs = [term(load.power).of(tag), term(load.quantity), self.term_of_cut_off()];
        let continuous = load.running() / volts;
        let continuous = trace.step_of(tag, Formula::LoadAtCutOff, continuous, &inputs);
        RunCurrent { peak: continuous + load.start_extra() / volts, ..self.at(continuous) }
    }

    /// All loads of the panel, and the standing draw, which nobody knows better where to put.
    fn distribution(&self, trace: &mut impl Trace) -> RunCurrent {
        let of_panel = self.direct().filter(|load| self.feed(load) == Feed::Panel);
        let all: Vec<(u16, RunCurrent)> =
            of_panel.map(|load| (load.place, self.load(load, trace))).collect();
        let standing = self.system.own_standing;
        let mut terms: Vec<Term> =
            all.iter().map(|(place, own)| term(own.continuous).of(Tag::Load(*place))).collect();
        terms.push(term(standing).named(Symbol::OwnStanding));
        let continuous: Amps = all.iter().map(|(_, own)| own.continuous).sum();
        let continuous = trace.step(Formula::RunSum, continuous + standing, &terms);
        let start = all.iter().map(|(_, own)| own.peak - own.continuous);
        let start = start.fold(Amps::ZERO, Amps::at_least);
        RunCurrent { peak: continuous + start, ..self.at(continuous) }
    }

    fn controller(&self, array: &Array, trace: &mut impl Trace) -> RunCurrent {
        let tag = Tag::Array(array.place);
        let inputs = [term(array.limit)];
        self.at(trace.step_of(tag, Formula::ChargerAtLimit, array.limit, &inputs))
    }

    fn of_array(&self, array: &Array, strings: f64, trace: &mut impl Trace) -> RunCurrent {
        let tag = Tag::Array(array.place);
        let plan = self.plan.arrays.get(usize::from(array.place));
        let stated_best = plan.and_then(|own| own.best_point_v);
        let source = source_of(plan.and_then(|own| own.short_circuit_a));
        let short = array.module.short;
        let inputs = [term(short).from(source), term(strings)];
        let continuous = short * (BRIGHT * strings);
        let continuous = trace.step_of(tag, Formula::ArrayCurrent, continuous, &inputs);
        let (power, best) = (array.module.power, array.module.best);
        let best_term = term(best).named(Symbol::BestVoltage).from(source_of(stated_best));
        let (working, volts, source) = match array.controller {
            ControllerKind::Mppt => {
                let inputs = [term(power), best_term, term(strings)];
                let working = power / best * strings;
                let working = trace.step_of(tag, Formula::ArrayBestCurrent, working, &inputs);
                let inputs = [best_term, term(array.series)];
                let volts = best * array.series;
                let volts = trace.step_of(tag, Formula::ArrayBestVoltage, volts, &inputs);
                (working, volts, Source::Plan)
            }
            ControllerKind::Pwm => {
                let inputs = [term(short).from(source), term(strings)];
                let working = short * strings;
                let working = trace.step_of(tag, Formula::ArrayHeldCurrent, working, &inputs);
                (working, self.system.bank.charging_voltage(), Source::Typical)
            }
        };
        RunCurrent { continuous, peak: continuous, working, volts, volts_source: source }
    }

    /// The output of a charger, by its limit on the plate whatever heat takes of it.
    fn charger(&self, kind: RunKind, trace: &mut impl Trace) -> Option<RunCurrent> {
        let plan = self.plan;
        let limit = match kind {
            RunKind::Alternator => self.system.alternator.as_ref().and(plan.alternator.as_ref()),
            RunKind::Shore => self.system.shore.as_ref().and(plan.shore.as_ref()),
            _ => None,
        };
        let generator = self.system.generator.as_ref().filter(|_| kind == RunKind::Generator);
        let limit = limit.map(|own| Amps(own.limit_a)).or(generator.map(|own| own.limit))?;
        Some(self.at(trace.step(Formula::ChargerAtLimit, limit, &[term(limit)])))
    }

    /// What the bank gives and takes: all loads or all chargers.
    fn battery(&self, trace: &mut impl Trace) -> RunCurrent {
        let mut out: Vec<RunCurrent> = Vec::new();
        out.extend(self.inverter(trace));
        out.push(self.distribution(trace));
        let apart = self.direct().filter(|load| self.feed(load) != Feed::Panel);
        out.extend(apart.map(|load| self.load(load, trace)));
        let mut into: Vec<RunCurrent> =
            self.system.arrays.iter().map(|own| self.controller(own, trace)).collect();
        for kind in [RunKind::Alternator, RunKind::Shore, RunKind::Generator] {
            into.extend(self.charger(kind, trace));
        }
        let mut sum = |of: &[RunCurrent], formula| {
            let terms: Vec<Term> = of.iter().map(|own| term(own.continuous)).collect();
            let sum: Amps = of.iter().map(|own| own.continuous).sum();
            if terms.is_empty() { sum } else { trace.step(formula, sum, &terms) }
        };
        let (given, taken) = (sum(&out, Formula::AllOut), sum(&into, Formula::AllIn));
        let continuous = if into.is_empty() {
            let inputs = [term(given).named(Symbol::AllOut)];
            trace.step(Formula::RunSum, given, &inputs)
        } else {
            let inputs = [term(given), term(taken)];
            trace.step(Formula::BankCurrent, given.at_least(taken), &inputs)
        };
        let starts = out.iter().map(|own| own.peak - own.continuous);
        let start = starts.fold(Amps::ZERO, Amps::at_least);
        RunCurrent { peak: continuous.at_least(given + start), ..self.at(continuous) }
    }

    fn string(&self, trace: &mut impl Trace) -> RunCurrent {
        let whole = self.battery(trace);
        let strings = self.system.bank.strings;
        let share = 1.0 / (strings - 1.0);
        let inputs = [term(whole.continuous), term(strings)];
        let continuous = trace.step(Formula::StringCurrent, whole.continuous * share, &inputs);
        RunCurrent { peak: whole.peak * share, ..self.at(continuous) }
    }

    /// Every run of the plan, the bank's first.
    pub(super) fn kinds(&self) -> Vec<RunKind> {
        let system = self.system;
        let mut kinds = Vec::new();
        if system.bank.strings > 1.0 {
            kinds.push(RunKind::BatteryString);
        }
        kinds.push(RunKind::Battery);
        if system.inverter.is_some() {
            kinds.push(RunKind::Inverter);
        }
        kinds.push(RunKind::Distribution);
        kinds.extend(self.direct().map(|load| RunKind::Branch(load.place)));
        for array in &system.arrays {
            if needs_string_fuses(array) {
                kinds.push(RunKind::ModuleString(array.place));
            }
            kinds.extend([RunKind::Array(array.place), RunKind::Controller(array.place)]);
        }
        let chargers = [RunKind::Alternator, RunKind::Shore, RunKind::Generator];
        kinds.extend(
            chargers.into_iter().filter(|kind| self.charger(*kind, &mut super::untold()).is_some()),
        );
        kinds
    }

    /// The current of a run, the drop that is allowed \[%\] and where its fuse sits; nothing if the plan has no such run.
    fn fed(
        &self,
        kind: RunKind,
        trace: &mut impl Trace,
    ) -> Option<(RunCurrent, f64, Option<FusePlace>)> {
        use RunKind as K;
        let strings = self.system.bank.strings;
        let share = Allowed::of(strings);
        Some(match kind {
            K::BatteryString => (self.string(trace), share.string, Some(FusePlace::Post)),
            K::Battery => {
                let place = if strings > 1.0 { FusePlace::Bus } else { FusePlace::Post };
                (self.battery(trace), share.bank, Some(place))
            }
            K::Inverter => (self.inverter(trace)?, share.beyond_bus(true), Some(FusePlace::Bus)),
            K::Distribution => (self.distribution(trace), share.panel, Some(FusePlace::Bus)),
            K::Branch(place) => {
                let load = self.direct().find(|load| load.place == place)?;
                let critical = self.critical(load);
                let (allowed, fused) = match self.feed(load) {
                    Feed::Panel => (share.beyond_panel(critical), FusePlace::Panel),
                    Feed::Bus => (share.beyond_bus(critical), FusePlace::Bus),
                    Feed::Ahead => (share.beyond_bus(critical), FusePlace::AheadOfIsolator),
                };
                (self.load(load, trace), allowed, Some(fused))
            }
            K::Controller(place) => {
                (self.controller(self.array(place)?, trace), share.charger, Some(FusePlace::Bus))
            }
            K::Array(place) => {
                let array = self.array(place)?;
                let allowed = array.cable.0.within(ARRAY.0, ARRAY.1);
                (self.of_array(array, array.parallel, trace), allowed, None)
            }
            K::ModuleString(place) => {
                let current = self.of_array(self.array(place)?, 1.0, trace);
                (current, MODULE_STRING, Some(FusePlace::Combiner))
            }
            K::Alternator | K::Shore | K::Generator => {
                (self.charger(kind, trace)?, share.charger, Some(FusePlace::Bus))
            }
        })
    }

    /// What a run is asked; nothing if no current flows in it.
    pub(super) fn asked(&self, kind: RunKind, trace: &mut impl Trace) -> Option<Asked> {
        let (current, allowed, fused) = self.fed(kind, trace)?;
        let count = match kind {
            RunKind::BatteryString => self.system.bank.strings,
            RunKind::ModuleString(place) => self.array(place)?.parallel,
            _ => 1.0,
        };
        let allowed = Percent(allowed);
        let (length, length_source) = self.lengths.of(kind, self.basis.tables);
        let surroundings = match kind {
            RunKind::Array(_) | RunKind::ModuleString(_) => Surroundings::Roof,
            RunKind::Alternator => Surroundings::Engine,
            _ => Surroundings::Usual,
        };
        (current.continuous.0 > 0.0).then_some(Asked {
            kind,
            count,
            current,
            length,
            length_source,
            allowed,
            surroundings,
            fused,
        })
    }
}

/// Where a value comes from that may be left to what is typical.
pub(super) fn source_of(stated: Option<f64>) -> Source {
    stated.map_or(Source::Typical, |_| Source::Plan)
}

/// Whether each string of an array needs a fuse: from three side by side on two can drive more into the third than it carries.
pub(super) fn needs_string_fuses(array: &Array) -> bool {
    array.parallel >= 3.0
}
