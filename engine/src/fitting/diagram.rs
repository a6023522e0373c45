//! The diagram of a fitting: what is connected to what, where it stands on a grid, and the shapes of it.
//!
//! **Method.** The bank stands at the left: upwards its fuse and its isolator to the plus bar, downwards the shunt to the minus bar. Every
//! consumer and every charger stands between the two bars, so no minus but the bank's is on the bank's side of the shunt. What must stay
//! alive is tapped between main fuse and isolator. Connections are straight: ends lie in one row or one column. The symbols are drawn here,
//! by the usual signs of circuit diagrams (a bar in a box for a fuse, an open contact for a switch, long and short plates for a bank).
//!
//! Lengths are in units of the drawing; a cell is 120 wide and 70 high, with a margin of half a cell around.

use super::{Fitting, FusePlace, RunKind};

/// Width of a cell.
const CELL: f64 = 120.0;
/// Height of a cell.
const ROW: f64 = 70.0;
/// Half the size of a symbol's box.
const BOX: (f64, f64) = (38.0, 20.0);

/// What is drawn; loads and arrays by their place in the plan, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// The bank.
    Bank,
    /// The fuse of a run.
    Fuse(RunKind),
    /// The isolator.
    Isolator,
    /// Where what stays alive is tapped.
    Tap,
    /// The plus bar.
    PlusBar,
    /// The minus bar.
    MinusBar,
    /// The shunt.
    Shunt,
    /// All that stays alive.
    Alive,
    /// The inverter.
    Inverter,
    /// The panel that distributes.
    Panel,
    /// A load of its own.
    Load(u16),
    /// A charge controller.
    Controller(u16),
    /// The switch of an array.
    ArraySwitch(u16),
    /// An array.
    Array(u16),
    /// The charger on the engine.
    Alternator,
    /// The charger on shore power.
    Shore,
    /// The charger of a generator.
    Generator,
}

/// A part where it stands: column and row from the upper left, from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// What it is.
    pub part: Part,
    /// From the left.
    pub column: u16,
    /// From above.
    pub row: u16,
}

/// What a connection carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Pole {
    /// Plus.
    Plus,
    /// Minus.
    Minus,
    /// Both conductors of an array.
    Both,
}

/// A connection between two parts, by their places among the nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// From here...
    pub from: usize,
    /// ...to here.
    pub to: usize,
    /// What it carries.
    pub pole: Pole,
    /// The run that it is part of.
    pub run: RunKind,
}

/// A diagram.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diagram {
    /// Its parts.
    pub nodes: Vec<Node>,
    /// Its connections.
    pub lines: Vec<Line>,
    /// Columns.
    pub columns: u16,
}

/// Rows from above.
mod row {
    pub(super) const PLUS: u16 = 0;
    pub(super) const ISOLATOR: u16 = 1;
    pub(super) const TAP: u16 = 2;
    pub(super) const DEVICE: u16 = 3;
    pub(super) const BANK: u16 = 4;
    pub(super) const SHUNT: u16 = 5;
    pub(super) const MINUS: u16 = 6;
    pub(super) const COUNT: u16 = 7;
}

/// A shape of the drawing; `y` grows downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line {
        /// Its ends.
        ends: [(f64, f64); 2],
        /// What it carries; none where it is part of a symbol.
        pole: Option<Pole>,
    },
    /// A box.
    Box {
        /// Its upper left corner.
        at: (f64, f64),
        /// Its width and height.
        size: (f64, f64),
    },
    /// What is written of a part: two lines that begin at a point and below it.
    Label {
        /// The point.
        at: (f64, f64),
        /// Of which part.
        part: Part,
    },
}

/// A small mark on a symbol, from and to, in units of half its box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tick(pub (f64, f64), pub (f64, f64));

