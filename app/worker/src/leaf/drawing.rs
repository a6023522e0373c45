//! Small pictures that several leaves draw, in units of their own: curve, months and dots.

use sunlarder_engine::outlook::{Guessed, Outlook};
use sunlarder_engine::quantity::{AmpHours, Hours, Within};
use sunlarder_engine::simulate::Run;
use sunlarder_engine::words::{Words, decimal};

use super::About;
use crate::paper::Paper;

/// Width of every picture; with its height it only sets the shape, for pictures take the room there is.
pub(super) const WIDTH: f64 = 400.0;
/// Room left of the plot for its figures.
pub(super) const LEFT: f64 = 34.0;
/// Shortest and longest span of a curve \[h\].
const SPAN: (f64, f64) = (48.0, 24.0 * 14.0);

/// Begins a picture with its name.
pub(super) fn picture<'a>(
    paper: &'a mut Paper,
    class: &str,
    height: f64,
    aria: &str,
) -> &'a mut Paper {
    paper
        .draw("svg")
        .attr("class", class)
        .attr("role", "img")
        .attr("aria-label", aria)
        .attr("viewBox", &format!("0 0 {} {}", decimal(WIDTH, 0), decimal(height, 0)))
}

pub(super) fn line(paper: &mut Paper, class: &str, from: (f64, f64), to: (f64, f64)) {
    path(paper, class, &format!("M{}L{}", point(from), point(to)));
}

pub(super) fn path(paper: &mut Paper, class: &str, along: &str) {
    paper.draw("path").attr("class", class).attr("d", along).close();
}

pub(super) fn text(paper: &mut Paper, (x, y): (f64, f64), anchor: &str, text: &str) {
    paper
        .draw("text")
        .attr("x", &decimal(x, 1))
        .attr("y", &decimal(y, 1))
        .attr("text-anchor", anchor)
        .text(text)
        .close();
}

pub(super) fn point((x, y): (f64, f64)) -> String {
    format!("{} {}", decimal(x, 1), decimal(y, 1))
}

/// How many hours a curve shows: to empty or to the reserve and some more, in whole days.
pub(super) fn span(outlook: &Outlook) -> f64 {
    let times = outlook.times();
    let last = times.to_empty.or(times.to_reserve).map_or(24.0 * 7.0, |at| at.0 * 1.15);
    let dark = times.dark_to_reserve.map_or(0.0, |at| at.0 * 1.05);
    ((last.max(dark) / 24.0).ceil() * 24.0).within(SPAN.0, SPAN.1)
}

/// State of charge over so many hours: in the mean weather, without sun, and the reserve \[%\].
pub(super) fn curve(
    paper: &mut Paper,
    (words, outlook): (Words, &Outlook),
    reserve: f64,
    hours: f64,
    aria: &str,
) {
    const TOP: f64 = 12.0;
    const BOTTOM: f64 = 172.0;
    let x = |hour: f64| LEFT + (WIDTH - LEFT - 6.0) * (hour / hours).within(0.0, 1.0);
    let y = |percent: f64| BOTTOM - (BOTTOM - TOP) * (percent / 100.0).within(0.0, 1.0);
    picture(paper, "beside-curve", 196.0, aria);
    for percent in [0.0, 50.0, 100.0] {
        line(paper, "grid", (LEFT, y(percent)), (WIDTH - 6.0, y(percent)));
        text(paper, (LEFT - 6.0, y(percent) + 4.5), "end", &decimal(percent, 0));
    }
    // At most seven figures, a whole number of days apart.
    let every = (hours / 24.0 / 7.0).ceil().max(1.0) as usize;
    for day in (0..=(hours / 24.0) as usize).step_by(every) {
        let at = day as f64 * 24.0;
        if at < hours {
            text(paper, (x(at), 190.0), "middle", &decimal(day as f64, 0));
        }
    }
    text(paper, (WIDTH - 6.0, 190.0), "end", &words.duration(Hours(hours)));
    line(paper, "reserve-line", (LEFT, y(reserve)), (WIDTH - 6.0, y(reserve)));
    let along = |run: &Run| {
        let mut along = format!("M{}", point((x(0.0), y(run.initial * 100.0))));
        let seen = run.samples.iter().take_while(|sample| sample.at.0 <= hours).step_by(2);
        for sample in seen {
            along.push('L');
            along.push_str(&point((x(sample.at.0), y(sample.charge * 100.0))));
        }
        along
    };
    path(paper, "dark-line", &along(&outlook.dark));
    path(paper, "typical-line", &along(&outlook.run));
    paper.close();
}

/// A charge in the unit in which it is told.
fn told(about: About<'_>, charge: AmpHours) -> f64 {
    about.words.charge_value(charge, about.system.bank.nominal)
}

