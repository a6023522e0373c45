//! Words of symptoms, causes and tests, and of looking after a bank.

use crate::logbook::{Care, Cause, MeterTest, Standing, Symptom};
use crate::words::Words;

/// What must be minded when measuring.
pub const CAUTION: &str = "Measure only where you can without danger: a battery drives thousands of amps through a slipped tool, over 60 V and on mains a licensed person measures. A bank that is hot, swollen or smells is left alone, loads and chargers off, and aired. Makers' sheets and local codes come first; never bridge a fuse or a protection to test.";

/// A symptom.
#[must_use]
pub fn symptom(symptom: Symptom) -> &'static str {
    match symptom {
        Symptom::NeverFull => "It never reaches 100 %",
        Symptom::CutsOutEarly => "It goes off while the gauge shows plenty",
        Symptom::EmptyByMorning => "Empty by morning",
        Symptom::FullButDim => "It shows full and lights are dim",
        Symptom::Jumps => "The percentage jumps",
        Symptom::FallsAtRest => "It falls with everything off",
    }
}

/// A cause.
#[must_use]
pub fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::PlanShort => "By the plan itself less comes in than goes out",
        Cause::UsesMore => "More is used than planned",
        Cause::ArrayWeak => "The arrays bring too little: shade, dirt, a fault or dull weather",
        Cause::CapacityLost => "The bank holds less than its label",
        Cause::CapacitySet => "The gauge was told another capacity",
        Cause::EfficiencySet => "The gauge was told another charge efficiency",
        Cause::FalseFull => "The gauge was set to full while the bank was not",
        Cause::FullNotSeen => "The gauge's conditions for full are never met",
        Cause::Bypass => "A charger's negative hangs on the battery's side of the shunt",
        Cause::HiddenDrain => "A load's negative hangs on the battery's side of the shunt",
        Cause::StandingDrain => "Something draws while everything seems off",
        Cause::ZeroOff => "The gauge shows current where there is none",
        Cause::DyingCell => "A cell or a battery is failing",
        Cause::CableDrop => "Cables, lugs or fuses drop too much voltage",
        Cause::CutOffHigh => "The cut-off voltage is set too high",
        Cause::DrawTooLarge => "The loads pull the voltage down",
        Cause::ChargeEndsEarly => "Charging ends too early or at too low a voltage",
        Cause::TooCold => "It is too cold",
        Cause::SelfDischarge => "It discharges by itself, as every bank does a little",
    }
}

/// How a cause stands.
#[must_use]
pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Seen => "the readings say so",
        Standing::Likely => "likely",
        Standing::Possible => "possible",
        Standing::Unlikely => "unlikely",
    }
}

