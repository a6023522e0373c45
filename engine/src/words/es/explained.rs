//! What each field and trade word means, in one plain sentence.

use crate::document::Field;
use crate::words::Term;

/// The question for an explanation.
#[must_use]
pub fn what_is(label: &str) -> String {
    format!("¿Qué significa «{label}»?")
}

/// What a trade word means.
#[must_use]
pub fn term(term: Term) -> &'static str {
    match term {
        Term::StateOfCharge => {
            "Lo lleno que está el banco, en tanto por ciento de lo que hoy le cabe: 100 % es lleno y 0 %, vacío."
        }
        Term::OutADay => {
            "Todo lo que tus consumos toman del banco en un día medio, en amperios hora: amperios por las horas que pasan."
        }
        Term::InADay => {
            "Lo que el sol y los cargadores meten en el banco en un día medio y el banco puede guardar, descontadas las pérdidas."
        }
        Term::Usable => {
            "La capacidad menos tu reserva y menos lo que quitan el frío y la edad; cuanto más bajas, mayor es la profundidad de descarga y más corta la vida del banco."
        }
        Term::KeepsUp => {
            "Los meses en que un día medio da por lo menos lo que toma, de modo que el banco no baja de un día a otro."
        }
        Term::ChargeController => {
            "Está entre los módulos y el banco: uno de regulación en serie (PWM) los une sin más y pierde la tensión que sobra a los módulos; un seguidor del punto de máxima potencia (MPPT) la convierte en más amperios."
        }
        Term::Chemistry => {
            "De qué están hechas las celdas: decide cuánta capacidad se puede usar, con cuánto frío se pueden cargar, cuánto pesan y cuánto duran."
        }
        Term::Mounting => {
            "Los módulos se calientan y entonces dan menos; con aire por detrás están más frescos que pegados a un techo."
        }
        Term::Supply => {
            "La corriente continua viene directa del banco; la de red pasa por un inversor, que se queda con una parte."
        }
    }
}

/// What a field means.
#[must_use]
pub fn field(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Latitude
        | F::Longitude
        | F::UtcOffset
        | F::PeakSun
        | F::AirTemperature
        | F::Albedo
        | F::InsideTemperature
        | F::RecordLow
        | F::Horizon => of_place(field),
        F::Quantity
        | F::LoadPower
        | F::LoadCurrent
        | F::PlateVoltage
        | F::LabelEnergy
        | F::OutputPower
        | F::OutputEfficiency
        | F::Duty
        | F::Surge
        | F::HoursPerDay
        | F::FridgeInside
        | F::FridgeReference
        | F::StandingCurrent
        | F::InverterRated
        | F::InverterSurge
        | F::InverterIdle
        | F::InverterEfficiency
        | F::PowerFactor
        | F::SearchDraw => of_load(field),
        F::StartCharge
        | F::BatteryVoltage
        | F::BatteryCapacity
        | F::HourRate
        | F::InSeries
        | F::InParallel
        | F::Health
        | F::Reserve
        | F::BatteryTemperature
        | F::BatteryCurrent
        | F::ProtectionDraw
        | F::ChargeEfficiency
        | F::RateExponent
        | F::SelfDischarge
        | F::SecondCapacity
        | F::SecondHours
        | F::ThirdCapacity
        | F::ThirdHours
        | F::AbsorptionVoltage
        | F::TailCurrent
        | F::LowCutOff => of_bank(field),
        F::ModulePower
        | F::ModuleVoltage
        | F::ModuleCurrent
        | F::PowerCoefficient
        | F::Tilt
        | F::Azimuth
        | F::Loss
        | F::Shading
        | F::ChargerCurrent
        | F::ControllerVoltage
        | F::ControllerSelfUse
        | F::Derating
        | F::GeneratorStart
        | F::GeneratorStop
        | F::MinimumRun
        | F::FuelPerHour
        | F::FuelPerEnergy
        | F::TurbinePower
        | F::TurbineCharge
        | F::HourShare => of_source(field),
        F::ShortDays
        | F::DaysWithoutSun
        | F::DaysOfTrip
        | F::Chance
        | F::BankPrice
        | F::ArrayPrice
        | F::BankWeight
        | F::ArrayWeight => of_promise(field),
        F::RunAmbient => {
            "Los cables llevan menos en aire caliente. Los techos al sol y los espacios del motor cuentan como 50 °C al menos."
        }
        F::ShortCircuitCurrent => {
            "La cifra del fabricante para todas las baterías juntas; un fusible debe poder cortarla. Sin ella se calcula."
        }
        F::CrankingCurrent => {
            "La suma de todas las baterías, de sus etiquetas; de ella se calcula el cortocircuito."
        }
        F::BatteryRun
        | F::InverterRun
        | F::PanelRun
        | F::LoadRun
        | F::ControllerRun
        | F::ArrayRun
        | F::ChargerRun => {
            "El camino que sigue el cable, no la línea recta. La ida y la vuelta se cuentan solas."
        }
        F::CheckVoltage | F::CheckCurrent | F::CheckCharge => {
            "La cifra que muestra el medidor o el aparato."
        }
        F::ToldCapacity => {
            "Lo que el medidor toma por lleno; su porcentaje es una parte de eso. En blanco vale la capacidad nominal del banco."
        }
        F::ToldEfficiency => {
            "La parte de lo que entra que el medidor cuenta. En blanco vale la habitual del banco."
        }
        F::ReadPercent | F::ReadLeft | F::ReadTaken => {
            "Lo que el medidor muestra de la carga, tal como está ahí. Déjalo en blanco si no lo leíste."
        }
        F::ReadVolts => {
            "Entre los bornes del banco, mejor por la mañana tras unas horas con poca corriente."
        }
        F::ReadAmps => {
            "Lo que muestra el medidor: positiva si entra en el banco, negativa si sale."
        }
    }
}

