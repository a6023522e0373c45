//! Whole plans at random: everyday ones, and wild ones that use every field's whole range.

use proptest::array::{uniform12, uniform24};
use proptest::collection::vec;
use proptest::option::weighted;
use proptest::prelude::*;
use proptest::sample::select;
use sunlarder_engine::bank::typical;
use sunlarder_engine::document::{
    Array, Awake, Bank, Bundled, CableInsulation, Charger, Check, Checked, Chemistry, ClockTime,
    Controller, ControllerKind, Cooling, DAY_MIN, Days, Document, Field, Generator, Inverter, Kept,
    Load, Logbook, Logged, LoggedCharge, Losses, Months, Mounting, Place, Promise, Promised,
    Rating, Schedule, Shading, Span, Start, Supply, Turbine, TurbineOutput, When, WiredBy, Wiring,
};
use sunlarder_engine::place::SummerTime;

/// Days from the first to the last date that a plan may start on.
const LAST_DAY: u64 = 29_219;
/// The longest name.
const NAME: usize = 80;
/// How often an optional part is there.
const OFTEN: f64 = 0.4;
const SELDOM: f64 = 0.1;

/// How far values may stray.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// As people have them.
    Everyday,
    /// Anything that a field takes, its ends more often than their share.
    Wild,
}

impl Kind {
    /// A field's value: between these bounds if everyday.
    fn number(self, field: Field, low: f64, high: f64) -> BoxedStrategy<f64> {
        let range = field.range();
        let steps = |value| range.steps(value);
        match self {
            Self::Everyday => {
                (steps(low)..=steps(high)).prop_map(move |at| range.value(at)).boxed()
            }
            Self::Wild => {
                let (min, max) = (steps(range.min), steps(range.max));
                prop_oneof![6 => min..=max, 1 => Just(min), 1 => Just(max)]
                    .prop_map(move |at| range.value(at))
                    .boxed()
            }
        }
    }

    /// A field that may be left to what is typical.
    fn option(self, field: Field, low: f64, high: f64) -> BoxedStrategy<Option<f64>> {
        weighted(OFTEN, self.number(field, low, high)).boxed()
    }
}

fn name() -> impl Strategy<Value = String> {
    let letters = prop_oneof![
        4 => select("abcdefghilmnoprstuACDLNPST 0123456789,.-".chars().collect::<Vec<_>>()),
        1 => any::<char>(),
    ];
    let short = vec(letters.clone(), 0..12);
    prop_oneof![9 => short, 1 => vec(letters, 0..=NAME)].prop_map(|all| all.into_iter().collect())
}

fn place(kind: Kind) -> impl Strategy<Value = Place> {
    let where_it_is =
        (kind.number(Field::Latitude, -66.0, 66.0), kind.number(Field::Longitude, -180.0, 180.0));
    let clock = (kind.number(Field::UtcOffset, -720.0, 840.0), select(SummerTime::ALL.as_slice()));
    // Peak sun hours so small that they are plausible unless the sun never rises.
    let sun = weighted(SELDOM, uniform12(Kind::Everyday.number(Field::PeakSun, 0.0, 0.2)));
    let air = weighted(SELDOM, uniform12(kind.number(Field::AirTemperature, -20.0, 35.0)));
    let around = (
        kind.number(Field::Albedo, 5.0, 70.0),
        kind.number(Field::InsideTemperature, 0.0, 20.0),
        kind.option(Field::RecordLow, -40.0, 10.0),
        weighted(SELDOM, uniform12(kind.number(Field::Horizon, 0.0, 30.0))),
    );
    (name(), where_it_is, clock, sun, air, around).prop_map(
        |(name, (latitude_deg, longitude_deg), (utc_offset_min, summer_time), sun, air, around)| {
            let (albedo_pct, inside_c, record_low_c, horizon_deg) = around;
            Place {
                name,
                latitude_deg,
                longitude_deg,
                utc_offset_min,
                summer_time,
                peak_sun_h: sun,
                temperature_c: air,
                albedo_pct,
                inside_c,
                record_low_c,
                horizon_deg,
            }
        },
    )
}

