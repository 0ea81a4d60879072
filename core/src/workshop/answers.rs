//! A rider's answers, however they were saved.

use super::check::Problems;
use super::parcel::Parcel;
use crate::intake::{Intake, read};

/// The answers in a text: a rider's file, or what was made to be sent to a workshop, which has the answers inside.
///
/// # Errors
/// [`Problems`] of the rider's file, where it is neither.
pub fn answers_in(text: &str) -> Result<Intake, Problems> {
    read(text).or_else(|problems| match Parcel::read(text) {
        Ok(parcel) => Ok(parcel.intake),
        Err(_) => Err(problems),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::PARCEL_VERSION;

    #[test]
    fn answers_are_found_by_themselves_and_in_what_was_sent() {
        let file = include_str!("../../../demo-data/gas-fork-cold-morning.json");
        let intake = read(file).expect("an invented rider");
        let sent = Parcel {
            version: PARCEL_VERSION,
            id: "1".to_owned(),
            made: "2026-01-02".to_owned(),
            workshop: "Invented".to_owned(),
            agreed: "Yes.".to_owned(),
            intake: intake.clone(),
        };
        let text = sent.text().expect("plain data");
        assert_eq!(answers_in(file), Ok(intake.clone()));
        assert_eq!(answers_in(&text), Ok(intake));
        for neither in ["", "{}", "[]", &text.replacen("agreed", "agred", 1)] {
            assert_eq!(answers_in(neither), read(neither), "{neither:.80}");
            assert!(answers_in(neither).is_err(), "{neither:.80}");
        }
    }
}