/// The test that decides a cause.
#[must_use]
pub fn test(words: Words, test: &MeterTest) -> String {
    use MeterTest as T;
    match test {
        T::Balance { short } if short.0 > 0.0 => {
            format!(
                "A mean day of the month lacks {} by the plan; look at what comes in.",
                words.amount(*short)
            )
        }
        T::Balance { short } => {
            format!("A mean day of the month leaves {} by the plan.", words.amount(-*short))
        }
        T::NightCurrent { planned } => format!(
            "Read the current on an evening with the usual things on: the plan's mean is {}. Switch one thing after the other off.",
            words.amount(*planned)
        ),
        T::NoonCurrent { planned } => format!(
            "At noon under a clear sky, with a bank that is not full, clamp the arrays' cable: the plan's mean sky gives {} then.",
            words.amount(*planned)
        ),
        T::CountedDischarge { current, usable } => format!(
            "From truly full draw about {} and count to the reserve: it should give {}.",
            words.amount(*current),
            words.amount(*usable)
        ),
        T::CapacityBack { capacity } => format!(
            "Look up the capacity that the gauge was told; as old and as warm as it is, the bank holds {}.",
            words.amount(*capacity)
        ),
        T::FullToFull { usual } => format!(
            "Between two truly full charges divide the amp-hours out by those in: about {} is usual.",
            words.chance(usual.ratio())
        ),
        T::AtFull { volts, tail } => format!(
            "When it says full, read both: truly full is about {} at the posts with less than {} going in. Otherwise the gauge's conditions need other figures.",
            words.amount(*volts),
            words.amount(*tail)
        ),
        T::ClampCharging => {
            "While it charges, clamp the battery's own cable: gauge and clamp must show the same."
                .to_owned()
        }
        T::ClampAllOff { planned } => format!(
            "With everything off, clamp the battery's own cable: the plan leaves {}; gauge and clamp must show the same.",
            words.amount(*planned)
        ),
        T::ZeroCurrent => {
            "With the bank isolated the gauge must show no current; if it does, set its zero."
                .to_owned()
        }
        T::EachBattery { half } => format!(
            "After some hours of rest read each battery apart: half full is about {}, and one that lies a tenth of a volt or more from the others is suspect.",
            words.amount(*half)
        ),
        T::DropUnderLoad { current, most } => format!(
            "At {} measure from the posts to the load, plus to plus and minus to minus: together no more than {}.",
            words.amount(*current),
            words.amount(*most)
        ),
        T::PostsAtCutOff { cut_off } => format!(
            "Read the voltage at the posts in the moment in which it goes off: well over {} it is not the bank.",
            words.amount(*cut_off)
        ),
        T::PostsAbsorbing { volts } => format!(
            "Read the voltage at the posts while it absorbs: it should be {} until the current has faded.",
            words.amount(*volts)
        ),
        T::Temperature { least: Some(least) } => format!(
            "Read the temperature of the bank: under {} it must not be charged.",
            words.amount(*least)
        ),
        T::Temperature { least: None } => {
            "Read the temperature of the bank: cold takes capacity and slows charging.".to_owned()
        }
        T::RestedTwice { a_month } => format!(
            "Disconnected, read the rested voltage twice some weeks apart: a month should take {} of its charge.",
            words.chance(a_month.ratio())
        ),
    }
}

/// Something to do for a bank.
#[must_use]
pub fn care(words: Words, care: &Care) -> String {
    let fixed = match care {
        Care::LayUpHalf { least, most } => {
            return format!(
                "Lay it up between {} and {} full.",
                words.chance(least.ratio()),
                words.chance(most.ratio())
            );
        }
        Care::TopUp { weeks } => {
            return format!("Charge it up again every {weeks} weeks at the latest.");
        }
        Care::MayFreeze { half } => {
            return format!(
                "Keep it charged in frost: half full it freezes at {}, and a frozen battery must not be charged.",
                words.amount(*half)
            );
        }
        Care::NoChargeBelow { least } => {
            return format!("Never charge it under {}, not even a little.", words.amount(*least));
        }
        Care::ReadVoltage { least } => {
            return format!(
                "Read its rested voltage each month; under {} charge it.",
                words.amount(*least)
            );
        }
        Care::SheetFirst => "The maker's sheet comes before all of this.",
        Care::Protect => {
            "Wear gloves and goggles, no metal on the wrists; no flame or spark near it."
        }
        Care::LayUpFull => "Lay it up truly full.",
        Care::Disconnect => {
            "Take chargers and loads off, the gauge last; what must stay alive keeps its own fuse."
        }
        Care::FillOften => {
            "Charge it truly full at least every second week: plates that wait go hard."
        }
        Care::Water => "Look at the water each month; add distilled water only when it is full.",
        Care::Equalise => {
            "Equalise only by the sheet, watched, aired and with sensitive loads off."
        }
        Care::NeverEqualise => {
            "Do not equalise it unless its sheet says so: sealed batteries lose gas for good."
        }
        Care::Ventilate => "Air it well: charging gives off gas that explodes.",
        Care::Balance => {
            "Let it stand at absorption for a while each month, so that its cells come level."
        }
        Care::NotAlwaysFull => "Do not keep it full for weeks; it ages least about half full.",
        Care::KeepProtection => "Never go round its protection circuit.",
        Care::Terminals => {
            "Each season look at lugs and cables, cold; tighten by the maker's figures."
        }
        Care::CountOnceAYear => "Once a year count a discharge from full to the reserve.",
        Care::GaugeAtFull => "In spring set the gauge to full only when the bank truly is.",
    };
    fixed.to_owned()
}
