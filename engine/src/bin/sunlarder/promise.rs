//! A promise as it is typed: kind, chance, season, and what bank and array cost or weigh.

use sunlarder_engine::document::Months;
use sunlarder_engine::sizing::promise::{CHANCE, DAYS, SHORT_DAYS};
use sunlarder_engine::sizing::{Kind, Rates};
use sunlarder_engine::words::command_line::{Fault, Operand};

/// The highest price or weight of a unit that is taken.
const HIGHEST_RATE: f64 = 1e6;

/// `through`, or `short-days=3`, `without-sun=4`, `trip=7`.
pub(crate) fn kind(given: &str) -> Result<Kind, Fault> {
    let unknown = || Fault::UnknownPromise(given.to_owned());
    if given == "through" {
        return Ok(Kind::Through);
    }
    let (name, number) = given.split_once('=').ok_or_else(unknown)?;
    let of = |(least, most): (u16, u16)| {
        let number = within(Operand::Promise, number, (least.into(), most.into()))?;
        if number.fract() == 0.0 { Ok(number as u16) } else { Err(unknown()) }
    };
    match name {
        "short-days" => Ok(Kind::ShortDays { most: of(SHORT_DAYS)? }),
        "without-sun" => Ok(Kind::WithoutSun { days: of(DAYS)? }),
        "trip" => Ok(Kind::Trip { days: of(DAYS)? }),
        _ => Err(unknown()),
    }
}

/// A chance in per cent.
pub(crate) fn chance(given: &str) -> Result<f64, Fault> {
    within(Operand::Chance, given.trim_end_matches('%'), CHANCE)
}

/// Months by their numbers: `12`, `5-9`, `11-2` or `1,7,8`.
pub(crate) fn season(given: &str) -> Result<Months, Fault> {
    let wrong = || Fault::NoSeason(given.to_owned());
    let month = |text: &str| {
        let number = text.trim().parse::<u16>().ok().filter(|own| (1..=12).contains(own));
        number.map(|own| own - 1).ok_or_else(wrong)
    };
    let mut bits = 0;
    for part in given.split(',') {
        let (first, last) = part.split_once('-').unwrap_or((part, part));
        let (first, last) = (month(first)?, month(last)?);
        let count = (last + 12 - first) % 12;
        for place in 0..=count {
            bits |= 1 << ((first + place) % 12);
        }
    }
    Ok(Months(bits))
}

/// What an amp-hour of the bank and a watt of the array cost or weigh: `2.5,0.6`.
pub(crate) fn rates(operand: Operand, given: &str) -> Result<Rates, Fault> {
    let wrong = || Fault::NotTwoNumbers(operand, given.to_owned());
    let (bank, array) = given.split_once(',').ok_or_else(wrong)?;
    let rate = |text: &str| {
        text.trim().parse::<f64>().map_err(|_| wrong())?;
        within(operand, text, (0.0, HIGHEST_RATE))
    };
    Ok(Rates { bank_ah: rate(bank)?, array_w: rate(array)? })
}

/// A number within a range.
pub(crate) fn within(operand: Operand, given: &str, range: (f64, f64)) -> Result<f64, Fault> {
    let number: f64 =
        given.trim().parse().map_err(|_| Fault::NotANumber(operand, given.to_owned()))?;
    if number >= range.0 && number <= range.1 {
        Ok(number)
    } else {
        Err(Fault::Beyond(operand, number, range))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn promises_are_read() {
        assert_eq!(kind("through"), Ok(Kind::Through));
        assert_eq!(kind("short-days=3"), Ok(Kind::ShortDays { most: 3 }));
        assert_eq!(kind("trip=7"), Ok(Kind::Trip { days: 7 }));
        let beyond = Fault::Beyond(Operand::Promise, 0.0, (1.0, 60.0));
        assert_eq!(kind("without-sun=0"), Err(beyond));
        for wrong in ["", "trip", "trip=1.5", "moon=3"] {
            assert_eq!(kind(wrong), Err(Fault::UnknownPromise(wrong.to_owned())), "{wrong}");
        }
    }

    #[test]
    fn seasons_may_go_over_the_new_year() {
        assert_eq!(season("12"), Ok(Months(1 << 11)));
        assert_eq!(season("5-9"), Ok(Months(0b0001_1111_0000)));
        assert_eq!(season("11-2"), Ok(Months(0b1100_0000_0011)));
        assert_eq!(season("1,7-8"), Ok(Months(0b1100_0001)));
        for wrong in ["", "0", "13", "5-", "may"] {
            assert_eq!(season(wrong), Err(Fault::NoSeason(wrong.to_owned())), "{wrong}");
        }
    }

    #[test]
    fn chances_and_rates_have_ranges() {
        assert_eq!(chance("95%"), Ok(95.0));
        let beyond = |number| Fault::Beyond(Operand::Chance, number, CHANCE);
        assert_eq!(chance("0"), Err(beyond(0.0)));
        assert!(chance("nan").is_err());
        assert_eq!(rates(Operand::Price, "2.5, 0.6"), Ok(Rates { bank_ah: 2.5, array_w: 0.6 }));
        assert!(rates(Operand::Price, "2.5").is_err() && rates(Operand::Price, "-1,2").is_err());
    }
}
