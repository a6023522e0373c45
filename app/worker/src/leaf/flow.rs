//! The picture of a day's flow: bands from what brings energy, through the bank's posts, to what takes it.
//!
//! Heights are lengths in the reader's type size, so that every band ends beside its name; widths are stretched to the room there is.
//! A band is as thick as its share; its ends keep at least the room of their names.

use sunlarder_engine::outlook::{DayFlow, End, Flow};
use sunlarder_engine::quantity::WattHours;
use sunlarder_engine::words::decimal;

use super::{About, Written, table};
use crate::paper::Paper;

/// Height of all bands together \[rem\].
const WHOLE: f64 = 11.0;
/// The least room for the name of a band \[rem\].
const NAME: f64 = 2.5;
/// Room between the ends of two bands \[rem\].
const APART: f64 = 0.35;
/// A band is drawn at least so thick, or it could not be seen \[rem\].
const LEAST: f64 = 0.06;
/// Width of the picture in units of its own, and where the posts stand.
const WIDTH: f64 = 100.0;
const POSTS: f64 = 50.0;
/// Loads that are drawn one by one.
const MOST_LOADS: usize = 6;
/// Loads and losses under this share are joined to others (ratio).
const SMALL: f64 = 0.015;

/// What a band is: it has its own look in each case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Gain,
    Bank,
    Load,
    Loss,
}

impl Kind {
    fn of(end: End) -> Self {
        match end {
            End::Sun | End::Turbine | End::Engine | End::Generator | End::Shore => Self::Gain,
            End::FromBank | End::IntoBank => Self::Bank,
            End::Load(_) | End::Standing => Self::Load,
            End::Conversion
            | End::InverterIdle
            | End::Controller
            | End::Charging
            | End::SelfDischarge
            | End::Protection
            | End::NotTaken => Self::Loss,
        }
    }

    fn class(self) -> &'static str {
        match self {
            Self::Gain => "flow-gain",
            Self::Bank => "flow-bank",
            Self::Load => "flow-load",
            Self::Loss => "flow-loss",
        }
    }
}

/// A band of the picture.
#[derive(Clone, Debug, PartialEq)]
struct Band {
    name: String,
    kind: Kind,
    energy: WattHours,
}

/// The bands of one side: loads by size, those too many or too small as one, likewise losses.
fn bands(flows: &[Flow], all: WattHours, about: About<'_>) -> Vec<Band> {
    let About { words, document, .. } = about;
    let band = |flow: &Flow| Band {
        name: words.end_in(document, flow.end),
        kind: Kind::of(flow.end),
        energy: flow.energy,
    };
    let small = |band: &Band| band.energy < all * SMALL;
    let (unsorted, rest): (Vec<Band>, Vec<Band>) =
        flows.iter().map(band).partition(|band| band.kind == Kind::Load);
    // Put in order as they come, which takes less of the program than a sort.
    let mut loads: Vec<Band> = Vec::with_capacity(unsorted.len());
    for own in unsorted {
        loads.insert(loads.partition_point(|other| other.energy >= own.energy), own);
    }
    let drawn = loads.iter().take(MOST_LOADS).take_while(|band| !small(band)).count();
    let joined = |bands: &[Band], name: String| {
        let energy = bands.iter().map(|band| band.energy).sum();
        bands.first().map(|first| Band { name, kind: first.kind, energy })
    };
    // One alone keeps its name.
    let drawn = if loads.len() == drawn + 1 { loads.len() } else { drawn };
    let others = joined(&loads[drawn..], words.other_loads(loads.len() - drawn));
    loads.truncate(drawn);
    loads.extend(others);
    let (little, large): (Vec<Band>, Vec<Band>) =
        rest.into_iter().partition(|band| band.kind == Kind::Loss && small(band));
    loads.extend(large);
    if little.len() > 1 {
        loads.extend(joined(&little, words.small_losses().to_owned()));
    } else {
        loads.extend(little);
    }
    loads
}

/// Where a band lies: its middle at the posts, its middle at its end, its thickness \[rem\].
#[derive(Clone, Copy, Debug, PartialEq)]
struct Place {
    at_posts: f64,
    at_end: f64,
    thick: f64,
}

/// Places the bands of a side one under the other; both sides meet the posts over the whole of their height, in the middle of the
/// picture's.
fn places(bands: &[Band], all: WattHours, height: f64) -> Vec<Place> {
    let thick = |band: &Band| WHOLE * (band.energy / all);
    let room = |band: &Band| f64::max(thick(band), NAME);
    let taken = taken(bands, all);
    let (mut post, mut end) = ((height - WHOLE) / 2.0, (height - taken) / 2.0);
    let place = |band: &Band| {
        let place = Place {
            at_posts: post + thick(band) / 2.0,
            at_end: end + room(band) / 2.0,
            thick: f64::max(thick(band), LEAST),
        };
        post += thick(band);
        end += room(band) + APART;
        place
    };
    bands.iter().map(place).collect()
}

/// Height that the ends of a side take.
fn taken(bands: &[Band], all: WattHours) -> f64 {
    let rooms: f64 = bands.iter().map(|band| f64::max(WHOLE * (band.energy / all), NAME)).sum();
    rooms + APART * bands.len().saturating_sub(1) as f64
}

