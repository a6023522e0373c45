//! Words of setting up a gauge. Checks and mistakes are in `gauge_checks`.

use crate::gauge::{Ask, Equalise, Figure, Kind, MARGIN, Note, Trial, Years};
use crate::quantity::{Hours, Percent, Unit};
use crate::words::Words;
use crate::words::gauge::{OnGauge, SettingWords};

/// A word or two over a column or a list about the gauge.
#[must_use]
pub fn on_gauge(what: OnGauge) -> &'static str {
    use OnGauge as G;
    match what {
        G::Settings => "What the gauge is told",
        G::Enter => "enter",
        G::Between => "makes sense",
        G::TooHigh => "too high",
        G::TooLow => "too low",
        G::Chargers => "Beside it, chargers and controllers at 25 °C",
        G::Absorption => "Absorption",
        G::Float => "Float",
        G::OrNone => "or none",
        G::None => "none",
        G::Equalise => "Equalise",
        G::ByKelvin => "Lower for each degree over 25 °C",
        G::CutOff => "Low cut-off",
        G::Reconnect => "Loads on again",
        G::Usual => "usual",
        G::ToKnow => "Before you press anything",
        G::InAYear => "What it would show in a year of invented weather",
        G::Mistake => "With this mistake",
        G::ByTheCard => "Set up by the card",
        G::KnownBy => "Known by",
        G::ShowsHere => "It shows in this plan and weather.",
        G::HiddenHere => "It does not show in this plan and weather; only a meter finds it.",
        G::Checks => "Before the system is trusted",
        G::Expected => "expected",
        G::Passes => "passes",
        G::Reading => "reading",
        G::OnTheGauge => "on the gauge",
        G::AtCurrent => "at a current of",
        G::Signed => "Name, date, signature",
        G::Done => "done",
        G::TryMistake => "A mistake to try",
        G::OwnFigures => "Your own figures",
        G::Shown => "what the gauge shows",
        G::Truth => "what is truly there",
        G::WrongJump => "jumps to 100 % or 0 % though it is not so",
        G::FirstDays => "The first fourteen days",
        G::EachMorning => "A year, each morning at six",
        G::TooMuch => "too much, at most",
        G::TooLittle => "too little, at most",
        G::SetToFull => "times set to full",
        G::WrongJumps => "wrong jumps",
    }
}

/// A question under which settings stand.
#[must_use]
pub fn question(ask: Ask) -> &'static str {
    match ask {
        Ask::HowBig => "How big is it?",
        Ask::WhenFull => "When may it say full?",
        Ask::WhatIsLost => "What is lost on the way?",
        Ask::WhenToWarn => "When should it warn?",
    }
}

