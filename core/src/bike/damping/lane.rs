//! One number, or several advancing in lockstep: what the hot formulas are written over.

use crate::lane::Lane as Row;
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

impl<T: Row> Lane for T {
    const COUNT: usize = T::LANES;

    #[inline]
    fn from_fn(value: impl FnMut(usize) -> f64) -> Self {
        T::from_lanes(value)
    }

    #[inline]
    fn sqrt(self) -> Self {
        Row::sqrt(self)
    }

    #[inline]
    fn min(self, other: Self) -> Self {
        self.lesser(other)
    }

    #[inline]
    fn max(self, other: Self) -> Self {
        self.greater(other)
    }

    #[inline]
    fn where_positive(self, yes: Self, no: Self) -> Self {
        self.if_above(<T as Row>::splat(0.0), yes, no)
    }

    #[inline]
    fn splat(value: f64) -> Self {
        <T as Row>::splat(value)
    }
}
