//! How fast rides are: one set-up at a time, several in step, and the same equations through a solver off the shelf; and how
//! fast the ranges of a card are.
//!
//! `cargo bench -p sagwright-core`. Counted are seconds ridden per second for each set-up.

#[allow(dead_code, reason = "the tests of rides use the rest")]
#[path = "../rides/bikes.rs"]
mod bikes;
#[path = "../rides/stranger.rs"]
mod stranger;

use bikes::{Ridden, law};
use divan::{Bencher, counter::ItemsCount};
use sagwright_core::advice::ranges::Ranges;
use sagwright_core::advice::{Options, advise_with, ride_out};
use sagwright_core::intake::{BikeClass, ForkKind, Pace, read};
use sagwright_core::lane::Lane;
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::{Course, Feature};
use sagwright_core::ride::run::{Ride, STEP_S};
use sagwright_core::stance::{Situation, baseline};
use wide::{f32x4, f32x8, f64x2, f64x4, f64x8};

fn main() {
    divan::main();
}

fn ridden() -> Ridden {
    Ridden::usual(BikeClass::Motocross250, ForkKind::CoilBothLegs)
}

fn course(ridden: &Ridden) -> Course {
    ridden.course(Feature::BrakingBumps, Pace::Club, 5)
}

fn bike<T: Lane>(ridden: &Ridden) -> Bike<T> {
    let mut candidate = ridden.candidate();
    candidate.fork_damper = law(&ridden.fork.without_float());
    Bike::of(&[candidate]).expect("a usual bike")
}

/// Rides of 4.4 s over braking bumps per second, one for each lane.
#[divan::bench(types = [f64, f64x2, f64x4, f64x8, f32x4, f32x8], min_time = 1.0)]
fn braking_bumps<T: Lane>(bencher: Bencher) {
    let ridden = ridden();
    let (course, bike) = (course(&ridden), bike::<T>(&ridden));
    bencher.counter(ItemsCount::new(T::LANES)).bench_local(|| {
        let mut ride = Ride::start(&bike, &course, STEP_S);
        while !ride.over() {
            ride.step();
        }
        ride.state
    });
}

/// Putting a bike together for a ride, springs tabulated.
#[divan::bench(min_time = 0.2)]
fn putting_together(bencher: Bencher) {
    let ridden = ridden();
    bencher
        .counter(ItemsCount::new(1_usize))
        .bench_local(|| bike::<f64>(&ridden));
}

/// The range of every number of a card, for a rider who told most and for one who told nothing.
#[divan::bench(args = ["most", "nothing"], min_time = 1.0)]
fn ranges(bencher: Bencher, told: &str) {
    let intake = if told == "most" {
        include_str!("../../demo-data/gas-fork-right-but-harsh.json")
    } else {
        r#"{"version":1}"#
    };
    let situation = Situation::of(&read(intake).expect("well-formed"));
    let advised = baseline(&situation);
    bencher.bench_local(|| Ranges::of(&situation, &advised));
}

/// The advice from rides ridden before, as after each answer to a check; `close` is a call that hangs on single numbers.
#[divan::bench(args = ["clear", "close"], min_time = 1.0)]
fn advising(bencher: Bencher, call: &str) {
    let intake = read(match call {
        "clear" => include_str!("../../demo-data/gas-fork-over-pressured.json"),
        _ => include_str!("../../demo-data/gas-fork-right-but-harsh.json"),
    })
    .expect("well-formed");
    let ridden = ride_out(&intake, &mut |_| true).expect("complete");
    let options = Options::default();
    bencher.bench_local(|| advise_with(&intake, &options, ridden.as_ref()));
}

/// The same ride through `ode_solvers`' DOP853 without friction; `docs/ride.md` says what errors its tolerances leave.
#[divan::bench(args = [1e-5, 1e-6, 1e-7], min_time = 1.0)]
fn off_the_shelf(bencher: Bencher, tolerance: f64) {
    let ridden = ridden();
    let course = course(&ridden);
    let mut bike = bike::<f64>(&ridden);
    bike.parts.friction_n_per_m = [0.0; 2];
    bencher
        .counter(ItemsCount::new(1_usize))
        .bench_local(|| stranger::solve(&bike, &course, false, tolerance).1.len());
}
