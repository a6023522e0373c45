//! What setting up a gauge has to say; the words are in the folder of each language.

use super::{Language, NameOf, Words};
use crate::gauge::{
    Ask, Check, Equalise, Figure, Judged, Kind, Misset, Mistake, Note, Point, Setting, Telltale,
    Trial, Unread, Years,
};
use crate::quantity::{Amps, Hours, Quantity, Unit, Volts};

/// A word or two over a column or a list about the gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnGauge {
    /// Over the settings.
    Settings,
    /// Over the figure to enter.
    Enter,
    /// Over the least and the most.
    Between,
    /// Before what a figure that is too high does.
    TooHigh,
    /// Before what a figure that is too low does.
    TooLow,
    /// Over the set-points of chargers.
    Chargers,
    /// Before the absorption voltage.
    Absorption,
    /// Before the float voltage.
    Float,
    /// Behind a float voltage that may be left out.
    OrNone,
    /// Instead of a voltage that there is not.
    None,
    /// Before the voltage that brings cells level.
    Equalise,
    /// Before how much lower chargers hold in warmth.
    ByKelvin,
    /// Before the low cut-off.
    CutOff,
    /// Before the voltage at which loads come on again.
    Reconnect,
    /// Before the range that is usual.
    Usual,
    /// Over what must be known.
    ToKnow,
    /// Over what would be shown in a year.
    InAYear,
    /// Over what a mistake does.
    Mistake,
    /// Over the same of the gauge that is set up by its card.
    ByTheCard,
    /// Before what it is known by.
    KnownBy,
    /// Where this plan and this weather show it.
    ShowsHere,
    /// Where they do not.
    HiddenHere,
    /// Over the list of checks.
    Checks,
    /// Over what is expected.
    Expected,
    /// Over what passes.
    Passes,
    /// Over the room for a reading.
    Reading,
    /// Over the room for what a gauge shows beside a clamp meter.
    OnTheGauge,
    /// Before the room for a name and a date.
    Signed,
    /// Over the room for the current of a drop.
    AtCurrent,
    /// For something that is done or not.
    Done,
    /// Over the choice of a mistake.
    TryMistake,
    /// In the place of a mistake once somebody has turned figures.
    OwnFigures,
    /// What the gauge shows, in a picture.
    Shown,
    /// What is truly there, in a picture.
    Truth,
    /// Its wrong jumps to full or nothing, in a picture.
    WrongJump,
    /// Over the picture of the first days.
    FirstDays,
    /// Over the picture of the year.
    EachMorning,
    /// Over the most that it shows too much in a month.
    TooMuch,
    /// Over the most that it shows too little.
    TooLittle,
    /// Over how often it set itself to full.
    SetToFull,
    /// Over how many of its jumps were wrong.
    WrongJumps,
}

impl OnGauge {
    /// All of them.
    pub const ALL: [Self; 41] = [
        Self::Settings,
        Self::Enter,
        Self::Between,
        Self::TooHigh,
        Self::TooLow,
        Self::Chargers,
        Self::Absorption,
        Self::Float,
        Self::OrNone,
        Self::None,
        Self::Equalise,
        Self::ByKelvin,
        Self::CutOff,
        Self::Reconnect,
        Self::Usual,
        Self::ToKnow,
        Self::InAYear,
        Self::Mistake,
        Self::ByTheCard,
        Self::KnownBy,
        Self::ShowsHere,
        Self::HiddenHere,
        Self::Checks,
        Self::Expected,
        Self::Passes,
        Self::Reading,
        Self::OnTheGauge,
        Self::AtCurrent,
        Self::Signed,
        Self::Done,
        Self::TryMistake,
        Self::OwnFigures,
        Self::Shown,
        Self::Truth,
        Self::WrongJump,
        Self::FirstDays,
        Self::EachMorning,
        Self::TooMuch,
        Self::TooLittle,
        Self::SetToFull,
        Self::WrongJumps,
    ];
}

/// What is said of a setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SettingWords {
    /// What it is.
    pub name: &'static str,
    /// Why this figure.
    pub why: &'static str,
    /// What happens if it is too high.
    pub high: &'static str,
    /// What happens if it is too low.
    pub low: &'static str,
}

impl Language {
    /// A word or two over a column or a list about the gauge.
    #[must_use]
    pub fn on_gauge(self, what: OnGauge) -> &'static str {
        speak!(self, gauge::on_gauge(what))
    }

    /// A figure of a gauge.
    #[must_use]
    pub fn gauge_figure(self, figure: Figure) -> &'static str {
        speak!(self, gauge::figure(figure))
    }

    /// A question under which settings stand.
    #[must_use]
    pub fn gauge_question(self, ask: Ask) -> &'static str {
        speak!(self, gauge::question(ask))
    }

    /// What is said of a setting.
    #[must_use]
    pub fn setting(self, kind: Kind) -> SettingWords {
        speak!(self, gauge::setting(kind))
    }

    /// A thing that is wrong with a gauge.
    #[must_use]
    pub fn mistake(self, mistake: Mistake) -> &'static str {
        speak!(self, gauge_checks::mistake(mistake))
    }

    /// By what it shows.
    #[must_use]
    pub fn mistake_shows(self, telltale: Telltale) -> &'static str {
        speak!(self, gauge_checks::telltale(telltale))
    }

    /// How something is checked.
    #[must_use]
    pub fn how_to_check(self, point: &Point) -> &'static str {
        speak!(self, gauge_checks::how(point))
    }
}

