//! Energy is kept when nothing takes it, and only falls when something does.

use sagwright_core::intake::{BikeClass, ForkKind};
use sagwright_core::ride::model::State;
use sagwright_core::ride::run::{Ride, STEP_S};
use sagwright_core::ride::{Bike, Rider};
use sagwright_core::units::STANDARD_GRAVITY;

use crate::bikes::{Ridden, no_damper};
use crate::plain::level;

/// All energy of a ride on level ground, J: of motion, weight, springs, tyres, legs, arms, the rider's hold, and bent friction.
fn energy_j(bike: &Bike<f64>, ride: &Ride<f64>) -> f64 {
    let p = &bike.parts;
    let State { place, rate } = ride.state;
    let masses = [
        p.sprung_kg,
        p.pitch_kg_m2,
        p.front_kg,
        p.rear_kg,
        p.rider_kg,
    ];
    let weights = [p.sprung_kg, 0.0, p.front_kg, p.rear_kg, p.rider_kg];
    let mut sum = 0.0;
    for i in 0..5 {
        sum += 0.5 * masses[i] * rate[i] * rate[i] + STANDARD_GRAVITY * weights[i] * place[i];
    }
    let [stroke, travel] = ride.now.travel_m;
    sum += stored_j(|s| bike.fork_n(s), stroke) + stored_j(|z| bike.rear_n(z), travel);
    for end in 0..2 {
        let squeezed = (-place[2 + end]).max(0.0);
        sum += 0.5 * p.tyre_n_per_m[end] * squeezed * squeezed;
        let bent = ride.now.bent_m[end];
        sum += 0.5 * p.friction_n_per_m[end] * bent * bent;
    }
    let squat = place[0] + p.body_ahead_m * place[1] - place[4];
    sum += stored_j(|x| (p.leg[0] * x).max(-p.leg[2]), squat);
    let at_rest = p.rider_kg * STANDARD_GRAVITY / p.leg[0];
    let turned = place[1] - p.rest_pitch_rad;
    let reach = squat - at_rest + (p.grips_ahead_m - p.body_ahead_m) * turned;
    sum += 0.5 * p.arm[0] * reach * reach;
    sum + stored_j(|t| (p.hold[0] * t).clamp(-p.hold[2], p.hold[2]), turned)
}

/// Work against a force from zero to a place, by Simpson's rule.
fn stored_j(force: impl Fn(f64) -> f64, to: f64) -> f64 {
    let pieces = 2000;
    let step = to / f64::from(pieces);
    let inner: f64 = (0..pieces)
        .map(|i| {
            let at = f64::from(i) * step;
            force(at) + 4.0 * force(at + 0.5 * step) + force(at + step)
        })
        .sum();
    inner * step / 6.0
}

/// A bike let go from 25 mm too low and 0.05 rad nose down, tyres on the ground throughout.
fn pushed_down(bike: &Bike<f64>) -> State<f64> {
    let mut state = bike.at_rest();
    state.place[0] -= 0.025;
    state.place[4] -= 0.025;
    state.place[1] -= 0.05;
    state
}

/// Over ten seconds it changes by less than 0.1 % of what swings. Weight and static springs, which are far more, do not count.
#[test]
fn is_kept_without_losses() {
    for (class, fork) in [
        (BikeClass::SmallWheelYouth, ForkKind::CoilBothLegs),
        (BikeClass::Motocross450, ForkKind::GasOneLeg),
        (BikeClass::EnduroLinkless, ForkKind::CoilBothLegs),
        (BikeClass::Adventure, ForkKind::CoilBothLegs),
    ] {
        let mut ridden = Ridden::usual(class, fork);
        ridden.rider = Rider::dead_weight(ridden.bike.load.posture);
        let mut candidate = ridden.candidate();
        candidate.fork_damper = no_damper(&ridden.fork);
        candidate.shock_damper = no_damper(&ridden.shock);
        let mut bike = Bike::<f64>::of(&[candidate]).expect("a usual bike");
        bike.parts.friction_n_per_m = [0.0; 2];
        bike.parts.tyre_n_s_per_m = [0.0; 2];
        let course = level(bike.wheelbase_m, 10.0);
        let at_rest = energy_j(&bike, &Ride::start(&bike, &course, STEP_S));
        let mut ride = Ride::placed(&bike, &course, STEP_S, 1.0, pushed_down(&bike));
        let swings = energy_j(&bike, &ride) - at_rest;
        assert!(swings > 5.0, "{class:?}: too little to measure, {swings} J");
        let mut worst: f64 = 0.0;
        let mut steps = 0_u32;
        while !ride.over() {
            ride.step();
            steps += 1;
            if steps.is_multiple_of(50) {
                worst = worst.max((energy_j(&bike, &ride) - at_rest - swings).abs() / swings);
            }
        }
        println!("{class:?} {fork:?}: {swings:.1} J swing, worst change {worst:.1e}");
        assert!(worst < 1e-3, "{class:?}: changed by {worst}");
    }
}

/// With dampers, friction, tyres and rider at work it never grows from one hundredth of a second to the next, to 1e-6 of
/// what was put in, and nearly all of it is gone in the end.
#[test]
fn never_grows_without_input() {
    for (class, fork) in [
        (BikeClass::Motocross125, ForkKind::CoilBothLegs),
        (BikeClass::Motocross450, ForkKind::GasOneLeg),
        (BikeClass::Trail, ForkKind::CoilOneLeg),
    ] {
        let ridden = Ridden::usual(class, fork);
        let bike = Bike::<f64>::of(&[ridden.candidate()]).expect("a usual bike");
        let course = level(bike.wheelbase_m, 4.0);
        let at_rest = energy_j(&bike, &Ride::start(&bike, &course, STEP_S));
        let mut ride = Ride::placed(&bike, &course, STEP_S, 1.0, pushed_down(&bike));
        let given = energy_j(&bike, &ride) - at_rest;
        let mut last = given;
        let mut steps = 0_u32;
        while !ride.over() {
            ride.step();
            steps += 1;
            if steps.is_multiple_of(20) {
                let now = energy_j(&bike, &ride) - at_rest;
                let growth = (now - last) / given;
                assert!(
                    growth < 1e-6,
                    "{class:?} at {} s: grew by {growth:e}",
                    ride.time_s()
                );
                last = now;
            }
        }
        assert!(
            last < 0.2 * given,
            "{class:?}: {last} of {given} J are left"
        );
    }
}
