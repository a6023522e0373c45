//! A gauge that counts amp-hours: its settings, what is wrong with it, and one step of its count.
//!
//! **Method.** The current that passes the shunt, as the gauge reads it (gain, offset), is nothing under its threshold. Charge that goes
//! in counts by the efficiency that was set; charge that goes out counts once, or more where it is faster than the rated hours and an
//! exponent was set. What the bank loses by itself is taken off where the gauge is told of it. The count stays between nothing and full, and
//! is set to full once the voltage has stood at or above the full voltage, with a current that charges but no more than the tail, for as
//! long as was set.
//!
//! **Left out:** how often a real gauge samples: it sees means of quarter-hours here, so the time at full is counted in whole ones.

use super::shunt::CurrentError;
use crate::bank::{ChargeEfficiency, MONTH_HOURS};
use crate::quantity::{AmpHours, Amps, Hours, Percent, Volts, Within};
use crate::system::System;
use crate::working::{Formula, Source, Trace, term};

/// Share of each current that does not pass the shunt: what was connected ahead of it, on the bank's side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Unseen {
    /// Of what the loads take.
    pub load: Percent,
    /// Of what the sun brings.
    pub solar: Percent,
    /// Of what the engine brings.
    pub engine: Percent,
    /// Of what every other source brings.
    pub others: Percent,
}

impl Unseen {
    /// Such a share of what charges a plan's bank most.
    #[must_use]
    pub fn of_charger(system: &System, share: Percent) -> Self {
        match (&system.arrays[..], &system.alternator) {
            ([_, ..], _) => Self { solar: share, ..Self::default() },
            (_, Some(_)) => Self { engine: share, ..Self::default() },
            _ => Self { others: share, ..Self::default() },
        }
    }
}

/// A gauge, as somebody set it up and wired it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gauge {
    /// Capacity that it was told; more than nothing.
    pub capacity: AmpHours,
    /// Hours for which that capacity holds; more than nothing.
    pub hour_rate: Hours,
    /// Exponent by which faster discharge counts more; 1 for none.
    pub exponent: f64,
    /// Share of the charge put in that it counts.
    pub efficiency: ChargeEfficiency,
    /// Current in ten hours of the capacity: fast and slow charge of the efficiency are told by it.
    pub ten_hours: Amps,
    /// Charge that it takes off for standing, of what is there, in a month.
    pub self_discharge: Percent,
    /// Current that it takes off because the batteries draw it inside, where no shunt sees it.
    pub inside: Amps,
    /// Voltage at which the bank may be full.
    pub full_voltage: Volts,
    /// Current up to which it may be, of the capacity in an hour.
    pub tail: Percent,
    /// How long both must hold.
    pub hold: Hours,
    /// State of charge down to which it tells the time that is left.
    pub floor: Percent,
    /// Time over which it averages the current for that; more than nothing.
    pub averaged: Hours,
    /// Current under which it counts nothing.
    pub threshold: Amps,
    /// What is wrong with the current that it reads, with signs; an offset above nothing looks like charging.
    pub error: CurrentError,
    /// What does not pass its shunt.
    pub unseen: Unseen,
    /// What it was set to show at first (ratio); the truth if nobody did.
    pub start: Option<f64>,
}

impl Gauge {
    /// The current that it reads where so much passes the shunt, positive into the bank.
    #[must_use]
    pub fn reads(&self, passes: Amps) -> Amps {
        let read = passes * (1.0 + self.error.gain.ratio()) + self.error.offset;
        if read.abs() < self.threshold { Amps::ZERO } else { read }
    }

    /// The current up to which charging counts as ended.
    #[must_use]
    pub fn tail_current(&self) -> Amps {
        Amps(self.capacity.0 * self.tail.ratio())
    }

    /// How many amp-hours of the count one that goes out at this current takes; never less than one.
    #[must_use]
    pub fn weight(&self, out: Amps) -> f64 {
        let over = out / (self.capacity / self.hour_rate);
        if over > 1.0 && self.exponent > 1.0 { libm::pow(over, self.exponent - 1.0) } else { 1.0 }
    }
}

