//! The one component for a figure: label, number box, slider, unit, hint and error.

use core::sync::atomic::{AtomicU32, Ordering};

use leptos::prelude::*;
use sunlarder_engine::document::{Field, Problem};
use sunlarder_engine::working::Tag;

use crate::store::WORDS;

/// A new id for an element that something refers to.
pub(crate) fn fresh_id(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}

/// A number as a person types it back.
pub(crate) fn plain(value: f64) -> String {
    if value.is_finite() { value.to_string() } else { String::new() }
}

/// What was typed: nothing, a number within its range, or a sentence about what is wrong.
pub(crate) fn read(text: &str, field: Field, optional: bool) -> Result<Option<f64>, String> {
    let text = text.trim().replace('\u{2212}', "-").replace(',', ".");
    if text.is_empty() {
        return if optional { Ok(None) } else { Err(WORDS.missing(field)) };
    }
    let Ok(value) = text.parse::<f64>() else { return Err(WORDS.no_number(field, &text)) };
    if !field.range().holds(value) {
        let problem = Problem::OutOfRange { field, at: Tag::None, value };
        return Err(WORDS.problem(&problem, &|_| None));
    }
    Ok(Some(field.range().rounded(value)))
}

/// A figure that may be left empty for what is typical.
#[component]
pub(crate) fn NumberField(
    /// What it is called; the field's usual name if nothing is given.
    #[prop(optional, into)]
    label: Option<String>,
    /// Its range, resolution and unit.
    field: Field,
    /// Its value; none while it is left to what is typical.
    #[prop(into)]
    value: Signal<Option<f64>>,
    /// Told the new value.
    #[prop(into)]
    set: Callback<Option<f64>>,
    /// Whether it may be empty.
    #[prop(optional)]
    optional: bool,
    /// What is taken if it is empty.
    #[prop(optional, into)]
    typical: Option<Signal<String>>,
    /// The unit, if it is not the field's own.
    #[prop(optional, into)]
    unit: Option<String>,
    /// Lowest, highest and step of a slider.
    #[prop(optional, into)]
    slider: Option<(f64, f64, f64)>,
    /// A sentence that explains it.
    #[prop(optional, into)]
    hint: Option<String>,
) -> impl IntoView {
    let id = fresh_id("field");
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let label = label.unwrap_or_else(|| WORDS.field(field).to_owned());
    let unit = unit.unwrap_or_else(|| field.range().unit.symbol().to_owned());
    let text = RwSignal::new(value.get_untracked().map(plain).unwrap_or_default());
    let error = RwSignal::new(None::<String>);
    Effect::new(move |_| {
        // A change from elsewhere (undo, another box) shows here; what is being typed stays as it is.
        let now = value.get();
        if read(&text.get_untracked(), field, optional) != Ok(now) {
            text.set(now.map(plain).unwrap_or_default());
            error.set(None);
        }
    });
    let type_in = move |typed: String| match read(&typed, field, optional) {
        Ok(new) => {
            error.set(None);
            text.set(typed);
            if new != value.get_untracked() {
                set.run(new);
            }
        }
        Err(sentence) => {
            text.set(typed);
            error.set(Some(sentence));
        }
    };
    let slide = move |typed: String| {
        if let Ok(Some(new)) = read(&typed, field, optional) {
            text.set(plain(new));
            error.set(None);
            set.run(Some(new));
        }
    };
    let slider_label = label.clone();
    let described = format!("{hint_id} {error_id}");
    view! {
        <div class="field" class:invalid=move || error.with(Option::is_some)>
            <label for=id.clone()>{label}</label>
            <div class="entry">
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    placeholder=move || typical.map(|typical| typical.get()).unwrap_or_default()
                    prop:value=move || text.get()
                    aria-invalid=move || error.with(|error| if error.is_some() { "true" } else { "false" })
                    aria-describedby=described
                    on:input:target=move |event| type_in(event.target().value())
                />
                <span class="unit">{unit}</span>
            </div>
            {slider.map(|(low, high, step)| view! {
                <input
                    class="slider"
                    type="range"
                    min=low
                    max=high
                    step=step
                    aria-label=slider_label
                    prop:value=move || value.get().unwrap_or(low).to_string()
                    on:input:target=move |event| slide(event.target().value())
                />
            })}
            <p class="hint" id=hint_id>{hint}</p>
            <p class="error" id=error_id role="alert">{move || error.get()}</p>
        </div>
    }
}

