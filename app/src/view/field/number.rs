//! The box for a number: label, text, unit, slider, hint, and what is wrong with what was typed.

use crate::signal::*;
use sunlarder_engine::digits;
use sunlarder_engine::document::{Field, Problem};
use sunlarder_engine::words::{Label, Typed, decimal};
use sunlarder_engine::working::Tag;

use super::fresh_id;
use crate::bind::{signal, watch};
use crate::dom::node::{View, group, node};
use crate::dom::part::typed;
use crate::store::{WORDS, words};

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
        Typed::Number(digits) => digits::number(&digits),
        Typed::Other => None,
    };
    let Some(value) = value else { return Err(words().no_number(field, text)) };
    // Before any unit is converted: whole degrees of one kind are no whole ones of the other.
    let whole = field.range().per_unit > 1.0 || value == value.trunc();
    let value = words().meant(field, value);
    if !field.range().holds(value) {
        let problem = Problem::OutOfRange { field, at: Tag::None, value };
        return Err(words().problem(&problem, &|_| None));
    }
    if !whole {
        return Err(words().whole_number(field, text));
    }
    Ok(Some(field.range().rounded(value)))
}

/// A number box with what stands around it.
pub(crate) struct NumberBox {
    pub(crate) label: String,
    pub(crate) hint: String,
    pub(crate) field: Field,
    pub(crate) slider: Option<(f64, f64, f64)>,
    pub(crate) optional: bool,
}

impl NumberBox {
    pub(crate) fn view(
        self,
        help: Option<[View; 2]>,
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
            // What is typical may have been typed out, which the plan does not tell apart.
            let own = read(&text.get_untracked(), field, optional);
            let typed_out = now.is_none() && own == Ok(typical.get_untracked());
            if own != Ok(now) && !typed_out {
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
                if let Some(new) = digits::number(&typed) {
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
                .attr("aria-label", label.clone())
                .prop("value", now)
                .on("input", slide)
                .view()
        });
        let described = format!("{hint_id} {error_id}");
        let invalid = Signal::derive(move || error.with(|error| !error.is_empty()));
        let invalid_word =
            Signal::derive(move || if invalid.get() { "true" } else { "false" }.to_owned());
        let placeholder = Signal::derive(move || typical.get().map(boxed).unwrap_or_default());
        let is_typical = Signal::derive(move || {
            let is = text.with(String::is_empty) && typical.with(Option::is_some);
            if is { WORDS.label(Label::Typical) } else { "" }.to_owned()
        });
        node("div")
            .attr("class", "field")
            .class_while("invalid", invalid)
            .child(node("label").attr("for", id.clone()).child(label).view())
            .child(help.map(|help| group(help.into())))
            .child(
                node("div")
                    .attr("class", "entry")
                    .child(
                        node("input")
                            .attr("id", id)
                            .attr("type", "text")
                            .attr("inputmode", "decimal")
                            .attr("autocomplete", "off")
                            .attr("placeholder", placeholder)
                            .prop("value", signal(text))
                            .attr("aria-invalid", invalid_word)
                            .attr("aria-describedby", described)
                            .on("input", typed(type_in))
                            .view(),
                    )
                    .child(
                        node("span").attr("class", "unit").child(words().field_unit(field)).view(),
                    )
                    .child(node("span").attr("class", "typical").child(is_typical).view())
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
    fn what_counts_in_whole_numbers_is_not_rounded_in_silence() {
        let sentence = read("2.5", Field::InSeries, false).unwrap_err();
        assert!(sentence.contains(WORDS.field(Field::InSeries)), "{sentence}");
        assert!(sentence.contains("2.5") && sentence.contains("400"), "{sentence}");
        assert_eq!(read("2.0", Field::InSeries, false), Ok(Some(2.0)));
        assert_eq!(
            read("2.25", Field::LoadPower, false),
            Ok(Some(2.3)),
            "finer figures are rounded"
        );
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
