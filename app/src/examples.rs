//! Invented riders to try the wizard with; part of the program, so they open without a signal.

use sagwright_core::intake::{Intake, read};

/// The documents in `demo-data/`, each with the word for it in the text keys.
const DOCUMENTS: &[(&str, &str)] = &[
    (
        "gas-fork-right-but-harsh",
        include_str!("../../demo-data/gas-fork-right-but-harsh.json"),
    ),
    (
        "heavy-rider-on-standard-springs",
        include_str!("../../demo-data/heavy-rider-on-standard-springs.json"),
    ),
    (
        "enduro-that-packs-down",
        include_str!("../../demo-data/enduro-that-packs-down.json"),
    ),
    (
        "light-expert-whose-rear-kicks",
        include_str!("../../demo-data/light-expert-whose-rear-kicks.json"),
    ),
    (
        "gas-fork-cold-morning",
        include_str!("../../demo-data/gas-fork-cold-morning.json"),
    ),
    (
        "gas-fork-over-pressured",
        include_str!("../../demo-data/gas-fork-over-pressured.json"),
    ),
    (
        "adventure-bike-that-fades",
        include_str!("../../demo-data/adventure-bike-that-fades.json"),
    ),
    (
        "youth-who-knows-little",
        include_str!("../../demo-data/youth-who-knows-little.json"),
    ),
    (
        "trail-bike-baseline",
        include_str!("../../demo-data/trail-bike-baseline.json"),
    ),
    (
        "shake-that-grows",
        include_str!("../../demo-data/shake-that-grows.json"),
    ),
];

/// One invented rider.
#[derive(Debug, Clone, Copy)]
pub struct Example {
    word: &'static str,
    document: &'static str,
}

impl Example {
    /// The key of the sentence that says who it is.
    pub fn key(self) -> String {
        ["example.", self.word].concat()
    }

    /// The rider, read when asked for: most who come open none. There is always one, as the tests below see to.
    pub fn rider(self) -> Option<Intake> {
        read(self.document).ok()
    }
}

/// The invented riders, in the order in which they are offered.
pub fn offered() -> impl Iterator<Item = Example> {
    DOCUMENTS
        .iter()
        .map(|&(word, document)| Example { word, document })
}

/// The same, read.
#[cfg(test)]
pub fn riders() -> impl Iterator<Item = Intake> {
    offered().filter_map(Example::rider)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::book;

    #[test]
    fn every_example_can_be_read_and_says_that_it_is_invented() {
        assert_eq!(riders().count(), DOCUMENTS.len());
        for (example, rider) in offered().zip(riders()) {
            let key = example.key();
            assert!(rider.note.contains("Invented"), "{}", rider.note);
            assert!(book().has(&key), "nobody says who {key} is");
        }
    }
}
