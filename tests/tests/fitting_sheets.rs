//! Three whole sheets of wiring, worked step by step apart from the engine.
//!
//! Each table was worked from the rules alone, with a calculator of a few lines that shares no code with the engine: current at the low cut-off, 125 % to the next fuse, what the table
//! leaves, the temperature T_a + (T_i − T_a)·(I/I_z)², the resistance 2·L·0.017241·(1 + 0.00393·(T − 20))/(0.89·A), the drop.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use sunlarder_engine::document::Document;
use sunlarder_engine::fitting::{Basis, Fitting, FuseClass, Lengths, RunKind, Tables};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::Amps;
use sunlarder_engine::system::System;
use sunlarder_tests::plans::EXAMPLES;

/// A run by hand: what it joins, its current for hours \[A\], the number of its gauge (1/0 is 0), its fuse \[A\] (0 for none), its drop \[%\].
type ByHand = (RunKind, f64, i32, f64, f64);

/// Half of the last digit that was written down.
const DIGIT: f64 = 0.000_51;

fn fitted(name: &str) -> Fitting {
    let (_, text) = EXAMPLES.iter().find(|(own, _)| *own == name).unwrap();
    let plan = Document::from_json(text).unwrap();
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    let outlook = Outlook::of(&system);
    let (basis, lengths) = (Basis::usual(&plan), Lengths::default());
    Fitting::of(&plan, &system, &outlook, &basis, &lengths).unwrap()
}

/// Every run of a sheet is one that was worked by hand, and comes out as it did.
fn assert_sheet(fitting: &Fitting, by_hand: &[ByHand]) {
    assert_eq!(fitting.runs.len(), by_hand.len());
    for (kind, current, gauge, fuse, drop) in by_hand {
        let run = fitting.run(*kind).unwrap();
        let wire = run.wire.unwrap();
        let rating = run.fuse().map_or(0.0, |fuse| fuse.rating.0);
        assert!((run.asked.current.continuous.0 - current).abs() < DIGIT, "{run:?}");
        assert_eq!((wire.gauge.number(), rating), (*gauge, *fuse), "{run:?}");
        assert!((wire.drop_share.0 - drop).abs() < DIGIT, "{run:?}");
    }
}

/// The kinds of fuse of some runs.
fn classes(fitting: &Fitting, kinds: &[RunKind]) -> Vec<FuseClass> {
    kinds.iter().map(|kind| fitting.run(*kind).unwrap().fuse().unwrap().class).collect()
}

