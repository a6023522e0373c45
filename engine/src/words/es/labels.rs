//! Titles, labels, hints and buttons of the page.

use crate::words::Label;

/// What a label says.
#[must_use]
pub fn label(label: Label) -> &'static str {
    match label {
        Label::Units => "Unidades",
        Label::Habits => "Unidades y costumbres",
        Label::HabitsHint => {
            "Se guardan en este dispositivo. Cambian cómo se dicen los datos, y ningún plan."
        }
        Label::TemperatureHabit => "Temperaturas",
        Label::DegreesCelsius => "°C",
        Label::DegreesFahrenheit => "°F",
        Label::ClockHabit => "Reloj",
        Label::Hours24 => "24 horas",
        Label::Hours12 => "12 horas",
        Label::WeekHabit => "La semana empieza en",
        Label::LeadingHabit => "Carga y energía",
        Label::LeadsAh => "amperios hora (Ah)",
        Label::LeadsWh => "vatios hora (Wh)",
        Label::DistanceHabit => "Distancias",
        Label::Kilometres => "km",
        Label::Miles => "millas",
        Label::LanguageWord => "Idioma",
        Label::InWh => "Entra, Wh",
        Label::OutWh => "Sale, Wh",
        Label::BalanceWh => "Balance, Wh",
        Label::UsableWh => "Utilizable, Wh",
        Label::MonthLegendWh => "Wh al día, entra y sale; elige un mes",
        Label::MeanTemperatureFahrenheit => "°F",
        Label::NoPlaceYet => "aún sin lugar",
        Label::NotBeforeEmpty => "se vacía antes",
        Label::MeanTemperature => "°C",
        Label::MeanWeatherPercent => "Tiempo medio, %",
        Label::WithoutSunPercent => "Sin nada de sol, %",
        Label::Hour => "Hora",
        Label::InWatts24 => "Entra, W",
        Label::OutWatts24 => "Sale, W",
        Label::InAh => "Entra, Ah",
        Label::OutAh => "Sale, Ah",
        Label::BalanceAh => "Balance, Ah",
        Label::UsableAh => "Utilizable, Ah",
        Label::InShort => "En breve",
        Label::AbsorptionHint => "Como está ajustado el cargador, a 25 °C.",
        Label::AddArray => "Añadir un campo",
        Label::AddByHand => "Escríbelo tú",
        Label::AddHours => "Añadir horas",
        Label::AddSomething => "Añadir algo",
        Label::Ageing => "Años al sol",
        Label::AlbedoHint => {
            "Hierba y tierra 20 %, arena 30 %, agua 7 %, nieve vieja 50 %, nieve fresca 80 %."
        }
        Label::AlternatorHint => {
            "Lo que da como máximo el cargador del motor. Indica abajo las horas de marcha."
        }
        Label::Always => "Siempre",
        Label::AsATable => "En una tabla",
        Label::AtTheseHours => "A estas horas",
        Label::Autonomy => "Días de autonomía",
        Label::AutonomyHint => {
            "La carga utilizable dividida por el consumo de un día medio, sin que entre nada."
        }
        Label::AzimuthHint => {
            "0 es el norte, 90 el este, 180 el sur, 270 el oeste. Un campo plano no mira a ninguna parte."
        }
        Label::BankStands => "Dónde está el banco",
        Label::InRealWeather => "Con el tiempo que puede hacer",
        Label::WeatherNeedsPlace => {
            "Esto no es para ningún lugar concreto. Di cuál en «¿Dónde y cuándo?», y se probará con tiempo real."
        }
        Label::WeatherComing => "Se están probando cuatrocientos años de tiempo con este plan…",
        Label::EightOfTen => "Ocho de cada diez casos",
        Label::OfTenYears => "De cada diez años, sobre la reserva",
        Label::EightOfTenPercent => "Ocho de cada diez, %",
        Label::BeingWorkedOut => "Se está calculando…",
        Label::BestPoint => "Tensión en el punto óptimo",
        Label::BlankPlan => "Un plan en blanco",
        Label::ByEnergyLabel => "Por la etiqueta energética",
        Label::ByHour => "Cambia según la hora del día",
        Label::ByInverter => "Red, por el inversor",
        Label::ByOutput => "Por lo que sale, como en un microondas",
        Label::Cable => "Cable",
        Label::CapacityHint => "Los amperios hora de la etiqueta de una batería.",
        Label::Cautions => "A tener en cuenta",
        Label::ChargeController => "Regulador de carga",
        Label::ChargeLimit => "Límite de carga de una batería",
        Label::ChargerLimit => "Salida máxima del cargador",
        Label::Chemistry => "Clase de batería",
        Label::ClockHint => {
            "Hora estándar menos hora universal, en minutos: 60 en Berlín, −300 en Nueva York, 345 en Katmandú."
        }
        Label::Close => "Cerrar",
        Label::ControllerLimit => "Salida máxima del regulador",
        Label::ControllerVoltageHint => {
            "De su ficha. Sin ella no se comprueba la tensión del campo en frío."
        }
        Label::CoordinatesAndClock => "Coordenadas y reloj",
        Label::CopyLink => "Copiar el enlace",
        Label::CopyPlan => "Hacer una copia",
        Label::CopyRefused => {
            "El navegador no ha dejado copiar. Marca el enlace en el recuadro y cópialo a mano."
        }
        Label::Counted => "Cuenta en el plan",
        Label::CutOffHint => "De su protección o del inversor, la que sea mayor.",
        Label::DayInWords => "Lo que entra y lo que sale a lo largo de un día típico",
        Label::DayLegend => "arriba entra, abajo sale",
        Label::DaysAndMonths => "Días y meses",
        Label::DaysOfTheWeek => "Días de la semana",
        Label::Delete => "Borrar",
        Label::DeleteArray => "Borrar este campo",
        Label::DeratingHint => {
            "Un alternador caliente suele dar un tercio menos de lo que dice su placa."
        }
        Label::Dirt => "Suciedad",
        Label::DischargeLimit => "Límite de descarga de una batería",
        Label::Download => "Guardar en un archivo",
        Label::Duplicate => "Duplicar",
        Label::DutyHint => {
            "La parte del tiempo en que de verdad funciona: un compresor descansa entre medias."
        }
        Label::Efficiency => "Rendimiento según la ficha",
        Label::EfficiencyFull => "Rendimiento a plena carga",
        Label::EfficiencyHalf => "Rendimiento a media carga",
        Label::Engine => "Motor",
        Label::FedBy => "Alimentado por",
        Label::FirstDay => "Primer día",
        Label::FollowsTheHeat => "Enfría, y trabaja más con el calor",
        Label::From => "Desde",
        Label::Generator => "Generador",
        Label::GeneratorHint => "Lo que da su cargador. Indica abajo cuándo puede funcionar.",
        Label::HaveLinkOrFile => "Tengo un enlace o un archivo",
        Label::HealthHint => "Cuánta capacidad ha dejado la edad. Un banco nuevo tiene el 100 %.",
        Label::HeatIsComputed => {
            "El calor de los módulos se calcula hora a hora a partir del tiempo."
        }
        Label::HereName => "Aquí",
        Label::HorizonAround => "Colinas y árboles alrededor",
        Label::HorizonHint => {
            "La altura a la que llegan, en sentido horario desde el norte. Tapan el sol y parte del cielo."
        }
        Label::HorizonIsKnown => "El horizonte no es llano",
        Label::HourRateHint => {
            "Las horas en que se midió la capacidad de la etiqueta; en plomo lo habitual es 20."
        }
        Label::HoursPerDay => "Horas al día",
        Label::HowAutonomy => "¿Cómo se calculan los días de autonomía?",
        Label::HowBudget => "¿Cómo se calcula el consumo diario?",
        Label::HowLong => "¿Cuánto durará?",
        Label::HowMonth => "¿Cómo se calcula el balance de este mes?",
        Label::HowUsable => "¿Cómo se calcula la carga utilizable?",
        Label::HowWorkedOut => "¿Cómo se calcula esto?",
        Label::IdleHint => "Lo que consume encendido y sin nada conectado.",
        Label::InADay => "Entra al día",
        Label::InAhADay => "En amperios hora al día",
        Label::InVoltsAndAmps => "En voltios y amperios",
        Label::InWatts => "En vatios",
        Label::InsideHint => {
            "La habitación, cabina o vehículo nunca baja de aquí. Lo notan los frigoríficos y un banco que esté dentro."
        }
        Label::InverterAwake => "Inversor, despierto",
        Label::InverterIsOn => "El inversor está encendido",
        Label::KeepsUp => "Alcanza de media",
        Label::KeptAt => "A su propia temperatura",
        Label::KeptInside => "Dentro",
        Label::KeptOutside => "Fuera",
        Label::LabelHint => "La energía de un año, con todas sus pausas.",
        Label::LastPlan => "Mi último plan",
        Label::LatitudeHint => "El norte es positivo, el sur negativo.",
        Label::LeftAtHome => "se queda en casa",
        Label::LinkCopied => "El enlace está en el portapapeles.",
        Label::LinkHint => {
            "Todo el plan está en el enlace. No se envía nada a ninguna parte hasta que lo envíes tú."
        }
        Label::LinkToPlan => "Enlace a este plan",
        Label::LocationTaken => "El plan está ahora donde estás tú. Comprueba abajo el reloj.",
        Label::LongitudeHint => "El este es positivo, el oeste negativo.",
        Label::LooksForLoads => "Busca consumos",
        Label::LossesAndSheet => "Pérdidas y ficha del módulo",
        Label::MayBeUsed => "Utilizable",
        Label::MeanWeather => "Tiempo medio",
        Label::Menu => "Plan",
        Label::ModulesInSeries => "Módulos en serie",
        Label::Month => "Mes",
        Label::MonthByMonth => "Mes a mes",
        Label::MonthLegend => "Ah al día, entra y sale; elige un mes",
        Label::MonthsOfTheYear => "Meses del año",
        Label::More => "Más",
        Label::MoreOfTheBank => "Edad, límites y pérdidas",
        Label::MountedFlush => "Pegado al techo",
        Label::MountedOpen => "Con aire detrás",
        Label::Mounting => "Montaje",
        Label::MoveDown => "Bajar",
        Label::MoveUp => "Subir",
        Label::Mppt => "Seguidor del punto de máxima potencia (MPPT)",
        Label::Name => "Nombre",
        Label::NameOfPlan => "Nombre de este plan",
        Label::NewPlan => "Empezar un plan nuevo",
        Label::NewVersion => "Hay una versión nueva. Tus planes se quedan como están.",
        Label::NoClimate => {
            "La página no ha podido cargar el clima con el que calcula. Tus planes están a salvo en este dispositivo."
        }
        Label::NoLocation => {
            "El dispositivo no ha dicho dónde está. Busca una población o escribe las coordenadas."
        }
        Label::NoSuchTown => {
            "Aquí no se conoce ese lugar. Elige una población cercana o escribe las coordenadas."
        }
        Label::NoTowns => {
            "No se ha podido cargar la lista de poblaciones. Abajo puedes escribir las coordenadas."
        }
        Label::NotWorkedOut => {
            "El navegador no ha dejado calcular esto. Puede ayudar recargar la página."
        }
        Label::Nothing => "nada todavía",
        Label::NothingFound => {
            "No hay nada parecido en la lista. Prueba con otra palabra o escríbelo tú."
        }
        Label::OnTheBank => "El banco, en corriente continua",
        Label::OnThisDevice => "En este dispositivo",
        Label::OnlyWithLoads => "Solo mientras funcionan sus consumos",
        Label::OpenCircuit => "Tensión en circuito abierto",
        Label::OpenFile => "Abrir un archivo",
        Label::OpenLink => "Abrir el enlace",
        Label::OpenLinkOrFile => "Abrir un enlace o un archivo",
        Label::OpenNow => "(abierto ahora)",
        Label::OpenPlan => "Abrir",
        Label::OtherLosses => "Otras pérdidas",
        Label::OutADay => "Sale al día",
        Label::OutputHint => {
            "La parte de la entrada que se vuelve calor; un 64 % en un microondas."
        }
        Label::OwnYear => "Tu año de tiempo",
        Label::ReplayHint => {
            "Un año de datos horarios en el formato abierto EPW. Se queda en esta página mientras está abierta; no se guarda ni se comparte."
        }
        Label::ReplayYear => "Repetir un año de tiempo (archivo EPW)",
        Label::TakeYearAway => "Quitar el año",
        Label::OwnAir => "Usar temperaturas propias",
        Label::OwnSun => "Usar horas de sol pico propias",
        Label::PartMissed => "Esta parte de la página no se ha podido cargar. ¿Hay red?",
        Label::PasteLink => "Pega un enlace",
        Label::PeakLimit => "Límite de pico de una batería",
        Label::PeakSunHours => "Horas de sol pico al día",
        Label::PlaceName => "Nombre del lugar",
        Label::Plans => "Planes",
        Label::PowerFactorHint => {
            "En la red: 1 en calentadores, de 0,6 a 0,8 en motores, de 0,5 a 0,7 en fuentes pequeñas."
        }
        Label::PowerIsStated => "Cómo se indica la potencia",
        Label::ProtectionCircuits => "Circuitos de protección",
        Label::Pwm => "Regulación en serie (PWM)",
        Label::Questions => "Tu plan",
        Label::RatingsAndSetPoints => "Capacidades nominales y tensiones de consigna",
        Label::ReadTheCurve => "Leer la curva hora a hora",
        Label::RecordLowHint => {
            "La noche más fría de la que hay registro. Con el frío sube la tensión de un campo, y puede destruir su regulador."
        }
        Label::Redo => "Rehacer",
        Label::ReferenceHint => {
            "El aire para el que se indicó el ciclo o la etiqueta; lo habitual es 25 °C."
        }
        Label::RemainingTime => "Estado de carga desde ahora",
        Label::RemoveHours => "Quitar estas horas",
        Label::ReserveHint => {
            "La carga que quieres dejar en el banco. Si dejas un 20 %, la profundidad de descarga es del 80 %."
        }
        Label::ReserveWord => "Reserva",
        Label::SaveFile => "Guardar en un archivo",
        Label::SaveRefused => "El navegador no ha dejado guardar un archivo.",
        Label::ScrubHint => "Desliza por la curva para leer cualquier hora.",
        Label::SearchAppliance => "¿Qué aparato usas?",
        Label::SearchTown => "Busca una población, isla, estación o mar",
        Label::SecondCapacityHint => "Las fichas indican varias, cada una con sus horas.",
        Label::Shade => "Sombra",
        Label::ShadeAfternoon => "Después de las 14 h solares",
        Label::ShadeHint => "La parte de la luz que quitan un mástil, unos árboles o unas colinas.",
        Label::ShadeMidday => "De 10 a 14 h solares",
        Label::ShadeMorning => "Antes de las 10 h solares",
        Label::Share => "Compartir",
        Label::SheetFirst => "Los valores típicos están en gris. Manda la ficha del fabricante.",
        Label::Shore => "Toma de puerto o red",
        Label::ShoreHint => {
            "Lo que da como máximo el cargador de red. Indica abajo cuándo hay red."
        }
        Label::SmallPrint => {
            "Son cifras para planificar, no el proyecto de una instalación. Las baterías, los cables y los gases pueden arder: sigue las instrucciones de los fabricantes y las normas locales, y deja que un profesional autorizado revise lo que lleve mucha corriente o tensión de red."
        }
        Label::StandingDraw => "Consumo permanente",
        Label::StandingHint => {
            "Todo lo pequeño que está siempre encendido, junto: relojes, alarmas, sensores."
        }
        Label::StartTime => "Hora",
        Label::StartWords => {
            "Elige lo más parecido y mira cuánto dura. Todo se puede cambiar, y nada sale de este dispositivo."
        }
        Label::StorageRefused => {
            "Este dispositivo no guarda el plan: su memoria está llena o no se permite. Guárdalo en un archivo o copia el enlace antes de irte."
        }
        Label::StoredPlanUnreadable => {
            "Tu último plan no se ha podido leer. Sigue intacto en Planes."
        }
        Label::StringsInParallel => "Cadenas en paralelo",
        Label::SummerTime => "Horario de verano",
        Label::SunAndTemperature => "Sol y temperatura, mes a mes",
        Label::SurgeHint => {
            "Cuántas veces su potencia toma al arrancar; 1 si ninguna. Los motores, de 3 a 7."
        }
        Label::TailHint => "Aquí acaba la carga: parte de la capacidad nominal en una hora.",
        Label::TakeNewVersion => "Usarla ya",
        Label::TemperaturesAndGround => "Temperaturas y suelo",
        Label::ThereIsAGenerator => "Hay un generador",
        Label::ThereIsATurbine => "Hay una turbina de viento o de agua",
        Label::ThereIsAnAlternator => "El motor carga",
        Label::ThereIsAnInverter => "Hay un inversor",
        Label::ThereIsShore => "Hay toma de puerto o red",
        Label::TiltHint => "0 es plano, 90 vertical.",
        Label::Time => "Momento",
        Label::TryAgain => "Probar otra vez",
        Label::Turbine => "Viento o agua",
        Label::TurbineHint => "Lo que llega al banco de media en cada mes.",
        Label::Undo => "Deshacer",
        Label::UnnamedPlan => "Plan sin nombre",
        Label::UnreadablePlan => "Un plan que no se puede leer",
        Label::Until => "Hasta",
        Label::UntilEmpty => "Hasta vaciarse",
        Label::UntilFull => "Hasta llenarse",
        Label::UntilReserve => "Hasta la reserva",
        Label::Verdict => "La respuesta",
        Label::Vital => "Puede depender de ello una vida",
        Label::WhatArePlanning => "¿Qué estás planeando?",
        Label::WhatWouldHelp => "¿Qué ayudaría?",
        Label::AddReading => "Añadir esta lectura",
        Label::AdoptLearned => "Pasarlo a una variante",
        Label::AsRead => "según lecturas",
        Label::CareOfBank => "Cuidado y reposo de invierno",
        Label::DatesTell => "lo dicen las fechas",
        Label::DatesWithDay => "el día",
        Label::DatesWithMonth => "el mes",
        Label::DayOfReading => "Día",
        Label::DoesGaugeAgree => "¿Coincide el medidor?",
        Label::GaugeShows => "El medidor muestra",
        Label::GaugeWasTold => "Qué se le dijo al medidor",
        Label::GoOnFromReading => "Empezar el plan en la última lectura",
        Label::InDatesFirst => "Primero en cada fecha",
        Label::NoReadings => {
            "Aún no hay lecturas. Dos al día, al anochecer y al amanecer, son las que más dicen; con dos semanas se encuentra la mayoría de los fallos."
        }
        Label::PasteReadings => "Pegar una tabla",
        Label::PasteReadingsHint => {
            "Una lectura por línea: fecha, hora, porcentaje o amperios hora, voltios, amperios. Los encabezados ayudan. El texto queda aquí hasta que se tome todo."
        }
        Label::ReadingNeeds => "Anota al menos la carga, la tensión o la corriente.",
        Label::ReadingTaken => "La lectura se ha añadido.",
        Label::ReadingGone => "La lectura se ha quitado.",
        Label::DayToCome => {
            "El más nuevo de estos días aún no ha llegado. Corrige su fecha; no se ha tomado nada."
        }
        Label::ReadingsGone => "Las lecturas se han quitado.",
        Label::ReadingsOfGauge => "Lecturas",
        Label::ReadingsTaken => "La tabla se ha tomado.",
        Label::RemoveReading => "Quitar esta lectura",
        Label::RemoveReadings => "Quitar todas las lecturas",
        Label::StartFromSymptom => "Empezar por lo que ves",
        Label::StartMoved => "El plan empieza en la última lectura.",
        Label::TakeReadings => "Tomar la tabla",
        Label::WhatReadingsSay => "Qué dicen las lecturas",
        Label::WhatYouSee => "¿Qué ves?",
        Label::HowDoYouFitIt => "¿Cómo se instala?",
        Label::WiredBy => "Según las tablas de",
        Label::WiredMarine => "barcos",
        Label::WiredVehicle => "vehículos",
        Label::WiredLand => "edificios",
        Label::InsulationFor => "Aislamiento de los cables",
        Label::Insulation60 => "60 °C",
        Label::Insulation75 => "75 °C",
        Label::Insulation90 => "90 °C",
        Label::Insulation105 => "105 °C",
        Label::LieTogether => "Conductores juntos",
        Label::LieAlone => "cada uno solo al aire",
        Label::LieUpTo6 => "de cuatro a seis",
        Label::LieUpTo24 => "de siete a 24",
        Label::LieMore => "más",
        Label::InEngineSpace => "Banco y cables están junto a un motor",
        Label::RunLengths => "Longitudes de los cables",
        Label::RulesOfWiring => "Tablas y entorno",
        Label::PrintFitting => "Imprimir la hoja de instalación",
        Label::OneLineDiagram => "Esquema unifilar",
        Label::FittingDeference => {
            "Cifras de planificación, redondeadas al lado seguro; no son el proyecto de una instalación. Las normas locales, las instrucciones de los fabricantes y los profesionales autorizados van primero. Lo que lleva tensión de red es cosa de una persona autorizada."
        }
        Label::HowDoYouSetUpTheGauge => "¿Cómo se configura el medidor?",
        Label::PrintCommissioning => "Imprimir la hoja de puesta en marcha",
        Label::WhatWasMeasured => "Lo que se midió",
        Label::SeeItFooled => "Controles para ver cómo se engaña",
        Label::WhatIsPromised => "¿Qué ha de cumplir?",
        Label::PromisedThrough => "Ningún día corto en un año",
        Label::PromisedShortDays => "Pocos días cortos en diez años",
        Label::PromisedWithoutSun => "Días sin nada de sol",
        Label::PromisedTrip => "Un viaje desde lleno",
        Label::MonthsThatCount => "Meses que cuentan",
        Label::PricesAndWeights => "Precios y pesos",
        Label::PricesHint => {
            "No hay ninguno incluido. Con los tuyos se hallan el tamaño más barato y el más ligero, y lo que ayudaría se ordena por lo que cuesta."
        }
        Label::BankAgainstArray => "Banco frente a campo",
        Label::ReadTheMap => "Leer el mapa de tamaños",
        Label::MapHint => "Toca el mapa, o usa en él las flechas, para probar un tamaño.",
        Label::TakeThisSize => "Usar este tamaño",
        Label::SizeTaken => "Tamaño tomado.",
        Label::AsItIs => "según el plan",
        Label::SystemVoltage => "Tensión del sistema",
        Label::LoadsAtOnce => "Mayor corriente hacia los consumos",
        Label::ArraysAtOnce => "Corriente de los campos a pleno sol",
        Label::OtherVoltages => "12, 24 o 48 V",
        Label::OtherVoltagesHint => {
            "Con el doble de tensión la misma potencia pide la mitad de corriente, y el cable un cuarto del cobre para perder la misma parte."
        }
        Label::HowSizes => "Cómo se calcula esto",
        Label::DoThis => "Hacer esto",
        Label::WhatComesIn => "¿Qué entra?",
        Label::WhatDoYouRun => "¿Qué usas?",
        Label::WhatDoYouStore => "¿Qué almacenas?",
        Label::When => "Cuándo está encendido",
        Label::WhereAndWhen => "¿Dónde y cuándo?",
        Label::WhereIAm => "Donde estoy",
        Label::WhichTiltIsBest => "¿Qué inclinación es mejor?",
        Label::WithoutSun => "Sin nada de sol",
        Label::AirOfMonths => "Temperatura media del aire",
        Label::StateOfCharge => "Estado de carga",
        Label::WorldMap => "Mapa del mundo",
        Label::WorldMapHint => {
            "Toca el mapa para ir allí. Las flechas mueven un grado y, con la tecla de mayúsculas, diez."
        }
        Label::BigCode => "Mostrarlo en grande",
        Label::CsvDark => "Guardar el recorrido sin sol (CSV)",
        Label::CsvMean => "Guardar el recorrido con tiempo medio (CSV)",
        Label::DropHere => "Suéltalo aquí para abrir el plan",
        Label::DropHint => {
            "También puedes soltar un archivo o un enlace en cualquier parte de esta página. Lo que está abierto ahora queda en Planes."
        }
        Label::NothingToOpen => {
            "En lo que has soltado no hay ningún plan: suelta el archivo de un plan o su enlace."
        }
        Label::PrintSheet => "Imprimir la hoja",
        Label::ScanCode => "Escanea para abrir este plan",
        Label::SendLink => "Enviar…",
        Label::KeptUnderPlans => "Lo que estaba abierto antes queda en Planes.",
        Label::UndoOpens => {
            "Este dispositivo no guarda planes. Con Deshacer vuelve lo que estaba abierto antes."
        }
        Label::AsIsTypical => "lo típico",
        Label::Compare => "Comparar con otro plan",
        Label::CompareHint => {
            "Con una referencia, cada dato y cada curva dicen en qué se diferencian de ella. Se queda hasta que la quites, y solo en este dispositivo."
        }
        Label::KeepAsBaseline => "Tomar esto como referencia",
        Label::AsBaseline => "Como referencia",
        Label::ClearBaseline => "Dejar de comparar",
        Label::BaselinePercent => "Referencia, %",
        Label::BaselineBalance => "Referencia, balance, Ah",
        Label::NoOtherPlan => {
            "No hay ningún otro plan en este dispositivo. Haz una variante de este en Planes, o pega un enlace."
        }
        Label::SideBySide => "Lado a lado",
        Label::BackToPlan => "Volver al plan",
        Label::BackToPlanHint => {
            "Lo que funciona, lo que almacena y lo que entra: el plan del que sale todo esto."
        }
        Label::ToInstalled => "Instalarlo, ajustar su medidor y ver si coincide",
        Label::ToInstalledHint => {
            "El sistema instalado tiene su propia página. Una vez abierta, también funciona sin red."
        }
        Label::AnotherPlan => "Otro plan",
        Label::PrintThis => "Imprimir",
        Label::Figure => "Dato",
        Label::EveryFigure => "Todos los datos",
        Label::WhatDiffers => "En qué se diferencian",
        Label::NothingDiffers => "Los dos planes dicen lo mismo.",
        Label::Difference => "Diferencia",
        Label::OnesPlan => "El plan que está al lado de este no se puede calcular.",
        Label::Variants => "Variantes de este plan",
        Label::MakeVariant => "Hacer una variante",
        Label::NameOfVariant => "Nombre de la variante nueva",
        Label::BringBack => "Recuperar el plan borrado",
        Label::GuessFirst => "Primero, estimar",
        Label::AnswerIsNever => {
            "En este plan eso no llega nunca, y nadie puede adivinarlo: pregunta otra cosa."
        }
        Label::GuessHint => {
            "Para un taller: la respuesta se oculta hasta que la gente la haya estimado. Las estimaciones se quedan en este dispositivo y se van con la página."
        }
        Label::GuessWhat => "¿Qué se estima?",
        Label::GuessHours => "Horas hasta la reserva",
        Label::GuessCharge => "Amperios hora al día",
        Label::GuessMonth => "Primer mes en que no alcanza",
        Label::YourGuess => "Estimación",
        Label::YourName => "Nombre, si quieres",
        Label::AddGuess => "Añadir la estimación",
        Label::Reveal => "Descubrir la respuesta",
        Label::HideAgain => "Volver a ocultar la respuesta",
        Label::Guesses => "Estimaciones",
        Label::WhatIsKnown => "Lo que se sabe",
        Label::LinkToQuestion => "Enlace que lo abre como pregunta",
        Label::TakeOut => "Quitar",
        Label::TheAnswer => "La respuesta",
        Label::Near => "Cerca",
        Label::MiddleGuess => "Estimación central",
        Label::BaselineBalanceWh => "Referencia, balance, Wh",
        Label::LargestFirst => "Los mayores primero",
        Label::CatalogueWaits => {
            "Antes de abrir el catálogo hay que corregir lo que está bajo la respuesta."
        }
        Label::Daytime => "De día",
        Label::Evening => "Por la tarde",
        Label::Night => "De noche",
        Label::Done => "Listo",
        Label::DrawHours => "Horas del día, para dibujarlas",
        Label::DrawHint => {
            "Pasa por encima de las horas para encenderlo o apagarlo. Con teclas: las flechas mueven, el espacio cambia, Mayúsculas con una flecha dibuja."
        }
        Label::GroupName => "Grupo",
        Label::GroupHint => "Un nombre propio, como Cocina. Los consumos de un grupo van juntos.",
        Label::NoGroup => "Sin grupo",
        Label::SameForAll => "Igual para todos",
        Label::Typical => "típico",
        Label::YearCarpet => "El año, hora a hora",
        Label::ReadTheYear => "Una hora del año",
        Label::YearHint => {
            "Toca una hora para leerla. Teclas: izquierda y derecha por días, arriba y abajo por horas."
        }
        Label::OneWeatherYear => "Un año de tiempo",
        Label::OneWeatherYearHint => {
            "Un año de tiempo como puede darse; no es un pronóstico. En otro, las semanas grises caen en otras fechas."
        }
        Label::AnotherWeatherYear => "Otro año posible",
        Label::DayFlow => "De dónde viene y adónde va",
        Label::ReadTheDay => "Una hora del día",
        Label::SavePicture => "Guardar como SVG",
        Label::SavePhoto => "Guardar como PNG",
        Label::NoCurve => {
            "No se dibuja ninguna curva, porque el plan no puede funcionar así. El motivo está arriba; corrígelo y la curva aparecerá."
        }
        Label::OwnYearPercent => "El año que has traído, %",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_label_says_something_of_its_own_length() {
        for one in Label::ALL {
            let text = label(*one);
            assert!(!text.trim().is_empty() && text == text.trim(), "{one:?}");
        }
    }
}
