//! What the list of loads says: dispatch to the languages.

use super::{Language, Words};
use crate::document::Field;

impl Language {
    /// The switch of a load that is taken along or left at home.
    #[must_use]
    pub fn take_along(self, name: &str) -> String {
        speak!(self, loads::take_along(name))
    }

    /// The grip by which a load is moved in the list.
    #[must_use]
    pub fn move_load(self, name: &str) -> String {
        speak!(self, loads::move_load(name))
    }

    /// How many loads a group has, and how many of them stay at home.
    #[must_use]
    pub fn in_group(self, loads: usize, at_home: usize) -> String {
        speak!(self, loads::in_group(loads, at_home))
    }

    /// A load's part of what goes out in a day.
    #[must_use]
    pub fn share_of_day(self, percent: &str) -> String {
        speak!(self, loads::share_of_day(percent))
    }

    /// That a group was left at home, or taken along again.
    #[must_use]
    pub fn group_switched(self, group: &str, on: bool) -> String {
        speak!(self, loads::group_switched(group, on))
    }

    /// A stretch of the day under the brush, and whether the load is on in it.
    #[must_use]
    pub fn on_at(self, from: &str, to: &str, on: bool) -> String {
        speak!(self, loads::on_at(from, to, on))
    }

    /// When the sun rises and sets on the drawn day.
    #[must_use]
    pub fn sun_from_to(self, rise: &str, set: &str, month: &str) -> String {
        speak!(self, loads::sun_from_to(rise, set, month))
    }

    /// The button that gives the array a tilt.
    #[must_use]
    pub fn use_tilt(self, tilt: &str) -> String {
        speak!(self, loads::use_tilt(tilt))
    }

    /// The button that puts a fitting inverter into the plan.
    #[must_use]
    pub fn use_inverter(self, power: &str) -> String {
        speak!(self, loads::use_inverter(power))
    }

    /// That an inverter of a size is in the plan now.
    #[must_use]
    pub fn added_inverter(self, power: &str) -> String {
        speak!(self, loads::added_inverter(power))
    }

    /// That the answers are those of before a wrong entry.
    #[must_use]
    pub fn before_wrong_entry(self) -> &'static str {
        speak!(self, loads::before_wrong_entry())
    }

    /// The name of a direction, by its place in steps of 30° clockwise from north.
    #[must_use]
    pub fn direction(self, place: usize) -> &'static str {
        speak!(self, loads::direction(place))
    }
}

impl Words {
    /// That a field counts in whole numbers, and that what was typed is none.
    #[must_use]
    pub fn whole_number(self, field: Field, typed: &str) -> String {
        speak!(self.language, loads::whole_number(self, field, typed))
    }
}
