//! Causes that no rider can tell apart by feel, and the check that can.
//!
//! On the ridden bikes of the fleet (`tests/fleet`) the two of a pair, each at the degree nearest to the other, move no
//! feeling by a whole noticeable step more than the other does; that test holds them to it. All other pairs differ.

use super::Cause;
use super::checks::How;
use crate::intake::{Look, Question};

/// Two causes that feel the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Alike {
    /// Both.
    pub causes: [Cause; 2],
    /// What tells them apart.
    pub check: How,
}

/// Every such pair.
pub const ALIKE: &[Alike] = &[
    // Only the thermometer knows who made the pressure what it is.
    Alike {
        causes: [Cause::GasLow, Cause::GasShifted],
        check: How::Answer(Question::GroundToday),
    },
    Alike {
        causes: [Cause::GasHigh, Cause::GasShifted],
        check: How::Answer(Question::GroundToday),
    },
    // Both hold the fork: one lets go when the axle does.
    Alike {
        causes: [Cause::ForkFriction, Cause::ForkBound],
        check: How::Look(Look::FreesWithAxleLoose),
    },
    // Both damp too much: one by where the clicker stands, the other in spite of it.
    Alike {
        causes: [Cause::ForkCompressionMuch, Cause::MidValve],
        check: How::Answer(Question::ForkClickers),
    },
];

impl Cause {
    /// Whether the two feel the same, or are the same.
    pub fn feels_like(self, other: Self) -> bool {
        let both = |pair: &Alike| pair.causes.contains(&self) && pair.causes.contains(&other);
        self == other || ALIKE.iter().any(both)
    }
}
