//! Friction that sticks.

use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::{Ride, STEP_S};

use crate::bikes::Ridden;
use crate::plain::level;

const BIKES: [(BikeClass, ForkKind); 4] = [
    (BikeClass::SmallWheelYouth, ForkKind::CoilBothLegs),
    (BikeClass::Motocross450, ForkKind::GasOneLeg),
    (BikeClass::EnduroLinkless, ForkKind::CoilOneLeg),
    (BikeClass::Adventure, ForkKind::CoilBothLegs),
];

/// At rest the stance and the ride agree: nothing moves by more than a thousandth of a millimetre in five seconds.
#[test]
fn a_bike_at_rest_stays_at_rest() {
    for (class, fork) in BIKES {
        let ridden = Ridden::usual(class, fork);
        let bike = Bike::<f64>::of(&[ridden.candidate()]).expect("a usual bike");
        let course = level(bike.wheelbase_m, 5.0);
        let mut ride = Ride::start(&bike, &course, STEP_S);
        let start = ride.state.place;
        while !ride.over() {
            ride.step();
        }
        for (now, then) in ride.state.place.iter().zip(start) {
            assert!(
                (now - then).abs() < 1e-6,
                "{class:?} {fork:?}: {now} {then}"
            );
        }
    }
}

/// After a step in the ground the bike hangs in its friction, away from where it would be without, and then neither end moves
/// by more than 1e-6 m in the last of five seconds: it does not creep.
#[test]
fn a_bike_hung_up_in_its_friction_does_not_creep() {
    let mut hung = 0;
    for (class, fork) in BIKES {
        let ridden = Ridden::usual(class, fork);
        let bike = Bike::<f64>::of(&[ridden.candidate()]).expect("a usual bike");
        let mut course = ridden.course(Feature::Heave, Pace::Club, 1);
        course.lasts_s = 8.0;
        let mut ride = Ride::start(&bike, &course, STEP_S);
        let mut before = ride.now.travel_m;
        while !ride.over() {
            if ride.time_s() < 7.0 {
                before = ride.now.travel_m;
            }
            ride.step();
        }
        for (end, then) in before.into_iter().enumerate() {
            let now = ride.now.travel_m[end];
            assert!(
                (now - then).abs() < 1e-6,
                "{class:?} end {end}: {now} {then}"
            );
            if (now - bike.parts.rest_m[end]).abs() > 5e-4 {
                hung += 1;
            }
        }
    }
    assert!(hung >= 2, "only {hung} of eight ends hung up at all");
}
