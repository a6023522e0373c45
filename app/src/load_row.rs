//! What the rows of the loads say, in which order they stand, and how one is moved: plain functions, tested without a browser.

use sunlarder_engine::document::{Document, Load, When, loads_moved};
use sunlarder_engine::load::catalogue::Appliance;
use sunlarder_engine::outlook::Budget;
use sunlarder_engine::quantity::{AmpHours, Within};
use sunlarder_engine::words::{Label, decimal};

use crate::store::{Solved, WORDS, words};

/// What a load is called: its own name, or that of its appliance.
pub(crate) fn name(load: &Load) -> String {
    if !load.name.is_empty() {
        return load.name.clone();
    }
    let appliance = load.appliance.and_then(Appliance::from_number);
    appliance
        .map_or_else(|| WORDS.unnamed_load().to_owned(), |known| WORDS.appliance(known).to_owned())
}

/// When a load is on, as short as it can be said.
pub(crate) fn when(load: &Load) -> String {
    match &load.schedule.when {
        When::Always if load.cooling.is_some() => WORDS.always_by_heat().to_owned(),
        When::Always => WORDS.always().to_owned(),
        When::HoursPerDay(hours) => words().hours_a_day(*hours),
        When::Spans(spans) => spans
            .iter()
            .map(|span| {
                format!("{} – {}", words().clock(span.from_min), words().clock_end(span.to_min))
            })
            .collect::<Vec<_>>()
            .join(", "),
    }
}

/// The line under a load's name: how many, and when; or that it stays at home.
pub(crate) fn summary(load: &Load) -> String {
    if !load.on {
        return WORDS.label(Label::LeftAtHome).to_owned();
    }
    let times = if load.quantity > 1.0 {
        format!("{} × ", decimal(load.quantity, 0))
    } else {
        String::new()
    };
    times + &when(load)
}

/// What a row says of the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Row {
    /// What the load is called.
    pub(crate) name: String,
    /// How many, and when.
    pub(crate) when: String,
    /// Whether it is taken along.
    pub(crate) on: bool,
    /// The person's own group; empty for none.
    pub(crate) group: String,
}

/// The rows of all loads.
pub(crate) fn rows(plan: &Document) -> Vec<Row> {
    let row = |load: &Load| Row {
        name: name(load),
        when: summary(load),
        on: load.on,
        group: load.group.clone(),
    };
    plan.loads.iter().map(row).collect()
}

/// What a row says of the answers; blank for a load that is not counted.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Taken {
    /// Charge of a day.
    pub(crate) charge: String,
    /// Its unit.
    pub(crate) unit: &'static str,
    /// Its share of the day.
    pub(crate) share: String,
    /// Its part of the largest, as a length of the underline.
    pub(crate) scale: String,
}

impl Taken {
    fn of(charge: AmpHours, largest: AmpHours, solved: &Solved) -> Self {
        let total = solved.outlook.budget.total.at_least(AmpHours(f64::MIN_POSITIVE));
        let percent = charge / total * 100.0;
        let small = percent > 0.0 && percent < 0.5;
        let percent = if small { "< 1".to_owned() } else { decimal(percent, 0) };
        Self {
            charge: words().charge_number(charge, solved.system.bank.nominal),
            unit: words().charge_unit(),
            share: WORDS.share_of_day(&percent),
            scale: format!("scaleX({})", decimal((charge / largest).within(0.0, 1.0), 3)),
        }
    }
}

/// What all loads take, by their places, and behind them what the system itself takes with what it is called and when it does.
pub(crate) fn taken(solved: &Solved) -> (Vec<Taken>, Vec<(Label, String, Taken)>) {
    let budget = &solved.outlook.budget;
    let always = || WORDS.always().to_owned();
    let own = [
        (
            Label::InverterAwake,
            words().hours_a_day(budget.inverter.hours.0),
            budget.inverter.charge,
        ),
        (Label::StandingDraw, always(), budget.standing),
        (Label::ProtectionCircuits, always(), budget.protection),
    ];
    let charges = budget.loads.iter().map(|load| load.charge);
    let all = charges.chain(own.iter().map(|(.., charge)| *charge));
    // A list of nothing but idle loads has no largest.
    let largest = all.fold(AmpHours(f64::MIN_POSITIVE), AmpHours::at_least);
    let mut rows: Vec<Taken> = Vec::new();
    for load in &budget.loads {
        let place = usize::from(load.place);
        if rows.len() <= place {
            rows.resize_with(place + 1, || Taken {
                scale: "scaleX(0)".to_owned(),
                ..Taken::default()
            });
        }
        if let Some(row) = rows.get_mut(place) {
            *row = Taken::of(load.charge, largest, solved);
        }
    }
    let own = own.into_iter().filter(|(.., charge)| charge.0 > 0.0);
    let own = own.map(|(label, when, charge)| (label, when, Taken::of(charge, largest, solved)));
    (rows, own.collect())
}

