//! The one component for a figure, and its kin for a text, a choice and a switch: label, control, unit, hint and error.
//!
//! They are plain functions over function pointers and give an erased view, so that each is compiled once however often it is
//! used: a form is a table, not code.

use core::sync::atomic::{AtomicU32, Ordering};

use leptos::prelude::*;
use sunlarder_engine::document::{Document, Field, Problem};
use sunlarder_engine::words::{Label, Typed};
use sunlarder_engine::working::Tag;

use crate::bind::{memo, signal, watch};
use crate::dom::node::{View, node, nothing};
use crate::dom::part::{Dynamic, Listener, act, dynamic, is_open, typed, when};
use crate::store::{Solved, Store, WORDS, words};
use sunlarder_engine::words::decimal;

/// A new id for an element that something refers to.
pub(crate) fn fresh_id(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}

/// A number for an attribute: no figure of the plan is finer than a thousandth.
fn plain(value: f64) -> String {
    if value.is_finite() { decimal(value, 3) } else { String::new() }
}

/// What was typed: nothing, a number within its range, or a sentence about what is wrong.
pub(crate) fn read(text: &str, field: Field, optional: bool) -> Result<Option<f64>, String> {
    let text = text.trim();
    let value = match words().typed(text) {
        Typed::Nothing if optional => return Ok(None),
        Typed::Nothing => return Err(words().missing(field)),
        Typed::Ambiguous { thousands, decimals } => {
            return Err(WORDS.ambiguous(field, text, &thousands, &decimals));
        }
        Typed::Number(digits) => number(&digits),
        Typed::Other => None,
    };
    let Some(value) = value else { return Err(words().no_number(field, text)) };
    let value = words().meant(field, value);
    if !field.range().holds(value) {
        let problem = Problem::OutOfRange { field, at: Tag::None, value };
        return Err(words().problem(&problem, &|_| None));
    }
    Ok(Some(field.range().rounded(value)))
}

/// A number in digits. On the page the browser reads it: Rust's own reader brings a table of 10 kB that nothing else needs.
fn number(text: &str) -> Option<f64> {
    #[cfg(target_arch = "wasm32")]
    let value = wasm_bindgen::JsValue::from_str(text).unchecked_into_f64();
    #[cfg(not(target_arch = "wasm32"))]
    let value = text.parse().unwrap_or(f64::NAN);
    Some(value).filter(|value| !value.is_nan())
}

/// A figure of the plan. Functions take the place of the load or array that it belongs to; others ignore it.
#[derive(Clone, Copy)]
pub(crate) struct Figure {
    field: Field,
    get: fn(&Document, usize) -> Option<f64>,
    set: fn(&mut Document, usize, f64),
    /// What an empty box does; without it the box must not be empty.
    clear: Option<fn(&mut Document, usize)>,
    typical: Option<fn(&Solved, usize) -> Option<f64>>,
    label: Option<Label>,
    hint: Option<Label>,
    slider: Option<(f64, f64, f64)>,
}

impl Figure {
    /// A figure that must be there.
    pub(crate) const fn new(
        field: Field,
        get: fn(&Document, usize) -> Option<f64>,
        set: fn(&mut Document, usize, f64),
    ) -> Self {
        Self { field, get, set, clear: None, typical: None, label: None, hint: None, slider: None }
    }

    /// It may be empty for what is typical.
    pub(crate) const fn or_typical(
        self,
        clear: fn(&mut Document, usize),
        typical: fn(&Solved, usize) -> Option<f64>,
    ) -> Self {
        Self { clear: Some(clear), typical: Some(typical), ..self }
    }

    /// Called otherwise than its field.
    pub(crate) const fn label(self, label: Label) -> Self {
        Self { label: Some(label), ..self }
    }

    /// Explained by a sentence.
    pub(crate) const fn hint(self, hint: Label) -> Self {
        Self { hint: Some(hint), ..self }
    }

