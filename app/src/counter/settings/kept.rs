//! The settings of the workshop on this device.

use sagwright_core::workshop::{self, Workshop};
use serde::{Deserialize, Serialize};

use crate::store::{Kind, Record};

/// The name they are kept under.
pub const KEPT_AS: &str = "workshop";

/// The document as text, so that the one reader of such documents reads what an earlier build has kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Kept {
    document: String,
}

impl Record for Kept {
    const KIND: Kind = Kind::Meta;
}

impl Kept {
    /// What is kept of `workshop`.
    pub fn of(workshop: &Workshop) -> Self {
        Self {
            // A document always gives text: all its keys are strings.
            document: serde_json::to_string(workshop).unwrap_or_default(),
        }
    }

    /// The settings, where this build can read them.
    pub fn read(&self) -> Option<Workshop> {
        workshop::read(&self.document).ok()
    }
}
