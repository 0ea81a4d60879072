//! A change in the workshop, and what a rider notices of it on the bikes of several classes.

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
pub const FULL_TRAVEL: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::SmallWheelYouth,
];
/// For grown riders.
pub const GROWN: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::Trail,
];
/// All of these.
pub const ALL: &[BikeClass] = &[
    BikeClass::Motocross450,
    BikeClass::EnduroLinkage,
    BikeClass::SmallWheelYouth,
    BikeClass::Trail,
];
/// Pieces of each kind of ground.
const PIECES: u32 = 4;

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
        let mut course = before.course(ground, Pace::Club, u64::from(seed));
        if hard(ground) {
            course.size = share * usual_size(&before.candidate(), &course).expect("a sound bike");
        }
        let mut feel = Feel::new(&course.clock(STEP_S), &bikes.resting());
        ride(&bikes, &course, STEP_S, |sample| feel.step(sample));
        let metrics = feel.metrics();
        for (lane, sum) in sums.iter_mut().enumerate() {
            *sum += figure(&metrics.lane(lane)) / f64::from(PIECES);
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
pub enum Least {
    /// Make it so many times as large.
    Times(f64),
    /// Add so much.
    More(f64),
}

/// A change, as it would be made in the workshop.
pub type Change = fn(&mut Ridden);

/// Fails unless a change does what it must to a figure on every class.
pub fn must(
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

pub const COIL: ForkKind = ForkKind::CoilBothLegs;

pub fn nothing(_: &mut Ridden) {}

pub fn slower_rebound(bike: &mut Ridden) {
    for damper in [&mut bike.fork, &mut bike.shock] {
        damper.rebound.clicks /= 3.0;
        damper.rebound.shims.stack_n_per_m *= 2.0;
    }
}

pub fn faster_rebound(bike: &mut Ridden) {
    for damper in [&mut bike.fork, &mut bike.shock] {
        damper.rebound.clicks *= 3.0;
        damper.rebound.shims.stack_n_per_m *= 0.5;
    }
}

pub fn softer_springs(bike: &mut Ridden) {
    if let ForkSpring::Coil { rate, .. } = &mut bike.bike.set_up.fork.spring {
        *rate *= 0.85;
    }
}

pub fn less_low_speed_compression(bike: &mut Ridden) {
    bike.fork.base.clicks *= 3.0;
}

pub fn more_high_speed_compression(bike: &mut Ridden) {
    bike.fork.base.shims.stack_n_per_m *= 2.0;
    bike.fork.mid.shims.stack_n_per_m *= 2.0;
}

pub fn binding(bike: &mut Ridden) {
    bike.bike.set_up.fork.wear.binding = newton(80.0);
}

pub fn less_oil(bike: &mut Ridden) {
    bike.bike.set_up.fork.air_gap += mm(30.0);
}

pub fn gas_leg(bike: &mut Ridden) {
    *bike = Ridden::usual(bike.bike.machine.class.kind, ForkKind::GasOneLeg);
}

pub fn gas_leg_without_negative(bike: &mut Ridden) {
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
pub fn light_front(bike: &mut Ridden) {
    if let ForkSpring::Gas { charge } = &mut bike.bike.set_up.fork.spring {
        *charge += bar(3.0);
    }
    bike.bike.load.rider_front_share -= 0.1;
}
