//! How fast rides are on both targets: the same rides, timed by the same clock, natively and in the browser.
//!
//! `cargo test --release -p sagwright-core --test speed-both -- --nocapture`, and the same with
//! `--target wasm32-unknown-unknown`. What it prints is what `docs/ride.md` records. Asserted is what must hold on any
//! machine: that lanes are worth it.

#[allow(dead_code, reason = "the tests of rides use the rest")]
#[path = "../rides/bikes.rs"]
mod bikes;

use bikes::Ridden;
use sagwright_core::advice::{Advice, Options, advise};
use sagwright_core::intake::{BikeClass, ForkKind, Pace, read};
use sagwright_core::lane::Lane;
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::{Course, Feature};
use sagwright_core::ride::run::{Ride, STEP_S};
#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::{wasm_bindgen_test as test, wasm_bindgen_test_configure};
use web_time::Instant;
use wide::{f32x4, f32x8, f64x2, f64x4};

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test_configure!(run_in_browser);

/// How often everything is timed. The median counts: a machine that is busy with something else for a while, or a
/// browser that has not yet compiled what it runs, is out of it.
const ROUNDS: usize = 15;
/// Rides in lanes of 32 bits are at least so many times as fast as one plain ride at a time.
const LEAST_GAIN: f64 = 3.0;

fn say(text: &str) {
    #[cfg(target_arch = "wasm32")]
    wasm_bindgen_test::console_log!("{text}");
    #[cfg(not(target_arch = "wasm32"))]
    println!("{text}");
}

fn median(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

/// Set-ups ridden per second over 4.4 s of braking bumps.
fn rides_per_s<T: Lane>(ridden: &Ridden, course: &Course) -> f64 {
    let bike = Bike::<T>::of(&[ridden.candidate()]).expect("a usual bike");
    let start = Instant::now();
    let mut ride = Ride::start(&bike, course, STEP_S);
    while !ride.over() {
        ride.step();
    }
    assert!(ride.rides().lane(0) > 0.5, "the bike fell");
    let took_s = start.elapsed().as_secs_f64();
    #[expect(clippy::cast_precision_loss, reason = "at most eight")]
    let lanes = T::LANES as f64;
    lanes / took_s
}

#[test]
fn lanes_are_faster_than_one_at_a_time() {
    let ridden = Ridden::usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let course = ridden.course(Feature::BrakingBumps, Pace::Club, 5);
    let names = ["f64", "f64x2", "f64x4", "f32x4", "f32x8"];
    // Each round times all kinds one after the other, so that their ratio is taken within a few hundredths of a second.
    let rounds: Vec<[f64; 5]> = (0..ROUNDS)
        .map(|_| {
            [
                rides_per_s::<f64>(&ridden, &course),
                rides_per_s::<f64x2>(&ridden, &course),
                rides_per_s::<f64x4>(&ridden, &course),
                rides_per_s::<f32x4>(&ridden, &course),
                rides_per_s::<f32x8>(&ridden, &course),
            ]
        })
        .collect();
    let gain = |kind: usize| median(rounds.iter().map(|round| round[kind] / round[0]).collect());
    for (kind, name) in names.iter().enumerate() {
        let rides = median(rounds.iter().map(|round| round[kind]).collect());
        say(&format!(
            "{name}: {rides:.0} rides/s, {:.2} times one",
            gain(kind)
        ));
    }
    // Without optimisation lanes cost more than they give, and there is nothing to compare.
    if cfg!(not(debug_assertions)) {
        assert!(gain(4) > LEAST_GAIN, "{:.2} times one", gain(4));
    }
}

/// From answers to the whole advice with its rides.
#[test]
fn advice_comes_soon() {
    let intake = read(include_str!(
        "../../demo-data/gas-fork-right-but-harsh.json"
    ))
    .expect("a demo intake");
    let rounds = if cfg!(debug_assertions) { 1 } else { 5 };
    let took_s = (0..rounds)
        .map(|_| {
            let start = Instant::now();
            let advice = advise(&intake, &Options::default()).expect("a checked intake");
            assert!(
                matches!(&advice, Advice::SetUp(advice) if advice.rides.is_some()),
                "nothing was ridden"
            );
            start.elapsed().as_secs_f64()
        })
        .collect();
    say(&format!("advice: {:.0} ms", 1e3 * median(took_s)));
}
