//! The twelve months of sun and temperature that a plan uses: a picture, a table, and where they come from.

use sunlarder_engine::place::MonthlyClimate;
use sunlarder_engine::quantity::Unit;
use sunlarder_engine::words::{Label, Words, decimal};

use crate::paper::Paper;

/// Width of a month and height of the picture, in its own units.
const MONTH: f64 = 30.0;
const HEIGHT: f64 = 96.0;
/// Where the bars stand and how high the tallest may be.
const GROUND: f64 = 78.0;
const TALLEST: f64 = 62.0;
/// The scale of the light never ends below this \[peak sun hours\], so that a dark year looks dark.
const LEAST_SCALE: f64 = 4.0;

/// The leaf.
pub(super) fn write(words: Words, climate: &MonthlyClimate) -> String {
    let mut paper = Paper::default();
    picture(&mut paper, words, climate);
    paper.class("ul", "legend");
    paper.said("li", "key key-gain", words.label(Label::PeakSunHours));
    paper.said("li", "key key-typical", words.label(Label::AirOfMonths)).close();
    for sentence in words.climate_sources(climate) {
        paper.said("p", "hint", sentence);
    }
    paper.class("details", "more").said("summary", "", words.label(Label::AsATable));
    table(&mut paper, words, climate);
    paper.close();
    paper.finish()
}

fn number(value: f64) -> String {
    decimal(value, 1)
}

/// Bars of light, and a line of warmth with the frost line where it is crossed.
fn picture(paper: &mut Paper, words: Words, climate: &MonthlyClimate) {
    let sun = climate.irradiation().map(|own| own.0);
    let air = climate.temperature.map(|own| own.0);
    let most = sun.iter().copied().fold(LEAST_SCALE, f64::max);
    let (cold, warm) = air.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), own| {
        (low.min(*own), high.max(*own))
    });
    // A flat year lies in the middle of at least ten degrees.
    let middle = (cold + warm) / 2.0;
    let half = ((warm - cold) / 2.0).max(5.0);
    let height = |celsius: f64| GROUND - TALLEST / 2.0 - (celsius - middle) / half * TALLEST / 2.0;
    paper
        .draw("svg")
        .attr("class", "climate")
        .attr("viewBox", &format!("0 0 {} {}", number(MONTH * 12.0), number(HEIGHT)))
        .attr("role", "img")
        .attr("aria-label", &words.climate_in_words(climate));
    for (month, light) in sun.into_iter().enumerate() {
        let left = month as f64 * MONTH;
        let tall = light / most * TALLEST;
        let bar =
            [("x", left + 6.0), ("y", GROUND - tall), ("width", MONTH - 12.0), ("height", tall)];
        paper.draw("rect").attr("class", "bar-sun");
        for (name, value) in bar {
            paper.attr(name, &number(value));
        }
        paper.close();
        paper.draw("text").attr("x", &number(left + MONTH / 2.0)).attr("y", &number(HEIGHT - 4.0));
        paper.attr("text-anchor", "middle").text(words.month_initial(month)).close();
    }
    if cold < 0.0 && warm > 0.0 {
        let y = number(height(0.0));
        let line = format!("M0 {y}H{}", number(MONTH * 12.0));
        paper.draw("path").attr("class", "frost").attr("d", &line).close();
    }
    let point = |(month, celsius): (usize, f64)| {
        format!("{} {}", number((month as f64 + 0.5) * MONTH), number(height(celsius)))
    };
    let points: Vec<String> = air.into_iter().enumerate().map(point).collect();
    let line = format!("M{}", points.join("L"));
    paper.draw("path").attr("class", "line-air").attr("d", &line).close().close();
}

fn table(paper: &mut Paper, words: Words, climate: &MonthlyClimate) {
    let title = words.label(Label::SunAndTemperature);
    paper
        .class("div", "table")
        .attr("tabindex", "0")
        .attr("role", "region")
        .attr("aria-label", title)
        .open("table")
        .open("thead")
        .open("tr");
    let degrees = words.fitting(Label::MeanTemperature);
    for head in [Label::Month, Label::PeakSunHours, degrees] {
        paper.open("th").attr("scope", "col").text(words.label(head)).close();
    }
    paper.close().close().open("tbody");
    let sun = climate.irradiation();
    for (month, (light, air)) in sun.into_iter().zip(climate.temperature).enumerate() {
        paper.open("tr").open("th").attr("scope", "row").text(words.month(month)).close();
        let air = words.rounded(words.in_habit(air.0, Unit::Celsius));
        paper.said("td", "", &words.rounded(light.0)).said("td", "", &air).close();
    }
    paper.close().close().close();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::{ATTR, DRAW, TEXT, marks};
    use sunlarder_engine::place::{Origin, TemperatureOrigin};
    use sunlarder_engine::quantity::{Celsius, Degrees};
    use sunlarder_engine::sun::Site;

    fn climate(latitude: f64, temperature: [f64; 12]) -> MonthlyClimate {
        MonthlyClimate {
            site: Site { latitude: Degrees(latitude), longitude: Degrees(10.0) },
            clearness: [0.45; 12],
            temperature: temperature.map(Celsius),
            origin: Origin::Land,
            temperature_origin: TemperatureOrigin::Reanalysis,
        }
    }

    #[test]
    fn twelve_months_are_drawn_and_told() {
        let words = Words::of(crate::PAGE);
        let air = [-4.0, -2.0, 1.0, 6.0, 11.0, 14.0, 16.0, 15.0, 11.0, 6.0, 1.0, -3.0];
        let own = climate(60.0, air);
        let text = write(words, &own);
        let count = |mark, what| marks(&text).filter(|own| *own == (mark, what)).count();
        assert_eq!((count(DRAW, "rect"), count(DRAW, "text")), (12, 12));
        assert_eq!(count(ATTR, "class=frost"), 1);
        let july = words.rounded(own.irradiation()[6].0);
        assert!(count(TEXT, &july) >= 1 && count(TEXT, "16") >= 1, "{july}");
        for sentence in words.climate_sources(&own) {
            assert_eq!(count(TEXT, sentence), 1);
        }
    }

    #[test]
    fn odd_climates_stay_on_the_sheet() {
        let words = Words::of(crate::PAGE);
        for own in [climate(89.0, [-60.0; 12]), climate(0.0, [50.0; 12]), climate(-90.0, [0.0; 12])]
        {
            let text = write(words, &own);
            assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
            let heights = marks(&text).filter_map(|(_, own)| own.strip_prefix("height="));
            assert!(heights.flat_map(str::parse::<f64>).all(|own| (0.0..=TALLEST).contains(&own)));
        }
    }
}
