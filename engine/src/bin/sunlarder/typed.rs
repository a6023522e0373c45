//! What was typed, sorted into operands and options.

use lexopt::{Arg, Parser};
use sunlarder_engine::document::Months;
use sunlarder_engine::gauge::Mistake;
use sunlarder_engine::logbook::Order;
use sunlarder_engine::quantity::{AmpHours, Percent};
use sunlarder_engine::sizing::{Kind, Promise, Rates};
use sunlarder_engine::words::Language;
use sunlarder_engine::words::command_line::{Fault, Operand};

use crate::arguments::{Command, Form};
use crate::gauge;
use crate::logbook::Told;
use crate::promise;
use crate::values::month;

/// What a gauge may be told: a capacity in amp-hours, a charge efficiency in per cent.
const GAUGE_AH: (f64, f64) = (1.0, 1e6);
const GAUGE_EFFICIENCY: (f64, f64) = (50.0, 100.0);
/// What `logbook` and `symptom` take.
const LOGBOOK: &[&str] =
    &["--json", "--gauge-ah", "--gauge-efficiency", "--day-first", "--month-first"];

/// What was typed, sorted.
#[derive(Default)]
pub(crate) struct Typed {
    /// Everything that is no option.
    pub(crate) operands: Vec<String>,
    json: bool,
    csv: bool,
    pub(crate) without_sun: bool,
    pub(crate) weather: Option<String>,
    pub(crate) month: Option<usize>,
    kind: Option<Kind>,
    pub(crate) chance: Option<f64>,
    season: Option<Months>,
    pub(crate) price: Option<Rates>,
    pub(crate) weight: Option<Rates>,
    pub(crate) mistake: Option<Mistake>,
    pub(crate) commission: bool,
    pub(crate) told: Told,
    pub(crate) help: bool,
    pub(crate) version: bool,
}

/// Parts options from operands; a number with a minus is no option, and neither is a lone `-`.
pub(crate) fn sort(mut parser: Parser) -> Result<Typed, Fault> {
    let mut typed = Typed::default();
    loop {
        if let Some(number) = negative_number(&mut parser) {
            typed.operands.push(number);
            continue;
        }
        let argument = parser.next().map_err(|fault| Fault::UnknownOption(fault.to_string()))?;
        match argument {
            None => return Ok(typed),
            Some(Arg::Value(value)) => typed.operands.push(value.to_string_lossy().into_owned()),
            Some(Arg::Long("json")) => typed.json = true,
            Some(Arg::Long("csv")) => typed.csv = true,
            Some(Arg::Long("without-sun")) => typed.without_sun = true,
            Some(Arg::Long("help") | Arg::Short('h')) => typed.help = true,
            Some(Arg::Long("version") | Arg::Short('V')) => typed.version = true,
            Some(Arg::Long("month")) => {
                let given = parser.value().map_err(|_| Fault::Missing(Operand::Month))?;
                typed.month = Some(month(&given.to_string_lossy())?);
            }
            Some(Arg::Long("weather")) => {
                let given = parser.value().map_err(|_| Fault::Missing(Operand::Weather))?;
                typed.weather = Some(given.to_string_lossy().into_owned());
            }
            Some(Arg::Long("promise")) => {
                typed.kind = Some(promise::kind(&value(&mut parser, Operand::Promise)?)?);
            }
            Some(Arg::Long("chance")) => {
                typed.chance = Some(promise::chance(&value(&mut parser, Operand::Chance)?)?);
            }
            Some(Arg::Long("season")) => {
                typed.season = Some(promise::season(&value(&mut parser, Operand::Season)?)?);
            }
            Some(Arg::Long("price")) => {
                let given = value(&mut parser, Operand::Price)?;
                typed.price = Some(promise::rates(Operand::Price, &given)?);
            }
            Some(Arg::Long("weight")) => {
                let given = value(&mut parser, Operand::Weight)?;
                typed.weight = Some(promise::rates(Operand::Weight, &given)?);
            }
            Some(Arg::Long("commission")) => typed.commission = true,
            Some(Arg::Long("mistake")) => {
                typed.mistake = Some(gauge::mistake(&value(&mut parser, Operand::Mistake)?)?);
            }
            Some(Arg::Long("gauge-ah")) => {
                let given = value(&mut parser, Operand::GaugeAh)?;
                let own = promise::within(Operand::GaugeAh, &given, GAUGE_AH)?;
                typed.told.capacity = Some(AmpHours(own));
            }
            Some(Arg::Long("gauge-efficiency")) => {
                let given = value(&mut parser, Operand::GaugeEfficiency)?;
                let own = promise::within(Operand::GaugeEfficiency, &given, GAUGE_EFFICIENCY)?;
                typed.told.efficiency = Some(Percent(own));
            }
            Some(Arg::Long("day-first")) => typed.told.order = Some(Order::DayFirst),
            Some(Arg::Long("month-first")) => typed.told.order = Some(Order::MonthFirst),
            Some(Arg::Long("language")) => {
                let given = parser.value().map_err(|_| Fault::Missing(Operand::Language))?;
                let given = given.to_string_lossy();
                if Language::of_tag(&given).is_none() {
                    return Err(Fault::UnknownLanguage(given.into_owned()));
                }
            }
            Some(Arg::Long(name)) => return Err(Fault::UnknownOption(format!("--{name}"))),
            Some(Arg::Short(name)) => return Err(Fault::UnknownOption(format!("-{name}"))),
        }
    }
}

