//! Sentences by key: the physics says *what* to tell, a table per language says *how*.
//!
//! No room pastes sentences together; it names a key and the values that go into it.

mod language;
mod show;

use std::borrow::Cow;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::quantity::Dimension;
use crate::sorted::Map;
pub use language::Language;
pub use show::{UnitChoice, number, plain_cell};

/// One sentence or label: its key in the table and the values for its gaps.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Text {
    /// Key in the language table, such as `cause.front-rate-soft.what`.
    pub key: Cow<'static, str>,
    /// Values for the gaps named `{name}` in the sentence.
    #[serde(default, skip_serializing_if = "Map::is_empty")]
    pub args: Map<Cow<'static, str>, Arg>,
}

/// A value in a sentence. Quantities are SI and shown in the unit the reader chose.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Arg {
    /// A quantity with its unit.
    Quantity(f64, Dimension),
    /// A difference between two quantities with its unit and sign.
    Change(f64, Dimension),
    /// From one quantity to another, with the unit once.
    Span(f64, f64, Dimension),
    /// A plain whole number.
    Count(i64),
    /// A plain number with so many decimals.
    Plain(f64, usize),
    /// Another entry of the table.
    Text(Box<Text>),
    /// What a person wrote, shown as it is.
    Raw(String),
}

impl Text {
    /// A sentence without gaps.
    pub fn new(key: impl Into<Cow<'static, str>>) -> Self {
        Self {
            key: key.into(),
            args: Map::new(),
        }
    }

    /// The same with one gap filled.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Arg) -> Self {
        self.args.insert(Cow::Borrowed(name), value);
        self
    }
}

impl From<Text> for Arg {
    fn from(text: Text) -> Self {
        Self::Text(Box::new(text))
    }
}

/// All sentences of one language.
#[derive(Debug, Clone, PartialEq)]
pub struct Book {
    sentences: Map<String, String>,
}

impl Book {
    /// A book from a JSON object of key to sentence.
    ///
    /// # Errors
    /// The parser's message when the text is not such an object.
    pub fn from_json(json: &str) -> Result<Self, serde_json::Error> {
        Ok(Self {
            sentences: serde_json::from_str(json)?,
        })
    }

    /// The sentences about the answers alone, in English: what they are called and what can be wrong with them. The
    /// tables are part of the program; a test proves them well-formed.
    pub fn english_of_answers() -> Self {
        Self::of_tables(&[
            include_str!("../../words/en/fields.json"),
            include_str!("../../words/en/problems.json"),
        ])
    }

    /// Everything in English.
    pub fn english() -> Self {
        Self::english_of_answers().and(Self::english_of_advice())
    }

    /// The sentences about the advice, in English.
    pub fn english_of_advice() -> Self {
        Self::of_tables(&[
            include_str!("../../words/en/answers.json"),
            include_str!("../../words/en/causes.json"),
            include_str!("../../words/en/cautions.json"),
            include_str!("../../words/en/checks.json"),
            include_str!("../../words/en/laps.json"),
            include_str!("../../words/en/remedies.json"),
        ])
    }

    /// A book of several tables; a table that is none is left out.
    pub fn of_tables(tables: &[&str]) -> Self {
        let empty = Self {
            sentences: Map::new(),
        };
        let parts = tables.iter().filter_map(|part| Self::from_json(part).ok());
        parts.fold(empty, Self::and)
    }

    /// Adds another table; its sentences win where both have a key.
    #[must_use]
    pub fn and(mut self, other: Self) -> Self {
        self.sentences.extend(other.sentences);
        self
    }

    /// Whether there is a sentence for `key`.
    pub fn has(&self, key: &str) -> bool {
        self.sentences.contains_key(key)
    }

    /// Whether there is no sentence at all.
    pub fn is_empty(&self) -> bool {
        self.sentences.is_empty()
    }

    /// Every key, in order.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.sentences.keys().map(String::as_str)
    }

    /// The sentence for `text` with its gaps filled; a key without sentence shows itself in brackets.
    pub fn say(&self, text: &Text, units: &UnitChoice) -> String {
        let Some(sentence) = self.sentences.get(text.key.as_ref()) else {
            return format!("[{}]", text.key);
        };
        let mut said = String::with_capacity(sentence.len() + 32);
        let mut rest = sentence.as_str();
        while let Some((before, after)) = rest.split_once('{') {
            said.push_str(before);
            let Some((name, tail)) = after.split_once('}') else {
                rest = after;
                break;
            };
            if let Some(arg) = text.args.get(name) {
                said.push_str(&self.fill(arg, units));
            } else {
                said.extend(["[", name, "]"]);
            }
            rest = tail;
        }
        said.push_str(rest);
        said
    }

    fn fill(&self, arg: &Arg, units: &UnitChoice) -> String {
        match arg {
            Arg::Quantity(si, dimension) => units.show(*si, *dimension),
            Arg::Change(si, dimension) => units.show_change(*si, *dimension),
            Arg::Span(low, high, dimension) => units.show_span(*low, *high, *dimension),
            Arg::Count(n) => n.to_string(),
            Arg::Plain(value, decimals) => units.number(*value, *decimals),
            Arg::Text(text) => self.say(text, units),
            Arg::Raw(words) => words.clone(),
        }
    }

    /// Adds to every keyed sentence inside a JSON document what it says, under `text`.
    pub fn spell_out(&self, document: &mut Value, units: &UnitChoice) {
        match document {
            Value::Array(items) => items
                .iter_mut()
                .for_each(|item| self.spell_out(item, units)),
            Value::Object(fields) => {
                let keyed = fields.get("key").is_some_and(Value::is_string)
                    && fields.keys().all(|name| name == "key" || name == "args");
                if keyed {
                    if let Ok(text) = serde_json::from_value::<Text>(Value::Object(fields.clone()))
                    {
                        fields.insert("text".into(), Value::String(self.say(&text, units)));
                    }
                } else {
                    fields
                        .values_mut()
                        .for_each(|value| self.spell_out(value, units));
                }
            }
            _ => {}
        }
    }
}
