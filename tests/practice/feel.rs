//! What riders notice of a change, on the bikes of several classes: directions the trade agrees on.
//!
//! Ground is scaled to what the unchanged bike can take and every figure is the mean of several pieces of the same kind of
//! ground. Each check says by how much the change must show at least; what it does show is printed. Changes under 2 %
//! on random ground count as unresolved, so no check asks for less.

use sagwright_core::bike::ForkSpring;
use sagwright_core::bike::gas::Negative;
use sagwright_core::feel::{Feel, Metrics};
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::ground::fit::usual_size;
use sagwright_core::ride::run::STEP_S;
use sagwright_core::ride::{Bike, ride};
use sagwright_core::stance::{Pitch, gas_pressure_for};
use sagwright_core::units::{bar, mm, newton};

use crate::bikes::{Reference, Ridden};

/// Light and heavy.
const FULL_TRAVEL: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::SmallWheelYouth,
];
/// For grown riders.
const GROWN: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::Trail,
];
/// All of these.
const ALL: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::SmallWheelYouth,
    BikeClass::Trail,
];
/// Pieces of each kind of ground.
const PIECES: u64 = 4;

/// Two set-ups side by side.
type Row = wide::f64x2;

/// A figure of a bike before and after a change, each the mean over pieces of ground. Hard ground is `share` of what fits
/// the bike before.
fn before_and_after(
    [before, after]: [&Ridden; 2],
    (ground, share): (Feature, f64),
    figure: impl Fn(&Metrics<f64>) -> f64,
) -> [f64; 2] {
    let bikes = Bike::<Row>::of(&[before.candidate(), after.candidate()]).expect("sound bikes");
    let mut sums = [0.0; 2];
    for seed in 1..=PIECES {
        let mut course = before.course(ground, Pace::Club, seed);
        if hard(ground) {
            course.size = share * usual_size(&before.candidate(), &course).expect("a sound bike");
        }
        let mut feel = Feel::new(&course.clock(STEP_S), &bikes.resting());
        ride(&bikes, &course, STEP_S, |sample| feel.step(sample));
        let metrics = feel.metrics();
        for (lane, sum) in sums.iter_mut().enumerate() {
            *sum += figure(&metrics.lane(lane)) / PIECES as f64;
        }
    }
    sums
}

/// Whether a kind of ground is one that takes a bike to the end of its travel.
fn hard(ground: Feature) -> bool {
    matches!(
        ground,
        Feature::Whoops
            | Feature::BrakingBumps
            | Feature::TakeOff
            | Feature::JumpToFlat
            | Feature::JumpToSlope
    )
}

/// What a change must do to a figure at least.
#[derive(Clone, Copy)]
enum Least {
    /// Make it so many times as large.
    Times(f64),
    /// Add so much.
    More(f64),
}

/// A change, as it would be made in the workshop.
type Change = fn(&mut Ridden);

/// Fails unless a change does what it must to a figure on every class.
fn must(
    what: &str,
    least: Least,
    (classes, fork): (&[BikeClass], ForkKind),
    ground: (Feature, f64),
    [before, after]: [Change; 2],
    figure: impl Fn(&Metrics<f64>) -> f64,
) {
    let mut missed = Vec::new();
    for class in classes {
        let changed = |change: Change| {
            let mut bike = Ridden::usual(*class, fork);
            change(&mut bike);
            bike
        };
        let bikes = [changed(before), changed(after)];
        let [was, is] = before_and_after([&bikes[0], &bikes[1]], ground, &figure);
        println!(
            "{what}, {class:?}: {was:.4} to {is:.4}, {:.3} times",
            is / was
        );
        let enough = match least {
            Least::Times(times) => is >= times * was,
            Least::More(more) => is >= was + more,
        };
        if !enough {
            missed.push(format!("{class:?}: {was} to {is}"));
        }
    }
    assert!(missed.is_empty(), "{what}: {missed:?}");
}

const COIL: ForkKind = ForkKind::CoilBothLegs;

fn nothing(_: &mut Ridden) {}

fn slower_rebound(bike: &mut Ridden) {
    for damper in [&mut bike.fork, &mut bike.shock] {
        damper.rebound.clicks /= 3.0;
        damper.rebound.shims.stack_n_per_m *= 2.0;
    }
}

fn faster_rebound(bike: &mut Ridden) {
    for damper in [&mut bike.fork, &mut bike.shock] {
        damper.rebound.clicks *= 3.0;
        damper.rebound.shims.stack_n_per_m *= 0.5;
    }
}

