//! Force over travel, for pictures and tables.

use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::units::{Force, Length, metre, newton};

/// One point of a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Travel from full extension, m.
    pub travel: Length,
    /// Force, N.
    pub force: Force,
}

/// How fast the curve is gone through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Speed {
    /// As when the bike is pushed down by hand over minutes.
    Slow,
    /// As over a bump, from this travel. On the way back up a gas fork may pull itself together near full extension,
    /// where its negative chamber is squeezed; start from zero to show a landing.
    Quick(Length),
}

impl Speed {
    fn law(self) -> Law {
        match self {
            Self::Slow => Law::Slow,
            Self::Quick(from) => Law::Quick { from_m: from.value },
        }
    }
}

/// Force of fork springs, air and stops along the leg over stroke along the leg, at `points` even places (at least 2).
pub fn fork_curve(fork: &Fork, speed: Speed, points: u16) -> Vec<Point> {
    sample(fork.stops.stroke_m, points, |s| {
        fork.force_n(s, speed.law())
    })
}

fn sample(travel_m: f64, points: u16, force_n: impl Fn(f64) -> f64) -> Vec<Point> {
    let last = points.max(2) - 1;
    (0..=last)
        .map(|i| {
            let at_m = travel_m * f64::from(i) / f64::from(last);
            Point {
                travel: metre(at_m),
                force: newton(force_n(at_m)),
            }
        })
        .collect()
}
