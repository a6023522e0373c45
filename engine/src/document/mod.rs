//! What people save and share: the raw scenario, its limits, and how it is read from a file.
//!
//! One document is the single truth for file, link, storage and undo. It is raw: numbers with their unit in the field's name, checked
//! for their range and nothing else. Whether the parts fit together is for the rooms below, ending in `system`.
//!
//! Reading is strict. An unknown field, a newer version, another program's file: each gives a [`Problem`] and changes nothing.

mod checks;
mod date;
mod field;
mod keys;
mod logged;
mod painting;
mod problem;
mod promise;
mod read;
mod schedule;
mod sections;
mod sheet;
mod sources;
mod value;
mod visitor;
mod walk;
mod walk_checks;
mod walk_logbook;
mod walk_wishes;
mod wiring;
mod write;

pub use checks::{Check, Checked, array_removed, loads_moved};
pub use date::{date_from, date_text};
pub use field::{Field, Range};
pub use logged::{Logbook, Logged, LoggedCharge};
pub use painting::{is_painted, painted};
pub use problem::{FieldFault, Found, Problem, Wanted};
pub use promise::{Promise, Promised};
pub use schedule::{ClockTime, DAY_MIN, Days, Months, Schedule, Span, When};
pub use sections::{
    Array, Awake, Bank, Charger, Chemistry, Controller, ControllerKind, Cooling, Document,
    Inverter, Kept, Load, Losses, Mounting, Place, Rating, Shading, Start, Supply,
};
pub use sheet::{Difference, Entry, Part, Sheet, Stated, differences, sheets};
pub use sources::{Generator, Turbine, TurbineOutput};
pub use value::{Group, Value};
pub use visitor::{List, TextField, Visitor};
pub use walk::walk;
pub use wiring::{Bundled, CableInsulation, WiredBy, Wiring};

use chrono::NaiveDate;

use crate::working::Tag;

/// The format's version.
pub const VERSION: u32 = 1;

/// The most bytes that a plan's file may have: 200 loads with everything stated take about 100 kB.
pub const MAX_BYTES: usize = 1 << 20;

/// Days from the first to the last date allowed: 2020-01-01 to 2099-12-31.
pub(crate) const LAST_DAY: u32 = 29_219;

/// The first date allowed.
pub(crate) fn first_date() -> NaiveDate {
    NaiveDate::from_ymd_opt(2020, 1, 1).unwrap_or_default()
}

impl Document {
    /// Reads a plan from the text of a file.
    ///
    /// # Errors
    /// A [`Problem`] that names the place and the fault; nothing is guessed.
    #[cfg(feature = "json")]
    pub fn from_json(text: &str) -> Result<Self, Problem> {
        Self::from_text(text, |text| {
            serde_json::from_str(text)
                .map_err(|fault| Problem::NotJson { line: fault.line(), column: fault.column() })
        })
    }

    /// The same where somebody else parses the text.
    ///
    /// # Errors
    /// See [`from_json`](Self::from_json); whatever is wrong by the parser.
    pub fn from_text(
        text: &str,
        parse: impl FnOnce(&str) -> Result<Value, Problem>,
    ) -> Result<Self, Problem> {
        if text.len() > MAX_BYTES {
            return Err(Problem::TooLarge { bytes: text.len() });
        }
        if text.trim().is_empty() {
            return Err(Problem::NotJson { line: 1, column: 0 });
        }
        let value = parse(text)?;
        let version = value.as_group().and_then(|own| own.get("sunlarder")?.as_u64());
        match version {
            None => return Err(Problem::NotAPlan),
            Some(version) if version != u64::from(VERSION) => {
                let version = u32::try_from(version).unwrap_or(u32::MAX);
                return Err(Problem::NewerVersion { version });
            }
            Some(_) => {}
        }
        let mut document = Self::default();
        walk::walk_named(&mut document, &mut read::Reader::new(&value))?;
        document.checked()
    }

    /// Whether somebody said where it is. A blank plan is nowhere in particular.
    #[must_use]
    pub fn has_place(&self) -> bool {
        let place = &self.place;
        !place.name.is_empty() || place.latitude_deg != 0.0 || place.longitude_deg != 0.0
    }

    /// The text of a file, every number rounded to its resolution.
    #[must_use]
    pub fn to_json(&self) -> String {
        let mut writer = write::Writer::new(self.version);
        // The walk hands out mutable references; the writer changes nothing and finds no fault.
        let _ = walk::walk_named(&mut self.clone(), &mut writer);
        writer.into_text()
    }

    /// The plan with every number rounded to its resolution, if all are in range.
    ///
    /// # Errors
    /// The first [`Problem`] met.
    pub fn checked(mut self) -> Result<Self, Problem> {
        let readings = self.logbook.iter().flat_map(|own| &own.readings);
        let mut dates = readings.map(|own| own.date).chain([self.start.date]);
        if let Some(date) = dates.find(|own| !walk::date_in_range(*own)) {
            return Err(Problem::DateOutOfRange { date });
        }
        walk(&mut self, &mut Checker { at: Tag::None })?;
        if let Some(logbook) = &mut self.logbook {
            logbook.put_in_order();
        }
        self.version = VERSION;
        Ok(self)
    }
}

