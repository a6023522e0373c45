//! What the logbook says.

use std::collections::BTreeSet;

use sunlarder_engine::logbook::{
    Adoption, Care, Cause, Estimate, Guess, Learned, MeterTest, Next, Order, Part, Slip, Standing,
    Symptom, What,
};
use sunlarder_engine::quantity::{AmpHours, Amps, Celsius, Percent, Volts};
use sunlarder_engine::words::Words;
use sunlarder_engine::words::logbook::OnLogbook;

use crate::{ENGLISH, SPANISH, leftovers};

/// What the logbook says, whatever it finds.
fn logbook(words: Words) -> Vec<String> {
    let mut told: Vec<String> = OnLogbook::ALL.map(|own| words.on_logbook(own).to_owned()).into();
    let estimate = Estimate { best: 0.125, low: -0.5, high: 1.5, told: true };
    let whats = [
        What::NightUse,
        What::DayUse,
        What::NightDrain,
        What::Yield,
        What::Capacity,
        What::Efficiency,
        What::Bypass,
        What::HiddenDrain,
        What::FalseFull,
        What::RestVoltage,
    ];
    let at = chrono::NaiveDate::from_ymd_opt(2026, 3, 31).unwrap().and_hms_opt(7, 5, 0);
    for what in whats {
        let learned = Learned { what, estimate, alarm: false };
        told.extend([words.learned(&learned, None), words.next_reading(what.next()).to_owned()]);
    }
    told.push(words.learned(&Learned { what: What::FalseFull, estimate, alarm: true }, at));
    // Currents that go the other way.
    let estimate = Estimate { best: -12.5, low: -25.5, high: -1.5, told: true };
    for what in [What::Bypass, What::HiddenDrain] {
        let said = words.learned(&Learned { what, estimate, alarm: true }, None);
        assert!(!said.contains('-') && !said.contains('−'), "{said}");
        told.push(said);
    }
    told.extend([words.charge_now(&estimate), words.measuring_caution().to_owned()]);
    let parts = [Part::Time, Part::Percent, Part::AmpHours, Part::Volts, Part::Amps];
    told.extend(parts.map(|part| {
        words.slip(&Slip::OutOfRange { part, value: 1234.5, least: -1.5, most: 99.5 })
    }));
    let text = "Xyz".to_owned();
    let slips = [
        Slip::NoNumber { part: Part::Volts, text: text.clone() },
        Slip::NoTime { text },
        Slip::Empty,
        Slip::Short,
        Slip::Twice,
        Slip::TooMany { count: 12 },
        Slip::TooOld,
        Slip::OutsideYears,
    ];
    told.extend(slips.iter().map(|own| words.slip_in(12_345, own)));
    let guesses = [
        Guess::NoHeadings,
        Guess::DateOrder(Order::DayFirst),
        Guess::DateOrder(Order::MonthFirst),
        Guess::MissingFromFull,
        Guess::TooLong,
    ];
    told.extend(guesses.map(|own| words.pasted_guess(own).to_owned()));
    let adoptions = [
        Adoption::Use(1.25),
        Adoption::Health(Percent(82.5)),
        Adoption::Standing(Amps(0.75)),
        Adoption::Efficiency(Percent(91.5)),
    ];
    told.extend(adoptions.iter().map(|own| words.adoption(own)));
    told.extend(symptoms(words));
    told
}

/// What it says of symptoms, causes, tests and care.
fn symptoms(words: Words) -> Vec<String> {
    let mut told: Vec<String> = Symptom::ALL.map(|own| words.symptom(own).to_owned()).into();
    told.extend(Cause::ALL.map(|own| words.cause(own).to_owned()));
    let standings = [Standing::Seen, Standing::Likely, Standing::Possible, Standing::Unlikely];
    told.extend(standings.map(|own| words.cause_standing(own).to_owned()));
    let (amps, volts, charge) = (Amps(12.5), Volts(13.25), AmpHours(123.5));
    use MeterTest as T;
    let tests = [
        T::Balance { short: charge },
        T::Balance { short: -charge },
        T::NightCurrent { planned: amps },
        T::NoonCurrent { planned: amps },
        T::CountedDischarge { current: amps, usable: charge },
        T::CapacityBack { capacity: charge },
        T::FullToFull { usual: Percent(91.5) },
        T::AtFull { volts, tail: amps },
        T::ClampCharging,
        T::ClampAllOff { planned: amps },
        T::ZeroCurrent,
        T::EachBattery { half: volts },
        T::DropUnderLoad { current: amps, most: volts },
        T::PostsAtCutOff { cut_off: volts },
        T::PostsAbsorbing { volts },
        T::Temperature { least: Some(Celsius(0.5)) },
        T::Temperature { least: None },
        T::RestedTwice { a_month: Percent(2.5) },
    ];
    told.extend(tests.iter().map(|own| words.meter_test(own)));
    let cares = [
        Care::SheetFirst,
        Care::Protect,
        Care::LayUpFull,
        Care::LayUpHalf { least: Percent(40.0), most: Percent(60.0) },
        Care::Disconnect,
        Care::TopUp { weeks: 12 },
        Care::MayFreeze { half: Celsius(-24.5) },
        Care::NoChargeBelow { least: Celsius(0.5) },
        Care::ReadVoltage { least: volts },
        Care::FillOften,
        Care::Water,
        Care::Equalise,
        Care::NeverEqualise,
        Care::Ventilate,
        Care::Balance,
        Care::NotAlwaysFull,
        Care::KeepProtection,
        Care::Terminals,
        Care::CountOnceAYear,
        Care::GaugeAtFull,
    ];
    told.extend(cares.iter().map(|own| words.care(own)));
    told
}

#[test]
fn the_logbook_is_said_in_every_language() {
    let (english, spanish) = (logbook(ENGLISH), logbook(SPANISH));
    for (one, other) in english.iter().zip(&spanish) {
        assert!(!one.is_empty() && one != other, "{one}");
        assert_eq!(leftovers(other), Vec::<&str>::new(), "{other}");
        assert!(!one.contains('{') && !other.contains(['“', '”', '{']), "{other}");
        // What is told in figures is told in the same ones.
        let digits = |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
        assert_eq!(digits(one), digits(other), "{one} {other}");
    }
    let apart: BTreeSet<&String> = spanish.iter().collect();
    assert_eq!(apart.len(), spanish.len(), "two messages are told alike: {spanish:#?}");
    assert_eq!(Next::AtFull, What::FalseFull.next());
}
