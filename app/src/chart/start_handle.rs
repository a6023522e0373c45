//! The first point of the remaining-time curve as a handle: dragged up or down, it sets the charge at the start.

use crate::signal::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent};

use super::curve_plot::CurvePlot;
use super::width::css;
use crate::dom::node::{View, node};
use crate::dom::part::Listener;
use sunlarder_engine::quantity::Within;
use sunlarder_engine::words::decimal;

/// The charge at the start and how it is set \[%\].
#[derive(Clone, Copy)]
pub(crate) struct Start {
    pub(crate) label: &'static str,
    pub(crate) charge: Signal<f64>,
    pub(crate) set: Callback<f64>,
}

/// Half the height of the handle, in units of the chart.
const HALF: f64 = 22.0;

/// The handle on a plot; arrows go by 1 %, the page keys by 10, Home and End to the ends.
pub(super) fn start_handle(start: Start, plot: Signal<CurvePlot>) -> View {
    let charge = start.charge;
    let top = memo(Box::new(move || {
        let charge = charge.get();
        css(plot.with(|plot| plot.height_of(charge)) - HALF)
    }));
    let right = memo(Box::new(move || css(plot.with(|plot| plot.left))));
    let now = memo(Box::new(move || decimal(charge.get(), 1)));
    let said = memo(Box::new(move || format!("{} %", now.get())));
    node("div")
        .attr("class", "curve-start")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-orientation", "vertical")
        .attr("aria-label", start.label)
        .attr("aria-valuemin", "0")
        .attr("aria-valuemax", "100")
        .attr("aria-valuenow", now)
        .attr("aria-valuetext", said)
        .style_now("top", top)
        .style_now("width", right)
        .on("pointerdown", drag(start, plot, true))
        .on("pointermove", drag(start, plot, false))
        .on("keydown", press(start))
        .view()
}

fn drag(start: Start, plot: Signal<CurvePlot>, down: bool) -> Listener {
    Box::new(move |event: Event| {
        let handle = event.current_target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        let event: PointerEvent = event.unchecked_into();
        let Some(handle) = handle.filter(|_| down || event.buttons() != 0) else { return };
        if down {
            // Refused only for a pointer that is gone already; then nothing is dragged.
            let _ = handle.set_pointer_capture(event.pointer_id());
            return;
        }
        let Some(frame) = handle.parent_element() else { return };
        // The event counts from the top of the handle, which moves with the charge.
        let top = handle.unchecked_ref::<web_sys::HtmlElement>().offset_top();
        let y = f64::from(top) + f64::from(event.offset_y());
        let share = y / f64::from(frame.client_height().max(1));
        let charge = plot.with_untracked(|plot| plot.charge_at(share * plot.height));
        if charge != start.charge.get_untracked() {
            start.set.run(charge);
        }
    })
}

fn press(start: Start) -> Listener {
    Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        if let Some(charge) = after_key(&event.key(), start.charge.get_untracked()) {
            event.prevent_default();
            start.set.run(charge);
        }
    })
}

/// Where a key takes the charge \[%\].
fn after_key(key: &str, now: f64) -> Option<f64> {
    let charge = match key {
        "ArrowUp" | "ArrowRight" => now + 1.0,
        "ArrowDown" | "ArrowLeft" => now - 1.0,
        "PageUp" => now + 10.0,
        "PageDown" => now - 10.0,
        "Home" => 0.0,
        "End" => 100.0,
        _ => return None,
    };
    Some(charge.within(0.0, 100.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_go_by_percents_and_stay_between_empty_and_full() {
        assert_eq!(after_key("ArrowUp", 40.5), Some(41.5));
        assert_eq!(after_key("PageDown", 4.0), Some(0.0));
        assert_eq!(after_key("PageUp", 95.0), Some(100.0));
        assert_eq!([after_key("Home", 5.0), after_key("End", 5.0)], [Some(0.0), Some(100.0)]);
        assert_eq!(after_key("Tab", 5.0), None);
    }
}
