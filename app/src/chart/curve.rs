//! The remaining-time curve: state of charge over the coming days, and a cursor to read any hour of it.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use leptos::web_sys;
use wasm_bindgen::JsCast;

use super::curve_plot::{CurveData, CurvePlot, Marker};
use super::label::Placed;
use super::path::strokes;
use super::width::{css, width_of};

/// State of charge from now on, with the nights, the reserve and the hour of reaching it.
///
/// The cursor follows a finger or mouse that is drawn along the picture, and the keys of a slider: arrows go by an hour,
/// Page Up and Down by six, Home and End to the ends, Escape puts it away.
#[component]
pub(crate) fn RemainingCurve(
    /// What to show.
    #[prop(into)]
    data: Signal<CurveData>,
    /// The hour being read, counted from the first sample \[h\]; nothing is read while it is `None`.
    cursor: RwSignal<Option<f64>>,
    /// What a screen reader says at an hour.
    #[prop(into)]
    value_text: Callback<f64, String>,
    /// What the cursor is called; the picture's own words if nothing is given.
    #[prop(optional, into)]
    cursor_label: Option<Signal<String>>,
) -> impl IntoView {
    let node = NodeRef::new();
    let width = width_of(node);
    let plot = Memo::new(move |_| data.with(|data| CurvePlot::new(data, width.get())));
    let point = Memo::new(move |_| {
        let hour = cursor.get()?;
        data.with(|data| plot.with(|plot| plot.point(data, hour)))
    });
    let name =
        move || cursor_label.map_or_else(|| data.with(|data| data.aria.clone()), |l| l.get());

    let read = move |event: &PointerEvent| {
        let Some(area) = area_of(event) else { return };
        let share = f64::from(event.offset_x()) / f64::from(area.client_width().max(1));
        cursor.set(Some(data.with_untracked(|data| data.hour_at(share))));
    };
    let grab = move |event: PointerEvent| {
        if let Some(area) = area_of(&event) {
            // Refused only for a pointer that is gone already; the press alone is read then.
            let _ = area.set_pointer_capture(event.pointer_id());
        }
        read(&event);
    };
    let drag = move |event: PointerEvent| {
        if event.buttons() != 0 {
            read(&event);
        }
    };
    let press = move |event: KeyboardEvent| {
        let hours = data.with_untracked(|data| data.hours);
        if let Some(hour) = after_key(&event.key(), cursor.get_untracked(), hours) {
            event.prevent_default();
            cursor.set(hour);
        }
    };

    view! {
        <div class="curve" node_ref=node>
            {move || plot.with(|plot| (plot.width > 0.0).then(|| picture(plot, data, point)))}
            <div
                class="curve-cursor"
                role="slider"
                tabindex="0"
                aria-label=name
                aria-valuemin="0"
                aria-valuemax=move || data.with(|data| data.hours.to_string())
                aria-valuenow=move || cursor.get().unwrap_or(0.0).to_string()
                aria-valuetext=move || value_text.run(cursor.get().unwrap_or(0.0))
                style:left=move || plot.with(|p| css(p.left))
                style:width=move || plot.with(|p| css(p.right - p.left))
                style:top=move || plot.with(|p| css(p.top))
                style:height=move || plot.with(|p| css(p.bottom - p.top))
                on:pointerdown=grab
                on:pointermove=drag
                on:keydown=press
            ></div>
        </div>
    }
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

fn picture(
    plot: &CurvePlot,
    data: Signal<CurveData>,
    point: Memo<Option<(f64, f64)>>,
) -> impl IntoView + use<> {
    let CurvePlot { width, height, left, right, top, bottom, .. } = *plot;
    let aria = data.with_untracked(|data| data.aria.clone());
    let title = aria.clone();
    view! {
        <svg role="img" aria-label=aria viewBox=format!("0 0 {width} {height}")>
            <title>{title}</title>
            {ground(plot)}
            {lines(plot)}
            {move || point.get().map(|(x, y)| view! {
                <line class="cursor-line" x1=x x2=x y1=top y2=bottom />
                <circle class="cursor-dot" cx=x cy=y r="5" />
            })}
            <line class="axis" x1=left x2=right y1=bottom y2=bottom />
            {plot.marker.as_ref().map(marker)}
        </svg>
    }
}

/// Nights, grid and scales: what lies behind the lines.
fn ground(plot: &CurvePlot) -> impl IntoView + use<> {
    let CurvePlot { left, right, top, bottom, days_y, .. } = *plot;
    let nights = plot.nights.iter().map(|(x, width)| {
        view! { <rect class="night" x=*x y=top width=*width height=bottom - top /> }
    });
    let rows = plot.rows.iter().map(|(y, base, figure)| {
        view! {
            <line class="grid" x1=left x2=right y1=*y y2=*y />
            <text class="tick" x=left - 8.0 y=*base text-anchor="end">{figure.clone()}</text>
        }
    });
    let midnights = strokes(&plot.midnights, top, bottom);
    let marks = strokes(&plot.hour_marks, bottom, bottom + 4.0);
    let days = plot.days.iter().map(|label| text("tick", label, days_y));
    view! {
        {nights.collect_view()}
        <text class="tick" x=left - 8.0 y=top - 10.0 text-anchor="end">"%"</text>
        {rows.collect_view()}
        <path class="grid" d=midnights />
        <path class="axis" d=marks />
        {days.collect_view()}
    }
}

fn lines(plot: &CurvePlot) -> impl IntoView + use<> {
    let CurvePlot { left, right, reserve_y, reserve_label_y, .. } = *plot;
    view! {
        <line class="reserve-line" x1=left x2=right y1=reserve_y y2=reserve_y />
        <path class="dark-line" d=plot.dark.clone() />
        <path class="typical-line" d=plot.typical.clone() />
        {text("reserve-label", &plot.reserve, reserve_label_y)}
    }
}

fn marker(marker: &Marker) -> impl IntoView + use<> {
    let Marker { x, y, label_y, stem_y, .. } = *marker;
    view! {
        <line class="stem" x1=x x2=x y1=y y2=stem_y />
        <circle class="reached" cx=x cy=y r="5" />
        {text("reached-label", &marker.label, label_y)}
    }
}

fn text(class: &'static str, label: &Placed, y: f64) -> impl IntoView + use<> {
    view! { <text class=class x=label.x y=y text-anchor=label.anchor.name()>{label.text.clone()}</text> }
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
