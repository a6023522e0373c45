//! Words for the working of a number: what a symbol means, what a step does, where a value comes from.

use crate::working::{Formula, Source, Symbol};

/// What a symbol means, in few words.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn symbol(symbol: Symbol) -> &'static str {
    use Symbol as S;
    match symbol {
        S::LoadPower => "potencia del consumo mientras funciona",
        S::BankVoltage => "tensión del banco",
        S::LoadCurrent => "corriente del consumo",
        S::Time => "duración",
        S::Charge => "carga",
        S::Quantity => "cuántos",
        S::HoursOn => "horas encendido al día",
        S::LoadEnergy => "energía en el consumo en un día medio",
        S::BankEnergy => "energía en el banco en un día medio",
        S::GrowingLoss => "pérdidas del inversor que crecen con su salida, entre la salida",
        S::NominalVoltage => "tensión nominal del banco",
        S::LoadDay => "carga de un consumo en un día medio",
        S::IdlePower => "consumo en vacío del inversor",
        S::InverterDay => "carga del consumo en vacío del inversor",
        S::StandingDay => "carga del consumo permanente",
        S::ProtectionDay => "carga de la protección de la batería",
        S::DayTotal => "carga usada en un día medio",
        S::AutonomyDays => "días sin ninguna fuente",
        S::Tilt => "inclinación del campo",
        S::Azimuth => "orientación del campo, en sentido horario desde el norte",
        S::PlaneIrradiation => "luz en el plano del campo en un día",
        S::ArrayPower => "potencia nominal del campo",
        S::DirtLoss => "pérdida por suciedad",
        S::AgeingLoss => "pérdida por la edad",
        S::OtherLoss => "otras pérdidas",
        S::CableLoss => "pérdida en el cable",
        S::RunningShare => "lo que dejan el calor, la luz escasa y el regulador",
        S::ArrayYield => "energía del campo en un día",
        S::ChargingVoltage => "tensión del banco mientras se carga",
        S::ArrayCharge => "carga del campo en un día",
        S::SolarEnergy => "energía del sol por reguladores MPPT",
        S::SeriesCharge => "carga del sol por reguladores en serie",
        S::SolarDay => "carga del sol en un día",
        S::ChargeEfficiency => "parte de la carga metida que vuelve a salir",
        S::GainKept => "carga que entró y se puede usar",
        S::Balance => "lo que el día deja, o lo que le falta",
        S::Demand => "potencia de todos los consumos en el banco",
        S::StandingCurrent => "consumo permanente",
        S::LoadsCurrent => "corriente de todos los consumos",
        S::SolarCurrent => "corriente del sol",
        S::EngineCurrent => "corriente del motor",
        S::ShoreCurrent => "corriente de la toma de red",
        S::TurbineCurrent => "corriente del viento o del agua",
        S::GeneratorCurrent => "corriente del generador",
        S::SourcesCurrent => "corriente que ofrecen todas las fuentes",
        S::ProtectionCurrent => "consumo de la protección de la batería",
        S::NetCurrent => "corriente hacia el banco; desde él si es negativa",
        S::ChargeBefore => "estado de carga antes",
        S::ChargeStored => "cambio de la carga almacenada",
        S::ChargeState => "estado de carga después",
        S::SolarCharge => "carga del sol",
        S::EngineCharge => "carga del motor",
        S::ShoreCharge => "carga de la toma de red",
        S::TurbineCharge => "carga del viento o del agua",
        S::GeneratorCharge => "carga del generador",
        S::GeneratorHours => "horas que funciona el generador al día",
        S::FuelPerHour => "combustible en una hora",
        S::FuelPerEnergy => "combustible por kilovatio hora",
        S::Fuel => "combustible en un día",
        S::OwnStanding => "consumo permanente introducido",
        S::ControllerDraw => "consumo de los reguladores de carga",
        S::SearchPower => "consumo del inversor mientras busca consumos",
        S::ChargeCame => "carga que entró",
        S::ChargingLoss => "carga perdida al cargar",
        S::SelfDischarge => "carga perdida en reposo",
        S::ProtectionCharge => "carga que toma la protección de la batería",
        S::ChargeLost => "carga perdida",
        S::LoadCharge => "carga dada a los consumos",
        S::PlateVoltage => "tensión de la placa",
        S::PlateCurrent => "corriente de la placa",
        S::LabelEnergy => "energía de un año según la etiqueta",
        S::Year => "horas de un año",
        S::Duty => "ciclo de trabajo: parte del tiempo encendido en que funciona",
        S::OutputPower => "potencia que sale",
        S::OutputEfficiency => "parte de la entrada que sale",
        S::CoolingDuty => "ciclo de trabajo del compresor con este aire",
        S::AirTemperature => "temperatura del aire",
        S::InsideTemperature => "temperatura mantenida dentro",
        S::CondenserLift => "cuánto más caliente que el aire está el condensador",
        S::EvaporatorTemperature => "temperatura del evaporador",
        S::ReferenceTemperature => "temperatura del aire para la que se indicó el ciclo",
        S::InverterOutput => "salida del inversor",
        S::InverterRated => "potencia continua del inversor",
        S::InverterInput => "entrada del inversor",
        S::LossIdle => "pérdida en vacío entre la potencia continua",
        S::LossLinear => "pérdida proporcional a la salida",
        S::LossSquare => "pérdida proporcional al cuadrado de la salida",
        S::RatedCapacity => "capacidad nominal del banco, la más lenta si se indican varias",
        S::FastCapacity => "capacidad nominal en menos horas",
        S::FastHours => "las menos horas para las que hay capacidad nominal",
        S::StatedCapacity => "una de las capacidades nominales",
        S::RatingHours => "horas de una de las capacidades nominales",
        S::FittedCapacity => "lo que da en estas horas la batería ajustada",
        S::RatingDeviation => "desviación de lo ajustado frente a lo nominal",
        S::WholeOfWells => {
            "toda la carga, disponible y ligada, ajustada a las capacidades nominales"
        }
        S::ShareOfWells => "parte de ella disponible con la batería llena, ajustada",
        S::RateOfWells => "ritmo al que la carga ligada queda disponible, ajustado",
        S::ChargeAtCutOff => "carga que queda cuando la tensión en reposo es la de corte",
        S::Health => "capacidad que ha dejado la edad",
        S::AgedCapacity => "capacidad con la edad",
        S::DischargeCurrent => "corriente media de descarga, ponderada por la carga",
        S::HourRate => "horas para las que se da la capacidad nominal",
        S::RateExponent => "exponente de la pérdida de capacidad con la corriente",
        S::RateFactor => "parte de la capacidad que deja la corriente",
        S::BankTemperature => "temperatura del banco",
        S::DischargeHours => "horas que dura el banco con la corriente media",
        S::ColdFactor => "parte de la capacidad que deja la temperatura",
        S::FullCapacity => "carga entre lleno y vacío",
        S::Reserve => "parte guardada en reserva",
        S::UsableCapacity => "carga entre lleno y la reserva",
        S::WornOut => "salud con la que un banco se da por gastado",
        S::CycleWear => "parte de su vida que gasta un año de ciclos",
        S::CalendarWear => "parte de su vida que gasta un año de reposo",
        S::YearsLeft => "años hasta que el banco está gastado",
        S::Absorption => "tensión que mantienen los cargadores a 25 °C",
        S::Compensation => "cuánto la bajan por cada grado",
        S::StatedAt => "temperatura para la que se indica esa tensión",
        S::HottestBank => "lo más caliente que se pone el banco en un día típico",
        S::HotAbsorption => "la tensión más baja que mantienen los cargadores",
        S::FullVoltage => "tensión desde la que el medidor puede decir lleno",
        S::TailShare => {
            "corriente con la que termina la carga, sobre la capacidad nominal en una hora"
        }
        S::GaugeTail => "la misma, sobre la capacidad que se indicó al medidor",
        S::WarnCharge => "estado de carga en el que avisa el medidor",
        S::ShownCharge => "estado de carga que muestra el medidor",
        S::ReadCurrent => "corriente que lee el medidor, hacia el banco",
        S::MeanCurrent => "media de la corriente que lee el medidor, desde el banco",
        S::CountWeight => {
            "lo que cuenta un amperio-hora: la eficiencia al entrar, uno o más al salir"
        }
        S::GaugeCapacity => "capacidad indicada al medidor",
        S::MonthlyLoss => "lo que descuenta el medidor por reposo en un mes de 730 h",
        S::GaugeFloor => "estado de carga hasta el que se da el tiempo restante",
        S::TimeLeft => "tiempo restante según el medidor",
        S::PowerFactor => "potencia entre voltios por amperios del consumo",
        S::LeastThreshold => {
            "el umbral mínimo, por encima del error de cero habitual de un medidor"
        }
        S::Threshold => "corriente por debajo de la cual el medidor no cuenta nada",
        S::Latitude => "latitud, positiva al norte",
        S::Longitude => "longitud, positiva al este",
        S::DayOfYear => "día del año, con su fracción en hora universal",
        S::DayAngle => "ángulo del año",
        S::Declination => "declinación del sol",
        S::SunsetHourAngle => "ángulo horario de la puesta de sol",
        S::ExtraterrestrialNormal => "irradiancia fuera del aire, de cara al sol",
        S::DailyExtraterrestrial => "irradiación de un día fuera del aire, en horizontal",
        S::UseShare => "consumo real sobre el del plan",
        S::CountedOut => "contado al salir del banco en las noches",
        S::SunByNight => "lo que dio el sol en esas horas",
        S::PlannedUse => "lo que el plan consume en esas noches",
        S::CapacityShare => "capacidad real sobre la del plan",
        S::RealCapacity => "carga real entre lleno y vacío",
        S::HiddenCurrent => "corriente que no pasa por el shunt",
        S::HiddenHours => "horas al día en que circula",
        S::PastShunt => "carga al día que no pasa por el shunt",
        S::Clearness => "claridad del cielo",
        S::DailyIrradiation => "irradiación de un día en horizontal: horas de sol pico",
        S::DiffuseShare => "parte difusa de la irradiación",
        S::RunCurrent => "corriente del tramo que fluye durante horas",
        S::AllOut => "corriente de todos los consumos a la vez",
        S::AllIn => "corriente de todos los cargadores a la vez",
        S::ChargerLimit => "límite del cargador o regulador",
        S::FullEfficiency => "rendimiento del inversor a plena potencia",
        S::CutOffVoltage => "tensión a la que se cortan los consumos",
        S::BatteryStrings => "ramas de baterías en paralelo",
        S::ModuleShort => "corriente de cortocircuito de un módulo",
        S::ModuleStrings => "ramas de módulos en paralelo",
        S::ModuleOpen => "tensión de circuito abierto de un módulo",
        S::ModulesInRow => "módulos en una rama",
        S::OpenPerKelvin => "variación de esa tensión por cada kelvin",
        S::RecordLow => "temperatura mínima histórica",
        S::ColdVoltage => "tensión de circuito abierto de una rama en frío",
        S::LeastFuse => "lo mínimo que debe soportar el fusible",
        S::TableAmpacity => "lo que la tabla deja llevar al conductor",
        S::BundleFactor => "parte que deja el agrupamiento",
        S::AmbientFactor => "parte que deja el aire caliente",
        S::SpaceFactor => "lo máximo que deja el entorno",
        S::Ampacity => "lo que el conductor puede llevar ahí",
        S::TerminalAmpacity => "lo que permiten sus bornes",
        S::InsulationTemperature => "temperatura para la que está hecho el aislamiento",
        S::AmbientTemperature => "aire más caliente en torno al tramo",
        S::TableTemperature => "aire para el que está hecha la tabla",
        S::ConductorTemperature => "temperatura del conductor con esa corriente",
        S::OneWayLength => "longitud del tramo, solo ida",
        S::CrossSection => "sección del calibre",
        S::ModulePower => "potencia de un módulo",
        S::BestVoltage => "tensión de un módulo en su punto óptimo",
        S::WireResistance => "resistencia del tramo, ida y vuelta",
        S::WorkingCurrent => "corriente con la que se calcula la caída",
        S::WorkingVoltage => "tensión que le corresponde",
        S::WireDrop => "caída de tensión en el tramo",
        S::DropShare => "caída como parte de la tensión",
        S::WireLoss => "calor en el tramo",
        S::HighestVoltage => "tensión más alta del banco",
        S::LeastResistance => "resistencia más baja de un banco así, nuevo y lleno",
        S::ShortCircuit => "corriente de cortocircuito del banco",
        S::CableResistance => "resistencia del cable frío entre banco y fusible",
        S::ShortCircuitBehind => "corriente de cortocircuito tras ese cable",
        S::LeastShunt => "valor mínimo del derivador",
    }
}