/// Checks every range and length, and rounds to the resolution.
struct Checker {
    at: Tag,
}

impl Visitor for Checker {
    fn open(&mut self, at: Tag) -> Result<(), Box<Problem>> {
        self.at = at;
        Ok(())
    }

    fn close(&mut self) -> Result<(), Box<Problem>> {
        self.at = Tag::None;
        Ok(())
    }

    fn number(&mut self, field: Field, value: &mut f64, _: f64) -> Result<(), Box<Problem>> {
        let range = field.range();
        if !range.holds(*value) {
            return Err(Problem::OutOfRange { field, at: self.at, value: *value }.into());
        }
        *value = range.rounded(*value);
        Ok(())
    }

    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Box<Problem>> {
        value.as_mut().map_or(Ok(()), |value| self.number(field, value, 0.0))
    }

    fn whole(&mut self, value: &mut u32, _: u32, max: u32) -> Result<(), Box<Problem>> {
        // Choices and masks are valid by their type; this only catches what a file can spell beyond it.
        *value = (*value).min(max);
        Ok(())
    }

    fn text(&mut self, field: TextField, value: &mut String) -> Result<(), Box<Problem>> {
        let length = value.chars().count();
        if length > field.limit() {
            return Err(Problem::TooLong { field, at: self.at, length }.into());
        }
        Ok(())
    }

    fn length(&mut self, list: List, length: usize) -> Result<usize, Box<Problem>> {
        if length > list.limit() {
            return Err(Problem::TooMany { list, length }.into());
        }
        Ok(length)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan() -> Document {
        Document {
            name: "Small hut".into(),
            loads: vec![Load::default(), Load { quantity: 3.0, ..Load::default() }],
            arrays: vec![Array::default()],
            ..Document::default()
        }
    }

    #[test]
    fn a_plan_survives_its_file() {
        let plan = plan();
        assert_eq!(Document::from_json(&plan.to_json()), Ok(plan));
    }

    #[test]
    fn bad_numbers_are_named_with_their_load() {
        for bad in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e300] {
            let mut plan = plan();
            plan.loads[1].quantity = bad;
            let problem = plan.checked().unwrap_err();
            assert!(
                matches!(
                    problem,
                    Problem::OutOfRange { field: Field::Quantity, at: Tag::Load(1), .. }
                ),
                "{bad}: {problem:?}"
            );
        }
    }

    #[test]
    fn other_files_are_told_apart() {
        let problem = |text: &str| Document::from_json(text).unwrap_err();
        assert_eq!(problem(""), Problem::NotJson { line: 1, column: 0 });
        assert_eq!(problem("{\"sunlarder\": 1,"), Problem::NotJson { line: 1, column: 16 });
        assert_eq!(problem("[1, 2]"), Problem::NotAPlan);
        assert_eq!(problem("{\"version\": 3}"), Problem::NotAPlan);
        assert_eq!(problem("{\"sunlarder\": 2}"), Problem::NewerVersion { version: 2 });
        assert_eq!(problem("{\"sunlarder\": 0}"), Problem::NewerVersion { version: 0 });
        let large = " ".repeat(MAX_BYTES + 1);
        assert_eq!(problem(&large), Problem::TooLarge { bytes: MAX_BYTES + 1 });
    }

    #[test]
    fn faults_of_a_file_are_located() {
        let file = plan().to_json();
        let problem = |from: &str, to: &str| {
            assert!(file.contains(from), "{from}");
            Document::from_json(&file.replacen(from, to, 1)).unwrap_err()
        };
        let wrong = |path: &str, fault| Problem::WrongField { path: path.into(), fault };
        assert_eq!(
            problem("\"quantity\"", "\"quantiti\""),
            wrong("loads[1].quantiti", FieldFault::Unknown)
        );
        assert_eq!(
            problem("\"latitude_deg\": 0.0,", ""),
            wrong("place.latitude_deg", FieldFault::Missing)
        );
        let wanted = Wanted::Number(Field::Quantity);
        let found = Found::Text("three".into());
        assert_eq!(
            problem("\"quantity\": 3.0", "\"quantity\": \"three\""),
            wrong("loads[1].quantity", FieldFault::WrongKind { found, wanted })
        );
    }

