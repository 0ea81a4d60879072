//! One or several numbers that go through the same sums at once.
//!
//! A ride is computed for many set-ups in lockstep, each in its own lane. What is written over [`Lane`] runs for
//! one (`f64`) and for many alike, with the same bits per lane, since only operations that IEEE 754 rounds
//! exactly are asked for.

use core::ops::{Add, Div, Mul, Neg, Sub};

use wide::{f64x2, f64x4, f64x8};

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
    #[inline]
    #[must_use]
    fn greater(self, other: Self) -> Self {
        self.if_above(other, self, other)
    }

    /// The lesser of the two per lane.
    #[inline]
    #[must_use]
    fn lesser(self, other: Self) -> Self {
        other.if_above(self, self, other)
    }

    /// Kept between two limits per lane.
    #[inline]
    #[must_use]
    fn between(self, low: Self, high: Self) -> Self {
        self.greater(low).lesser(high)
    }

    /// Size without sign.
    #[inline]
    #[must_use]
    fn size(self) -> Self {
        self.greater(-self)
    }
}

impl Lane for f64 {
    const LANES: usize = 1;

    #[inline]
    fn splat(value: f64) -> Self {
        value
    }

    #[inline]
    fn lane(self, _: usize) -> f64 {
        self
    }

    #[inline]
    fn set_lane(&mut self, _: usize, value: f64) {
        *self = value;
    }

    #[inline]
    fn from_lanes(mut fill: impl FnMut(usize) -> f64) -> Self {
        fill(0)
    }

    #[inline]
    fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self {
        if self > limit { then } else { otherwise }
    }

    #[inline]
    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }
}

/// The vectors of the processor, or what stands in for them where it has none. Lane by lane they round as `f64` does.
macro_rules! vector {
    ($vector:ty, $lanes:literal) => {
        impl Lane for $vector {
            const LANES: usize = $lanes;

            #[inline]
            fn splat(value: f64) -> Self {
                Self::splat(value)
            }

            #[inline]
            fn lane(self, at: usize) -> f64 {
                self.to_array()[at]
            }

            #[inline]
            fn set_lane(&mut self, at: usize, value: f64) {
                self.as_mut_array()[at] = value;
            }

            #[inline]
            fn from_lanes(fill: impl FnMut(usize) -> f64) -> Self {
                Self::new(core::array::from_fn(fill))
            }

            #[inline]
            fn if_above(self, limit: Self, then: Self, otherwise: Self) -> Self {
                self.simd_gt(limit).bitselect(then, otherwise)
            }

            #[inline]
            fn sqrt(self) -> Self {
                self.sqrt()
            }
        }
    };
}

vector!(f64x2, 2);
vector!(f64x4, 4);
vector!(f64x8, 8);

#[cfg(test)]
mod tests {
    use super::*;

    /// Every operation, on two numbers or rows of them.
    fn all<T: Lane>(a: T, b: T) -> [T; 10] {
        [
            a + b,
            a - b,
            a * b,
            a / b,
            -a,
            (a * a).sqrt(),
            a.greater(b),
            a.lesser(b),
            a.between(-b.size(), b.size()),
            a.if_above(b, T::splat(1.0), a),
        ]
    }

    fn as_plain<T: Lane>() {
        let a = |i: usize| [1.5, -2.25, 0.1, 7.0, -0.3, 1e9, 3.0, 0.0][i];
        let b = |i: usize| [2.5, -2.25, 0.3, -7.0, 0.4, 1e-9, 2.0, 5.0][i];
        let rows = all(T::from_lanes(a), T::from_lanes(b));
        for i in 0..T::LANES {
            for (operation, (row, plain)) in rows.iter().zip(all(a(i), b(i))).enumerate() {
                let same = row.lane(i).to_bits() == plain.to_bits();
                assert!(same, "lane {i} of operation {operation}");
            }
        }
    }

    #[test]
    fn every_lane_computes_to_the_bit_as_a_plain_number_does() {
        as_plain::<f64>();
        as_plain::<f64x2>();
        as_plain::<f64x4>();
        as_plain::<f64x8>();
    }
}