/// Draws a fitting whose runs are there.
pub(super) fn draw(fitting: &Fitting) -> Diagram {
    let mut diagram = Diagram::default();
    let bank = diagram.bank();
    let of = |place| {
        let runs = fitting.runs.iter().map(|run| &run.asked);
        runs.filter(move |asked| asked.fused == Some(place)).map(|asked| asked.kind)
    };
    if let Some(first) = of(FusePlace::AheadOfIsolator).next() {
        diagram.columns += 1;
        let fuse = diagram.put(Part::Fuse(first), diagram.columns, row::TAP);
        let alive = diagram.put(Part::Alive, diagram.columns, row::DEVICE);
        diagram.join(bank.tap, fuse, Pole::Plus, first);
        diagram.join(fuse, alive, Pole::Plus, first);
        diagram.join(alive, bank.minus, Pole::Minus, first);
    }
    for kind in of(FusePlace::Bus).filter(|kind| *kind != RunKind::Battery) {
        diagram.between_bars(kind, &bank);
    }
    diagram.columns += 1;
    diagram
}

/// Places of what belongs to the bank.
struct BankNodes {
    tap: usize,
    plus: usize,
    minus: usize,
}

impl Diagram {
    fn put(&mut self, part: Part, column: u16, row: u16) -> usize {
        self.nodes.push(Node { part, column, row });
        self.nodes.len() - 1
    }

    fn join(&mut self, from: usize, to: usize, pole: Pole, run: RunKind) {
        self.lines.push(Line { from, to, pole, run });
    }

    fn bank(&mut self) -> BankNodes {
        let run = RunKind::Battery;
        let plus = self.put(Part::PlusBar, 0, row::PLUS);
        let isolator = self.put(Part::Isolator, 0, row::ISOLATOR);
        let tap = self.put(Part::Tap, 0, row::TAP);
        let fuse = self.put(Part::Fuse(run), 0, row::DEVICE);
        let bank = self.put(Part::Bank, 0, row::BANK);
        let shunt = self.put(Part::Shunt, 0, row::SHUNT);
        let minus = self.put(Part::MinusBar, 0, row::MINUS);
        for (from, to) in [(bank, fuse), (fuse, tap), (tap, isolator), (isolator, plus)] {
            self.join(from, to, Pole::Plus, run);
        }
        self.join(bank, shunt, Pole::Minus, run);
        self.join(shunt, minus, Pole::Minus, run);
        BankNodes { tap, plus, minus }
    }

    /// A consumer or a charger between the bars, with the fuse of its run.
    fn between_bars(&mut self, run: RunKind, bank: &BankNodes) {
        let part = match run {
            RunKind::Inverter => Part::Inverter,
            RunKind::Branch(load) => Part::Load(load),
            RunKind::Controller(array) => Part::Controller(array),
            RunKind::Alternator => Part::Alternator,
            RunKind::Shore => Part::Shore,
            RunKind::Generator => Part::Generator,
            _ => Part::Panel,
        };
        self.columns += 1;
        let column = self.columns;
        let fuse = self.put(Part::Fuse(run), column, row::ISOLATOR);
        let device = self.put(part, column, row::DEVICE);
        self.join(bank.plus, fuse, Pole::Plus, run);
        self.join(fuse, device, Pole::Plus, run);
        self.join(device, bank.minus, Pole::Minus, run);
        if let RunKind::Controller(array) = run {
            self.columns += 1;
            let run = RunKind::Array(array);
            let switch = self.put(Part::ArraySwitch(array), self.columns, row::DEVICE);
            let modules = self.put(Part::Array(array), self.columns, row::BANK);
            self.join(device, switch, Pole::Both, run);
            self.join(switch, modules, Pole::Both, run);
        }
    }

    /// Width and height of the drawing.
    #[must_use]
    pub fn size(&self) -> (f64, f64) {
        // Half a cell more at the right, for what is written beside the last column.
        ((f64::from(self.columns) + 0.5) * CELL, f64::from(row::COUNT) * ROW)
    }

    /// The middle of a node; a bar is as wide as the drawing, so that it is met in any column.
    fn middle(&self, node: &Node, met_by: &Node) -> (f64, f64) {
        let bar = matches!(node.part, Part::PlusBar | Part::MinusBar);
        let column = if bar { met_by.column } else { node.column };
        ((f64::from(column) + 0.5) * CELL, (f64::from(node.row) + 0.5) * ROW)
    }

