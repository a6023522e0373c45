//! From answers to what the pictures show: plain functions, tested without a browser.

use chrono::{Datelike, Duration, NaiveDate, Timelike};
use sunlarder_engine::outlook::{End, Outlook, clock_time};
use sunlarder_engine::quantity::{Hours, Within};
use sunlarder_engine::simulate::{Almanac, Run, Sample, Sunlight};
use sunlarder_engine::sun::{Daylight, MONTH_DAY, daylight};
use sunlarder_engine::system::System;
use sunlarder_engine::words::Label;

use crate::chart::{BandHour, CurveData, DayData, MonthBar, MonthData, midnights};
use crate::store::{Solved, WORDS, words};
use sunlarder_engine::words::decimal;

/// Shortest and longest span of the curve \[h\].
const SPAN: (f64, f64) = (48.0, 24.0 * 14.0);
/// Length of a step \[h\].
const STEP: f64 = 0.25;

/// How many hours the curve shows: to the reserve or to empty and some more, in whole days.
pub(crate) fn span(outlook: &Outlook) -> f64 {
    let times = outlook.times();
    let last = times.to_empty.or(times.to_reserve).map_or(24.0 * 7.0, |at| at.0 * 1.15);
    let dark = times.dark_to_reserve.map_or(0.0, |at| at.0 * 1.05);
    ((last.max(dark) / 24.0).ceil() * 24.0).within(SPAN.0, SPAN.1)
}

/// Percentages at every quarter-hour from the start on.
fn series(run: &Run, hours: f64) -> Vec<f64> {
    let wanted = (hours / STEP) as usize + 1;
    let mut values = vec![run.initial * 100.0];
    let mut at = 0;
    while values.len() < wanted {
        let time = values.len() as f64 * STEP;
        while run.samples.get(at).is_some_and(|sample| sample.at.0 < time) {
            at += 1;
        }
        // Interpolated, because a run that starts between quarter-hours keeps its own steps.
        let Some(sample) = run.samples.get(at) else { break };
        let before = at.checked_sub(1).map_or((0.0, run.initial), |before| {
            (run.samples[before].at.0, run.samples[before].charge)
        });
        let part = (time - before.0) / (sample.at.0 - before.0);
        values.push((before.1 + (sample.charge - before.1) * part) * 100.0);
    }
    // An empty bank ends its run; it stays empty for the picture.
    if run.empty_at.is_some() {
        let last = values.last().copied().unwrap_or(0.0);
        values.resize(wanted, last);
    }
    values
}

/// The nights of a span, in hours from a clock hour of a first day.
fn nights(system: &System, first: NaiveDate, start_hour: f64, hours: f64) -> Vec<(f64, f64)> {
    let mut nights: Vec<(f64, f64)> = Vec::new();
    let mut push = |from: f64, to: f64| {
        let (from, to) = ((from - start_hour).max(0.0), (to - start_hour).min(hours));
        if to > from {
            match nights.last_mut() {
                Some(last) if from - last.1 < 0.01 => last.1 = to,
                _ => nights.push((from, to)),
            }
        }
    };
    for day in 0..=((hours + start_hour) / 24.0) as i64 {
        let date = first + Duration::days(day);
        let offset = system.clock.offset_on(date);
        let base = day as f64 * 24.0;
        match daylight(system.site, date.ordinal() as u16, offset) {
            Daylight::Night => push(base, base + 24.0),
            Daylight::Day => {}
            Daylight::Between { rise, set } if rise.0 <= set.0 => {
                push(base, base + rise.0);
                push(base + set.0, base + 24.0);
            }
            Daylight::Between { rise, set } => push(base + set.0, base + rise.0),
        }
    }
    nights
}

/// What the remaining-time curve shows.
pub(crate) fn curve(solved: &Solved) -> CurveData {
    let Solved { system, outlook } = solved;
    let hours = span(outlook);
    let start_hour = f64::from(system.start.minute) / 60.0;
    let first = system.start.date;
    let reached = outlook.run.reserve_at.map(|at| at.0).filter(|at| *at <= hours);
    let weekday = |days: usize| {
        let date = first + Duration::days(days as i64);
        WORDS.weekday_short(date.weekday().num_days_from_monday() as usize)
    };
    let label = |after: f64| {
        let at = clock_time(system, Hours(after));
        format!(
            "{} {}",
            WORDS.weekday_short(at.weekday().num_days_from_monday() as usize),
            time_of(at)
        )
    };
    CurveData {
        start_hour,
        hours,
        step_hours: STEP,
        charge: series(&outlook.run, hours),
        band: Vec::new(),
        replayed: Vec::new(),
        baseline: Vec::new(),
        dark: if system.arrays.is_empty() { Vec::new() } else { series(&outlook.dark, hours) },
        reserve: system.bank.reserve.0,
        nights: nights(system, first, start_hour, hours),
        reached,
        reached_label: reached.map(label).unwrap_or_default(),
        reserve_label: WORDS.reserve_line(&format!("{} %", decimal(system.bank.reserve.0, 0))),
        day_labels: midnights(start_hour, hours)
            .into_iter()
            .map(|(at, days)| (at, weekday(days).to_owned()))
            .collect(),
        aria: WORDS.curve_in_words(&WORDS.short(outlook), outlook.month),
    }
}