fn start(kind: Kind) -> impl Strategy<Value = Start> {
    let charge = kind.number(Field::StartCharge, 60.0, 100.0);
    (0..=LAST_DAY, 0..DAY_MIN, charge).prop_map(|(day, minute, charge_pct)| {
        let first = Start::default().date;
        Start { date: first + chrono::Days::new(day), time: ClockTime(minute), charge_pct }
    })
}

fn span() -> impl Strategy<Value = Span> {
    (0..DAY_MIN, 1..=DAY_MIN)
        .prop_map(|(from_min, to_min)| Span { from_min, to_min })
        .prop_filter("a stretch that is none", |span| span.is_valid())
}

fn schedule(kind: Kind) -> impl Strategy<Value = Schedule> {
    let when = prop_oneof![
        2 => kind.number(Field::HoursPerDay, 0.1, 8.0).prop_map(When::HoursPerDay),
        1 => Just(When::Always),
        2 => vec(span(), 0..4).prop_map(When::Spans),
    ];
    let days = prop_oneof![3 => Just(Days::ALL), 1 => (0..=Days::ALL.0).prop_map(Days)];
    let months = prop_oneof![3 => Just(Months::ALL), 1 => (0..=Months::ALL.0).prop_map(Months)];
    (when, days, months).prop_map(|(when, days, months)| Schedule { when, days, months })
}

fn rating(kind: Kind) -> impl Strategy<Value = Rating> {
    let plate =
        (kind.number(Field::LoadCurrent, 0.1, 5.0), kind.number(Field::PlateVoltage, 5.0, 24.0));
    let output = (
        kind.number(Field::OutputPower, 10.0, 300.0),
        kind.number(Field::OutputEfficiency, 50.0, 95.0),
    );
    prop_oneof![
        4 => kind.number(Field::LoadPower, 1.0, 120.0).prop_map(Rating::PowerW),
        1 => plate.prop_map(|(current_a, at_v)| Rating::Plate { current_a, at_v }),
        1 => kind.number(Field::LabelEnergy, 20.0, 200.0).prop_map(Rating::LabelKwhPerYear),
        1 => output.prop_map(|(power_w, efficiency_pct)| Rating::Output { power_w, efficiency_pct }),
    ]
}

fn cooling(kind: Kind) -> impl Strategy<Value = Cooling> {
    (kind.number(Field::FridgeInside, -20.0, 6.0), kind.number(Field::FridgeReference, 20.0, 32.0))
        .prop_map(|(inside_c, reference_c)| Cooling { inside_c, reference_c })
}

pub(crate) fn load(kind: Kind) -> impl Strategy<Value = Load> {
    let named = ((name(), name()), weighted(OFTEN, any::<u16>()), prop::bool::weighted(0.9));
    let power = (kind.number(Field::Quantity, 1.0, 3.0), rating(kind), any::<bool>());
    let time = (kind.number(Field::Duty, 20.0, 100.0), schedule(kind));
    let factor = prop_oneof![2 => Just(1.0), 1 => kind.number(Field::PowerFactor, 0.5, 1.0)];
    let rest =
        (kind.number(Field::Surge, 1.0, 3.0), weighted(0.2, cooling(kind)), any::<bool>(), factor);
    (named, power, time, rest).prop_map(|(named, power, time, rest)| {
        let (((name, group), appliance, on), (quantity, rating, ac)) = (named, power);
        let ((duty_pct, schedule), (surge, cooling, vital, power_factor)) = (time, rest);
        let supply = if ac { Supply::Ac } else { Supply::Dc };
        Load {
            name,
            appliance,
            on,
            quantity,
            rating,
            supply,
            duty_pct,
            schedule,
            surge,
            cooling,
            vital,
            power_factor,
            group,
        }
    })
}

