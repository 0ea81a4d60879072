//! One or several numbers that go through the same sums at once.
//!
//! A ride is computed for many set-ups in lockstep, each in its own lane. What is written over [`Lane`] runs for
//! one (`f64`) and for many alike, with the same bits per lane, since only operations that IEEE 754 rounds
//! exactly are asked for.

use core::fmt::Debug;
use core::ops::{Add, Div, Mul, Neg, Sub};

use wide::{f32x4, f32x8, f64x2, f64x4, f64x8};

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

    /// What is in one lane: `f64`, or `f32` for twice as many in the same room.
    type One: Copy + Debug + Into<f64>;

    /// A number without room for fractions, itself even in its last 20 bits: a number from 0 to 2^20 to which it is added
    /// is rounded to a whole one, which then stands in the last bits of the sum.
    const WHOLE: f64;

    /// The same number in every lane.
    fn splat(value: f64) -> Self;

    /// A number as one lane has it.
    fn one(value: f64) -> Self::One;

    /// The last bits of the number in lane `at`, which is below [`Lane::LANES`]. At least 20 of them.
    fn last_bits(self, at: usize) -> usize;

    /// The four numbers `fill` gives for each lane from 0 on, as four rows.
    #[inline]
    fn rows(fill: impl Fn(usize) -> [Self::One; 4]) -> [Self; 4] {
        core::array::from_fn(|row| Self::from_lanes(|lane| fill(lane)[row].into()))
    }

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

    /// The greater of the two per lane: `self` where it is above `other`, else `other`.
    #[must_use]
    fn greater(self, other: Self) -> Self;

    /// The lesser of the two per lane: `self` where it is below `other`, else `other`.
    #[must_use]
    fn lesser(self, other: Self) -> Self;

    /// Size without sign.
    #[must_use]
    fn size(self) -> Self;

    /// Kept between two limits per lane.
    #[inline]
    #[must_use]
    fn between(self, low: Self, high: Self) -> Self {
        self.greater(low).lesser(high)
    }
}

/// 2^52 + 2^51: the last bit of an `f64` this large is worth 1.
const WHOLE_64: f64 = 6_755_399_441_055_744.0;
/// 2^23 + 2^22: the same for an `f32`.
const WHOLE_32: f64 = 12_582_912.0;

/// One number at a time.
macro_rules! number {
    ($number:ident, $whole:ident) => {
        #[allow(
            clippy::cast_possible_truncation,
            reason = "lanes of 32 bits round what they are given; of bits, only the last are asked for"
        )]
        impl Lane for $number {
            const LANES: usize = 1;

            type One = Self;

            const WHOLE: f64 = $whole;

            #[inline]
            fn splat(value: f64) -> Self {
                value as Self
            }

            #[inline]
            fn one(value: f64) -> Self {
                value as Self
            }

            #[inline]
            fn last_bits(self, _: usize) -> usize {
                self.to_bits() as usize
            }

            #[inline]
            fn lane(self, _: usize) -> f64 {
                self.into()
            }

            #[inline]
            fn set_lane(&mut self, _: usize, value: f64) {
                *self = value as Self;
            }

            #[inline]
            fn from_lanes(mut fill: impl FnMut(usize) -> f64) -> Self {
                fill(0) as Self
            }

            #[inline]
            fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self {
                if self > limit { then } else { otherwise }
            }

            #[inline]
            fn sqrt(self) -> Self {
                $number::sqrt(self)
            }

            #[inline]
            fn greater(self, other: Self) -> Self {
                if self > other { self } else { other }
            }

            #[inline]
            fn lesser(self, other: Self) -> Self {
                if self < other { self } else { other }
            }

            #[inline]
            fn size(self) -> Self {
                self.abs()
            }
        }
    };
}

number!(f64, WHOLE_64);
number!(f32, WHOLE_32);

/// The vectors of the processor, or what stands in for them where it has none. Lane by lane they round as plain numbers do
/// (`tests/same-bits` checks each).
macro_rules! vector {
    ($vector:ident of $lanes:literal $one:ident, $whole:ident, { $($rows:tt)* }) => {
        #[allow(
            clippy::cast_possible_truncation,
            reason = "lanes of 32 bits round what they are given; of bits, only the last are asked for"
        )]
        impl Lane for $vector {
            const LANES: usize = $lanes;

            type One = $one;

            const WHOLE: f64 = $whole;

            #[inline]
            fn splat(value: f64) -> Self {
                Self::splat(value as $one)
            }

            #[inline]
            fn one(value: f64) -> $one {
                value as $one
            }

            #[inline]
            fn last_bits(self, at: usize) -> usize {
                self.to_bits().to_array()[at] as usize
            }

            $($rows)*

            #[inline]
            fn lane(self, at: usize) -> f64 {
                self.to_array()[at].into()
            }

            #[inline]
            fn set_lane(&mut self, at: usize, value: f64) {
                self.as_mut_array()[at] = value as $one;
            }

            #[inline]
            fn from_lanes(mut fill: impl FnMut(usize) -> f64) -> Self {
                Self::new(core::array::from_fn(|at| fill(at) as $one))
            }

            #[inline]
            fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self {
                self.simd_gt(limit).bitselect(then, otherwise)
            }

            #[inline]
            fn sqrt(self) -> Self {
                self.sqrt()
            }

            #[inline]
            fn greater(self, other: Self) -> Self {
                // Where neither is greater, the quick maximum of x86 gives its second number, that of WebAssembly its first.
                if cfg!(target_feature = "sse2") {
                    self.fast_max(other)
                } else if cfg!(target_feature = "simd128") {
                    other.fast_max(self)
                } else {
                    self.if_above(other, self, other)
                }
            }

            #[inline]
            fn lesser(self, other: Self) -> Self {
                if cfg!(target_feature = "sse2") {
                    self.fast_min(other)
                } else if cfg!(target_feature = "simd128") {
                    other.fast_min(self)
                } else {
                    other.if_above(self, self, other)
                }
            }

            #[inline]
            fn size(self) -> Self {
                self.abs()
            }
        }
    };
}

vector!(f64x2 of 2 f64, WHOLE_64, {});
vector!(f64x4 of 4 f64, WHOLE_64, {});
vector!(f64x8 of 8 f64, WHOLE_64, {});
vector!(f32x4 of 4 f32, WHOLE_32, {
    #[inline]
    fn rows(fill: impl Fn(usize) -> [f32; 4]) -> [Self; 4] {
        Self::transpose(core::array::from_fn(|lane| Self::new(fill(lane))))
    }
});
vector!(f32x8 of 8 f32, WHOLE_32, {
    #[inline]
    fn rows(fill: impl Fn(usize) -> [f32; 4]) -> [Self; 4] {
        let half = |from| f32x4::transpose(core::array::from_fn(|lane| f32x4::new(fill(from + lane))));
        let (first, last) = (half(0), half(4));
        core::array::from_fn(|row| bytemuck::cast([first[row], last[row]]))
    }
});