    #[test]
    fn faults_inside_a_section_are_located_too() {
        let mut plan = plan();
        plan.bank.kept = Kept::AtC(0.0);
        plan.loads[1].rating = Rating::Plate { current_a: 2.0, at_v: 12.0 };
        plan.loads[0].schedule.days = Days(0b110_0000);
        let file = plan.to_json();
        assert_eq!(Document::from_json(&file), Ok(plan));
        let kind = |found: Found, wanted| FieldFault::WrongKind { found, wanted };
        let text = |text: &str| Found::Text(text.into());
        let rating = Wanted::Form(keys::RATING.names, keys::RATING.bare);
        let kept = Wanted::Form(keys::KEPT.names, keys::KEPT.bare);
        let at_c = Wanted::Number(Field::BatteryTemperature);
        let cases = [
            ("\"at_v\"", "\"volts\"", "loads[1].rating.plate.volts", FieldFault::Unknown),
            ("\"plate\"", "\"plaque\"", "loads[1].rating", kind(Found::Group, rating)),
            ("\"dirt_pct\": 3.0,", "", "arrays[0].losses.dirt_pct", FieldFault::Missing),
            ("\"at_c\": 0.0", "\"inside\": 0.0", "bank.kept", kind(Found::Group, kept)),
            ("\"at_c\": 0.0", "\"at_c\": null", "bank.kept.at_c", kind(Found::Nothing, at_c)),
            (
                "\"lifepo4\"",
                "\"lead\"",
                "bank.chemistry",
                kind(text("lead"), Wanted::OneOf(&keys::CHEMISTRY)),
            ),
            (
                "\"sat\"",
                "\"day\"",
                "loads[0].schedule.days[0]",
                kind(text("day"), Wanted::OneOf(&keys::DAYS)),
            ),
            (
                "\"2020-01-01\"",
                "\"2020-13-01\"",
                "start.date",
                kind(text("2020-13-01"), Wanted::Date),
            ),
            ("\"16:00\"", "\"24:00\"", "start.time", kind(text("24:00"), Wanted::Time)),
            ("\"place\"", "\"palace\"", "palace", FieldFault::Unknown),
            ("\"reserve_pct\": 20.0,", "", "bank.reserve_pct", FieldFault::Missing),
        ];
        for (from, to, path, fault) in cases {
            assert!(file.contains(from), "{from}");
            let found = Document::from_json(&file.replacen(from, to, 1));
            assert_eq!(found, Err(Problem::WrongField { path: path.into(), fault }), "{to}");
        }
    }

    #[test]
    fn lists_of_another_length_are_told_with_it() {
        let mut plan = plan();
        plan.turbine = Some(Turbine { hours: Some([1.0; 24]), ..Turbine::default() });
        let mut file: serde_json::Value = serde_json::from_str(&plan.to_json()).unwrap();
        let refused = |file: &serde_json::Value| Document::from_json(&file.to_string());
        let wrong = |path: &str, found, wanted| {
            let fault = FieldFault::WrongKind { found, wanted };
            Err(Problem::WrongField { path: path.into(), fault })
        };
        file["turbine"]["hours"] = vec![1; 23].into();
        let day = Wanted::Numbers(24, Field::HourShare);
        assert_eq!(refused(&file), wrong("turbine.hours", Found::List(23), day));
        file["turbine"]["hours"] = vec![1; 24].into();
        file["turbine"]["hours"][7] = "much".into();
        let (much, share) = (Found::Text("much".into()), Wanted::Number(Field::HourShare));
        assert_eq!(refused(&file), wrong("turbine.hours[7]", much, share));
        file["turbine"]["hours"][7] = 1.into();
        file["loads"][0]["schedule"]["months"] = serde_json::json!([1, 13]);
        let month = Wanted::Numbered(12);
        assert_eq!(
            refused(&file),
            wrong("loads[0].schedule.months[1]", Found::Number(13.0), month)
        );
    }

    #[test]
    fn what_a_file_leaves_out_gets_its_default() {
        let file = r#"{"sunlarder": 1, "place": {"latitude_deg": 0, "longitude_deg": 0},
            "start": {"date": "2020-01-01", "time": "16:00", "charge_pct": 100},
            "bank": {"chemistry": "lifepo4", "battery_v": 12.8, "capacity_ah": 100,
                "reserve_pct": 20, "hour_rate_h": null},
            "inverter": null,
            "loads": [{"rating": {"power_w": 10},
                "schedule": {"when": {"hours_per_day": 1}, "months": [1, 12]}}]}"#;
        let mut load = Load::default();
        load.schedule.months = Months(0b1000_0000_0001);
        let plan = Document { loads: vec![load], ..Document::default() };
        assert_eq!(Document::from_json(file), Ok(plan));
    }

    #[test]
    fn words_and_lists_are_written_for_people() {
        let mut plan = plan();
        plan.loads.truncate(1);
        plan.loads[0].schedule = Schedule {
            when: When::Spans(vec![Span { from_min: 60, to_min: 120 }]),
            days: Days(0b110_0000),
            months: Months(0b11),
        };
        let file: String = plan.to_json().split_whitespace().collect();
        let schedule = r#"{"when":{"spans":["01:00-02:00"]},"days":["sat","sun"],"months":[1,2]}"#;
        assert!(file.contains(&format!("\"schedule\":{schedule}")), "{file}");
        assert_eq!(Document::from_json(&file.replace("Smallhut", "Small hut")), Ok(plan));
    }

    #[test]
    fn ten_thousand_loads_are_too_many() {
        let plan = Document { loads: vec![Load::default(); 10_000], ..plan() };
        assert_eq!(plan.checked(), Err(Problem::TooMany { list: List::Loads, length: 10_000 }));
    }
}
