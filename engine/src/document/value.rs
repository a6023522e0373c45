//! A value of a file, by whomever it was parsed: by serde here, by the browser on the page, which has a parser anyway.

/// A value of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Nothing.
    Null,
    /// Yes or no.
    Bool(bool),
    /// A number.
    Number(f64),
    /// A text.
    Text(String),
    /// Values in a row.
    List(Vec<Value>),
    /// Values by name.
    Group(Group),
}

/// Values by name, in the order of the file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Group(pub Vec<(String, Value)>);

impl Group {
    /// What stands under a name; the last where a file says it twice.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Value> {
        self.0.iter().rev().find(|own| own.0 == name).map(|own| &own.1)
    }

    /// The names.
    pub fn keys(&self) -> impl Iterator<Item = &String> {
        self.0.iter().map(|own| &own.0)
    }
}

impl Value {
    /// Whether it is nothing.
    #[must_use]
    pub fn is_null(&self) -> bool {
        *self == Self::Null
    }

    /// The group, if it is one.
    #[must_use]
    pub fn as_group(&self) -> Option<&Group> {
        match self {
            Self::Group(own) => Some(own),
            _ => None,
        }
    }

    /// The list, if it is one.
    #[must_use]
    pub fn as_list(&self) -> Option<&Vec<Self>> {
        match self {
            Self::List(own) => Some(own),
            _ => None,
        }
    }

    /// The text, if it is one.
    #[must_use]
    pub fn as_str(&self) -> Option<&str> {
        match self {
            Self::Text(own) => Some(own),
            _ => None,
        }
    }

    /// The number, if it is one.
    #[must_use]
    pub fn as_f64(&self) -> Option<f64> {
        match self {
            Self::Number(own) => Some(*own),
            _ => None,
        }
    }

    /// The number, if it is a whole one that is not negative.
    #[must_use]
    pub fn as_u64(&self) -> Option<u64> {
        self.as_f64().filter(|own| *own >= 0.0 && *own == own.trunc()).map(|own| own as u64)
    }

    /// Yes or no, if it is that.
    #[must_use]
    pub fn as_bool(&self) -> Option<bool> {
        match self {
            Self::Bool(own) => Some(*own),
            _ => None,
        }
    }
}

#[cfg(feature = "json")]
mod parsed {
    use super::{Group, Value};
    use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

    struct Any;

    impl<'de> Visitor<'de> for Any {
        type Value = Value;

        fn expecting(&self, to: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
            to.write_str("a value")
        }

        fn visit_unit<E>(self) -> Result<Value, E> {
            Ok(Value::Null)
        }

        fn visit_bool<E>(self, own: bool) -> Result<Value, E> {
            Ok(Value::Bool(own))
        }

        fn visit_i64<E>(self, own: i64) -> Result<Value, E> {
            Ok(Value::Number(own as f64))
        }

        fn visit_u64<E>(self, own: u64) -> Result<Value, E> {
            Ok(Value::Number(own as f64))
        }

        fn visit_f64<E>(self, own: f64) -> Result<Value, E> {
            Ok(Value::Number(own))
        }

        fn visit_str<E>(self, own: &str) -> Result<Value, E> {
            Ok(Value::Text(own.to_owned()))
        }

        fn visit_seq<A: SeqAccess<'de>>(self, mut all: A) -> Result<Value, A::Error> {
            let mut list = Vec::new();
            while let Some(own) = all.next_element()? {
                list.push(own);
            }
            Ok(Value::List(list))
        }

        fn visit_map<A: MapAccess<'de>>(self, mut all: A) -> Result<Value, A::Error> {
            let mut group = Group::default();
            while let Some(own) = all.next_entry()? {
                group.0.push(own);
            }
            Ok(Value::Group(group))
        }
    }

    impl<'de> Deserialize<'de> for Value {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
            from.deserialize_any(Any)
        }
    }
}
