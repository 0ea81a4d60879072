//! A number and what it rests on. No reason, no number.

use serde::Serialize;

use crate::quantity::Dimension;
use crate::words::Text;

/// A number with what it rests on.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Figure {
    /// Most likely value, SI.
    pub value: f64,
    /// Lower end of the range that holds four cases in five, SI.
    pub low: f64,
    /// Upper end of that range, SI.
    pub high: f64,
    /// What it measures.
    pub dimension: Dimension,
    /// Why it is this.
    pub reason: Reason,
}

/// Why a number is what it is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reason {
    /// In a sentence.
    pub because: Text,
    /// What went in.
    pub inputs: Vec<ReasonInput>,
    /// The equation by name, written out.
    pub equation: Text,
    /// Where the equation or the rule comes from.
    pub source: Text,
    /// How far the number moves if an input were different.
    pub sensitivity: Vec<Sensitivity>,
    /// What its range comes from, most first; empty for a number without a range.
    pub range_from: Vec<RangeShare>,
}

/// What part of a range one thing that is not known makes.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RangeShare {
    /// What is not known.
    pub name: Text,
    /// Part of the variance that it explains by itself, 0 to 1.
    pub share: f64,
}

/// One input of a number.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReasonInput {
    /// Its name.
    pub name: Text,
    /// Its value, SI.
    pub value: f64,
    /// What it measures.
    pub dimension: Dimension,
    /// Where it comes from.
    pub provenance: Provenance,
}

/// Where an input comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Provenance {
    /// The rider or the workshop gave it.
    Given,
    /// Given, but as a guess.
    Guessed,
    /// Typical of the class of bike.
    TypicalOfClass,
    /// Worked out from other inputs.
    Computed,
    /// A rule of the trade.
    Practice,
}

/// "If this were that, the number would move by so much."
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sensitivity {
    /// The change supposed, in words.
    pub supposing: Text,
    /// How far the number moves, SI, signed.
    pub moves_by: f64,
}