    /// With a slider from, to and by.
    pub(crate) const fn slider(self, from: f64, to: f64, by: f64) -> Self {
        Self { slider: Some((from, to, by)), ..self }
    }

    /// Its control.
    pub(crate) fn view(&'static self, store: Store, place: usize) -> View {
        let label = self.label.map_or_else(|| WORDS.field(self.field), |own| WORDS.label(own));
        self.named(store, place, label)
    }

    /// Its control under another name.
    pub(crate) fn named(&'static self, store: Store, place: usize, label: &'static str) -> View {
        let get = self.get;
        let value = memo(Box::new(move || store.plan.with(|plan| get(plan, place))));
        let set = move |new: Option<f64>| {
            store.edit(label, &mut |plan| match (new, self.clear) {
                (Some(new), _) => (self.set)(plan, place, new),
                (None, Some(clear)) => clear(plan, place),
                (None, None) => {}
            });
        };
        let typical = Signal::derive(move || {
            let typical = self.typical?;
            store.answers.with(|answers| typical(answers.solved()?, place))
        });
        let hint = self.hint.map_or("", |hint| WORDS.label(hint));
        NumberBox {
            label,
            hint,
            field: self.field,
            slider: self.slider,
            optional: self.clear.is_some(),
        }
        .view(value, Callback::new(set), typical)
    }
}

/// Figures side by side.
pub(crate) fn fields(store: Store, place: usize, figures: &'static [Figure]) -> View {
    let boxes: Vec<View> = figures.iter().map(|figure| figure.view(store, place)).collect();
    node("div").attr("class", "fields").child(boxes).view()
}

/// A number box with what stands around it.
pub(crate) struct NumberBox {
    pub(crate) label: &'static str,
    pub(crate) hint: &'static str,
    pub(crate) field: Field,
    pub(crate) slider: Option<(f64, f64, f64)>,
    pub(crate) optional: bool,
}

impl NumberBox {
    pub(crate) fn view(
        self,
        value: Signal<Option<f64>>,
        set: Callback<Option<f64>>,
        typical: Signal<Option<f64>>,
    ) -> View {
        let Self { label, hint, field, slider, optional } = self;
        let id = fresh_id("field");
        let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
        let boxed = move |value: f64| {
            if value.is_finite() { words().boxed(field, value) } else { String::new() }
        };
        let text = RwSignal::new(value.get_untracked().map(boxed).unwrap_or_default());
        let error = RwSignal::new(String::new());
        watch(Box::new(move || {
            // A change from elsewhere (undo, another box) shows here; what is being typed stays as it is.
            let now = value.get();
            if read(&text.get_untracked(), field, optional) != Ok(now) {
                text.set(now.map(boxed).unwrap_or_default());
                error.set(String::new());
            }
        }));
        let type_in = move |typed: String| match read(&typed, field, optional) {
            Ok(new) => {
                error.set(String::new());
                text.set(typed);
                if new != value.get_untracked() {
                    set.run(new);
                }
            }
            Err(sentence) => {
                text.set(typed);
                error.set(sentence);
            }
        };
        let slide = slider.map(|(low, high, step)| {
            let now =
                Signal::derive(move || plain(words().shown(field, value.get().unwrap_or(low))));
            let slide = typed(move |typed| {
                if let Some(new) = number(&typed) {
                    let new = field.range().rounded(words().meant(field, new));
                    text.set(boxed(new));
                    error.set(String::new());
                    set.run(Some(new));
                }
            });
            node("input")
                .attr("class", "slider")
                .attr("type", "range")
                .attr("min", plain(words().shown(field, low)))
                .attr("max", plain(words().shown(field, high)))
                .attr("step", plain(step))
                .attr("aria-label", label)
                .prop("value", now)
                .on("input", slide)
                .view()
        });
        let described = format!("{hint_id} {error_id}");
        let invalid = Signal::derive(move || error.with(|error| !error.is_empty()));
        let invalid_word =
            Signal::derive(move || if invalid.get() { "true" } else { "false" }.to_owned());
        let typical = Signal::derive(move || typical.get().map(boxed).unwrap_or_default());
        node("div")
            .attr("class", "field")
            .class_while("invalid", invalid)
            .child(node("label").attr("for", id.clone()).child(label).view())
            .child(
                node("div")
                    .attr("class", "entry")
                    .child(
                        node("input")
                            .attr("id", id)
                            .attr("type", "text")
                            .attr("inputmode", "decimal")
                            .attr("autocomplete", "off")
                            .attr("placeholder", typical)
                            .prop("value", signal(text))
                            .attr("aria-invalid", invalid_word)
                            .attr("aria-describedby", described)
                            .on("input", typed(type_in))
                            .view(),
                    )
                    .child(
                        node("span").attr("class", "unit").child(words().field_unit(field)).view(),
                    )
                    .view(),
            )
            .child(slide)
            .child(node("p").attr("class", "hint").attr("id", hint_id).child(hint).view())
            .child(
                node("p")
                    .attr("class", "error")
                    .attr("id", error_id)
                    .attr("role", "alert")
                    .child(signal(error))
                    .view(),
            )
            .view()
    }
}

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