/// The title of a step.
#[must_use]
pub fn formula(formula: Formula) -> &'static str {
    use Formula as F;
    match formula {
        F::LoadCurrent => "Corriente de un consumo",
        F::PlatePower => "Potencia según la placa",
        F::LabelPower => "Potencia según la etiqueta energética",
        F::InputPower => "Potencia de entrada a partir de la salida",
        F::CoolingDuty => "Ciclo de trabajo del compresor",
        F::InverterInput => "Entrada del inversor",
        F::ExponentOfRatings => {
            "Exponente a partir de la capacidad nominal más rápida y la más lenta"
        }
        F::CapacityOfWells => "Lo que da la batería ajustada en las horas de una capacidad nominal",
        F::CapacityInHours => "Lo que da la ley en las horas de una capacidad nominal",
        F::RatingDeviation => "Desviación de la capacidad nominal",
        F::AgedCapacity => "Capacidad con la edad",
        F::RateFactor => "Pérdida de capacidad por el ritmo de descarga",
        F::ColdFactor => "Pérdida de capacidad por el frío, según la norma del plomo-ácido",
        F::ColdFactorTypical => "Pérdida de capacidad por el frío, típica de la química",
        F::FullCapacity => "Capacidad completa",
        F::FullCapacityOfWells => {
            "Capacidad completa; lo que deja una descarga rápida llega después"
        }
        F::UsableCapacityOfWells => {
            "Capacidad utilizable, hasta donde la corriente llega de una vez"
        }
        F::UsableCapacity => "Capacidad utilizable",
        F::YearsLeft => "Años hasta el 80 % de la capacidad",
        F::LoadEnergy => "Energía en el consumo",
        F::EnergyDirect => "Energía en el banco",
        F::EnergyByInverter => "Energía en el banco, a través del inversor",
        F::LoadCharge => "Carga del consumo",
        F::InverterIdle => "Carga del consumo en vacío del inversor",
        F::InverterSearch => "Carga del consumo en vacío y de búsqueda del inversor",
        F::StandingWithControllers => "Consumo permanente con los reguladores de carga",
        F::StandingCharge => "Carga del consumo permanente",
        F::ProtectionDay => "Carga de la protección de la batería",
        F::DayTotal => "Usado en un día medio",
        F::Autonomy => "Días de autonomía",
        F::PlaneIrradiation => "Luz en el plano del campo",
        F::ArrayYield => "Producción del campo",
        F::ArraysEnergy => "Energía de todos los campos con reguladores MPPT",
        F::ArrayCharge => "Carga de un campo con regulador en serie",
        F::ArraysCharge => "Carga de todos los campos con reguladores en serie",
        F::SolarDay => "Carga del sol",
        F::GainKept => "Lo que entra en un día medio",
        F::Balance => "Balance del día",
        F::GeneratorDay => "Horas del generador en un día medio",
        F::GeneratorFuel => "Combustible del generador en un día medio",
        F::LoadsCurrent => "Corriente de todos los consumos",
        F::SourcesCurrent => "Corriente de todas las fuentes",
        F::NetCurrent => "Corriente hacia el banco",
        F::ChargeAfter => "Estado de carga después del paso",
        F::ChargeCame => "Carga que entró",
        F::ChargeLost => "Carga que se perdió",
        F::ChargeAtEnd => "Estado de carga al final",
        F::Charge => "Carga que se movió",
        F::HotAbsorption => "Tensión más baja que mantienen los cargadores",
        F::FullVoltage => "Tensión desde la que el medidor puede decir lleno",
        F::GaugeTail => "Corriente final para el medidor",
        F::WarnCharge => "Dónde avisa el medidor",
        F::GaugeCount => "Lo que muestra el medidor tras un paso",
        F::GaugeTimeLeft => "Tiempo restante según el medidor",
        F::RunningCurrent => "Corriente del consumo cuando funciona solo",
        F::RunningByInverter => "Corriente del consumo solo, a través del inversor",
        F::Threshold => "Umbral del medidor",
        F::DayAngle => "Ángulo del año",
        F::Declination => "Declinación del sol",
        F::ExtraterrestrialNormal => "Irradiancia fuera del aire",
        F::SunsetHourAngle => "Ángulo horario de la puesta de sol",
        F::DailyExtraterrestrial => "Irradiación de un día fuera del aire",
        F::UseByReadings => "Consumo según las lecturas",
        F::CapacityByReadings => "Capacidad según las lecturas",
        F::PastShunt => "Carga que no pasa por el shunt",
        F::GridClearness => "Claridad según el clima del lugar",
        F::OwnClearness => "Claridad según tus propias horas de sol pico",
        F::DailyIrradiation => "Horas de sol pico en horizontal",
        F::DiffuseShare => "Parte difusa de la luz",
        F::DiffuseShareWinter => "Parte difusa de la luz, en invierno",
        F::InverterCurrent => "Inversor a plena potencia y con la tensión más baja",
        F::LoadAtCutOff => "Consumo con la tensión más baja",
        F::ChargerAtLimit => "Cargador en su límite",
        F::RunSum => "Todos los consumos del cuadro a la vez",
        F::AllOut => "Todos los consumos a la vez",
        F::AllIn => "Todos los cargadores a la vez",
        F::BankCurrent => "Corriente del banco, la mayor de las dos",
        F::StringCurrent => "Una rama de baterías si falta otra",
        F::ArrayCurrent => "Campo con luz al borde de las nubes",
        F::ArrayBestCurrent => "Corriente del campo en su punto óptimo",
        F::ArrayHeldCurrent => "Corriente del campo a la tensión del banco",
        F::ArrayBestVoltage => "Tensión del campo en su punto óptimo",
        F::ColdVoltage => "Tensión de circuito abierto en frío",
        F::LeastFuse => "El fusible mínimo",
        F::AmbientFactor => "Lo que deja el aire caliente",
        F::Ampacity => "Lo que puede llevar el conductor",
        F::AmpacityLand => "Lo que pueden llevar conductor y bornes",
        F::ConductorTemperature => "Temperatura del conductor",
        F::WireResistance => "Resistencia del cable trenzado",
        F::WireDrop => "Caída de tensión",
        F::WireLoss => "Calor en el cable",
        F::DropShare => "Caída como parte de la tensión",
        F::ShortCircuit => "Corriente de cortocircuito del banco",
        F::ShortCircuitBehind => "Corriente de cortocircuito tras el cable",
        F::LeastShunt => "El derivador mínimo",
    }
}

