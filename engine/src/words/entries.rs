//! What stands in a plan, in words: its entries and their values, of one plan or where two differ.

use super::{Label as L, Words};
use crate::document::{
    Chemistry, Difference, Document, Entry, Field, Part, Sheet, Stated, date_text, differences,
    sheets,
};
use crate::place::SummerTime;
use crate::working::Tag;

/// A line of what two plans do not have in common.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DifferenceLine {
    /// What differs.
    pub what: String,
    /// What the first plan states.
    pub first: String,
    /// What the second plan states.
    pub second: String,
}

impl Words {
    /// What the place of a plan is called: its name, else its coordinates.
    #[must_use]
    pub fn place_name(self, plan: &Document) -> String {
        let place = &plan.place;
        if !place.name.is_empty() {
            place.name.clone()
        } else if place.latitude_deg == 0.0 && place.longitude_deg == 0.0 {
            self.label(L::NoPlaceYet).to_owned()
        } else {
            format!("{}°, {}°", self.rounded(place.latitude_deg), self.rounded(place.longitude_deg))
        }
    }

    /// What two plans do not have in common, but for their names.
    #[must_use]
    pub fn difference_lines(self, first: &Document, second: &Document) -> Vec<DifferenceLine> {
        let all = differences(first, second).into_iter();
        all.filter_map(|own| self.difference_line(first, second, &own)).collect()
    }

    fn difference_line(
        self,
        first: &Document,
        second: &Document,
        own: &Difference,
    ) -> Option<DifferenceLine> {
        let whose = match (own.first, own.second) {
            (Some(part), _) => self.part(first, part),
            (None, Some(part)) => self.part(second, part),
            (None, None) => return None,
        };
        let Some((one, other)) = &own.of else {
            let there = |part: Option<Part>| self.there(part.is_some()).to_owned();
            return Some(DifferenceLine {
                what: whose,
                first: there(own.first),
                second: there(own.second),
            });
        };
        let entry = one.as_ref().or(other.as_ref())?;
        if own.first == Some(Part::Plan) && entry.key == "name" {
            return None;
        }
        let name = self.entry(entry).unwrap_or_else(|| entry.key.to_owned());
        let said = |one: &Option<Entry>, other: &Option<Entry>| {
            let other = other.as_ref().map(|own| &own.stated);
            one.as_ref().map_or_else(|| "–".to_owned(), |own| self.stated(own, other))
        };
        Some(DifferenceLine {
            what: format!("{whose}: {name}"),
            first: said(one, other),
            second: said(other, one),
        })
    }

    /// What a plan states, part by part: the name of the part and what is said of it, without what goes without saying.
    #[must_use]
    pub fn stated_lines(self, document: &Document) -> Vec<(String, String)> {
        let usual = sheets(&usual());
        let line = |sheet: Sheet| {
            let usual = usual.iter().find(|own| same_kind(own.part, sheet.part));
            let told = sheet.entries.iter().filter(|own| {
                let usual = usual.is_some_and(|usual| usual.entries.contains(own));
                tells(own) && (!usual || NEEDED.contains(&own.key))
            });
            let said: Vec<String> = told.map(|own| self.told(own)).collect();
            // What was measured is a record and no plan.
            let told = !said.is_empty() && !matches!(sheet.part, Part::Check(_));
            told.then(|| (self.part(document, sheet.part), said.join(" · ")))
        };
        sheets(document).into_iter().filter_map(line).collect()
    }

    /// An entry with its name, where its value does not say enough.
    fn told(self, entry: &Entry) -> String {
        let value = self.stated(entry, None);
        match entry.stated {
            Stated::Flag(true) => self.entry(entry).unwrap_or(value),
            Stated::Word(..) | Stated::Span(_) | Stated::Days(_) | Stated::Months(_) => value,
            Stated::Date(_) => value,
            _ => format!("{} {value}", self.entry(entry).unwrap_or_default()),
        }
    }

    /// What a part of a plan is called.
    fn part(self, document: &Document, part: Part) -> String {
        match part {
            Part::Load(place) => {
                let name = self.name_in(document, Tag::Load(place));
                let name = name.unwrap_or_else(|| self.unnamed_load().to_owned());
                speak!(self.language, compare::quoted(&name))
            }
            Part::Array(place) => self.array(place.into()),
            // By its number: what each check is called belongs to the page about the installed system.
            Part::Check(place) => self.unnamed(Tag::Check(place)).unwrap_or_default(),
            part => speak!(self.language, compare::part(part)).to_owned(),
        }
    }

