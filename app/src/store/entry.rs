//! What is kept, and what may be written over.

use std::rc::Rc;

use js_sys::{Date, Math};
use serde::Serialize;
use serde::de::DeserializeOwned;

use super::StoreError;

/// A kind of record; each has a place of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A rider's log at the track.
    Logs,
    /// An intake that a workshop keeps.
    Intakes,
    /// What this device remembers about the others.
    Meta,
    /// What is on its way to a workshop.
    Outbox,
}

impl Kind {
    /// All of them.
    pub const ALL: &[Self] = &[Self::Logs, Self::Intakes, Self::Meta, Self::Outbox];

    /// Its name in the database, which never changes.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Logs => "logs",
            Self::Intakes => "intakes",
            Self::Meta => "meta",
            Self::Outbox => "outbox",
        }
    }

    /// The kind of that name.
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.word() == word)
    }
}

/// What can be kept. Its JSON carries a version where its form may change, and reading it refuses what is newer.
pub trait Record: Serialize + DeserializeOwned {
    /// Which kind it is.
    const KIND: Kind;
}

/// A record just as it stood when it was read or written, to tell whether it still stands so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stamp(Rc<str>);

/// What a write may take the place of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Over {
    /// Whatever stands there.
    Anything,
    /// Only an empty place.
    Nothing,
    /// Only what was read or written before: then nothing came in between.
    Seen(Stamp),
}

impl Over {
    /// Whether `there` may be written over.
    pub fn allows(&self, there: Option<&str>) -> bool {
        match self {
            Self::Anything => true,
            Self::Nothing => there.is_none(),
            Self::Seen(stamp) => there == Some(&*stamp.0),
        }
    }
}

/// A record that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry<R> {
    /// The name it is kept under.
    pub id: String,
    /// The record.
    pub record: R,
    /// What to name when it is written over.
    pub stamp: Stamp,
}

impl<R: Record> Entry<R> {
    pub(super) fn read(id: &str, text: &str) -> Result<Self, StoreError> {
        let record = serde_json::from_str(text);
        let record = record.map_err(|_| StoreError::Unreadable(id.to_owned()))?;
        Ok(Self {
            id: id.to_owned(),
            record,
            stamp: Stamp(text.into()),
        })
    }
}

/// All records of a kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Listing<R> {
    /// Those that this build can read, in the order of their names.
    pub entries: Vec<Entry<R>>,
    /// The names of those it cannot; they stay as they are.
    pub unreadable: Vec<String>,
}

impl<R: Record> Listing<R> {
    pub(super) fn read(texts: Vec<(String, String)>) -> Self {
        let mut entries = Vec::new();
        let mut unreadable = Vec::new();
        for (id, text) in texts {
            match Entry::read(&id, &text) {
                Ok(entry) => entries.push(entry),
                Err(_) => unreadable.push(id),
            }
        }
        Self {
            entries,
            unreadable,
        }
    }
}

/// One change to one place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Write {
    /// The name of the place.
    pub id: String,
    /// What shall stand there; `None` to leave it empty.
    pub text: Option<String>,
    /// What may stand there before.
    pub over: Over,
}

impl Write {
    pub fn of<R: Record>(id: &str, record: &R, over: Over) -> Result<Self, StoreError> {
        let text = serde_json::to_string(record).map_err(|_| StoreError::Failed)?;
        Ok(Self {
            id: id.to_owned(),
            text: Some(text),
            over,
        })
    }

    pub fn nothing(id: &str, over: Over) -> Self {
        Self {
            id: id.to_owned(),
            text: None,
            over,
        }
    }

    pub fn stamp(&self) -> Stamp {
        Stamp(self.text.as_deref().unwrap_or_default().into())
    }
}

/// A name that no record has yet. Names sort by when they were made, by the device's clock.
pub fn fresh_id() -> String {
    // Milliseconds since 1970 have 13 digits until the year 2286.
    format!("{:013.0}-{:08.0}", Date::now(), Math::random() * 1e8)
}
