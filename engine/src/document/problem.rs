//! What can be wrong with something that came in from outside, as typed messages: the field, the value, the place. `words`
//! says them.

use super::schedule::Span;
use super::{Field, List, TextField};
use crate::quantity::{AmpHours, Hours, Irradiation, Percent, Volts, Watts};
use crate::working::Tag;

/// Why a scenario is refused. Words for it are in `words`.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A number outside its range, or none at all.
    OutOfRange {
        /// The field.
        field: Field,
        /// The load or array it belongs to.
        at: Tag,
        /// What was found.
        value: f64,
    },
    /// A text that is too long.
    TooLong {
        /// The text.
        field: TextField,
        /// The load it belongs to.
        at: Tag,
        /// Characters found.
        length: usize,
    },
    /// A list that is too long.
    TooMany {
        /// The list.
        list: List,
        /// Items found.
        length: usize,
    },
    /// A stretch of the day that is empty or outside the day.
    BadSpan {
        /// What was found.
        span: Span,
    },
    /// Peak sun hours of a month that no sky could give.
    ImplausibleSun {
        /// The month, 1 to 12.
        month: u8,
        /// What was found.
        stated: Irradiation,
        /// The most that is accepted.
        most: Irradiation,
    },
    /// An idle draw of the inverter above its whole loss at half load.
    IdleAboveLoss {
        /// The idle draw.
        idle: Watts,
        /// The loss at half load that the efficiency leaves.
        loss: Watts,
    },
    /// A generator that would stop at or under the state of charge at which it starts.
    GeneratorStops {
        /// Where it starts.
        start: Percent,
        /// Where it stops.
        stop: Percent,
    },
    /// A rated capacity without its hours, or hours without their capacity.
    HalfRating {
        /// What is not stated.
        missing: Field,
    },
    /// Two rated capacities of a battery that no battery has.
    RatingsClash {
        /// The one in fewer hours.
        faster: (AmpHours, Hours),
        /// The one in more hours.
        slower: (AmpHours, Hours),
    },
    /// A voltage of one battery that does not go with its chemistry and nominal voltage.
    SetPoint {
        /// The field.
        field: Field,
        /// What was found.
        value: Volts,
        /// The least that is accepted.
        least: Volts,
        /// The most that is accepted.
        most: Volts,
    },
    /// A first day outside 2020 to 2099.
    DateOutOfRange {
        /// What was found.
        date: chrono::NaiveDate,
    },
    /// Text that is not JSON.
    NotJson {
        /// Line of the fault, from 1; 0 where the parser does not tell.
        line: usize,
        /// Column of the fault, from 1.
        column: usize,
    },
    /// JSON, but not one of our plans.
    NotAPlan,
    /// More bytes than any plan has.
    TooLarge {
        /// Bytes found.
        bytes: usize,
    },
    /// A version that this release does not know.
    NewerVersion {
        /// The version found, 0 if a link only shows fields unknown here.
        version: u32,
    },
    /// A field that is unknown, missing or of the wrong kind.
    WrongField {
        /// Where it stands, `loads[3].quantity`.
        path: String,
        /// What is wrong with it.
        fault: FieldFault,
    },
    /// A link with characters that no link has.
    BadLetters,
    /// A link that is cut off or changed on the way.
    Damaged,
}

/// What is wrong with a field of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum FieldFault {
    /// This release does not know it.
    Unknown,
    /// It must be there and is not.
    Missing,
    /// It is there but is no such thing as it should be.
    WrongKind {
        /// What stands there.
        found: Found,
        /// What should.
        wanted: Wanted,
    },
}

/// What stands in a field of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// An explicit nothing.
    Nothing,
    /// Yes or no.
    YesNo(bool),
    /// A number.
    Number(f64),
    /// A text, or its beginning.
    Text(String),
    /// A list of so many.
    List(usize),
    /// Fields in braces.
    Group,
}

/// What a field of a file should be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// A number.
    Number(Field),
    /// A list of so many numbers.
    Numbers(usize, Field),
    /// A text.
    Text(TextField),
    /// Yes or no.
    YesNo,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// One of these forms: as bits those that are a bare word; the others are the one field of a group.
    Form(&'static [&'static str], u32),
    /// A list of some of these words.
    SomeOf(&'static [&'static str]),
    /// A list of whole numbers from 1 to this.
    Numbered(u32),
    /// A whole number from 0 to this.
    Whole(u16),
    /// A date.
    Date,
    /// A clock time.
    Time,
    /// A stretch of the day.
    Span,
    /// Fields in braces.
    Group,
    /// A list of these.
    List(List),
}
/// On a walk problems go boxed: a result is then one word, which counts where a hundred calls hand one on.
impl From<Box<Problem>> for Problem {
    fn from(boxed: Box<Problem>) -> Self {
        *boxed
    }
}
