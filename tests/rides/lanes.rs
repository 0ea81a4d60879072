//! Many set-ups in step.

use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::lane::Lane;
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::{Ride, STEP_S};
use sagwright_core::ride::{Candidate, RideError};
use wide::{f32x4, f32x8, f64x2, f64x4, f64x8};

use crate::bikes::Ridden;

/// Whoops, with a different fork in every lane, end with the same bits as when each is ridden alone.
fn as_alone<T: Lane, P: Lane>(candidates: &[Candidate], ridden: &Ridden) {
    let course = ridden.course(Feature::Whoops, Pace::Club, 3);
    let together = Bike::<T>::of(candidates).expect("usual bikes");
    let mut many = Ride::start(&together, &course, STEP_S);
    while !many.over() {
        many.step();
    }
    for (lane, candidate) in candidates.iter().enumerate().take(T::LANES) {
        let bike = Bike::<P>::of(&[*candidate]).expect("a usual bike");
        let mut one = Ride::start(&bike, &course, STEP_S);
        while !one.over() {
            one.step();
        }
        for (freedom, (row, alone)) in many.state.place.iter().zip(one.state.place).enumerate() {
            let (row, alone) = (row.lane(lane), alone.lane(0));
            assert_eq!(
                row.to_bits(),
                alone.to_bits(),
                "lane {lane}, {freedom}: {row} {alone}"
            );
        }
    }
}

#[test]
fn ride_to_the_bit_as_alone() {
    let ridden = Ridden::usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let gas = Ridden::usual(BikeClass::Motocross250, ForkKind::GasOneLeg);
    let candidates: Vec<Candidate> = (0..8_u8)
        .map(|i| {
            let mut candidate = if i % 3 == 2 {
                gas.candidate()
            } else {
                ridden.candidate()
            };
            candidate.fork_damper.dampers *= 0.6 + 0.15 * f64::from(i);
            candidate.shock_damper.dampers *= 1.3 - 0.08 * f64::from(i);
            candidate
        })
        .collect();
    as_alone::<f64x2, f64>(&candidates, &ridden);
    as_alone::<f64x4, f64>(&candidates, &ridden);
    as_alone::<f64x8, f64>(&candidates, &ridden);
    as_alone::<f32x4, f32>(&candidates, &ridden);
    as_alone::<f32x8, f32>(&candidates, &ridden);
}

#[test]
fn bikes_of_different_length_cannot_ride_in_step() {
    let long = Ridden::usual(BikeClass::Adventure, ForkKind::CoilBothLegs);
    let short = Ridden::usual(BikeClass::SmallWheelYouth, ForkKind::CoilBothLegs);
    let refused = Bike::<f64x2>::of(&[long.candidate(), short.candidate()]);
    assert!(matches!(refused, Err(RideError::WheelbasesDiffer { .. })));
    assert_eq!(Bike::<f64>::of(&[]).err(), Some(RideError::Nothing));
}