    /// All shapes, connections first so that symbols stand on them.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        let mut shapes = Vec::new();
        for line in &self.lines {
            if let (Some(from), Some(to)) = (self.nodes.get(line.from), self.nodes.get(line.to)) {
                let ends = [self.middle(from, to), self.middle(to, from)];
                shapes.push(Shape::Line { ends, pole: Some(line.pole) });
            }
        }
        for node in &self.nodes {
            self.symbol(node, &mut shapes);
        }
        shapes
    }

    /// The drawing as SVG with the two lines of text that `label` gives of a part: its name and what is to be known of it. Strokes are of
    /// the current colour, so that page and paper choose it; plus is drawn strongest and minus in dashes, so that no colour is needed.
    #[must_use]
    pub fn svg(&self, label: &dyn Fn(Part) -> [String; 2]) -> String {
        let (width, height) = self.size();
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" fill=\"none\" stroke=\"currentColor\" font-family=\"sans-serif\" font-size=\"11\">",
            tenth(width),
            tenth(height)
        );
        for shape in self.shapes() {
            svg.push_str(&element(&shape, label));
        }
        svg + "</svg>"
    }

    /// The symbol of a part with what is written beside it.
    fn symbol(&self, node: &Node, shapes: &mut Vec<Shape>) {
        let (x, y) = self.middle(node, node);
        let (wide, high) = BOX;
        let part = node.part;
        match part {
            Part::PlusBar | Part::MinusBar => {
                let right = f64::from(self.columns) * CELL;
                let pole = if part == Part::PlusBar { Pole::Plus } else { Pole::Minus };
                for off in [-1.5, 1.5] {
                    let ends = [(x, y + off), (right - CELL / 2.0, y + off)];
                    shapes.push(Shape::Line { ends, pole: Some(pole) });
                }
                shapes.push(Shape::Label { at: (x + 4.0, y - 6.0), part });
                return;
            }
            Part::Tap => return,
            _ => {}
        }
        let slim =
            matches!(part, Part::Fuse(_) | Part::Shunt | Part::Isolator | Part::ArraySwitch(_));
        let (wide, high) = if slim { (wide / 2.0, high / 2.0) } else { (wide, high) };
        shapes.push(Shape::Box { at: (x - wide, y - high), size: (2.0 * wide, 2.0 * high) });
        for Tick(from, to) in ticks(part) {
            let at = |(u, v): (f64, f64)| (x + u * wide, y + v * high);
            shapes.push(Shape::Line { ends: [at(*from), at(*to)], pole: None });
        }
        // Beside the line that goes on downwards, never over it.
        shapes.push(Shape::Label { at: (x + 4.0, y + high + 12.0), part });
    }
}

/// Letters of a line of text that have room in a cell.
const LETTERS: usize = 19;

/// A shape as an element of SVG.
fn element(shape: &Shape, label: &dyn Fn(Part) -> [String; 2]) -> String {
    match *shape {
        Shape::Line { ends: [from, to], pole } => {
            let style = match pole {
                Some(Pole::Plus) => " stroke-width=\"2\"",
                Some(Pole::Minus) => " stroke-dasharray=\"6 3\"",
                Some(Pole::Both) | None => "",
            };
            let [x1, y1, x2, y2] = [from.0, from.1, to.0, to.1].map(tenth);
            format!("<path d=\"M{x1} {y1}L{x2} {y2}\"{style}/>")
        }
        Shape::Box { at, size } => {
            let [x, y, width, height] = [at.0, at.1, size.0, size.1].map(tenth);
            format!(
                "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"Canvas\"/>"
            )
        }
        Shape::Label { at, part } => {
            let lines = label(part).into_iter().filter(|line| !line.is_empty()).zip([0.0, 12.0]);
            let lines = lines.map(|(line, below)| {
                let [x, y] = [at.0, at.1 + below].map(tenth);
                let text = escaped(&shortened(&line));
                format!(
                    "<text x=\"{x}\" y=\"{y}\" fill=\"currentColor\" stroke=\"none\">{text}</text>"
                )
            });
            lines.collect()
        }
    }
}

/// A line with no more letters than have room.
fn shortened(line: &str) -> String {
    if line.chars().count() <= LETTERS {
        return line.to_owned();
    }
    line.chars().take(LETTERS - 1).chain(['…']).collect()
}

