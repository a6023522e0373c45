//! A year of hourly weather as a file has it, made up for tests.

use sunlarder_engine::sun::Site;

const MONTHS: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// The text of an EPW file of a place in universal time: 8 °C, and from nine to three so much diffuse light in each month \[W/m²\],
/// January being 1.
#[must_use]
pub fn weather_year(site: Site, light: impl Fn(u8) -> u32) -> String {
    let (latitude, longitude) = (site.latitude.0, site.longitude.0);
    let mut text =
        format!("LOCATION,Some Bay,,XXX,made for a test,0,{latitude},{longitude},0.0,10.0\r\n");
    text += &"DESIGN CONDITIONS,0\r\n".repeat(6);
    text += "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\r\n";
    for (month, length) in (1..).zip(MONTHS) {
        for day in 1..=length {
            for hour in 1..=24 {
                let light = if (10..=15).contains(&hour) { light(month) } else { 0 };
                let row =
                    format!("2001,{month},{day},{hour},0,?,8.0,1,1,1,1,1,1,{light},0,{light}");
                text += &(row + ",0\r\n");
            }
        }
    }
    text
}