    fn there(self, is: bool) -> &'static str {
        speak!(self.language, compare::there(is))
    }

    /// What an entry is called; none if nobody has given it a name.
    fn entry(self, entry: &Entry) -> Option<String> {
        let label = match (entry.group, entry.key) {
            (_, "name") => L::Name,
            (_, "group") => L::GroupName,
            (_, "appliance") => L::Name,
            (_, "on") => L::Counted,
            (_, "vital") => L::Vital,
            (_, "cooling") => L::FollowsTheHeat,
            (_, "supply") => L::FedBy,
            (_, "rating") => L::PowerIsStated,
            (_, "when" | "spans") => L::When,
            (_, "days") => L::DaysOfTheWeek,
            (_, "months") => L::MonthsOfTheYear,
            (_, "date") => L::FirstDay,
            (_, "time") => L::StartTime,
            (_, "summer_time") => L::SummerTime,
            (_, "chemistry") => L::Chemistry,
            (_, "kept") => L::BankStands,
            (_, "charge_limit_a") => L::ChargeLimit,
            (_, "discharge_limit_a") => L::DischargeLimit,
            (_, "peak_limit_a") => L::PeakLimit,
            (_, "efficiency_half_pct") => L::EfficiencyHalf,
            (_, "efficiency_full_pct") => L::EfficiencyFull,
            (_, "awake") => L::InverterIsOn,
            (_, "mounting") => L::Mounting,
            (_, "best_point_v") => L::BestPoint,
            (_, "open_circuit_v") => L::OpenCircuit,
            (_, "dirt_pct") => L::Dirt,
            (_, "cable_pct") => L::Cable,
            (_, "ageing_pct") => L::Ageing,
            (_, "other_pct") => L::OtherLosses,
            (_, "morning_pct") => L::ShadeMorning,
            (_, "midday_pct") => L::ShadeMidday,
            (_, "afternoon_pct") => L::ShadeAfternoon,
            ("controller", "kind") => L::ChargeController,
            ("controller", "limit_a") => L::ControllerLimit,
            (_, "what") => L::WhatIsPromised,
            (_, "tables") => L::WiredBy,
            (_, "insulation") => L::InsulationFor,
            (_, "bundle") => L::LieTogether,
            (_, "engine_space") => L::InEngineSpace,
            (_, "readings") => L::ReadingsOfGauge,
            (_, "output") => L::PowerIsStated,
            (_, "hours") => L::ByHour,
            _ => return self.entry_of_field(entry),
        };
        Some(self.label(label).to_owned())
    }

    /// The name of the field that an entry is; what is left to what is typical has a number elsewhere.
    fn entry_of_field(self, entry: &Entry) -> Option<String> {
        let field = match &entry.stated {
            Stated::Number(field, _) | Stated::Each(field, _) => *field,
            _ => field_of(entry.key)?,
        };
        Some(self.field(field).to_owned())
    }

    /// What is stated; of a number for each month only those that differ from the other's.
    fn stated(self, entry: &Entry, other: Option<&Stated>) -> String {
        match &entry.stated {
            Stated::Number(field, value) => self.number(*field, *value),
            Stated::Typical => self.label(L::AsIsTypical).to_owned(),
            Stated::Each(field, values) => self.each(*field, values, other),
            Stated::Text(text) if text.is_empty() => "–".into(),
            Stated::Text(text) => text.clone(),
            Stated::Flag(is) => self.yes_or_no(*is).to_owned(),
            Stated::Word(place, name) => self.word(entry.key, *place, name),
            Stated::Days(bits) => speak!(self.language, compare::days(*bits)),
            Stated::Months(bits) => speak!(self.language, compare::months(*bits)),
            Stated::Appliance(number) => number.map_or_else(|| "–".into(), |own| own.to_string()),
            Stated::Date(date) => date_text(*date),
            Stated::Time(time) => self.clock(time.0),
            Stated::Span(span) => {
                format!("{} – {}", self.clock(span.from_min), self.clock_end(span.to_min))
            }
            Stated::Readings(all) => {
                let newest = all
                    .last()
                    .map(|own| format!(" ({} {})", date_text(own.date), self.clock(own.time.0)));
                let count = super::number::grouped_count(all.len());
                format!("{count}{}", newest.unwrap_or_default())
            }
        }
    }

    fn number(self, field: Field, value: f64) -> String {
        let shown = self.shown(field, value);
        let number = if shown == value { self.as_given(value) } else { self.boxed(field, value) };
        match self.field_unit(field) {
            "" => number,
            "°" => format!("{number}°"),
            unit => format!("{number}\u{a0}{unit}"),
        }
    }

    fn each(self, field: Field, values: &[f64], other: Option<&Stated>) -> String {
        let others = match other {
            Some(Stated::Each(own, others)) if *own == field => others.as_slice(),
            _ => &[],
        };
        let differs = |at: &usize| others.get(*at) != values.get(*at);
        let of = |at: usize| match (field, values.len()) {
            (Field::Horizon, count) => format!("{}°", 360 * at / count.max(1)),
            (_, 12) => self.month_short(at).to_owned(),
            _ => self.hour_mark(at as u16),
        };
        let one = |at: usize| format!("{} {}", of(at), self.as_given(values[at]));
        let between = if self.writes_comma() { "; " } else { ", " };
        (0..values.len()).filter(differs).map(one).collect::<Vec<_>>().join(between)
    }

    fn word(self, key: &str, place: usize, name: &str) -> String {
        match key {
            "chemistry" => Chemistry::ALL.get(place).map(|own| self.chemistry(*own)),
            "summer_time" => SummerTime::ALL.get(place).map(|own| self.summer_time(*own)),
            _ => word(name).map(|label| self.label(label)),
        }
        .unwrap_or(name)
        .to_owned()
    }
}