/// A coordinate to a tenth.
fn tenth(value: f64) -> String {
    crate::words::decimal(value, 1)
}

/// Text that is no markup.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// What tells a part's box from any other: a fuse has a bar through it, a switch an open contact, a bank long and short plates, a shunt two
/// taps, modules a corner, an inverter and chargers a diagonal between what goes in and what comes out.
const fn ticks(part: Part) -> &'static [Tick] {
    match part {
        Part::Fuse(_) => &[Tick((-1.0, 0.0), (1.0, 0.0))],
        Part::Isolator | Part::ArraySwitch(_) => &[Tick((-0.6, 0.6), (0.6, -0.6))],
        Part::Bank => &[
            Tick((-0.7, -0.5), (0.7, -0.5)),
            Tick((-0.3, -0.1), (0.3, -0.1)),
            Tick((-0.7, 0.3), (0.7, 0.3)),
            Tick((-0.3, 0.7), (0.3, 0.7)),
        ],
        Part::Shunt => &[Tick((-0.5, -1.0), (-0.5, 1.0)), Tick((0.5, -1.0), (0.5, 1.0))],
        Part::Array(_) => &[Tick((-1.0, -1.0), (0.0, 0.0)), Tick((0.0, 0.0), (1.0, -1.0))],
        Part::Inverter | Part::Controller(_) | Part::Alternator | Part::Shore | Part::Generator => {
            &[Tick((-1.0, 1.0), (1.0, -1.0))]
        }
        Part::Panel => &[
            Tick((-0.5, -1.0), (-0.5, 1.0)),
            Tick((0.0, -1.0), (0.0, 1.0)),
            Tick((0.5, -1.0), (0.5, 1.0)),
        ],
        Part::Load(_) | Part::Alive => {
            &[Tick((-1.0, -1.0), (1.0, 1.0)), Tick((-1.0, 1.0), (1.0, -1.0))]
        }
        Part::Tap | Part::PlusBar | Part::MinusBar => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Document, Load, Rating};
    use crate::fitting::{Basis, Lengths};
    use crate::outlook::Outlook;
    use crate::place::Climate;
    use crate::system::System;

    fn diagram() -> Diagram {
        let plan = Document {
            loads: vec![
                Load { rating: Rating::PowerW(20.0), ..Load::default() },
                Load { rating: Rating::PowerW(900.0), ..Load::default() },
                Load { rating: Rating::PowerW(3.0), vital: true, ..Load::default() },
            ],
            arrays: vec![Array::default(), Array::default()],
            ..Document::default()
        };
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        let (basis, lengths) = (Basis::usual(&plan), Lengths::default());
        Fitting::of(&plan, &system, &outlook, &basis, &lengths).unwrap().diagram
    }

    #[test]
    fn every_connection_is_straight_and_no_two_parts_share_a_cell() {
        let own = diagram();
        let mut cells: Vec<_> = own.nodes.iter().map(|node| (node.column, node.row)).collect();
        cells.sort_unstable();
        let count = cells.len();
        cells.dedup();
        assert_eq!(cells.len(), count);
        assert!(own.nodes.iter().all(|node| node.column < own.columns && node.row < row::COUNT));
        for shape in own.shapes() {
            if let Shape::Line { ends: [a, b], pole: Some(_) } = shape {
                assert!(a.0 == b.0 || a.1 == b.1, "{shape:?}");
            }
        }
    }

    /// Whatever is cut from the bank by taking the shunt away has no other way to its minus.
    #[test]
    fn every_minus_but_the_banks_is_behind_the_shunt() {
        let own = diagram();
        let part = |place: usize| own.nodes[place].part;
        let minus: Vec<_> = own.lines.iter().filter(|line| line.pole == Pole::Minus).collect();
        assert!(minus.len() > 4);
        for line in minus {
            let ends = [part(line.from), part(line.to)];
            let of_bank = ends == [Part::Bank, Part::Shunt];
            assert!(of_bank || ends[1] == Part::MinusBar, "{ends:?}");
        }
        assert_eq!(own.nodes.iter().filter(|node| node.part == Part::Shunt).count(), 1);
    }
}
