//! One bracketing root finder for every "which value gives this?" in the project.

use core::fmt;

/// Why no root was found. Nothing is ever returned in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoRoot {
    /// The function has the same sign at both limits, so the wanted value lies outside them.
    SameSign {
        /// Lower limit of the search.
        low: f64,
        /// Upper limit of the search.
        high: f64,
        /// Value of the function at `low`.
        at_low: f64,
        /// Value of the function at `high`.
        at_high: f64,
    },
    /// The function gave something that is not a number at this point.
    NotFinite {
        /// Where it happened.
        at: f64,
    },
    /// The tolerance was not met in the allowed number of steps.
    Steps {
        /// Best point so far.
        best: f64,
        /// Width of the bracket that was left.
        width: f64,
    },
}

impl fmt::Display for NoRoot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::SameSign {
                low,
                high,
                at_low,
                at_high,
            } => write!(
                f,
                "no solution between {low} and {high}: the balance is {at_low} at one limit and {at_high} at the other"
            ),
            Self::NotFinite { at } => write!(f, "the balance is not a number at {at}"),
            Self::Steps { best, width } => {
                write!(f, "not solved: still {width} wide around {best}")
            }
        }
    }
}

impl core::error::Error for NoRoot {}

/// More than bisection needs to go from 1e6 to 1e-12; the method uses at most about three times as many.
const MOST_STEPS: u32 = 200;

/// Finds `x` in `[low, high]` with `f(x) = 0`, to within `tolerance` on `x` (same unit as `x`).
///
/// Bracketing with inverse quadratic interpolation where it is safe and bisection elsewhere:
/// T. R. Chandrupatla, *Advances in Engineering Software* 28 (1997) 145–149 (from memory).
/// Only `+ - * / sqrt`, so the result has the same bits on every target.
pub fn root(
    mut f: impl FnMut(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
) -> Result<f64, NoRoot> {
    let mut value = |x: f64| {
        let y = f(x);
        if y.is_finite() {
            Ok(y)
        } else {
            Err(NoRoot::NotFinite { at: x })
        }
    };
    // `newest` and `other` bracket the root; `dropped` is the point replaced last.
    let (mut newest, mut other) = (high, low);
    let (mut f_newest, mut f_other) = (value(newest)?, value(other)?);
    if f_other == 0.0 {
        return Ok(other);
    }
    if f_newest != 0.0 && (f_newest > 0.0) == (f_other > 0.0) {
        return Err(NoRoot::SameSign {
            low,
            high,
            at_low: f_other,
            at_high: f_newest,
        });
    }
    let mut fraction = 0.5;
    for _ in 0..MOST_STEPS {
        let best = if f_newest.abs() < f_other.abs() {
            newest
        } else {
            other
        };
        let width = (other - newest).abs();
        if width <= tolerance || f_newest == 0.0 {
            return Ok(best);
        }
        let trial = newest + fraction * (other - newest);
        let f_trial = value(trial)?;
        let (dropped, f_dropped);
        if (f_trial > 0.0) == (f_newest > 0.0) {
            (dropped, f_dropped) = (newest, f_newest);
        } else {
            (dropped, f_dropped) = (other, f_other);
            (other, f_other) = (newest, f_newest);
        }
        (newest, f_newest) = (trial, f_trial);

        // Interpolation is trusted only where the inverse parabola through the three points stays monotonic.
        let xi = (newest - other) / (dropped - other);
        let phi = (f_newest - f_other) / (f_dropped - f_other);
        fraction = if phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi {
            let to_other = f_newest / (f_other - f_newest) * f_dropped / (f_other - f_dropped);
            let to_dropped = f_newest / (f_dropped - f_newest) * f_other / (f_dropped - f_other);
            to_other + (dropped - newest) / (other - newest) * to_dropped
        } else {
            0.5
        };
        // Never closer to an end than half the tolerance, so that the bracket always shrinks past it.
        let least = (0.5 * tolerance / (other - newest).abs()).min(0.5);
        fraction = fraction.clamp(least, 1.0 - least);
    }
    Err(NoRoot::Steps {
        best: newest,
        width: (other - newest).abs(),
    })
}

#[cfg(test)]
mod tests {
    use super::{NoRoot, root};

    #[test]
    fn finds_easy_and_awkward_roots() {
        let easy = root(|x| x * x - 2.0, 0.0, 2.0, 1e-12).expect("bracketed");
        assert!((easy - core::f64::consts::SQRT_2).abs() < 1e-12);
        // Flat on both sides with a jump: interpolation is useless and bisection must carry it.
        let jump = root(|x| if x < 0.3 { -1.0 } else { 1.0 }, -5.0, 7.0, 1e-9).expect("bracketed");
        assert!((jump - 0.3).abs() < 1e-9);
        let steep =
            root(|x| x * x * x * x * x * x * x - 1e-9, -1.0, 10.0, 1e-12).expect("bracketed");
        assert!((libm::pow(steep, 7.0) - 1e-9).abs() < 1e-16);
    }

    #[test]
    fn counts_its_steps() {
        let mut calls = 0;
        let _ = root(
            |x| {
                calls += 1;
                libm::exp(x) - 5.0
            },
            0.0,
            10.0,
            1e-10,
        )
        .expect("bracketed");
        assert!(calls < 25, "{calls} evaluations");
    }

    #[test]
    fn names_the_limits_when_there_is_no_root() {
        assert_eq!(
            root(|x| x + 10.0, 0.0, 1.0, 1e-9),
            Err(NoRoot::SameSign {
                low: 0.0,
                high: 1.0,
                at_low: 10.0,
                at_high: 11.0
            })
        );
        assert!(matches!(
            root(|_| f64::NAN, 0.0, 1.0, 1e-9),
            Err(NoRoot::NotFinite { .. })
        ));
    }
}