/// **Camper**, by the tables of boats in place of those of vehicles: insulation for 105 °C, plus and minus together (0.7), air of 50 °C as
/// in a closed vehicle in the sun (√(55/75) = 0.856): AWG 6 may carry 120 A · 0.7 · 0.856 = 71.9 A.
///
/// Loads go off at 4 · 2.8 V = 11.2 V. On the panel 45 + 10 + 6 + 18 + 60 + 20 + 50 + 8 + 1.5 + 20 = 238.5 W, 21.29 A; the gas detector
/// hangs ahead of the isolator, 2 W, 0.18 A: 21.47 A go out at once, and the controller brings 15 A, which is less. The array: 1.25 · 9.7 A =
/// 12.12 A in the sun, 175 W / 19.2 V = 9.11 A at the best point. Drops: bank 1 + panel 1 + branch 8 = 10 %, to the gas detector 1 + 2 = 3 %,
/// charger 1 + 1 = 2 %.
///
/// Lithium: 20 kA are assumed, class T at the post and ahead of the isolator. Behind 1 m of 16 mm² (2.155 mΩ cold) 14.2 V drive
/// 14.2 / (14.2 / 20 000 + 0.002155) = 4.96 kA, behind 2 m of 25 mm² more (2.759 mΩ) 2.52 kA: more than a blade's 1 kA, so breakers in the
/// panel and at the bar. Shunt: 1.5 · 21.47 A = 32.2 A, so 50 A. Three lugs a side (bank, panel, controller): studs suffice.
///
/// | to | for hours | 125 % and fuse | conductor | may carry | warm | resistance | drop |
/// |---|---|---|---|---|---|---|---|
/// | bank | 21.47 A | 26.8 A → fuse 30 A | AWG 6, 16 mm² | 71.9 A | 54.9 °C | 3.312 mΩ | 0.64 % of 1 |
/// | panel | 21.29 A | 26.6 A → fuse 30 A | AWG 4, 25 mm² | 95.9 A | 52.7 °C | 4.135 mΩ | 0.79 % of 1 |
/// | fridge | 4.02 A | 5.0 A → fuse 7.5 A | AWG 16, 1.5 mm² | 15.0 A | 54.0 °C | 167.777 mΩ | 6.02 % of 8 |
/// | two ceiling lights | 0.89 A | 1.1 A → fuse 2 A | AWG 18, 1 mm² | 12.0 A | 50.3 °C | 263.400 mΩ | 2.10 % of 8 |
/// | two reading lights | 0.54 A | 0.7 A → fuse 1 A | AWG 18, 1 mm² | 12.0 A | 50.1 °C | 263.220 mΩ | 1.26 % of 8 |
/// | heater | 1.61 A | 2.0 A → fuse 3 A | AWG 18, 1 mm² | 12.0 A | 51.0 °C | 264.032 mΩ | 3.79 % of 8 |
/// | pump | 5.36 A | 6.7 A → fuse 7.5 A | AWG 14, 2.5 mm² | 21.0 A | 53.6 °C | 105.381 mΩ | 5.04 % of 8 |
/// | two phones | 1.79 A | 2.2 A → fuse 3 A | AWG 18, 1 mm² | 12.0 A | 51.2 °C | 264.247 mΩ | 4.21 % of 8 |
/// | laptop | 4.46 A | 5.6 A → fuse 7.5 A | AWG 16, 1.5 mm² | 15.0 A | 54.9 °C | 168.316 mΩ | 6.71 % of 8 |
/// | router | 0.71 A | 0.9 A → fuse 1 A | AWG 18, 1 mm² | 12.0 A | 50.2 °C | 263.299 mΩ | 1.68 % of 8 |
/// | control panel | 0.13 A | 0.2 A → fuse 1 A | AWG 18, 1 mm² | 12.0 A | 50.0 °C | 263.125 mΩ | 0.31 % of 8 |
/// | roof fan | 1.79 A | 2.2 A → fuse 3 A | AWG 18, 1 mm² | 12.0 A | 51.2 °C | 264.247 mΩ | 4.21 % of 8 |
/// | gas detector | 0.18 A | 0.2 A → fuse 1 A | AWG 18, 1 mm² | 12.0 A | 50.0 °C | 263.129 mΩ | 0.42 % of 2 |
/// | array | 12.12 A | 15.2 A → no fuse | AWG 10, 6 mm² | 36.0 A | 56.3 °C | 42.066 mΩ | 2.00 % of 2 |
/// | controller | 15.00 A | 18.8 A → fuse 20 A | AWG 6, 16 mm² | 71.9 A | 52.4 °C | 4.925 mΩ | 0.66 % of 1 |
#[test]
fn the_sheet_of_the_camper_is_that_worked_by_hand() {
    let fitting = fitted("camper");
    let by_hand = [
        (RunKind::Battery, 21.473, 6, 30.0, 0.635),
        (RunKind::Distribution, 21.295, 4, 30.0, 0.786),
        (RunKind::Branch(0), 4.018, 16, 7.5, 6.019),
        (RunKind::Branch(1), 0.893, 18, 2.0, 2.100),
        (RunKind::Branch(2), 0.536, 18, 1.0, 1.259),
        (RunKind::Branch(3), 1.607, 18, 3.0, 3.789),
        (RunKind::Branch(4), 5.357, 14, 7.5, 5.041),
        (RunKind::Branch(5), 1.786, 18, 3.0, 4.213),
        (RunKind::Branch(6), 4.464, 16, 7.5, 6.709),
        (RunKind::Branch(7), 0.714, 18, 1.0, 1.679),
        (RunKind::Branch(9), 0.134, 18, 1.0, 0.315),
        (RunKind::Branch(10), 1.786, 18, 3.0, 4.213),
        (RunKind::Branch(8), 0.179, 18, 1.0, 0.420),
        (RunKind::Array(0), 12.125, 10, 0.0, 1.997),
        (RunKind::Controller(0), 15.000, 6, 20.0, 0.660),
    ];
    assert_sheet(&fitting, &by_hand);
    assert_eq!(fitting.basis.tables, Tables::Vehicle);
    let kinds = [RunKind::Battery, RunKind::Branch(8), RunKind::Distribution, RunKind::Branch(0)];
    let breaker = FuseClass::Breaker;
    let expected = [FuseClass::ClassT, FuseClass::ClassT, breaker, breaker];
    assert_eq!(classes(&fitting, &kinds), expected);
    assert_eq!(fitting.shunt.unwrap().shunt.rated, Amps(50.0));
    assert!(!fitting.bus_bars.needed && fitting.bus_bars.lugs == 3);
}