/// What is said of a setting.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn setting(kind: Kind) -> SettingWords {
    let [name, why, high, low] = match kind {
        Kind::Capacity => [
            "Capacity",
            "What the bank holds at its age and in the cold of the month you start, not what the label promises.",
            "It still shows charge when the lights dim.",
            "It reaches nothing while there is much left.",
        ],
        Kind::HourRate => [
            "Hours of that capacity",
            "The hours in which the label's capacity is drawn; faster discharge is told by them.",
            "It counts moderate loads as fast ones and falls too soon.",
            "It counts fast loads as moderate ones and falls too late.",
        ],
        Kind::FullVoltage => [
            "Full voltage",
            "A little under the lowest voltage that your chargers hold; a compensated charger holds least in the heat.",
            "It never says full, and its errors grow for months.",
            "It says full on any bright morning.",
        ],
        Kind::Tail => [
            "Tail current",
            "The current at which your charger ends absorption, as a share of the capacity you entered. Never under that of the charger.",
            "It says full while the bank still takes charge.",
            "The charger stops first and it never says full.",
        ],
        Kind::Hold => [
            "For how long",
            "Some minutes, so that a cloud or a pump does not look like the end of charging.",
            "It may miss a short time at full.",
            "A passing cloud may set it to full.",
        ],
        Kind::Efficiency => [
            "Charge efficiency",
            "The share of the charge put in that comes out again.",
            "From day to day it shows more than there is.",
            "From day to day it shows less than there is.",
        ],
        Kind::Exponent => [
            "Rate exponent",
            "How much a fast discharge takes from what is at hand. What it leaves comes back at rest, so the figure is low until the next full charge.",
            "Heavy loads pull the figure down too far.",
            "After heavy loads the lights dim sooner than it says.",
        ],
        Kind::SelfDischarge => [
            "Lost by standing, a month",
            "What the bank loses with nothing connected, if your gauge asks for it.",
            "It falls too far while nobody is there.",
            "After weeks of standing it shows too much.",
        ],
        Kind::Inside => [
            "Drawn inside the batteries",
            "Their protection draws this where no shunt sees it. If your gauge cannot be told, it is off by as much until the next full.",
            "It falls too far while nobody is there.",
            "After weeks without full it shows too much.",
        ],
        Kind::Threshold => [
            "Smallest current that counts",
            "Under your standing draw, and over what a gauge reads where nothing flows.",
            "Small loads are never counted.",
            "It counts what is only its own error.",
        ],
        Kind::Floor => [
            "Time left counts down to",
            "What you do not want to undercut: your reserve, or what is left when loads are cut off.",
            "The time left is short though there is more.",
            "The time left counts on what you must not use.",
        ],
        Kind::Warn => [
            "Warn at",
            "A quarter of a day's use before that, so that there is time to do something.",
            "It warns so often that nobody listens.",
            "It warns when it is too late.",
        ],
        Kind::Averaged => [
            "Time left averages over",
            "A few cycles of a compressor: long enough not to jump with each load.",
            "It is slow to see that a load came on.",
            "It jumps with every load.",
        ],
    };
    SettingWords { name, why, high, low }
}

/// A figure of a gauge that is no setting of it.
#[must_use]
pub fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::Set(kind) => setting(kind).name,
        Figure::Offset => "Current read where nothing flows",
        Figure::Gain => "Share by which it reads too much",
        Figure::UnseenLoads => "Share of the loads that does not pass the shunt",
        Figure::UnseenCharger => "Share of the main charger that does not pass the shunt",
        Figure::Start => "What it shows at first",
    }
}

/// Why a figure of a gauge is refused.
#[must_use]
pub fn misset(name: &str, value: &str, [least, most]: &[String; 2]) -> String {
    format!("{name}: {value}; it must lie between {least} and {most}.")
}

/// Whether and how cells are brought level.
#[must_use]
pub fn equalising(words: Words, equalise: Equalise) -> String {
    match equalise {
        Equalise::Supervised((least, most)) => {
            let range = words.metered_between(least.0, most.0, Unit::Volt);
            format!("{range}, only while somebody watches, by the maker's sheet")
        }
        Equalise::UnlessSheet => "never, unless the maker's sheet says so".into(),
        Equalise::Never => "never".into(),
    }
}

/// Something that whoever sets up a gauge must know.
#[must_use]
pub fn note(words: Words, note: &Note) -> String {
    let plain = match note {
        Note::SheetFirst => {
            "The makers' sheets come first, then local codes and licensed practice; these are the figures where a sheet is silent."
        }
        Note::NotTheLabel { label, holds } => {
            return format!(
                "Not the {} of the label: at its age, in the cold of this month and at the currents of this plan it holds {}. Enter it anew when the season turns.",
                words.amount(*label),
                words.amount(*holds)
            );
        }
        Note::LoadSide => {
            "Only the shunt goes on the minus post of the bank; the minus of every load and every charger goes on its load side, or it is not counted."
        }
        Note::FirstUse => {
            "First use: charge until absorption has truly ended and the current has faded, and only then set the gauge to full. Until it has seen full once, its percentage means nothing."
        }
        Note::NeverOnEmpty => {
            "Never set it to full on a bank that is not: it would show charge that is not there until the next full charge."
        }
        Note::AfterReplacing => {
            "After replacing batteries: enter capacity, efficiency and voltages anew, charge to full and set it to full; the old count is worth nothing. Never mix old and new batteries."
        }
        Note::NearlyFull => {
            "When the current has faded to the tail, lead-acid still lacks some per cent, up to about a tenth; give it a long absorption now and then, as its sheet allows."
        }
        Note::NotByVoltage => {
            "The voltage of these batteries hardly changes between nearly full and nearly empty: do not judge the gauge by it."
        }
        Note::FindEfficiency => {
            "The efficiency can be found: amp-hours out over amp-hours in, between two times at full."
        }
        Note::KeepProtection => {
            "These batteries can burn when charged outside their limits: never bridge their protection, and raise no limit to please the gauge."
        }
        Note::Hydrogen => {
            "Charging lead-acid high gives off hydrogen, which explodes: air, and no spark."
        }
        Note::Shock => {
            "Over 60\u{a0}V direct current can kill and its arc does not go out by itself: leave the work at the bank to a licensed person."
        }
        Note::ModulesLive => "Modules are live whenever there is light, and no switch ends that.",
        Note::Vital => {
            "A life may depend on a load of this plan. No gauge is an alarm: it needs a low-voltage alarm and a backup of its own, also while you measure."
        }
    };
    plain.to_owned()
}