/// The largest gain or need of a day in any month.
pub(super) fn highest(about: About<'_>) -> f64 {
    let months = about.outlook.months.iter();
    let charges = months.flat_map(|own| [own.gain.kept, own.need]);
    charges.map(|own| told(about, own)).fold(0.0, f64::max)
}

/// What comes in against what goes out, month by month, up to a highest.
pub(super) fn months(paper: &mut Paper, about: About<'_>, highest: f64, aria: &str) {
    const BOTTOM: f64 = 106.0;
    let width = (WIDTH - LEFT - 6.0) / 12.0;
    let tall = |value: f64| {
        let share = value / highest;
        if share.is_finite() { (BOTTOM - 18.0) * share.within(0.0, 1.0) } else { 0.0 }
    };
    let bar = |left: f64, value: f64| {
        let (right, top) = (left + width * 0.38, BOTTOM - tall(value));
        format!(
            "M{}V{}H{}V{}Z",
            point((left, BOTTOM)),
            decimal(top, 1),
            decimal(right, 1),
            decimal(BOTTOM, 1)
        )
    };
    picture(paper, "beside-months", 126.0, aria);
    let mut gains = String::new();
    let mut needs = String::new();
    for (at, month) in about.outlook.months.iter().enumerate() {
        let left = LEFT + width * (at as f64 + 0.12);
        gains.push_str(&bar(left, told(about, month.gain.kept)));
        needs.push_str(&bar(left + width * 0.38, told(about, month.need)));
        let middle = left + width * 0.38;
        text(paper, (middle, 121.0), "middle", about.words.month_initial(month.month));
    }
    path(paper, "gain", &gains);
    path(paper, "need", &needs);
    line(paper, "axis", (LEFT, BOTTOM), (WIDTH - 6.0, BOTTOM));
    let most =
        format!("{}\u{a0}{}", about.words.rounded(highest.round()), about.words.charge_unit());
    text(paper, (0.0, 10.0), "start", &most);
    paper.close();
}

/// Columns of dots in the picture of guesses.
const COLUMNS: usize = 40;

/// A dot for each guess over a scale, with the middle one and the answer.
pub(super) fn dots(
    paper: &mut Paper,
    words: Words,
    (what, guesses): (Guessed, &[f64]),
    (median, answer): (Option<f64>, Option<f64>),
    aria: &str,
) {
    const BOTTOM: f64 = 150.0;
    // A wild guess must not push all others together: whatever lies beyond the scale stands at its end.
    let middle = answer.unwrap_or(0.0).max(median.unwrap_or(0.0));
    let largest = guesses.iter().copied().fold(middle, f64::max);
    let end = if what == Guessed::Month { 12.0 } else { largest.min(middle * 3.0).max(1.0) };
    let count = if what == Guessed::Month { 13 } else { COLUMNS };
    let column = |value: f64| {
        ((value / end * (count - 1) as f64).round().within(0.0, (count - 1) as f64)) as usize
    };
    let along = |share: f64| LEFT + 8.0 + (WIDTH - LEFT - 28.0) * share.within(0.0, 1.0);
    let x = |column: usize| along(column as f64 / (count - 1) as f64);
    let mut heights = vec![0usize; count];
    for guess in guesses {
        heights[column(*guess)] += 1;
    }
    let most = heights.iter().copied().max().unwrap_or(0).max(1);
    let apart = (120.0 / most as f64).min(9.0);
    picture(paper, "dots", 180.0, aria);
    line(paper, "axis", (LEFT, BOTTOM), (WIDTH - 6.0, BOTTOM));
    if let Some(answer) = answer {
        let at = along(answer / end);
        line(paper, "answer-line", (at, 8.0), (at, BOTTOM));
    }
    if let Some(median) = median {
        let at = along(median / end);
        line(paper, "median-line", (at, 20.0), (at, BOTTOM));
    }
    for (column, height) in heights.iter().enumerate() {
        for row in 0..*height {
            let y = BOTTOM - 5.0 - apart * row as f64;
            paper
                .draw("circle")
                .attr("class", "guess-dot")
                .attr("cx", &decimal(x(column), 1))
                .attr("cy", &decimal(y, 1))
                .attr("r", "4")
                .close();
        }
    }
    if what == Guessed::Month {
        for month in 0..12 {
            text(paper, (x(month), 168.0), "middle", words.month_initial(month));
        }
        text(paper, (x(12), 168.0), "middle", "–");
    } else {
        let more = if largest > end { "≥ " } else { "" };
        text(paper, (x(0), 168.0), "start", "0");
        text(
            paper,
            (WIDTH - 6.0, 168.0),
            "end",
            &format!("{more}{}", words.guess(what, end.round())),
        );
    }
    paper.close();
}
