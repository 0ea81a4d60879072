//! The whole model, made linear, against matrices written down from its geometry.

use nalgebra::{Complex, SMatrix, SVector};
use sagwright_core::intake::{BikeClass, ForkKind};
use sagwright_core::ride::Bike;
use sagwright_core::ride::model::{Held, Moment, State};
use sagwright_core::ride::run::{Ride, STEP_S};

use crate::bikes::Ridden;
use crate::plain::{level, viscous};

type Square = SMatrix<f64, 10, 10>;

/// A real bike whose springs, dampers and tyres are made straight about ride height, without friction.
fn straightened() -> (Bike<f64>, [f64; 2], [f64; 2]) {
    let ridden = Ridden::usual(BikeClass::EnduroLinkage, ForkKind::CoilBothLegs);
    let bike = Bike::<f64>::of(&[ridden.candidate()]).expect("a usual bike");
    let mut parts = bike.parts;
    parts.friction_n_per_m = [0.0; 2];
    parts.tyre_n_s_per_m = [0.0; 2];
    parts.ratio = [1.0, 0.0, 0.0];
    // A rider who neither lets go nor tires.
    parts.leg[2] = 1e9;
    parts.hold[2] = 1e9;
    let rate = |force: &dyn Fn(f64) -> f64, at: f64| (force(at + 1e-4) - force(at - 1e-4)) / 2e-4;
    let springs = [
        rate(&|s| bike.fork_n(s), parts.rest_m[0]),
        rate(&|z| bike.rear_n(z), parts.rest_m[1]),
    ];
    let dampers = [700.0, 1500.0];
    let (rest_m, at_rest) = (
        parts.rest_m,
        [bike.fork_n(parts.rest_m[0]), bike.rear_n(parts.rest_m[1])],
    );
    let straight = |end: usize| {
        move |_: usize, travel: f64| at_rest[end] + springs[end] * (travel - rest_m[end])
    };
    let forces = sagwright_core::ride::bike::Forces {
        fork_n: straight(0),
        rear_n: straight(1),
        fork_friction_n: |_: usize, _: f64| 0.0,
    };
    let bike = Bike::of_forces(
        parts,
        forces,
        viscous(dampers[0]),
        viscous(dampers[1]),
        bike.wheelbase_m,
    );
    (bike, springs, dampers)
}

/// State matrix from the geometry: each spring or damper adds its rate times the outer product of how it is stretched.
fn by_geometry(bike: &Bike<f64>, springs: [f64; 2], dampers: [f64; 2]) -> Square {
    let p = &bike.parts;
    let pitch = p.rest_pitch_rad - p.tyre_pitch_rad;
    let back = p.height_m * pitch;
    // Stretch of fork, rear, front tyre, rear tyre, legs, arms and hold by sprung mass, pitch, front, rear, rider.
    let c = p.per_cos;
    let stretches = [
        (
            [-c, -c * (p.front_ahead_m + back), c, 0.0, 0.0],
            springs[0],
            dampers[0],
        ),
        (
            [-1.0, p.rear_behind_m - back, 0.0, 1.0, 0.0],
            springs[1],
            dampers[1],
        ),
        ([0.0, 0.0, 1.0, 0.0, 0.0], p.tyre_n_per_m[0], 0.0),
        ([0.0, 0.0, 0.0, 1.0, 0.0], p.tyre_n_per_m[1], 0.0),
        ([1.0, p.body_ahead_m, 0.0, 0.0, -1.0], p.leg[0], p.leg[1]),
        ([1.0, p.grips_ahead_m, 0.0, 0.0, -1.0], p.arm[0], p.arm[1]),
        ([0.0, 1.0, 0.0, 0.0, 0.0], p.hold[0], p.hold[1]),
    ];
    let masses = [
        p.sprung_kg,
        p.pitch_kg_m2,
        p.front_kg,
        p.rear_kg,
        p.rider_kg,
    ];
    let mut a = Square::zeros();
    for i in 0..5 {
        a[(i, 5 + i)] = 1.0;
        for (stretch, spring, damper) in &stretches {
            for j in 0..5 {
                a[(5 + i, j)] -= spring * stretch[i] * stretch[j] / masses[i];
                a[(5 + i, 5 + j)] -= damper * stretch[i] * stretch[j] / masses[i];
            }
        }
    }
    // What the springs carry turns with the pitch: a bike that rears gets lighter on its front.
    let carried = p.rest_n[0] + p.rest_n[1];
    a[(6, 1)] += p.height_m * carried / p.pitch_kg_m2;
    a
}