/// **Boat**, by the tables of boats: insulation for 105 °C, plus and minus together (0.7), air of 30 °C.
///
/// Loads go off at 6 · 11/6 V = 11 V. On the panel 50 + 15 + 3 + 60 + 3 + 20 + 60 + 30 = 241 W and 0.05 A standing, 21.96 A; ahead of the
/// isolator the radio (5 W) and the bilge pump (45 W); the windlass (1000 W, 90.91 A) has a run of its own; the inverter 300 W / (0.88 ·
/// 11 V) = 30.99 A. All at once 148.41 A, more than the chargers' 30 + 25 A. Two strings: each carries all of it if the other is off. The
/// array: 1.25 · 10.2 A · 2 = 25.5 A, 180 W / 18.6 V · 2 = 19.35 A at the best point. Drops: string 0.5 + bank 0.75 + panel 0.75 + branch 8 =
/// 10 %, and with 1 to an anchor light 3 %; 0.5 + 0.75 + 1.75 = 3 % to radio, pump and inverter; charger 0.75 + 0.75 + 0.5 = 2 %.
/// The charger on the engine is in the heat of 50 °C: AWG 3 may carry 180 A · 0.7 · 0.85 = 107.1 A.
///
/// Glass mat: 2.5 mΩ a battery of 100 Ah, 2.5 · 100 / 220 = 1.136 mΩ; 14.5 V and 25 K · 4 mV · 6 more in the cold = 15.1 V: 13.3 kA, half
/// of it through a string's fuse. Behind 1 m of 95 mm² (0.363 mΩ) 10.07 kA, over a breaker's 10 kA: class T. Behind 3 m of 35 mm²
/// (2.956 mΩ) 3.4 kA: breakers in the panel. Shunt: 1.5 · 148.41 A = 222.6 A, so 300 A. Bus bars as strings join, 200 A like the main fuse.
///
/// | to | for hours | 125 % and fuse | conductor | may carry | warm | resistance | drop |
/// |---|---|---|---|---|---|---|---|
/// | string | 148.41 A | 185.5 A → fuse 200 A | AWG 2/0, 70 mm² | 231.0 A | 61.0 °C | 0.334 mΩ | 0.45 % of 0.5 |
/// | bank | 148.41 A | 185.5 A → fuse 200 A | AWG 3/0, 95 mm² | 269.5 A | 52.7 °C | 0.514 mΩ | 0.69 % of 0.75 |
/// | inverter | 30.99 A | 38.7 A → fuse 40 A | AWG 8, 10 mm² | 56.0 A | 53.0 °C | 5.231 mΩ | 1.47 % of 1.75 |
/// | panel | 21.96 A | 27.4 A → fuse 30 A | AWG 2, 35 mm² | 147.0 A | 31.7 °C | 3.615 mΩ | 0.72 % of 0.75 |
/// | fridge | 4.55 A | 5.7 A → fuse 7.5 A | AWG 14, 2.5 mm² | 24.5 A | 32.6 °C | 156.315 mΩ | 6.46 % of 8 |
/// | plotter | 1.36 A | 1.7 A → fuse 2 A | AWG 18, 1 mm² | 14.0 A | 30.7 °C | 392.442 mΩ | 4.86 % of 8 |
/// | instruments | 0.27 A | 0.3 A → fuse 1 A | AWG 18, 1 mm² | 14.0 A | 30.0 °C | 391.431 mΩ | 0.97 % of 8 |
/// | autopilot | 5.45 A | 6.8 A → fuse 7.5 A | AWG 14, 2.5 mm² | 24.5 A | 33.7 °C | 156.980 mΩ | 7.78 % of 8 |
/// | anchor light | 0.27 A | 0.3 A → fuse 1 A | AWG 18, 1 mm² | 14.0 A | 30.0 °C | 391.431 mΩ | 0.97 % of 1 |
/// | four lights | 1.82 A | 2.3 A → fuse 3 A | AWG 18, 1 mm² | 14.0 A | 31.3 °C | 393.261 mΩ | 6.50 % of 8 |
/// | water pump | 5.45 A | 6.8 A → fuse 7.5 A | AWG 14, 2.5 mm² | 24.5 A | 33.7 °C | 156.980 mΩ | 7.78 % of 8 |
/// | three phones | 2.73 A | 3.4 A → fuse 5 A | AWG 16, 1.5 mm² | 17.5 A | 31.8 °C | 247.843 mΩ | 6.14 % of 8 |
/// | radio | 0.45 A | 0.6 A → fuse 1 A | AWG 18, 1 mm² | 14.0 A | 30.1 °C | 391.506 mΩ | 1.62 % of 1.75 |
/// | bilge pump | 4.09 A | 5.1 A → fuse 7.5 A | AWG 8, 10 mm² | 56.0 A | 30.4 °C | 38.565 mΩ | 1.43 % of 1.75 |
/// | windlass | 90.91 A | 113.6 A → fuse 125 A | AWG 1, 50 mm² | 171.5 A | 51.1 °C | 8.201 mΩ | 6.78 % of 8.75 |
/// | array | 25.50 A | 31.9 A → no fuse | AWG 4, 25 mm² | 95.9 A | 53.9 °C | 16.606 mΩ | 1.73 % of 2 |
/// | controller | 30.00 A | 37.5 A → fuse 40 A | AWG 3, 35 mm² | 126.0 A | 34.3 °C | 2.301 mΩ | 0.63 % of 0.75 |
/// | engine charger | 25.00 A | 31.2 A → fuse 35 A | AWG 3, 35 mm² | 107.1 A | 53.0 °C | 3.282 mΩ | 0.75 % of 0.75 |
#[test]
fn the_sheet_of_the_boat_is_that_worked_by_hand() {
    let fitting = fitted("boat");
    let by_hand = [
        (RunKind::BatteryString, 148.405, -1, 200.0, 0.450),
        (RunKind::Battery, 148.405, -2, 200.0, 0.694),
        (RunKind::Inverter, 30.992, 8, 40.0, 1.474),
        (RunKind::Distribution, 21.959, 2, 30.0, 0.722),
        (RunKind::Branch(0), 4.545, 14, 7.5, 6.459),
        (RunKind::Branch(1), 1.364, 18, 2.0, 4.865),
        (RunKind::Branch(2), 0.273, 18, 1.0, 0.970),
        (RunKind::Branch(3), 5.455, 14, 7.5, 7.784),
        (RunKind::Branch(5), 0.273, 18, 1.0, 0.970),
        (RunKind::Branch(6), 1.818, 18, 3.0, 6.500),
        (RunKind::Branch(7), 5.455, 14, 7.5, 7.784),
        (RunKind::Branch(10), 2.727, 16, 5.0, 6.145),
        (RunKind::Branch(4), 0.455, 18, 1.0, 1.618),
        (RunKind::Branch(8), 4.091, 8, 7.5, 1.434),
        (RunKind::Branch(9), 90.909, 1, 125.0, 6.778),
        (RunKind::Array(0), 25.500, 4, 0.0, 1.728),
        (RunKind::Controller(0), 30.000, 3, 40.0, 0.628),
        (RunKind::Alternator, 25.000, 3, 35.0, 0.746),
    ];
    assert_sheet(&fitting, &by_hand);
    assert_eq!(fitting.basis.tables, Tables::Marine);
    let kinds = [
        RunKind::BatteryString,
        RunKind::Inverter,
        RunKind::Distribution,
        RunKind::Branch(0),
        RunKind::Branch(8),
    ];
    let (t, breaker) = (FuseClass::ClassT, FuseClass::Breaker);
    assert_eq!(classes(&fitting, &kinds), [t, t, t, breaker, t]);
    assert!((fitting.short_circuit.current.0 - 13_288.0).abs() < 1.0);
    assert_eq!(fitting.shunt.unwrap().shunt.rated, Amps(300.0));
    assert_eq!((fitting.bus_bars.needed, fitting.bus_bars.rating), (true, Some(Amps(200.0))));
}