/// The baseline over the hours of a curve, from its own start on \[%\].
pub(crate) fn baseline_curve(baseline: &Solved, hours: f64) -> Vec<f64> {
    series(&baseline.outlook.run, hours)
}

/// The table behind the curve: every six hours, or every twelve of a long one.
///
/// `replayed` are hours and states of charge in a year that somebody brought; they are a column of their own if there are any.
pub(crate) fn curve_rows(
    solved: &Solved,
    band: &[BandHour],
    replayed: &[(f64, f64)],
    baseline: Option<&Solved>,
) -> Vec<Vec<String>> {
    let data = curve(solved);
    let baseline = baseline.map(|own| baseline_curve(own, data.hours));
    let every = if data.hours > 24.0 * 5.0 { 48 } else { 24 };
    let percent = |values: &[f64], at: usize| {
        values.get(at).map_or_else(|| "–".to_owned(), |value| decimal(*value, 0))
    };
    (0..data.charge.len())
        .step_by(every)
        .map(|at| {
            let time = clock_time(&solved.system, Hours(at as f64 * STEP));
            // The band is known after each whole hour, and at the start nothing is in doubt.
            let hour = (at as f64 * STEP) as usize;
            let edges = hour.checked_sub(1).and_then(|before| band.get(before));
            let edges = edges.map_or_else(
                || "–".to_owned(),
                |edges| format!("{}–{}", decimal(edges.low, 0), decimal(edges.high, 0)),
            );
            let mut row =
                vec![moment(time), percent(&data.charge, at), edges, percent(&data.dark, at)];
            if !replayed.is_empty() {
                let own = replayed.get((at as f64 * STEP) as usize);
                row.push(own.map_or_else(|| "–".to_owned(), |own| decimal(own.1, 0)));
            }
            row.extend(baseline.as_ref().map(|own| percent(own, at)));
            row
        })
        .collect()
}

/// The table behind the day strip: watts, hour by hour.
pub(crate) fn day_rows(solved: &Solved) -> Vec<Vec<String>> {
    let day = day(solved);
    let mean = |values: &[f64], hour: usize| {
        let hour = values.get(hour * 4..hour * 4 + 4).unwrap_or_default();
        words().rounded(hour.iter().sum::<f64>() / 4.0)
    };
    (0..24)
        .map(|hour| {
            vec![words().hour_mark(hour as u16), mean(&day.in_w, hour), mean(&day.out_w, hour)]
        })
        .collect()
}

/// The table behind the month-by-month balance.
///
/// `years` says of ten years those in which each month stays over the reserve.
pub(crate) fn month_rows(
    solved: &Solved,
    years: &[String],
    baseline: Option<&Solved>,
) -> Vec<Vec<String>> {
    let balance = |at: usize| {
        baseline.map(|base| {
            let month = base.outlook.months.get(at);
            month.map_or_else(String::new, |own| {
                words().charge_number(own.balance, base.system.bank.nominal)
            })
        })
    };
    let row = |month: &sunlarder_engine::outlook::Month| {
        let nominal = solved.system.bank.nominal;
        let charges = [month.gain.kept, month.need, month.balance, month.usable];
        let [kept, need, rest, usable] = charges.map(|own| words().charge_value(own, nominal));
        let figures = [month.irradiation.0, kept, need, rest, usable];
        let name = WORDS.month(month.month).to_owned();
        let years = years.get(month.month).cloned().unwrap_or_default();
        core::iter::once(name)
            .chain(figures.map(|own| words().rounded(own)))
            .chain([years])
            .chain(balance(month.month))
            .collect()
    };
    solved.outlook.months.iter().map(row).collect()
}

/// Weekday, date and clock time.
pub(crate) fn moment(at: chrono::NaiveDateTime) -> String {
    let weekday = WORDS.weekday_short(at.weekday().num_days_from_monday() as usize);
    let month = WORDS.month_short(at.month0() as usize);
    format!("{weekday} {} {month}, {}", at.day(), time_of(at))
}

/// The clock time of a moment.
fn time_of(at: chrono::NaiveDateTime) -> String {
    words().clock((at.hour() * 60 + at.minute()) as u16)
}

