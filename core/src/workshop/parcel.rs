//! What is sent to a workshop: the answers, with what the rider has agreed to.

use serde::{Deserialize, Serialize};

use super::check::Problems;
use crate::intake::{Intake, LARGEST_DOCUMENT, check, misfit_at, of_version, whole};

/// The version of this form that is written and read.
pub const PARCEL_VERSION: u32 = 1;

/// Answers as they are sent. Nothing else goes with them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Parcel {
    /// Version of this document's form; now 1.
    pub version: u32,
    /// Its own name, the same however often it is sent: whoever has it already can put the second one aside.
    pub id: String,
    /// When the rider made it, in UTC, as ISO 8601 has it.
    pub made: String,
    /// The workshop it is for.
    pub workshop: String,
    /// The very words that the rider has agreed to.
    pub agreed: String,
    /// The answers.
    pub intake: Intake,
}

impl Parcel {
    /// The parcel as the one text that is shown and sent.
    ///
    /// # Errors
    /// None for an intake that was checked: all its keys are strings.
    pub fn text(&self) -> Result<String, serde_json::Error> {
        serde_json::to_string(self)
    }

    /// Reads and checks a parcel, as a workshop's own program would.
    ///
    /// # Errors
    /// [`Problems`] where it is too large, not of this form, or holds answers that cannot be used.
    pub fn read(text: &str) -> Result<Self, Problems> {
        let (too_large, broken) = ("problem.too-large", "problem.not-json");
        let document = whole(text, LARGEST_DOCUMENT, too_large, broken)?;
        of_version(&document, PARCEL_VERSION)?;
        let parcel = Self::deserialize(&document).map_err(|error| Problems {
            problems: vec![misfit_at("", &document, &error)],
        })?;
        check(&parcel.intake)?;
        Ok(parcel)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::intake::ExtraAnswer;

    fn parcel() -> Parcel {
        let mut intake = crate::intake::read(include_str!(
            "../../../demo-data/gas-fork-cold-morning.json"
        ))
        .expect("an invented rider");
        intake.extra = vec![ExtraAnswer {
            id: "bring-day".to_owned(),
            question: "Which day?".to_owned(),
            answer: "Monday \"early\"".to_owned(),
        }];
        Parcel {
            version: PARCEL_VERSION,
            id: "1-2".to_owned(),
            made: "2026-01-02T03:04:05.000Z".to_owned(),
            workshop: "Invented".to_owned(),
            agreed: "I agree.".to_owned(),
            intake,
        }
    }

    #[test]
    fn a_parcel_is_read_back_as_it_was_sent() {
        let sent = parcel();
        let text = sent.text().expect("plain data");
        assert_eq!(Parcel::read(&text), Ok(sent));
    }

    #[test]
    fn a_parcel_of_another_form_is_refused() {
        let text = parcel().text().expect("plain data");
        let newer = text.replacen("\"version\":1", "\"version\":2", 1);
        for (wrong, key) in [
            (newer.clone(), "problem.version-newer"),
            (
                newer.replacen('{', "{\"more\":1,", 1),
                "problem.version-newer",
            ),
            (
                text.replacen("\"version\":1", "\"version\":0", 1),
                "problem.version",
            ),
            (
                text.replacen('{', "{\"script\":1,", 1),
                "problem.unknown-field",
            ),
            (
                text.replacen("bring-day", "Bring day", 1),
                "problem.extra-id",
            ),
            (
                text.replacen("\"agreed\"", "\"agred\"", 1),
                "problem.unknown-field",
            ),
            (
                text.replacen('{', &format!("{{{}", " ".repeat(LARGEST_DOCUMENT)), 1),
                "problem.too-large",
            ),
            (String::new(), "problem.not-json"),
        ] {
            let refused = Parcel::read(&wrong).expect_err(key);
            assert_eq!(refused.problems[0].text.key, key, "{wrong:.80}");
        }
    }
}
