//! Whole rides against an independent solver of differential equations with a tight tolerance.

use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::{Ride, STEP_S};

use crate::bikes::{Ridden, law};
use crate::stranger::{Motion, solve};

/// Relative tolerance of the solver. Where friction slips it can step across and be 0.03 mm off at 1e-9, which the last bit of
/// anything decides; from 3e-10 on it agrees with itself.
const TOLERANCE: f64 = 3e-10;

/// Largest differences of fork stroke and rear travel over a ride, m.
fn differences(feature: Feature, friction: bool, tolerance: f64, step_s: f64) -> [f64; 2] {
    let ridden = Ridden::usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let mut candidate = ridden.candidate();
    // Without float, whose plate has a history of its own.
    candidate.fork_damper = law(&ridden.fork.without_float());
    let mut bike = Bike::<f64>::of(&[candidate]).expect("a usual bike");
    if friction {
        // Of the fork, at a limit that does not move: a limit that does makes a strict solver creep along it.
        bike.parts.side_friction = 0.0;
        bike.parts.friction_n_per_m[1] = 0.0;
    } else {
        bike.parts.friction_n_per_m = [0.0; 2];
    }
    let course = ridden.course(feature, Pace::Club, 5);
    let mut ride = Ride::start(&bike, &course, step_s);
    let (times_s, states) = solve(&bike, &course, friction, tolerance);
    let mut worst = [0.0_f64; 2];
    for (time_s, y) in times_s.iter().zip(&states) {
        while ride.time_s() < time_s - 0.5 * step_s {
            ride.step();
        }
        let exact = bike.travels_m(Motion::state(y).place);
        for end in 0..2 {
            worst[end] = worst[end].max((ride.now.travel_m[end] - exact[end]).abs());
        }
    }
    worst
}

/// At the usual step within 0.05 mm of `ode_solvers`' DOP853 at every hundredth of a second, and at a
/// quarter of it within 0.02 mm: what is left is the step's error, and it goes.
fn matches(feature: Feature, friction: bool) {
    for (step_s, most_m) in [(STEP_S, 5e-5), (0.25 * STEP_S, 1e-5)] {
        let [fork, rear] = differences(feature, friction, TOLERANCE, step_s);
        println!(
            "{feature:?}, friction {friction}, step {step_s} s: fork {fork:.1e} m, rear {rear:.1e} m"
        );
        assert!(
            fork < most_m && rear < most_m,
            "{feature:?}: {fork:e} {rear:e}"
        );
    }
}

#[test]
fn braking_bumps_match_a_strict_solver() {
    matches(Feature::BrakingBumps, false);
}

#[test]
fn braking_bumps_with_friction_match_a_strict_solver() {
    matches(Feature::BrakingBumps, true);
}

#[test]
fn a_landing_matches_a_strict_solver() {
    matches(Feature::JumpToFlat, false);
}

#[test]
fn a_landing_with_friction_matches_a_strict_solver() {
    matches(Feature::JumpToFlat, true);
}
