//! What is said of setting up and checking a gauge.

use std::collections::BTreeSet;

use sunlarder_engine::fitting::RunKind;
use sunlarder_engine::gauge::{
    Ask, Card, ChargerPoints, Check, Course, Equalise, Figure as GaugeFigure, Judged, Kind as Told,
    Misset, Mistake, Note, Point, Sheet, Telltale, Todo, Trial, Truth, Unread, Years,
};
use sunlarder_engine::place::SpreadGrid;
use sunlarder_engine::quantity::{AmpHours, Amps, Hours, Volts};
use sunlarder_engine::words::Words;
use sunlarder_engine::words::gauge::OnGauge;
use sunlarder_engine::working::Tag;

use crate::{ENGLISH, EXAMPLES, LONG, SPANISH, answered, leftovers};

/// Every note there is; the cautions of a gauge must never be silent.
const NOTES: [Note; 14] = [
    Note::SheetFirst,
    Note::NotTheLabel { label: AmpHours(200.5), holds: AmpHours(150.5) },
    Note::LoadSide,
    Note::FirstUse,
    Note::NeverOnEmpty,
    Note::AfterReplacing,
    Note::NearlyFull,
    Note::NotByVoltage,
    Note::FindEfficiency,
    Note::KeepProtection,
    Note::Hydrogen,
    Note::Shock,
    Note::ModulesLive,
    Note::Vital,
];

/// Everything that may have to be done about a reading.
const TASKS: [Todo; 12] = [
    Todo::DoIt,
    Todo::Reversed,
    Todo::NotThisBank,
    Todo::Insulation,
    Todo::Zero,
    Todo::LeadsExchanged,
    Todo::Ahead,
    Todo::OtherShunt,
    Todo::CorrectPlan,
    Todo::Contacts,
    Todo::SetPoint,
    Todo::NotSetToFull,
];

/// What is said of setting up and checking a gauge.
fn gauged(words: Words) -> Vec<String> {
    let nameless = |_: Tag| None;
    let mut told: Vec<String> = NOTES.iter().map(|note| words.gauge_note(note)).collect();
    told.extend(OnGauge::ALL.map(|own| words.on_gauge(own).to_owned()));
    told.extend(Ask::ALL.map(|own| words.gauge_question(own).to_owned()));
    told.extend(Mistake::ALL.map(|own| words.mistake(own).to_owned()));
    told.extend(Telltale::ALL.map(|own| words.mistake_shows(own).to_owned()));
    for kind in Told::ALL {
        let own = words.setting(kind);
        told.extend([own.name, own.why, own.high, own.low].map(str::to_owned));
    }
    let volts = (Volts(30.5), Volts(31.5));
    let equalise = [Equalise::Supervised(volts), Equalise::UnlessSheet, Equalise::Never];
    told.extend(equalise.map(|own| words.equalising(own)));
    let drop = Point::Drop { run: RunKind::Inverter, current: Amps(12.5) };
    let check = Check { point: drop, expected: Some(0.25), least: 0.0, most: 0.35 };
    let tight = Check { point: Point::Tightness, expected: None, least: 1.0, most: 1.0 };
    for todo in TASKS {
        told.push(words.judged(&check, &Judged::Off { by: -0.15, todo }));
        told.push(words.judged(&tight, &Judged::Off { by: 1.0, todo }));
    }
    told.push(words.judged(&check, &Judged::Pass));
    let unread = Unread { point: drop, value: 9999.5, least: -2000.0, most: 2000.0 };
    told.push(words.unread(&unread, &nameless));
    let figures = [
        GaugeFigure::Offset,
        GaugeFigure::Gain,
        GaugeFigure::UnseenLoads,
        GaugeFigure::UnseenCharger,
        GaugeFigure::Start,
    ];
    let figures = figures.into_iter().chain(Told::ALL.map(GaugeFigure::Set));
    told.extend(figures.map(|figure| words.misset(&Misset { figure, value: -1.5 })));
    let longest_since_full = (Hours(30.0), Hours(3000.0));
    told.push(words.gauge_years(&Years {
        count: 10,
        fulls_a_month: (0.5, 12.5),
        longest_since_full,
        over: (0.005, 0.105),
        under: (0.005, 0.105),
    }));
    told.push(words.times_left(None, None));
    told.push(words.times_left(Some(Hours(7.0)), Some(Hours(9.0))));
    for name in EXAMPLES {
        let (_, system, outlook) = answered(name);
        let card = Card::of(&system, &outlook);
        let sheet = Sheet::of(&system, &card, &[]);
        let points = sheet.checks.iter().map(|own| own.point).chain([drop]);
        for point in points {
            told.push(words.checked(&point, &nameless));
            told.push(words.how_to_check(&point).to_owned());
        }
        let spread = SpreadGrid::embedded().at(system.site);
        let course = Course::of((&system, &outlook), Truth::ByMonth, (&spread, 0), 60);
        for mistake in Mistake::ALL {
            let trial = Trial::of(&course, &mistake.made(&card, &system), 0);
            told.extend([words.trial(&trial), words.drift(&trial)]);
        }
        told.push(words.equalising(ChargerPoints::of(&system.bank).equalise));
    }
    told
}

#[test]
fn gauges_and_their_checks_are_said_in_every_language() {
    let (english, spanish) = (gauged(ENGLISH), gauged(SPANISH));
    assert_eq!(english.len(), spanish.len());
    for (one, other) in english.iter().zip(&spanish) {
        assert!(!one.trim().is_empty() && (one != other || one.chars().count() <= LONG), "{one}");
        assert_eq!(leftovers(other), [""; 0], "{other}");
        assert_eq!(one.ends_with('.'), other.ends_with('.'), "{one}: {other}");
        assert_eq!(one.ends_with('?'), other.ends_with('?'), "{one}: {other}");
        assert!(!other.contains(['“', '”', '{']) && !other.contains("0.15"), "{other}");
    }
    for told in [&english, &spanish] {
        let apart = told[..NOTES.len()].iter().collect::<BTreeSet<_>>().len();
        assert_eq!(apart, NOTES.len());
    }
}

#[test]
fn what_a_meter_shows_is_said_as_exactly_as_it_shows_it() {
    use sunlarder_engine::quantity::Unit;
    let said = |value, unit| SPANISH.metered(value, unit).replace('\u{a0}', " ");
    assert_eq!(said(14.04, Unit::Volt), "14,04 V");
    assert_eq!(said(0.024, Unit::Volt), "0,024 V");
    assert_eq!(said(0.02, Unit::Amp), "0,020 A");
    assert_eq!(said(-4.54, Unit::Amp), "−4,5 A");
    assert_eq!(said(5.0 / 60.0, Unit::Hour), "5 min");
    assert_eq!(said(-0.0001, Unit::Volt), "0,000 V");
    assert_eq!(said(1.2, Unit::One), "1,20");
}