const NONE: &str = "";

fn of_place(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Latitude => {
            "Lo lejos que está el lugar del ecuador, al norte o al sur; decide lo alto que sube el sol y lo largos que son los días."
        }
        F::Longitude => {
            "Lo lejos que está el lugar de Greenwich, al este o al oeste; junto con el reloj decide a qué hora está más alto el sol."
        }
        F::UtcOffset => {
            "Cuántos minutos va el reloj de pared por delante de la hora universal en invierno; las horas que escribes son las de ese reloj."
        }
        F::PeakSun => {
            "La luz de un día sobre suelo llano, dicha en horas de pleno sol: 3 horas de sol pico son tanta luz como 3 horas del sol más fuerte."
        }
        F::AirTemperature => {
            "La media del mes, de día y de noche; la notan los frigoríficos, los módulos y un banco que esté fuera."
        }
        F::Albedo => {
            "La parte de la luz que devuelve el suelo; un campo inclinado recoge algo de ella: mucha con nieve, poca con hierba o agua."
        }
        F::InsideTemperature => {
            "La calefacción mantiene la habitación, cabina o vehículo al menos a esta temperatura; un banco que esté dentro tampoco baja de ella."
        }
        F::RecordLow => {
            "La noche más fría que se ha medido allí: cuanto más frío un módulo, mayor su tensión, y el regulador debe soportar la mayor de todas."
        }
        F::Horizon => {
            "Lo que se alzan las colinas o las casas sobre la horizontal en esa dirección; el sol que queda detrás no cuenta."
        }
        _ => NONE,
    }
}

