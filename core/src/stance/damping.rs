//! How much low-speed damping an end should have: a damping ratio by pace and ground, then newtons per speed.
//!
//! The damping ratio is that of the axle's sprung mode at 0.1 to 0.3 m/s about ride height: all the mass the
//! axle's springs carry, rider included, on the local wheel rate. Common practice puts it at 0.20 to 0.35 in compression and
//! 0.45 to 0.75 in rebound, softer for rocks and learners, firmer for jumps, whoops and pace. How much each of these
//! counts is from memory.

use crate::intake::{Pace, Share, Terrain};
use crate::units::{
    Band, DampingRate, Force, STANDARD_GRAVITY, SpringRate, newton_second_per_meter,
};

/// Compression damping ratios of practice, softest to firmest.
const COMPRESSION: Band<f64> = Band {
    low: 0.20,
    middle: 0.275,
    high: 0.35,
};
/// Rebound damping ratios of practice, softest to firmest.
const REBOUND: Band<f64> = Band {
    low: 0.45,
    middle: 0.60,
    high: 0.75,
};
/// How far two good riders differ for the same pace and ground, on a scale from softest −1 to firmest 1.
const TASTE: f64 = 0.35;

/// Damping ratios to aim at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Targets {
    /// In compression, dimensionless.
    pub compression: Band<f64>,
    /// In rebound, dimensionless.
    pub rebound: Band<f64>,
}

/// Damping ratios for a pace and a mix of ground. A mix that is empty counts as even ground.
pub fn targets(pace: Pace, ground: &[(Terrain, Share)]) -> Targets {
    let by_pace = match pace {
        Pace::Learning => -0.4,
        Pace::Club => 0.0,
        Pace::Fast => 0.3,
        Pace::Expert => 0.5,
    };
    let (mut compression, mut rebound) = (by_pace, by_pace);
    for &(terrain, share) in ground {
        let weight = match share {
            Share::None => 0.0,
            Share::Some => 0.4,
            Share::Lot => 1.0,
        };
        // Rebound follows compression except in rows of bumps, where slow rebound packs the suspension down.
        let (firmer, slower) = match terrain {
            Terrain::RootsRocks => (-0.6, -0.4),
            Terrain::BrakingBumps => (0.0, -0.3),
            Terrain::Whoops => (0.5, 0.1),
            Terrain::Jumps => (0.6, 0.4),
            Terrain::RutsMud => (-0.1, 0.0),
            Terrain::Sand => (0.4, 0.3),
            Terrain::FastGravel => (-0.2, 0.0),
        };
        compression += weight * firmer;
        rebound += weight * slower;
    }
    Targets {
        compression: around(COMPRESSION, compression),
        rebound: around(REBOUND, rebound),
    }
}

/// The ratios about a place on the scale from −1 to 1, never beyond what practice knows.
fn around(known: Band<f64>, firmness: f64) -> Band<f64> {
    let at =
        |firmness: f64| known.middle + firmness.clamp(-1.0, 1.0) * 0.5 * (known.high - known.low);
    Band {
        low: at(firmness - TASTE),
        middle: at(firmness),
        high: at(firmness + TASTE),
    }
}

/// Damping coefficient at the axle for a damping ratio: c = ζ 2 √(k m), with m = load / g.
pub fn at_axle(ratio: f64, wheel_rate: SpringRate, load: Force) -> DampingRate {
    let mass_kg = load.value.max(0.0) / STANDARD_GRAVITY;
    newton_second_per_meter(ratio * 2.0 * (wheel_rate.value.max(0.0) * mass_kg).sqrt())
}
