//! What each field and trade word means, in one plain sentence.

use crate::document::Field;
use crate::words::Term;

/// The question for an explanation.
#[must_use]
pub fn what_is(label: &str) -> String {
    format!("What does “{label}” mean?")
}

/// What a trade word means.
#[must_use]
pub fn term(term: Term) -> &'static str {
    match term {
        Term::StateOfCharge => {
            "How full the bank is, in percent of what it can hold now: 100 % is full, 0 % is empty."
        }
        Term::OutADay => {
            "All that your loads take from the bank in a mean day, in amp-hours: amps times the hours for which they flow."
        }
        Term::InADay => {
            "What sun and chargers put into the bank in a mean day and the bank can keep, losses taken off."
        }
        Term::Usable => {
            "The capacity less your reserve and less what cold and age take; the deeper you go, the greater the depth of discharge and the shorter the bank's life."
        }
        Term::KeepsUp => {
            "The months in which an average day brings at least what it takes, so that the bank does not sink from day to day."
        }
        Term::ChargeController => {
            "It stands between modules and bank: a series-regulating one (PWM) ties them together and loses what voltage the modules have over, a maximum-power-point one (MPPT) turns that voltage into more amps."
        }
        Term::Chemistry => {
            "What the cells are made of: it decides how much of the capacity may be used, how cold they may be charged, how heavy they are and how long they last."
        }
        Term::Mounting => {
            "Modules get hot, and hot ones give less; with air behind them they stay cooler than close on a roof."
        }
        Term::Supply => {
            "Direct current comes straight from the bank; mains comes by an inverter, which takes a share for itself."
        }
    }
}

/// What a field means.
#[must_use]
pub fn field(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Latitude
        | F::Longitude
        | F::UtcOffset
        | F::PeakSun
        | F::AirTemperature
        | F::Albedo
        | F::InsideTemperature
        | F::RecordLow
        | F::Horizon => of_place(field),
        F::Quantity
        | F::LoadPower
        | F::LoadCurrent
        | F::PlateVoltage
        | F::LabelEnergy
        | F::OutputPower
        | F::OutputEfficiency
        | F::Duty
        | F::Surge
        | F::HoursPerDay
        | F::FridgeInside
        | F::FridgeReference
        | F::StandingCurrent
        | F::InverterRated
        | F::InverterSurge
        | F::InverterIdle
        | F::InverterEfficiency
        | F::PowerFactor
        | F::SearchDraw => of_load(field),
        F::StartCharge
        | F::BatteryVoltage
        | F::BatteryCapacity
        | F::HourRate
        | F::InSeries
        | F::InParallel
        | F::Health
        | F::Reserve
        | F::BatteryTemperature
        | F::BatteryCurrent
        | F::ProtectionDraw
        | F::ChargeEfficiency
        | F::RateExponent
        | F::SelfDischarge
        | F::SecondCapacity
        | F::SecondHours
        | F::ThirdCapacity
        | F::ThirdHours
        | F::AbsorptionVoltage
        | F::TailCurrent
        | F::LowCutOff => of_bank(field),
        F::ModulePower
        | F::ModuleVoltage
        | F::ModuleCurrent
        | F::PowerCoefficient
        | F::Tilt
        | F::Azimuth
        | F::Loss
        | F::Shading
        | F::ChargerCurrent
        | F::ControllerVoltage
        | F::ControllerSelfUse
        | F::Derating
        | F::GeneratorStart
        | F::GeneratorStop
        | F::MinimumRun
        | F::FuelPerHour
        | F::FuelPerEnergy
        | F::TurbinePower
        | F::TurbineCharge
        | F::HourShare => of_source(field),
        F::ShortDays
        | F::DaysWithoutSun
        | F::DaysOfTrip
        | F::Chance
        | F::BankPrice
        | F::ArrayPrice
        | F::BankWeight
        | F::ArrayWeight => of_promise(field),
        F::RunAmbient => {
            "Cables carry less in warm air. Roofs in the sun and engine spaces count as 50 °C at least."
        }
        F::ShortCircuitCurrent => {
            "The maker’s figure for all batteries together; a fuse must be able to break it. Without it, it is worked out."
        }
        F::CrankingCurrent => {
            "The sum over all batteries, from their labels; the short circuit is worked out from it."
        }
        F::BatteryRun
        | F::InverterRun
        | F::PanelRun
        | F::LoadRun
        | F::ControllerRun
        | F::ArrayRun
        | F::ChargerRun => {
            "The way the cable takes, not the straight line. There and back is counted by itself."
        }
        F::CheckVoltage | F::CheckCurrent | F::CheckCharge => {
            "The figure that the meter or the device shows."
        }
        F::ToldCapacity => {
            "What the gauge takes for full; its percentage is a share of that. Blank means the rated capacity of the bank."
        }
        F::ToldEfficiency => {
            "The share of what goes in that the gauge counts. Blank means the usual one of the bank."
        }
        F::ReadPercent | F::ReadLeft | F::ReadTaken => {
            "What the gauge shows of the charge, as it stands there. Leave it blank if you did not read it."
        }
        F::ReadVolts => {
            "Between the posts of the bank, best in the morning after some hours with little current."
        }
        F::ReadAmps => "What the gauge shows: positive into the bank, negative out of it.",
    }
}

