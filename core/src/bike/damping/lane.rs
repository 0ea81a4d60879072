//! One number, or several advancing in lockstep: what the hot formulas are written over.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// A number, or a short row of numbers that all go through the same sums.
///
/// The plain `f64` is a row of one. Every operation acts on each number of the row alone and rounds as `f64` does
/// (no fused multiply-add), so that a row gives to the bit what its numbers give one by one.
pub trait Lane:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
{
    /// Numbers in the row.
    const COUNT: usize;

    /// The row whose number at place `i`, below [`Self::COUNT`], is `value(i)`.
    fn from_fn(value: impl FnMut(usize) -> f64) -> Self;

    /// Square root of each.
    #[must_use]
    fn sqrt(self) -> Self;

    /// The smaller of each two.
    #[must_use]
    fn min(self, other: Self) -> Self;

    /// The larger of each two.
    #[must_use]
    fn max(self, other: Self) -> Self;

    /// `yes` where this is above zero, `no` elsewhere.
    #[must_use]
    fn where_positive(self, yes: Self, no: Self) -> Self;

    /// The row of one number repeated.
    fn splat(value: f64) -> Self {
        Self::from_fn(|_| value)
    }
}

impl Lane for f64 {
    const COUNT: usize = 1;

    fn from_fn(mut value: impl FnMut(usize) -> f64) -> Self {
        value(0)
    }

    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }

    fn min(self, other: Self) -> Self {
        if self < other { self } else { other }
    }

    fn max(self, other: Self) -> Self {
        if self > other { self } else { other }
    }

    fn where_positive(self, yes: Self, no: Self) -> Self {
        if self > 0.0 { yes } else { no }
    }

    fn splat(value: f64) -> Self {
        value
    }
}