/// The count of a gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counter {
    /// What it shows (ratio).
    pub shown: f64,
    /// Current that it last read.
    pub read: Amps,
    /// Mean of what it read, positive into the bank; none before the first step.
    pub average: Option<Amps>,
    /// How long the bank has looked full without a pause.
    pub looked_full: Hours,
    /// Time since it was last set to full, by itself or by hand.
    pub since_full: Hours,
}

impl Counter {
    /// A count that shows so much (ratio).
    #[must_use]
    pub fn at(shown: f64) -> Self {
        let shown = shown.within(0.0, 1.0);
        let (looked_full, since_full) = (Hours::ZERO, Hours::ZERO);
        Self { shown, read: Amps::ZERO, average: None, looked_full, since_full }
    }

    /// Counts a length of time in which a current passed the shunt, positive into the bank; whether it set itself to full.
    pub fn step(&mut self, gauge: &Gauge, passes: Amps, volts: Volts, time: Hours) -> bool {
        self.worked(gauge, (passes, volts), time, &mut ())
    }

    /// The same with its working; what it shows comes from the last step, unless it set itself to full.
    pub fn worked(
        &mut self,
        gauge: &Gauge,
        (passes, volts): (Amps, Volts),
        time: Hours,
        trace: &mut impl Trace,
    ) -> bool {
        let read = gauge.reads(passes);
        self.read = read;
        let share = (time / gauge.averaged).within(0.0, 1.0);
        self.average = Some(self.average.map_or(read, |own| own + (read - own) * share));
        let into = read - gauge.inside;
        let weight = if into.0 > 0.0 {
            gauge.efficiency.at(self.shown, into / gauge.ten_hours)
        } else {
            gauge.weight(-into)
        };
        let leaks = gauge.self_discharge.ratio() / MONTH_HOURS * self.shown * time.0;
        let shown = self.shown + into * weight * time / gauge.capacity - leaks;
        self.shown = trace.step(
            Formula::GaugeCount,
            shown.within(0.0, 1.0),
            &[
                term(self.shown).from(Source::Steps),
                term(read).from(Source::Steps),
                term(gauge.inside),
                term(weight).from(Source::Steps),
                term(gauge.capacity),
                term(gauge.self_discharge),
                term(time).from(Source::Definition),
            ],
        );
        let full = volts >= gauge.full_voltage && read.0 > 0.0 && read <= gauge.tail_current();
        self.looked_full = if full { self.looked_full + time } else { Hours::ZERO };
        self.since_full += time;
        let set = full && self.looked_full >= gauge.hold;
        if set {
            self.shown = 1.0;
            self.since_full = Hours::ZERO;
        }
        set
    }

    /// Lets a length of time pass in which the gauge has no supply: it keeps its count.
    pub fn pause(&mut self, time: Hours) {
        (self.read, self.average, self.looked_full) = (Amps::ZERO, None, Hours::ZERO);
        self.since_full += time;
    }