const NONE: &str = "";

fn of_place(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Latitude => {
            "How far north or south of the equator the place is; it decides how high the sun climbs and how long the days are."
        }
        F::Longitude => {
            "How far east or west of Greenwich the place is; with the clock it decides when the sun is highest."
        }
        F::UtcOffset => {
            "By how many minutes the clock on the wall is ahead of universal time in winter; hours you enter are by that clock."
        }
        F::PeakSun => {
            "A day's sunlight on level ground, said as hours of full sun: 3 peak sun hours are as much light as 3 hours of the strongest sun."
        }
        F::AirTemperature => {
            "The mean of the month, day and night; refrigerators, modules and a bank outside all feel it."
        }
        F::Albedo => {
            "The share of the light that the ground throws back, some of which a tilted array catches: snow much, grass and water little."
        }
        F::InsideTemperature => {
            "Heating keeps the room, cabin or vehicle at least this warm; a bank inside is then no colder either."
        }
        F::RecordLow => {
            "The coldest night ever measured there: the colder a module, the higher its voltage, and the controller must bear the highest."
        }
        F::Horizon => {
            "How high hills or houses stand over the level in that direction; the sun behind them counts for nothing."
        }
        _ => NONE,
    }
}

fn of_load(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Quantity => "How many of this kind run alike; their power is added up.",
        F::LoadPower => {
            "What one of them takes while it really runs, in watts; it stands on its plate or in its manual."
        }
        F::LoadCurrent => {
            "The amps on the rating plate; amps times the volts beside them are the watts."
        }
        F::PlateVoltage => "The volts for which the plate states its amps, often 12, 24 or 230.",
        F::LabelEnergy => {
            "The kilowatt-hours of a year from the energy label; pauses of the motor are already in it."
        }
        F::OutputPower => {
            "What comes out as heat in the food, as microwave ovens are sold by; they take half as much again from the socket."
        }
        F::OutputEfficiency => "How much of what it takes comes out again as what it is for.",
        F::Duty => {
            "The share of its time in which it really runs: a refrigerator at 30 % hums for 18 minutes of each hour."
        }
        F::Surge => {
            "How many times its power it takes for a moment when it starts; motors need several times, lamps none."
        }
        F::HoursPerDay => "How long it is used in all on a day, whenever that may be.",
        F::FridgeInside => {
            "How cold it is kept inside; the wider the gap to the air around, the longer it runs."
        }
        F::FridgeReference => {
            "The air in which the stated figure was measured; in warmer air it runs longer than stated."
        }
        F::StandingCurrent => {
            "What clocks, alarms, sensors and displays take together all day long, even when all seems off."
        }
        F::InverterRated => {
            "What the inverter can give to mains loads all day; all that run together must stay below it."
        }
        F::InverterSurge => "What the inverter can give for a moment, so that motors can start.",
        F::InverterIdle => {
            "What the inverter takes for itself while it is on, even with nothing plugged in."
        }
        F::InverterEfficiency => {
            "How much of what the inverter takes from the bank comes out as mains; the rest becomes heat."
        }
        F::PowerFactor => {
            "Watts over volts times amps: some supplies draw more amps than their watts need, and the inverter must carry them."
        }
        F::SearchDraw => {
            "What an inverter takes while it sleeps and tries now and then whether something was switched on."
        }
        _ => NONE,
    }
}

