//! Controls for what is no number: a text, one of a few, one of many, yes or no, a press.

use crate::signal::*;
use sunlarder_engine::words::Label;

use super::fresh_id;
use crate::dom::node::{View, node};
use crate::dom::part::{act, typed};
use crate::store::WORDS;

/// A text of the plan.
pub(crate) fn text_box(
    label: &'static str,
    value: Signal<String>,
    typical: Signal<String>,
    set: Callback<String>,
) -> View {
    let id = fresh_id("text");
    let type_in = typed(move |text| set.run(text.chars().take(LONGEST_NAME).collect()));
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id.clone()).child(label).view())
        .child(
            node("div")
                .attr("class", "entry")
                .child(
                    node("input")
                        .attr("id", id)
                        .attr("type", "text")
                        .attr("maxlength", "80")
                        .attr("autocomplete", "off")
                        .attr("placeholder", typical)
                        .prop("value", value)
                        .on("input", type_in)
                        .view(),
                )
                .view(),
        )
        .view()
}

/// Most characters of a name.
const LONGEST_NAME: usize = 80;

/// One of a few, side by side; `get` and `set` deal in the place of the choice.
pub(crate) fn choice(
    legend: Label,
    options: &[Label],
    value: Signal<usize>,
    set: Callback<usize>,
) -> View {
    choice_of(legend, options.iter().map(|own| WORDS.label(*own)).collect(), value, set)
}

/// The same between names that are no labels.
pub(crate) fn choice_of(
    legend: Label,
    options: Vec<&'static str>,
    value: Signal<usize>,
    set: Callback<usize>,
) -> View {
    let name = fresh_id("choice");
    let one = |(at, told): (usize, &'static str)| {
        let chosen = Signal::derive(move || value.get() == at);
        node("label")
            .child(
                node("input")
                    .attr("type", "radio")
                    .attr("name", name.clone())
                    .prop("checked", chosen)
                    .on("change", typed(move |_| set.run(at)))
                    .view(),
            )
            .child(node("span").child(told).view())
            .view()
    };
    let options: Vec<View> = options.into_iter().enumerate().map(one).collect();
    node("fieldset")
        .attr("class", "choice")
        .child(node("legend").child(WORDS.label(legend)).view())
        .child(options)
        .view()
}

/// One of many, in a list that opens.
pub(crate) fn select(
    label: Label,
    options: Vec<&'static str>,
    value: Signal<usize>,
    set: Callback<usize>,
) -> View {
    let id = fresh_id("select");
    let one = |(at, words): (usize, &'static str)| {
        let chosen = Signal::derive(move || value.get() == at);
        node("option").attr("value", at.to_string()).prop("selected", chosen).child(words).view()
    };
    let options: Vec<View> = options.into_iter().enumerate().map(one).collect();
    let pick = typed(move |text| {
        if let Ok(at) = text.parse() {
            set.run(at);
        }
    });
    let now = Signal::derive(move || value.get().to_string());
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id.clone()).child(WORDS.label(label)).view())
        .child(
            node("div")
                .attr("class", "entry")
                .child(
                    node("select")
                        .attr("id", id)
                        .prop("value", now)
                        .on("change", pick)
                        .child(options)
                        .view(),
                )
                .view(),
        )
        .view()
}

/// A switch for each month.
pub(crate) fn month_toggles(legend: Label, value: Signal<u16>, set: Callback<u16>) -> View {
    toggles(legend, (0..12).map(|month| (month, WORDS.month_short(month))).collect(), value, set)
}

/// A row of small switches, one a bit, each under its name.
pub(crate) fn toggles(
    legend: Label,
    names: Vec<(usize, &'static str)>,
    value: Signal<u16>,
    set: Callback<u16>,
) -> View {
    let one = |(bit, name): (usize, &'static str)| {
        let has = Signal::derive(move || value.get() >> bit & 1 == 1);
        let flip = typed(move |_| set.run(value.get_untracked() ^ 1 << bit));
        node("label")
            .child(
                node("input")
                    .attr("type", "checkbox")
                    .prop("checked", has)
                    .on("change", flip)
                    .view(),
            )
            .child(node("span").child(name).view())
            .view()
    };
    let all: Vec<View> = names.into_iter().map(one).collect();
    node("fieldset")
        .attr("class", "days")
        .child(node("legend").child(WORDS.label(legend)).view())
        .child(all)
        .view()
}

/// Yes or no.
pub(crate) fn toggle(label: Label, value: Signal<bool>, set: Callback<bool>) -> View {
    toggle_saying(WORDS.label(label).to_owned(), value, set)
}

/// The same with words that are not always the same.
pub(crate) fn toggle_saying(words: String, value: Signal<bool>, set: Callback<bool>) -> View {
    let flip = typed(move |_| set.run(!value.get_untracked()));
    node("label")
        .attr("class", "toggle")
        .child(
            node("input").attr("type", "checkbox").prop("checked", value).on("change", flip).view(),
        )
        .child(node("span").child(words).view())
        .view()
}

/// A button.
pub(crate) fn button(label: Label, class: &'static str, press: impl FnMut() + 'static) -> View {
    button_saying(WORDS.label(label).to_owned(), class, press)
}

/// A button with words that are not always the same.
pub(crate) fn button_saying(
    words: String,
    class: &'static str,
    press: impl FnMut() + 'static,
) -> View {
    node("button")
        .attr("type", "button")
        .attr("class", class)
        .on("click", act(press))
        .child(words)
        .view()
}

/// A button that is not always to be pressed.
pub(crate) fn button_unless(
    label: Label,
    class: &'static str,
    off: Signal<bool>,
    press: impl FnMut() + 'static,
) -> View {
    node("button")
        .attr("type", "button")
        .attr("class", class)
        .attr("disabled", off)
        .on("click", act(press))
        .child(WORDS.label(label))
        .view()
}
