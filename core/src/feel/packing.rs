//! Whether an end creeps down its travel in a row of bumps.

use super::gather::Mean;
use super::turns::Turns;
use crate::lane::Lane;

/// Moves of the suspension smaller than this are no hits and no returns, m.
const LEAST_MOVE_M: f64 = 0.005;

#[derive(Debug, Clone, Copy)]
pub(super) struct Packing<T> {
    turns: Turns<T>,
    /// 1 once the first hit has reached its deepest, and once it has come back from it.
    hit: T,
    returned: T,
    /// All levels are over that of rest, so that a bike at rest gives a clean 0.
    rest_m: T,
    return_m: T,
    late: Mean<T>,
}

impl<T: Lane> Packing<T> {
    /// For an end that rests at `rest_m` of its travel: the level of return should there be no hit.
    pub(super) fn new(rest_m: T) -> Self {
        let zero = T::splat(0.0);
        Self {
            turns: Turns::new(LEAST_MOVE_M),
            hit: zero,
            returned: zero,
            rest_m,
            return_m: zero,
            late: Mean::new(),
        }
    }

    /// Takes the travel, m; `late` says whether this is the last third of the row.
    pub(super) fn step(&mut self, travel_m: T, late: bool) {
        let zero = T::splat(0.0);
        let level_m = travel_m - self.rest_m;
        let turn = self.turns.step(level_m);
        let first_return = turn.valley * self.hit * (T::splat(1.0) - self.returned);
        self.return_m = first_return.if_above(zero, turn.level, self.return_m);
        self.returned = self.returned + first_return;
        self.hit = self.hit.greater(turn.peak);
        if late {
            self.late.add(level_m);
        }
    }

    /// Mean of the last third over the level the first hit returned to, m.
    pub(super) fn packed_m(&self) -> T {
        self.late.or(self.return_m) - self.return_m
    }

    /// Mean of the last third over the level of rest, m.
    pub(super) fn sunk_m(&self) -> T {
        self.late.or(T::splat(0.0))
    }
}
