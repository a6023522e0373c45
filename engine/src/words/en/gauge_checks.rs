//! Words of the commissioning sheet and of the mistakes of a gauge.

use crate::gauge::{
    Check, Judged, METERS_LEAST, METERS_SHARE, Mistake, Point, Telltale, Todo, Unread,
};
use crate::quantity::Unit;
use crate::words::{NameOf, Words};
use crate::working::Tag;

/// What is checked.
#[must_use]
pub fn point(words: Words, point: &Point, name_of: NameOf<'_>) -> String {
    let owner = |tag| words.owner(tag, name_of).unwrap_or_default();
    match point {
        Point::Polarity => "Polarity and voltage of the bank".into(),
        Point::Tightness => "Posts, studs and lugs tight".into(),
        Point::Insulation(place) => format!("Insulation of {}", owner(Tag::Array(*place))),
        Point::ZeroCurrent => "Current with everything off".into(),
        Point::LoadCurrent(place) => format!("Current of “{}” alone", owner(Tag::Load(*place))),
        Point::Drop { run, current } => {
            let name = words.run_name(*run, name_of);
            if current.0 > 0.0 {
                format!("Drop: {name}, at {}", words.amount(*current))
            } else {
                format!("Drop: {name}")
            }
        }
        Point::Absorption => "Absorption voltage, read back".into(),
        Point::Float => "Float voltage, read back".into(),
        Point::CutOff => "Low cut-off, read back".into(),
        Point::FirstFull => "Gauge at the end of the first full charge".into(),
    }
}

/// How it is checked.
#[must_use]
pub fn how(point: &Point) -> &'static str {
    match point {
        Point::Polarity => {
            "With the main fuse out: voltmeter from the bank's side of the fuse holder to the bank's minus lead, red on plus."
        }
        Point::Tightness => "Torque wrench and the makers' figures; mark each when it is done.",
        Point::Insulation(_) => {
            "A licensed person measures it against frame and earth, by the standard and the modules' sheet, disconnected from the controller."
        }
        Point::ZeroCurrent => {
            "Every load and charger off, modules covered, the isolator closed: what does the gauge read?"
        }
        Point::LoadCurrent(_) => {
            "This load alone: clamp meter on the bank's cable, and the gauge beside it. Discharge counts below nothing."
        }
        Point::Drop { .. } => {
            "Voltmeter from end to end of plus and of minus, added, while that current flows. At another current the drop grows with it."
        }
        Point::Absorption | Point::Float | Point::CutOff => {
            "Read it from the device after it was set, not from its sheet."
        }
        Point::FirstFull => {
            "Charge until absorption has ended and the current has faded; do not set it by hand before you read."
        }
    }
}

/// What to do about a reading.
fn todo(todo: Todo) -> &'static str {
    match todo {
        Todo::DoIt => "Do it before anything is switched on: what is loose burns.",
        Todo::Reversed => "Plus and minus are exchanged. Connect nothing; find where.",
        Todo::NotThisBank => {
            "The bank is empty, too high, or not the one of the plan. Find out before you connect it."
        }
        Todo::Insulation => "Do not use the array until a licensed person has found it good.",
        Todo::Zero => {
            "Hold a clamp meter beside it: if that reads the same, something still draws or charges; if it reads nothing, set the gauge's zero by its maker's sheet."
        }
        Todo::LeadsExchanged => {
            "The gauge takes discharge for charge: exchange the two thin leads at the shunt, with their fuse out."
        }
        Todo::Ahead => {
            "The gauge sees little of it: its minus is on the bank's side of the shunt. Move it to the load side."
        }
        Todo::OtherShunt => {
            "The gauge was told another shunt: enter the amps and millivolts that are stamped on yours."
        }
        Todo::CorrectPlan => {
            "If both meters agree, the load differs from the plan: put what you read into the plan."
        }
        Todo::Contacts => {
            "More is lost than the cable takes. Switch off and look for a loose lug, a warm holder, a thinner or longer cable."
        }
        Todo::SetPoint => {
            "Set it by the maker's sheet; if the sheet says what you read, put it into the plan."
        }
        Todo::NotSetToFull => {
            "Were full voltage, tail current and time reached together? If the bank is truly full, set it by hand once; if it happens again, look at these three."
        }
    }
}

