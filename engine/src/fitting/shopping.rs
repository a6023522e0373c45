//! What to buy: conductors by size, lugs, fuses with their holders, bus bars, isolator, shunt.
//!
//! **Method.** Summed over the runs, plus and minus, rounded up to whole metres. Runs that were refused are not in it. Lugs are two a
//! conductor. **Left out:** boxes, ducts, sleeves, tools, and everything on the mains side.

use super::conductor::Gauge;
use super::fuse::FuseClass;
use super::{Fitting, RunKind};
use crate::quantity::{Amps, Metres, Volts};

/// Something to buy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Item {
    /// Conductor of a size; its count is in metres.
    Conductor(Gauge),
    /// Lugs for a size.
    Lug(Gauge),
    /// Fuses.
    Fuse {
        /// Their kind.
        class: FuseClass,
        /// Their rating.
        rating: Amps,
    },
    /// Holders of fuses.
    Holder(FuseClass),
    /// Bus bars, one for plus and one for minus.
    BusBar {
        /// Their rating.
        rating: Amps,
    },
    /// The isolator of the bank.
    Isolator {
        /// Its continuous rating.
        rating: Amps,
        /// The voltage it must break.
        volts: Volts,
    },
    /// The shunt with its gauge.
    Shunt {
        /// Its rating.
        rated: Amps,
        /// The voltage over it then.
        drop: Volts,
    },
    /// A switch between an array and its controller.
    ArraySwitch {
        /// Its continuous rating.
        rating: Amps,
        /// The voltage it must break.
        volts: Volts,
    },
    /// A resistor or device that charges the inverter first.
    PreCharge,
}

/// Something to buy, and how much of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bought {
    /// It.
    pub item: Item,
    /// Pieces, or metres of conductor.
    pub count: f64,
}

/// Adds to what is bought already, or as something new.
fn add(list: &mut Vec<Bought>, item: Item, count: f64) {
    match list.iter_mut().find(|own| own.item == item) {
        Some(own) => own.count += count,
        None => list.push(Bought { item, count }),
    }
}

/// Where something stands in the list.
fn rank(item: &Item) -> (u8, usize) {
    match item {
        Item::Conductor(gauge) => (0, Gauge::COUNT - gauge.place()),
        Item::Lug(gauge) => (1, Gauge::COUNT - gauge.place()),
        Item::Fuse { class, rating } => (2, *class as usize * 10_000 + rating.0 as usize),
        Item::Holder(class) => (3, *class as usize),
        Item::Isolator { .. } => (4, 0),
        Item::ArraySwitch { .. } => (4, 1),
        Item::BusBar { .. } => (5, 0),
        Item::Shunt { .. } => (6, 0),
        Item::PreCharge => (7, 0),
    }
}

/// The list of a fitting.
pub(super) fn list(fitting: &Fitting) -> Vec<Bought> {
    let mut list = Vec::new();
    for run in &fitting.runs {
        let Ok(wire) = &run.wire else { continue };
        let asked = &run.asked;
        add(&mut list, Item::Conductor(wire.gauge), 2.0 * asked.length.0 * asked.count);
        add(&mut list, Item::Lug(wire.gauge), 4.0 * asked.count);
        if let Some(fuse) = &wire.fuse {
            add(&mut list, Item::Fuse { class: fuse.class, rating: fuse.rating }, asked.count);
            add(&mut list, Item::Holder(fuse.class), asked.count);
        }
        match (asked.kind, &wire.fuse) {
            (RunKind::Battery, Some(fuse)) => {
                let rating = fuse.rating;
                add(&mut list, Item::Isolator { rating, volts: fitting.short_circuit.volts }, 1.0);
            }
            (RunKind::Array(place), _) => {
                let check = fitting.arrays.iter().find(|own| own.array == place);
                let volts = check.map_or(asked.current.volts, |own| own.voltage);
                let rating = Amps((asked.current.continuous.0 * super::ROOM).ceil());
                add(&mut list, Item::ArraySwitch { rating, volts }, 1.0);
            }
            _ => {}
        }
    }
    if let Some(rating) = fitting.bus_bars.rating.filter(|_| fitting.bus_bars.needed) {
        add(&mut list, Item::BusBar { rating }, 2.0);
    }
    if let Some(own) = &fitting.shunt {
        add(&mut list, Item::Shunt { rated: own.shunt.rated, drop: own.shunt.drop }, 1.0);
    }
    if fitting.notes.contains(&super::Note::PreCharge) {
        add(&mut list, Item::PreCharge, 1.0);
    }
    for own in &mut list {
        own.count = own.count.ceil();
    }
    list.sort_by_key(|own| rank(&own.item));
    list
}

impl Bought {
    /// The length, if it is one.
    #[must_use]
    pub fn metres(&self) -> Option<Metres> {
        matches!(self.item, Item::Conductor(_)).then_some(Metres(self.count))
    }
}
