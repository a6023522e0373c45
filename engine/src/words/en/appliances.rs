//! Names of the catalogue's appliances and groups, and the everyday words by which people look for them.

use crate::load::catalogue::{Appliance, Group};

/// The name of an appliance, as it stands in a list of loads.
#[must_use]
pub fn name(appliance: Appliance) -> &'static str {
    wording(appliance).0
}

/// Everyday words for an appliance beside its name: lower case, parted by single spaces.
#[must_use]
pub fn search_words(appliance: Appliance) -> &'static str {
    wording(appliance).1
}

/// The heading of a group.
#[must_use]
pub fn group(group: Group) -> &'static str {
    match group {
        Group::Light => "Light",
        Group::Cold => "Keeping cold",
        Group::Water => "Water",
        Group::Kitchen => "Cooking",
        Group::Air => "Warmth and air",
        Group::Computing => "Chargers and computers",
        Group::Media => "Picture and sound",
        Group::Household => "Washing and care",
        Group::Afloat => "Afloat",
        Group::Watch => "Radio, alarms, always on",
        Group::Workshop => "Workshop",
        Group::Health => "Clinic and health",
        Group::Trade => "Farm and market",
    }
}

/// Name and search words together, so that neither is forgotten.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
fn wording(appliance: Appliance) -> (&'static str, &'static str) {
    use Appliance as A;
    match appliance {
        A::CeilingLight => ("Ceiling light", "lamp led bulb cabin interior"),
        A::ReadingLight => ("Reading light", "lamp led spot bed book"),
        A::StripLight => ("Light strip", "lamp led ribbon tape ambient"),
        A::OutdoorLight => ("Outdoor light", "lamp led awning porch cockpit"),
        A::HouseLamp => ("House lamp", "light led bulb socket"),
        A::FloodLight => ("Flood light", "lamp led work yard site"),
        A::LanternCharger => ("Lantern, charging", "lamp light torch flashlight usb"),
        A::StreetLight => ("Street light", "lamp led path pole night"),
        A::ClassroomLight => ("Classroom light", "lamp led tube panel school office"),
        A::CoolBox => ("Cool box with compressor", "fridge cooler portable camping"),
        A::ThermoelectricBox => {
            ("Cool box, thermoelectric", "fridge cooler portable peltier camping")
        }
        A::Fridge40 => ("Fridge, 40 litres", "refrigerator small cooler 12v"),
        A::Fridge80 => ("Fridge, 80 litres", "refrigerator cooler 12v"),
        A::Fridge130 => ("Fridge, 130 litres", "refrigerator large 12v"),
        A::Fridge220 => ("Fridge with freezer, 220 litres", "refrigerator large 12v 24v"),
        A::FreezerBox => ("Freezer box, 40 litres", "cool box deep freeze portable frozen"),
        A::Freezer80 => ("Freezer, 80 litres", "deep freeze frozen 12v fish"),
        A::HouseFridge => ("House fridge", "refrigerator mains kitchen"),
        A::FridgeFreezer => ("House fridge with freezer", "refrigerator mains kitchen combination"),
        A::ChestFreezer => ("Chest freezer", "deep freeze frozen mains"),
        A::DisplayCooler => ("Drinks cooler, glass door", "fridge shop stall display bottles bar"),
        A::IceMaker => ("Ice maker", "cubes drinks bar"),
        A::VaccineFridge => ("Vaccine fridge", "medicine refrigerator clinic cold chain"),
        A::VaccineFreezer => ("Vaccine freezer", "medicine clinic cold chain packs"),
        A::WaterPump => ("Water pump", "tap pressure fresh sink faucet"),
        A::ShowerPump => ("Shower drain pump", "grey water sump tray"),
        A::BilgePump => ("Bilge pump", "boat water leak float switch"),
        A::ToiletPump => ("Electric toilet", "wc head macerator flush vacuum"),
        A::ToiletFan => ("Dry toilet fan", "wc composting separating vent"),
        A::SumpPump => ("Sump pump", "cellar basement flood drain"),
        A::WellPump => ("Well pump", "borehole submersible deep water"),
        A::DcWellPump => ("Solar well pump", "borehole submersible irrigation livestock water"),
        A::WaterMaker => ("Watermaker", "desalination reverse osmosis sea drinking"),
        A::WaterHeater => ("Water heater", "boiler hot tank immersion shower"),
        A::WaterLamp => ("Water disinfection lamp", "uv ultraviolet drinking filter purifier"),
        A::Kettle => ("Kettle", "boil water tea coffee hot"),
        A::TravelKettle => ("Travel kettle", "boil water tea coffee low power small"),
        A::CoffeeMachine => ("Coffee machine, filter", "maker drip"),
        A::EspressoMachine => ("Espresso machine", "coffee capsule pod maker"),
        A::Microwave => ("Microwave, 800 W output", "oven reheat"),
        A::InductionHob => ("Induction hob", "cooker stove plate cooktop ring cooking"),
        A::RiceCooker => ("Rice cooker", "steamer pot"),
        A::Toaster => ("Toaster", "bread toast breakfast"),
        A::Blender => ("Blender", "mixer smoothie food processor"),
        A::AirFryer => ("Air fryer", "hot oven chips fries"),
        A::SmallOven => ("Small oven", "bake grill pizza mini"),
        A::PressureCooker => ("Electric pressure cooker", "pot multi stew slow"),
        A::BreadMaker => ("Bread maker", "bake baking machine"),
        A::CookerHood => ("Cooker hood", "extractor fan kitchen steam"),
        A::Dishwasher => ("Dishwasher", "dishes washing up"),
        A::HeaterFan => ("Air heater, diesel or gas", "fuel blower fan parking night heat"),
        A::WaterHeating => ("Water heating, diesel or gas", "fuel boiler radiator hydronic heat"),
        A::CirculationPump => ("Heating circulation pump", "radiator boiler house"),
        A::RoofFan => ("Roof fan", "vent hatch ventilator skylight"),
        A::CabinFan => ("Small fan", "cabin ventilator desk berth usb"),
        A::HouseFan => ("House fan", "stand table ventilator"),
        A::CeilingFan => ("Ceiling fan", "ventilator"),
        A::AirConditioner => ("Air conditioner", "ac aircon cooling roof climate"),
        A::DcAirConditioner => {
            ("Air conditioner, battery", "ac aircon cooling 12v 24v 48v dc climate")
        }
        A::FanHeater => ("Fan heater", "electric heat space warm"),
        A::ElectricBlanket => ("Electric blanket", "bed warm heated underblanket"),
        A::Dehumidifier => ("Dehumidifier", "damp dry moisture mould"),
        A::PelletStove => ("Pellet stove", "wood heat"),
        A::ExtractorFan => ("Extractor fan", "exhaust vent bathroom ventilator"),
        A::PhoneCharger => ("Phone charger", "mobile smartphone cell usb telephone"),
        A::TabletCharger => ("Tablet charger", "usb reader pad"),
        A::LaptopCharger => ("Laptop", "notebook computer charger usb-c work"),
        A::CameraCharger => ("Camera charger", "photo video battery"),
        A::DroneCharger => ("Drone charger", "battery copter"),
        A::BikeCharger => ("E-bike charger", "bicycle pedelec scooter electric"),
        A::Router => ("Internet router", "wifi wi-fi wlan modem network"),
        A::MobileRouter => ("Mobile router", "wifi wi-fi internet lte 4g 5g hotspot modem"),
        A::SatelliteTerminal => ("Satellite internet", "dish antenna terminal wifi"),
        A::DesktopComputer => ("Desktop computer", "pc tower workstation"),
        A::Monitor => ("Monitor", "screen display computer"),
        A::Printer => ("Printer, ink", "inkjet paper office scanner"),
        A::LaserPrinter => ("Laser printer", "paper office copier"),
        A::TabletTrolley => ("Tablet trolley", "school class set cart charging"),
        A::SmallComputer => ("Small computer, always on", "single board server home automation"),
        A::CellCharger => ("Charger for round cells", "aa aaa battery nimh torch"),
        A::SmallTelevision => ("Small television", "tv 12v screen"),
        A::Television => ("Television", "tv screen mains"),
        A::Projector => ("Projector", "beamer film cinema slides"),
        A::PublicAddress => {
            ("Loudspeakers with amplifier", "pa sound system public address microphone music stage")
        }
        A::Speaker => ("Speaker", "loudspeaker music wireless sound"),
        A::Radio => ("Radio, playing", "music stereo hifi"),
        A::RadioStandby => ("Radio, switched off", "standby memory stereo"),
        A::GamesConsole => ("Games console", "video gaming play"),
        A::HairDryer => ("Hair dryer", "blow drier"),
        A::HairClipper => ("Hair clipper", "trimmer barber cut shaver"),
        A::VacuumCleaner => ("Vacuum cleaner", "clean dust floor"),
        A::WashingMachine => ("Washing machine", "laundry clothes washer"),
        A::CampWasher => ("Camping washing machine", "laundry clothes washer small"),
        A::TumbleDryer => ("Tumble dryer", "laundry clothes drier heat pump"),
        A::Iron => ("Iron", "ironing clothes steam laundry"),
        A::SewingMachine => ("Sewing machine", "tailor cloth sail stitch"),
        A::ShaverCharger => ("Toothbrush or shaver", "electric razor bathroom charger"),
        A::ChartPlotter => ("Chart plotter", "gps navigation map display"),
        A::Radar => ("Radar", "navigation fog"),
        A::Instruments => ("Depth, log and wind", "instruments sounder echo speed"),
        A::Autopilot => ("Autopilot", "steering self helm tiller pilot"),
        A::VhfListening => ("Marine radio, listening", "vhf receive standby distress"),
        A::VhfTransmitting => ("Marine radio, sending", "vhf transmit talk distress"),
        A::Transponder => ("Ship transponder", "ais identification traffic"),
        A::AnchorLight => ("Anchor light", "lamp led mast riding night"),
        A::NavigationLights => ("Navigation lights", "lamp led side stern steaming running"),
        A::Windlass => ("Anchor windlass", "winch chain capstan"),
        A::BowThruster => ("Bow thruster", "stern manoeuvring propeller"),
        A::ElectricWinch => ("Electric winch", "sheet halyard recovery pull"),
        A::ElectricOutboard => ("Electric outboard", "motor engine dinghy trolling propulsion"),
        A::Alarm => ("Burglar alarm", "security siren theft"),
        A::GasDetector => ("Gas detector", "alarm carbon monoxide co lpg smoke leak"),
        A::Tracker => ("Tracker", "gps position theft locator"),
        A::SecurityCamera => ("Security camera", "cctv video watch wildlife"),
        A::ControlPanel => ("Control panel", "standby display sensors vehicle"),
        A::BatteryGauge => ("Battery gauge", "monitor shunt meter standby"),
        A::WeatherStation => ("Weather station", "sensor logger wind rain data"),
        A::RadioRepeater => ("Radio repeater", "relay ham amateur mast mesh"),
        A::TransceiverListening => {
            ("Two-way radio, listening", "ham amateur hf transceiver receive")
        }
        A::TransceiverSending => {
            ("Two-way radio, sending", "ham amateur hf ssb transceiver transmit")
        }
        A::HandheldRadio => ("Hand-held radio charger", "walkie talkie two-way"),
        A::DrillCharger => ("Tool battery charger", "drill cordless driver"),
        A::PowerDrill => ("Power drill", "hammer boring tool"),
        A::CircularSaw => ("Circular saw", "wood cut tool"),
        A::AngleGrinder => ("Angle grinder", "metal cut flex disc tool"),
        A::Jigsaw => ("Jigsaw", "saw wood cut tool"),
        A::Sander => ("Sander", "sanding wood orbital tool"),
        A::SolderingIron => ("Soldering iron", "solder electronics repair"),
        A::AirCompressor => ("Air compressor", "tyre tire pump pressure spray"),
        A::BenchMachine => ("Pillar drill or bench grinder", "drill press lathe sharpen machine"),
        A::ShopVacuum => ("Workshop vacuum", "dust extractor wet dry"),
        A::Welder => ("Welder", "welding inverter arc metal"),
        A::PlasticPrinter => ("3D printer", "plastic filament model"),
        A::HeatGun => ("Heat gun", "hot air shrink paint"),
        A::BreathingDevice => ("Breathing device for sleep", "cpap apnea apnoea mask airway"),
        A::OxygenConcentrator => ("Oxygen concentrator", "o2 breathing lungs"),
        A::PortableOxygen => ("Oxygen concentrator, portable", "o2 breathing lungs"),
        A::Nebuliser => ("Nebuliser", "nebulizer inhaler asthma"),
        A::SuctionPump => ("Suction pump", "aspirator airway clinic"),
        A::PatientMonitor => ("Patient monitor", "pulse oximeter ecg heart clinic"),
        A::InfusionPump => ("Infusion pump", "drip syringe feeding clinic"),
        A::InfantWarmer => ("Infant warmer", "baby newborn incubator clinic"),
        A::MedicineCooler => ("Medicine cooler", "insulin drug cool case fridge"),
        A::Centrifuge => ("Centrifuge", "lab laboratory blood"),
        A::Microscope => ("Microscope", "lab laboratory school"),
        A::BloodPressureMeter => ("Blood pressure meter", "monitor cuff clinic"),
        A::Steriliser => ("Steam steriliser", "sterilizer autoclave instruments clinic"),
        A::ExaminationLamp => ("Examination lamp", "light led dentist surgery clinic"),
        A::Ultrasound => ("Ultrasound", "scanner echo pregnancy clinic"),
        A::WheelchairCharger => ("Wheelchair charger", "mobility scooter electric"),
        A::ElectricFence => ("Electric fence", "energiser pasture cattle sheep"),
        A::EggIncubator => ("Egg incubator", "hatch chicks poultry hens"),
        A::PondPump => ("Pond or aquarium pump", "fish air aerator"),
        A::GrainMill => ("Grain mill", "flour grinder maize"),
        A::Till => ("Till and card terminal", "cash register payment scale market stall shop"),
        A::FoodWarmer => ("Food warmer", "hot plate bain marie stall buffet"),
    }
}
