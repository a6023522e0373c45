//! `sunlarder`: the planner without a page, for dealers who batch, teachers who script, and tests.
//!
//! It holds no formula and no word: the engine computes and its `words` room speaks. What is asked for goes to standard output,
//! whole or not at all; why it could not be done goes to standard error. Exit code 0 is success, 1 input that was refused, 2 a
//! command line that was not understood.

mod arguments;
mod climate;
mod fit;
mod gauge;
mod logbook;
mod plan;
mod promise;
mod read;
mod size;
mod sun;
mod table;
mod typed;
mod values;
mod worked;

use std::io::{self, Write};
use std::process::ExitCode;
use std::sync::OnceLock;

use arguments::{Command, Form};
use sunlarder_engine::outlook::csv;
use sunlarder_engine::share;
use sunlarder_engine::sizing::Question;
use sunlarder_engine::words::command_line::Fault;
use sunlarder_engine::words::{Language, Words};

/// The language that was asked for.
static SPOKEN: OnceLock<Language> = OnceLock::new();

/// What speaks, in the language that was asked for or else in English; always by the usual habits, which scripts rely on.
fn words() -> Words {
    Words::of(SPOKEN.get().copied().unwrap_or(Language::English))
}

/// Input that was refused.
const REFUSED: u8 = 1;
/// A command line that was not understood.
const USAGE: u8 = 2;

fn main() -> ExitCode {
    // First, so that faults are told in it, too.
    if let Some(language) = arguments::language(std::env::args_os()) {
        let _ = SPOKEN.set(language);
    }
    match arguments::parse(lexopt::Parser::from_env()).and_then(|command| answer(&command)) {
        Ok(text) => say(&mut io::stdout().lock(), &text),
        Err(fault) => {
            let text = words().fault(&fault, &|_| None) + "\n";
            say(&mut io::stderr().lock(), &text);
            ExitCode::from(if fault.is_usage() { USAGE } else { REFUSED })
        }
    }
}

/// Writes it all. Whoever closed the other end has read enough, which is no failure.
fn say(to: &mut impl Write, text: &str) -> ExitCode {
    match to.write_all(text.as_bytes()).and_then(|()| to.flush()) {
        Err(fault) if fault.kind() != io::ErrorKind::BrokenPipe => ExitCode::from(REFUSED),
        _ => ExitCode::SUCCESS,
    }
}

/// What a command prints.
fn answer(command: &Command) -> Result<String, Fault> {
    match command {
        Command::Help => Ok(words().usage().to_owned()),
        Command::Version => Ok(format!("sunlarder {}\n", env!("CARGO_PKG_VERSION"))),
        Command::Plan { plan, form, sun, weather } => {
            let weather = weather.as_deref().map(read::weather).transpose()?;
            let plan = plan::Answered::of(read::plan(plan)?, *sun, weather.as_ref())?;
            Ok(match form {
                Form::Text => plan::text(&plan),
                Form::Json => plan::json(&plan),
                Form::Csv => csv(&plan.system, plan.run()),
            })
        }
        Command::Working { plan, figure, month } => {
            worked::text(&read::plan(plan)?, *figure, *month)
        }
        Command::Size { plan, promise, stated, price, weight, form } => {
            let plan = read::plan(plan)?;
            let promise = if *stated { *promise } else { size::usual(&plan, *promise) };
            let question = Question { promise, price: *price, weight: *weight };
            let study = size::studied(&plan, question)?;
            Ok(match form {
                Form::Json => size::json(&study),
                Form::Text | Form::Csv => size::text(&study),
            })
        }
        Command::Fit { plan, form } => {
            let fitted = fit::Fitted::of(read::plan(plan)?)?;
            Ok(if *form == Form::Json { fit::json(&fitted) } else { fit::text(&fitted) })
        }
        Command::Gauge { plan, form, mistake, commission } => {
            let gauged = gauge::Gauged::of(read::plan(plan)?, *mistake)?;
            Ok(match form {
                Form::Json => gauge::json(&gauged),
                Form::Text | Form::Csv if *commission => gauge::sheet(&gauged),
                Form::Text | Form::Csv => gauge::text(&gauged),
            })
        }
        Command::Logbook { plan, readings, told, form } => {
            let plan = read::plan(plan)?;
            let system = logbook::system(&plan)?;
            let text = read::readings(readings)?;
            let read = logbook::read((&plan, &system), readings, *told, &text)?;
            Ok(match form {
                Form::Json => logbook::json(&read),
                Form::Text | Form::Csv => logbook::text(&read),
            })
        }
        Command::Symptom { plan, symptom, readings, told, form } => {
            let plan = read::plan(plan)?;
            let system = logbook::system(&plan)?;
            let read = match readings {
                Some(own) => {
                    let text = read::readings(own)?;
                    Some(logbook::read((&plan, &system), own, *told, &text)?)
                }
                None => None,
            };
            let ranked = logbook::ranked(&system, *symptom, read.as_ref());
            Ok(match form {
                Form::Json => logbook::symptom_json(*symptom, &ranked),
                Form::Text | Form::Csv => logbook::symptom_text(*symptom, &ranked),
            })
        }
        Command::Care { plan } => Ok(logbook::care(&logbook::system(&read::plan(plan)?)?)),
        Command::Link { plan } => {
            let code = share::encode(&read::plan(plan)?).map_err(Fault::Refused)?;
            Ok(code + "\n")
        }
        Command::File { plan } => Ok(read::plan(plan)?.to_json() + "\n"),
        Command::Climate { site, form } => Ok(match form {
            Form::Text => climate::text(*site),
            Form::Json => climate::json(*site),
            Form::Csv => climate::csv(*site),
        }),
        Command::Sun { site, instant, form } => Ok(match form {
            Form::Json => sun::json(*site, *instant),
            Form::Text | Form::Csv => sun::text(*site, *instant),
        }),
    }
}
