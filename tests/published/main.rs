//! Checks against values from outside. Each module names its source and how well that source is known.
//!
//! Words used for the latter: *high* is a printed number read in a public page and recomputed, *medium* a printed
//! number from memory and recomputed, *computed* the output of another program.

mod atmosphere;
mod dynamics;
mod fluids;
mod gas;
mod plates;
mod roads;
mod springs;
mod vibration;

use serde::de::DeserializeOwned;

/// The rows of a table in `data/`.
fn table<T: DeserializeOwned>(text: &str) -> Vec<T> {
    let rows: Result<Vec<T>, csv::Error> = csv::Reader::from_reader(text.as_bytes())
        .deserialize()
        .collect();
    let rows = rows.expect("every row of the table has the fields of its header");
    assert!(!rows.is_empty(), "an empty table would prove nothing");
    rows
}

/// Fails unless `got` is within the relative tolerance of `wanted`.
#[track_caller]
fn near(what: &str, got: f64, wanted: f64, relative: f64) {
    let error = (got - wanted).abs() / wanted.abs();
    assert!(
        error <= relative,
        "{what}: {got} instead of {wanted}, off by {error:e}"
    );
}