/// **Cabin**, by the tables of land: insulation for 90 °C, terminals for 60 °C up to AWG 1, air of 30 °C, three conductors at most.
///
/// Loads go off at 12 · 11/6 V = 22 V. On the panel 24 + 6 + 60 + 50 + 10 + 30 + 8 + 1.5 = 189.5 W, 8.61 A; the inverter 1500 W / (0.89 ·
/// 22 V) = 76.61 A; together 85.22 A, more than the controller's 30 A. The array: 1.25 · 9.7 A · 2 = 24.25 A, 300 W / 33 V · 2 = 18.18 A at
/// the best point, air of 50 °C: AWG 6 may carry 75 A · √(40/60) = 61.2 A, and 55 A by its terminals. No conductor is thinner than AWG 14,
/// and AWG 10 has no fuse over 30 A. Drops: bank 1 + panel 1 + branch 8 = 10 %, inverter 1 + 2 = 3 %, the array the 3 % that the plan counts with.
///
/// Flooded: 4 mΩ a battery of 100 Ah, two in a row of 225 Ah: 8 · 100 / 225 = 3.556 mΩ; 29.2 V and 25 K · 4 mV · 12 more in the cold = 30.4 V,
/// for the inside is never under 2 °C but 0 °C is reckoned with: 8.55 kA. Behind 1 m of 50 mm² (0.69 mΩ) 7.16 kA, and behind 3 m of 6 mm²
/// (17.24 mΩ) 1.4 kA. A strip fuse breaks 6 kA: class T at the post and to the inverter, breakers for the rest.
/// Shunt: 1.5 · 85.22 A = 127.8 A, so 150 A. Four lugs a side: studs suffice.
///
/// | to | for hours | 125 % and fuse | conductor | may carry | warm | resistance | drop |
/// |---|---|---|---|---|---|---|---|
/// | bank | 85.22 A | 106.5 A → fuse 110 A | AWG 1, 50 mm² | 110.0 A | 66.0 °C | 1.079 mΩ | 0.42 % of 1 |
/// | inverter | 76.61 A | 95.8 A → fuse 100 A | AWG 1, 50 mm² | 110.0 A | 59.1 °C | 1.054 mΩ | 0.37 % of 2 |
/// | panel | 8.61 A | 10.8 A → fuse 15 A | AWG 10, 6 mm² | 30.0 A | 34.9 °C | 23.390 mΩ | 0.92 % of 1 |
/// | four lights | 1.09 A | 1.4 A → fuse 2 A | AWG 14, 2.5 mm² | 15.0 A | 30.3 °C | 154.989 mΩ | 0.77 % of 8 |
/// | two reading lights | 0.27 A | 0.3 A → fuse 1 A | AWG 14, 2.5 mm² | 15.0 A | 30.0 °C | 154.815 mΩ | 0.19 % of 8 |
/// | pump | 2.73 A | 3.4 A → fuse 5 A | AWG 14, 2.5 mm² | 15.0 A | 32.0 °C | 155.964 mΩ | 1.93 % of 8 |
/// | fridge | 2.27 A | 2.8 A → fuse 3 A | AWG 14, 2.5 mm² | 15.0 A | 31.4 °C | 155.610 mΩ | 1.61 % of 8 |
/// | radio | 0.45 A | 0.6 A → fuse 1 A | AWG 14, 2.5 mm² | 15.0 A | 30.1 °C | 154.836 mΩ | 0.32 % of 8 |
/// | three phones | 1.36 A | 1.7 A → fuse 2 A | AWG 14, 2.5 mm² | 15.0 A | 30.5 °C | 155.094 mΩ | 0.96 % of 8 |
/// | router | 0.36 A | 0.5 A → fuse 1 A | AWG 14, 2.5 mm² | 15.0 A | 30.0 °C | 154.824 mΩ | 0.26 % of 8 |
/// | frost watch | 0.07 A | 0.1 A → fuse 1 A | AWG 14, 2.5 mm² | 15.0 A | 30.0 °C | 154.804 mΩ | 0.05 % of 8 |
/// | array | 24.25 A | 30.3 A → no fuse | AWG 6, 16 mm² | 55.0 A | 57.8 °C | 40.141 mΩ | 2.21 % of 3 |
/// | controller | 30.00 A | 37.5 A → fuse 40 A | AWG 6, 16 mm² | 55.0 A | 47.9 °C | 4.847 mΩ | 0.66 % of 1 |
#[test]
fn the_sheet_of_the_cabin_is_that_worked_by_hand() {
    let fitting = fitted("cabin");
    let by_hand = [
        (RunKind::Battery, 85.222, 1, 110.0, 0.418),
        (RunKind::Inverter, 76.609, 1, 100.0, 0.367),
        (RunKind::Distribution, 8.614, 10, 15.0, 0.916),
        (RunKind::Branch(0), 1.091, 14, 2.0, 0.769),
        (RunKind::Branch(1), 0.273, 14, 1.0, 0.192),
        (RunKind::Branch(2), 2.727, 14, 5.0, 1.933),
        (RunKind::Branch(3), 2.273, 14, 3.0, 1.608),
        (RunKind::Branch(4), 0.455, 14, 1.0, 0.320),
        (RunKind::Branch(5), 1.364, 14, 2.0, 0.961),
        (RunKind::Branch(9), 0.364, 14, 1.0, 0.256),
        (RunKind::Branch(10), 0.068, 14, 1.0, 0.048),
        (RunKind::Array(0), 24.250, 6, 0.0, 2.212),
        (RunKind::Controller(0), 30.000, 6, 40.0, 0.661),
    ];
    assert_sheet(&fitting, &by_hand);
    assert_eq!(fitting.basis.tables, Tables::Land);
    let kinds =
        [RunKind::Battery, RunKind::Inverter, RunKind::Distribution, RunKind::Controller(0)];
    let (t, breaker) = (FuseClass::ClassT, FuseClass::Breaker);
    assert_eq!(classes(&fitting, &kinds), [t, t, breaker, breaker]);
    assert!((fitting.short_circuit.current.0 - 8550.0).abs() < 1.0);
    assert_eq!(fitting.shunt.unwrap().shunt.rated, Amps(150.0));
    assert!(!fitting.bus_bars.needed && fitting.bus_bars.lugs == 4);
}
