//! One or several numbers that go through the same sums at once.
//!
//! A ride is computed for many set-ups in lockstep, each in its own lane. What is written over [`Lane`] runs for
//! one (`f64`) and for many alike, with the same bits per lane, since only operations that IEEE 754 rounds
//! exactly are asked for.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// What a number, or a row of numbers worked on side by side, must be able to do.
pub trait Lane:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
{
    /// How many lanes there are; at least 1.
    const LANES: usize;

    /// The same number in every lane.
    fn splat(value: f64) -> Self;

    /// The number in lane `at`, which is below [`Lane::LANES`].
    fn lane(self, at: usize) -> f64;

    /// Changes the number in lane `at`, which is below [`Lane::LANES`].
    fn set_lane(&mut self, at: usize, value: f64);

    /// The numbers `fill` gives for each lane from 0 on.
    fn from_lanes(fill: impl FnMut(usize) -> f64) -> Self;

    /// `then` in the lanes where `self` is greater than `limit`, `otherwise` in the rest (a NaN is never greater).
    #[must_use]
    fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self;

    /// Square root; NaN in lanes that are negative.
    #[must_use]
    fn sqrt(self) -> Self;

    /// The greater of the two per lane.
    #[must_use]
    fn greater(self, other: Self) -> Self {
        self.if_above(other, self, other)
    }

    /// The lesser of the two per lane.
    #[must_use]
    fn lesser(self, other: Self) -> Self {
        other.if_above(self, self, other)
    }

    /// Size without sign.
    #[must_use]
    fn size(self) -> Self {
        self.greater(-self)
    }
}

impl Lane for f64 {
    const LANES: usize = 1;

    fn splat(value: f64) -> Self {
        value
    }

    fn lane(self, _: usize) -> f64 {
        self
    }

    fn set_lane(&mut self, _: usize, value: f64) {
        *self = value;
    }

    fn from_lanes(mut fill: impl FnMut(usize) -> f64) -> Self {
        fill(0)
    }

    fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self {
        if self > limit { then } else { otherwise }
    }

    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }
}
