//! What was typed, as a command.

use std::ffi::OsString;

use chrono::NaiveDateTime;
use lexopt::Parser;
use sunlarder_engine::document::{Field, Problem};
use sunlarder_engine::gauge::Mistake;
use sunlarder_engine::logbook::Symptom;
use sunlarder_engine::outlook::Question;
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::simulate::Sun;
use sunlarder_engine::sizing::{Promise, Rates};
use sunlarder_engine::sun::Site;
use sunlarder_engine::words::Language;
use sunlarder_engine::words::command_line::{Fault, Operand};
use sunlarder_engine::working::Tag;

use crate::logbook::Told;
use crate::typed::sort;
use crate::values::{figure, instant, symptom};

/// What to do.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Command {
    /// Print how it is used.
    Help,
    /// Print the version.
    Version,
    /// Print budget and outlook, or the run.
    Plan {
        /// File, link or `-`.
        plan: String,
        /// How.
        form: Form,
        /// Whether the sun shines in the run.
        sun: Sun,
        /// A file with a year of weather to replay.
        weather: Option<String>,
    },
    /// Print how a figure comes about.
    Working {
        /// File, link or `-`.
        plan: String,
        /// Which figure.
        figure: Question,
        /// For which month, January being 0; that of the start if none is given.
        month: Option<usize>,
    },
    /// Print how big it must be.
    Size {
        /// File, link or `-`.
        plan: String,
        /// What is to be kept.
        promise: Promise,
        /// Whether its chance was typed.
        stated: bool,
        /// What bank and array cost.
        price: Option<Rates>,
        /// What they weigh.
        weight: Option<Rates>,
        /// How; there is no CSV of it.
        form: Form,
    },
    /// Print how it is wired.
    Fit {
        /// File, link or `-`.
        plan: String,
        /// How; there is no CSV of it.
        form: Form,
    },
    /// Print how a gauge is set up and checked, and what it would show.
    Gauge {
        /// File, link or `-`.
        plan: String,
        /// How; there is no CSV of it.
        form: Form,
        /// A mistake to try.
        mistake: Option<Mistake>,
        /// Whether the checks are printed instead.
        commission: bool,
    },
    /// Print what readings say.
    Logbook {
        /// File, link or `-`.
        plan: String,
        /// A file of readings, or `-`.
        readings: String,
        /// What the gauge was told.
        told: Told,
        /// How; there is no CSV of it.
        form: Form,
    },
    /// Print what may be behind a symptom.
    Symptom {
        /// File, link or `-`.
        plan: String,
        /// Which.
        symptom: Symptom,
        /// A file of readings, or `-`.
        readings: Option<String>,
        /// What the gauge was told.
        told: Told,
        /// How; there is no CSV of it.
        form: Form,
    },
    /// Print how the bank is looked after.
    Care {
        /// File, link or `-`.
        plan: String,
    },
    /// Print the link code.
    Link {
        /// File, link or `-`.
        plan: String,
    },
    /// Print the file.
    File {
        /// File, link or `-`.
        plan: String,
    },
    /// Print the climate of a place.
    Climate {
        /// Where.
        site: Site,
        /// How.
        form: Form,
    },
    /// Print where the sun stands.
    Sun {
        /// Where.
        site: Site,
        /// When, in universal time.
        instant: NaiveDateTime,
        /// How; there is no CSV of it.
        form: Form,
    },
}

/// How something is printed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Form {
    /// For people.
    #[default]
    Text,
    /// For programs.
    Json,
    /// For spreadsheets.
    Csv,
}

/// The language that is asked for anywhere on a command line; nothing if none is, or one that there is not.
pub(crate) fn language(arguments: impl Iterator<Item = OsString>) -> Option<Language> {
    let mut arguments = arguments.map(|own| own.to_string_lossy().into_owned());
    while let Some(own) = arguments.next() {
        let tag = match own.strip_prefix("--language") {
            Some("") => arguments.next()?,
            Some(joined) => joined.strip_prefix('=')?.to_owned(),
            None => continue,
        };
        return Language::of_tag(&tag);
    }
    None
}

