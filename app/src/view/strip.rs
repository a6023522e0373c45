//! The day as a strip on which hours are painted and erased, with the night of the plan's place and month behind it.
//!
//! A press on what is off paints, one on what is on erases, as far as it is dragged. With keys: arrows move a mark by a quarter of an
//! hour, space switches the quarter under it, Shift with an arrow carries on what is there.

use crate::signal::*;
use sunlarder_engine::document::{DAY_MIN, Span, is_painted, painted};
use sunlarder_engine::words::{Label as L, decimal};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::field::fresh_id;
use super::schedule::Edited;
use crate::bind::drawn;
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{Listener, dynamic};
use crate::dom::stroke::{Stroke, stroked};
use crate::outlook_data;
use crate::store::{Store, WORDS, words};

/// What a finger can aim at \[min\].
const FINGER: u16 = 30;
/// What keys move by \[min\]: the step of the simulation.
const KEY: u16 = 15;

/// A stroke of the brush: the stretches before it, where it began, and whether it paints.
#[derive(Clone)]
struct Brush {
    before: Vec<Span>,
    from: u16,
    on: bool,
}

impl Brush {
    /// The stretches once it has come to a minute, painted in pieces of a length.
    fn at(&self, minute: u16, piece: u16) -> Vec<Span> {
        let start = |minute: u16| minute / piece * piece;
        let (low, high) = (self.from.min(minute), self.from.max(minute));
        painted(&self.before, start(low), start(high) + piece, self.on)
    }
}

/// The minute of the day at a share of the strip's length.
fn minute_at(share: f64) -> u16 {
    // A cast of a float saturates, so beyond the ends are the ends.
    ((share * f64::from(DAY_MIN)) as u16).min(DAY_MIN - 1)
}

/// What a key does to the mark, and whether it carries on what is under it; nothing if it is the page's.
fn after_key(key: &str, mark: u16) -> Option<u16> {
    Some(match key {
        "ArrowRight" | "ArrowUp" => (mark + KEY).min(DAY_MIN - KEY),
        "ArrowLeft" | "ArrowDown" => mark.saturating_sub(KEY),
        "PageUp" => (mark + 60).min(DAY_MIN - KEY),
        "PageDown" => mark.saturating_sub(60),
        "Home" => 0,
        "End" => DAY_MIN - KEY,
        _ => return None,
    })
}

/// The strip.
pub(super) fn strip(store: Store, edited: Edited) -> View {
    let brush = StoredValue::new(None::<Brush>);
    let mark = RwSignal::new(18 * 60);
    let paint = move |spans: Vec<Span>| {
        if edited.spans() != spans {
            edited.set_spans(spans);
        }
    };
    let spoken = memo(Box::new(move || {
        let at = mark.get();
        let on = edited.with_spans(|spans| is_painted(spans, at));
        WORDS.on_at(&words().clock(at), &words().clock_end(at + KEY), on)
    }));
    let keys: Listener = Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let now = mark.get_untracked();
        let is_on = is_painted(&edited.spans(), now);
        if matches!(event.key().as_str(), " " | "Enter") {
            paint(painted(&edited.spans(), now, now + KEY, !is_on));
        } else if let Some(to) = after_key(&event.key(), now) {
            if event.shift_key() {
                let brush = Brush { before: edited.spans(), from: now, on: is_on };
                paint(brush.at(to, KEY));
            }
            mark.set(to);
        } else {
            return;
        }
        event.prevent_default();
    });
    let hint = fresh_id("strip-hint");
    let own = node("div")
        .attr("class", "strip")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-label", WORDS.label(L::DrawHours))
        .attr("aria-describedby", hint.clone())
        .attr("aria-valuemin", "0")
        .attr("aria-valuemax", (DAY_MIN - KEY).to_string())
        .attr("aria-valuenow", Signal::derive(move || mark.get().to_string()))
        .attr("aria-valuetext", spoken)
        .on("keydown", keys)
        .child(nights(store))
        .child(blocks(edited))
        .child(
            node("i")
                .attr("class", "brush")
                .style_now("left", Signal::derive(move || percent(mark.get())))
                .view(),
        );
    let own = stroked(own, move |stroke, event| {
        let area = event.current_target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        let Some(area) = area else { return };
        let share = f64::from(event.offset_x()) / f64::from(area.client_width().max(1));
        let minute = minute_at(share);
        match stroke {
            Stroke::Down => {
                let before = edited.spans();
                let on = !is_painted(&before, minute);
                brush.set_value(Some(Brush { before, from: minute, on }));
            }
            Stroke::Move | Stroke::Up => {}
            Stroke::Lost => {
                // The browser took the finger for its own: nothing was meant.
                if let Some(brush) = brush.try_update_value(Option::take).flatten() {
                    paint(brush.before);
                }
            }
        }
        if let Some(brush) = brush.get_value() {
            paint(brush.at(minute, FINGER));
            mark.set(minute / KEY * KEY);
        }
    });
    let hours: Vec<View> =
        [0, 6, 12, 18, 24].map(|hour| node("span").child(words().hour_mark(hour)).view()).into();
    group(vec![
        own.view(),
        node("div").attr("class", "strip-hours").attr("aria-hidden", "true").child(hours).view(),
        node("p")
            .attr("class", "hint")
            .child(drawn(store.drawn, outlook_data::sun_of_month))
            .view(),
        node("p").attr("class", "hint").attr("id", hint).child(WORDS.label(L::DrawHint)).view(),
    ])
}

/// A time of the day as a length of the strip.
fn percent(minute: u16) -> String {
    format!("{}%", decimal(f64::from(minute) / f64::from(DAY_MIN) * 100.0, 2))
}

/// The hours in which it is on.
fn blocks(edited: Edited) -> View {
    dynamic(move || {
        let parts = edited
            .with_spans(|spans| spans.iter().flat_map(|span| span.unwrapped()).collect::<Vec<_>>());
        let parts = parts.into_iter().filter(|(from, to)| from < to);
        let block = |(from, to): (u16, u16)| {
            node("i").style("left", &percent(from)).style("width", &percent(to - from)).view()
        };
        parts.map(block).collect::<Vec<_>>().view()
    })
    .view()
}

/// The hours without sun on the typical day of the month.
fn nights(store: Store) -> View {
    let nights = drawn(store.drawn, outlook_data::nights_of_month);
    dynamic(move || {
        let one = |(from, to): (u16, u16)| {
            node("i")
                .attr("class", "night")
                .style("left", &percent(from))
                .style("width", &percent(to - from))
                .view()
        };
        nights.get().into_iter().map(one).collect::<Vec<_>>().view()
    })
    .view()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stroke_paints_what_it_passes_in_either_direction() {
        let brush = Brush { before: Vec::new(), from: minute_at(0.5), on: true };
        assert_eq!(brush.at(minute_at(0.76), FINGER), ["12:00-18:30".parse().unwrap()]);
        assert_eq!(brush.at(minute_at(0.24), FINGER), ["05:30-12:30".parse().unwrap()]);
        assert_eq!(brush.at(minute_at(-3.0), FINGER), ["00:00-12:30".parse().unwrap()]);
        assert_eq!(brush.at(minute_at(9.0), FINGER), ["12:00-24:00".parse().unwrap()]);
    }

    #[test]
    fn keys_keep_the_mark_within_the_day() {
        let mut mark = 0;
        for _ in 0..200 {
            mark = after_key("ArrowRight", mark).unwrap();
        }
        assert_eq!(mark, DAY_MIN - KEY);
        assert_eq!(after_key("PageDown", 15), Some(0));
        assert_eq!(after_key("Tab", 15), None);
    }
}
