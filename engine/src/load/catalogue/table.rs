//! The table of the catalogue: one row per appliance, figures in the order power, low, high \[W\], pattern.
//!
//! Gaps between groups leave room for kin; take the next free number of the group, whatever the order of rows.

use super::{Care, Group, Pattern};
use crate::document::Supply;

/// Sitting together after dark: 18:00 to 22:30.
const EVENING: Pattern = Pattern::Between { from_min: 18 * 60, to_min: 22 * 60 + 30 };
/// Dusk to dawn as a light sensor would have it at the equinox: 18:00 to 06:00.
const DARK: Pattern = Pattern::Between { from_min: 18 * 60, to_min: 6 * 60 };
/// In bed: 22:00 to 06:00.
const ASLEEP: Pattern = Pattern::Between { from_min: 22 * 60, to_min: 6 * 60 };
/// A market or office day: 08:00 to 16:00.
const WORKING_DAY: Pattern = Pattern::Between { from_min: 8 * 60, to_min: 16 * 60 };
/// Lessons: 08:00 to 13:00.
const LESSONS: Pattern = Pattern::Between { from_min: 8 * 60, to_min: 13 * 60 };

/// So many hours a day at no stated time.
const fn h(hours: f64) -> Pattern {
    Pattern::HoursPerDay(hours)
}

/// An entry as it is stored: small numbers, because the table ships in the page.
#[derive(Clone, Copy)]
pub(super) struct Figures {
    pub(super) group: Group,
    pub(super) power: f64,
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) supply: Supply,
    pub(super) quantity: u16,
    pub(super) pattern: Pattern,
    pub(super) duty: u8,
    pub(super) surge: f32,
    /// Inside and reference air \[°C\].
    pub(super) heat: Option<(i8, i8)>,
    pub(super) care: Care,
}

const fn figures(supply: Supply, range: [f64; 3], pattern: Pattern) -> Figures {
    let [power, low, high] = range;
    Figures {
        group: Group::Light,
        power,
        low,
        high,
        supply,
        quantity: 1,
        pattern,
        duty: 100,
        surge: 1.0,
        heat: None,
        care: Care::None,
    }
}

const fn dc(power: f64, low: f64, high: f64, pattern: Pattern) -> Figures {
    figures(Supply::Dc, [power, low, high], pattern)
}

const fn ac(power: f64, low: f64, high: f64, pattern: Pattern) -> Figures {
    figures(Supply::Ac, [power, low, high], pattern)
}

impl Figures {
    const fn of(self, group: Group) -> Self {
        Self { group, ..self }
    }
    const fn pieces(self, quantity: u16) -> Self {
        Self { quantity, ..self }
    }
    /// Runs for this share of its hours \[%\].
    const fn duty(self, duty: u8) -> Self {
        Self { duty, ..self }
    }
    const fn surge(self, surge: f32) -> Self {
        Self { surge, ..self }
    }
    /// Keeps this temperature inside; the duty holds in this air \[°C\].
    const fn cold(self, inside: i8, reference: i8) -> Self {
        Self { heat: Some((inside, reference)), ..self }
    }
    const fn critical(self) -> Self {
        Self { care: Care::Critical, ..self }
    }
}