fn softer_springs(bike: &mut Ridden) {
    if let ForkSpring::Coil { rate, .. } = &mut bike.bike.set_up.fork.spring {
        *rate *= 0.85;
    }
}

fn less_low_speed_compression(bike: &mut Ridden) {
    bike.fork.base.clicks *= 3.0;
}

fn more_high_speed_compression(bike: &mut Ridden) {
    bike.fork.base.shims.stack_n_per_m *= 2.0;
    bike.fork.mid.shims.stack_n_per_m *= 2.0;
}

fn binding(bike: &mut Ridden) {
    bike.bike.set_up.fork.wear.binding = newton(80.0);
}

fn less_oil(bike: &mut Ridden) {
    bike.bike.set_up.fork.air_gap += mm(30.0);
}

fn gas_leg(bike: &mut Ridden) {
    *bike = Ridden::usual(bike.bike.machine.class.kind, ForkKind::GasOneLeg);
}

fn gas_leg_without_negative(bike: &mut Ridden) {
    let mut gas = Reference::on_target(bike.bike.machine.class.kind, ForkKind::GasOneLeg);
    gas.machine.gas.negative = Negative::Absent;
    let class = gas.machine.class;
    let charge = gas_pressure_for(&gas.case(Pitch::OtherAt(class.rear_sag)), class.fork_sag);
    gas.set_up.fork.spring = ForkSpring::Gas {
        charge: charge.expect("within reach"),
    };
    *bike = Ridden::of(gas);
}

/// Three bar too much for the rider, who is further back.
fn light_front(bike: &mut Ridden) {
    if let ForkSpring::Gas { charge } = &mut bike.bike.set_up.fork.spring {
        *charge += bar(3.0);
    }
    bike.bike.load.rider_front_share -= 0.1;
}

/// Rebound clickers to a third of their clicks and shims twice as stiff: both ends ride lower at the end of the row.
#[test]
fn slower_rebound_packs_down_in_whoops() {
    let change: [Change; 2] = [nothing, slower_rebound];
    let whoops = (Feature::Whoops, 1.0);
    must(
        "fork, m",
        Least::More(0.020),
        (ALL, COIL),
        whoops,
        change,
        |m| m.packed_m.front,
    );
    must(
        "rear, m",
        Least::More(0.035),
        (ALL, COIL),
        whoops,
        change,
        |m| m.packed_m.rear,
    );
}

/// Fork springs 15 % softer.
#[test]
fn softer_springs_dive_further() {
    let change: [Change; 2] = [nothing, softer_springs];
    let times = Least::Times(1.06);
    must(
        "brakes, m",
        times,
        (ALL, COIL),
        (Feature::Braking, 1.0),
        change,
        |m| m.dive_m,
    );
    must(
        "braking bumps, m",
        times,
        (ALL, COIL),
        (Feature::BrakingBumps, 1.0),
        change,
        |m| m.dive_m,
    );
}

/// Compression clicker to three times its clicks: the fork goes down faster, and further where it has no time to come up.
#[test]
fn less_low_speed_compression_dives_faster() {
    let change: [Change; 2] = [nothing, less_low_speed_compression];
    must(
        "rate, m/s",
        Least::Times(1.08),
        (ALL, COIL),
        (Feature::Braking, 1.0),
        change,
        |m| m.dive_rate_m_s,
    );
    must(
        "braking bumps, m",
        Least::Times(1.04),
        (ALL, COIL),
        (Feature::BrakingBumps, 1.0),
        change,
        |m| m.dive_m,
    );
}

/// 80 N from a bound axle: harsher hands on small ripple, and more bumps of gravel that leave the fork unmoved.
#[test]
fn friction_is_harsh_on_small_bumps() {
    let change: [Change; 2] = [nothing, binding];
    must(
        "ripple, m/s2",
        Least::Times(1.05),
        (ALL, COIL),
        (Feature::SmallRipple, 1.0),
        change,
        |m| m.hand_m_s2,
    );
    must(
        "ripple felt",
        Least::Times(1.05),
        (ALL, COIL),
        (Feature::SmallRipple, 1.0),
        change,
        |m| m.small_bumps_felt,
    );
    must(
        "gravel ignored",
        Least::Times(1.06),
        (ALL, COIL),
        (Feature::Gravel, 1.0),
        change,
        |m| m.bumps_ignored,
    );
}