/// What stands behind an option.
fn value(parser: &mut Parser, operand: Operand) -> Result<String, Fault> {
    let given = parser.value().map_err(|_| Fault::Missing(operand))?;
    Ok(given.to_string_lossy().into_owned())
}

/// The next argument if it is a number below zero.
fn negative_number(parser: &mut Parser) -> Option<String> {
    let mut raw = parser.try_raw_args()?;
    let next = raw.peek()?.to_str()?;
    let is_number = next.starts_with('-') && next.parse::<f64>().is_ok();
    is_number.then(|| raw.next().map(|taken| taken.to_string_lossy().into_owned()))?
}

impl Typed {
    /// How something is to be printed.
    pub(crate) fn form(&self) -> Result<Form, Fault> {
        match (self.json, self.csv) {
            (true, true) => Err(Fault::JsonOrCsv),
            (true, false) => Ok(Form::Json),
            (false, true) => Ok(Form::Csv),
            (false, false) => Ok(Form::Text),
        }
    }

    /// The promise that is asked about: the usual one but for what was typed.
    pub(crate) fn promise(&self) -> Promise {
        let usual = Promise::default();
        Promise {
            kind: self.kind.unwrap_or(usual.kind),
            chance: self.chance.map_or(usual.chance, Percent),
            season: self.season.unwrap_or(usual.season),
        }
    }

    /// Refuses options that the command would pass over.
    pub(crate) fn fits(&self, command: &Command) -> Result<(), Fault> {
        use Command as C;
        let allowed: &[&str] = match command {
            C::Plan { .. } => &["--json", "--csv", "--without-sun", "--weather"],
            C::Climate { .. } => &["--json", "--csv"],
            C::Sun { .. } | C::Fit { .. } => &["--json"],
            C::Working { .. } => &["--month"],
            C::Size { .. } => {
                &["--json", "--promise", "--chance", "--season", "--price", "--weight"]
            }
            C::Gauge { .. } => &["--json", "--mistake", "--commission"],
            C::Logbook { .. } | C::Symptom { .. } => LOGBOOK,
            C::Link { .. } | C::File { .. } | C::Care { .. } | C::Version => &[],
            C::Help => return Ok(()),
        };
        let given = [
            (self.json, "--json"),
            (self.csv, "--csv"),
            (self.without_sun, "--without-sun"),
            (self.weather.is_some(), "--weather"),
            (self.month.is_some(), "--month"),
            (self.kind.is_some(), "--promise"),
            (self.chance.is_some(), "--chance"),
            (self.season.is_some(), "--season"),
            (self.price.is_some(), "--price"),
            (self.weight.is_some(), "--weight"),
            (self.mistake.is_some(), "--mistake"),
            (self.commission, "--commission"),
            (self.told.capacity.is_some(), "--gauge-ah"),
            (self.told.efficiency.is_some(), "--gauge-efficiency"),
            (self.told.order == Some(Order::DayFirst), "--day-first"),
            (self.told.order == Some(Order::MonthFirst), "--month-first"),
        ];
        match given.into_iter().find(|(given, name)| *given && !allowed.contains(name)) {
            Some((_, name)) => Err(Fault::UnknownOption(name.to_owned())),
            None => Ok(()),
        }
    }
}
