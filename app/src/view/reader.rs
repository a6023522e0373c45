//! What lies over a picture of cells and reads one of them: by finger, by mouse, by keys.

use crate::signal::*;
use sunlarder_engine::words::{Label, decimal};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent};

use crate::dom::node::{View, node};
use crate::dom::part::{Listener, when};
use crate::store::WORDS;

/// The cells of a picture: columns across, rows down; they count down first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Cells {
    pub(crate) columns: usize,
    pub(crate) rows: usize,
    /// Columns that the page keys go by.
    pub(crate) page: usize,
}

impl Cells {
    fn count(self) -> usize {
        self.columns * self.rows
    }

    /// The cell under a point, both in shares of the picture.
    fn at(self, across: f64, down: f64) -> usize {
        let place = |share: f64, count: usize| {
            let place = if share > 0.0 { (share * count as f64) as usize } else { 0 };
            place.min(count.saturating_sub(1))
        };
        place(across, self.columns) * self.rows + place(down, self.rows)
    }

    /// Where a key takes the cursor; the outer `None` leaves the key to the page.
    fn after_key(self, key: &str, cursor: Option<usize>) -> Option<Option<usize>> {
        let last = self.count().checked_sub(1)?;
        let now = cursor.unwrap_or(0);
        let cell = match key {
            "ArrowRight" => now + self.rows,
            "ArrowLeft" => now.saturating_sub(self.rows),
            "ArrowDown" => now + 1,
            "ArrowUp" => now.saturating_sub(1),
            "PageUp" => now + self.page * self.rows,
            "PageDown" => now.saturating_sub(self.page * self.rows),
            "Home" => 0,
            "End" => last,
            "Escape" if cursor.is_some() => return Some(None),
            _ => return None,
        };
        Some(Some(cell.min(last)))
    }
}

/// The reader over a picture; `said` is what is read at a cell.
pub(crate) fn reader(
    cells: Signal<Cells>,
    cursor: RwSignal<Option<usize>>,
    label: Label,
    said: Signal<String>,
) -> View {
    let now = memo(Box::new(move || decimal(cursor.get().unwrap_or(0) as f64, 0)));
    let most = memo(Box::new(move || decimal(cells.get().count().max(1) as f64 - 1.0, 0)));
    let there = memo(Box::new(move || cursor.get().is_some()));
    // The middle of the cell that is read.
    let percent = move |of: fn(Cells, usize) -> (usize, usize)| {
        memo(Box::new(move || {
            let (place, whole) = of(cells.get(), cursor.get().unwrap_or(0));
            format!("{}%", decimal((place as f64 + 0.5) * 100.0 / whole.max(1) as f64, 3))
        }))
    };
    let mark = move || {
        node("i")
            .attr("class", "reader-mark")
            .style_now("left", percent(|cells, at| (at / cells.rows.max(1), cells.columns)))
            .style_now("top", percent(|cells, at| (at % cells.rows.max(1), cells.rows)))
            .view()
    };
    node("div")
        .attr("class", "reader")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-label", WORDS.label(label))
        .attr("aria-valuemin", "0")
        .attr("aria-valuemax", most)
        .attr("aria-valuenow", now)
        .attr("aria-valuetext", said)
        .on("pointerdown", point(cells, cursor, true))
        .on("pointermove", point(cells, cursor, false))
        .on("keydown", press(cells, cursor))
        .child(when(there, mark))
        .view()
}

fn point(cells: Signal<Cells>, cursor: RwSignal<Option<usize>>, down: bool) -> Listener {
    Box::new(move |event: Event| {
        let target = event.current_target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        let event: PointerEvent = event.unchecked_into();
        let Some(area) = target.filter(|_| down || event.buttons() != 0) else { return };
        if down {
            // Refused only for a pointer that is gone already; the press alone is read then.
            let _ = area.set_pointer_capture(event.pointer_id());
        }
        let across = f64::from(event.offset_x()) / f64::from(area.client_width().max(1));
        let down = f64::from(event.offset_y()) / f64::from(area.client_height().max(1));
        cursor.set(Some(cells.get_untracked().at(across, down)));
    })
}

fn press(cells: Signal<Cells>, cursor: RwSignal<Option<usize>>) -> Listener {
    Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let after = cells.get_untracked().after_key(&event.key(), cursor.get_untracked());
        if let Some(cell) = after {
            event.prevent_default();
            cursor.set(cell);
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const YEAR: Cells = Cells { columns: 365, rows: 24, page: 30 };

    #[test]
    fn a_point_is_in_the_cell_under_it() {
        assert_eq!(YEAR.at(0.0, 0.0), 0);
        assert_eq!(YEAR.at(0.5, 0.5), 182 * 24 + 12);
        assert_eq!(YEAR.at(1.0, 1.0), 365 * 24 - 1);
        assert_eq!(YEAR.at(-3.0, 7.0), 23);
        assert_eq!(YEAR.at(f64::NAN, f64::NAN), 0);
    }

    #[test]
    fn keys_go_by_days_and_hours_and_stay_in_the_year() {
        let after = |key, at| YEAR.after_key(key, Some(at)).flatten();
        assert_eq!(after("ArrowRight", 5), Some(29));
        assert_eq!(after("ArrowLeft", 5), Some(0));
        assert_eq!(after("ArrowDown", 23), Some(24));
        assert_eq!(after("PageUp", 0), Some(720));
        assert_eq!(after("End", 0), Some(365 * 24 - 1));
        assert_eq!(after("ArrowRight", 365 * 24 - 2), Some(365 * 24 - 1));
        assert_eq!(YEAR.after_key("Escape", Some(3)), Some(None));
        assert_eq!(YEAR.after_key("Tab", Some(3)), None);
        assert_eq!(Cells { columns: 0, ..YEAR }.after_key("End", None), None);
    }
}