/// A band from its end at one edge to the posts, or the other way round.
fn path(place: Place, edge: f64) -> String {
    let half = place.thick / 2.0;
    let middle = f64::midpoint(edge, POSTS);
    let number = |value: f64| decimal(value, 3);
    let [end, post] = [place.at_end, place.at_posts];
    let curve = |from: f64, to: f64, target: f64| {
        format!(
            "C{m} {} {m} {} {} {}",
            number(from),
            number(to),
            number(target),
            number(to),
            m = number(middle)
        )
    };
    format!(
        "M{} {}{}V{}{}z",
        number(edge),
        number(end - half),
        curve(end - half, post - half, POSTS),
        number(post + half),
        curve(post + half, end + half, edge)
    )
}

/// The picture.
pub(super) fn write(flow: &DayFlow, about: About<'_>) -> Written {
    let said = about.words.flow(flow);
    let mut paper = Paper::default();
    let all = flow.came();
    if all.0 > 0.0 {
        let [from, to] = [&flow.from, &flow.to].map(|side| bands(side, all, about));
        let height = f64::max(taken(&from, all), taken(&to, all)).max(WHOLE);
        paper.class("div", "flow-picture").attr(":height", &format!("{}rem", decimal(height, 3)));
        let sides = [(from, 0.0), (to, WIDTH)]
            .map(|(bands, edge)| (places(&bands, all, height), bands, edge));
        paper
            .draw("svg")
            .attr("role", "img")
            .attr("aria-label", &said)
            .attr("viewBox", &format!("0 0 {} {}", decimal(WIDTH, 0), decimal(height, 3)))
            .attr("preserveAspectRatio", "none");
        for (places, bands, edge) in &sides {
            for (place, band) in places.iter().zip(bands) {
                let along = path(*place, *edge);
                paper.draw("path").attr("class", band.kind.class()).attr("d", &along).close();
            }
        }
        let (x, y) = (decimal(POSTS - 0.75, 2), decimal((height - WHOLE) / 2.0, 3));
        paper.draw("rect").attr("class", "flow-posts").attr("x", &x).attr("y", &y);
        paper.attr("width", "1.5").attr("height", &decimal(WHOLE, 3)).close().close();
        for (places, bands, edge) in &sides {
            let side = if *edge == 0.0 { "flow-from" } else { "flow-to" };
            names(&mut paper, side, places, bands, all, about);
        }
        paper.close();
    }
    paper.said("p", "note", &said);
    Written::of(paper.finish())
}

/// The names of a side, each beside its band.
fn names(
    paper: &mut Paper,
    side: &str,
    places: &[Place],
    bands: &[Band],
    all: WattHours,
    about: About<'_>,
) {
    paper.class("ul", side);
    for (place, band) in places.iter().zip(bands) {
        let figure = about.words.energy(band.energy);
        let share = about.words.share_of(band.energy / all);
        paper
            .class("li", band.kind.class())
            .attr(":top", &format!("{}rem", decimal(place.at_end, 3)))
            .said("span", "flow-name", &band.name)
            .said("span", "flow-figure", &format!("{figure} · {share}"))
            .close();
    }
    paper.close();
}

/// The table behind it: every end, none joined, and both sums.
pub(super) fn write_table(flow: &DayFlow, about: About<'_>) -> Written {
    let About { words, document, .. } = about;
    let all = flow.came();
    let row = |name: String, energy: WattHours| {
        let part = if all.0 > 0.0 { energy / all } else { 0.0 };
        vec![name, words.rounded(energy.0), words.share_of(part)]
    };
    let of = |flow: &Flow| row(words.end_in(document, flow.end), flow.energy);
    let [comes, goes, without] = words.flow_sums();
    let mut rows: Vec<Vec<String>> = flow.from.iter().map(of).collect();
    rows.push(row(comes.to_owned(), all));
    rows.extend(flow.to.iter().map(of));
    rows.push(row(goes.to_owned(), flow.went()));
    if flow.unmet.0 > 0.0 {
        rows.push(row(without.to_owned(), flow.unmet));
    }
    Written::of(table(&words.flow(flow), &words.flow_heads(), &rows))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn band(energy: f64) -> Band {
        Band { name: String::new(), kind: Kind::Load, energy: WattHours(energy) }
    }

    #[test]
    fn bands_lie_under_each_other_and_within_the_picture() {
        for sizes in [vec![100.0], vec![1.0, 98.0, 1.0], vec![1e-6, 1e6], vec![5.0; 20]] {
            let bands: Vec<Band> = sizes.iter().copied().map(band).collect();
            let all = bands.iter().map(|band| band.energy).sum();
            let height = taken(&bands, all).max(WHOLE);
            let places = places(&bands, all, height);
            for pair in places.windows(2) {
                assert!(pair[1].at_end - pair[0].at_end >= NAME - 1e-9, "{sizes:?}");
                assert!(pair[1].at_posts > pair[0].at_posts, "{sizes:?}");
            }
            let thick: f64 = bands.iter().map(|band| WHOLE * (band.energy / all)).sum();
            assert!((thick - WHOLE).abs() < 1e-9);
            let ends = places
                .iter()
                .flat_map(|own| [own.at_end - own.thick / 2.0, own.at_end + own.thick / 2.0]);
            assert!(ends.into_iter().all(|y| y > -1e-9 && y < height + 1e-9), "{sizes:?}");
        }
    }

    #[test]
    fn a_band_goes_from_its_end_to_the_posts_and_back() {
        let place = Place { at_posts: 3.0, at_end: 1.0, thick: 2.0 };
        assert_eq!(path(place, 0.0), "M0 0C25 0 25 2 50 2V4C25 4 25 2 0 2z");
    }
}