    /// The time that is left by the averaged current, down to the floor of the gauge; none while it charges or rests.
    #[must_use]
    pub fn time_left(&self, gauge: &Gauge, trace: &mut impl Trace) -> Option<Hours> {
        let out = -self.average?;
        let left = gauge.capacity * (self.shown - gauge.floor.ratio());
        let weight = gauge.weight(out);
        let inputs = [
            term(self.shown).from(Source::Steps),
            term(gauge.floor),
            term(gauge.capacity),
            term(out).from(Source::Steps),
            term(weight).from(Source::Steps),
        ];
        (out.0 > 0.0).then(|| {
            let time = left.at_least(AmpHours::ZERO) / (out * weight);
            trace.step(Formula::GaugeTimeLeft, time, &inputs)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gauge() -> Gauge {
        Gauge {
            capacity: AmpHours(100.0),
            hour_rate: Hours(20.0),
            exponent: 1.2,
            efficiency: ChargeEfficiency::Flat(0.9),
            ten_hours: Amps(10.0),
            self_discharge: Percent(0.0),
            inside: Amps::ZERO,
            full_voltage: Volts(14.2),
            tail: Percent(2.0),
            hold: Hours(0.5),
            floor: Percent(50.0),
            averaged: Hours(1.0),
            threshold: Amps(0.1),
            error: CurrentError { offset: Amps::ZERO, gain: Percent(0.0) },
            unseen: Unseen::default(),
            start: None,
        }
    }

    const QUARTER: Hours = Hours(0.25);

    #[test]
    fn what_goes_in_counts_less_and_what_goes_out_fast_counts_more() {
        let gauge = gauge();
        let after = |passes: f64| {
            let mut counter = Counter::at(0.5);
            counter.step(&gauge, Amps(passes), Volts(12.0), Hours(1.0));
            counter.shown
        };
        assert!((after(10.0) - 0.59).abs() < 1e-12);
        assert!((after(-5.0) - 0.45).abs() < 1e-12, "the rated current counts once");
        // Four times the rated current: 4^0.2 = 1.3195.
        assert!((after(-20.0) - (0.5 - 0.2 * 1.319_507_910_772_894)).abs() < 1e-9);
        assert_eq!(after(-0.05), 0.5, "under the threshold nothing is counted");
        assert_eq!((after(1000.0), after(-1000.0)), (1.0, 0.0));
    }

    #[test]
    fn an_offset_that_passes_the_threshold_is_counted_at_rest() {
        let offset = CurrentError { offset: Amps(-0.2), gain: Percent(0.0) };
        let gauge = Gauge { error: offset, ..gauge() };
        let mut counter = Counter::at(0.5);
        for _ in 0..24 {
            counter.step(&gauge, Amps::ZERO, Volts(12.0), Hours(1.0));
        }
        assert!((counter.shown - (0.5 - 0.048)).abs() < 1e-12);
        assert_eq!(Gauge { threshold: Amps(0.3), ..gauge }.reads(Amps::ZERO), Amps::ZERO);
    }

    #[test]
    fn full_takes_voltage_and_tail_and_time_and_a_current_that_charges() {
        let gauge = gauge();
        let sets = |passes: f64, volts: f64, quarters: usize| {
            let mut counter = Counter::at(0.9);
            let mut step = || counter.step(&gauge, Amps(passes), Volts(volts), QUARTER);
            (0..quarters).map(|_| step()).filter(|set| *set).count()
        };
        assert_eq!([sets(1.0, 14.3, 1), sets(1.0, 14.3, 2), sets(1.0, 14.3, 3)], [0, 1, 2]);
        assert_eq!(sets(3.0, 14.3, 9), 0, "the current has not faded");
        assert_eq!(sets(1.0, 14.1, 9), 0, "the voltage is too low");
        assert_eq!(sets(-1.0, 14.3, 9), 0, "it discharges");
        assert_eq!(sets(0.05, 14.3, 9), 0, "a current under the threshold is none");
    }

    #[test]
    fn the_time_left_goes_by_the_mean_of_what_was_read() {
        let gauge = Gauge { exponent: 1.0, ..gauge() };
        let mut counter = Counter::at(1.0);
        assert_eq!(counter.time_left(&gauge, &mut ()), None);
        counter.step(&gauge, Amps(-4.0), Volts(12.0), QUARTER);
        let left = counter.time_left(&gauge, &mut ()).unwrap();
        assert!((left.0 - 49.0 / 4.0).abs() < 1e-9, "{left:?}");
        counter.step(&gauge, Amps(-8.0), Volts(12.0), QUARTER);
        // A quarter of the way from 4 to 8 A.
        let left = counter.time_left(&gauge, &mut ()).unwrap();
        assert!((left.0 - 47.0 / 5.0).abs() < 1e-9, "{left:?}");
        counter.step(&gauge, Amps(80.0), Volts(13.0), Hours(1.0));
        assert_eq!(counter.time_left(&gauge, &mut ()), None, "it charges");
    }
}