/// Understands a command line.
pub(crate) fn parse(parser: Parser) -> Result<Command, Fault> {
    let typed = sort(parser)?;
    let mut operands = typed.operands.iter().cloned();
    let command = operands.next();
    let mut rest = Operands(operands);
    let command = match command.as_deref() {
        _ if typed.help => Command::Help,
        _ if typed.version => Command::Version,
        None => return Err(Fault::NoCommand),
        Some("help") => Command::Help,
        Some("version") => Command::Version,
        Some("plan") => {
            let sun = if typed.without_sun { Sun::None } else { Sun::Mean };
            let (form, weather) = (typed.form()?, typed.weather.clone());
            if weather.is_some() && form == Form::Csv {
                return Err(Fault::WeatherInCsv);
            }
            Command::Plan { plan: rest.next(Operand::Plan)?, form, sun, weather }
        }
        Some("working") => Command::Working {
            plan: rest.next(Operand::Plan)?,
            figure: figure(rest.next(Operand::Figure)?)?,
            month: typed.month,
        },
        Some("size") => Command::Size {
            plan: rest.next(Operand::Plan)?,
            promise: typed.promise(),
            stated: typed.chance.is_some(),
            price: typed.price,
            weight: typed.weight,
            form: typed.form()?,
        },
        Some("fit") => Command::Fit { plan: rest.next(Operand::Plan)?, form: typed.form()? },
        Some("gauge") => Command::Gauge {
            plan: rest.next(Operand::Plan)?,
            form: typed.form()?,
            mistake: typed.mistake,
            commission: typed.commission,
        },
        Some("logbook") => Command::Logbook {
            plan: rest.next(Operand::Plan)?,
            readings: rest.next(Operand::Readings)?,
            told: typed.told,
            form: typed.form()?,
        },
        Some("symptom") => Command::Symptom {
            plan: rest.next(Operand::Plan)?,
            symptom: symptom(rest.next(Operand::Symptom)?)?,
            readings: rest.0.next(),
            told: typed.told,
            form: typed.form()?,
        },
        Some("care") => Command::Care { plan: rest.next(Operand::Plan)? },
        Some("link") => Command::Link { plan: rest.next(Operand::Plan)? },
        Some("file") => Command::File { plan: rest.next(Operand::Plan)? },
        Some("climate") => Command::Climate { site: rest.site()?, form: typed.form()? },
        Some("sun") => Command::Sun {
            site: rest.site()?,
            instant: instant(rest.next(Operand::Instant)?)?,
            form: typed.form()?,
        },
        Some(other) => return Err(Fault::UnknownCommand(other.to_owned())),
    };
    typed.fits(&command)?;
    match rest.0.next() {
        Some(more) if command != Command::Help => Err(Fault::TooMuch(more)),
        _ => Ok(command),
    }
}

/// What stands behind the command, taken one by one.
struct Operands<I>(I);

impl<I: Iterator<Item = String>> Operands<I> {
    fn next(&mut self, what: Operand) -> Result<String, Fault> {
        self.0.next().ok_or(Fault::Missing(what))
    }

    fn site(&mut self) -> Result<Site, Fault> {
        let mut angle = |operand, field: Field| {
            let given = self.next(operand)?;
            let value: f64 =
                given.parse().map_err(|_| Fault::NotANumber(operand, given.clone()))?;
            if field.range().holds(value) {
                Ok(Degrees(value))
            } else {
                Err(Fault::Refused(Problem::OutOfRange { field, at: Tag::None, value }))
            }
        };
        Ok(Site {
            latitude: angle(Operand::Latitude, Field::Latitude)?,
            longitude: angle(Operand::Longitude, Field::Longitude)?,
        })
    }
}

#[cfg(test)]
mod tests {
    use chrono::{NaiveDate, NaiveTime};

    use super::*;

    fn parsed(line: &str) -> Result<Command, Fault> {
        parse(Parser::from_args(line.split_whitespace()))
    }

    #[test]
    fn options_stand_anywhere_and_minus_signs_are_numbers() {
        let plan = |form, sun| Command::Plan { plan: "a.json".into(), form, sun, weather: None };
        assert_eq!(parsed("plan a.json --json"), Ok(plan(Form::Json, Sun::Mean)));
        assert_eq!(parsed("--csv plan --without-sun a.json"), Ok(plan(Form::Csv, Sun::None)));
        let replayed = Command::Plan {
            plan: "a.json".into(),
            form: Form::Json,
            sun: Sun::Mean,
            weather: Some("a.epw".into()),
        };
        assert_eq!(parsed("plan --weather a.epw a.json --json"), Ok(replayed));
        let cape = Site { latitude: Degrees(-33.9), longitude: Degrees(-0.5) };
        let climate = |form| Command::Climate { site: cape, form };
        assert_eq!(parsed("climate -33.9 -.5 --json"), Ok(climate(Form::Json)));
        assert_eq!(
            parsed("plan -").map(|command| command == plan(Form::Text, Sun::Mean)),
            Ok(false)
        );
    }