/// What a reading means, and what to do.
#[must_use]
pub fn judged(words: Words, check: &Check, judged: &Judged) -> String {
    let Judged::Off { by, todo: what } = *judged else { return "As it should be.".into() };
    let meters = matches!(what, Todo::LeadsExchanged | Todo::Ahead | Todo::OtherShunt);
    match check.point.unit() {
        None => todo(what).to_owned(),
        Some(unit) if meters => {
            let (off, share) = (words.metered(by.abs(), unit), words.amount(METERS_SHARE));
            let least = words.amount(METERS_LEAST);
            format!(
                "Gauge and clamp meter differ by {off}; {share} or {least} may be. {}",
                todo(what)
            )
        }
        Some(unit) => {
            let off = words.metered(by.abs(), unit);
            let side = if by < 0.0 { "too low" } else { "too high" };
            format!("{off} {side}. {}", todo(what))
        }
    }
}

/// Why a reading is refused.
#[must_use]
pub fn unread(words: Words, unread: &Unread, name_of: NameOf<'_>) -> String {
    let unit = unread.point.unit().unwrap_or(Unit::One);
    format!(
        "{}: {}; it must lie between {} and {}.",
        point(words, &unread.point, name_of),
        words.as_given(unread.value),
        words.metered(unread.least, unit),
        words.metered(unread.most, unit)
    )
}

/// A thing that is wrong with a gauge.
#[must_use]
pub fn mistake(mistake: Mistake) -> &'static str {
    use Mistake as M;
    match mistake {
        M::CapacityHigh => "The capacity entered is a third too high",
        M::CapacityLow => "The capacity entered is a third too low",
        M::EfficiencyHigh => "The charge efficiency entered is 100 %",
        M::EfficiencyLow => "The charge efficiency entered is 10 % too low",
        M::FullVoltageLow => "The full voltage is 7 % too low",
        M::FullVoltageHigh => "The full voltage is over what the chargers hold",
        M::TailLarge => "The tail current is five times too large",
        M::TailSmall => "The tail current is a hundredth of what it should be",
        M::OffsetUp => "It reads a little charge where nothing flows",
        M::OffsetDown => "It reads a little discharge where nothing flows",
        M::ShuntLarge => "It was told a shunt half as large again",
        M::ShuntSmall => "It was told a shunt of two thirds",
        M::ShuntReversed => "The two leads at the shunt are exchanged",
        M::LoadAhead => "30 % of what is used does not pass the shunt",
        M::ChargerAhead => "The main charger does not pass the shunt",
        M::ThresholdHigh => "Small currents are not counted",
        M::FullOnEmpty => "It was set to full when the bank was emptiest",
    }
}

/// By what a mistake shows.
#[must_use]
pub fn telltale(telltale: Telltale) -> &'static str {
    match telltale {
        Telltale::TooSlow => {
            "It moves less than the bank does: it still shows charge when the lights dim."
        }
        Telltale::TooFast => {
            "It moves more than the bank does: it reaches nothing while there is much left."
        }
        Telltale::CreepsUp => "From one full to the next it creeps up over the truth.",
        Telltale::CreepsDown => "From one full to the next it creeps down under the truth.",
        Telltale::FullTooEarly => "It jumps to 100 % while much is missing.",
        Telltale::NeverFull => "It never or hardly ever reaches 100 %.",
        Telltale::FallsToNothing => "It falls to 0 % though there is charge.",
        Telltale::FarTooMuch => "It shows far too much until the next full charge.",
        Telltale::Backwards => "It rises while the bank empties, and falls while it fills.",
    }
}