/// The same by small changes of the model's own accelerations.
fn by_model(bike: &Bike<f64>) -> Square {
    let rest = bike.at_rest();
    let held = Held {
        travel_m: bike.parts.rest_m,
        bent_m: [0.0; 2],
        limit_m: [1.0; 2],
        float_m: [0.0; 2],
    };
    let moment = Moment {
        ground_m: [0.0; 2],
        ground_m_per_s: [0.0; 2],
        lie: [0.0; 2],
        braking_m_per_s2: 0.0,
        tyre_damping: 1.0,
    };
    let mut a = Square::zeros();
    for j in 0..10 {
        let turned = |way: f64| {
            let State {
                mut place,
                mut rate,
            } = rest;
            if j < 5 {
                place[j] += way;
            } else {
                rate[j - 5] += way;
            }
            bike.motion(&State { place, rate }, &held, &moment)
                .acceleration
        };
        let small = if j < 5 { 1e-5 } else { 1e-2 };
        let (more, less) = (turned(small), turned(-small));
        for i in 0..5 {
            a[(5 + i, j)] = (more[i] - less[i]) / (2.0 * small);
        }
        if j >= 5 {
            a[(j - 5, j)] = 1.0;
        }
    }
    a
}

fn sorted(a: &Square) -> Vec<Complex<f64>> {
    let mut values: Vec<_> = a.complex_eigenvalues().iter().copied().collect();
    values.sort_by(|a, b| {
        (a.norm(), a.im)
            .partial_cmp(&(b.norm(), b.im))
            .expect("finite")
    });
    values
}

/// Eigenvalues by `nalgebra`: frequencies and decay of all five modes agree to 1e-5.
#[test]
fn has_the_eigenvalues_of_its_geometry() {
    let (bike, springs, dampers) = straightened();
    let (geometry, model) = (
        sorted(&by_geometry(&bike, springs, dampers)),
        sorted(&by_model(&bike)),
    );
    let mut worst: f64 = 0.0;
    for (wanted, got) in geometry.iter().zip(&model) {
        worst = worst.max((wanted - got).norm() / wanted.norm());
    }
    println!("eigenvalues {geometry:.3?}, worst difference {worst:.1e}");
    assert!(worst < 1e-5, "{worst:e}");
}

/// Let go from a millimetre away, the ride follows the matrix exponential for two seconds to half a thousandth of
/// that millimetre; half of it is the second-order lift of the sprung mass by pitch, which the matrix does not have.
#[test]
fn follows_the_matrix_exponential() {
    let (bike, springs, dampers) = straightened();
    let a = by_geometry(&bike, springs, dampers);
    let rest = bike.at_rest();
    let away = SVector::<f64, 10>::from([1e-3, 5e-4, -3e-4, 4e-4, -2e-3, 0.0, 0.0, 0.0, 0.0, 0.0]);
    let mut state = rest;
    for i in 0..5 {
        state.place[i] += away[i];
    }
    let course = level(bike.wheelbase_m, 2.0);
    let mut ride = Ride::placed(&bike, &course, STEP_S, 1.0, state);
    let tenth = (a * 0.1).exp();
    let mut exact = away;
    let mut worst: f64 = 0.0;
    for _ in 0..20 {
        for _ in 0..200 {
            ride.step();
        }
        exact = tenth * exact;
        for i in 0..5 {
            worst = worst.max((ride.state.place[i] - rest.place[i] - exact[i]).abs());
        }
    }
    println!("worst distance from the exponential {worst:.1e} m");
    assert!(worst < 5e-7, "{worst:e} m");
}
