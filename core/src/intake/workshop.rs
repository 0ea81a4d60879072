//! What a workshop says about itself: name and prices.

use serde::{Deserialize, Serialize};

use super::check::IntakeError;
use crate::words::{Arg, Text};

/// The version of the workshop document this build reads.
pub const WORKSHOP_VERSION: u32 = 1;

/// A workshop's own document.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Workshop {
    /// Version of this document's form; now 1.
    pub version: u32,
    /// The workshop's name, 1 to 100 characters.
    pub name: String,
    /// Currency as three capital letters after ISO 4217.
    pub currency: String,
    /// Lowest and highest price of an hour of labour, above 0 and at most 10 000, the lowest first.
    pub labour_per_hour: (f64, f64),
}

impl Workshop {
    /// Reads and checks a workshop document.
    ///
    /// # Errors
    /// [`IntakeError`] naming the field, what stands there and what is allowed.
    pub fn read(json: &str) -> Result<Self, IntakeError> {
        let workshop: Self = serde_json::from_str(json).map_err(|error| {
            IntakeError::one(
                "",
                Text::new("problem.workshop").with("detail", Arg::Raw(error.to_string())),
            )
        })?;
        let (low, high) = workshop.labour_per_hour;
        let trouble = if workshop.version != WORKSHOP_VERSION {
            Some(("version", "problem.workshop-version"))
        } else if !(1..=100).contains(&workshop.name.chars().count()) {
            Some(("name", "problem.workshop-name"))
        } else if workshop.currency.len() != 3
            || !workshop.currency.chars().all(|c| c.is_ascii_uppercase())
        {
            Some(("currency", "problem.workshop-currency"))
        } else if !(low > 0.0 && low <= high && high <= 10_000.0) {
            Some(("labour_per_hour", "problem.workshop-labour"))
        } else {
            None
        };
        match trouble {
            Some((path, key)) => Err(IntakeError::one(path, Text::new(key))),
            None => Ok(workshop),
        }
    }
}
