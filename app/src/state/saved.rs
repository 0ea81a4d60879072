//! How the answers are kept on the device between visits.

use std::collections::{BTreeMap, BTreeSet};

use sagwright_core::intake::{End, Feeling, Field, Intake, Terrain, read_unfinished, write};
use sagwright_core::quantity::{Dimension, How, Unit};
use sagwright_core::words::UnitChoice;
use serde::{Deserialize, Serialize};

use super::slot::{Aspect, Slot};
use super::typed::TypedText;
use super::wizard::Wizard;

/// The form written by this build.
const VERSION: u32 = 1;

/// Why saved answers could not be read. They are kept aside, never thrown away.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SavedError {
    /// Written by a newer build.
    Newer,
    /// Not of a form this build knows.
    Unreadable,
}

#[derive(Serialize, Deserialize)]
struct Saved {
    version: u32,
    /// The document as text, so that the program holds one way to read it: a second one costs 15 kB of download.
    intake: String,
    typed: BTreeMap<String, SavedText>,
    units: BTreeMap<Dimension, String>,
    cannot_say: BTreeSet<String>,
}

#[derive(Serialize, Deserialize)]
struct SavedText {
    text: String,
    unit: String,
    how: Option<How>,
    unit_kept: bool,
}

#[derive(Deserialize)]
struct VersionOnly {
    version: u32,
}

/// Every kind of number with a choice of units.
const WITH_UNITS: [Dimension; 7] = [
    Dimension::Mass,
    Dimension::Height,
    Dimension::Length,
    Dimension::Rate,
    Dimension::Pressure,
    Dimension::Temperature,
    Dimension::Altitude,
];

/// The answers as text to keep.
pub fn to_saved(wizard: &Wizard) -> Result<String, serde_json::Error> {
    let text = |typed: &TypedText| SavedText {
        text: typed.text.clone(),
        unit: typed.unit.symbol().to_owned(),
        how: typed.how,
        unit_kept: typed.unit_kept,
    };
    let mut saved = Saved {
        version: VERSION,
        intake: write(&wizard.intake)?,
        typed: BTreeMap::new(),
        units: BTreeMap::new(),
        cannot_say: BTreeSet::new(),
    };
    // Added one by one: collected, each of them would bring a sort of its own, 4 kB of program.
    for (field, typed) in &wizard.typed {
        saved.typed.insert(field.path().to_owned(), text(typed));
    }
    for dimension in WITH_UNITS {
        let symbol = wizard.units.unit(dimension).symbol();
        saved.units.insert(dimension, symbol.to_owned());
    }
    for slot in &wizard.cannot_say {
        saved.cannot_say.insert(address(*slot));
    }
    serde_json::to_string(&saved)
}

/// A document as text for people to read and keep: one answer per line.
pub fn to_file(intake: &Intake) -> Result<String, serde_json::Error> {
    // By way of a value, since a second way to write every answer would double that part of the download.
    let value: serde_json::Value = serde_json::from_str(&write(intake)?)?;
    serde_json::to_string_pretty(&value)
}

/// The answers from kept text.
///
/// # Errors
/// [`SavedError`] when the text is of another form.
pub fn from_saved(text: &str) -> Result<Wizard, SavedError> {
    let unreadable = |_| SavedError::Unreadable;
    let VersionOnly { version } = serde_json::from_str(text).map_err(unreadable)?;
    if version > VERSION {
        return Err(SavedError::Newer);
    }
    let saved: Saved = serde_json::from_str(text).map_err(unreadable)?;
    let mut wizard = Wizard {
        intake: read_unfinished(&saved.intake).map_err(|_| SavedError::Unreadable)?,
        units: units(&saved.units),
        ..Wizard::default()
    };
    for slot in every_slot().filter(|slot| saved.cannot_say.contains(&address(*slot))) {
        wizard.cannot_say.insert(slot);
    }
    for field in Field::ALL {
        let Some(kept) = saved.typed.get(field.path()) else {
            continue;
        };
        let unit = unit_named(field.dimension(), &kept.unit).ok_or(SavedError::Unreadable)?;
        wizard.typed.insert(
            *field,
            TypedText {
                text: kept.text.clone(),
                unit,
                how: kept.how,
                unit_kept: kept.unit_kept,
            },
        );
    }
    Ok(wizard)
}

fn units(saved: &BTreeMap<Dimension, String>) -> UnitChoice {
    let mut units = UnitChoice::default();
    for (dimension, symbol) in saved {
        if let Some(unit) = unit_named(*dimension, symbol) {
            units.choose(*dimension, unit);
        }
    }
    units
}

fn unit_named(dimension: Dimension, symbol: &str) -> Option<Unit> {
    let mut units = dimension.units().iter().copied();
    units.find(|unit| unit.symbol() == symbol)
}

/// Every group whose "I can't say" is kept here because the document has no word for it.
fn every_slot() -> impl Iterator<Item = Slot> {
    let push = End::ALL.iter().map(|end| Slot::Push(*end));
    let ground = Terrain::ALL.iter().map(|terrain| Slot::Ground(*terrain));
    let detail = Feeling::ALL
        .iter()
        .flat_map(|feeling| Aspect::ALL.iter().map(|a| Slot::Detail(*feeling, *a)));
    let how = Field::ALL.iter().map(|field| Slot::How(*field));
    push.chain(ground).chain(detail).chain(how)
}

/// A slot's name, unique over all pages.
fn address(slot: Slot) -> String {
    match slot {
        Slot::How(_) => format!("how/{}", slot.id()),
        Slot::Push(end) => format!("push/{}", end.word()),
        Slot::Detail(..) | Slot::One(_) | Slot::Ground(_) => slot.id().into_owned(),
        Slot::Look(_) => format!("look/{}", slot.id()),
        Slot::Lap(change, _) => format!("lap/{}/{}", change.word(), slot.id()),
    }
}