/// Where a formula or a value comes from.
#[must_use]
pub fn source(source: Source) -> String {
    let words = match source {
        Source::Plan => "tu plan",
        Source::Steps => "sumado por cuartos de hora, como los da la simulación",
        Source::Readings => "las lecturas que apuntaste",
        Source::Definition => "se deduce de la definición",
        Source::Typical => "un valor típico del oficio; manda la ficha del fabricante",
        Source::Choice => "una elección de este planificador, explicada en su documentación",
        // Works are cited by their own titles; what is said around them is translated.
        Source::Peukert => {
            "Peukert 1897, Elektrotechnische Zeitschrift 18:287, en la forma con las horas de referencia"
        }
        Source::StandardCold => {
            "IEEE Std 450/485, corrección de la capacidad por temperatura; descarga lenta según Copetti, Lorenzo & Chenlo 1993, Prog. Photovolt. 1:283"
        }
        Source::RestVoltageTable => {
            "Tabla publicada de tensiones en reposo por estado de carga a 26,7 °C"
        }
        Source::CellMeasurement => {
            "Tensión en circuito abierto medida con poca corriente en una celda comercial"
        }
        Source::SchmidtSauer => {
            "Schmidt & Sauer 1996, Sonnenenergie 21(4): pérdida = p0 + k1·p + k2·p²"
        }
        Source::HeatPump => {
            "Entrada de calor dividida por el rendimiento ideal entre evaporador y condensador; compárese Harrington, Aye & Fuller 2018, Applied Energy 211:346"
        }
        Source::ClimateGrid => {
            "MERRA-2 2011-2015 (NASA), corregido con estaciones de año típico; océanos según Esbensen & Kushnir 1981; temperatura ERA5 2000-2025 (Servicio de Cambio Climático de Copernicus)"
        }
        published => published.citation().unwrap_or_default(),
    };
    words.to_owned()
}

/// Where a value comes from that an earlier step made; steps count from 1.
#[must_use]
pub fn from_step(number: usize) -> String {
    format!("calculado en el paso {number}")
}