/// Compression shims twice as stiff.
#[test]
fn high_speed_compression_is_harsh() {
    let change: [Change; 2] = [nothing, more_high_speed_compression];
    must(
        "chatter, m/s2",
        Least::Times(1.02),
        (ALL, COIL),
        (Feature::Chatter, 1.0),
        change,
        |m| m.hand_m_s2,
    );
    must(
        "braking bumps, m/s2",
        Least::Times(1.03),
        (ALL, COIL),
        (Feature::BrakingBumps, 1.0),
        change,
        |m| m.hand_m_s2,
    );
    must(
        "square edge, m/s2",
        Least::Times(1.04),
        (ALL, COIL),
        (Feature::SquareEdge, 1.0),
        change,
        |m| m.hand_m_s2,
    );
}

/// Rebound clickers to three times their clicks and shims half as stiff: the nose is thrown down harder.
#[test]
fn faster_rebound_kicks() {
    let change: [Change; 2] = [nothing, faster_rebound];
    let kick = |m: &Metrics<f64>| m.kick_rad_s;
    must(
        "whoops, rad/s",
        Least::Times(1.06),
        (ALL, COIL),
        (Feature::Whoops, 1.0),
        change,
        kick,
    );
    must(
        "square edge, rad/s",
        Least::Times(1.10),
        (ALL, COIL),
        (Feature::SquareEdge, 1.0),
        change,
        kick,
    );
    must(
        "take-off, rad/s",
        Least::Times(1.03),
        (ALL, COIL),
        (Feature::TakeOff, 1.0),
        change,
        kick,
    );
}

/// The same change lets the bike swing on after a gentle rise. The youth bike, to which friction is more, still comes to
/// rest at once.
#[test]
fn faster_rebound_wallows() {
    let change: [Change; 2] = [nothing, faster_rebound];
    must(
        "heave",
        Least::More(0.1),
        (GROWN, COIL),
        (Feature::Heave, 1.0),
        change,
        |m| m.heave_overshoot,
    );
}

/// 30 mm of oil height. On a landing a fifth harder than fits, less oil bottoms harder; on one that fits, more oil is
/// harsher, if only just: a landing is the same every time, so what is under 2 % still counts.
#[test]
fn more_oil_bottoms_less_and_is_harsher_late() {
    let slope = (Feature::JumpToSlope, 1.2);
    must(
        "stop, J",
        Least::Times(1.25),
        (ALL, COIL),
        slope,
        [nothing, less_oil],
        |m| m.bottoming_j.front,
    );
    must(
        "stop, N",
        Least::Times(1.15),
        (ALL, COIL),
        slope,
        [nothing, less_oil],
        |m| m.bottoming_n.front,
    );
    let flat = (Feature::JumpToFlat, 1.0);
    must(
        "hands, m/s2",
        Least::Times(1.001),
        (ALL, COIL),
        flat,
        [less_oil, nothing],
        |m| m.hand_m_s2,
    );
}

/// A gas leg of equal sag is softer in the middle and rubs more. On the short fork of a trail bike its steep end comes
/// before the dive is done (2 % less dive than with coils), so that class is left out.
#[test]
fn a_gas_leg_dives_further_and_is_harsher_on_small_ripple() {
    let change: [Change; 2] = [nothing, gas_leg];
    must(
        "brakes, m",
        Least::Times(1.05),
        (FULL_TRAVEL, COIL),
        (Feature::Braking, 1.0),
        change,
        |m| m.dive_m,
    );
    must(
        "braking bumps, m",
        Least::Times(1.02),
        (FULL_TRAVEL, COIL),
        (Feature::BrakingBumps, 1.0),
        change,
        |m| m.dive_m,
    );
    must(
        "ripple, m/s2",
        Least::Times(1.02),
        (ALL, COIL),
        (Feature::SmallRipple, 1.0),
        change,
        |m| m.hand_m_s2,
    );
}

/// Without a negative chamber a leg of equal sag is soft about ride height, but on a light front end it sits on its
/// top-out and turns harsh at once; with one it hardly cares.
#[test]
fn a_gas_leg_without_negative_chamber_is_harsh_on_a_light_front() {
    let light: Change = |bike| {
        gas_leg_without_negative(bike);
        light_front(bike);
    };
    let ripple = (Feature::SmallRipple, 1.0);
    let hands = |m: &Metrics<f64>| m.hand_m_s2;
    must(
        "without, m/s2",
        Least::Times(1.04),
        (ALL, COIL),
        ripple,
        [gas_leg_without_negative, light],
        hands,
    );
    let light: Change = |bike| {
        gas_leg(bike);
        light_front(bike);
    };
    must(
        "with, other way round",
        Least::Times(0.97),
        (ALL, COIL),
        ripple,
        [light, gas_leg],
        hands,
    );
}
