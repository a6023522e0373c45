//! The whole plan, resolved: every section parsed, the climate looked up, nothing left to fail.
//!
//! A [`System`] is valid by construction. What is merely unwise, or cannot work in practice (a bank that cannot carry its
//! inverter), is no error here; `outlook` says it plainly. Sections that are switched off are gone from it.
//!
//! **Assumption.** The inside of vehicle or building is as warm as the air outside, and never colder than its stated least.

use chrono::NaiveDate;

use crate::bank::Bank;
use crate::document::{Document, Problem};
use crate::load::{Inverter, Load};
use crate::place::{Climate, Clock, MonthlyClimate};
use crate::quantity::{Amps, Celsius, Degrees, Irradiation, Percent, Watts};
use crate::sky::Horizon;
use crate::source::{Array, Charger, Generator, Turbine};
use crate::sun::Site;
use crate::working::Trace;

/// When a run starts, and how full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// First day.
    pub date: NaiveDate,
    /// Minute of that day, clock time.
    pub minute: u16,
    /// State of charge (ratio).
    pub charge: f64,
}

/// A plan with everything resolved.
#[derive(Clone, Debug, PartialEq)]
pub struct System {
    /// Where.
    pub site: Site,
    /// The clock that people there live by.
    pub clock: Clock,
    /// The twelve months there.
    pub climate: MonthlyClimate,
    /// Share of the light that the ground throws back (ratio).
    pub albedo: f64,
    /// The inside is never colder than this.
    pub inside_least: Celsius,
    /// Lowest temperature on record, if known.
    pub record_low: Option<Celsius>,
    /// When the run starts.
    pub start: Start,
    /// Loads that are counted.
    pub loads: Vec<Load>,
    /// Standing current that the person entered.
    pub own_standing: Amps,
    /// What the charge controllers take for themselves.
    pub controllers: Watts,
    /// Standing current with that of the controllers, at nominal voltage.
    pub standing: Amps,
    /// The inverter.
    pub inverter: Option<Inverter>,
    /// The bank.
    pub bank: Bank,
    /// Arrays that are counted.
    pub arrays: Vec<Array>,
    /// Charger on shore power or a grid.
    pub shore: Option<Charger>,
    /// Charger on the engine.
    pub alternator: Option<Charger>,
    /// Generator that follows the state of charge.
    pub generator: Option<Generator>,
    /// Wind or water turbine.
    pub turbine: Option<Turbine>,
    /// What stands around the place.
    pub horizon: Option<Horizon>,
}

impl System {
    /// Resolves a scenario in the climate of the earth.
    ///
    /// # Errors
    /// A [`Problem`] if a number is out of range or sections contradict each other.
    pub fn assemble(
        document: &Document,
        earth: &Climate,
        trace: &mut impl Trace,
    ) -> Result<Self, Problem> {
        let document = document.clone().checked()?;
        Self::of_checked(&document, earth.at(site(&document)), trace)
    }

    /// Resolves a scenario in the climate of its place, looked up before: for whoever has not the earth's at hand.
    ///
    /// What `climate` says of its own site is not read; the scenario's place counts.
    ///
    /// # Errors
    /// A [`Problem`] as [`assemble`](Self::assemble) gives it.
    pub fn resolve(
        document: &Document,
        climate: MonthlyClimate,
        trace: &mut impl Trace,
    ) -> Result<Self, Problem> {
        let document = document.clone().checked()?;
        let climate = MonthlyClimate { site: site(&document), ..climate };
        Self::of_checked(&document, climate, trace)
    }

    fn of_checked(
        document: &Document,
        found: MonthlyClimate,
        trace: &mut impl Trace,
    ) -> Result<Self, Problem> {
        let place = &document.place;
        let counted = |on: &bool| *on;
        let bank = Bank::parse(&document.bank)?;
        let own_standing = Amps(document.standing_a);
        let controllers = document.arrays.iter().filter(|array| array.on);
        let controllers =
            controllers.map(|array| Watts(array.controller_self_use_w)).sum::<Watts>();
        Ok(Self {
            site: found.site,
            clock: place.clock(),
            climate: climate(found, place)?,
            albedo: Percent(place.albedo_pct).ratio(),
            inside_least: Celsius(place.inside_c),
            record_low: place.record_low_c.map(Celsius),
            start: Start {
                date: document.start.date,
                minute: document.start.time.0,
                charge: Percent(document.start.charge_pct).ratio(),
            },
            loads: (0u16..)
                .zip(&document.loads)
                .filter(|(_, load)| counted(&load.on))
                .map(|(place, load)| Load::parse(load, place, trace))
                .collect(),
            own_standing,
            controllers,
            standing: own_standing + controllers / bank.nominal,
            inverter: document.inverter.as_ref().map(Inverter::parse).transpose()?,
            bank,
            arrays: (0u16..)
                .zip(&document.arrays)
                .filter(|(_, array)| counted(&array.on))
                .map(|(place, array)| Array::parse(array, place))
                .collect(),
            shore: document.shore.as_ref().and_then(Charger::parse),
            alternator: document.alternator.as_ref().and_then(Charger::parse),
            generator: document.generator.as_ref().map(Generator::parse).transpose()?.flatten(),
            turbine: document.turbine.as_ref().and_then(Turbine::parse),
            horizon: place.horizon_deg.map(|all| Horizon::new(all.map(Degrees))),
        })
    }

    /// Temperature inside for an air temperature outside.
    #[must_use]
    pub fn inside(&self, outside: Celsius) -> Celsius {
        outside.at_least(self.inside_least)
    }
}

/// Where a scenario is.
fn site(document: &Document) -> Site {
    let place = &document.place;
    Site { latitude: Degrees(place.latitude_deg), longitude: Degrees(place.longitude_deg) }
}

/// The climate of a place, with a person's own figures where there are any.
fn climate(
    mut climate: MonthlyClimate,
    place: &crate::document::Place,
) -> Result<MonthlyClimate, Problem> {
    if let Some(own) = place.peak_sun_h {
        climate = climate.with_own_sun(own.map(Irradiation)).map_err(|fault| {
            Problem::ImplausibleSun { month: fault.month, stated: fault.stated, most: fault.most }
        })?;
    }
    if let Some(own) = place.temperature_c {
        climate = climate.with_own_temperature(own.map(Celsius));
    }
    Ok(climate)
}