fn inverter(kind: Kind) -> impl Strategy<Value = Inverter> {
    // An idle draw above the loss at half load is refused, so it is drawn as a share of the output.
    let rated = kind.number(Field::InverterRated, 200.0, 3000.0);
    let idle = weighted(OFTEN, 0.001..0.012_f64);
    let half = kind.option(Field::InverterEfficiency, 85.0, 96.0);
    let full = kind.option(Field::InverterEfficiency, 80.0, 92.0);
    let surge = kind.option(Field::InverterSurge, 400.0, 6000.0);
    let awake = select([Awake::WithLoads, Awake::Always, Awake::Search].as_slice());
    let awake = (awake, kind.option(Field::SearchDraw, 1.0, 5.0));
    (rated, surge, idle, half, full, awake).prop_map(
        |(rated_w, surge_w, idle, half, full, (awake, search_w))| Inverter {
            rated_w,
            surge_w,
            idle_w: idle.map(|share| {
                let range = Field::InverterIdle.range();
                range.rounded((share * rated_w).min(range.max))
            }),
            efficiency_half_pct: half,
            efficiency_full_pct: full,
            awake,
            search_w,
        },
    )
}

fn bank(kind: Kind) -> impl Strategy<Value = Bank> {
    let battery = (
        select(Chemistry::ALL),
        kind.number(Field::BatteryVoltage, 11.0, 26.0),
        kind.number(Field::BatteryCapacity, 40.0, 400.0),
        kind.option(Field::HourRate, 5.0, 20.0),
    );
    // Hundreds of batteries of hundreds of volts in one string are refused, so long strings are of low voltage.
    let row = (
        Kind::Everyday.number(Field::InSeries, 1.0, 4.0),
        kind.number(Field::InParallel, 1.0, 4.0),
    );
    let left = (kind.number(Field::Health, 70.0, 100.0), kind.number(Field::Reserve, 10.0, 50.0));
    let kept = prop_oneof![
        Just(Kept::Inside),
        Just(Kept::Outside),
        kind.number(Field::BatteryTemperature, 0.0, 30.0).prop_map(Kept::AtC)
    ];
    let limits = (
        kind.option(Field::BatteryCurrent, 20.0, 200.0),
        kind.option(Field::BatteryCurrent, 50.0, 400.0),
        kind.option(Field::BatteryCurrent, 100.0, 800.0),
    );
    let losses = (
        kind.option(Field::ProtectionDraw, 0.0, 50.0),
        kind.option(Field::ChargeEfficiency, 80.0, 100.0),
        kind.option(Field::RateExponent, 1.0, 1.3),
        kind.option(Field::SelfDischarge, 0.0, 10.0),
    );
    (battery, row, left, kept, limits, losses, sheet(kind)).prop_map(
        |(battery, (in_series, in_parallel), left, kept, limits, losses, sheet)| {
            let (chemistry, battery_v, capacity_ah, hour_rate_h) = battery;
            let (health_pct, reserve_pct) = left;
            let (charge_limit_a, discharge_limit_a, peak_limit_a) = limits;
            let (protection_ma, charge_efficiency_pct, rate_exponent, self_discharge_pct) = losses;
            let bank = Bank {
                chemistry,
                battery_v,
                capacity_ah,
                hour_rate_h,
                in_series,
                in_parallel,
                health_pct,
                reserve_pct,
                kept,
                charge_limit_a,
                discharge_limit_a,
                peak_limit_a,
                protection_ma,
                charge_efficiency_pct,
                rate_exponent,
                self_discharge_pct,
                ..Bank::default()
            };
            sheet.on(bank)
        },
    )
}

/// What a sheet states beside one capacity.
#[derive(Clone, Debug)]
enum Sheet {
    /// Figures of the battery that the plan has, as far as they are there: further ratings by their hours and the exponent between
    /// them and the first, and set-points over those of a cell.
    Fitting {
        ratings: [Option<(f64, f64)>; 2],
        absorption: Option<f64>,
        tail: Option<f64>,
        cut_off: Option<f64>,
    },
    /// Anything at all.
    Any([Option<f64>; 7]),
}