fn of_bank(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::StartCharge => "How full the bank is at the moment from which the curve runs.",
        F::BatteryVoltage => {
            "The voltage that a battery is sold by, such as 12 or 12.8; in series these add up to that of the bank."
        }
        F::BatteryCapacity => {
            "How much charge one full battery gives, in amp-hours: 100 Ah are 5 amps for 20 hours."
        }
        F::HourRate => {
            "In how many hours the stated capacity was drawn; drawn faster, lead-acid gives less."
        }
        F::InSeries => {
            "One behind the other, plus to minus: voltages add up, amp-hours stay the same."
        }
        F::InParallel => {
            "Side by side, plus to plus: amp-hours or amps add up, the voltage stays the same."
        }
        F::Health => {
            "How much of its capacity a bank still has after its years; a new one has all."
        }
        F::Reserve => {
            "Charge that you mean to leave in the bank; what lies above it may be used, and that share is the depth of discharge."
        }
        F::BatteryTemperature => {
            "How warm the bank itself is; cold takes capacity, frost forbids charging lithium, heat shortens life."
        }
        F::BatteryCurrent => {
            "The most amps that one battery may be given or asked for; beyond it the protection opens or the cells suffer."
        }
        F::ProtectionDraw => {
            "What the electronics in a lithium battery, which guard its cells, take for themselves."
        }
        F::ChargeEfficiency => {
            "How many of the amp-hours put in come out again; lead-acid loses more than lithium."
        }
        F::RateExponent => {
            "How strongly the capacity shrinks when it is drawn fast: 1 not at all, 1.2 much, as with old lead-acid."
        }
        F::SelfDischarge => "What the bank loses in a month by merely standing.",
        F::SecondCapacity | F::ThirdCapacity => {
            "Another capacity from the sheet, drawn in another time; together they tell how the battery takes fast and slow use."
        }
        F::SecondHours | F::ThirdHours => "In how many hours that capacity was drawn.",
        F::AbsorptionVoltage => {
            "Chargers first give all their amps; at this voltage they hold still and the amps fade (absorption), and then they keep the full bank at a lower voltage (float)."
        }
        F::TailCurrent => {
            "When the amps have faded to this share of the capacity, the bank counts as full and the charger goes over to float."
        }
        F::LowCutOff => {
            "Below this voltage the protection or the inverter switches loads off, however much charge seems left."
        }
        _ => NONE,
    }
}

fn of_promise(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::ShortDays => {
            "A short day is one on which the bank sinks below its reserve or cannot carry a load."
        }
        F::DaysWithoutSun => "So long it shall last from full with no light on the modules at all.",
        F::DaysOfTrip => "So long it shall last from full in weather as it comes.",
        F::Chance => {
            "In so many of a hundred weathers that may come it shall keep what it promises."
        }
        F::BankPrice => {
            "What you would pay for more battery, in any money; it ranks what would help and finds the cheapest size."
        }
        F::ArrayPrice => {
            "What you would pay for more modules, in the same money as for the battery."
        }
        F::BankWeight => "What more battery weighs; it finds the lightest size.",
        F::ArrayWeight => "What more modules weigh, with what holds them.",
        _ => NONE,
    }
}

fn of_source(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::ModulePower => {
            "What one module gives in the standard test, in full sun and at 25 °C; on a roof it is mostly less."
        }
        F::ModuleVoltage => {
            "The voltage of one module in the standard test: highest with nothing connected, lower where it gives most power."
        }
        F::ModuleCurrent => {
            "The amps of one module in full sun with its ends joined; a module can never give more."
        }
        F::PowerCoefficient => {
            "By how much the power falls with each degree that the module is warmer than 25 °C."
        }
        F::Tilt => {
            "How steeply the modules stand: 0° lies flat, 90° stands upright; steeper suits winter and high latitudes."
        }
        F::Azimuth => {
            "Where the modules look, clockwise from north: 90° is east, 180° south, 270° west; towards the equator is best."
        }
        F::Loss => "What this cause takes of the modules' power; a few percent for each is usual.",
        F::Shading => {
            "How much of the light a mast, a tree or a hill takes in that part of the day."
        }
        F::ChargerCurrent => {
            "The most amps that the charger or controller gives, however much the sun or the engine could."
        }
        F::ControllerVoltage => {
            "The highest voltage that the controller bears from its array; a cold bright morning must stay below it, or it is destroyed."
        }
        F::ControllerSelfUse => "What the controller takes for its own electronics, day and night.",
        F::Derating => {
            "By how much a hot charger gives less than its label; alternators in a hot engine room often a third."
        }
        F::GeneratorStart => "When the bank has sunk to this, the generator starts.",
        F::GeneratorStop => "When the bank has risen to this, the generator stops.",
        F::MinimumRun => {
            "It runs at least so long each time, because many short runs wear an engine out."
        }
        F::FuelPerHour => "What it burns in an hour even with little load.",
        F::FuelPerEnergy => "What it burns besides for each kilowatt-hour that it makes.",
        F::TurbinePower => "The mean of day and night in that month, calm hours included.",
        F::TurbineCharge => "What reaches the bank on a mean day of that month.",
        F::HourShare => {
            "How much of the day's output this hour has beside the others; all alike if it runs evenly."
        }
        _ => NONE,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_field_and_term_has_a_sentence_of_its_own() {
        let fields = Field::ALL.iter().map(|own| field(*own));
        let all: Vec<&str> = fields.chain(Term::ALL.iter().map(|own| term(*own))).collect();
        for text in &all {
            assert!(text.ends_with('.') && text.len() > 30 && text.len() < 260, "{text}");
            assert_eq!(*text, text.trim());
            assert!(text.starts_with(char::is_uppercase), "{text}");
        }
        // The third rated capacity is explained like the second, all lengths of runs alike, all readings of checks, and what a gauge shows.
        let own: BTreeSet<&str> = all.iter().copied().collect();
        assert_eq!(own.len(), all.len() - 12);
    }
}