/// The sample of the run at an hour, if the run is that long.
pub(crate) fn sample_at(solved: &Solved, hour: f64) -> Option<&Sample> {
    solved.outlook.run.sample_at(Hours(hour))
}

/// What is read at an hour of the curve, as a sentence.
pub(crate) fn reading(solved: &Solved, hour: f64, band: &[BandHour]) -> String {
    let when = moment(clock_time(&solved.system, Hours(hour)));
    let Some(sample) = sample_at(solved, hour.max(0.01)) else { return when };
    let last = solved.outlook.run.samples.last().map_or(0.0, |last| last.at.0);
    if hour > last + STEP {
        return WORDS.reading_empty(&when);
    }
    let amps = |charge: f64| format!("{} A", words().rounded(charge / STEP));
    let by_then =
        band.get((hour as usize).saturating_sub(1)).map(|own| WORDS.reached_by(own.reached));
    let reading = WORDS.reading(
        &when,
        &format!("{} %", decimal(sample.charge * 100.0, 0)),
        &format!("{} V", words().padded(sample.volts.0, 1)),
        &amps(sample.flows.came().0),
        &amps(sample.flows.load.0),
    );
    match by_then {
        Some(by_then) => format!("{reading} {by_then}"),
        None => reading,
    }
}

/// What is read at an hour of the year that begins at a moment, from state of charge \[%\], voltage, and current in and out \[A\].
pub(crate) fn hour_reading(at: chrono::NaiveDateTime, numbers: [f64; 4]) -> String {
    let [charge, volts, came, load] = numbers;
    WORDS.reading(
        &moment(at),
        &format!("{} %", decimal(charge, 0)),
        &format!("{} V", words().padded(volts, 1)),
        &format!("{} A", words().rounded(came)),
        &format!("{} A", words().rounded(load)),
    )
}

/// What is read at an hour of the month's typical day: in by source, and out \[W\].
pub(crate) fn day_reading(solved: &Solved, hour: usize) -> String {
    let Solved { system, outlook } = solved;
    let sunlight = &mut Sunlight::default();
    let mut almanac = Almanac::new(system, sunlight);
    let weekday = system.start.date.weekday().num_days_from_monday() as u8;
    let day = almanac.day(outlook.month, weekday);
    let Some(steps) = day.get(hour * 4..hour * 4 + 4) else { return String::new() };
    let volts = system.bank.nominal;
    let (mut parts, mut out) = ([0.0; 4], 0.0);
    for forcing in steps {
        let turbine = forcing.turbine_power + volts * forcing.turbine_current;
        let sun = forcing.solar_power + volts * forcing.solar_current;
        let now = [sun, turbine, volts * forcing.engine, volts * forcing.shore];
        for (part, now) in parts.iter_mut().zip(now) {
            *part += now.0 / 4.0;
        }
        out += (forcing.demand + volts * forcing.standing).0 / 4.0;
    }
    let ends = [End::Sun, End::Turbine, End::Engine, End::Shore];
    let into: Vec<String> = ends
        .into_iter()
        .zip(parts)
        .filter(|(_, part)| *part > 0.0)
        .map(|(end, part)| WORDS.power_from(end, &words().rounded(part)))
        .collect();
    let (from, to) = (words().clock(60 * hour as u16), words().clock(60 * (hour as u16 + 1)));
    WORDS.day_reading(&from, &to, &into, &words().rounded(out))
}

/// What the month-by-month balance shows.
pub(crate) fn months(solved: &Solved) -> MonthData {
    let outlook = &solved.outlook;
    let nominal = solved.system.bank.nominal;
    let months = outlook.months.iter().map(|month| MonthBar {
        label: WORDS.month_initial(month.month).to_owned(),
        name: WORDS.month(month.month).to_owned(),
        gain: words().charge_value(month.gain.kept, nominal),
        need: words().charge_value(month.need, nominal),
        baseline: None,
        balance_label: signed(words().charge_value(month.balance, nominal)),
        bad: !month.keeps_up,
        current: month.month == outlook.month,
    });
    MonthData { months: months.collect(), aria: words().tightest(outlook, nominal) }
}

/// A figure with its sign, short enough to stand under a bar.
pub(crate) fn signed(value: f64) -> String {
    let text = if value.abs() < 10.0 {
        words().rounded((value * 10.0).round() / 10.0)
    } else {
        decimal(value.abs(), 0)
    };
    let text = text.trim_start_matches('−').to_owned();
    match value {
        value if value > 0.0 => format!("+{text}"),
        value if value < 0.0 => format!("−{text}"),
        _ => text,
    }
}