fn sheet(kind: Kind) -> impl Strategy<Value = Sheet> {
    let rating = |hours: core::ops::Range<f64>| weighted(OFTEN, (hours, 1.0..1.4_f64));
    let fitting = (
        [rating(0.5..4.0).boxed(), rating(30.0..100.0).boxed()],
        weighted(OFTEN, 0.97..1.03_f64),
        kind.option(Field::TailCurrent, 0.5, 5.0),
        weighted(OFTEN, 0.95..1.05_f64),
    );
    let fitting = fitting.prop_map(|(ratings, absorption, tail, cut_off)| Sheet::Fitting {
        ratings,
        absorption,
        tail,
        cut_off,
    });
    let wild = |field| Kind::Wild.option(field, 0.0, 0.0);
    let any = [
        wild(Field::SecondCapacity),
        wild(Field::SecondHours),
        wild(Field::ThirdCapacity),
        wild(Field::ThirdHours),
        wild(Field::AbsorptionVoltage),
        wild(Field::TailCurrent),
        wild(Field::LowCutOff),
    ];
    let any_weight = u32::from(kind == Kind::Wild);
    prop_oneof![9 => fitting, any_weight => any.prop_map(Sheet::Any)]
}

impl Sheet {
    /// A bank whose sheet states this too.
    fn on(self, bank: Bank) -> Bank {
        match self {
            Self::Any(all) => {
                let [second_capacity_ah, second_hours_h, third_capacity_ah, rest @ ..] = all;
                let [third_hours_h, absorption_v, tail_pct, low_cut_off_v] = rest;
                Bank {
                    second_capacity_ah,
                    second_hours_h,
                    third_capacity_ah,
                    third_hours_h,
                    absorption_v,
                    tail_pct,
                    low_cut_off_v,
                    ..bank
                }
            }
            Self::Fitting { ratings, absorption, tail, cut_off } => {
                let first = bank.hour_rate_h.unwrap_or(typical(bank.chemistry).hour_rate.0);
                let [second, third] = ratings.map(|rating| {
                    let (hours, exponent) = rating?;
                    let hours = Field::SecondHours.range().rounded(hours);
                    let share = (hours / first).powf((exponent - 1.0) / exponent);
                    Some((held(Field::SecondCapacity, bank.capacity_ah * share), hours))
                });
                let tail_pct = tail;
                let bank = Bank {
                    second_capacity_ah: second.map(|one| one.0),
                    second_hours_h: second.map(|one| one.1),
                    third_capacity_ah: third.map(|one| one.0),
                    third_hours_h: third.map(|one| one.1),
                    tail_pct,
                    ..bank
                };
                with_set_points(bank, absorption, cut_off)
            }
        }
    }
}

/// A value in the range and the resolution of a field.
fn held(field: Field, value: f64) -> f64 {
    let range = field.range();
    range.rounded(value.clamp(range.min, range.max))
}

/// Typical absorption and cut-off voltage of a battery of a bank.
fn usual_set_points(bank: &Bank) -> (f64, f64) {
    let typical = typical(bank.chemistry);
    let cells = (bank.battery_v / typical.cell.0).round().max(1.0);
    (typical.cell_absorption.0 * cells, typical.cell_low.0 * cells)
}

/// A bank with set-points that are stated as shares of what is typical.
fn with_set_points(bank: Bank, absorption: Option<f64>, cut_off: Option<f64>) -> Bank {
    let usual = usual_set_points(&bank);
    Bank {
        absorption_v: absorption.map(|share| held(Field::AbsorptionVoltage, share * usual.0)),
        low_cut_off_v: cut_off.map(|share| held(Field::LowCutOff, share * usual.1)),
        ..bank
    }
}

/// The same bank of another chemistry, with set-points as far from what is typical as before.
pub(crate) fn of_chemistry(bank: Bank, chemistry: Chemistry) -> Bank {
    let usual = usual_set_points(&bank);
    let absorption = bank.absorption_v.map(|own| own / usual.0);
    let cut_off = bank.low_cut_off_v.map(|own| own / usual.1);
    with_set_points(Bank { chemistry, ..bank }, absorption, cut_off)
}

