//! The remaining-time curve: state of charge over the coming days, and a cursor to read any hour of it.

use crate::signal::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent};

use super::curve_plot::{CurveData, CurvePlot, Marker};
use super::label::{Anchor, Placed};
use super::path::strokes;
use super::shape::{self, dot, line, path, rect, text};
use super::start_handle::{Start, start_handle};
use super::width::{css, width_of};
use crate::dom::node::{View, group, node, nothing};
use crate::dom::part::{Listener, dynamic};
use sunlarder_engine::words::decimal;

/// State of charge from now on, with the nights, the reserve and the hour of reaching it.
///
/// `cursor` is the hour being read, counted from the first sample \[h\]; nothing is read while it is `None`. It follows a finger
/// or mouse that is drawn along the picture, and the keys of a slider: arrows go by an hour, Page Up and Down by six, Home and
/// End to the ends, Escape puts it away. `value_text` is what a screen reader says at an hour, `label` what it calls the cursor.
/// `start` is the first point, which can be dragged.
pub(crate) fn remaining_curve(
    data: Signal<CurveData>,
    cursor: RwSignal<Option<f64>>,
    value_text: Callback<f64, String>,
    label: Signal<String>,
    start: Start,
) -> View {
    let frame = node("div").attr("class", "curve");
    let width = width_of(&frame.element());
    let plot = memo(Box::new(move || data.with(|data| CurvePlot::new(data, width.get()))));
    let point = memo(Box::new(move || {
        let hour = cursor.get()?;
        data.with(|data| plot.with(|plot| plot.point(data, hour)))
    }));
    let drawn = dynamic(move || {
        let plot = plot.get();
        let aria = data.with_untracked(|data| data.aria.clone());
        if plot.width > 0.0 { picture(&plot, &aria, point) } else { nothing() }
    });
    let at = move || cursor.get().unwrap_or(0.0);
    let length =
        |of: fn(&CurvePlot) -> f64| memo(Box::new(move || plot.with(|plot| css(of(plot)))));
    let slider = node("div")
        .attr("class", "curve-cursor")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-label", label)
        .attr("aria-valuemin", "0")
        .attr("aria-valuemax", memo(Box::new(move || data.with(|data| decimal(data.hours, 2)))))
        .attr("aria-valuenow", memo(Box::new(move || decimal(at(), 2))))
        .attr("aria-valuetext", memo(Box::new(move || value_text.run(at()))))
        .style_now("left", length(|plot| plot.left))
        .style_now("width", length(|plot| plot.right - plot.left))
        .style_now("top", length(|plot| plot.top))
        .style_now("height", length(|plot| plot.bottom - plot.top))
        .on("pointerdown", grab(data, cursor))
        .on("pointermove", drag(data, cursor))
        .on("keydown", press(data, cursor));
    frame.child(drawn).child(slider.view()).child(start_handle(start, plot)).view()
}

/// The same for paper: of a fixed size and without a cursor.
pub(crate) fn printed_curve(data: &CurveData, (width, height): (f64, f64)) -> View {
    let plot = CurvePlot::sized(data, width, height);
    let picture = picture(&plot, &data.aria, Signal::stored(None));
    node("div").attr("class", "curve").child(picture).view()
}

/// Reads the hour under the pointer.
fn read(event: &PointerEvent, data: Signal<CurveData>, cursor: RwSignal<Option<f64>>) {
    let Some(area) = area_of(event) else { return };
    let share = f64::from(event.offset_x()) / f64::from(area.client_width().max(1));
    cursor.set(Some(data.with_untracked(|data| data.hour_at(share))));
}

fn grab(data: Signal<CurveData>, cursor: RwSignal<Option<f64>>) -> Listener {
    Box::new(move |event: Event| {
        let event: PointerEvent = event.unchecked_into();
        if let Some(area) = area_of(&event) {
            // Refused only for a pointer that is gone already; the press alone is read then.
            let _ = area.set_pointer_capture(event.pointer_id());
        }
        read(&event, data, cursor);
    })
}

fn drag(data: Signal<CurveData>, cursor: RwSignal<Option<f64>>) -> Listener {
    Box::new(move |event: Event| {
        let event: PointerEvent = event.unchecked_into();
        if event.buttons() != 0 {
            read(&event, data, cursor);
        }
    })
}