/// The nights of the month's typical day, in minutes of that day.
pub(crate) fn nights_of_month(solved: &Solved) -> Vec<(u16, u16)> {
    let Solved { system, outlook } = solved;
    let minute = |hour: f64| (hour * 60.0).round() as u16;
    let nights = nights(system, typical_date(solved, outlook.month), 0.0, 24.0);
    nights.into_iter().map(|(from, to)| (minute(from), minute(to))).collect()
}

/// When the sun rises and sets on the month's typical day; nothing where it does not do both.
pub(crate) fn sun_of_month(solved: &Solved) -> String {
    match nights_of_month(solved).as_slice() {
        [(0, rise), (set, _)] => WORDS.sun_from_to(
            &words().clock(*rise),
            &words().clock(*set),
            WORDS.month(solved.outlook.month),
        ),
        _ => String::new(),
    }
}

/// The day that stands for a month.
fn typical_date(solved: &Solved, month: usize) -> NaiveDate {
    let start = solved.system.start.date;
    let day = MONTH_DAY.get(month).copied().unwrap_or(1);
    NaiveDate::from_yo_opt(start.year(), u32::from(day)).unwrap_or(start)
}

/// What the strip of the month's typical day shows.
pub(crate) fn day(solved: &Solved) -> DayData {
    let Solved { system, outlook } = solved;
    let sunlight = &mut Sunlight::default();
    let mut almanac = Almanac::new(system, sunlight);
    let weekday = system.start.date.weekday().num_days_from_monday() as u8;
    let day = almanac.day(outlook.month, weekday);
    let volts = system.bank.nominal;
    let into = |forcing: &sunlarder_engine::simulate::Forcing| {
        let currents = forcing.solar_current + forcing.turbine_current;
        let power = forcing.solar_power + forcing.turbine_power;
        (power + volts * (currents + forcing.engine + forcing.shore)).0
    };
    let out = |forcing: &sunlarder_engine::simulate::Forcing| {
        (forcing.demand + volts * forcing.standing).0
    };
    DayData {
        in_w: day.iter().map(into).collect(),
        out_w: day.iter().map(out).collect(),
        baseline_w: Default::default(),
        night: nights(system, typical_date(solved, outlook.month), 0.0, 24.0),
        hour_labels: [0, 6, 12, 18, 24]
            .map(|hour| (f64::from(hour), words().hour_mark(hour)))
            .to_vec(),
        aria: WORDS.label(Label::DayInWords).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::address::{EXAMPLES, example};
    use sunlarder_engine::place::Climate;

    fn solved(name: &str) -> Solved {
        let system =
            System::assemble(&example(name).unwrap(), Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        Solved { system: system.into(), outlook }
    }

    #[test]
    fn the_curve_starts_where_the_plan_does_and_meets_its_reserve() {
        let solved = solved("camper");
        let data = curve(&solved);
        assert!((data.charge[0] - solved.system.start.charge * 100.0).abs() < 1e-9);
        assert_eq!(data.charge.len(), (data.hours / STEP) as usize + 1);
        let reached = data.reached.unwrap();
        let there = data.charge[(reached / STEP).round() as usize];
        assert!((there - data.reserve).abs() < 1.5, "{there} at {reached}");
        assert!(data.nights.iter().all(|(from, to)| from < to && *to <= data.hours));
    }

    #[test]
    fn every_example_draws() {
        for (name, _) in EXAMPLES {
            let solved = solved(name);
            let band = [BandHour { low: 10.0, high: 20.4, reached: 0.0 }; 24];
            let rows = curve_rows(&solved, &band, &[(0.0, 50.0)], None);
            assert_eq!((rows[0][4].as_str(), rows[1][4].as_str()), ("50", "–"));
            assert!(day_reading(&solved, 12).contains("12:00"));
            assert_eq!(day_reading(&solved, 24), "");
            assert_eq!((rows[0][2].as_str(), rows[1][2].as_str()), ("–", "10–20"));
            let against_itself = curve_rows(&solved, &band, &[], Some(&solved));
            assert!(against_itself.iter().all(|row| row.len() == 5 && row[1] == row[4]));
            let rows_of_months = month_rows(&solved, &[], Some(&solved));
            assert!(rows_of_months.iter().all(|row| row.len() == 8 && row[4] == row[7]));
            assert_eq!(months(&solved).months.len(), 12);
            assert!(day(&solved).out_w.iter().sum::<f64>() > 0.0);
            assert!(reading(&solved, 5.0, &[]).contains('%'));
        }
    }

    #[test]
    fn signed_figures_are_short() {
        assert_eq!(
            (signed(3.24), signed(-51.7), signed(0.0)),
            ("+3.2".into(), "−52".into(), "0".into())
        );
    }
}
