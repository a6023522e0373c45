//! The shapes of a diagram, and the same as SVG.
//!
//! **Method.** The symbols are drawn here, by the usual signs of circuit diagrams (a bar in a box for a fuse, an open contact for a switch,
//! long and short plates for a bank). Lengths are in units of the drawing; `y` grows downwards.

use super::diagram::{Diagram, Node, Part, Pole, row};

/// Width of a cell.
const CELL: f64 = 120.0;
/// Height of a cell.
const ROW: f64 = 70.0;
/// Half the size of a symbol's box.
const BOX: (f64, f64) = (38.0, 20.0);

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

impl Diagram {
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

/// A line of text with no more letters than have room beside a symbol.
#[must_use]
pub fn shortened(line: &str) -> String {
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
