//! How the answers are kept on the device between visits.

use sagwright_core::intake::{End, Feeling, Field, Intake, Terrain, read_unfinished, write};
use sagwright_core::quantity::{Dimension, How, Unit};
use serde::{Deserialize, Serialize, Serializer};
use serde_json::Value;

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

#[derive(Serialize)]
struct Saved {
    version: u32,
    /// The document as text, so that the program holds one way to read it: a second one costs 15 kB of download.
    intake: String,
    #[serde(serialize_with = "as_map")]
    typed: Vec<(&'static str, SavedText)>,
    #[serde(serialize_with = "as_map")]
    units: Vec<(&'static str, &'static str)>,
    cannot_say: Vec<String>,
}

#[derive(Serialize)]
struct SavedText {
    text: String,
    unit: &'static str,
    how: Option<How>,
    unit_kept: bool,
}

/// Writes pairs as a map, without one: each kind of map is 1 kB of download.
fn as_map<K: Serialize, V: Serialize, S: Serializer>(
    pairs: &[(K, V)],
    writer: S,
) -> Result<S::Ok, S::Error> {
    writer.collect_map(pairs.iter().map(|(key, value)| (key, value)))
}

/// Every kind of number with a choice of units, and what it is called in what is kept.
const WITH_UNITS: [(Dimension, &str); 7] = [
    (Dimension::Mass, "mass"),
    (Dimension::Height, "height"),
    (Dimension::Length, "length"),
    (Dimension::Rate, "rate"),
    (Dimension::Pressure, "pressure"),
    (Dimension::Temperature, "temperature"),
    (Dimension::Altitude, "altitude"),
];

/// The answers as text to keep.
pub fn to_saved(wizard: &Wizard) -> Result<String, serde_json::Error> {
    let text = |typed: &TypedText| SavedText {
        text: typed.text.clone(),
        unit: typed.unit.symbol(),
        how: typed.how,
        unit_kept: typed.unit_kept,
    };
    let typed = wizard.typed.iter();
    let units = WITH_UNITS.iter();
    let saved = Saved {
        version: VERSION,
        intake: write(&wizard.intake)?,
        typed: typed
            .map(|(field, typed)| (field.path(), text(typed)))
            .collect(),
        units: units
            .map(|(dimension, word)| (*word, wizard.units.unit(*dimension).symbol()))
            .collect(),
        cannot_say: wizard.cannot_say.iter().copied().map(address).collect(),
    };
    serde_json::to_string(&saved)
}

/// A document as text for people to read and keep: one answer per line.
pub fn to_file(intake: &Intake) -> Result<String, serde_json::Error> {
    // By way of a value, since a second way to write every answer would double that part of the download.
    let value: Value = serde_json::from_str(&write(intake)?)?;
    serde_json::to_string_pretty(&value)
}

/// The answers from kept text.
///
/// # Errors
/// [`SavedError`] when the text is of another form.
pub fn from_saved(text: &str) -> Result<Wizard, SavedError> {
    let saved: Value = serde_json::from_str(text).map_err(|_| SavedError::Unreadable)?;
    if saved.get("version").and_then(Value::as_u64) > Some(u64::from(VERSION)) {
        return Err(SavedError::Newer);
    }
    whole(&saved).ok_or(SavedError::Unreadable)
}

/// The answers, where all that was kept is of the form that is written. It is read as it stands: derived readers of the
/// parts of it are 4 kB of download.
fn whole(saved: &Value) -> Option<Wizard> {
    saved.get("version")?.as_u64()?;
    let mut wizard = Wizard {
        intake: read_unfinished(saved.get("intake")?.as_str()?).ok()?,
        ..Wizard::default()
    };
    let units = saved.get("units")?.as_object()?;
    for (dimension, word) in WITH_UNITS {
        let Some(symbol) = units.get(word) else {
            continue;
        };
        // A unit that this build does not know leaves the first there is.
        if let Some(unit) = unit_named(dimension, symbol.as_str()?) {
            wizard.units.choose(dimension, unit);
        }
    }
    let cannot_say = saved.get("cannot_say")?.as_array()?;
    let is_kept = |slot: &Slot| {
        let address = address(*slot);
        cannot_say.iter().any(|kept| *kept == address)
    };
    wizard.cannot_say.extend(every_slot().filter(is_kept));
    let typed = saved.get("typed")?.as_object()?;
    for field in Field::ALL {
        if let Some(kept) = typed.get(field.path()) {
            wizard.typed.insert(*field, typed_text(*field, kept)?);
        }
    }
    Some(wizard)
}

fn typed_text(field: Field, kept: &Value) -> Option<TypedText> {
    Some(TypedText {
        text: kept.get("text")?.as_str()?.to_owned(),
        unit: unit_named(field.dimension(), kept.get("unit")?.as_str()?)?,
        how: Option::deserialize(kept.get("how").unwrap_or(&Value::Null)).ok()?,
        unit_kept: kept.get("unit_kept")?.as_bool()?,
    })
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
