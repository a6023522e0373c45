//! The map of sizes: banks across, arrays up, the chance of keeping the promise as shades with contour lines.

use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::words::sizes::Mark;
use sunlarder_engine::words::{Words, decimal};

use super::super::year::{key, path};
use crate::paper::Paper;

/// Shades of chances begin at these (ratio).
const SHADES: [f64; 5] = [0.0, 0.1, 0.5, 0.75, 0.95];
/// Thin lines run where a chance is this (ratio).
const LINES: [f64; 3] = [0.1, 0.5, 0.9];
/// Sizes written under the picture, and beside it, are no nearer to each other than this share of its side.
const APART: (f64, f64) = (0.25, 0.1);

/// What the map shows of an axis.
#[derive(Clone, Debug)]
pub(super) struct Scale {
    /// The first and the last size \[Ah or W\], at the middles of their cells; sizes between grow in equal ratios.
    pub(super) ends: [f64; 2],
    /// Sizes of whole numbers of batteries or strings of modules \[Ah or W\], and how they are written.
    pub(super) whole: Vec<(f64, String)>,
}

impl Scale {
    /// Where a size is, in cells from the edge.
    fn place(&self, size: f64) -> f64 {
        let [first, last] = self.ends;
        let along = (size / first).ln() / (last / first).ln();
        0.5 + (SIDE - 1) as f64 * along
    }

    /// The same if it lies on the map.
    fn on_map(&self, size: f64) -> Option<f64> {
        Some(self.place(size)).filter(|place| (0.0..=SIDE as f64).contains(place))
    }

    /// Whole numbers that are written, with their places: those that leave room for each other.
    fn written(&self, apart: f64) -> Vec<(&str, f64)> {
        let mut kept: Vec<(&str, f64)> = Vec::new();
        for (size, written) in &self.whole {
            let Some(place) = self.on_map(*size) else { continue };
            let room = kept.last().is_none_or(|last| place - last.1 > apart * SIDE as f64);
            if room {
                kept.push((written, place));
            }
        }
        kept
    }
}

/// What the map shows.
#[derive(Clone, Debug)]
pub(super) struct Shown {
    /// Chances by bank, then by array (ratio).
    pub(super) chances: Vec<f64>,
    /// Whether they are of every cell and not of every third.
    pub(super) fine: bool,
    /// The chance that is asked for (ratio).
    pub(super) promised: f64,
    /// Banks \[Ah\].
    pub(super) banks: Scale,
    /// Arrays \[W\].
    pub(super) arrays: Scale,
    /// Points of note: bank \[Ah\] and array \[W\].
    pub(super) marks: Vec<(Mark, f64, f64)>,
}

/// Writes it: the picture with its scales, and what its shades and marks mean.
pub(super) fn write(paper: &mut Paper, words: Words, shown: &Shown, said: &str) {
    paper.class("div", "sizes-picture");
    paper
        .draw("svg")
        .attr("role", "img")
        .attr("aria-label", said)
        .attr("viewBox", &format!("0 0 {SIDE} {SIDE}"));
    for shade in 0..SHADES.len() {
        path(paper, &format!("charge-{shade}"), &cells(&shown.chances, shade));
    }
    path(paper, "size-lines", &whole_sizes(shown));
    if shown.fine {
        for level in LINES {
            path(paper, "chance-line", &contour(&shown.chances, level));
        }
        path(paper, "chance-halo", &contour(&shown.chances, shown.promised));
        path(paper, "chance-promised", &contour(&shown.chances, shown.promised));
    }
    for (mark, bank, array) in &shown.marks {
        if let (Some(x), Some(y)) = (shown.banks.on_map(*bank), shown.arrays.on_map(*array)) {
            let place = format!("translate({} {})", short(x), short(SIDE as f64 - y));
            paper.draw("path").attr("class", mark_class(*mark)).attr("d", mark_path(*mark));
            paper.attr("transform", &place).close();
        }
    }
    paper.close();
    scales(paper, shown);
    paper.close();
    legend(paper, words, shown);
}

