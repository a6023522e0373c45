//! Units, clock and language: how figures are told, not what they are.

use crate::signal::*;
use sunlarder_engine::words::{Habits, Label as L, SITE};

use super::field::choice_of;
use crate::address;
use crate::dom::node::{View, group, node};
use crate::dom::part::act;
use crate::keep::storage;
use crate::speech::{WORDS, choose, remember_language, way_to, words};
use crate::store::{Face, Store};

/// A habit that can be chosen: its place among [`Habits::places`], what it is called, its ways.
type Row = (usize, L, &'static [L]);

/// Habits that some figure of the page knows.
static ROWS: [Row; 4] = [
    (0, L::TemperatureHabit, &[L::DegreesCelsius, L::DegreesFahrenheit]),
    (1, L::ClockHabit, &[L::Hours24, L::Hours12]),
    (3, L::LeadingHabit, &[L::LeadsAh, L::LeadsWh]),
    (4, L::DistanceHabit, &[L::Kilometres, L::Miles]),
];

/// The place of the habit of the week, whose ways are days.
const WEEK: usize = 2;

/// The habits, and the languages of the site.
pub(crate) fn habits(store: Store) -> View {
    let row = |(place, legend, ways): &Row| {
        let ways = ways.iter().map(|way| WORDS.label(*way)).collect();
        habit(store, *place, *legend, ways)
    };
    let mut rows: Vec<View> = ROWS.iter().map(row).collect();
    let days = [0, 6, 5].map(|day| WORDS.weekday(day)).into();
    rows.insert(WEEK, habit(store, WEEK, L::WeekHabit, days));
    group(vec![
        node("p").attr("class", "hint").child(WORDS.label(L::HabitsHint)).view(),
        node("div").attr("class", "habits").child(rows).view(),
        node("h3").child(WORDS.label(L::LanguageWord)).view(),
        languages(store),
    ])
}

fn habit(store: Store, place: usize, legend: L, ways: Vec<&'static str>) -> View {
    let now = move || words().habits.places()[place] as usize;
    let chosen = Signal::derive(move || {
        store.habits.track();
        now()
    });
    let set = Callback::new(move |way: usize| {
        let mut places = words().habits.places();
        places[place] = way as u32;
        choose(Habits::of_places(places));
        store.habits.update(|count| *count += 1);
    });
    choice_of(legend, ways, chosen, set)
}

/// The way to another page with the plan. It finds the plan on the device; where nothing is kept, in the link.
pub(super) fn with_plan(store: Store, way: String) -> String {
    if storage().is_some() || store.face.get_untracked() == Face::Start {
        return way;
    }
    store.plan.with_untracked(|plan| address::link(&way, plan)).unwrap_or(way)
}

/// The way to the page in each other language, which opens with the plan of this one.
pub(crate) fn languages(store: Store) -> View {
    let other = |(tag, name): &(&'static str, &'static str)| {
        let (tag, name) = (*tag, *name);
        node("a")
            .attr("class", "button quiet")
            .attr("href", with_plan(store, way_to(tag)))
            .attr("hreflang", tag)
            .attr("lang", tag)
            .on("click", act(move || remember_language(tag)))
            .child(name)
            .view()
    };
    let all = SITE.iter().filter(|(tag, _)| *tag != WORDS.tag()).map(other);
    node("nav")
        .attr("class", "row languages")
        .attr("aria-label", WORDS.label(L::LanguageWord))
        .child(all.collect::<Vec<_>>())
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::words::{ClockHabit, Distance, FirstDay, LeadingUnit, Temperature};

    #[test]
    fn every_row_has_the_ways_of_its_habit() {
        let counts = [
            Temperature::ALL.len(),
            ClockHabit::ALL.len(),
            FirstDay::ALL.len(),
            LeadingUnit::ALL.len(),
            Distance::ALL.len(),
        ];
        for (place, _, ways) in &ROWS {
            assert_eq!(ways.len(), counts[*place]);
        }
        assert_eq!(counts[WEEK], 3);
    }

    #[test]
    fn days_stand_in_the_order_of_their_ways() {
        for (way, day) in [0, 6, 5].into_iter().enumerate() {
            let mut places = [0; Habits::COUNT];
            places[WEEK] = way as u32;
            let own = sunlarder_engine::words::Words {
                language: WORDS,
                habits: Habits::of_places(places),
            };
            assert_eq!(own.week()[0], day);
        }
    }
}