fn controller(kind: Kind) -> impl Strategy<Value = Controller> {
    let which = select([ControllerKind::Mppt, ControllerKind::Pwm].as_slice());
    let limit = kind.number(Field::ChargerCurrent, 5.0, 60.0);
    (which, limit, kind.option(Field::ControllerVoltage, 50.0, 250.0))
        .prop_map(|(kind, limit_a, max_v)| Controller { kind, limit_a, max_v })
}

pub(crate) fn array(kind: Kind) -> impl Strategy<Value = Array> {
    let modules = (
        prop::bool::weighted(0.9),
        kind.number(Field::ModulePower, 50.0, 450.0),
        kind.number(Field::InSeries, 1.0, 3.0),
        kind.number(Field::InParallel, 1.0, 3.0),
    );
    let plane = (
        kind.number(Field::Tilt, 0.0, 70.0),
        kind.number(Field::Azimuth, 0.0, 360.0),
        any::<bool>(),
    );
    let sheet = (
        weighted(SELDOM, kind.number(Field::ModuleVoltage, 17.0, 42.0)),
        weighted(SELDOM, kind.number(Field::ModuleVoltage, 20.0, 50.0)),
        weighted(SELDOM, kind.number(Field::ModuleCurrent, 5.0, 14.0)),
        kind.option(Field::PowerCoefficient, -0.5, -0.2),
    );
    let loss = || kind.number(Field::Loss, 0.0, 10.0);
    let losses = (loss(), loss(), loss(), loss());
    let shade = || kind.number(Field::Shading, 0.0, 30.0);
    let shading = (shade(), shade(), shade());
    let controller = (controller(kind), kind.number(Field::ControllerSelfUse, 0.0, 2.0));
    (modules, plane, sheet, losses, shading, controller).prop_map(
        |(modules, plane, sheet, losses, shading, (controller, controller_self_use_w))| {
            let (on, module_w, in_series, in_parallel) = modules;
            let (tilt_deg, azimuth_deg, flush) = plane;
            let (best_point_v, open_circuit_v, short_circuit_a, power_pct_per_k) = sheet;
            let (dirt_pct, cable_pct, ageing_pct, other_pct) = losses;
            let (morning_pct, midday_pct, afternoon_pct) = shading;
            Array {
                on,
                module_w,
                in_series,
                in_parallel,
                tilt_deg,
                azimuth_deg,
                mounting: if flush { Mounting::Flush } else { Mounting::Open },
                best_point_v,
                open_circuit_v,
                short_circuit_a,
                power_pct_per_k,
                losses: Losses { dirt_pct, cable_pct, ageing_pct, other_pct },
                shading: Shading { morning_pct, midday_pct, afternoon_pct },
                controller,
                controller_self_use_w,
            }
        },
    )
}

fn charger(kind: Kind) -> impl Strategy<Value = Charger> {
    let limit = kind.number(Field::ChargerCurrent, 5.0, 40.0);
    let derating = prop_oneof![Just(0.0), kind.number(Field::Derating, 10.0, 40.0)];
    (prop::bool::weighted(0.8), limit, schedule(kind), derating).prop_map(
        |(on, limit_a, schedule, derating_pct)| Charger { on, limit_a, schedule, derating_pct },
    )
}

fn generator(kind: Kind) -> impl Strategy<Value = Generator> {
    // A stop under the start is refused, so both are drawn from halves of the range.
    let levels = (
        Kind::Everyday.number(Field::GeneratorStart, 5.0, 49.0),
        Kind::Everyday.number(Field::GeneratorStop, 50.0, 100.0),
    );
    let fuel =
        (kind.option(Field::FuelPerHour, 0.0, 1.0), kind.option(Field::FuelPerEnergy, 0.0, 1.0));
    let run = (kind.number(Field::MinimumRun, 0.0, 180.0), schedule(kind));
    let limit = kind.number(Field::ChargerCurrent, 5.0, 100.0);
    (prop::bool::weighted(0.8), limit, levels, run, fuel).prop_map(
        |(on, limit_a, (start_pct, stop_pct), (minimum_run_min, schedule), fuel)| {
            let (fuel_l_per_h, fuel_l_per_kwh) = fuel;
            Generator {
                on,
                limit_a,
                start_pct,
                stop_pct,
                minimum_run_min,
                schedule,
                fuel_l_per_h,
                fuel_l_per_kwh,
            }
        },
    )
}