/// The label of a word of a file.
fn word(name: &str) -> Option<L> {
    Some(match name {
        "inside" => L::KeptInside,
        "outside" => L::KeptOutside,
        "at_c" => L::KeptAt,
        "with_loads" => L::OnlyWithLoads,
        "always" => L::Always,
        "search" => L::LooksForLoads,
        "power_w" | "mean_w" => L::InWatts,
        "plate" => L::InVoltsAndAmps,
        "label_kwh_per_year" => L::ByEnergyLabel,
        "output" => L::ByOutput,
        "hours_per_day" => L::HoursPerDay,
        "spans" => L::AtTheseHours,
        "dc" => L::OnTheBank,
        "ac" => L::ByInverter,
        "open" => L::MountedOpen,
        "flush" => L::MountedFlush,
        "mppt" => L::Mppt,
        "pwm" => L::Pwm,
        "ah_per_day" => L::InAhADay,
        "through" => L::PromisedThrough,
        "short_days" => L::PromisedShortDays,
        "without_sun" => L::PromisedWithoutSun,
        "trip" => L::PromisedTrip,
        "usual" => L::AsIsTypical,
        "marine" => L::WiredMarine,
        "vehicle" => L::WiredVehicle,
        "land" => L::WiredLand,
        "60_c" => L::Insulation60,
        "75_c" => L::Insulation75,
        "90_c" => L::Insulation90,
        "105_c" => L::Insulation105,
        "alone" => L::LieAlone,
        "up_to_6" => L::LieUpTo6,
        "up_to_24" => L::LieUpTo24,
        "more" => L::LieMore,
        _ => return None,
    })
}

/// The field under a name in a file that may be left to what is typical.
fn field_of(key: &str) -> Option<Field> {
    Some(match key {
        "peak_sun_h" => Field::PeakSun,
        "temperature_c" => Field::AirTemperature,
        "record_low_c" => Field::RecordLow,
        "short_circuit_a" => Field::ModuleCurrent,
        "horizon_deg" => Field::Horizon,
        "hour_rate_h" => Field::HourRate,
        "protection_ma" => Field::ProtectionDraw,
        "charge_efficiency_pct" => Field::ChargeEfficiency,
        "rate_exponent" => Field::RateExponent,
        "self_discharge_pct" => Field::SelfDischarge,
        "second_capacity_ah" => Field::SecondCapacity,
        "second_hours_h" => Field::SecondHours,
        "third_capacity_ah" => Field::ThirdCapacity,
        "third_hours_h" => Field::ThirdHours,
        "absorption_v" => Field::AbsorptionVoltage,
        "tail_pct" => Field::TailCurrent,
        "low_cut_off_v" => Field::LowCutOff,
        "surge_w" => Field::InverterSurge,
        "idle_w" => Field::InverterIdle,
        "search_w" => Field::SearchDraw,
        "power_pct_per_k" => Field::PowerCoefficient,
        "max_v" => Field::ControllerVoltage,
        "chance_pct" => Field::Chance,
        "bank_price" => Field::BankPrice,
        "array_price" => Field::ArrayPrice,
        "bank_kg" => Field::BankWeight,
        "array_kg" => Field::ArrayWeight,
        "ambient_c" => Field::RunAmbient,
        "bank_short_circuit_a" => Field::ShortCircuitCurrent,
        "cranking_a" => Field::CrankingCurrent,
        "battery_m" => Field::BatteryRun,
        "inverter_m" => Field::InverterRun,
        "panel_m" => Field::PanelRun,
        "load_m" => Field::LoadRun,
        "controller_m" => Field::ControllerRun,
        "array_m" => Field::ArrayRun,
        "charger_m" => Field::ChargerRun,
        "beside_a" => Field::CheckCurrent,
        "gauge_capacity_ah" => Field::ToldCapacity,
        "gauge_efficiency_pct" => Field::ToldEfficiency,
        "fuel_l_per_h" => Field::FuelPerHour,
        "fuel_l_per_kwh" => Field::FuelPerEnergy,
        _ => return None,
    })
}