fn press(data: Signal<CurveData>, cursor: RwSignal<Option<f64>>) -> Listener {
    Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let hours = data.with_untracked(|data| data.hours);
        if let Some(hour) = after_key(&event.key(), cursor.get_untracked(), hours) {
            event.prevent_default();
            cursor.set(hour);
        }
    })
}

/// The area over the plot that an event is about.
fn area_of(event: &PointerEvent) -> Option<web_sys::Element> {
    event.target()?.dyn_into().ok()
}

/// Where a key takes the cursor; the outer `None` leaves the key to the page.
fn after_key(key: &str, cursor: Option<f64>, hours: f64) -> Option<Option<f64>> {
    let now = cursor.unwrap_or(0.0);
    let hour = match key {
        "ArrowRight" | "ArrowUp" => now + 1.0,
        "ArrowLeft" | "ArrowDown" => now - 1.0,
        "PageUp" => now + 6.0,
        "PageDown" => now - 6.0,
        "Home" => 0.0,
        "End" => hours,
        "Escape" if cursor.is_some() => return Some(None),
        _ => return None,
    };
    Some(Some(hour.min(hours).max(0.0)))
}

fn picture(plot: &CurvePlot, aria: &str, point: Signal<Option<(f64, f64)>>) -> View {
    let CurvePlot { width, height, left, right, top, bottom, .. } = *plot;
    let cursor = dynamic(move || match point.get() {
        Some((x, y)) => {
            group(vec![line("cursor-line", (x, top), (x, bottom)), dot("cursor-dot", (x, y))])
        }
        None => nothing(),
    });
    shape::picture(aria, (width, height), false)
        .child(ground(plot))
        .child(lines(plot))
        .child(cursor)
        .child(line("axis", (left, bottom), (right, bottom)))
        .child(plot.marker.as_ref().map(marker))
        .view()
}

/// Nights, grid and scales: what lies behind the lines.
fn ground(plot: &CurvePlot) -> View {
    let CurvePlot { left, right, top, bottom, days_y, .. } = *plot;
    let figure = |text: String| Placed { text, x: left - 8.0, anchor: Anchor::End };
    let mut all = Vec::new();
    for (x, width) in &plot.nights {
        all.push(rect("night", (*x, top), (*width, bottom - top)));
    }
    all.push(text("tick", &figure("%".to_owned()), top - 10.0));
    for (y, base, percent) in &plot.rows {
        all.push(line("grid", (left, *y), (right, *y)));
        all.push(text("tick", &figure(percent.clone()), *base));
    }
    all.push(path("grid", &strokes(&plot.midnights, top, bottom)));
    all.push(path("axis", &strokes(&plot.hour_marks, bottom, bottom + 4.0)));
    for label in &plot.days {
        all.push(text("tick", label, days_y));
    }
    group(all)
}

fn lines(plot: &CurvePlot) -> View {
    let CurvePlot { left, right, reserve_y, reserve_label_y, .. } = *plot;
    group(vec![
        path("band", &plot.band),
        line("reserve-line", (left, reserve_y), (right, reserve_y)),
        path("dark-line", &plot.dark),
        path("replayed-line", &plot.replayed),
        path("baseline-line", &plot.baseline),
        path("typical-line", &plot.typical),
        text("reserve-label", &plot.reserve, reserve_label_y),
    ])
}

fn marker(marker: &Marker) -> View {
    let Marker { x, y, label_y, stem_y, .. } = *marker;
    group(vec![
        line("stem", (x, y), (x, stem_y)),
        dot("reached", (x, y)),
        text("reached-label", &marker.label, label_y),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arrows_go_by_the_hour_and_pages_by_six() {
        assert_eq!(after_key("ArrowRight", Some(3.25), 72.0), Some(Some(4.25)));
        assert_eq!(after_key("PageDown", Some(10.0), 72.0), Some(Some(4.0)));
        assert_eq!(after_key("End", None, 72.0), Some(Some(72.0)));
    }

    #[test]
    fn the_cursor_stays_on_the_picture() {
        assert_eq!(after_key("ArrowLeft", None, 72.0), Some(Some(0.0)));
        assert_eq!(after_key("PageUp", Some(70.0), 72.0), Some(Some(72.0)));
    }

    #[test]
    fn escape_puts_the_cursor_away_and_other_keys_are_the_pages() {
        assert_eq!(after_key("Escape", Some(1.0), 72.0), Some(None));
        assert_eq!(after_key("Escape", None, 72.0), None);
        assert_eq!(after_key("Tab", Some(1.0), 72.0), None);
    }
}