    #[test]
    fn the_language_is_found_wherever_it_stands() {
        let asked = |line: &str| language(line.split_whitespace().map(OsString::from));
        assert_eq!(asked("plan a --language es"), Some(Language::Spanish));
        assert_eq!(asked("--language=en plan"), Some(Language::English));
        for none in ["plan a", "plan --language", "plan --language tlh", "plan --languages es"] {
            assert_eq!(asked(none), None, "{none}");
        }
        assert!(
            parsed("plan a --language es").is_ok_and(|own| matches!(own, Command::Plan { .. }))
        );
    }

    #[test]
    fn instants_are_read_with_and_without_an_offset() {
        let noon = NaiveDate::from_ymd_opt(2026, 6, 21).unwrap().and_hms_opt(12, 0, 0).unwrap();
        let midnight = noon.date().and_time(NaiveTime::MIN);
        let cases = [
            ("2026-06-21T12:00", noon),
            ("2026-06-21T12:00Z", noon),
            ("2026-06-21 12:00:00", noon),
            ("2026-06-21T14:00:00+02:00", noon),
            ("2026-06-21T12:00:00.000Z", noon),
            ("2026-06-21", midnight),
        ];
        for (text, instant) in cases {
            assert_eq!(super::instant(text.into()), Ok(instant), "{text}");
        }
        for wrong in ["noon", "2026-13-01", "2026-06-21T25:00", ""] {
            assert_eq!(instant(wrong.into()), Err(Fault::NotAnInstant(wrong.into())));
        }
    }

    #[test]
    fn what_is_not_understood_is_named() {
        let cases = [
            ("", Fault::NoCommand),
            ("bake", Fault::UnknownCommand("bake".into())),
            ("plan", Fault::Missing(Operand::Plan)),
            ("plan a b", Fault::TooMuch("b".into())),
            ("plan a --json --csv", Fault::JsonOrCsv),
            ("plan a --csv --weather b", Fault::WeatherInCsv),
            ("plan a --weather", Fault::Missing(Operand::Weather)),
            ("link a --weather b", Fault::UnknownOption("--weather".into())),
            ("plan a --yaml", Fault::UnknownOption("--yaml".into())),
            ("plan a -x", Fault::UnknownOption("-x".into())),
            ("link a --json", Fault::UnknownOption("--json".into())),
            ("sun 1 2 2026-06-21 --csv", Fault::UnknownOption("--csv".into())),
            ("size a --csv", Fault::UnknownOption("--csv".into())),
            ("gauge a --csv", Fault::UnknownOption("--csv".into())),
            ("gauge a --mistake", Fault::Missing(Operand::Mistake)),
            ("plan a --commission", Fault::UnknownOption("--commission".into())),
            ("logbook a", Fault::Missing(Operand::Readings)),
            ("logbook a b --csv", Fault::UnknownOption("--csv".into())),
            ("logbook a b --gauge-ah -5", Fault::Beyond(Operand::GaugeAh, -5.0, (1.0, 1e6))),
            ("symptom a", Fault::Missing(Operand::Symptom)),
            ("symptom a smoke", Fault::UnknownSymptom("smoke".into())),
            ("care a --json", Fault::UnknownOption("--json".into())),
            ("working a", Fault::Missing(Operand::Figure)),
            ("working a weight", Fault::UnknownFigure("weight".into())),
            ("working a month --month 13", Fault::NoMonth("13".into())),
            ("climate here 2", Fault::NotANumber(Operand::Latitude, "here".into())),
            ("climate 52", Fault::Missing(Operand::Longitude)),
            ("plan a --language", Fault::Missing(Operand::Language)),
            ("plan a --language tlh", Fault::UnknownLanguage("tlh".into())),
        ];
        for (line, fault) in cases {
            assert_eq!(parsed(line), Err(fault), "{line}");
        }
        let beyond = Problem::OutOfRange { field: Field::Latitude, at: Tag::None, value: 91.0 };
        assert_eq!(parsed("climate 91 0"), Err(Fault::Refused(beyond)));
        assert_eq!(parsed("plan a --help"), Ok(Command::Help));
    }
}
