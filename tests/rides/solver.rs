//! Whole rides against an independent solver of differential equations with a tight tolerance.

use ode_solvers::{Dop853, SVector, System};
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::{Course, Feature};
use sagwright_core::ride::model::{Held, Moment, State};
use sagwright_core::ride::run::{Ride, STEP_S};

use crate::bikes::{Ridden, law};

/// Five places, five rates, two bends of the friction elements.
type Vector = SVector<f64, 12>;

/// The equations of motion as a stranger would be given them, with friction as a differential equation of its own.
struct Motion<'a> {
    bike: &'a Bike<f64>,
    course: &'a Course,
    friction: bool,
}

impl Motion<'_> {
    fn state(y: &Vector) -> State<f64> {
        State {
            place: core::array::from_fn(|i| y[i]),
            rate: core::array::from_fn(|i| y[5 + i]),
        }
    }
}

impl System<f64, Vector> for Motion<'_> {
    fn system(&self, time_s: f64, y: &Vector, dy: &mut Vector) {
        let state = Self::state(y);
        let under = self.course.at(time_s);
        let moment = Moment {
            ground_m: under.ground_m,
            ground_m_per_s: under.ground_m_per_s,
            lie: under.lie,
            braking_m_per_s2: under.braking_m_per_s2,
            tyre_damping: self.course.tyre_damping,
        };
        let bent_m = if self.friction {
            [y[10], y[11]]
        } else {
            [0.0; 2]
        };
        let free = Held {
            travel_m: self.bike.travels_m(state.place),
            bent_m,
            limit_m: [1.0; 2],
            float_m: [0.0; 2],
        };
        let limit_m = self.bike.slip_m(&self.bike.motion(&state, &free, &moment));
        let held = Held { limit_m, ..free };
        let motion = self.bike.motion(&state, &held, &moment);
        for i in 0..5 {
            dy[i] = y[5 + i];
            dy[5 + i] = motion.acceleration[i];
        }
        for end in 0..2 {
            let rate = motion.travel_m_per_s[end];
            let slips = bent_m[end].abs() >= limit_m[end] && bent_m[end] * rate > 0.0;
            dy[10 + end] = if slips || !self.friction { 0.0 } else { rate };
        }
    }
}

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
    let every_s = 0.01;
    let mut start = Vector::zeros();
    for i in 0..5 {
        start[i] = ride.state.place[i];
        start[5 + i] = ride.state.rate[i];
    }
    let system = Motion {
        bike: &bike,
        course: &course,
        friction,
    };
    let lasts_s = 0.01 * (course.lasts_s / 0.01).floor();
    let mut solver = Dop853::from_param(
        system,
        0.0,
        lasts_s,
        every_s,
        start,
        tolerance,
        tolerance * 1e-3,
        0.9,
        0.0,
        0.333,
        6.0,
        1e-3,
        0.0,
        10_000_000,
        u32::MAX,
        ode_solvers::dop_shared::OutputType::Dense,
    );
    solver.integrate().expect("the solver gets there");
    let mut worst = [0.0_f64; 2];
    for (time_s, y) in solver.x_out().iter().zip(solver.y_out()) {
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

/// At the usual step within 0.3 mm of `ode_solvers`' DOP853 (relative tolerance 1e-9) at every hundredth of a second, and at a
/// quarter of it within 0.02 mm: what is left is the step's error, and it goes.
fn matches(feature: Feature, friction: bool) {
    for (step_s, most_m) in [(STEP_S, 3e-4), (0.25 * STEP_S, 2e-5)] {
        let [fork, rear] = differences(feature, friction, 1e-9, step_s);
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