fn of_load(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Quantity => "Cuántos de esta clase funcionan igual; su potencia se suma.",
        F::LoadPower => {
            "Lo que toma uno de ellos mientras de verdad funciona, en vatios; lo dice su placa o su manual."
        }
        F::LoadCurrent => {
            "Los amperios de la placa; multiplicados por los voltios que los acompañan dan los vatios."
        }
        F::PlateVoltage => {
            "Los voltios para los que la placa da sus amperios; a menudo 12, 24 o 230."
        }
        F::LabelEnergy => {
            "Los kilovatios hora de un año que da la etiqueta energética; las pausas del motor ya están incluidas."
        }
        F::OutputPower => {
            "Lo que sale en forma de calor en la comida, que es como se venden los microondas; del enchufe toman la mitad más."
        }
        F::OutputEfficiency => "Qué parte de lo que toma sale convertida en lo que se busca.",
        F::Duty => {
            "La parte del tiempo en que de verdad funciona: un frigorífico al 30 % zumba 18 minutos de cada hora."
        }
        F::Surge => {
            "Cuántas veces su potencia toma por un momento al arrancar; los motores, varias veces; las lámparas, ninguna."
        }
        F::HoursPerDay => "Cuánto tiempo se usa en total en un día, sea cuando sea.",
        F::FridgeInside => {
            "El frío que mantiene dentro; cuanto más se aparta del aire de alrededor, más tiempo funciona."
        }
        F::FridgeReference => {
            "El aire en que se midió el dato indicado; con aire más caliente funciona más de lo que dice."
        }
        F::StandingCurrent => {
            "Lo que toman juntos todo el día relojes, alarmas, sensores y pantallas, aunque todo parezca apagado."
        }
        F::InverterRated => {
            "Lo que el inversor puede dar todo el día a los consumos de red; los que funcionan a la vez no deben pasar de ahí."
        }
        F::InverterSurge => {
            "Lo que el inversor puede dar por un momento, para que arranquen los motores."
        }
        F::InverterIdle => {
            "Lo que el inversor toma para sí mientras está encendido, aun sin nada enchufado."
        }
        F::InverterEfficiency => {
            "Qué parte de lo que el inversor toma del banco sale como corriente de red; el resto se vuelve calor."
        }
        F::PowerFactor => {
            "Los vatios divididos por voltios y amperios: algunas fuentes toman más amperios de los que piden sus vatios, y el inversor tiene que darlos."
        }
        F::SearchDraw => {
            "Lo que toma un inversor mientras duerme y prueba de vez en cuando si se ha encendido algo."
        }
        _ => NONE,
    }
}

fn of_bank(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::StartCharge => "Lo lleno que está el banco en el momento en que empieza la curva.",
        F::BatteryVoltage => {
            "La tensión con la que se vende una batería, como 12 o 12,8; en serie se suman y dan la del banco."
        }
        F::BatteryCapacity => {
            "Cuánta carga da una batería llena, en amperios hora: 100 Ah son 5 amperios durante 20 horas."
        }
        F::HourRate => {
            "En cuántas horas se sacó la capacidad indicada; más deprisa, el plomo da menos."
        }
        F::InSeries => {
            "Uno tras otro, el más con el menos: las tensiones se suman y los amperios hora se quedan igual."
        }
        F::InParallel => {
            "Uno al lado del otro, el más con el más: los amperios hora o los amperios se suman y la tensión se queda igual."
        }
        F::Health => {
            "Cuánta de su capacidad conserva un banco con los años; uno nuevo la tiene toda."
        }
        F::Reserve => {
            "La carga que quieres dejar en el banco; lo que queda por encima se puede usar, y esa parte es la profundidad de descarga."
        }
        F::BatteryTemperature => {
            "La temperatura del propio banco; el frío quita capacidad, la helada impide cargar el litio y el calor acorta la vida."
        }
        F::BatteryCurrent => {
            "Los amperios que como máximo se pueden dar o pedir a una batería; más allá se abre la protección o sufren las celdas."
        }
        F::ProtectionDraw => {
            "Lo que toma para sí la electrónica que vigila las celdas dentro de una batería de litio."
        }
        F::ChargeEfficiency => {
            "Cuántos de los amperios hora que entran vuelven a salir; el plomo pierde más que el litio."
        }
        F::RateExponent => {
            "Cuánto encoge la capacidad al sacarla deprisa: con 1, nada; con 1,2, mucho, como en el plomo viejo."
        }
        F::SelfDischarge => "Lo que pierde el banco en un mes con solo estar parado.",
        F::SecondCapacity | F::ThirdCapacity => {
            "Otra capacidad de la ficha, sacada en otro tiempo; juntas dicen cómo lleva la batería un uso rápido o lento."
        }
        F::SecondHours | F::ThirdHours => "En cuántas horas se sacó esa otra capacidad.",
        F::AbsorptionVoltage => {
            "Los cargadores dan primero todos sus amperios; al llegar a esta tensión la mantienen y los amperios decaen (absorción), y luego guardan el banco lleno a una tensión menor (flotación)."
        }
        F::TailCurrent => {
            "Cuando los amperios han decaído hasta esta parte de la capacidad, el banco se da por lleno y el cargador pasa a flotación."
        }
        F::LowCutOff => {
            "Por debajo de esta tensión la protección o el inversor apagan los consumos, por mucha carga que parezca quedar."
        }
        _ => NONE,
    }
}

