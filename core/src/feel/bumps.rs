//! Bumps the fork ignored because friction held it.

use super::gather::{above, share};
use super::sample::Sample;
use super::turns::Turns;
use crate::lane::Lane;

/// Smallest bump counted, m, from valley to top. Common practice: a rider feels no less as a bump.
const LEAST_BUMP_M: f64 = 0.003;
/// A fork that slid less than this share of the bump's height took no part in it: a quarter of the way in and out. Our
/// own definition; with a fresh fork about one bump in three of fast gravel is so small to it, with a bound one, half.
const LEAST_SLIDE: f64 = 0.5;

#[derive(Debug, Clone, Copy)]
pub(super) struct Bumps<T> {
    step_s: T,
    ground: Turns<T>,
    /// Height of the last valley, of the last peak over it, and how far the fork has slid since that valley, m.
    valley_m: T,
    height_m: T,
    slid_m: T,
    count: T,
    ignored: T,
}

impl<T: Lane> Bumps<T> {
    pub(super) fn new(step_s: f64) -> Self {
        let zero = T::splat(0.0);
        Self {
            step_s: T::splat(step_s),
            ground: Turns::new(0.5 * LEAST_BUMP_M),
            // No bump counts before a first valley.
            valley_m: T::splat(f64::INFINITY),
            height_m: zero,
            slid_m: zero,
            count: zero,
            ignored: zero,
        }
    }

    pub(super) fn step(&mut self, sample: &Sample<T>) {
        let (zero, one) = (T::splat(0.0), T::splat(1.0));
        self.slid_m =
            self.slid_m + (one - sample.fork_held) * sample.fork_rate_m_s.size() * self.step_s;
        let turn = self.ground.step(sample.ground_front_m);
        self.height_m = turn
            .peak
            .if_above(zero, turn.level - self.valley_m, self.height_m);
        // A bump ends where the climb to the next begins.
        let ended = turn.valley * above(self.height_m, T::splat(LEAST_BUMP_M));
        self.count = self.count + ended;
        self.ignored =
            self.ignored + ended * above(self.height_m * T::splat(LEAST_SLIDE), self.slid_m);
        self.valley_m = turn.valley.if_above(zero, turn.level, self.valley_m);
        self.height_m = turn.valley.if_above(zero, zero, self.height_m);
        self.slid_m = turn.valley.if_above(zero, zero, self.slid_m);
    }

    pub(super) fn count(&self) -> T {
        self.count
    }

    pub(super) fn ignored(&self) -> T {
        share(self.ignored, self.count, T::splat(0.0))
    }
}
