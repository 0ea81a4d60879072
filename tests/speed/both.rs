//! How fast rides are on both targets: the same rides, timed by the same clock, natively and in the browser.
//!
//! `cargo test --release -p sagwright-core --test speed-both -- --nocapture`, and the same with
//! `--target wasm32-unknown-unknown`. The ratio of the two is what `docs/ride.md` records. Asserted is only what must
//! hold on any machine: that riding four set-ups in step is worth it.

#[allow(dead_code, reason = "the tests of rides use the rest")]
#[path = "../rides/bikes.rs"]
mod bikes;

use bikes::Ridden;
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::lane::Lane;
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::{Course, Feature};
use sagwright_core::ride::run::{Ride, STEP_S};
#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::{wasm_bindgen_test as test, wasm_bindgen_test_configure};
use web_time::Instant;
use wide::f64x4;

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test_configure!(run_in_browser);

/// Batches timed; the quickest counts, since a busy machine only ever slows one down.
const BATCHES: u32 = 7;

/// Set-ups ridden per second over 4.4 s of braking bumps.
fn rides_per_s<T: Lane>(ridden: &Ridden, course: &Course) -> f64 {
    let bike = Bike::<T>::of(&[ridden.candidate()]).expect("a usual bike");
    let quickest_s = (0..BATCHES)
        .map(|_| {
            let start = Instant::now();
            let mut ride = Ride::start(&bike, course, STEP_S);
            while !ride.over() {
                ride.step();
            }
            assert!(ride.rides().lane(0) > 0.5, "the bike fell");
            start.elapsed().as_secs_f64()
        })
        .fold(f64::MAX, f64::min);
    #[expect(clippy::cast_precision_loss, reason = "at most eight")]
    let lanes = T::LANES as f64;
    lanes / quickest_s
}

#[test]
fn four_in_step_are_faster_than_one_at_a_time() {
    let ridden = Ridden::usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let course = ridden.course(Feature::BrakingBumps, Pace::Club, 5);
    let one = rides_per_s::<f64>(&ridden, &course);
    let four = rides_per_s::<f64x4>(&ridden, &course);
    let said = format!("rides/s: {one:.0} one at a time, {four:.0} four in step");
    #[cfg(target_arch = "wasm32")]
    wasm_bindgen_test::console_log!("{said}");
    #[cfg(not(target_arch = "wasm32"))]
    println!("{said}");
    // Without optimisation lanes cost more than they give, and there is nothing to compare.
    if cfg!(not(debug_assertions)) {
        assert!(four > 1.3 * one, "{said}");
    }
}
