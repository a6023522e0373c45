//! What the wiring of a plan has to say; the words are in the folder of each language.

use super::{Language, NameOf, Words};
use crate::fitting::{
    Fitting, FuseClass, FusePlace, Gauge, Item, Note, Part, Refusal, Run, RunKind, Unfit,
};

/// A word or two over a column or a list of the wiring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnFitting {
    /// Over the runs.
    Runs,
    /// Over the length of a run.
    OneWay,
    /// Over the current that flows for hours.
    Continuous,
    /// Over the current of a moment.
    Moment,
    /// Over the size of the conductor.
    Conductor,
    /// Over what it may carry.
    MayCarry,
    /// Over the drop.
    Drop,
    /// Over the heat.
    Heat,
    /// Over the fuse.
    Fuse,
    /// Over where the fuse sits.
    FuseAt,
    /// Behind a length that nobody measured.
    Assumed,
    /// Instead of a fuse where none is needed.
    NoFuse,
    /// Over the runs that were refused.
    Refused,
    /// Over shunt, bus bars and short circuit.
    AtTheBank,
    /// Before the short-circuit current.
    ShortCircuit,
    /// Before the shunt.
    Shunt,
    /// Before the bus bars.
    BusBars,
    /// Before the runs in the order of their lugs.
    LugOrder,
    /// Over what must be known.
    ToKnow,
    /// Over what to buy.
    ToBuy,
}

impl OnFitting {
    /// All of them.
    pub const ALL: [Self; 20] = [
        Self::Runs,
        Self::OneWay,
        Self::Continuous,
        Self::Moment,
        Self::Conductor,
        Self::MayCarry,
        Self::Drop,
        Self::Heat,
        Self::Fuse,
        Self::FuseAt,
        Self::Assumed,
        Self::NoFuse,
        Self::Refused,
        Self::AtTheBank,
        Self::ShortCircuit,
        Self::Shunt,
        Self::BusBars,
        Self::LugOrder,
        Self::ToKnow,
        Self::ToBuy,
    ];
}

impl Language {
    /// A word or two over a column or a list of the wiring.
    #[must_use]
    pub fn on_fitting(self, what: OnFitting) -> &'static str {
        speak!(self, fitting::on_fitting(what))
    }

    /// What a run joins.
    #[must_use]
    pub fn run_name(self, run: RunKind, name_of: NameOf<'_>) -> String {
        speak!(self, fitting::run_name(self, run, name_of))
    }

    /// A kind of fuse.
    #[must_use]
    pub fn fuse_class(self, class: FuseClass) -> &'static str {
        speak!(self, fitting::fuse_class(class))
    }

    /// Where a fuse sits.
    #[must_use]
    pub fn fuse_place(self, place: FusePlace) -> &'static str {
        speak!(self, fitting::fuse_place(place))
    }

    /// A part of the diagram; empty for a mere junction.
    #[must_use]
    pub fn fitting_part(self, part: Part, name_of: NameOf<'_>) -> String {
        speak!(self, fitting::part(self, part, name_of))
    }
}

impl Words {
    /// The size of a conductor by both measures, that of the reader's habit first: `16 mm² (AWG 6)`.
    #[must_use]
    pub fn conductor(self, gauge: Gauge) -> String {
        let (metric, american) =
            (self.amount(gauge.metric()), format!("AWG\u{a0}{}", gauge.name()));
        match self.habits.wire {
            super::WireSize::SquareMillimetres => format!("{metric} ({american})"),
            super::WireSize::AmericanGauge => format!("{american} ({metric})"),
        }
    }

    /// What is written of a part in the diagram: its name, and the figure that matters there (a fuse's rating, a device's conductor).
    #[must_use]
    pub fn fitting_label(self, fitting: &Fitting, part: Part, name_of: NameOf<'_>) -> [String; 2] {
        let fuse = |kind| {
            let fuse = fitting.run(kind).and_then(Run::fuse);
            fuse.map(|fuse| self.amount(fuse.rating)).unwrap_or_default()
        };
        let conductor = |kind| {
            let wire = fitting.run(kind).and_then(|run| run.wire.as_ref().ok());
            wire.map(|wire| self.conductor(wire.gauge)).unwrap_or_default()
        };
        let check = |place| fitting.arrays.iter().find(|own| own.array == place);
        let figure = match part {
            // Each of what stays alive has a fuse of its own; the list tells them.
            Part::Fuse(RunKind::Branch(_)) if is_alive(fitting, part) => String::new(),
            Part::Fuse(kind) => fuse(kind),
            Part::Isolator => fuse(RunKind::Battery),
            Part::Bank => conductor(RunKind::Battery),
            Part::Shunt => {
                fitting.shunt.map(|own| self.amount(own.shunt.rated)).unwrap_or_default()
            }
            Part::Inverter => conductor(RunKind::Inverter),
            Part::Panel => conductor(RunKind::Distribution),
            Part::Load(place) => conductor(RunKind::Branch(place)),
            Part::Controller(place) => conductor(RunKind::Controller(place)),
            Part::Array(place) => conductor(RunKind::Array(place)),
            Part::ArraySwitch(place) => {
                check(place).map(|own| self.amount(own.voltage)).unwrap_or_default()
            }
            Part::Alternator => conductor(RunKind::Alternator),
            Part::Shore => conductor(RunKind::Shore),
            Part::Generator => conductor(RunKind::Generator),
            Part::Tap | Part::PlusBar | Part::MinusBar | Part::Alive => String::new(),
        };
        [self.fitting_part(part, name_of), figure]
    }

    /// Why there is no conductor for a run, and what to do.
    #[must_use]
    pub fn refusal(self, refusal: &Refusal) -> String {
        speak!(self.language, fitting::refusal(self, refusal))
    }

    /// Why nothing can be said by a basis: what was asked, what is allowed.
    #[must_use]
    pub fn unfit(self, unfit: &Unfit, name_of: NameOf<'_>) -> String {
        speak!(self.language, fitting::unfit(self, unfit, name_of))
    }

    /// Something that whoever does the work must know.
    #[must_use]
    pub fn fitting_note(self, note: &Note, name_of: NameOf<'_>) -> String {
        speak!(self.language, fitting::note(self, note, name_of))
    }

    /// Something to buy.
    #[must_use]
    pub fn to_buy(self, item: &Item) -> String {
        speak!(self.language, fitting::to_buy(self, item))
    }
}

/// Whether a fuse in the diagram stands for those of all that stays alive.
fn is_alive(fitting: &Fitting, part: Part) -> bool {
    let Part::Fuse(kind) = part else { return false };
    let fused = fitting.run(kind).and_then(|run| run.asked.fused);
    fused == Some(FusePlace::AheadOfIsolator)
}