/// A text.
#[component]
pub(crate) fn TextField(
    /// What it is called.
    #[prop(into)]
    label: String,
    /// The text.
    #[prop(into)]
    value: Signal<String>,
    /// Told the new text.
    #[prop(into)]
    set: Callback<String>,
    /// Most characters.
    #[prop(default = 80)]
    limit: usize,
    /// What is shown while it is empty.
    #[prop(optional, into)]
    typical: Option<Signal<String>>,
) -> impl IntoView {
    let id = fresh_id("text");
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="entry">
                <input
                    id=id
                    type="text"
                    maxlength=limit
                    autocomplete="off"
                    placeholder=move || typical.map(|typical| typical.get()).unwrap_or_default()
                    prop:value=move || value.get()
                    on:input:target=move |event| set.run(event.target().value().chars().take(limit).collect())
                />
            </div>
        </div>
    }
}

/// One of a few, side by side.
#[component]
pub(crate) fn Choice<T>(
    /// What is chosen.
    #[prop(into)]
    legend: String,
    /// The choices with their words.
    options: Vec<(T, String)>,
    /// The present one.
    #[prop(into)]
    value: Signal<T>,
    /// Told the new one.
    #[prop(into)]
    set: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let name = fresh_id("choice");
    let options = options.into_iter().map(|(option, words)| {
        view! {
            <label>
                <input
                    type="radio"
                    name=name.clone()
                    prop:checked=move || value.get() == option
                    on:change=move |_| set.run(option)
                />
                <span>{words}</span>
            </label>
        }
    });
    view! { <fieldset class="choice"><legend>{legend}</legend>{options.collect_view()}</fieldset> }
}

/// One of many, in a list that opens.
#[component]
pub(crate) fn Select<T>(
    /// What is chosen.
    #[prop(into)]
    label: String,
    /// The choices with their words.
    options: Vec<(T, String)>,
    /// The present one.
    #[prop(into)]
    value: Signal<T>,
    /// Told the new one.
    #[prop(into)]
    set: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let id = fresh_id("select");
    let values: Vec<T> = options.iter().map(|(option, _)| *option).collect();
    let chosen = values.clone();
    let items = options.into_iter().enumerate().map(|(place, (option, words))| {
        view! { <option value=place prop:selected=move || value.get() == option>{words}</option> }
    });
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="entry">
                <select
                    id=id
                    prop:value=move || {
                        let now = value.get();
                        chosen.iter().position(|option| *option == now).unwrap_or(0).to_string()
                    }
                    on:change:target=move |event| {
                        let place = event.target().value().parse::<usize>();
                        if let Some(option) = place.ok().and_then(|place| values.get(place)) {
                            set.run(*option);
                        }
                    }
                >
                    {items.collect_view()}
                </select>
            </div>
        </div>
    }
}

/// Yes or no.
#[component]
pub(crate) fn Toggle(
    /// What it switches.
    #[prop(into)]
    label: String,
    /// Whether it is on.
    #[prop(into)]
    value: Signal<bool>,
    /// Told the new state.
    #[prop(into)]
    set: Callback<bool>,
) -> impl IntoView {
    view! {
        <label class="toggle">
            <input
                type="checkbox"
                prop:checked=move || value.get()
                on:change:target=move |event| set.run(event.target().checked())
            />
            <span>{label}</span>
        </label>
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
    fn what_is_wrong_names_field_value_and_range() {
        for typed in ["", "abc", "1e300", "-1", "NaN", "inf", "1..2"] {
            let sentence = read(typed, Field::LoadPower, false).unwrap_err();
            assert!(sentence.contains(WORDS.field(Field::LoadPower)), "{typed}: {sentence}");
        }
        let sentence = read("-1", Field::LoadPower, false).unwrap_err();
        assert!(sentence.contains('1') && sentence.contains('0'), "{sentence}");
    }
}