impl Words {
    /// A figure in a unit, as exactly as a gauge or a meter shows it: hundredths of volts, minutes, thousandths of what
    /// is small.
    #[must_use]
    pub fn metered(self, value: f64, unit: Unit) -> String {
        let shown = |value: f64, digits, unit: &str| {
            let number = self.padded(value.abs(), digits);
            let minus = value < 0.0 && number.bytes().any(|digit| (b'1'..=b'9').contains(&digit));
            let space = if unit.is_empty() { "" } else { "\u{a0}" };
            format!("{}{number}{space}{unit}", if minus { "−" } else { "" })
        };
        match unit {
            Unit::Volt if value.abs() < 0.1 => shown(value, 3, Volts::UNIT.symbol()),
            Unit::Volt => shown(value, 2, Volts::UNIT.symbol()),
            Unit::Amp if value.abs() < 1.0 => shown(value, 3, Amps::UNIT.symbol()),
            Unit::Hour if value < 1.0 => shown(value * 60.0, 0, "min"),
            Unit::Hour => self.amount(Hours(value)),
            Unit::One => shown(value, 2, ""),
            unit => shown(value, 1, self.unit(unit)),
        }
    }

    /// From the least to the most of something that is metered.
    #[must_use]
    pub fn metered_between(self, least: f64, most: f64, unit: Unit) -> String {
        let (least, most) = (self.metered(least, unit), self.metered(most, unit));
        if least == most { least } else { format!("{least} – {most}") }
    }

    /// The figure to enter, and the range in which it makes sense.
    #[must_use]
    pub fn to_enter(self, setting: &Setting) -> [String; 2] {
        let unit = setting.kind.unit();
        [self.metered(setting.value, unit), self.metered_between(setting.least, setting.most, unit)]
    }

    /// Whether and how cells are brought level.
    #[must_use]
    pub fn equalising(self, equalise: Equalise) -> String {
        speak!(self.language, gauge::equalising(self, equalise))
    }

    /// Why a figure of a gauge is refused: which, what was given, what is allowed.
    #[must_use]
    pub fn misset(self, misset: &Misset) -> String {
        self.misset_text(misset.figure, &self.as_given(misset.value))
    }

    /// The same of what was typed.
    #[must_use]
    pub fn misset_text(self, figure: Figure, given: &str) -> String {
        let (least, most) = figure.range();
        let unit = self.unit(figure.unit());
        let range = [least, most].map(|own| format!("{}\u{a0}{unit}", self.as_given(own)));
        let given = if given.trim().is_empty() { "–" } else { given };
        speak!(self.language, gauge::misset(self.gauge_figure(figure), given, &range))
    }

    /// How far the count moves against the truth in a day.
    #[must_use]
    pub fn drift(self, trial: &Trial) -> String {
        speak!(self.language, gauge::drift(self, trial.drift))
    }

    /// Something that whoever sets up a gauge must know.
    #[must_use]
    pub fn gauge_note(self, note: &Note) -> String {
        speak!(self.language, gauge::note(self, note))
    }

    /// What a gauge would show through a course, in a sentence or two.
    #[must_use]
    pub fn trial(self, trial: &Trial) -> String {
        speak!(self.language, gauge::trial(self, trial))
    }

    /// The least and the most of a gauge's years.
    #[must_use]
    pub fn gauge_years(self, years: &Years) -> String {
        speak!(self.language, gauge::years(self, years))
    }

    /// The two times that are left when a gauge first shows one: as it tells it, and as the plan goes; none where none comes.
    #[must_use]
    pub fn times_left(self, gauge: Option<Hours>, plan: Option<Hours>) -> String {
        speak!(self.language, gauge::times_left(self, gauge, plan))
    }

    /// What is checked.
    #[must_use]
    pub fn checked(self, point: &Point, name_of: NameOf<'_>) -> String {
        speak!(self.language, gauge_checks::point(self, point, name_of))
    }

    /// What a reading means, and what to do.
    #[must_use]
    pub fn judged(self, check: &Check, judged: &Judged) -> String {
        speak!(self.language, gauge_checks::judged(self, check, judged))
    }

    /// Why a reading is refused.
    #[must_use]
    pub fn unread(self, unread: &Unread, name_of: NameOf<'_>) -> String {
        speak!(self.language, gauge_checks::unread(self, unread, name_of))
    }
}
