//! Every number that a person can enter: its unit, its range and its resolution, in one table.
//!
//! The table serves the checks, the link codec and the input boxes of the page, so that the three can never disagree.
//! A resolution is part of the meaning of links that exist; it may never be changed, only joined by a new field.

use crate::quantity::Unit;

macro_rules! fields {
    ($($(#[$doc:meta])* $name:ident: $min:literal..$max:literal by $per_unit:literal, $unit:ident;)+) => {
        /// A number that a person can enter.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Field {
            $($(#[$doc])* $name,)+
        }

        impl Field {
            /// Every field.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// Range, resolution and unit.
            #[must_use]
            pub const fn range(self) -> Range {
                match self {
                    $(Self::$name => Range {
                        min: $min, max: $max, per_unit: $per_unit, unit: Unit::$unit,
                    },)+
                }
            }
        }
    };
}

/// What a field may hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The smallest value allowed.
    pub min: f64,
    /// The largest value allowed.
    pub max: f64,
    /// How many steps of resolution make one unit: 10 keeps tenths.
    pub per_unit: f64,
    /// The unit of all of these.
    pub unit: Unit,
}

impl Range {
    /// The value as a whole number of steps.
    #[must_use]
    pub fn steps(&self, value: f64) -> i64 {
        // A cast of a float saturates and takes NaN to 0, so no input can make it panic.
        (value * self.per_unit).round() as i64
    }

    /// The value of a whole number of steps; the double nearest to the decimal that a person would type.
    #[must_use]
    pub fn value(&self, steps: i64) -> f64 {
        steps as f64 / self.per_unit
    }

    /// The value rounded to the resolution.
    #[must_use]
    pub fn rounded(&self, value: f64) -> f64 {
        self.value(self.steps(value))
    }

    /// Whether a value is a number within the range.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        value >= self.min && value <= self.max
    }
}

fields! {
    /// Latitude of the place, north positive.
    Latitude: -90.0..90.0 by 100.0, Degree;
    /// Longitude of the place, east positive.
    Longitude: -180.0..180.0 by 100.0, Degree;
    /// Standard time of the place less universal time, in minutes.
    UtcOffset: -720.0..840.0 by 1.0, One;
    /// Irradiation of a mean day on the level, which is its peak sun hours.
    PeakSun: 0.0..14.0 by 100.0, KilowattHourPerSquareMetre;
    /// Mean air temperature of a month.
    AirTemperature: -80.0..60.0 by 10.0, Celsius;
    /// Share of the light that the ground throws back.
    Albedo: 0.0..95.0 by 1.0, Percent;
    /// Temperature below which the inside of the vehicle or building does not fall.
    InsideTemperature: -40.0..40.0 by 10.0, Celsius;
    /// The lowest temperature on record at the place.
    RecordLow: -90.0..40.0 by 1.0, Celsius;
    /// State of charge at the start.
    StartCharge: 0.0..100.0 by 10.0, Percent;
    /// How many of one kind.
    Quantity: 1.0..1000.0 by 1.0, One;
    /// Power that a load takes while it runs.
    LoadPower: 0.0..100000.0 by 10.0, Watt;
    /// Current that a load takes while it runs.
    LoadCurrent: 0.0..2000.0 by 100.0, Amp;
    /// Voltage at which the rating plate states the current.
    PlateVoltage: 1.0..500.0 by 10.0, Volt;
    /// Energy that the label states for a year, in kilowatt-hours.
    LabelEnergy: 0.0..20000.0 by 1.0, One;
    /// Power that reaches the food in a microwave oven.
    OutputPower: 0.0..10000.0 by 1.0, Watt;
    /// Share of the input that becomes output.
    OutputEfficiency: 10.0..100.0 by 1.0, Percent;
    /// Share of the time in which a load that cycles by itself really runs.
    Duty: 0.0..100.0 by 10.0, Percent;
    /// Running power times this is the power at the start.
    Surge: 1.0..20.0 by 10.0, One;
    /// Hours of use in a day.
    HoursPerDay: 0.0..24.0 by 100.0, Hour;
    /// Temperature that a refrigerator keeps.
    FridgeInside: -90.0..20.0 by 1.0, Celsius;
    /// Air temperature at which a refrigerator's figure was stated.
    FridgeReference: 10.0..45.0 by 1.0, Celsius;
    /// Standing current of all small things that are always on.
    StandingCurrent: 0.0..50.0 by 1000.0, Amp;
    /// Continuous output of the inverter.
    InverterRated: 10.0..100000.0 by 1.0, Watt;
    /// Short output of the inverter.
    InverterSurge: 10.0..300000.0 by 1.0, Watt;
    /// Draw of the inverter that is on and feeds nothing.
    InverterIdle: 0.0..1000.0 by 10.0, Watt;
    /// Efficiency of the inverter at half or full load.
    InverterEfficiency: 50.0..99.9 by 10.0, Percent;
    /// Lowest voltage, per battery, at which the inverter works.
    BatteryVoltage: 1.0..500.0 by 10.0, Volt;
    /// Rated capacity of one battery.
    BatteryCapacity: 0.1..20000.0 by 10.0, AmpHour;
    /// Hours in which the rated capacity was measured.
    HourRate: 1.0..120.0 by 1.0, Hour;
    /// Batteries in one string.
    InSeries: 1.0..400.0 by 1.0, One;
    /// Strings side by side.
    InParallel: 1.0..100.0 by 1.0, One;
    /// Capacity that age has left, of the rated one.
    Health: 20.0..100.0 by 1.0, Percent;
    /// State of charge that shall not be undercut.
    Reserve: 0.0..95.0 by 1.0, Percent;
    /// Temperature of a battery with a place of its own.
    BatteryTemperature: -40.0..60.0 by 10.0, Celsius;
    /// Limit of a battery's charge or discharge current.
    BatteryCurrent: 0.1..5000.0 by 10.0, Amp;
    /// Draw of the protection circuit.
    ProtectionDraw: 0.0..5000.0 by 1.0, One;
    /// Charge that comes out again, of the charge put in.
    ChargeEfficiency: 50.0..100.0 by 10.0, Percent;
    /// Exponent of the loss of capacity with current.
    RateExponent: 1.0..1.6 by 100.0, One;
    /// Charge lost by standing, in a month.
    SelfDischarge: 0.0..50.0 by 10.0, Percent;
    /// Power of one module in the standard test.
    ModulePower: 1.0..2000.0 by 10.0, Watt;
    /// Voltage of one module.
    ModuleVoltage: 1.0..300.0 by 10.0, Volt;
    /// Short-circuit current of one module.
    ModuleCurrent: 0.1..50.0 by 100.0, Amp;
    /// Loss of power with each degree.
    PowerCoefficient: -1.0..0.0 by 1000.0, Percent;
    /// Tilt of the array: 0 is flat, 90 upright.
    Tilt: 0.0..90.0 by 1.0, Degree;
    /// Direction that the array faces, clockwise from north.
    Azimuth: 0.0..360.0 by 1.0, Degree;
    /// A loss of one cause.
    Loss: 0.0..90.0 by 10.0, Percent;
    /// Share of the light that shade takes away.
    Shading: 0.0..100.0 by 1.0, Percent;
    /// Output limit of a charge controller or charger.
    ChargerCurrent: 0.1..2000.0 by 10.0, Amp;
    /// Highest voltage that a charge controller takes from its array.
    ControllerVoltage: 10.0..1500.0 by 1.0, Volt;
    /// Draw of a charge controller.
    ControllerSelfUse: 0.0..50.0 by 100.0, Watt;
    /// What heat takes from the output of a charger.
    Derating: 0.0..90.0 by 1.0, Percent;
    /// Elevation of the horizon in a direction.
    Horizon: 0.0..80.0 by 1.0, Degree;
    /// Power over volts times amps of a load on alternating current.
    PowerFactor: 0.1..1.0 by 100.0, One;
    /// Draw of an inverter that looks for a load.
    SearchDraw: 0.0..100.0 by 10.0, Watt;
    /// State of charge at which a generator starts.
    GeneratorStart: 0.0..99.0 by 1.0, Percent;
    /// State of charge at which a generator stops.
    GeneratorStop: 1.0..100.0 by 1.0, Percent;
    /// The shortest run of a generator, in minutes.
    MinimumRun: 0.0..1440.0 by 1.0, One;
    /// Fuel of a generator in an hour, in litres.
    FuelPerHour: 0.0..100.0 by 100.0, One;
    /// Fuel of a generator for a kilowatt-hour, in litres.
    FuelPerEnergy: 0.0..10.0 by 100.0, One;
    /// Mean power of a turbine in a month.
    TurbinePower: 0.0..100000.0 by 10.0, Watt;
    /// Charge that a turbine gives in a day of a month.
    TurbineCharge: 0.0..20000.0 by 10.0, AmpHour;
    /// What an hour of the day has of a turbine's output, beside the other hours.
    HourShare: 0.0..100.0 by 10.0, One;
    /// A second rated capacity of one battery.
    SecondCapacity: 0.1..20000.0 by 10.0, AmpHour;
    /// Hours in which the second rated capacity was measured.
    SecondHours: 0.1..240.0 by 10.0, Hour;
    /// A third rated capacity of one battery.
    ThirdCapacity: 0.1..20000.0 by 10.0, AmpHour;
    /// Hours in which the third rated capacity was measured.
    ThirdHours: 0.1..240.0 by 10.0, Hour;
    /// Voltage of one battery that chargers hold until the current has faded.
    AbsorptionVoltage: 1.0..800.0 by 100.0, Volt;
    /// Current at which charging ends, of the rated capacity in an hour.
    TailCurrent: 0.1..20.0 by 10.0, Percent;
    /// Voltage of one battery at which loads are cut off.
    LowCutOff: 0.5..600.0 by 100.0, Volt;
    /// Short days that are allowed in ten years.
    ShortDays: 0.0..1000.0 by 1.0, One;
    /// Days without any sun.
    DaysWithoutSun: 1.0..60.0 by 1.0, One;
    /// Days of a trip.
    DaysOfTrip: 1.0..60.0 by 1.0, One;
    /// Chance of keeping a promise, at least.
    Chance: 1.0..100.0 by 10.0, Percent;
    /// Price of 100 Ah of a bank, in whatever money.
    BankPrice: 0.0..1000000.0 by 100.0, One;
    /// Price of 100 W of modules, in the same money.
    ArrayPrice: 0.0..1000000.0 by 100.0, One;
    /// Weight of 100 Ah of a bank, in kilograms.
    BankWeight: 0.0..10000.0 by 10.0, One;
    /// Weight of 100 W of modules, in kilograms.
    ArrayWeight: 0.0..10000.0 by 10.0, One;
    /// The hottest air around the runs.
    RunAmbient: 10.0..50.0 by 10.0, Celsius;
    /// The maker's figure for the short circuit of the whole bank.
    ShortCircuitCurrent: 50.0..200000.0 by 1.0, Amp;
    /// The cold-cranking amps of all batteries together.
    CrankingCurrent: 50.0..200000.0 by 1.0, Amp;
    /// Length one way from the bank to the bus bars.
    BatteryRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from the bus bars to the inverter.
    InverterRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from the bus bars to the panel that distributes.
    PanelRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from the panel to the loads.
    LoadRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from a charge controller to the bus bars.
    ControllerRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from an array to its controller.
    ArrayRun: 0.1..200.0 by 10.0, Metre;
    /// Length one way from a charger to the bus bars.
    ChargerRun: 0.1..200.0 by 10.0, Metre;
    /// A voltage that was read.
    CheckVoltage: -2000.0..2000.0 by 1000.0, Volt;
    /// A current that was read.
    CheckCurrent: -2000.0..2000.0 by 1000.0, Amp;
    /// A state of charge that was read.
    CheckCharge: 0.0..100.0 by 10.0, Percent;
    /// The capacity that a gauge was told.
    ToldCapacity: 1.0..100000.0 by 10.0, AmpHour;
    /// The charge efficiency that a gauge was told.
    ToldEfficiency: 10.0..100.0 by 10.0, Percent;
    /// The percentage that a gauge shows.
    ReadPercent: 0.0..100.0 by 10.0, Percent;
    /// The amp-hours left that a gauge shows.
    ReadLeft: -100000.0..100000.0 by 10.0, AmpHour;
    /// The amp-hours taken that a gauge shows.
    ReadTaken: -100000.0..100000.0 by 10.0, AmpHour;
    /// A voltage that was read.
    ReadVolts: 0.0..1000.0 by 100.0, Volt;
    /// A current that was read, into the bank positive.
    ReadAmps: -10000.0..10000.0 by 10.0, Amp;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_are_ranges_and_their_ends_are_whole_steps() {
        for field in Field::ALL {
            let range = field.range();
            assert!(range.min < range.max && range.per_unit >= 1.0, "{field:?}");
            assert_eq!(range.rounded(range.min), range.min, "{field:?}");
            assert_eq!(range.rounded(range.max), range.max, "{field:?}");
        }
    }

    #[test]
    fn rounding_gives_the_double_that_a_person_types() {
        assert_eq!(Field::LoadPower.range().rounded(0.3000001), 0.3);
        assert_eq!(Field::Latitude.range().rounded(53.279_999), 53.28);
        assert!(!Field::LoadPower.range().holds(f64::NAN));
        assert!(!Field::LoadPower.range().holds(1e300));
    }
}
