//! What loads want on the days of a plan, each kind of day worked out once.
//!
//! But for the air around what cools, loads want the same on two days on which the same schedules hold: most months and dates share it.

use std::rc::Rc;

use super::almanac::LitDay;
use super::days::{Day, day, inside_air};
use crate::load::{DayDemand, DayKind, day_demand};
use crate::sky::SkyDay;
use crate::system::System;

/// Whether the schedule of each load holds on a day and on the day before.
type Held = Vec<(bool, bool)>;

/// What the loads of one system want, as far as it is worked out.
#[derive(Default)]
pub(super) struct Wants(Vec<(Held, Rc<DayDemand>)>);

impl Wants {
    /// What the loads want through a day of this kind under this sky.
    pub(super) fn on(&mut self, system: &System, kind: DayKind, sky: &SkyDay) -> Rc<DayDemand> {
        let held: Held = system.loads.iter().map(|load| kind.holds(&load.schedule)).collect();
        if let Some((_, demand)) = self.0.iter().find(|own| own.0 == held) {
            return Rc::clone(demand);
        }
        let air = inside_air(system, sky);
        let demand = Rc::new(day_demand(&system.loads, system.inverter.as_ref(), kind, &air));
        let mut running = system.loads.iter().zip(&held).filter(|(_, held)| held.0 || held.1);
        if !running.any(|(load, _)| load.cooling.is_some()) {
            self.0.push((held, Rc::clone(&demand)));
        }
        demand
    }

    /// What acts on the bank through a day of this kind under this sky.
    pub(super) fn acting(&mut self, system: &System, kind: DayKind, lit: &LitDay) -> Day {
        let demand = self.on(system, kind, &lit.sky);
        day(system, kind, lit, &demand.steps)
    }
}
