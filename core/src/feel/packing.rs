//! Whether an end stays down in its travel in a row of bumps.
//!
//! Measuring from the level to which the first hit returns was tried and dropped: slow rebound raises that level
//! before it raises any other, so the bike that packs down more read as packing down less.

use super::gather::Mean;
use crate::lane::Lane;

#[derive(Debug, Clone, Copy)]
pub(super) struct Packing<T> {
    rest_m: T,
    /// Travel over that at rest, m.
    sunk: Mean<T>,
}

impl<T: Lane> Packing<T> {
    /// For an end that rests at `rest_m` of its travel.
    pub(super) fn new(rest_m: T) -> Self {
        Self {
            rest_m,
            sunk: Mean::new(),
        }
    }

    /// Takes the travel, m, in the last third of the row.
    pub(super) fn step(&mut self, travel_m: T) {
        self.sunk.add(travel_m - self.rest_m);
    }

    pub(super) fn packed_m(&self) -> T {
        self.sunk.or(T::splat(0.0))
    }
}