/// Charge of a day of a group's loads.
pub(crate) fn charge_of_group(solved: &Solved, rows: &[Row], group: &str) -> String {
    let of_group = |place: u16| rows.get(usize::from(place)).is_some_and(|row| row.group == group);
    let loads = solved.outlook.budget.loads.iter().filter(|load| of_group(load.place));
    let charge = loads.map(|load| load.charge).fold(AmpHours::ZERO, |sum, own| sum + own);
    words().charge_number(charge, solved.system.bank.nominal)
}

/// Something in the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Item {
    /// The heading of a group; empty for the loads that have none.
    Heading(String),
    /// A load by its place in the plan.
    Load(usize),
}

/// Groups in the order in which they first come, each with its loads unless it is folded; those without a group at the end, next to
/// where loads are added.
pub(crate) fn order(rows: &[Row], folded: &[String]) -> Vec<Item> {
    let mut groups: Vec<&str> = Vec::new();
    for row in rows {
        if !row.group.is_empty() && !groups.contains(&row.group.as_str()) {
            groups.push(&row.group);
        }
    }
    let headed = !groups.is_empty();
    if rows.iter().any(|row| row.group.is_empty()) {
        groups.push("");
    }
    let mut items = Vec::new();
    for group in groups {
        if headed {
            items.push(Item::Heading(group.to_owned()));
        }
        if !headed || !folded.iter().any(|own| own == group) {
            let own = rows.iter().enumerate().filter(|(_, row)| row.group == group);
            items.extend(own.map(|(place, _)| Item::Load(place)));
        }
    }
    items
}

/// The load that stands before or after another in the list.
pub(crate) fn neighbour(items: &[Item], place: usize, after: bool) -> Option<usize> {
    let loads = items.iter().filter_map(|item| match item {
        Item::Load(place) => Some(*place),
        Item::Heading(_) => None,
    });
    let loads: Vec<usize> = loads.collect();
    let at = loads.iter().position(|own| *own == place)?;
    let at = if after { at + 1 } else { at.checked_sub(1)? };
    loads.get(at).copied()
}

/// The places of all loads once one of them stands before or behind another. Within a group the others keep the places that the group
/// has, so that no other group moves.
pub(crate) fn moved(rows: &[Row], from: usize, to: usize, behind: bool) -> Option<Vec<usize>> {
    let group = &rows.get(to)?.group;
    let same = rows.get(from)?.group == *group;
    let stays = |place: &usize| !same || rows.get(*place).is_some_and(|row| row.group == *group);
    let slots: Vec<usize> = (0..rows.len()).filter(stays).collect();
    let mut order: Vec<usize> =
        slots.iter().copied().filter(|own| *own != from || from == to).collect();
    if from != to {
        let at = order.iter().position(|own| *own == to)?;
        order.insert(at + usize::from(behind), from);
    }
    let mut all: Vec<usize> = (0..rows.len()).collect();
    for (slot, place) in slots.into_iter().zip(order) {
        if let Some(own) = all.get_mut(slot) {
            *own = place;
        }
    }
    Some(all)
}

/// A load moved by one in the list: into the neighbouring group where its own ends. Whose group it goes into, and the places of all.
pub(crate) fn stepped(
    rows: &[Row],
    items: &[Item],
    place: usize,
    down: bool,
) -> Option<(usize, Vec<usize>)> {
    let to = neighbour(items, place, down)?;
    let same = rows.get(to)?.group == rows.get(place)?.group;
    Some((to, moved(rows, place, to, down == same)?))
}

