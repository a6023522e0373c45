//! Names of the catalogue's appliances and groups, and the everyday words by which people look for them.

use crate::load::catalogue::{Appliance, Group};

/// The name of an appliance, as it stands in a list of loads.
#[must_use]
pub fn name(appliance: Appliance) -> &'static str {
    wording(appliance).0
}

/// Everyday words for an appliance beside its name: lower case without accents, parted by single spaces.
#[must_use]
pub fn search_words(appliance: Appliance) -> &'static str {
    wording(appliance).1
}

/// The heading of a group.
#[must_use]
pub fn group(group: Group) -> &'static str {
    match group {
        Group::Light => "Luz",
        Group::Cold => "Frío",
        Group::Water => "Agua",
        Group::Kitchen => "Cocina",
        Group::Air => "Calor y aire",
        Group::Computing => "Cargadores y ordenadores",
        Group::Media => "Imagen y sonido",
        Group::Household => "Lavado y cuidado",
        Group::Afloat => "A bordo",
        Group::Watch => "Radio, alarmas, siempre encendido",
        Group::Workshop => "Taller",
        Group::Health => "Clínica y salud",
        Group::Trade => "Granja y mercado",
    }
}

/// Name and search words together, so that neither is forgotten.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
fn wording(appliance: Appliance) -> (&'static str, &'static str) {
    use Appliance as A;
    match appliance {
        A::CeilingLight => ("Luz de techo", "lampara led bombilla plafon interior cabina"),
        A::ReadingLight => ("Luz de lectura", "lampara led foco cama libro"),
        A::StripLight => ("Tira de luz", "lampara led cinta ambiente"),
        A::OutdoorLight => ("Luz exterior", "lampara led toldo porche banera"),
        A::HouseLamp => ("Lámpara de casa", "luz led bombilla"),
        A::FloodLight => ("Foco proyector", "lampara led trabajo patio obra"),
        A::LanternCharger => ("Farol, cargando", "lampara luz linterna usb"),
        A::StreetLight => ("Farola", "lampara led camino poste noche calle"),
        A::ClassroomLight => ("Luz de aula", "lampara led tubo panel escuela oficina"),
        A::CoolBox => ("Nevera portátil con compresor", "frigorifico frio camping"),
        A::ThermoelectricBox => {
            ("Nevera portátil, termoeléctrica", "frigorifico frio peltier camping")
        }
        A::Fridge40 => ("Frigorífico, 40 litros", "nevera refrigerador pequeno 12v"),
        A::Fridge80 => ("Frigorífico, 80 litros", "nevera refrigerador 12v"),
        A::Fridge130 => ("Frigorífico, 130 litros", "nevera refrigerador grande 12v"),
        A::Fridge220 => {
            ("Frigorífico con congelador, 220 litros", "nevera refrigerador grande 12v 24v")
        }
        A::FreezerBox => ("Congelador portátil, 40 litros", "nevera congelado"),
        A::Freezer80 => ("Congelador, 80 litros", "congelado 12v pescado"),
        A::HouseFridge => ("Frigorífico de casa", "nevera refrigerador heladera red cocina"),
        A::FridgeFreezer => {
            ("Frigorífico de casa con congelador", "nevera refrigerador heladera red cocina combi")
        }
        A::ChestFreezer => ("Arcón congelador", "congelado red"),
        A::DisplayCooler => {
            ("Vitrina de bebidas", "nevera frigorifico tienda puesto botellas bar cristal")
        }
        A::IceMaker => ("Máquina de hielo", "cubitos bebidas bar"),
        A::VaccineFridge => ("Frigorífico de vacunas", "medicinas nevera clinica cadena frio"),
        A::VaccineFreezer => {
            ("Congelador de vacunas", "medicinas clinica cadena frio acumuladores")
        }
        A::WaterPump => ("Bomba de agua", "grifo presion fregadero agua dulce"),
        A::ShowerPump => ("Bomba de desagüe de ducha", "aguas grises plato"),
        A::BilgePump => ("Bomba de achique", "barco sentina agua flotador"),
        A::ToiletPump => ("Inodoro eléctrico", "wc vater triturador vacio bano"),
        A::ToiletFan => ("Ventilador de inodoro seco", "wc compost ventilacion"),
        A::SumpPump => ("Bomba de sótano", "inundacion desague"),
        A::WellPump => ("Bomba de pozo", "sumergible perforacion agua profunda"),
        A::DcWellPump => ("Bomba solar de pozo", "sumergible perforacion riego ganado agua"),
        A::WaterMaker => ("Potabilizadora", "desaladora desalinizadora osmosis inversa mar"),
        A::WaterHeater => ("Calentador de agua", "termo caldera deposito ducha caliente"),
        A::WaterLamp => ("Lámpara de desinfección de agua", "uv ultravioleta potable filtro"),
        A::Kettle => ("Hervidor", "agua te cafe caliente pava"),
        A::TravelKettle => ("Hervidor de viaje", "agua te cafe poca potencia pequeno"),
        A::CoffeeMachine => ("Cafetera de filtro", "cafe goteo"),
        A::EspressoMachine => ("Cafetera exprés", "cafe espresso capsula"),
        A::Microwave => ("Microondas, 800 W de salida", "horno recalentar"),
        A::InductionHob => ("Placa de inducción", "cocina hornillo vitroceramica cocinar"),
        A::RiceCooker => ("Arrocera", "arroz vaporera olla"),
        A::Toaster => ("Tostadora", "pan tostadas desayuno"),
        A::Blender => ("Batidora", "licuadora mezcladora zumos"),
        A::AirFryer => ("Freidora de aire", "horno patatas"),
        A::SmallOven => ("Horno pequeño", "hornear grill pizza"),
        A::PressureCooker => ("Olla a presión eléctrica", "multiolla guiso lenta"),
        A::BreadMaker => ("Panificadora", "pan hornear maquina"),
        A::CookerHood => ("Campana de cocina", "extractor ventilador humo"),
        A::Dishwasher => ("Lavavajillas", "platos fregar"),
        A::HeaterFan => (
            "Calefacción de aire, diésel o gas",
            "combustible soplador ventilador estacionaria noche",
        ),
        A::WaterHeating => ("Calefacción de agua, diésel o gas", "combustible caldera radiador"),
        A::CirculationPump => ("Bomba de calefacción", "circulacion radiador caldera casa"),
        A::RoofFan => ("Ventilador de escotilla", "techo claraboya ventilacion"),
        A::CabinFan => ("Ventilador pequeño", "camarote mesa litera usb"),
        A::HouseFan => ("Ventilador de casa", "pie mesa"),
        A::CeilingFan => ("Ventilador de techo", "aspas"),
        A::AirConditioner => ("Aire acondicionado", "ac frio climatizador clima"),
        A::DcAirConditioner => ("Aire acondicionado, de batería", "ac frio 12v 24v 48v cc clima"),
        A::FanHeater => ("Calefactor", "calentador electrico estufa calor"),
        A::ElectricBlanket => ("Manta eléctrica", "cama calor calentada"),
        A::Dehumidifier => ("Deshumidificador", "humedad moho seco"),
        A::PelletStove => ("Estufa de pellets", "lena calor"),
        A::ExtractorFan => ("Extractor", "ventilador bano"),
        A::PhoneCharger => ("Cargador de teléfono", "movil celular smartphone usb"),
        A::TabletCharger => ("Cargador de tableta", "usb lector"),
        A::LaptopCharger => ("Ordenador portátil", "laptop computadora cargador usb-c trabajo"),
        A::CameraCharger => ("Cargador de cámara", "foto video bateria"),
        A::DroneCharger => ("Cargador de dron", "bateria"),
        A::BikeCharger => ("Cargador de bicicleta eléctrica", "ebike patinete"),
        A::Router => ("Rúter de internet", "wifi wi-fi router modem red"),
        A::MobileRouter => ("Rúter móvil", "wifi wi-fi router internet lte 4g 5g modem"),
        A::SatelliteTerminal => ("Internet por satélite", "antena terminal wifi"),
        A::DesktopComputer => ("Ordenador de sobremesa", "pc computadora torre"),
        A::Monitor => ("Monitor", "pantalla ordenador"),
        A::Printer => ("Impresora de tinta", "papel oficina escaner"),
        A::LaserPrinter => ("Impresora láser", "papel oficina copiadora"),
        A::TabletTrolley => ("Carro de tabletas", "escuela aula carga"),
        A::SmallComputer => ("Ordenador pequeño, siempre encendido", "placa servidor domotica"),
        A::CellCharger => ("Cargador de pilas", "aa aaa bateria nimh linterna"),
        A::SmallTelevision => ("Televisor pequeño", "tv tele 12v pantalla"),
        A::Television => ("Televisor", "tv tele pantalla red"),
        A::Projector => ("Proyector", "canon pelicula cine diapositivas"),
        A::PublicAddress => {
            ("Altavoces con amplificador", "megafonia sonido microfono musica escenario")
        }
        A::Speaker => ("Altavoz", "bocina parlante musica inalambrico sonido"),
        A::Radio => ("Radio, sonando", "musica estereo"),
        A::RadioStandby => ("Radio, apagada", "espera memoria estereo"),
        A::GamesConsole => ("Consola de juegos", "video videojuegos"),
        A::HairDryer => ("Secador de pelo", "cabello"),
        A::HairClipper => ("Cortapelos", "maquinilla barbero afeitar"),
        A::VacuumCleaner => ("Aspiradora", "limpiar polvo suelo"),
        A::WashingMachine => ("Lavadora", "ropa colada"),
        A::CampWasher => ("Lavadora de camping", "ropa colada pequena"),
        A::TumbleDryer => ("Secadora", "ropa colada bomba calor"),
        A::Iron => ("Plancha", "ropa vapor"),
        A::SewingMachine => ("Máquina de coser", "sastre tela vela"),
        A::ShaverCharger => ("Cepillo de dientes o afeitadora", "electrico bano cargador"),
        A::ChartPlotter => ("Plóter de cartas", "gps navegacion mapa pantalla"),
        A::Radar => ("Radar", "navegacion niebla"),
        A::Instruments => ("Sonda, corredera y viento", "instrumentos profundidad velocidad"),
        A::Autopilot => ("Piloto automático", "gobierno timon cana"),
        A::VhfListening => ("Radio marina, a la escucha", "vhf recepcion socorro"),
        A::VhfTransmitting => ("Radio marina, emitiendo", "vhf transmitir hablar socorro"),
        A::Transponder => ("Transpondedor de buque", "ais identificacion trafico"),
        A::AnchorLight => ("Luz de fondeo", "lampara led mastil noche ancla"),
        A::NavigationLights => ("Luces de navegación", "lampara led banda popa tope"),
        A::Windlass => ("Molinete de ancla", "cabrestante cadena"),
        A::BowThruster => ("Hélice de proa", "popa maniobra"),
        A::ElectricWinch => ("Cabrestante eléctrico", "winche escota driza rescate"),
        A::ElectricOutboard => ("Fueraborda eléctrico", "motor bote propulsion"),
        A::Alarm => ("Alarma antirrobo", "seguridad sirena robo"),
        A::GasDetector => ("Detector de gas", "alarma monoxido carbono co glp humo fuga"),
        A::Tracker => ("Localizador", "gps posicion robo"),
        A::SecurityCamera => ("Cámara de seguridad", "cctv video vigilancia fauna"),
        A::ControlPanel => ("Panel de control", "espera pantalla sensores vehiculo"),
        A::BatteryGauge => ("Medidor de batería", "monitor shunt derivador espera"),
        A::WeatherStation => ("Estación meteorológica", "sensor registrador viento lluvia datos"),
        A::RadioRepeater => ("Repetidor de radio", "rele radioaficionado mastil malla"),
        A::TransceiverListening => {
            ("Radio bidireccional, a la escucha", "radioaficionado hf transceptor recepcion")
        }
        A::TransceiverSending => {
            ("Radio bidireccional, emitiendo", "radioaficionado hf ssb transceptor transmitir")
        }
        A::HandheldRadio => ("Cargador de radio portátil", "walkie talkie"),
        A::DrillCharger => ("Cargador de baterías de herramienta", "taladro atornillador"),
        A::PowerDrill => ("Taladro", "martillo agujero herramienta"),
        A::CircularSaw => ("Sierra circular", "madera cortar herramienta"),
        A::AngleGrinder => ("Amoladora angular", "radial metal cortar disco herramienta"),
        A::Jigsaw => ("Sierra de calar", "madera cortar herramienta caladora"),
        A::Sander => ("Lijadora", "lijar madera herramienta"),
        A::SolderingIron => ("Soldador de estaño", "electronica reparar"),
        A::AirCompressor => ("Compresor de aire", "neumatico rueda inflar presion"),
        A::BenchMachine => ("Taladro de columna o esmeriladora", "torno afilar maquina"),
        A::ShopVacuum => ("Aspiradora de taller", "polvo humedo seco"),
        A::Welder => ("Soldadora", "soldar arco metal"),
        A::PlasticPrinter => ("Impresora 3D", "plastico filamento modelo"),
        A::HeatGun => ("Pistola de calor", "aire caliente decapador"),
        A::BreathingDevice => ("Equipo respiratorio para dormir", "cpap apnea mascara"),
        A::OxygenConcentrator => ("Concentrador de oxígeno", "o2 respirar pulmones"),
        A::PortableOxygen => ("Concentrador de oxígeno, portátil", "o2 respirar pulmones"),
        A::Nebuliser => ("Nebulizador", "inhalador asma"),
        A::SuctionPump => ("Aspirador de secreciones", "bomba succion clinica"),
        A::PatientMonitor => ("Monitor de paciente", "pulso oximetro ecg corazon clinica"),
        A::InfusionPump => ("Bomba de infusión", "gotero jeringa alimentacion clinica"),
        A::InfantWarmer => ("Cuna térmica", "bebe recien nacido incubadora clinica"),
        A::MedicineCooler => ("Nevera de medicinas", "insulina frio frigorifico"),
        A::Centrifuge => ("Centrifugadora", "laboratorio sangre"),
        A::Microscope => ("Microscopio", "laboratorio escuela"),
        A::BloodPressureMeter => ("Tensiómetro", "presion arterial manguito clinica"),
        A::Steriliser => ("Esterilizador de vapor", "autoclave instrumental clinica"),
        A::ExaminationLamp => ("Lámpara de exploración", "luz led dentista cirugia clinica"),
        A::Ultrasound => ("Ecógrafo", "ultrasonido embarazo clinica"),
        A::WheelchairCharger => ("Cargador de silla de ruedas", "movilidad electrica"),
        A::ElectricFence => ("Cerca eléctrica", "pastor ganado ovejas"),
        A::EggIncubator => ("Incubadora de huevos", "pollos aves gallinas"),
        A::PondPump => ("Bomba de estanque o acuario", "peces aire"),
        A::GrainMill => ("Molino de grano", "harina maiz"),
        A::Till => {
            ("Caja y terminal de tarjetas", "registradora pago balanza mercado puesto tienda")
        }
        A::FoodWarmer => ("Calientaplatos", "bano maria puesto bufe comida caliente"),
    }
}