fn turbine(kind: Kind) -> impl Strategy<Value = Turbine> {
    let output = prop_oneof![
        uniform12(kind.number(Field::TurbinePower, 0.0, 60.0)).prop_map(TurbineOutput::MeanW),
        uniform12(kind.number(Field::TurbineCharge, 0.0, 80.0)).prop_map(TurbineOutput::AhPerDay),
    ];
    let hours = weighted(OFTEN, uniform24(kind.number(Field::HourShare, 0.0, 10.0)));
    (prop::bool::weighted(0.8), output, hours).prop_map(|(on, output, hours)| Turbine {
        on,
        output,
        hours,
    })
}

fn promise(kind: Kind) -> BoxedStrategy<Promise> {
    let what = prop_oneof![
        Just(Promised::Through),
        kind.number(Field::ShortDays, 0.0, 50.0).prop_map(Promised::ShortDays),
        kind.number(Field::DaysWithoutSun, 1.0, 9.0).prop_map(Promised::WithoutSun),
        kind.number(Field::DaysOfTrip, 1.0, 30.0).prop_map(Promised::Trip),
    ];
    let rates = (
        weighted(OFTEN, kind.number(Field::BankPrice, 20.0, 900.0)),
        weighted(OFTEN, kind.number(Field::ArrayPrice, 20.0, 300.0)),
        weighted(OFTEN, kind.number(Field::BankWeight, 8.0, 35.0)),
        weighted(OFTEN, kind.number(Field::ArrayWeight, 2.0, 8.0)),
    );
    let chance = weighted(OFTEN, kind.number(Field::Chance, 50.0, 100.0));
    (what, chance, 1_u16..=0xfff, rates)
        .prop_map(|(what, chance_pct, months, rates)| Promise {
            what,
            chance_pct,
            months: Months(months),
            bank_price: rates.0,
            array_price: rates.1,
            bank_kg: rates.2,
            array_kg: rates.3,
        })
        .boxed()
}

fn wiring(kind: Kind) -> BoxedStrategy<Wiring> {
    let of = |names: usize| 0..names;
    let choices = (of(4), of(5), of(5), proptest::bool::ANY);
    let amps = |field| weighted(0.15, kind.number(field, 400.0, 9000.0));
    let length = |field| weighted(OFTEN, kind.number(field, 0.2, 15.0));
    let air = weighted(OFTEN, kind.number(Field::RunAmbient, 15.0, 50.0));
    let figures = (air, amps(Field::ShortCircuitCurrent), amps(Field::CrankingCurrent));
    let inner = (length(Field::BatteryRun), length(Field::InverterRun), length(Field::PanelRun));
    let outer = (
        length(Field::LoadRun),
        length(Field::ControllerRun),
        length(Field::ArrayRun),
        length(Field::ChargerRun),
    );
    (choices, figures, inner, outer)
        .prop_map(|((tables, insulation, bundle, engine_space), figures, inner, outer)| Wiring {
            tables: WiredBy::ALL[tables],
            insulation: CableInsulation::ALL[insulation],
            bundle: Bundled::ALL[bundle],
            engine_space,
            ambient_c: figures.0,
            short_circuit_a: figures.1,
            cranking_a: figures.2,
            battery_m: inner.0,
            inverter_m: inner.1,
            panel_m: inner.2,
            load_m: outer.0,
            controller_m: outer.1,
            array_m: outer.2,
            charger_m: outer.3,
        })
        .boxed()
}

