//! What the worker writes about the plan, shown while somebody looks.

use crate::signal::*;
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::{Label, decimal};
use sunlarder_worker::leaf::Leaf;

use super::field::more_while;
use crate::bind::watch;
use crate::dom::node::{Child as _, View, node};
use crate::dom::paper::elements;
use crate::dom::part::dynamic;
use crate::store::Store;
use crate::worker::Said;

/// A leaf, asked of the worker for as long as what is being made lives, and written anew when the plan changes.
pub(crate) fn leaf(store: Store, own: Leaf, argument: String) -> View {
    leaf_of(store, own, argument).0
}

/// The same with the numbers that go along.
pub(crate) fn leaf_of(store: Store, own: Leaf, argument: String) -> (View, RwSignal<Vec<f64>>) {
    let wish = store.worked.ask(own, argument);
    (shown(wish.said), wish.numbers)
}

/// What was written, or the sentence in its place.
pub(super) fn shown(said: RwSignal<Said>) -> View {
    dynamic(move || {
        said.with(|said| match said {
            Said::Written(paper) => elements(paper),
            Said::Sentence(sentence) => node("p").attr("class", "hint").child(*sentence).view(),
        })
    })
    .view()
}

/// A leaf that follows its argument: what stands there stays until what is newer comes.
pub(super) fn turned(store: Store, own: Leaf, argument: Signal<String>) -> View {
    let wish = store.worked.ask(own, argument.get_untracked());
    let said = wish.said;
    watch(Box::new(move || store.worked.turn(&wish, argument.get())));
    shown(said)
}

/// How a figure was worked out, down to the sources, while its panel is open.
pub(crate) fn worked(store: Store, title: Label, question: Question) -> View {
    let argument = move || decimal(question as usize as f64, 0);
    more_while("working", title, move || leaf(store, Leaf::Working, argument()))
}
