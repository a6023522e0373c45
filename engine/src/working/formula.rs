//! The formulas that the engine uses, each with its symbol, its inputs and its source.
//!
//! A template is the right-hand side with `{0}`, `{1}`... for the inputs; `each: + ` joins as many inputs as there are.

use super::{Source, Symbol};

macro_rules! formulas {
    ($($(#[$doc:meta])* $name:ident: $symbol:ident = $template:literal [$($input:ident),* $(,)?] $source:ident;)+) => {
        /// A formula of the engine.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Formula {
            $($(#[$doc])* $name,)+
        }

        impl Formula {
            /// Every formula.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// The symbol of its result.
            #[must_use]
            pub const fn symbol(self) -> Symbol {
                match self { $(Self::$name => Symbol::$symbol,)+ }
            }

            /// Its right-hand side with numbered places for the inputs.
            #[must_use]
            pub const fn template(self) -> &'static str {
                match self { $(Self::$name => $template,)+ }
            }

            /// The symbols of its inputs, in order.
            #[must_use]
            pub const fn inputs(self) -> &'static [Symbol] {
                match self { $(Self::$name => &[$(Symbol::$input),*],)+ }
            }

            /// Where the formula comes from.
            #[must_use]
            pub const fn source(self) -> Source {
                match self { $(Self::$name => Source::$source,)+ }
            }
        }
    };
}

formulas! {
    /// Current that a power draws.
    LoadCurrent: LoadCurrent = "{0} / {1}" [LoadPower, BankVoltage] Definition;
    /// Power by the rating plate.
    PlatePower: LoadPower = "{0} · {1}" [PlateVoltage, PlateCurrent] Definition;
    /// Power while running by the energy label.
    LabelPower: LoadPower = "{0} / ({1} · {2})" [LabelEnergy, Year, Duty] Definition;
    /// Input of something sold by its output.
    InputPower: LoadPower = "{0} / {1}" [OutputPower, OutputEfficiency] Definition;
    /// Share of the time in which a compressor runs; never more than always, nothing where the air is colder than the inside.
    CoolingDuty: CoolingDuty = "{0} · ({1} − {2}) · ({1} + {3} − {4}) / (({5} − {2}) · ({5} + {3} − {4}))" [Duty, AirTemperature, InsideTemperature, CondenserLift, EvaporatorTemperature, ReferenceTemperature] HeatPump;
    /// Input of the inverter while on.
    InverterInput: InverterInput = "{0} + {1} · ({2} + {3} · {0}/{1} + {4} · ({0}/{1})²)" [InverterOutput, InverterRated, LossIdle, LossLinear, LossSquare] SchmidtSauer;
    /// Exponent of Peukert's law between the fastest and the slowest rated capacity.
    ExponentOfRatings: RateExponent = "ln({0} / {1}) / ln({2} · {0} / ({3} · {1}))" [HourRate, FastHours, FastCapacity, RatedCapacity] Peukert;
    /// Capacity in the hours of a rating, of lead-acid as two wells that were fitted to all ratings.
    CapacityOfWells: FittedCapacity = "{0} · {1} · {2} · {3} / (1 − exp(−{2} · {3}) + {1} · ({2} · {3} − 1 + exp(−{2} · {3})))" [WholeOfWells, ShareOfWells, RateOfWells, RatingHours] ManwellMcGowan;
    /// The same by Peukert's law from the slowest rating.
    CapacityInHours: FittedCapacity = "{0} · ({1} / {2})^(({3} − 1) / {3})" [RatedCapacity, RatingHours, HourRate, RateExponent] Peukert;
    /// How far what was fitted is from a rated capacity.
    RatingDeviation: RatingDeviation = "{0} / {1} − 1" [FittedCapacity, StatedCapacity] Definition;
    /// Capacity that age has left.
    AgedCapacity: AgedCapacity = "{0} · {1}" [RatedCapacity, Health] Definition;
    /// Share of the capacity at a current above the rated one; 1 at and below it.
    RateFactor: RateFactor = "min(1, ({0} / ({1} · {2}))^({3} − 1))" [AgedCapacity, DischargeCurrent, HourRate, RateExponent] Peukert;
    /// Share of the capacity that the temperature leaves, at a discharge of so many hours; at most 1.
    ColdFactor: ColdFactor = "k_T({0}, {1})" [BankTemperature, DischargeHours] StandardCold;
    /// The same of lithium and sodium, whatever the discharge.
    ColdFactorTypical: ColdFactor = "k_T({0})" [BankTemperature] Typical;
    /// Charge between full and empty.
    FullCapacity: FullCapacity = "{0} · {1} · {2}" [AgedCapacity, RateFactor, ColdFactor] Definition;
    /// Charge between full and empty of lead-acid, however fast it is drawn.
    FullCapacityOfWells: FullCapacity = "{0} · {1}" [AgedCapacity, ColdFactor] ManwellMcGowan;
    /// Charge of lead-acid between full and the reserve, or as deep as the current reaches at once.
    UsableCapacityOfWells: UsableCapacity = "{0} · min(1 − {1}, {2})" [FullCapacity, Reserve, RateFactor] ManwellMcGowan;
    /// Charge between full and the reserve.
    UsableCapacity: UsableCapacity = "{0} · (1 − {1})" [FullCapacity, Reserve] Definition;
    /// Years until the bank is worn out, if cycles and time each take their part of its life.
    YearsLeft: YearsLeft = "({0} − {1}) / (1 − {1}) / ({2} + {3})" [Health, WornOut, CycleWear, CalendarWear] Choice;
    /// Energy of a load on a mean day.
    LoadEnergy: LoadEnergy = "{0} · {1} · {2} · {3}" [LoadPower, Quantity, HoursOn, Duty] Definition;
    /// Energy at the bank of a load on direct current.
    EnergyDirect: BankEnergy = "{0}" [LoadEnergy] Definition;
    /// Energy at the bank of a load on the inverter, with its part of the losses that grow with the output.
    EnergyByInverter: BankEnergy = "{0} · (1 + {1})" [LoadEnergy, GrowingLoss] SchmidtSauer;
    /// Charge that a load takes on a mean day.
    LoadCharge: LoadDay = "{0} / {1}" [BankEnergy, NominalVoltage] Definition;
    /// Charge that the inverter takes for itself on a mean day.
    InverterIdle: InverterDay = "{0} · {1} / {2}" [IdlePower, HoursOn, NominalVoltage] Definition;
    /// The same of an inverter that looks for loads while none is on.
    InverterSearch: InverterDay = "({0} · {1} + {2} · ({3} − {1})) / {4}" [IdlePower, HoursOn, SearchPower, Time, NominalVoltage] Definition;
    /// Standing current with the draw of the charge controllers.
    StandingWithControllers: StandingCurrent = "{0} + {1} / {2}" [OwnStanding, ControllerDraw, NominalVoltage] Definition;
    /// Charge of the standing draw on a day.
    StandingCharge: StandingDay = "{0} · {1}" [StandingCurrent, Time] Definition;
    /// Charge of the protection circuits on a day.
    ProtectionDay: ProtectionDay = "{0} · {1}" [ProtectionCurrent, Time] Definition;
    /// Charge that all takes on a mean day.
    DayTotal: DayTotal = "each: + " [LoadDay] Definition;
    /// Days that the usable charge lasts without any source.
    Autonomy: AutonomyDays = "{0} / {1}" [UsableCapacity, DayTotal] Definition;
    /// Light on the plane of an array on a day: sky, ground and beam step by step.
    PlaneIrradiation: PlaneIrradiation = "Σ G({0}, {1}, {2}, {3})" [DailyIrradiation, DiffuseShare, Tilt, Azimuth] HayDavies;
    /// Energy of an array at the bank on a day.
    ArrayYield: ArrayYield = "{0} · {1} / (1 kW/m²) · (1 − {2}) · (1 − {3}) · (1 − {4}) · (1 − {5}) · {6}" [ArrayPower, PlaneIrradiation, DirtLoss, AgeingLoss, OtherLoss, CableLoss, RunningShare] Definition;
    /// Energy from the sun of all arrays behind maximum-power-point controllers.
    ArraysEnergy: SolarEnergy = "each: + " [ArrayYield] Definition;
    /// Charge of an array behind a series regulator.
    ArrayCharge: ArrayCharge = "{0} / {1}" [ArrayYield, ChargingVoltage] Definition;
    /// Charge from the sun of all arrays behind series regulators.
    ArraysCharge: SeriesCharge = "each: + " [ArrayCharge] Definition;
    /// Charge from the sun on a day.
    SolarDay: SolarDay = "{0} / {1} + {2}" [SolarEnergy, NominalVoltage, SeriesCharge] Definition;
    /// Charge that came in on a day and can be used.
    GainKept: GainKept = "({0} + {1} + {2} + {3}) · {4}" [SolarDay, TurbineCharge, EngineCharge, ShoreCharge, ChargeEfficiency] Definition;
    /// What a day leaves or lacks.
    Balance: Balance = "{0} − {1}" [GainKept, DayTotal] Definition;
    /// Hours for which the generator makes up for what a day lacks.
    GeneratorDay: GeneratorHours = "−{0} / ({1} · {2})" [Balance, GeneratorCurrent, ChargeEfficiency] Definition;
    /// What it burns in them.
    GeneratorFuel: Fuel = "{1} · ({0} + {2} · {3} · {4} / 1000)" [FuelPerHour, GeneratorHours, FuelPerEnergy, NominalVoltage, GeneratorCurrent] Definition;
    /// Current of all loads at the bank's voltage.
    LoadsCurrent: LoadsCurrent = "{0} / {1} + {2}" [Demand, BankVoltage, StandingCurrent] Definition;
    /// Current that all sources offer.
    SourcesCurrent: SourcesCurrent = "{0} + {1} + {2} + {3} + {4}" [SolarCurrent, TurbineCurrent, EngineCurrent, GeneratorCurrent, ShoreCurrent] Definition;
    /// Current into the bank before its limits; out of it if negative.
    NetCurrent: NetCurrent = "{0} − {1} − {2}" [SourcesCurrent, LoadsCurrent, ProtectionCurrent] Definition;
    /// State of charge after a step.
    ChargeAfter: ChargeState = "{0} + {1} / {2}" [ChargeBefore, ChargeStored, FullCapacity] Definition;
    /// Charge that came in over a run.
    ChargeCame: ChargeCame = "{0} + {1} + {2} + {3} + {4}" [SolarCharge, TurbineCharge, EngineCharge, GeneratorCharge, ShoreCharge] Definition;
    /// Charge lost over a run.
    ChargeLost: ChargeLost = "{0} + {1} + {2}" [ChargingLoss, SelfDischarge, ProtectionCharge] Definition;
    /// State of charge at the end of a run.
    ChargeAtEnd: ChargeState = "{0} + ({1} − {2} − {3}) / {4}" [ChargeBefore, ChargeCame, LoadCharge, ChargeLost, FullCapacity] Definition;
    /// Charge that a current moves in a time.
    Charge: Charge = "{0} · {1}" [LoadCurrent, Time] Definition;
    /// The lowest voltage that chargers of lead-acid hold: the warmer the bank, the lower.
    HotAbsorption: HotAbsorption = "{0} − {1} · ({2} − {3})" [Absorption, Compensation, HottestBank, StatedAt] Typical;
    /// Voltage at which a gauge may say full: 0.15 V in 12 V under the lowest that chargers hold.
    FullVoltage: FullVoltage = "{0} − 0.0125 · {1}" [HotAbsorption, NominalVoltage] Typical;
    /// Current at which charging ends, as a share of the capacity that a gauge was told.
    GaugeTail: GaugeTail = "{0} · {1} / {2}" [TailShare, RatedCapacity, FullCapacity] Definition;
    /// State of charge at which a gauge warns: a quarter of a day's use over its floor.
    WarnCharge: WarnCharge = "min(0.95, {0} + {1} / (4 · {2}))" [Reserve, DayTotal, FullCapacity] Choice;
    /// Current of a load while it runs alone.
    RunningCurrent: LoadCurrent = "{0} · {1} / {2}" [LoadPower, Quantity, BankVoltage] Definition;
    /// The same through an inverter that carries nothing else.
    RunningByInverter: LoadCurrent = "({0} · {1} + {3} · max({4}, {4} + {5} · {0} · {1}/({7} · {3}) + {6} · ({0} · {1}/({7} · {3}))²)) / {2}" [LoadPower, Quantity, BankVoltage, InverterRated, LossIdle, LossLinear, LossSquare, PowerFactor] SchmidtSauer;
    /// What a gauge shows after a step of its count.
    GaugeCount: ShownCharge = "max(0, min(1, {0} + (({1} − {2}) · {3} / {4} − {5} · {0} / 730) · {6}))" [ShownCharge, ReadCurrent, ProtectionCurrent, CountWeight, GaugeCapacity, MonthlyLoss, Time] Definition;
    /// Time left as a gauge tells it.
    GaugeTimeLeft: TimeLeft = "max(0, {0} − {1}) · {2} / ({3} · {4})" [ShownCharge, GaugeFloor, GaugeCapacity, MeanCurrent, CountWeight] Peukert;
    /// Current under which a gauge counts nothing: half the standing draw.
    Threshold: Threshold = "max({1}, {0} / 2)" [StandingCurrent, LeastThreshold] Choice;
    /// Use over the plan's by readings of nights.
    UseByReadings: UseShare = "({0} + {1}) / {2}" [CountedOut, SunByNight, PlannedUse] Definition;
    /// Capacity by readings.
    CapacityByReadings: RealCapacity = "{0} · {1}" [CapacityShare, FullCapacity] Definition;
    /// Charge that passes the shunt in a day.
    PastShunt: PastShunt = "{0} · {1}" [HiddenCurrent, HiddenHours] Definition;

    /// Angle of the year.
    DayAngle: DayAngle = "360° · ({0} − 1) / 365" [DayOfYear] Spencer1971;
    /// Declination of the sun.
    Declination: Declination = "180°/π · (0.006918 − 0.399912 · cos({0}) + 0.070257 · sin({0}) − 0.006758 · cos(2 · {0}) + 0.000907 · sin(2 · {0}) − 0.002697 · cos(3 · {0}) + 0.00148 · sin(3 · {0}))" [DayAngle] Spencer1971;
    /// Irradiance outside the air at normal incidence.
    ExtraterrestrialNormal: ExtraterrestrialNormal = "1367 W/m² · (1.00011 + 0.034221 · cos({0}) + 0.00128 · sin({0}) + 0.000719 · cos(2 · {0}) + 0.000077 · sin(2 · {0}))" [DayAngle] Spencer1971;
    /// Hour angle of sunset; the argument is held between −1 and 1 in polar night and day.
    SunsetHourAngle: SunsetHourAngle = "arccos(−tan({0}) · tan({1}))" [Latitude, Declination] DuffieBeckman;
    /// Irradiation of a day outside the air on the horizontal.
    DailyExtraterrestrial: DailyExtraterrestrial = "24 h/π · {0} / 1000 · (cos({1}) · cos({2}) · sin({3}) + π/180° · {3} · sin({1}) · sin({2}))" [ExtraterrestrialNormal, Latitude, Declination, SunsetHourAngle] DuffieBeckman;
    /// Clearness of the climate grid at a place, between the four nearest cells.
    GridClearness: Clearness = "K_T({0}, {1})" [Latitude, Longitude] ClimateGrid;
    /// Clearness from a person's own irradiation.
    OwnClearness: Clearness = "{0} / {1}" [DailyIrradiation, DailyExtraterrestrial] Definition;
    /// Irradiation of a day on the horizontal.
    DailyIrradiation: DailyIrradiation = "{0} · {1}" [Clearness, DailyExtraterrestrial] Definition;
    /// Diffuse share of a month's irradiation where the sun sets later than an hour angle of 81.4°.
    DiffuseShare: DiffuseShare = "min(1, 1.311 − 3.022 · {0} + 3.427 · {0}² − 1.821 · {0}³)" [Clearness] Erbs1982;
    /// The same in winter, where the sun sets earlier.
    DiffuseShareWinter: DiffuseShare = "min(1, 1.391 − 3.560 · {0} + 4.189 · {0}² − 2.137 · {0}³)" [Clearness] Erbs1982;

    /// Current of an inverter at full output.
    InverterCurrent: RunCurrent = "{0} / ({1} · {2})" [InverterRated, FullEfficiency, CutOffVoltage] Definition;
    /// Current of a load at the low cut-off.
    LoadAtCutOff: RunCurrent = "{0} · {1} / {2}" [LoadPower, Quantity, CutOffVoltage] Definition;
    /// Current of a charger at its limit.
    ChargerAtLimit: RunCurrent = "{0}" [ChargerLimit] Definition;
    /// Current of several runs.
    RunSum: RunCurrent = "each: + " [RunCurrent] Definition;
    /// Current that all loads draw at once.
    AllOut: AllOut = "each: + " [RunCurrent] Definition;
    /// Current that all chargers give at once.
    AllIn: AllIn = "each: + " [RunCurrent] Definition;
    /// Current of the bank.
    BankCurrent: RunCurrent = "max({0}, {1})" [AllOut, AllIn] Choice;
    /// Current of a string of batteries if one of the others is off.
    StringCurrent: RunCurrent = "{0} / ({1} − 1)" [RunCurrent, BatteryStrings] Choice;
    /// Current of an array in light over the edge of clouds.
    ArrayCurrent: RunCurrent = "1.25 · {0} · {1}" [ModuleShort, ModuleStrings] SolarCircuits;
    /// Current of an array at its best point.
    ArrayBestCurrent: WorkingCurrent = "{0} / {1} · {2}" [ModulePower, BestVoltage, ModuleStrings] Definition;
    /// Current of an array behind a series regulator.
    ArrayHeldCurrent: WorkingCurrent = "{0} · {1}" [ModuleShort, ModuleStrings] Definition;
    /// Voltage of an array at its best point.
    ArrayBestVoltage: WorkingVoltage = "{0} · {1}" [BestVoltage, ModulesInRow] Definition;
    /// Open-circuit voltage of a string of modules in the cold.
    ColdVoltage: ColdVoltage = "{0} · {1} · (1 + {2} · ({3} − 25))" [ModulesInRow, ModuleOpen, OpenPerKelvin, RecordLow] Definition;
    /// The least that a fuse must carry.
    LeastFuse: LeastFuse = "1.25 · {0}" [RunCurrent] LandAmpacity;
    /// What warm air leaves.
    AmbientFactor: AmbientFactor = "min({0}, √(({1} − {2}) / ({1} − {3})))" [SpaceFactor, InsulationTemperature, AmbientTemperature, TableTemperature] LandCorrection;
    /// What a conductor may carry afloat.
    Ampacity: Ampacity = "{0} · {1} · {2}" [TableAmpacity, BundleFactor, AmbientFactor] MarineAmpacity;
    /// What a conductor may carry on land.
    AmpacityLand: Ampacity = "min({0} · {1} · {2}, {3})" [TableAmpacity, BundleFactor, AmbientFactor, TerminalAmpacity] LandAmpacity;
    /// How warm a current makes a conductor.
    ConductorTemperature: ConductorTemperature = "{0} + ({1} − {0}) · ({2} / {3})²" [AmbientTemperature, InsulationTemperature, RunCurrent, Ampacity] Definition;
    /// Resistance out and back of stranded copper.
    WireResistance: WireResistance = "2 · {0} · 0.017241 · (1 + 0.00393 · ({1} − 20)) / (0.89 · {2})" [OneWayLength, ConductorTemperature, CrossSection] WireGauge;
    /// Drop over a run.
    WireDrop: WireDrop = "{0} · {1}" [WorkingCurrent, WireResistance] Definition;
    /// Heat in a run.
    WireLoss: WireLoss = "{0}² · {1}" [WorkingCurrent, WireResistance] Definition;
    /// Drop over a run as a share of its voltage.
    DropShare: DropShare = "{0} / {1}" [WireDrop, WorkingVoltage] Definition;
    /// Short-circuit current of the bank.
    ShortCircuit: ShortCircuit = "{0} / {1}" [HighestVoltage, LeastResistance] Definition;
    /// The same behind cable.
    ShortCircuitBehind: ShortCircuitBehind = "{0} / ({0} / {1} + {2})" [HighestVoltage, ShortCircuit, CableResistance] Definition;
    /// The least rating of a shunt.
    LeastShunt: LeastShunt = "1.5 · {0}" [RunCurrent] Typical;
}

impl Formula {
    /// The symbol of the input at `place`; a formula over many things repeats its last one.
    #[must_use]
    pub fn input(self, place: usize) -> Symbol {
        let inputs = self.inputs();
        inputs.get(place).or(inputs.last()).copied().unwrap_or(self.symbol())
    }
}