fn check(kind: Kind) -> BoxedStrategy<Check> {
    let beside = kind.option(Field::CheckCurrent, -40.0, 40.0);
    let of = weighted(OFTEN, if kind == Kind::Wild { 0..=u16::MAX } else { 0..=7 });
    (select(Checked::ALL.as_slice()), of, beside)
        .prop_flat_map(move |(what, of, beside_a)| {
            let read = match what.field() {
                Some(field) => kind.number(field, 0.0, 60.0),
                None => Just(0.0).boxed(),
            };
            read.prop_map(move |read| Check { what, of, read, beside_a })
        })
        .boxed()
}

fn reading(kind: Kind) -> BoxedStrategy<Logged> {
    let shown = prop_oneof![
        1 => Just(LoggedCharge::Nothing),
        3 => kind.number(Field::ReadPercent, 10.0, 100.0).prop_map(LoggedCharge::Percent),
        1 => kind.number(Field::ReadLeft, 0.0, 400.0).prop_map(LoggedCharge::Left),
        1 => kind.number(Field::ReadTaken, 0.0, 400.0).prop_map(LoggedCharge::Taken),
    ];
    let volts = weighted(0.7, kind.number(Field::ReadVolts, 10.0, 60.0));
    let amps = weighted(0.7, kind.number(Field::ReadAmps, -50.0, 50.0));
    (0_u64..=LAST_DAY, 0_u16..1440, shown, volts, amps)
        .prop_map(|(day, minute, shown, volts, amps)| Logged {
            date: Start::default().date + chrono::Days::new(day),
            time: ClockTime(minute),
            shown,
            volts,
            amps,
        })
        .boxed()
}

fn logbook(kind: Kind) -> BoxedStrategy<Logbook> {
    let capacity = weighted(OFTEN, kind.number(Field::ToldCapacity, 50.0, 800.0));
    let efficiency = weighted(OFTEN, kind.number(Field::ToldEfficiency, 80.0, 100.0));
    let readings = prop_oneof![9 => vec(reading(kind), 0..30), 1 => vec(reading(kind), 0..=400)];
    (capacity, efficiency, readings)
        .prop_map(|(capacity_ah, efficiency_pct, readings)| {
            let mut own = Logbook { capacity_ah, efficiency_pct, readings: Vec::new() };
            readings.into_iter().for_each(|reading| own.add(reading));
            own
        })
        .boxed()
}

/// A whole plan.
pub(crate) fn plan(kind: Kind) -> BoxedStrategy<Document> {
    let scene = (name(), place(kind), start(kind));
    let loads = prop_oneof![9 => vec(load(kind), 0..8), 1 => vec(load(kind), 0..=40)];
    let standing = prop_oneof![Just(0.0), kind.number(Field::StandingCurrent, 0.0, 0.3)];
    let sources = (
        vec(array(kind), 0..3),
        weighted(0.2, charger(kind)),
        weighted(0.3, charger(kind)),
        weighted(0.7, inverter(kind)),
        weighted(0.25, generator(kind)),
        weighted(0.25, turbine(kind)),
        weighted(0.25, promise(kind)),
        weighted(0.25, wiring(kind)),
        prop_oneof![3 => Just(Vec::new()), 1 => vec(check(kind), 0..8)],
        weighted(0.25, logbook(kind)),
    );
    (scene, loads, standing, bank(kind), sources)
        .prop_map(|((name, place, start), loads, standing_a, bank, sources)| {
            let (
                arrays,
                shore,
                alternator,
                inverter,
                generator,
                turbine,
                promise,
                wiring,
                checks,
                logbook,
            ) = sources;
            Document {
                name,
                place,
                start,
                loads,
                standing_a,
                inverter,
                bank,
                arrays,
                shore,
                alternator,
                generator,
                turbine,
                promise,
                wiring,
                checks,
                logbook,
                ..Document::default()
            }
        })
        // Boxed, or its parts fill the stack of a test.
        .boxed()
}

/// Either kind of plan.
pub(crate) fn any_plan() -> impl Strategy<Value = Document> {
    prop_oneof![plan(Kind::Everyday), plan(Kind::Wild)]
}