fn of_promise(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::ShortDays => {
            "Un día corto es aquel en que el banco baja de su reserva o no puede con una carga."
        }
        F::DaysWithoutSun => "Tanto ha de durar desde lleno sin ninguna luz en los módulos.",
        F::DaysOfTrip => "Tanto ha de durar desde lleno con el tiempo que haga.",
        F::Chance => "En tantos de cada cien tiempos posibles ha de cumplir lo que promete.",
        F::BankPrice => {
            "Lo que pagarías por más batería, en cualquier moneda; ordena lo que ayudaría y halla el tamaño más barato."
        }
        F::ArrayPrice => "Lo que pagarías por más módulos, en la misma moneda que la batería.",
        F::BankWeight => "Lo que pesa más batería; halla el tamaño más ligero.",
        F::ArrayWeight => "Lo que pesan más módulos, con lo que los sujeta.",
        _ => NONE,
    }
}

fn of_source(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::ModulePower => {
            "Lo que da un módulo en el ensayo normalizado, a pleno sol y a 25 °C; sobre un techo suele ser menos."
        }
        F::ModuleVoltage => {
            "La tensión de un módulo en el ensayo normalizado: la mayor, sin nada conectado; menor, donde da más potencia."
        }
        F::ModuleCurrent => {
            "Los amperios de un módulo a pleno sol con sus polos unidos; más no puede dar nunca."
        }
        F::PowerCoefficient => {
            "Cuánto baja la potencia por cada grado que el módulo pasa de 25 °C."
        }
        F::Tilt => {
            "Lo empinados que están los módulos: 0° es tumbado y 90°, de pie; más empinado conviene al invierno y a latitudes altas."
        }
        F::Azimuth => {
            "Adónde miran los módulos, en sentido horario desde el norte: 90° es el este, 180° el sur, 270° el oeste; lo mejor es hacia el ecuador."
        }
        F::Loss => {
            "Lo que esta causa quita a la potencia de los módulos; lo habitual es un pequeño tanto por ciento de cada una."
        }
        F::Shading => "Cuánta luz quita un mástil, un árbol o una colina en esa parte del día.",
        F::ChargerCurrent => {
            "Los amperios que como máximo da el cargador o regulador, por mucho que puedan el sol o el motor."
        }
        F::ControllerVoltage => {
            "La mayor tensión que el regulador admite de su campo; una mañana fría y clara no debe pasar de ella, o se destruye."
        }
        F::ControllerSelfUse => {
            "Lo que el regulador toma para su propia electrónica, de día y de noche."
        }
        F::Derating => {
            "Cuánto menos da un cargador caliente de lo que dice su placa; un alternador en un motor caliente, a menudo un tercio."
        }
        F::GeneratorStart => "Cuando el banco ha bajado hasta aquí, arranca el generador.",
        F::GeneratorStop => "Cuando el banco ha subido hasta aquí, se para el generador.",
        F::MinimumRun => {
            "Cada vez funciona por lo menos este tiempo, porque muchas marchas cortas desgastan un motor."
        }
        F::FuelPerHour => "Lo que quema en una hora aunque apenas tenga carga.",
        F::FuelPerEnergy => "Lo que quema además por cada kilovatio hora que produce.",
        F::TurbinePower => {
            "La media de día y de noche en ese mes, con las horas de calma incluidas."
        }
        F::TurbineCharge => "Lo que llega al banco en un día medio de ese mes.",
        F::HourShare => {
            "Qué parte de lo que da en el día toca a esta hora frente a las demás; todas igual si trabaja por igual."
        }
        _ => NONE,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_field_and_term_has_a_sentence_of_its_own() {
        let fields = Field::ALL.iter().map(|own| field(*own));
        let all: Vec<&str> = fields.chain(Term::ALL.iter().map(|own| term(*own))).collect();
        for text in &all {
            assert!(text.ends_with('.') && text.len() > 30 && text.len() < 260, "{text}");
            assert_eq!(*text, text.trim());
            assert!(text.starts_with(char::is_uppercase), "{text}");
        }
        // The third rated capacity is explained like the second, all lengths of runs alike, all readings of checks, and what a gauge shows.
        let own: BTreeSet<&str> = all.iter().copied().collect();
        assert_eq!(own.len(), all.len() - 12);
    }
}