/// What a gauge would show through a course.
#[must_use]
pub fn trial(words: Words, trial: &Trial) -> String {
    let share = |ratio: f64| words.metered(ratio * 100.0, Unit::Percent);
    let often = match trial.fulls.len() {
        0 => "It never sets itself to full".to_owned(),
        _ => format!(
            "It sets itself to full {} times a month",
            words.rounded((trial.fulls_a_month() * 10.0).round() / 10.0)
        ),
    };
    let wrong = match trial.wrong_fulls().count() {
        0 => String::new(),
        count => format!(
            ", {} of {} times with more than {} missing",
            count,
            trial.fulls.len(),
            words.amount(Percent::of_ratio(MARGIN))
        ),
    };
    let empties = match trial.wrong_empties.len() {
        0 => String::new(),
        1 => " It falls to nothing once though there is charge.".to_owned(),
        count => format!(" It falls to nothing {count} times though there is charge."),
    };
    let days = match (trial.longest_since_full.0 / 24.0).round() {
        1.0 => "1 day".to_owned(),
        days => format!("{} days", words.rounded(days)),
    };
    format!(
        "{often}{wrong}. It shows at most {} too much and {} too little, {} in the mean; the longest time without full is {}.{empties}",
        share(trial.over),
        share(trial.under),
        share(trial.mean_off),
        days
    )
}

/// The least and the most of a gauge's years.
#[must_use]
pub fn years(words: Words, years: &Years) -> String {
    let span = |(least, most): (f64, f64)| {
        let (least, most) = (words.rounded(least), words.rounded(most));
        if least == most { least } else { format!("{least} – {most}") }
    };
    let tenths = |(least, most): (f64, f64)| {
        let tenth = |own: f64| (own * 10.0).round() / 10.0;
        span((tenth(least), tenth(most)))
    };
    let days = |own: Hours| (own.0 / 24.0).round();
    let (least, most) = years.longest_since_full;
    let off = |(least, most): (f64, f64)| {
        words.metered_between(least * 100.0, most * 100.0, Unit::Percent)
    };
    format!(
        "In {} such years: set to full {} times a month, {} days without it at the longest, at most {} too much and {} too little.",
        years.count,
        tenths(years.fulls_a_month),
        span((days(least), days(most))),
        off(years.over),
        off(years.under)
    )
}

/// The two times that are left when a gauge first shows one.
#[must_use]
pub fn times_left(words: Words, gauge: Option<Hours>, plan: Option<Hours>) -> String {
    let whole = |hours: Hours| words.duration(hours);
    let gauge = gauge
        .map_or("no time left, as it charges".to_owned(), |own| format!("{} left", whole(own)));
    let plan = plan.map_or("is not reached in this course".to_owned(), |own| {
        format!("is reached after {}", whole(own))
    });
    format!("At first the gauge shows {gauge}; by what will happen the reserve {plan}.")
}

/// How far the count moves against the truth in a day.
#[must_use]
pub fn drift(words: Words, drift: Percent) -> String {
    let way = if drift.0 < 0.0 { "falls" } else { "rises" };
    let share = words.metered(drift.0.abs(), Unit::Percent);
    format!("Between two times at full its count {way} against the truth by {share} a day.")
}