fn short(value: f64) -> String {
    decimal(value, 2)
}

/// The shade of a chance.
fn shade(chance: f64) -> usize {
    SHADES.iter().rposition(|least| chance >= *least - 1e-9).unwrap_or(0)
}

/// The cells of a shade as a path of runs.
fn cells(chances: &[f64], own: usize) -> String {
    let mut path = String::new();
    for array in 0..SIDE {
        let is = |bank: usize| bank < SIDE && shade(chances[bank * SIDE + array]) == own;
        let mut bank = 0;
        while bank < SIDE {
            let length = (bank..SIDE).take_while(|at| is(*at)).count();
            if length > 0 {
                path.push_str(&format!("M{bank} {}h{length}v1h-{length}z", SIDE - 1 - array));
            }
            bank += length.max(1);
        }
    }
    path
}

/// Where a chance is that of a level, by straight lines between the middles of cells.
fn contour(chances: &[f64], level: f64) -> String {
    let mut path = String::new();
    for bank in 0..SIDE - 1 {
        for array in 0..SIDE - 1 {
            square(chances, level, bank, array, &mut path);
        }
    }
    path
}

/// The piece of a contour between four cells.
fn square(chances: &[f64], level: f64, bank: usize, array: usize, path: &mut String) {
    const CORNERS: [(usize, usize); 4] = [(0, 0), (1, 0), (1, 1), (0, 1)];
    // Just under the level counts as under it, so that a chance that is the level is inside.
    let of = |(x, y): (usize, usize)| chances[(bank + x) * SIDE + array + y] - level + 1e-9;
    let mut crossings: Vec<(f64, f64)> = Vec::new();
    for (side, from) in CORNERS.iter().enumerate() {
        let to = CORNERS[(side + 1) % CORNERS.len()];
        let (one, other) = (of(*from), of(to));
        if (one < 0.0) != (other < 0.0) {
            let part = one / (one - other);
            let between = |from: usize, to: usize| from as f64 + (to as f64 - from as f64) * part;
            let (x, y) = (between(from.0, to.0), between(from.1, to.1));
            crossings.push((bank as f64 + x + 0.5, SIDE as f64 - (array as f64 + y + 0.5)));
        }
    }
    for ends in crossings.chunks_exact(2) {
        for (pen, (x, y)) in ['M', 'L'].into_iter().zip(ends) {
            path.push_str(&format!("{pen}{} {}", short(*x), short(*y)));
        }
    }
}

/// Lines where a bank or an array is a whole number of batteries or strings.
fn whole_sizes(shown: &Shown) -> String {
    let mut path = String::new();
    for (_, place) in shown.banks.written(APART.0) {
        path.push_str(&format!("M{} 0v{SIDE}", short(place)));
    }
    for (_, place) in shown.arrays.written(APART.1) {
        path.push_str(&format!("M0 {}h{SIDE}", short(SIDE as f64 - place)));
    }
    path
}

/// Whole sizes, written under and beside the picture.
fn scales(paper: &mut Paper, shown: &Shown) {
    let percent = |place: f64| format!("{}%", decimal(place * 100.0 / SIDE as f64, 2));
    paper.class("div", "sizes-arrays").attr("aria-hidden", "true");
    for (size, place) in shown.arrays.written(APART.1) {
        let top = percent(SIDE as f64 - place);
        paper.open("span").attr(":top", &top).text(size).close();
    }
    paper.close().class("div", "sizes-banks").attr("aria-hidden", "true");
    for (size, place) in shown.banks.written(APART.0) {
        paper.open("span").attr(":left", &percent(place)).text(size).close();
    }
    paper.close();
}

