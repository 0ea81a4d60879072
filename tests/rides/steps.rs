//! What the length of a step costs: the study behind the usual one. `docs/ride.md` keeps its table.

use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::{Ride, STEP_S};

use crate::bikes::Ridden;

/// Root mean square of bar acceleration in m/s², root mean square of fork stroke in m, and highest stop force in N.
fn figures(bike: &Bike<f64>, course: &sagwright_core::ride::Course, step_s: f64) -> [f64; 3] {
    let mut ride = Ride::start(bike, course, step_s);
    let (mut bar, mut stroke, mut stop, mut count) = (0.0, 0.0, 0.0_f64, 0.0);
    while !ride.over() {
        ride.step();
        let sample = ride.sample();
        bar += sample.hand_up_m_s2 * sample.hand_up_m_s2;
        stroke += sample.fork_stroke_m * sample.fork_stroke_m;
        stop = stop.max(sample.fork_stop_n + sample.rear_stop_n);
        count += 1.0;
    }
    [(bar / count).sqrt(), (stroke / count).sqrt(), stop]
}

/// Friction, float and all, against steps of 1/32 ms: at the usual step root mean squares are within 0.05 %, and the highest stop
/// force of a landing that bottoms within 0.5 %.
#[test]
fn the_usual_step_is_short_enough() {
    let ridden = Ridden::usual(BikeClass::Motocross450, ForkKind::GasOneLeg);
    let bike = Bike::<f64>::of(&[ridden.candidate()]).expect("a usual bike");
    for (feature, size) in [
        (Feature::SmallRipple, 1.0),
        (Feature::Chatter, 1.0),
        (Feature::BrakingBumps, 1.0),
        (Feature::Whoops, 0.55),
        (Feature::JumpToFlat, 1.7),
    ] {
        let mut course = ridden.course(feature, Pace::Club, 2);
        course.size = size;
        let exact = figures(&bike, &course, STEP_S / 16.0);
        for share in [4.0, 2.0, 1.0, 0.5, 0.25] {
            let got = figures(&bike, &course, share * STEP_S);
            let off = |i: usize| (got[i] - exact[i]) / exact[i].max(1e-9);
            println!(
                "{feature:?} {:.3} ms: bar {:+.1e}, stroke {:+.1e}, stop {:+.1e} of {:.0} N",
                share * STEP_S * 1e3,
                off(0),
                off(1),
                off(2),
                exact[2]
            );
            if share <= 1.0 {
                assert!(
                    off(0).abs() < 5e-4 && off(1).abs() < 5e-4,
                    "{feature:?}: {got:?} {exact:?}"
                );
                assert!(
                    exact[2] < 1.0 || off(2).abs() < 5e-3,
                    "{feature:?}: {got:?} {exact:?}"
                );
            }
        }
    }
}
