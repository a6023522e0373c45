//! Reference cases: inputs, expected values and tolerances with the publication or library they come from.

use serde_json::Value;

/// Nothing, or what is wrong with a case.
pub type Outcome = Result<(), String>;

/// Compares a value with the expected one.
///
/// # Errors
/// If they are further apart than allowed, or one is no number.
pub fn near(what: &str, computed: f64, expected: f64, allowed: f64) -> Outcome {
    let apart = (computed - expected).abs();
    if apart <= allowed {
        return Ok(());
    }
    Err(format!("{what} is {computed}, expected {expected}, apart by {apart}, allowed {allowed}"))
}

/// One case.
#[derive(Clone, Debug)]
pub struct Case(Value);

/// The cases of a file of `tests/reference` (its text).
///
/// # Errors
/// A text that is no list of cases.
pub fn cases(text: &str) -> Result<Vec<Case>, String> {
    let file: Value = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let list = file["cases"].as_array().ok_or("no list of cases")?;
    Ok(list.iter().cloned().map(Case).collect())
}

impl Case {
    /// Its name.
    #[must_use]
    pub fn id(&self) -> &str {
        self.0["id"].as_str().unwrap_or("a case without a name")
    }

    /// An input as a number; NaN, which no comparison accepts, if there is none.
    #[must_use]
    pub fn input(&self, name: &str) -> f64 {
        self.0["inputs"][name].as_f64().unwrap_or(f64::NAN)
    }

    /// An input within a group of them; NaN if there is none.
    #[must_use]
    pub fn input_in(&self, group: &str, name: &str) -> f64 {
        self.0["inputs"][group][name].as_f64().unwrap_or(f64::NAN)
    }

    /// An input as text; empty if there is none.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.0["inputs"][name].as_str().unwrap_or_default()
    }

    /// An input that is a list of numbers.
    #[must_use]
    pub fn inputs(&self, name: &str) -> Vec<f64> {
        numbers(&self.0["inputs"][name])
    }

    /// An input that is a list of lists of numbers.
    #[must_use]
    pub fn input_rows(&self, name: &str) -> Vec<Vec<f64>> {
        rows(&self.0["inputs"][name])
    }

    /// An input that is a table of numbers by numbers, in no particular order.
    #[must_use]
    pub fn input_table(&self, name: &str) -> Vec<(f64, f64)> {
        table(&self.0["inputs"][name])
    }

    /// An expected table of numbers by numbers, in no particular order.
    #[must_use]
    pub fn expected_table(&self, name: &str) -> Vec<(f64, f64)> {
        table(&self.0["expected"][name])
    }

    /// An expected list of lists of numbers.
    #[must_use]
    pub fn expected_rows(&self, name: &str) -> Vec<Vec<f64>> {
        rows(&self.0["expected"][name])
    }

    /// An expected number; NaN if there is none.
    #[must_use]
    pub fn expected(&self, name: &str) -> f64 {
        self.0["expected"][name].as_f64().unwrap_or(f64::NAN)
    }

    /// An expected number within a group of them; NaN if there is none.
    #[must_use]
    pub fn expected_in(&self, group: &str, name: &str) -> f64 {
        self.0["expected"][group][name].as_f64().unwrap_or(f64::NAN)
    }

    /// An expected list of numbers.
    #[must_use]
    pub fn expected_list(&self, name: &str) -> Vec<f64> {
        numbers(&self.0["expected"][name])
    }

    /// A tolerance; NaN if there is none.
    #[must_use]
    pub fn tolerance(&self, name: &str) -> f64 {
        self.0["tolerance"][name].as_f64().unwrap_or(f64::NAN)
    }

    /// Compares a computed value with an expected one.
    ///
    /// # Errors
    /// The case, the value and the distance where it is more than `tolerance` or anything is no number.
    pub fn near(&self, name: &str, computed: f64, tolerance: f64) -> Result<(), String> {
        let expected = self.expected(name);
        let apart = (computed - expected).abs();
        if apart <= tolerance {
            return Ok(());
        }
        Err(format!(
            "{}: {name} is {computed}, expected {expected}, apart by {apart}, allowed {tolerance}",
            self.id()
        ))
    }
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().map_or_else(Vec::new, |list| list.iter().filter_map(Value::as_f64).collect())
}

fn rows(value: &Value) -> Vec<Vec<f64>> {
    value.as_array().map_or_else(Vec::new, |list| list.iter().map(numbers).collect())
}

/// What is no number by a number becomes NaN, which no comparison accepts.
fn table(value: &Value) -> Vec<(f64, f64)> {
    let number = |text: &String| text.parse().unwrap_or(f64::NAN);
    let entry = |(key, value): (&String, &Value)| (number(key), value.as_f64().unwrap_or(f64::NAN));
    value.as_object().map_or_else(Vec::new, |entries| entries.iter().map(entry).collect())
}
