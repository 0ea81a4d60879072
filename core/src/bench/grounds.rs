//! The rider's ground mix as pieces to ride, sized so that a healthy bike uses its travel.

use super::trials::Bench;
use crate::intake::{Share, Terrain};
use crate::ride::ground::Feature;
use crate::ride::ground::fit::usual_size;
use crate::ride::{Course, RideError};

/// Most kinds of ground ridden; the heaviest of the mix are kept.
const MOST_KINDS: usize = 5;
/// Seeds for ground that comes in random pieces: bump trains answer almost chaotically, so one piece is too few.
const SEEDS: [u64; 2] = [11, 47];

/// One kind of ground with its weight in the rider's mix.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// What it is.
    pub feature: Feature,
    /// Its weight; all weights of a mix sum to 1.
    pub weight: f64,
    /// Pieces of it to ride.
    pub pieces: Vec<Course>,
}

impl Ground {
    /// How many pieces there are.
    pub fn courses(&self) -> u32 {
        u32::try_from(self.pieces.len()).unwrap_or(u32::MAX)
    }
}

/// The features a kind of ground is made of, with their parts in it.
const fn features(terrain: Terrain) -> &'static [(Feature, f64)] {
    match terrain {
        Terrain::RootsRocks => &[(Feature::RootsRocks, 0.6), (Feature::SmallRipple, 0.4)],
        Terrain::BrakingBumps => &[(Feature::BrakingBumps, 1.0)],
        Terrain::Whoops => &[(Feature::Whoops, 1.0)],
        Terrain::Jumps => &[(Feature::JumpToSlope, 0.6), (Feature::TakeOff, 0.4)],
        Terrain::RutsMud | Terrain::Sand => &[(Feature::Rollers, 1.0)],
        Terrain::FastGravel => &[(Feature::Gravel, 1.0)],
    }
}

/// Mixed ground, for a rider who did not say.
const MIXED: &[(Terrain, Share)] = &[
    (Terrain::RootsRocks, Share::Some),
    (Terrain::BrakingBumps, Share::Some),
    (Terrain::Whoops, Share::Some),
    (Terrain::Jumps, Share::Some),
];

/// Kinds of ground that show what else could be wrong, whatever the rider's mix holds: everyone brakes, drives, meets an
/// edge and lands now and then.
const SHOWING: [Feature; 10] = [
    Feature::SmallRipple,
    Feature::RootsRocks,
    Feature::SquareEdge,
    Feature::BrakingBumps,
    Feature::AccelerationBumps,
    Feature::Whoops,
    Feature::JumpToSlope,
    Feature::JumpToFlat,
    Feature::TakeOff,
    Feature::Braking,
];
/// How much harder than usual the landing on the flat is that shows how a bike bottoms: the one in a day that goes long.
const GONE_LONG: f64 = 1.25;

/// The features of the rider's mix with their weights, heaviest first; the weights sum to 1.
fn mix(bench: &Bench) -> Vec<(Feature, f64)> {
    let told = bench
        .situation
        .ground
        .iter()
        .any(|(_, share)| *share != Share::None);
    let mix = if told {
        bench.situation.ground.as_slice()
    } else {
        MIXED
    };
    let mut weights: Vec<(Feature, f64)> = Vec::new();
    for (terrain, share) in mix {
        let much = match share {
            Share::None => continue,
            Share::Some => 0.4,
            Share::Lot => 1.0,
        };
        for (feature, part) in features(*terrain) {
            match weights.iter_mut().find(|(known, _)| known == feature) {
                Some((_, weight)) => *weight += much * part,
                None => weights.push((*feature, much * part)),
            }
        }
    }
    weights.sort_by(|a, b| b.1.total_cmp(&a.1));
    let sum: f64 = weights.iter().map(|(_, weight)| weight).sum();
    weights
        .into_iter()
        .map(|(feature, weight)| (feature, weight / sum))
        .collect()
}

/// The heaviest kinds of the rider's ground, ready to ride; their weights sum to 1.
pub fn of(bench: &Bench) -> Result<Vec<Ground>, RideError> {
    let mut weights = mix(bench);
    weights.truncate(MOST_KINDS);
    let sum: f64 = weights.iter().map(|(_, weight)| weight).sum();
    weights
        .into_iter()
        .map(|(feature, weight)| {
            Ok(Ground {
                feature,
                weight: weight / sum,
                pieces: pieces(bench, feature)?,
            })
        })
        .collect()
}

/// One piece each of the rider's ground and of all ground that shows faults; what is not in the mix has the weight 0.
///
/// `known` are grounds made ready already.
pub fn showing(bench: &Bench, known: &[Ground]) -> Result<Vec<Ground>, RideError> {
    let mix = mix(bench);
    let weight = |feature: Feature| {
        mix.iter()
            .find(|(known, _)| *known == feature)
            .map_or(0.0, |(_, weight)| *weight)
    };
    let others = mix
        .iter()
        .map(|(feature, _)| *feature)
        .filter(|feature| !SHOWING.contains(feature));
    SHOWING
        .into_iter()
        .chain(others)
        .map(|feature| {
            let ready = known
                .iter()
                .find(|ground| ground.feature == feature)
                .and_then(|ground| ground.pieces.first());
            let mut piece = match ready {
                Some(piece) => piece.clone(),
                None => piece(bench, feature, SEEDS[0])?,
            };
            if feature == Feature::JumpToFlat {
                piece.size *= GONE_LONG;
            }
            Ok(Ground {
                feature,
                weight: weight(feature),
                pieces: vec![piece],
            })
        })
        .collect()
}

fn pieces(bench: &Bench, feature: Feature) -> Result<Vec<Course>, RideError> {
    let seeds: &[u64] = match feature {
        Feature::JumpToSlope | Feature::JumpToFlat | Feature::TakeOff => &SEEDS[..1],
        _ => &SEEDS,
    };
    seeds
        .iter()
        .map(|seed| piece(bench, feature, *seed))
        .collect()
}

fn piece(bench: &Bench, feature: Feature, seed: u64) -> Result<Course, RideError> {
    let situation = bench.situation;
    let mut course = Course::new(
        feature,
        situation.pace,
        situation.machine.class.wheelbase.value,
        bench.tyre_radius_m()?,
        seed,
    );
    if asks_for_all_travel(feature) {
        course.size = usual_size(&bench.candidate(&bench.advised())?, &course)?;
    }
    Ok(course)
}

/// Whether this ground is among the hardest a bike meets, which its travel is there for.
const fn asks_for_all_travel(feature: Feature) -> bool {
    matches!(
        feature,
        Feature::BrakingBumps
            | Feature::Whoops
            | Feature::JumpToSlope
            | Feature::JumpToFlat
            | Feature::TakeOff
            | Feature::Rollers
    )
}