macro_rules! catalogue {
    ($($group:ident { $($(#[$doc:meta])* $name:ident = $number:literal: $figures:expr;)+ })+) => {
        /// An appliance of the catalogue. Its number is frozen: shared links store it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[repr(u16)]
        pub enum Appliance {
            $($($(#[$doc])* $name = $number,)+)+
        }

        impl Appliance {
            /// Every appliance, in the order in which it is shown within its group.
            pub const ALL: &'static [Self] = &[$($(Self::$name,)+)+];

            /// The appliance of a frozen number, if one was given it.
            #[must_use]
            pub const fn from_number(number: u16) -> Option<Self> {
                match number {
                    $($($number => Some(Self::$name),)+)+
                    _ => None,
                }
            }

            /// The frozen number.
            #[must_use]
            pub const fn number(self) -> u16 {
                self as u16
            }

            pub(super) const fn figures(self) -> &'static Figures {
                match self {
                    $($(Self::$name => const { &$figures.of(Group::$group) },)+)+
                }
            }
        }
    };
}

catalogue! {
    Light {
        /// Ceiling lamp of a cabin, light-emitting diodes.
        CeilingLight = 1: dc(5.0, 3.0, 10.0, EVENING).pieces(4);
        /// Spot at the bed or table.
        ReadingLight = 2: dc(3.0, 1.5, 5.0, h(1.5)).pieces(2);
        /// One to two metres of strip.
        StripLight = 3: dc(10.0, 5.0, 20.0, EVENING);
        /// Awning, cockpit or porch lamp.
        OutdoorLight = 4: dc(8.0, 4.0, 15.0, h(1.0));
        /// Lamp with a screw base in a house.
        HouseLamp = 5: ac(9.0, 4.0, 15.0, EVENING).pieces(3);
        /// Work or yard light.
        FloodLight = 6: ac(30.0, 10.0, 100.0, h(2.0));
        /// Lantern while it charges.
        LanternCharger = 7: dc(5.0, 2.0, 10.0, h(3.0)).pieces(2);
        /// Path or street light from dusk to dawn.
        StreetLight = 8: dc(20.0, 10.0, 40.0, DARK);
        /// Tube or panel above the desks.
        ClassroomLight = 9: ac(18.0, 12.0, 36.0, LESSONS).pieces(6);
    }
    Cold {
        /// Portable box with a compressor, 30 to 45 litres, kept as a refrigerator.
        CoolBox = 20: dc(45.0, 35.0, 60.0, Pattern::Always).duty(30).surge(2.0).cold(4, 25);
        /// Box cooled by a semiconductor: never switches off.
        ThermoelectricBox = 21: dc(48.0, 30.0, 60.0, Pattern::Always);
        /// Built-in refrigerator of 40 litres.
        Fridge40 = 22: dc(40.0, 30.0, 50.0, Pattern::Always).duty(30).surge(2.0).cold(4, 25);
        /// Built-in refrigerator of 80 litres.
        Fridge80 = 23: dc(45.0, 35.0, 60.0, Pattern::Always).duty(35).surge(2.0).cold(4, 25);
        /// Built-in refrigerator of 130 litres with a small ice compartment.
        Fridge130 = 24: dc(50.0, 40.0, 75.0, Pattern::Always).duty(40).surge(2.0).cold(4, 25);
        /// Refrigerator with freezer of about 220 litres on direct current.
        Fridge220 = 25: dc(65.0, 50.0, 100.0, Pattern::Always).duty(40).surge(2.0).cold(-5, 25);
        /// Portable box of 40 litres kept as a freezer.
        FreezerBox = 26: dc(50.0, 40.0, 65.0, Pattern::Always).duty(50).surge(2.0).cold(-18, 25);
        /// Freezer of 80 to 100 litres on direct current.
        Freezer80 = 27: dc(60.0, 45.0, 80.0, Pattern::Always).duty(45).surge(2.0).cold(-18, 25);
        /// Household refrigerator of about 150 litres without freezer.
        HouseFridge = 28: ac(80.0, 60.0, 120.0, Pattern::Always).duty(20).surge(5.0).cold(4, 25);
        /// Household refrigerator with freezer, 250 to 300 litres.
        FridgeFreezer = 29: ac(110.0, 80.0, 180.0, Pattern::Always).duty(25).surge(5.0).cold(-5, 25);
        /// Household chest freezer of about 200 litres.
        ChestFreezer = 30: ac(90.0, 70.0, 150.0, Pattern::Always).duty(30).surge(5.0).cold(-18, 25);
        /// Cooler with a glass door in a shop or stall.
        DisplayCooler = 31: ac(200.0, 120.0, 350.0, Pattern::Always).duty(45).surge(5.0).cold(4, 25);
        /// Table-top ice maker.
        IceMaker = 32: ac(120.0, 90.0, 180.0, h(2.0)).surge(4.0);
        /// Vaccine refrigerator, 2 to 8 °C.
        VaccineFridge = 33: dc(60.0, 40.0, 120.0, Pattern::Always).duty(40).surge(2.0).cold(5, 32).critical();
        /// Freezer for vaccine or cold packs.
        VaccineFreezer = 34: dc(80.0, 50.0, 150.0, Pattern::Always).duty(55).surge(2.0).cold(-18, 32).critical();
    }
    Water {
        /// Pressure pump of taps and shower.
        WaterPump = 40: dc(60.0, 30.0, 120.0, h(0.25)).surge(3.0);
        /// Pump that empties a shower tray.
        ShowerPump = 41: dc(30.0, 20.0, 60.0, h(0.2)).surge(3.0);
        /// Automatic bilge pump; the hours are those of a boat that hardly leaks.
        BilgePump = 42: dc(45.0, 25.0, 100.0, h(0.1)).surge(3.0).critical();
        /// Toilet with a macerating or vacuum pump.
        ToiletPump = 43: dc(200.0, 120.0, 350.0, h(0.1)).surge(3.0);
        /// Fan of a dry toilet.
        ToiletFan = 44: dc(2.0, 1.0, 5.0, Pattern::Always);
        /// Pump in a cellar pit.
        SumpPump = 45: ac(400.0, 250.0, 800.0, h(0.5)).surge(4.0);
        /// Borehole pump with an induction motor.
        WellPump = 46: ac(750.0, 400.0, 1500.0, h(1.0)).surge(5.0);
        /// Borehole or surface pump made for direct current.
        DcWellPump = 47: dc(150.0, 60.0, 400.0, h(2.0)).surge(2.0);
        /// Reverse osmosis of sea water.
        WaterMaker = 48: dc(250.0, 100.0, 600.0, h(2.0)).surge(3.0);
        /// Immersion heater of a tank of about 10 litres.
        WaterHeater = 49: ac(1200.0, 500.0, 2000.0, h(0.75));
        /// Ultraviolet lamp for drinking water.
        WaterLamp = 50: dc(20.0, 10.0, 40.0, h(2.0));
    }
    Kitchen {
        /// Household kettle: 1.5 litres take about 7 minutes.
        Kettle = 60: ac(2000.0, 1500.0, 2400.0, h(0.25));
        /// Low-power kettle for travel.
        TravelKettle = 61: ac(800.0, 500.0, 1000.0, h(0.4));
        /// Filter coffee machine.
        CoffeeMachine = 62: ac(900.0, 600.0, 1400.0, h(0.3));
        /// Machine that presses water through the coffee.
        EspressoMachine = 63: ac(1300.0, 1000.0, 1600.0, h(0.2));
        /// Sold as 800 W of output; takes about 1250 W.
        Microwave = 64: ac(1250.0, 1000.0, 1500.0, h(0.2));
        /// One induction ring, cooking at part power.
        InductionHob = 65: ac(1800.0, 500.0, 2200.0, h(0.75)).duty(60);
        /// Rice cooker of one litre.
        RiceCooker = 66: ac(500.0, 300.0, 1000.0, h(0.6));
        /// Two slices.
        Toaster = 67: ac(850.0, 600.0, 1500.0, h(0.1));
        /// Blender or stick mixer.
        Blender = 68: ac(500.0, 200.0, 1200.0, h(0.05)).surge(2.0);
        /// Hot-air fryer.
        AirFryer = 69: ac(1500.0, 1000.0, 2000.0, h(0.4)).duty(70);
        /// Table-top oven.
        SmallOven = 70: ac(1400.0, 800.0, 1800.0, h(0.5)).duty(60);
        /// Electric pressure cooker with insulation.
        PressureCooker = 71: ac(1000.0, 700.0, 1200.0, h(0.8)).duty(40);
        /// Bread maker: kneads, rests, bakes.
        BreadMaker = 72: ac(600.0, 450.0, 800.0, h(3.5)).duty(20);
        /// Hood over the stove.
        CookerHood = 73: dc(20.0, 6.0, 50.0, h(1.0));
        /// Dishwasher: one run.
        Dishwasher = 74: ac(1800.0, 1200.0, 2200.0, h(2.0)).duty(22);
    }
    Air {
        /// Blower and fuel pump of a fuel-fired air heater; the glow plug at start takes four times as much.
        HeaterFan = 80: dc(25.0, 10.0, 45.0, h(8.0)).surge(4.0);
        /// Fuel-fired water heater with its circulation pump.
        WaterHeating = 81: dc(40.0, 25.0, 60.0, h(6.0)).surge(3.0);
        /// Circulation pump of a house's radiators.
        CirculationPump = 82: ac(30.0, 10.0, 60.0, h(10.0)).surge(2.0);
        /// Fan in the roof hatch.
        RoofFan = 83: dc(20.0, 5.0, 45.0, h(6.0)).surge(1.5);
        /// Small fan at the berth or desk.
        CabinFan = 84: dc(10.0, 3.0, 20.0, h(8.0));
        /// Stand or table fan.
        HouseFan = 85: ac(45.0, 25.0, 75.0, h(6.0)).surge(2.0);
        /// Ceiling fan with a motor for direct current.
        CeilingFan = 86: dc(25.0, 10.0, 40.0, h(8.0));
        /// Small room or roof air conditioner.
        AirConditioner = 87: ac(700.0, 400.0, 1200.0, h(5.0)).duty(70).surge(3.0);
        /// Air conditioner made for direct current, with a controlled compressor.
        DcAirConditioner = 88: dc(450.0, 250.0, 800.0, h(5.0)).duty(65).surge(1.5);
        /// Electric heater with a fan.
        FanHeater = 89: ac(1500.0, 750.0, 2000.0, h(1.0));
        /// Blanket under the sheet.
        ElectricBlanket = 90: dc(50.0, 30.0, 80.0, h(4.0)).duty(50);
        /// Dehumidifier with a compressor.
        Dehumidifier = 91: ac(250.0, 150.0, 400.0, h(6.0)).duty(70).surge(3.0);
        /// Fans and feed of a pellet stove; its igniter takes five times as much.
        PelletStove = 92: ac(60.0, 30.0, 120.0, h(10.0)).surge(5.0);
        /// Extractor fan of a bath or workshop.
        ExtractorFan = 93: ac(25.0, 8.0, 60.0, h(2.0)).surge(2.0);
    }
    Computing {
        /// Telephone, charged once a day.
        PhoneCharger = 100: dc(10.0, 5.0, 25.0, h(1.5)).pieces(2);
        /// Tablet.
        TabletCharger = 101: dc(15.0, 10.0, 30.0, h(2.0));
        /// Laptop in use.
        LaptopCharger = 102: dc(50.0, 30.0, 100.0, h(4.0));
        /// Camera batteries.
        CameraCharger = 103: dc(12.0, 5.0, 25.0, h(1.0));
        /// Batteries of a small drone.
        DroneCharger = 104: ac(70.0, 40.0, 120.0, h(1.0));
        /// Electric bicycle, half a charge a day.
        BikeCharger = 105: ac(150.0, 80.0, 250.0, h(2.0));
        /// Network router of a house.
        Router = 106: dc(10.0, 5.0, 20.0, Pattern::Always);
        /// Router for the mobile network.
        MobileRouter = 107: dc(8.0, 4.0, 15.0, Pattern::Always);
        /// Flat antenna for internet by satellite.
        SatelliteTerminal = 108: dc(60.0, 25.0, 110.0, h(8.0));
        /// Desktop computer without its monitor.
        DesktopComputer = 109: ac(100.0, 40.0, 300.0, h(4.0));
        /// Monitor.
        Monitor = 110: ac(25.0, 15.0, 50.0, h(4.0));
        /// Ink-jet printer.
        Printer = 111: ac(20.0, 10.0, 40.0, h(0.5));
        /// Laser printer while it prints.
        LaserPrinter = 112: ac(500.0, 300.0, 1000.0, h(0.1)).surge(2.0);
        /// Trolley that charges a class set of tablets.
        TabletTrolley = 113: ac(350.0, 200.0, 600.0, h(2.5));
        /// Single-board computer.
        SmallComputer = 114: dc(6.0, 3.0, 15.0, Pattern::Always);
        /// Round cells for torches and toys.
        CellCharger = 115: dc(8.0, 4.0, 20.0, h(3.0));
    }
    Media {
        /// Television of 20 to 24 inches on direct current.
        SmallTelevision = 120: dc(25.0, 15.0, 40.0, h(3.0));
        /// Household television of about 43 inches.
        Television = 121: ac(80.0, 50.0, 150.0, h(3.0));
        /// Projector.
        Projector = 122: ac(200.0, 60.0, 350.0, h(2.0));
        /// Amplifier and loudspeakers for a gathering, at the mean level of speech and music.
        PublicAddress = 123: ac(100.0, 50.0, 400.0, h(2.0));
        /// Active or wireless loudspeaker.
        Speaker = 124: dc(10.0, 4.0, 30.0, h(3.0));
        /// Built-in radio, playing.
        Radio = 125: dc(10.0, 4.0, 25.0, h(3.0));
        /// Memory and receiver of a radio that is switched off.
        RadioStandby = 126: dc(0.3, 0.1, 1.0, Pattern::Always);
        /// Games console.
        GamesConsole = 127: ac(100.0, 30.0, 200.0, h(2.0));
    }
    Household {
        /// Hair dryer.
        HairDryer = 130: ac(1600.0, 800.0, 2200.0, h(0.1));
        /// Hair clipper on its lead.
        HairClipper = 131: ac(10.0, 5.0, 15.0, h(0.5));
        /// Household vacuum cleaner.
        VacuumCleaner = 132: ac(800.0, 400.0, 1400.0, h(0.2)).surge(2.0);
        /// One warm wash of about 0.6 kWh.
        WashingMachine = 133: ac(2000.0, 1200.0, 2300.0, h(1.5)).duty(20);
        /// Small machine without a heater.
        CampWasher = 134: ac(250.0, 150.0, 400.0, h(0.7)).surge(3.0);
        /// Dryer with a heat pump.
        TumbleDryer = 135: ac(700.0, 500.0, 1000.0, h(2.0)).duty(85).surge(3.0);
        /// Clothes iron.
        Iron = 136: ac(1500.0, 800.0, 2400.0, h(0.4)).duty(50);
        /// Sewing machine, stitching half of the time.
        SewingMachine = 137: ac(80.0, 60.0, 150.0, h(3.0)).duty(50).surge(2.0);
        /// Toothbrush or shaver on its base.
        ShaverCharger = 138: ac(3.0, 1.0, 6.0, h(4.0));
    }
    Afloat {
        /// Chart plotter of 7 to 9 inches.
        ChartPlotter = 150: dc(15.0, 8.0, 40.0, h(8.0));
        /// Radar without a magnetron, transmitting.
        Radar = 151: dc(25.0, 15.0, 60.0, h(2.0));
        /// Depth, log and wind.
        Instruments = 152: dc(3.0, 1.0, 6.0, h(8.0));
        /// Autopilot: the drive moves about half of the time.
        Autopilot = 153: dc(60.0, 30.0, 150.0, h(8.0)).duty(50).surge(2.0);
        /// Marine radio, listening.
        VhfListening = 154: dc(5.0, 2.0, 8.0, h(12.0)).critical();
        /// Marine radio, transmitting with 25 W.
        VhfTransmitting = 155: dc(65.0, 55.0, 75.0, h(0.2)).critical();
        /// Transponder of the automatic identification system.
        Transponder = 156: dc(4.0, 2.0, 10.0, h(12.0));
        /// Light at anchor.
        AnchorLight = 157: dc(3.0, 1.0, 10.0, DARK);
        /// Side and stern lights under way.
        NavigationLights = 158: dc(8.0, 4.0, 30.0, h(4.0));
        /// Anchor windlass under load.
        Windlass = 159: dc(1000.0, 600.0, 1800.0, h(0.1)).surge(3.0);
        /// Thruster in the bow.
        BowThruster = 160: dc(3000.0, 1500.0, 6000.0, h(0.05)).surge(2.5);
        /// Winch for sheets or a trailer.
        ElectricWinch = 161: dc(700.0, 500.0, 1500.0, h(0.1)).surge(3.0);
        /// Electric outboard at walking pace.
        ElectricOutboard = 162: dc(1000.0, 500.0, 3000.0, h(1.0)).surge(1.5);
    }
    Watch {
        /// Burglar alarm.
        Alarm = 170: dc(1.0, 0.5, 3.0, Pattern::Always);
        /// Detector of cooking gas and carbon monoxide.
        GasDetector = 171: dc(2.0, 1.0, 4.0, Pattern::Always).critical();
        /// Position tracker.
        Tracker = 172: dc(0.5, 0.2, 2.0, Pattern::Always);
        /// Camera that keeps watch.
        SecurityCamera = 173: dc(5.0, 2.0, 12.0, Pattern::Always);
        /// Control panel and sensors of a vehicle.
        ControlPanel = 174: dc(1.5, 0.5, 5.0, Pattern::Always);
        /// Battery gauge.
        BatteryGauge = 175: dc(0.3, 0.1, 1.0, Pattern::Always);
        /// Weather station with its radio.
        WeatherStation = 176: dc(1.0, 0.5, 4.0, Pattern::Always);
        /// Radio repeater, on the air a fifth of the time.
        RadioRepeater = 177: dc(90.0, 30.0, 200.0, Pattern::Always).duty(20);
        /// Two-way radio of a station, listening.
        TransceiverListening = 178: dc(15.0, 8.0, 30.0, h(8.0));
        /// Two-way short-wave radio, sending with 100 W.
        TransceiverSending = 179: dc(250.0, 150.0, 350.0, h(0.2));
        /// Charging cradle of a hand-held radio.
        HandheldRadio = 180: dc(8.0, 4.0, 15.0, h(3.0)).pieces(2);
    }
    Workshop {
        /// Charger of cordless tools.
        DrillCharger = 190: ac(90.0, 50.0, 250.0, h(1.5));
        /// Hand drill on its lead.
        PowerDrill = 191: ac(650.0, 400.0, 1100.0, h(0.5)).duty(50).surge(2.0);
        /// Circular saw.
        CircularSaw = 192: ac(1300.0, 1000.0, 1800.0, h(0.5)).duty(50).surge(2.0);
        /// Angle grinder.
        AngleGrinder = 193: ac(900.0, 600.0, 2000.0, h(0.5)).duty(50).surge(2.0);
        /// Jigsaw.
        Jigsaw = 194: ac(600.0, 400.0, 800.0, h(0.4)).duty(50).surge(2.0);
        /// Orbital sander.
        Sander = 195: ac(300.0, 200.0, 500.0, h(1.0)).surge(2.0);
        /// Soldering iron that regulates its tip.
        SolderingIron = 196: ac(60.0, 25.0, 100.0, h(2.0)).duty(60);
        /// Compressor with a tank.
        AirCompressor = 197: ac(1100.0, 750.0, 2200.0, h(0.5)).surge(5.0);
        /// Pillar drill or bench grinder with an induction motor.
        BenchMachine = 198: ac(350.0, 150.0, 750.0, h(0.5)).surge(5.0);
        /// Vacuum cleaner of a workshop.
        ShopVacuum = 199: ac(1200.0, 800.0, 1500.0, h(0.5)).surge(2.0);
        /// Welding inverter at about 100 A.
        Welder = 200: ac(3500.0, 2000.0, 6000.0, h(0.5)).duty(30).surge(1.5);
        /// Printer that builds things from plastic.
        PlasticPrinter = 201: ac(150.0, 80.0, 350.0, h(4.0)).duty(60);
        /// Hot-air gun.
        HeatGun = 202: ac(1800.0, 1000.0, 2000.0, h(0.2));
    }
    Health {
        /// Positive-pressure breathing device for sleep without a heated humidifier.
        BreathingDevice = 220: dc(30.0, 15.0, 90.0, ASLEEP).critical();
        /// Stationary oxygen concentrator of about 5 litres a minute.
        OxygenConcentrator = 221: ac(350.0, 250.0, 600.0, Pattern::Always).surge(2.0).critical();
        /// Portable oxygen concentrator.
        PortableOxygen = 222: dc(60.0, 30.0, 130.0, h(8.0)).critical();
        /// Nebuliser with a compressor.
        Nebuliser = 223: ac(120.0, 60.0, 180.0, h(0.5)).surge(2.0).critical();
        /// Suction pump.
        SuctionPump = 224: ac(120.0, 60.0, 200.0, h(0.5)).surge(3.0).critical();
        /// Patient monitor.
        PatientMonitor = 225: ac(40.0, 20.0, 80.0, h(8.0)).critical();
        /// Infusion pump.
        InfusionPump = 226: ac(15.0, 8.0, 40.0, Pattern::Always).critical();
        /// Radiant warmer for the newborn.
        InfantWarmer = 227: ac(500.0, 300.0, 800.0, h(8.0)).duty(60).critical();
        /// Cooled case for medicine.
        MedicineCooler = 228: dc(20.0, 8.0, 50.0, Pattern::Always).duty(50).critical();
        /// Table-top centrifuge.
        Centrifuge = 229: ac(200.0, 100.0, 500.0, h(1.0)).surge(2.0);
        /// Microscope lamp.
        Microscope = 230: ac(10.0, 5.0, 30.0, h(3.0));
        /// Electronic blood-pressure meter while it charges or measures.
        BloodPressureMeter = 231: dc(5.0, 2.0, 10.0, h(1.0));
        /// Table-top steam steriliser.
        Steriliser = 232: ac(1500.0, 1000.0, 2500.0, h(1.0)).duty(60);
        /// Examination lamp.
        ExaminationLamp = 233: dc(15.0, 8.0, 40.0, h(4.0));
        /// Portable ultrasound.
        Ultrasound = 234: ac(80.0, 40.0, 250.0, h(2.0));
        /// Electric wheelchair, charged overnight.
        WheelchairCharger = 235: ac(150.0, 80.0, 250.0, h(5.0)).critical();
    }
    Trade {
        /// Energiser of an electric fence.
        ElectricFence = 250: dc(3.0, 1.0, 10.0, Pattern::Always);
        /// Incubator for some dozens of eggs.
        EggIncubator = 251: ac(80.0, 40.0, 200.0, Pattern::Always).duty(40);
        /// Air or circulation pump of an aquarium or pond.
        PondPump = 252: ac(15.0, 5.0, 40.0, Pattern::Always);
        /// Grain mill with an induction motor.
        GrainMill = 253: ac(750.0, 500.0, 2200.0, h(1.0)).surge(5.0);
        /// Till with a card terminal and scale.
        Till = 254: dc(10.0, 4.0, 30.0, WORKING_DAY);
        /// Plate or bath that keeps food warm.
        FoodWarmer = 255: ac(500.0, 200.0, 1000.0, h(5.0)).duty(50);
    }
}
