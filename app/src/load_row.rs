//! What a load's row says, and how a load comes from the catalogue: plain functions, tested without a browser.

use sunlarder_engine::document::{Cooling, Load, Rating, Schedule, Span, When};
use sunlarder_engine::load::catalogue::{Appliance, Care, Pattern, entry};
use sunlarder_engine::place::folded;
use sunlarder_engine::words::{Label, decimal};

use crate::store::{WORDS, words};

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

/// A load with the typical figures of an appliance, to be edited.
pub(crate) fn from_catalogue(appliance: Appliance) -> Load {
    let typical = entry(appliance);
    let when = match typical.pattern {
        Pattern::Always => When::Always,
        Pattern::HoursPerDay(hours) => When::HoursPerDay(hours),
        Pattern::Between { from_min, to_min } => When::Spans(vec![Span { from_min, to_min }]),
    };
    Load {
        appliance: Some(appliance.number()),
        quantity: typical.quantity.into(),
        rating: Rating::PowerW(typical.power.0),
        supply: typical.supply,
        duty_pct: typical.duty.0,
        schedule: Schedule::daily(when),
        surge: typical.surge,
        cooling: typical
            .heat
            .map(|heat| Cooling { inside_c: heat.inside.0, reference_c: heat.reference.0 }),
        vital: typical.care == Care::Critical,
        ..Load::default()
    }
}

/// Appliances that match what somebody typed, those whose name begins with it first.
pub(crate) fn find(query: &str) -> Vec<Appliance> {
    let query = folded(query);
    let words: Vec<&str> = query.split_whitespace().take(8).collect();
    let mut found: Vec<(u8, Appliance)> = Vec::new();
    for appliance in Appliance::ALL {
        let name = folded(WORDS.appliance(*appliance));
        let all = folded(&format!("{name} {}", WORDS.appliance_words(*appliance)));
        let starts = |word: &&str| all.split_whitespace().any(|own| own.starts_with(*word));
        let rank = if name.starts_with(&query) {
            0
        } else if words.iter().all(|word| name.contains(word)) {
            1
        } else if words.iter().all(starts) {
            2
        } else if words.iter().all(|word| all.contains(word)) {
            3
        } else {
            continue;
        };
        // Within a rank in the order of the catalogue.
        found.insert(found.partition_point(|(other, _)| *other <= rank), (rank, *appliance));
    }
    found.into_iter().map(|(_, appliance)| appliance).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_appliance_makes_a_load_within_its_limits() {
        for appliance in Appliance::ALL {
            let load = from_catalogue(*appliance);
            let plan = sunlarder_engine::document::Document {
                loads: vec![load.clone()],
                ..Default::default()
            };
            let checked = plan.checked().unwrap();
            assert_eq!(checked.loads[0], load, "{appliance:?} is not at its resolution");
            assert!(!name(&load).is_empty() && !when(&load).is_empty());
        }
    }

    #[test]
    fn everyday_words_find_appliances() {
        let first = |query: &str| find(query).first().map(|appliance| WORDS.appliance(*appliance));
        assert!(first("kettle").is_some_and(|name| name.to_lowercase().contains("kettle")));
        assert!(first("frid").is_some_and(|name| name.to_lowercase().starts_with("fridge")));
        assert_eq!(first("Kéttle"), first("kettle"));
        assert!(find("zzzz").is_empty());
        assert_eq!(find("").len(), Appliance::ALL.len());
        assert!(find(&"a ".repeat(10_000)).len() <= Appliance::ALL.len());
    }
}
