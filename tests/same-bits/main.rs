//! The same numbers to the last bit, natively and in the browser.
//!
//! Every transcendental function the physics uses is evaluated at many points and the bits of all results
//! are folded into one digest. The digests below were printed by this test on x86-64 and are what the browser
//! must find too. A digest that changes natively means that the `libm` package changed its results: the advice
//! may then change in the last digit, which is a decision, not an accident.

#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::{wasm_bindgen_test as test, wasm_bindgen_test_configure};

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test_configure!(run_in_browser);

#[allow(dead_code, reason = "the tests of rides use the rest")]
#[path = "../rides/bikes.rs"]
mod bikes;
mod lanes;

use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::lane::Lane;
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::{Ride, STEP_S};
use wide::{f32x4, f32x8, f64x4, f64x8};

/// Points at which each function is evaluated.
const POINTS: u32 = 20_000;

/// Folds the bits of `f` at evenly spread points from `low` to `high` (FNV-1a over whole words).
fn digest(low: f64, high: f64, f: impl Fn(f64) -> f64) -> u64 {
    (0..POINTS).fold(0xcbf2_9ce4_8422_2325, |digest, i| {
        let x = low + (high - low) * f64::from(i) / f64::from(POINTS);
        (digest ^ f(x).to_bits()).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[track_caller]
fn check(name: &str, found: u64, expected: u64) {
    assert_eq!(found, expected, "{name}: found {found:#018x}");
}

#[test]
fn powers_have_the_same_bits_everywhere() {
    // Polytropic compression: ratios to 20, exponents of air and of a slow stroke.
    let adiabatic = digest(0.01, 20.0, |x| libm::pow(x, 1.4));
    check("pow(x, 1.4)", adiabatic, 0x4013_8e53_20c3_af76);
    let slow = digest(0.01, 20.0, |x| libm::pow(x, 1.05));
    check("pow(x, 1.05)", slow, 0x49a8_889f_85b4_bd5b);
}

#[test]
fn exponentials_and_logarithms_have_the_same_bits_everywhere() {
    check("exp", digest(-40.0, 40.0, libm::exp), 0xff69_0f0e_516c_1566);
    check("log", digest(1e-9, 100.0, libm::log), 0x5bcc_ba4b_0244_4abd);
    check(
        "log1p",
        digest(-0.9, 10.0, libm::log1p),
        0x1a6a_bc79_caae_f661,
    );
    check(
        "log2",
        digest(1e-9, 100.0, libm::log2),
        0x3b34_7271_0605_e61c,
    );
}

#[test]
fn angles_have_the_same_bits_everywhere() {
    check(
        "sin",
        digest(-100.0, 100.0, libm::sin),
        0x8109_6b48_6253_71a4,
    );
    check(
        "cos",
        digest(-100.0, 100.0, libm::cos),
        0x3a02_8365_748c_2370,
    );
}

/// Where a gas-fork bike is after a ride over whoops, folded from every lane.
fn ridden<T: Lane>() -> u64 {
    let ridden = bikes::Ridden::usual(BikeClass::Motocross450, ForkKind::GasOneLeg);
    let bike = Bike::<T>::of(&[ridden.candidate()]).expect("a usual bike");
    let course = ridden.course(Feature::Whoops, Pace::Club, 4);
    let mut ride = Ride::start(&bike, &course, STEP_S);
    while !ride.over() {
        ride.step();
    }
    let bits = |figure: T, lane: usize| figure.lane(lane).to_bits();
    let mut digests = (0..T::LANES).map(|lane| {
        ride.state.place.iter().chain(&ride.state.rate).fold(
            0xcbf2_9ce4_8422_2325,
            |digest: u64, figure| {
                (digest ^ bits(*figure, lane)).wrapping_mul(0x0000_0100_0000_01b3)
            },
        )
    });
    let first = digests.next().expect("a lane");
    assert!(digests.all(|digest| digest == first), "the lanes differ");
    first
}

#[test]
fn rides_have_the_same_bits_everywhere() {
    check("one", ridden::<f64>(), 0x9a97_9274_d71c_ef13);
    check("four in step", ridden::<f64x4>(), 0x9a97_9274_d71c_ef13);
    check("eight in step", ridden::<f64x8>(), 0x9a97_9274_d71c_ef13);
    check("one of 32 bits", ridden::<f32>(), 0x84b2_11d9_40f6_ef8d);
    check("four of 32 bits", ridden::<f32x4>(), 0x84b2_11d9_40f6_ef8d);
    check("eight of 32 bits", ridden::<f32x8>(), 0x84b2_11d9_40f6_ef8d);
}
