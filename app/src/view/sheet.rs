//! The sheet that is printed. The worker writes it while the plan rests; the page puts its pictures in when printing begins, and
//! takes it away again. The screen never shows it.

use crate::signal::*;
use sunlarder_engine::document::date_text;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;

use super::place::today;
use super::share::page;
use crate::chart::{CurveData, day_strip, month_balance, printed_curve};
use crate::dom::node::{Child as _, Node, View, group, node, nothing};
use crate::dom::paper::elements;
use crate::dom::part::{dynamic, when};
use crate::edge::on_window;
use crate::outlook_data as data;
use crate::store::{Face, Solved, Store, WORDS};
use crate::worker::{Foretold, Said};

/// Width and height of the curve on paper \[px\].
const CURVE: (f64, f64) = (690.0, 205.0);

/// The sheet, there while the page is printed.
pub(crate) fn sheet(store: Store) -> View {
    let printing = RwSignal::new(false);
    on_window("beforeprint", move || printing.set(true));
    on_window("afterprint", move || printing.set(false));
    // One that was asked for is there before printing begins: whoever calls for that from a script gets nothing drawn meanwhile.
    let shows = memo(Box::new(move || printing.get() || store.sheet.with(|own| !own.is_empty())));
    let open = memo(Box::new(move || store.face.get() == Face::Planner));
    // Whoever prints much later prints what was worked out on this day.
    let argument = memo(Box::new(move || {
        store.drawn.track();
        argument()
    }));
    let written = move || {
        let wish = store.worked.ask_at_rest(Leaf::Sheet, argument.get());
        let shown = move || {
            let asked = store.sheet.get_untracked();
            if !asked.is_empty() {
                return filled(store, &asked);
            }
            wish.said.with_untracked(|said| match said {
                Said::Written(paper) if !paper.is_empty() => filled(store, paper),
                _ => nothing(),
            })
        };
        when(shows, shown).view()
    };
    when(open, move || dynamic(written).view()).view()
}

/// What the worker needs for the sheet: the day and the page's address.
fn argument() -> String {
    format!("{} {}", date_text(today()), page())
}

/// Prints a sheet of the plan as it is now.
pub(crate) fn print(store: Store, sheet: Leaf) {
    let then = Callback::new(move |paper: String| {
        store.sheet.set(paper);
        // What is over the page goes first, and the browser's own dialog keeps everything waiting.
        set_timeout(
            move || {
                let _ = window().print();
                store.sheet.set(String::new());
            },
            core::time::Duration::from_millis(50),
        );
    });
    store.dialog.set(None);
    store.worked.once(sheet, argument(), then);
}

/// The sheet with its pictures, as they are now.
fn filled(store: Store, paper: &str) -> View {
    let sheet = node("article").attr("class", "sheet").child(elements(paper));
    let sheet = match store.solved().solved() {
        Some(solved) => pictures(store, sheet, solved),
        None => sheet,
    };
    let foretold = store.worked.foretold.get_untracked();
    let Foretold { verdict, years, coming, .. } = foretold;
    if coming || verdict.is_empty() {
        return sheet.view();
    }
    let line = |text: String| node("li").child(text).view();
    let years = group(vec![
        node("h2").child(WORDS.label(L::InRealWeather)).view(),
        node("ul").child(years.into_iter().map(line).collect::<Vec<_>>()).view(),
    ]);
    sheet.put("chance", verdict.view()).put("years", years).view()
}

fn pictures(store: Store, sheet: Node, solved: &Solved) -> Node {
    let band = store.worked.band.get_untracked();
    let curve = CurveData { band, ..data::curve(solved) };
    let months = Signal::stored(data::months(solved));
    sheet
        .put("curve", printed_curve(&curve, CURVE))
        .put("day", day_strip(Signal::stored(data::day(solved))))
        .put("months", month_balance(months, Callback::new(|_| {})))
}
