//! The twelve months of a place.
//!
//! JSON: `latitude_deg`, `longitude_deg`, `clearness_from` and `temperature_from` (text), and `months`, each with `month` (from 1),
//! `clearness_ratio`, `spread_ratio` (standard deviation of a day's clearness within the month), `irradiation_kwh_per_m2` and
//! `extraterrestrial_kwh_per_m2` (of a mean day on the level), `temperature_c` (mean). CSV has the same columns.

use serde::Serialize;
use sunlarder_engine::place::{self, MonthlyClimate, SpreadGrid};
use sunlarder_engine::quantity::{Celsius, Irradiation};
use sunlarder_engine::sun::Site;
use sunlarder_engine::words::command_line::Caption;

use crate::table::Table;
use crate::words;

#[derive(Serialize)]
struct Climate {
    latitude_deg: f64,
    longitude_deg: f64,
    clearness_from: &'static str,
    temperature_from: &'static str,
    months: Vec<Month>,
}

#[derive(Serialize)]
struct Month {
    month: usize,
    clearness_ratio: f64,
    spread_ratio: f64,
    irradiation_kwh_per_m2: Irradiation,
    extraterrestrial_kwh_per_m2: Irradiation,
    temperature_c: Celsius,
}

fn climate_at(site: Site) -> MonthlyClimate {
    place::Climate::embedded().at(site)
}

fn months(climate: &MonthlyClimate) -> Vec<Month> {
    let irradiation = climate.irradiation();
    let spread = SpreadGrid::embedded().at(climate.site);
    (0..12)
        .map(|month| Month {
            month: month + 1,
            clearness_ratio: climate.clearness[month],
            spread_ratio: spread[month],
            irradiation_kwh_per_m2: irradiation[month],
            extraterrestrial_kwh_per_m2: climate.extraterrestrial(month, &mut ()),
            temperature_c: climate.temperature[month],
        })
        .collect()
}

/// For people.
pub(crate) fn text(site: Site) -> String {
    let climate = climate_at(site);
    let caption = |caption| words().caption(caption).to_owned();
    let columns = [
        Caption::Month,
        Caption::Clearness,
        Caption::Spread,
        Caption::Irradiation,
        Caption::Outside,
        Caption::Temperature,
    ];
    let mut table = Table::default();
    table.row(columns.map(caption));
    for month in months(&climate) {
        table.row([
            words().month(month.month - 1).to_owned(),
            words().precise(round3(month.clearness_ratio)),
            words().precise(round3(month.spread_ratio)),
            words().amount(month.irradiation_kwh_per_m2),
            words().amount(month.extraterrestrial_kwh_per_m2),
            words().amount(month.temperature_c),
        ]);
    }
    format!(
        "{}\n{}{}\n{}: {}\n",
        words().point(site.latitude, site.longitude),
        table.text(),
        words().climate_origin(climate.origin),
        caption(Caption::TemperatureFrom),
        words().temperature_origin(climate.temperature_origin),
    )
}

/// Three decimals: more than the climate knows.
fn round3(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

/// For programs.
pub(crate) fn json(site: Site) -> String {
    let climate = climate_at(site);
    let all = Climate {
        latitude_deg: site.latitude.0,
        longitude_deg: site.longitude.0,
        clearness_from: words().climate_origin(climate.origin),
        temperature_from: words().temperature_origin(climate.temperature_origin),
        months: months(&climate),
    };
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
}

/// For spreadsheets.
pub(crate) fn csv(site: Site) -> String {
    let mut text = String::from(
        "month,clearness_ratio,spread_ratio,irradiation_kwh_per_m2,extraterrestrial_kwh_per_m2,temperature_c\n",
    );
    for month in months(&climate_at(site)) {
        text.push_str(&format!(
            "{},{:.4},{:.4},{:.4},{:.4},{:.2}\n",
            month.month,
            month.clearness_ratio,
            month.spread_ratio,
            month.irradiation_kwh_per_m2.0,
            month.extraterrestrial_kwh_per_m2.0,
            month.temperature_c.0,
        ));
    }
    text
}
