//! Invented riders to try the wizard with; part of the program, so they open without a signal.

use sagwright_core::intake::{Intake, read};

/// The documents in `demo-data/`.
const DOCUMENTS: &[&str] = &[
    include_str!("../../demo-data/gas-fork-right-but-harsh.json"),
    include_str!("../../demo-data/heavy-rider-on-standard-springs.json"),
    include_str!("../../demo-data/enduro-that-packs-down.json"),
    include_str!("../../demo-data/light-expert-whose-rear-kicks.json"),
    include_str!("../../demo-data/gas-fork-cold-morning.json"),
    include_str!("../../demo-data/gas-fork-over-pressured.json"),
    include_str!("../../demo-data/adventure-bike-that-fades.json"),
    include_str!("../../demo-data/youth-who-knows-little.json"),
    include_str!("../../demo-data/trail-bike-baseline.json"),
    include_str!("../../demo-data/shake-that-grows.json"),
];

/// The invented riders, in the order in which they are offered. The note of each says who it is.
pub fn riders() -> impl Iterator<Item = Intake> {
    DOCUMENTS.iter().filter_map(|json| read(json).ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_example_can_be_read_and_says_that_it_is_invented() {
        assert_eq!(riders().count(), DOCUMENTS.len());
        for rider in riders() {
            assert!(rider.note.contains("Invented"), "{}", rider.note);
        }
    }
}