/// Puts the loads into an order of their places.
pub(crate) fn arrange(plan: &mut Document, order: &[usize]) {
    let old = core::mem::take(&mut plan.loads);
    plan.loads = order.iter().filter_map(|place| old.get(*place).cloned()).collect();
    loads_moved(&mut plan.checks, &|own| found(order, own.into()).map(|at| at as u16));
}

/// Where a load stands in an order.
pub(crate) fn found(order: &[usize], place: usize) -> Option<usize> {
    order.iter().position(|own| *own == place)
}

/// The places of all loads with those that take most first; those that take the same keep their order, what stays at home comes last.
pub(crate) fn largest_first(count: usize, budget: &Budget) -> Vec<usize> {
    let mut order: Vec<(AmpHours, usize)> = Vec::new();
    for place in 0..count {
        let own = budget.loads.iter().find(|own| usize::from(own.place) == place);
        let charge = own.map_or(AmpHours(-1.0), |own| own.charge);
        let at = order.iter().take_while(|(other, _)| *other >= charge).count();
        order.insert(at, (charge, place));
    }
    order.into_iter().map(|(_, place)| place).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan(groups: &[(&str, &str)]) -> Document {
        let load = |(name, group): &(&str, &str)| Load {
            name: (*name).to_owned(),
            group: (*group).to_owned(),
            ..Load::default()
        };
        Document { loads: groups.iter().map(load).collect(), ..Document::default() }
    }

    fn seen(plan: &Document, folded: &[String]) -> String {
        let rows = rows(plan);
        let said = |item: &Item| match item {
            Item::Heading(group) => format!("[{group}]"),
            Item::Load(place) => rows[*place].name.clone(),
        };
        order(&rows, folded).iter().map(said).collect::<Vec<_>>().join(" ")
    }

    const MIXED: [(&str, &str); 5] =
        [("a", ""), ("b", "Galley"), ("c", "Deck"), ("d", "Galley"), ("e", "")];

    #[test]
    fn groups_stand_together_and_what_has_none_at_the_end() {
        let mixed = plan(&MIXED);
        assert_eq!(seen(&mixed, &[]), "[Galley] b d [Deck] c [] a e");
        assert_eq!(seen(&mixed, &["Galley".into(), String::new()]), "[Galley] [Deck] c []");
        assert_eq!(seen(&plan(&[("a", ""), ("b", "")]), &[String::new()]), "a b");
        assert_eq!(seen(&plan(&[]), &[]), "");
    }

    /// Steps a load once and gives its new place.
    fn step(plan: &mut Document, place: usize, down: bool) -> Option<usize> {
        let rows = rows(plan);
        let (to, all) = stepped(&rows, &order(&rows, &[]), place, down)?;
        plan.loads[place].group = rows[to].group.clone();
        arrange(plan, &all);
        found(&all, place)
    }

    #[test]
    fn a_load_steps_through_its_group_and_into_the_next() {
        let mut own = plan(&MIXED);
        let mut place = 1;
        let mut orders = Vec::new();
        for _ in 0..4 {
            place = step(&mut own, place, true).unwrap();
            assert_eq!(own.loads[place].name, "b");
            orders.push(seen(&own, &[]));
        }
        assert_eq!(
            orders,
            [
                "[Galley] d b [Deck] c [] a e",
                "[Galley] d [Deck] b c [] a e",
                "[Galley] d [Deck] c b [] a e",
                "[Galley] d [Deck] c [] b a e",
            ]
        );
        for _ in 0..4 {
            place = step(&mut own, place, false).unwrap();
        }
        assert_eq!(seen(&own, &[]), "[Galley] b d [Deck] c [] a e");
        let (first, last) = (place, own.loads.len() - 1);
        assert_eq!(step(&mut own, first, false), None);
        assert_eq!(step(&mut own, last, true), None);
    }

    #[test]
    fn a_move_keeps_every_load() {
        let rows = rows(&plan(&MIXED));
        for from in 0..5 {
            for to in 0..5 {
                for behind in [false, true] {
                    let mut all = moved(&rows, from, to, behind).unwrap();
                    let at = found(&all, from).unwrap();
                    assert!(from == to || found(&all, to).unwrap().abs_diff(at) >= 1);
                    all.sort_unstable();
                    assert_eq!(all, [0, 1, 2, 3, 4]);
                }
            }
        }
        assert_eq!(moved(&rows, 7, 0, true), None);
        assert_eq!(moved(&rows, 0, 7, true), None);
    }
}