/// Yes or no.
pub(crate) fn toggle(label: Label, value: Signal<bool>, set: Callback<bool>) -> View {
    let flip = typed(move |_| set.run(!value.get_untracked()));
    node("label")
        .attr("class", "toggle")
        .child(
            node("input").attr("type", "checkbox").prop("checked", value).on("change", flip).view(),
        )
        .child(node("span").child(WORDS.label(label)).view())
        .view()
}

/// A button.
pub(crate) fn button(label: Label, class: &'static str, press: impl FnMut() + 'static) -> View {
    node("button")
        .attr("type", "button")
        .attr("class", class)
        .on("click", act(press))
        .child(WORDS.label(label))
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

/// What is folded away under a summary, made when it is first opened and then kept.
pub(crate) fn more(label: Label, mut inside: impl FnMut() -> View + 'static) -> View {
    let opened = RwSignal::new(false);
    let toggled = typed(move |_| {
        if !opened.get_untracked() {
            opened.set(true);
        }
    });
    let inside = dynamic(move || if opened.get() { inside() } else { nothing() });
    folded("more", label, toggled, inside)
}

/// What is folded away under a summary and is there only while it is open, because keeping it up to date costs something.
pub(crate) fn more_while(
    class: &'static str,
    label: Label,
    inside: impl FnMut() -> View + 'static,
) -> View {
    let open = RwSignal::new(false);
    let toggled: Listener = Box::new(move |event| open.set(is_open(&event)));
    folded(class, label, toggled, when(open.into(), inside))
}

fn folded(class: &'static str, label: Label, toggled: Listener, inside: Dynamic) -> View {
    node("details")
        .attr("class", class)
        .on("toggle", toggled)
        .child(node("summary").child(WORDS.label(label)).view())
        .child(inside)
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typed_figures_are_read_as_people_type_them() {
        assert_eq!(read(" 12,5 ", Field::LoadPower, false), Ok(Some(12.5)));
        assert_eq!(read("−3.5", Field::AirTemperature, false), Ok(Some(-3.5)));
        assert_eq!(read("", Field::HourRate, true), Ok(None));
    }

    #[test]
    fn what_is_wrong_names_field_value_and_range() {
        for typed in ["", "abc", "1e300", "-1", "NaN", "inf", "1..2"] {
            let sentence = read(typed, Field::LoadPower, false).unwrap_err();
            assert!(sentence.contains(WORDS.field(Field::LoadPower)), "{typed}: {sentence}");
        }
        let sentence = read("-1", Field::LoadPower, false).unwrap_err();
        assert!(sentence.contains('1') && sentence.contains('0'), "{sentence}");
    }
}
