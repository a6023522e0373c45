//! The diagram of a fitting: what is connected to what, where it stands on a grid, and the shapes of it.
//!
//! **Method.** The bank stands at the left: upwards its fuse and its isolator to the plus bar, downwards the shunt to the minus bar. Every
//! consumer and every charger stands between the two bars, so no minus but the bank's is on the bank's side of the shunt. What must stay
//! alive is tapped between main fuse and isolator. Connections are straight: ends lie in one row or one column.

use super::{Fitting, FusePlace, RunKind};

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
pub(super) mod row {
    pub(super) const PLUS: u16 = 0;
    pub(super) const ISOLATOR: u16 = 1;
    pub(super) const TAP: u16 = 2;
    pub(super) const DEVICE: u16 = 3;
    pub(super) const BANK: u16 = 4;
    pub(super) const SHUNT: u16 = 5;
    pub(super) const MINUS: u16 = 6;
    pub(in crate::fitting) const COUNT: u16 = 7;
}

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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Document, Load, Rating};
    use crate::fitting::Shape;
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
