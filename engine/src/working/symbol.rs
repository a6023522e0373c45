//! Symbols of the formulas. Their meaning in a language is in `words`.

macro_rules! symbols {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)+) => {
        /// A symbol that stands in a formula.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Symbol {
            $($(#[$doc])* $name,)+
        }

        impl Symbol {
            /// Every symbol.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// How it is written; the same in every language.
            #[must_use]
            pub const fn text(self) -> &'static str {
                match self { $(Self::$name => $text,)+ }
            }
        }
    };
}

symbols! {
    /// Power of a load at the bank.
    LoadPower = "P";
    /// Voltage of the bank.
    BankVoltage = "U";
    /// Current of a load.
    LoadCurrent = "I";
    /// A length of time.
    Time = "t";
    /// Charge.
    Charge = "Q";
    /// How many of one kind.
    Quantity = "N";
    /// Hours of a day in which it is on.
    HoursOn = "t_on";
    /// Energy of a load on a mean day.
    LoadEnergy = "E";
    /// Energy of a load at the bank.
    BankEnergy = "E_b";
    /// Inverter losses that grow with the output, over the output.
    GrowingLoss = "v";
    /// Nominal voltage of the bank.
    NominalVoltage = "U_n";
    /// Charge of a load on a mean day.
    LoadDay = "Q_l";
    /// Idle draw of the inverter.
    IdlePower = "P_idle";
    /// Charge of the inverter's idle draw on a mean day.
    InverterDay = "Q_inv";
    /// Charge of the standing draw on a day.
    StandingDay = "Q_0";
    /// Charge of the protection circuits on a day.
    ProtectionDay = "Q_p";
    /// Charge that all takes on a mean day.
    DayTotal = "Q_day";
    /// Days that the usable charge lasts without any source.
    AutonomyDays = "N_a";
    /// Tilt of the array.
    Tilt = "β";
    /// Direction of the array.
    Azimuth = "γ";
    /// Light on the plane of the array on a day.
    PlaneIrradiation = "H_T";
    /// Rated power of the array.
    ArrayPower = "P_a";
    /// Loss to dirt.
    DirtLoss = "v_d";
    /// Loss to years.
    AgeingLoss = "v_a";
    /// Other losses.
    OtherLoss = "v_o";
    /// Loss in the cable.
    CableLoss = "v_c";
    /// What heat, low light and the controller leave.
    RunningShare = "η_run";
    /// Energy of an array on a day.
    ArrayYield = "E_a";
    /// Voltage of the bank while it is charged in bulk.
    ChargingVoltage = "U_ch";
    /// Charge of an array on a day.
    ArrayCharge = "Q_a";
    /// Energy from the sun by maximum-power-point controllers.
    SolarEnergy = "E_sun";
    /// Charge from the sun by series regulators.
    SeriesCharge = "Q_ser";
    /// Charge from the sun on a day.
    SolarDay = "Q_s";
    /// Share of the charge put in that comes out again.
    ChargeEfficiency = "η_c";
    /// Charge that came in on a day and can be used.
    GainKept = "Q_g";
    /// What a day leaves or lacks.
    Balance = "ΔQ_day";
    /// Power of all loads at the bank.
    Demand = "P_L";
    /// Standing current.
    StandingCurrent = "I_0";
    /// Current of all loads.
    LoadsCurrent = "I_L";
    /// Current from the sun.
    SolarCurrent = "I_sun";
    /// Current from the engine.
    EngineCurrent = "I_eng";
    /// Current from shore power.
    ShoreCurrent = "I_sh";
    /// Current that all sources offer.
    SourcesCurrent = "I_S";
    /// Current from a turbine.
    TurbineCurrent = "I_tb";
    /// Current from the generator.
    GeneratorCurrent = "I_gen";
    /// Current of the protection circuits.
    ProtectionCurrent = "I_bp";
    /// Current into the bank.
    NetCurrent = "I_net";
    /// State of charge before.
    ChargeBefore = "s_0";
    /// Change of the charge stored.
    ChargeStored = "ΔQ";
    /// State of charge after.
    ChargeState = "s";
    /// Charge from the sun.
    SolarCharge = "Q_sun";
    /// Charge from the engine.
    EngineCharge = "Q_eng";
    /// Charge from shore power.
    ShoreCharge = "Q_sh";
    /// Charge from a turbine.
    TurbineCharge = "Q_tb";
    /// Charge from the generator.
    GeneratorCharge = "Q_gen";
    /// Hours that the generator runs in a day.
    GeneratorHours = "t_gen";
    /// Fuel in an hour.
    FuelPerHour = "f_t";
    /// Fuel for a kilowatt-hour.
    FuelPerEnergy = "f_E";
    /// Fuel that the generator burns in a day.
    Fuel = "V_f";
    /// Standing current without the controllers.
    OwnStanding = "I_00";
    /// Draw of the charge controllers.
    ControllerDraw = "P_cc";
    /// Draw of the inverter while it looks for a load.
    SearchPower = "P_srch";
    /// Charge that came in.
    ChargeCame = "Q_in";
    /// Charge lost in charging.
    ChargingLoss = "Q_η";
    /// Charge lost by standing.
    SelfDischarge = "Q_sd";
    /// Charge taken by protection circuits.
    ProtectionCharge = "Q_bp";
    /// Charge lost.
    ChargeLost = "Q_loss";
    /// Charge given to the loads.
    LoadCharge = "Q_L";
    /// Voltage on the rating plate.
    PlateVoltage = "U_p";
    /// Current on the rating plate.
    PlateCurrent = "I_p";
    /// Energy of a year on the label.
    LabelEnergy = "E_year";
    /// Hours of a year.
    Year = "t_year";
    /// Share of the time in which a load runs while on.
    Duty = "d";
    /// Power that comes out.
    OutputPower = "P_out";
    /// Share of the input that comes out.
    OutputEfficiency = "η_out";
    /// Share of the time in which a compressor runs in the air of the day.
    CoolingDuty = "d_c";
    /// Air temperature.
    AirTemperature = "T_a";
    /// Temperature kept inside.
    InsideTemperature = "T_i";
    /// What the condenser stands over the air.
    CondenserLift = "ΔT_c";
    /// Evaporator temperature.
    EvaporatorTemperature = "T_e";
    /// Air temperature of the stated duty.
    ReferenceTemperature = "T_ref";
    /// Output of the inverter.
    InverterOutput = "P_ac";
    /// Rated output of the inverter.
    InverterRated = "P_r";
    /// Input of the inverter.
    InverterInput = "P_dc";
    /// Idle loss over rated output.
    LossIdle = "p₀";
    /// Linear loss coefficient.
    LossLinear = "k₁";
    /// Square loss coefficient.
    LossSquare = "k₂";
    /// Rated capacity of the bank; the slowest if there are several.
    RatedCapacity = "C_r";
    /// The rated capacity in the fewest hours.
    FastCapacity = "C_1";
    /// Its hours.
    FastHours = "H_1";
    /// One of several rated capacities.
    StatedCapacity = "C_s";
    /// Its hours.
    RatingHours = "H_s";
    /// What the fitted battery gives in these hours.
    FittedCapacity = "C_fit";
    /// How far that is off.
    RatingDeviation = "ε";
    /// All charge in the two wells.
    WholeOfWells = "C_w";
    /// Share of the available well.
    ShareOfWells = "c";
    /// Rate at which the wells become level.
    RateOfWells = "k";
    /// What is left at rest at the low cut-off.
    ChargeAtCutOff = "s_low";
    /// Share that age has left.
    Health = "k_age";
    /// Rated capacity less age.
    AgedCapacity = "C_a";
    /// Mean discharge current.
    DischargeCurrent = "I_d";
    /// Hours of the rated capacity.
    HourRate = "H_r";
    /// Exponent of the loss of capacity with current.
    RateExponent = "n_p";
    /// Share of the capacity that the current leaves.
    RateFactor = "k_rate";
    /// Temperature of the bank.
    BankTemperature = "T_b";
    /// Hours that a discharge at the mean current lasts.
    DischargeHours = "t_d";
    /// Share of the capacity that the temperature leaves.
    ColdFactor = "k_T";
    /// Charge between full and empty.
    FullCapacity = "C_f";
    /// Share kept in reserve.
    Reserve = "r";
    /// Charge between full and the reserve.
    UsableCapacity = "C_u";
    /// Health at which a bank counts as worn out.
    WornOut = "k_end";
    /// Share of the life that a year of cycles takes.
    CycleWear = "w_c";
    /// Share of the life that a year of standing takes.
    CalendarWear = "w_t";
    /// Years until the bank is worn out.
    YearsLeft = "N_y";
    /// Voltage that chargers hold at 25 °C.
    Absorption = "U_abs";
    /// By how much chargers lower it for each kelvin.
    Compensation = "ΔU_K";
    /// Temperature at which it is stated.
    StatedAt = "T_25";
    /// The warmest that the bank becomes.
    HottestBank = "T_hot";
    /// The lowest voltage that chargers hold.
    HotAbsorption = "U_hot";
    /// Voltage at which a gauge may say full.
    FullVoltage = "U_full";
    /// Current at which charging ends, of the rated capacity in an hour.
    TailShare = "p_t";
    /// The same of the capacity that a gauge was told.
    GaugeTail = "p_g";
    /// State of charge at which a gauge warns.
    WarnCharge = "s_w";
    /// State of charge that a gauge shows.
    ShownCharge = "s_g";
    /// Current that it reads.
    ReadCurrent = "I_g";
    /// Mean of the current that it reads, out of the bank.
    MeanCurrent = "I_m";
    /// What an amp-hour counts: the efficiency on the way in, one or more on the way out.
    CountWeight = "w";
    /// Capacity that it was told.
    GaugeCapacity = "C_g";
    /// What it takes off for standing in a month.
    MonthlyLoss = "p_m";
    /// State of charge down to which it tells the time left.
    GaugeFloor = "s_f";
    /// Time left by a gauge.
    TimeLeft = "t_g";
    /// Power over volts times amps of a load on alternating current.
    PowerFactor = "λ_p";
    /// The least threshold.
    LeastThreshold = "I_least";
    /// Current under which a gauge counts nothing.
    Threshold = "I_thr";
    /// Use over the plan's, by readings.
    UseShare = "f_use";
    /// What the gauge counted out of the bank by night.
    CountedOut = "Q_cnt";
    /// What the sun gave in these nights.
    SunByNight = "Q_dusk";
    /// What the plan uses in these nights.
    PlannedUse = "Q_plan";
    /// Capacity over the plan's, by readings.
    CapacityShare = "f_C";
    /// Capacity by readings.
    RealCapacity = "C_real";
    /// Current past the shunt.
    HiddenCurrent = "I_hid";
    /// Hours of a day in which it flows.
    HiddenHours = "t_hid";
    /// Charge past the shunt in a day.
    PastShunt = "Q_hid";

    /// Latitude, north positive.
    Latitude = "φ";
    /// Longitude, east positive.
    Longitude = "λ";
    /// Day of the year with its fraction in universal time.
    DayOfYear = "n";
    /// Angle of the year.
    DayAngle = "B";
    /// Declination of the sun.
    Declination = "δ";
    /// Hour angle of sunset.
    SunsetHourAngle = "ω_s";
    /// Irradiance outside the air at normal incidence.
    ExtraterrestrialNormal = "G_on";
    /// Irradiation of a day outside the air on the horizontal.
    DailyExtraterrestrial = "H₀";
    /// Clearness: irradiation on the horizontal over that outside the air.
    Clearness = "K_T";
    /// Irradiation of a day on the horizontal.
    DailyIrradiation = "H";
    /// Diffuse share of a day's irradiation.
    DiffuseShare = "H_d/H";

    /// Continuous current of a run.
    RunCurrent = "I_r";
    /// Current that all loads draw at once.
    AllOut = "I_out";
    /// Current that all chargers give at once.
    AllIn = "I_in";
    /// Limit of a charger or controller.
    ChargerLimit = "I_lim";
    /// Efficiency of the inverter at full output.
    FullEfficiency = "η_1";
    /// Voltage at which loads go off.
    CutOffVoltage = "U_low";
    /// Strings of batteries side by side.
    BatteryStrings = "N_b";
    /// Short-circuit current of a module.
    ModuleShort = "I_sc";
    /// Strings of modules side by side.
    ModuleStrings = "N_p";
    /// Open-circuit voltage of a module.
    ModuleOpen = "U_oc";
    /// Modules in one string.
    ModulesInRow = "N_s";
    /// Change of that voltage with each kelvin.
    OpenPerKelvin = "k_oc";
    /// Lowest temperature on record.
    RecordLow = "T_min";
    /// Open-circuit voltage of a string in the cold.
    ColdVoltage = "U_cold";
    /// The least that a fuse must carry.
    LeastFuse = "I_f";
    /// What a table says that a conductor may carry.
    TableAmpacity = "I_t";
    /// What bundling leaves of it.
    BundleFactor = "k_b";
    /// What warm air leaves of it.
    AmbientFactor = "k_a";
    /// The most that surroundings leave of it.
    SpaceFactor = "k_s";
    /// What a conductor may carry.
    Ampacity = "I_z";
    /// What its terminals allow.
    TerminalAmpacity = "I_c";
    /// Temperature for which insulation is made.
    InsulationTemperature = "T_i";
    /// Air around a conductor.
    AmbientTemperature = "T_amb";
    /// Air of a table.
    TableTemperature = "T_t";
    /// Temperature of a conductor.
    ConductorTemperature = "T_c";
    /// Length of a run one way.
    OneWayLength = "L";
    /// Cross-section of a conductor.
    CrossSection = "A";
    /// Power of a module.
    ModulePower = "P_m";
    /// Voltage of a module at its best point.
    BestVoltage = "U_m";
    /// Resistance of a run out and back.
    WireResistance = "R_w";
    /// Current that a drop is reckoned with.
    WorkingCurrent = "I_w";
    /// Voltage that belongs to it.
    WorkingVoltage = "U_w";
    /// Drop over a run.
    WireDrop = "ΔU";
    /// The same as a share.
    DropShare = "u";
    /// Heat in a run.
    WireLoss = "P_w";
    /// Highest voltage of the bank.
    HighestVoltage = "U_max";
    /// Lowest resistance of the bank.
    LeastResistance = "R_min";
    /// Short-circuit current of the bank.
    ShortCircuit = "I_k";
    /// Resistance of cable between the bank and a fuse, cold.
    CableResistance = "R_k";
    /// Short-circuit current behind it.
    ShortCircuitBehind = "I_kk";
    /// The least rating of a shunt.
    LeastShunt = "I_s";
}
