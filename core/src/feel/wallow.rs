//! Whether the bike comes to rest at once after it was set moving, or swings on.

use super::gather::{above, share};
use super::turns::Turns;
use crate::lane::Lane;

/// Swings smaller than this share of the first are not felt as wallowing; our own definition.
const LEAST_SWING: f64 = 0.1;

#[derive(Debug, Clone, Copy)]
pub(super) struct Wallow<T> {
    turns: Turns<T>,
    /// Turns so far, level of the last, size of the first and second swing, and how many swings were felt.
    count: T,
    last: T,
    first_swing: T,
    second_swing: T,
    swings: T,
}

impl<T: Lane> Wallow<T> {
    /// For a movement whose turns are deeper than `wiggle`, above 0, in the movement's unit.
    pub(super) fn new(wiggle: f64) -> Self {
        let zero = T::splat(0.0);
        Self {
            turns: Turns::new(wiggle),
            count: zero,
            last: zero,
            first_swing: zero,
            second_swing: zero,
            swings: zero,
        }
    }

    pub(super) fn step(&mut self, value: T) {
        let zero = T::splat(0.0);
        let turn = self.turns.step(value);
        let turned = turn.peak + turn.valley;
        let swing = (turn.level - self.last).size();
        let is = |number: f64| {
            turned
                * above(self.count, T::splat(number - 0.5))
                * above(T::splat(number + 0.5), self.count)
        };
        self.first_swing = is(1.0).if_above(zero, swing, self.first_swing);
        self.second_swing = is(2.0).if_above(zero, swing, self.second_swing);
        let felt = turned
            * above(self.count, T::splat(1.5))
            * above(swing, self.first_swing * T::splat(LEAST_SWING));
        self.swings = self.swings + felt;
        self.last = turned.if_above(zero, turn.level, self.last);
        self.count = self.count + turned;
    }

    pub(super) fn overshoot(&self) -> T {
        share(self.second_swing, self.first_swing, T::splat(0.0))
    }

    pub(super) fn swings(&self) -> T {
        self.swings
    }
}
