//! One figure for each feeling that can be told in a number: what a rider would notice most of it.

use super::felt::{BIG, DEEP, LOOSE, ROWS, SMALL, Seen, THROWN};
use crate::bench::Ground;
use crate::feel::{Ends, Metrics};
use crate::intake::Feeling;
use crate::quantity::Dimension;
use crate::ride::ground::Feature;

/// What a figure is called, in the words, at the front and at the rear, and what it measures.
pub const fn told_as(feeling: Feeling) -> Option<([&'static str; 2], Dimension)> {
    Some(match feeling {
        Feeling::HarshSmallBumps | Feeling::HarshBigHits => {
            (["feel.hands", "feel.body"], Dimension::Acceleration)
        }
        Feeling::Dives => (["feel.dive", "feel.dive"], Dimension::Length),
        Feeling::Packs | Feeling::Squats => {
            (["feel.fork-sunk", "feel.rear-sunk"], Dimension::Length)
        }
        Feeling::Bottoms | Feeling::RampsUp => {
            (["feel.fork-deepest", "feel.rear-deepest"], Dimension::Share)
        }
        Feeling::Kicks => (["feel.kick", "feel.kick"], Dimension::PitchRate),
        Feeling::Pushes | Feeling::Skips => {
            (["feel.front-light", "feel.rear-light"], Dimension::Share)
        }
        // What shows standing still is told of the bike as it stands, and the rest in no single number.
        Feeling::Sticks
        | Feeling::SitsWrong
        | Feeling::Wallows
        | Feeling::Springs
        | Feeling::Headshake
        | Feeling::Fades => return None,
    })
}

/// That figure of a trial, SI; `None` where no figure tells it or the ground that shows it was not ridden.
pub fn figure(feeling: Feeling, seen: &Seen, grounds: &[Ground]) -> Option<Ends<f64>> {
    let mean = |features, of| weighed(seen, grounds, features, of);
    match feeling {
        Feeling::HarshSmallBumps => mean(SMALL, shaking),
        Feeling::HarshBigHits => mean(BIG, shaking),
        Feeling::Dives => mean(&[Feature::Braking], |m| both(m.dive_m)),
        Feeling::Packs => mean(ROWS, |m| m.packed_m),
        Feeling::Squats => mean(&[Feature::AccelerationBumps], |m| m.packed_m),
        Feeling::Bottoms | Feeling::RampsUp => mean(DEEP, |m| m.travel_deepest),
        Feeling::Kicks => mean(THROWN, |m| both(m.kick_rad_s)),
        Feeling::Pushes | Feeling::Skips => mean(LOOSE, |m| m.light_share),
        Feeling::Sticks
        | Feeling::SitsWrong
        | Feeling::Wallows
        | Feeling::Springs
        | Feeling::Headshake
        | Feeling::Fades => None,
    }
}

fn shaking(m: &Metrics<f64>) -> Ends<f64> {
    Ends {
        front: m.hand_m_s2,
        rear: m.body_m_s2,
    }
}

const fn both(figure: f64) -> Ends<f64> {
    Ends {
        front: figure,
        rear: figure,
    }
}

/// Mean over the grounds of these kinds.
fn weighed(
    seen: &Seen,
    grounds: &[Ground],
    features: &[Feature],
    of: fn(&Metrics<f64>) -> Ends<f64>,
) -> Option<Ends<f64>> {
    let here: Vec<Metrics<f64>> = grounds
        .iter()
        .zip(seen.ridden)
        .filter(|(ground, _)| features.contains(&ground.feature))
        .map(|(_, outcome)| outcome.metrics)
        .collect();
    Metrics::mean(&here).map(|mean| of(&mean))
}