/// What is always told, even if it is as usual.
const NEEDED: [&str; 14] = [
    "chemistry",
    "battery_v",
    "capacity_ah",
    "reserve_pct",
    "date",
    "time",
    "charge_pct",
    "power_w",
    "hours_per_day",
    "module_w",
    "tilt_deg",
    "azimuth_deg",
    "limit_a",
    "rated_w",
];

/// Whether an entry tells something by itself: a form is told by the numbers in it.
fn tells(entry: &Entry) -> bool {
    match &entry.stated {
        Stated::Typical | Stated::Appliance(_) | Stated::Text(_) => false,
        Stated::Readings(all) => !all.is_empty(),
        Stated::Word(_, name) => {
            !["rating", "summer_time"].contains(&entry.key)
                && !["hours_per_day", "spans"].contains(name)
        }
        Stated::Number(..) => {
            !["latitude_deg", "longitude_deg", "utc_offset_min"].contains(&entry.key)
        }
        _ => true,
    }
}

/// Whether two parts state the same things.
fn same_kind(one: Part, other: Part) -> bool {
    core::mem::discriminant(&one) == core::mem::discriminant(&other)
}

/// A plan that has each part as it usually is.
fn usual() -> Document {
    Document {
        loads: vec![Default::default()],
        arrays: vec![Default::default()],
        inverter: Some(Default::default()),
        shore: Some(Default::default()),
        alternator: Some(Default::default()),
        generator: Some(Default::default()),
        turbine: Some(Default::default()),
        ..Document::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Rating;
    use crate::words::Language;

    const WORDS: Words = Words::of(Language::English);

    fn golden() -> [Document; 4] {
        [
            include_str!("../../../tests/golden/v1/rich.json"),
            include_str!("../../../tests/golden/v1/all_at_their_highest.json"),
            include_str!("../../../tests/golden/v1/all_at_their_lowest.json"),
            include_str!("../../../tests/golden/v1/hut_by_a_stream.json"),
        ]
        .map(|text| Document::from_json(text).unwrap())
    }

    #[test]
    fn everything_that_a_plan_may_state_has_a_name() {
        for plan in golden().into_iter().chain([usual()]) {
            for sheet in sheets(&plan) {
                for entry in &sheet.entries {
                    assert!(WORDS.entry(entry).is_some(), "{:?}: {entry:?}", sheet.part);
                    if let Stated::Word(place, name) = entry.stated {
                        let said = WORDS.word(entry.key, place, name);
                        assert!(said != name && !said.contains('_'), "{entry:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn what_differs_is_said_in_words() {
        let mut first = usual();
        first.loads[0].name = "Kettle".into();
        let mut second = first.clone();
        second.name = "Another".into();
        second.bank.capacity_ah = 200.0;
        second.bank.charge_limit_a = Some(50.0);
        second.inverter = None;
        second.loads[0].rating = Rating::PowerW(900.0);
        let mut sun = [3.0; 12];
        first.place.peak_sun_h = Some(sun);
        sun[6] = 5.5;
        second.place.peak_sun_h = Some(sun);
        let lines = WORDS.difference_lines(&first, &second);
        let lines: Vec<String> = lines
            .iter()
            .map(|own| {
                format!("{}: {} → {}", own.what, own.first, own.second).replace('\u{a0}', " ")
            })
            .collect();
        assert_eq!(
            lines,
            [
                "Place: Peak sun hours: Jul 3 → Jul 5.5",
                "Bank: Rated capacity of one battery: 100 Ah → 200 Ah",
                "Bank: Charge limit of one battery: typical → 50 A",
                "Inverter: there → –",
                "“Kettle”: Power: 10 W → 900 W",
            ]
        );
    }

    #[test]
    fn a_plan_is_told_without_what_goes_without_saying() {
        let mut plan = usual();
        plan.loads[0].name = "Fan".into();
        plan.loads[0].quantity = 2.0;
        let lines = WORDS.stated_lines(&plan);
        let fan = lines.iter().find(|(part, _)| part == "“Fan”").unwrap();
        let said = fan.1.replace('\u{a0}', " ");
        assert!(said.contains("Power 10 W") && said.contains("Quantity 2"), "{said}");
        assert!(!said.contains("Duty") && !said.contains("Surge"), "{said}");
    }
}