/// What the shades, the line and the marks mean.
fn legend(paper: &mut Paper, words: Words, shown: &Shown) {
    const CELL: &str = "M0 0h20v12h-20z";
    paper.class("ul", "legend");
    for (own, from) in SHADES.iter().enumerate().rev() {
        let to = SHADES.get(own + 1).copied().unwrap_or(1.0);
        let class = format!("charge-{own}");
        key(paper, &[(&class, CELL)], &words.charge_between(from * 100.0, to * 100.0));
    }
    if shown.fine {
        let line = "M0 6h20";
        let said = words.promised_line(shown.promised);
        key(paper, &[("chance-halo", line), ("chance-promised", line)], &said);
    }
    for (mark, ..) in &shown.marks {
        paper.class("li", "sample").draw("svg").attr("viewBox", "-10 -6 20 12");
        paper.attr("aria-hidden", "true").draw("path").attr("class", mark_class(*mark));
        paper.attr("d", mark_path(*mark)).attr("transform", "scale(9)").close().close();
        paper.text(words.mark(*mark)).close();
    }
    paper.close();
}

fn mark_class(mark: Mark) -> &'static str {
    match mark {
        Mark::Own => "size-mark size-own",
        Mark::Suggested => "size-mark size-suggested",
        Mark::Cheapest | Mark::Lightest => "size-mark size-least",
    }
}

/// A mark around its point; each has a form of its own.
fn mark_path(mark: Mark) -> &'static str {
    match mark {
        Mark::Own => "M-.5 0a.5 .5 0 1 0 1 0a.5 .5 0 1 0-1 0z",
        Mark::Suggested => "M0-.62l.62 .62l-.62 .62l-.62-.62z",
        Mark::Cheapest => "M0-.55l.55 1h-1.1z",
        Mark::Lightest => "M0 .55l.55-1h-1.1z",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// More bank and more array, more chance.
    fn slope() -> Vec<f64> {
        let most = 2.0 * (SIDE - 1) as f64;
        (0..SIDE * SIDE).map(|at| (at / SIDE + at % SIDE) as f64 / most).collect()
    }

    #[test]
    fn every_cell_has_one_shade() {
        let chances = slope();
        let runs: usize = (0..SHADES.len())
            .map(|own| {
                let path = cells(&chances, own);
                let runs = path.split('h').skip(1).step_by(2);
                runs.map(|run| run.split('v').next().unwrap().parse::<usize>().unwrap())
                    .sum::<usize>()
            })
            .sum();
        assert_eq!(runs, SIDE * SIDE);
        assert_eq!([0.0, 0.0999, 0.1, 0.5, 0.94, 0.95, 1.0].map(shade), [0, 0, 1, 2, 3, 4, 4]);
    }

    #[test]
    fn a_contour_runs_where_the_chance_is_its_level() {
        let path = contour(&slope(), 0.5);
        let points: Vec<(f64, f64)> = path
            .split(['M', 'L'])
            .filter(|own| !own.is_empty())
            .map(|own| {
                let (x, y) = own.split_once(' ').unwrap();
                (x.parse().unwrap(), y.parse().unwrap())
            })
            .collect();
        assert!(points.len() > SIDE, "{}", points.len());
        for (x, y) in points {
            // From the middle of the first cell to that of the last, x + (24 - y) is 24 on the diagonal.
            assert!((x - y).abs() < 0.03, "{x} {y}");
        }
        assert_eq!(contour(&vec![0.3; SIDE * SIDE], 0.5), "");
    }

    #[test]
    fn sizes_stand_where_their_cells_are() {
        let whole = [100.0, 110.0, 200.0, 900.0].map(|size| (size, size.to_string()));
        let scale = Scale { ends: [50.0, 800.0], whole: whole.to_vec() };
        assert!((scale.place(50.0) - 0.5).abs() < 1e-12);
        assert!((scale.place(200.0) - 12.0).abs() < 1e-12);
        let written: Vec<&str> = scale.written(0.1).into_iter().map(|own| own.0).collect();
        assert_eq!(written, ["100", "200"], "what stands too near to another is left out");
        assert_eq!(scale.on_map(900.0), None);
    }
}
