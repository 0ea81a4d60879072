//! What page and worker say to each other, each message one JSON text.
//!
//! The page sends [`Asked`], and answers come back as [`Told`]. The core already reads and writes
//! both, so the line adds little to the download.

use std::rc::Rc;

use sagwright_core::advice::what_if::{Trying, WhatIfRidden};
use sagwright_core::advice::{Progress, Ridden};
use serde::{Deserialize, Serialize};

/// What the page asks of a worker.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Asked {
    /// An intake document.
    pub intake: String,
    /// What to try on that bike; without it the whole of its rides is asked for.
    pub trying: Option<Trying>,
}

impl Asked {
    /// As text for the line.
    ///
    /// # Errors
    /// None for what the page asks: every number in it is finite.
    pub fn to_text(&self) -> Result<String, serde_json::Error> {
        serde_json::to_string(self)
    }

    /// From the text of the line.
    ///
    /// # Errors
    /// When the text is not of this form.
    pub fn from_text(text: &str) -> Result<Self, serde_json::Error> {
        serde_json::from_str(text)
    }
}

/// What a worker tells the page.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Told {
    /// It has started and hears.
    Ready,
    /// It is riding.
    Riding(Progress),
    /// It is done; `None` where nothing could be ridden.
    Done(Option<Rc<Ridden>>),
    /// It has ridden what was to be tried; `None` where it cannot be ridden.
    Tried(Option<Box<WhatIfRidden>>),
}

impl Told {
    /// As text for the line.
    ///
    /// # Errors
    /// None for what rides give: every number in it is finite and every key a string.
    pub fn to_text(&self) -> Result<String, serde_json::Error> {
        serde_json::to_string(self)
    }

    /// From the text of the line.
    ///
    /// # Errors
    /// When the text is not of this form.
    pub fn from_text(text: &str) -> Result<Self, serde_json::Error> {
        serde_json::from_str(text)
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::advice::{FeelChange, RiddenClicks};
    use sagwright_core::cause::Rehearsal;
    use sagwright_core::quantity::Dimension;
    use sagwright_core::remedy::Remedied;
    use sagwright_core::words::{Arg, Text};

    use super::*;

    #[test]
    fn what_was_ridden_crosses_to_the_bit() {
        // Thirds and their like need all 17 digits; a reader that rounds the last one would lose them.
        for step in 1..2000_u32 {
            let value = 1.0 / f64::from(step) * 4800.0;
            let told = Told::Done(Some(Rc::new(Ridden {
                clicks: RiddenClicks {
                    fork_compression: 12,
                    fork_rebound: 11,
                    shock_compression: 10,
                    shock_rebound: 9,
                },
                fork_rate: Some(value),
                shock_rate: value * 1.1,
                feel: vec![FeelChange {
                    ground: Text::new("terrain.sand"),
                    name: Text::new("x").with("n", Arg::Count(2)),
                    because: Text::new("x.because"),
                    source: Text::new("x.source"),
                    before: value * 0.7,
                    after: value * 0.3,
                    dimension: Dimension::Length,
                }],
                pictures: Vec::new(),
                before_told: true,
                rides: 480,
                rehearsal: Rehearsal::default(),
                remedied: Remedied::default(),
            })));
            let text = told.to_text().expect("its numbers are finite");
            let back = Told::from_text(&text).expect("it was just written");
            assert_eq!(back, told);
        }
    }

    #[test]
    fn other_text_is_refused() {
        assert!(Told::from_text("").is_err());
        assert!(Told::from_text("{\"Done\":3}").is_err());
    }
}
