//! One number for a set-up over the rider's ground, against the set-up advised before any ride; and the hard limits.

use crate::bench::{Bench, Ground, Outcome, Trial};
use crate::bike::damping::damper::WANTED_MARGIN;
use crate::feel::Metrics;
use crate::ride::ground::Feature;

/// The measure and the limits for every trial.
pub struct Limits<'a> {
    bench: &'a Bench<'a>,
    grounds: &'a [Ground],
    start: &'a [Outcome],
    /// Lowest cavitation margin of the start, Pa.
    start_margin_pa: f64,
}

/// How much each figure counts, by what the ground is there to show. Hand-set, common practice.
struct Weights {
    hand: f64,
    body: f64,
    grip: f64,
    packing: f64,
    dive: f64,
    kick: f64,
}

const fn weights(feature: Feature) -> Weights {
    let still = Weights {
        hand: 1.0,
        body: 0.5,
        grip: 0.7,
        packing: 0.0,
        dive: 0.0,
        kick: 0.0,
    };
    match feature {
        Feature::BrakingBumps => Weights {
            packing: 0.4,
            dive: 0.7,
            kick: 0.4,
            ..still
        },
        Feature::Whoops => Weights {
            hand: 0.6,
            packing: 0.8,
            kick: 0.8,
            ..still
        },
        Feature::AccelerationBumps | Feature::Rollers => Weights {
            packing: 0.5,
            kick: 0.3,
            ..still
        },
        Feature::TakeOff => Weights {
            hand: 0.4,
            grip: 0.3,
            kick: 1.0,
            ..still
        },
        Feature::JumpToSlope | Feature::JumpToFlat | Feature::GOut => {
            Weights { body: 1.0, ..still }
        }
        _ => still,
    }
}

/// A travel that stands for all: 30 % of it packed down is too much on any bike.
const TRAVEL_M: f64 = 0.3;
/// Mean travel, over sag, that the last third of a row may hold before it counts as packing down, m (hand-set).
const MOST_PACKED_M: f64 = 0.3 * TRAVEL_M;
/// A trial that breaks a limit costs this much more than its figures say, times how far it breaks it.
const BROKEN: f64 = 20.0;

impl<'a> Limits<'a> {
    /// Measures the start.
    pub fn of(bench: &'a Bench, grounds: &'a [Ground], start: &'a [Outcome]) -> Self {
        let start_margin_pa = margin_pa(bench, &bench.advised());
        Self {
            bench,
            grounds,
            start,
            start_margin_pa,
        }
    }
}

/// Cost of a trial: 1 for the start, less is better, weighted over the mix; limits broken weigh heavily.
pub fn cost(limits: &Limits, trial: &Trial, outcomes: &[Outcome]) -> f64 {
    let figures = limits.grounds.iter().zip(outcomes.iter().zip(limits.start));
    let mut cost = 0.0;
    for (ground, (here, start)) in figures {
        cost += ground.weight * relative(ground.feature, &here.metrics, &start.metrics);
        cost += BROKEN * ground.weight * broken(&here.metrics, &start.metrics);
        cost += BROKEN * ground.weight * (here.falls - start.falls).max(0.0);
    }
    // Bar of margin missing, where the start itself had it.
    let wanted = limits.start_margin_pa.min(WANTED_MARGIN.value);
    let missing = (wanted - margin_pa(limits.bench, trial)).max(0.0);
    cost + BROKEN * missing * 1e-5
}

/// Weighted mean of figures relative to the start. The small constants keep figures near nothing from deciding.
fn relative(feature: Feature, here: &Metrics<f64>, start: &Metrics<f64>) -> f64 {
    let w = weights(feature);
    let ratio = |a: f64, b: f64, floor: f64| (a.max(0.0) + floor) / (b.max(0.0) + floor);
    let both = |of: fn(&Metrics<f64>) -> f64, floor| ratio(of(here), of(start), floor);
    let terms = [
        (w.hand, both(|m| m.hand_m_s2, 0.2)),
        (w.body, both(|m| m.body_dose_m_s1_75, 0.5)),
        (w.grip, both(|m| m.load_unsteadiness.front, 0.1)),
        (w.grip, both(|m| m.load_unsteadiness.rear, 0.1)),
        (w.packing, both(|m| m.packed_m.front, 0.03)),
        (w.packing, both(|m| m.packed_m.rear, 0.03)),
        (w.dive, both(|m| m.dive_m, 0.02)),
        (w.kick, both(|m| m.kick_rad_s, 0.3)),
    ];
    let weight: f64 = terms.iter().map(|(w, _)| w).sum();
    terms.iter().map(|(w, ratio)| w * ratio).sum::<f64>() / weight
}

/// How far the limits are broken, 0 when none is: travel beyond its end, and packing down.
///
/// What the start breaks already may stay as it is, but not get worse.
fn broken(here: &Metrics<f64>, start: &Metrics<f64>) -> f64 {
    let beyond = |here: f64, start: f64, most: f64| (here - most.max(start)).max(0.0);
    let deepest = (here.travel_deepest, start.travel_deepest);
    let packed = (here.packed_m, start.packed_m);
    beyond(deepest.0.front, deepest.1.front, 1.0)
        + beyond(deepest.0.rear, deepest.1.rear, 1.0)
        + beyond(packed.0.front, packed.1.front, MOST_PACKED_M) / TRAVEL_M
        + beyond(packed.0.rear, packed.1.rear, MOST_PACKED_M) / TRAVEL_M
}

/// The bench's margin; that of a damper no one could build is the worst there is.
fn margin_pa(bench: &Bench, trial: &Trial) -> f64 {
    bench.margin_pa(trial).unwrap_or(f64::NEG_INFINITY)
}
