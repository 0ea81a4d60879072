//! Finding the workshop's document by the address of the page, such as `?workshop=our.json`.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::quantity::{Dimension, Unit};
use sagwright_core::words::{Language, Text};
use sagwright_core::workshop::{self, LARGEST_WORKSHOP, Workshop};
use serde::Serialize;
use serde_json::Value;

use super::wire::{self, Answered};
use crate::browser::{self, Device};
use crate::keeping::Shelf;

/// The part of the address that names the document.
const ASKED: &str = "workshop";

/// Where the document read last is kept, for a visit without a signal.
const KEPT: &str = "sagwright.workshop";

/// Why the document that the address names is not used.
#[derive(Debug, Clone, PartialEq)]
pub enum Trouble {
    /// It is on another site.
    Elsewhere,
    /// It is not there, or did not arrive.
    Missing,
    /// It is there and cannot be used: the place and what is wrong there.
    Wrong(Vec<(String, Text)>),
}

impl Trouble {
    /// Its word, for the page around.
    pub const fn word(&self) -> &'static str {
        match self {
            Self::Elsewhere => "elsewhere",
            Self::Missing => "missing",
            Self::Wrong(_) => "wrong",
        }
    }
}

/// What the address came to.
#[derive(Debug, Clone, Default)]
struct Found {
    workshop: Option<Rc<Workshop>>,
    trouble: Option<Trouble>,
}

/// A document as it arrived, with where it came from.
#[derive(Serialize)]
struct Kept<'a> {
    address: &'a str,
    document: &'a str,
}

thread_local! {
    static FOUND: RefCell<Found> = RefCell::default();
}

/// Reads the document that the address names, before the page is drawn. It never changes while the page is open.
pub async fn begin() {
    let Some(asked) = browser::asked(ASKED) else {
        return;
    };
    let found = find(&asked).await;
    FOUND.set(match found {
        Ok(workshop) => Found {
            workshop: Some(Rc::new(workshop)),
            trouble: None,
        },
        Err(trouble) => Found {
            workshop: None,
            trouble: Some(trouble),
        },
    });
}

async fn find(asked: &str) -> Result<Workshop, Trouble> {
    let address = browser::on_this_site(asked).ok_or(Trouble::Elsewhere)?;
    let text = match wire::read(&address).await {
        Answered::With(200..=299, _, text) => text,
        // A server in trouble is no better than none: what it said last still counts.
        Answered::Nothing | Answered::With(500.., ..) => kept(&address).ok_or(Trouble::Missing)?,
        Answered::With(..) => return Err(Trouble::Missing),
    };
    let found = workshop::read(&text).map_err(|error| {
        let problems = error.problems.into_iter();
        Trouble::Wrong(problems.map(|one| (one.path, one.text)).collect())
    })?;
    keep(&address, &text);
    Ok(found)
}

fn kept(address: &str) -> Option<String> {
    let kept: Value = serde_json::from_str(&Device.kept(KEPT)?).ok()?;
    let document = kept.get("document")?.as_str()?;
    let fits = *kept.get("address")? == *address && document.len() <= LARGEST_WORKSHOP;
    fits.then(|| document.to_owned())
}

fn keep(address: &str, document: &str) {
    // Where it is not kept, the next visit needs a network.
    if let Ok(text) = serde_json::to_string(&Kept { address, document }) {
        Device.keep(KEPT, &text);
    }
}

/// The workshop, where there is one.
pub fn workshop() -> Option<Rc<Workshop>> {
    FOUND.with_borrow(|found| found.workshop.clone())
}

/// Why there is none although the address names one.
pub fn trouble() -> Option<Trouble> {
    FOUND.with_borrow(|found| found.trouble.clone())
}

/// The languages offered, the first one first.
pub fn languages() -> Vec<Language> {
    workshop().map_or_else(|| Language::ALL.to_vec(), |one| one.spoken().to_vec())
}

/// The first of these that is offered, else the first offered.
pub fn language_offered(wanted: impl IntoIterator<Item = Language>) -> Language {
    let offered = languages();
    let mut wanted = wanted.into_iter();
    let found = wanted.find(|language| offered.contains(language));
    // Where no workshop narrows them, English comes first.
    found.or(offered.first().copied()).unwrap_or_default()
}

/// The units to begin with, where the workshop names some.
pub fn units() -> Vec<(Dimension, Unit)> {
    workshop().map_or_else(Vec::new, |one| one.units.told())
}
