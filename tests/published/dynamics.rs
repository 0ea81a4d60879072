//! The motion against textbooks (`data/dynamics.csv`, `data/coulomb_decay.csv`; each row says its source and how well it is known).
//!
//! Books print two to five digits, and their vehicles stand on rigid ground: here they stand on tyres so stiff that it shows
//! in the sixth digit.

#[path = "../rides/plain.rs"]
mod plain;

use nalgebra::{SMatrix, SVector};
use plain::{Plain, level};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Course;
use sagwright_core::ride::ground::course::Riding;
use sagwright_core::ride::model::{Held, Moment, State};
use sagwright_core::ride::run::Ride;
use sagwright_core::units::STANDARD_GRAVITY;
use serde::Deserialize;

use crate::{near, table};

#[derive(Deserialize)]
struct Row {
    id: String,
    quantity: String,
    published: Option<f64>,
    computed: f64,
}

/// A figure of an example: the printed one where there is one, else the closed form's.
fn printed(id: &str, quantity: &str) -> f64 {
    let rows: Vec<Row> = table(include_str!("data/dynamics.csv"));
    let row = rows
        .iter()
        .find(|row| row.id == id && row.quantity == quantity);
    let row = row.expect("the table holds this example");
    row.published.unwrap_or(row.computed)
}

/// A vehicle without wheels, dampers or friction to speak of.
const RIGID: Plain = Plain {
    body_kg: 1.0,
    inertia_kg_m2: 1.0,
    away_m: [1.0; 2],
    wheel_kg: [1.0; 2],
    spring_n_per_m: [1.0; 2],
    damper_n_s_per_m: [0.0; 2],
    tyre_n_per_m: [1e10; 2],
    friction_n: [1e-9; 2],
    give_m: 1.0,
};

/// Natural frequency in rad/s nearest to one, and the shape of that mode: sprung mass, pitch, front wheel, rear wheel.
fn mode(plain: &Plain, nearest_rad_s: f64) -> (f64, [f64; 4]) {
    let bike = plain.bike();
    let rest = bike.at_rest();
    let held = Held {
        travel_m: bike.parts.rest_m,
        bent_m: [0.0; 2],
        limit_m: [0.0; 2],
        float_m: [0.0; 2],
    };
    let moment = Moment {
        ground_m: [0.0; 2],
        ground_m_per_s: [0.0; 2],
        lie: [0.0; 2],
        braking_m_per_s2: 0.0,
        tyre_damping: 1.0,
    };
    let mut stiffness = SMatrix::<f64, 4, 4>::zeros();
    // Less than the tyres are pressed in at rest.
    let small = 1e-9;
    for j in 0..4 {
        let moved = |way: f64| {
            let mut place = rest.place;
            place[j] += way;
            bike.motion(
                &State {
                    place,
                    rate: rest.rate,
                },
                &held,
                &moment,
            )
            .acceleration
        };
        let (more, less) = (moved(small), moved(-small));
        for i in 0..4 {
            stiffness[(i, j)] = (less[i] - more[i]) / (2.0 * small);
        }
    }
    let square = stiffness
        .complex_eigenvalues()
        .iter()
        .map(|value| value.re)
        .min_by(|a, b| {
            let away = |square: f64| (square.max(0.0).sqrt() - nearest_rad_s).abs();
            away(*a).total_cmp(&away(*b))
        })
        .expect("four modes");
    // The mode is what (K − ω²) takes to nothing: two steps of inverse iteration.
    let nudged = stiffness - SMatrix::identity() * (square * (1.0 + 1e-7));
    let solve = nudged.lu();
    let mut shape = SVector::<f64, 4>::from([1.0, 0.3, 0.2, 0.1]);
    for _ in 0..3 {
        shape = solve.solve(&shape).expect("not singular").normalize();
    }
    (square.sqrt(), [shape[0], shape[1], shape[2], shape[3]])
}

fn frequencies(id: &str, plain: &Plain, tolerance: f64) {
    for quantity in ["omega1", "omega2"] {
        let wanted = printed(id, quantity);
        near(
            &format!("{id} {quantity}"),
            mode(plain, wanted).0,
            wanted,
            tolerance,
        );
    }
}

/// Rao, Mechanical Vibrations, automobile in bounce and pitch (medium): five digits.
#[test]
fn rao_automobile() {
    let plain = Plain {
        body_kg: 1000.0,
        inertia_kg_m2: 810.0,
        away_m: [1.0, 1.5],
        spring_n_per_m: [18e3, 22e3],
        ..RIGID
    };
    frequencies("rao_auto", &plain, 2e-5);
    for (omega, quantity) in [("omega1", "X/Theta mode1"), ("omega2", "X/Theta mode2")] {
        let (_, shape) = mode(&plain, printed("rao_auto", omega));
        // The book's pitch is nose down where its heave is up.
        near(
            quantity,
            -shape[0] / shape[1],
            printed("rao_auto", quantity),
            2e-4,
        );
    }
}

/// Rao, machine tool (high): four digits.
#[test]
fn rao_machine_tool() {
    let plain = Plain {
        body_kg: 1000.0,
        inertia_kg_m2: 300.0,
        away_m: [0.5, 0.8],
        spring_n_per_m: [3e6, 2e6],
        tyre_n_per_m: [1e13; 2],
        ..RIGID
    };
    frequencies("rao_machine_tool", &plain, 1e-4);
}

/// Edwards and Penney, problem 7.4-24 (high): springs of 2000 lb/ft 6 ft and 4 ft from the centre of 100 slugs; the printed answers
/// are cut to two decimals.
#[test]
fn edwards_penney_car() {
    let plain = Plain {
        body_kg: 100.0,
        inertia_kg_m2: 1000.0,
        away_m: [6.0, 4.0],
        spring_n_per_m: [2000.0; 2],
        ..RIGID
    };
    frequencies("edwards_penney_7.4-24", &plain, 1e-3);
}

/// Thomson, Theory of Vibration, automobile (medium): in slugs and feet, two or three digits.
#[test]
fn thomson_automobile() {
    let plain = Plain {
        body_kg: 100.0,
        inertia_kg_m2: 1600.0,
        away_m: [4.5, 5.5],
        spring_n_per_m: [2400.0, 2600.0],
        ..RIGID
    };
    frequencies("thomson_auto", &plain, 1.5e-3);
}

/// Barton and Fieldhouse, Automotive Chassis Engineering, p. 209 (high): quarter car. Two of them side by side heave as one.
#[test]
fn barton_quarter_car() {
    let plain = Plain {
        body_kg: 2.0 * 317.5,
        inertia_kg_m2: 4.0 * 2.0 * 317.5,
        wheel_kg: [45.4; 2],
        spring_n_per_m: [22e3; 2],
        tyre_n_per_m: [192e3; 2],
        ..RIGID
    };
    frequencies("barton_qcar", &plain, 1.5e-3);
    let (_, shape) = mode(&plain, printed("barton_qcar", "omega1"));
    near(
        "A1/A2",
        shape[2] / shape[0],
        printed("barton_qcar", "A1/A2 mode 1"),
        2e-3,
    );
}

/// Barton and Fieldhouse, p. 213 (high): wheel hop with the body held still, here by its own weight of a thousand tonnes.
#[test]
fn barton_wheel_hop() {
    let plain = Plain {
        body_kg: 1e6,
        inertia_kg_m2: 1e6,
        wheel_kg: [40.0; 2],
        spring_n_per_m: [20.63e3; 2],
        tyre_n_per_m: [300e3; 2],
        ..RIGID
    };
    let wanted = printed("barton_hop", "f");
    let (rad_s, _) = mode(&plain, wanted * 2.0 * core::f64::consts::PI);
    near(
        "wheel hop",
        rad_s / (2.0 * core::f64::consts::PI),
        wanted,
        1e-3,
    );
}

/// A mass on one spring: two alike side by side, on tyres that hardly give.
fn mass_on_spring(mass_kg: f64, n_per_m: f64, n_s_per_m: f64) -> Plain {
    Plain {
        body_kg: mass_kg,
        inertia_kg_m2: mass_kg,
        wheel_kg: [20.0; 2],
        spring_n_per_m: [n_per_m / 2.0; 2],
        damper_n_s_per_m: [n_s_per_m / 2.0; 2],
        tyre_n_per_m: [5e7; 2],
        ..RIGID
    }
}

/// Heights in m of the sprung mass over its rest at each turn, after it was let go from a height, within a time.
fn turns_m(bike: &Bike<f64>, from_m: f64, within_s: f64) -> Vec<f64> {
    let course = level(bike.wheelbase_m, within_s);
    let rest = bike.at_rest();
    let mut state = rest;
    state.place[0] += from_m;
    let mut ride = Ride::placed(bike, &course, 1e-4, 1.0, state);
    let mut turns = vec![from_m];
    // The first rates only take up what the friction and the tyres give.
    let mut before = 0.0;
    while !ride.over() {
        ride.step();
        let rate = ride.state.rate[0];
        if before * rate < 0.0 && ride.time_s() > 0.05 {
            turns.push(ride.state.place[0] - rest.place[0]);
        }
        before = rate;
    }
    turns
}

/// Overshoot of the other side and logarithmic decrement by damping ratio: closed forms (exact).
#[test]
fn decays_as_its_damping_ratio_says() {
    let (mass_kg, n_per_m) = (200.0_f64, 2358.2652_f64);
    let critical = 2.0 * (mass_kg * n_per_m).sqrt();
    for ratio in [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8] {
        let plain = mass_on_spring(mass_kg, n_per_m, ratio * critical);
        let turns = turns_m(&plain.bike(), 0.05, 4.0);
        let wanted = printed("sdof_step", &format!("overshoot zeta={ratio}"));
        near(
            &format!("overshoot at {ratio}"),
            -turns[1] / turns[0],
            wanted,
            1e-3,
        );
    }
    for ratio in [0.05, 0.1, 0.2, 0.3, 0.5] {
        let plain = mass_on_spring(mass_kg, n_per_m, ratio * critical);
        let turns = turns_m(&plain.bike(), 0.05, 4.0);
        let wanted = printed("sdof_logdec", &format!("delta zeta={ratio}"));
        near(
            &format!("decrement at {ratio}"),
            libm::log(turns[0] / turns[2]),
            wanted,
            1e-3,
        );
    }
}

/// Rao, example 2.11 (medium): a motorcycle's absorber of 200 kg falls to a quarter in half a cycle of 2 s.
#[test]
fn rao_motorcycle() {
    let of = |quantity: &str| printed("rao_2.11", quantity);
    let plain = mass_on_spring(200.0, of("k"), of("c"));
    let turns = turns_m(&plain.bike(), 0.25, 4.5);
    near("after half a cycle", -turns[1], 0.25 / 4.0, 1e-3);
    near(
        "decrement",
        libm::log(turns[0] / turns[2]),
        of("log decrement"),
        1e-3,
    );
}

#[derive(Deserialize)]
struct Turn {
    half_cycle: u8,
    t_s: f64,
    x_m: f64,
}

/// A mass on a spring with dry friction: x falls by 2 F / k each half cycle and it stops inside F / k (Den Hartog; exact). Here the
/// friction gives by a micrometre before it slips, which is the tolerance per half cycle.
#[test]
fn coulomb_friction_decays_by_the_same_each_half_cycle() {
    let plain = Plain {
        friction_n: [4.0; 2],
        give_m: 1e-6,
        ..mass_on_spring(10.0, 1000.0, 0.0)
    };
    let bike = plain.bike();
    let turns = turns_m(&bike, 0.1, 4.0);
    let exact: Vec<Turn> = table(include_str!("data/coulomb_decay.csv"));
    for turn in &exact {
        let off_m = (turns[usize::from(turn.half_cycle)] - turn.x_m).abs();
        let allowed_m = 5e-6 * (f64::from(turn.half_cycle) + 1.0);
        assert!(
            off_m < allowed_m,
            "turn {} at {} s: off by {off_m:e} m",
            turn.half_cycle,
            turn.t_s
        );
    }
    // And then it sticks, away from where it would rest without friction.
    let course = level(bike.wheelbase_m, 4.0);
    let mut state = bike.at_rest();
    state.place[0] += 0.1;
    let mut ride = Ride::placed(&bike, &course, 1e-4, 1.0, state);
    let mut seen = [0.0; 2];
    for sight in &mut seen {
        for _ in 0..20_000 {
            ride.step();
        }
        *sight = ride.state.place[0] - bike.at_rest().place[0];
    }
    assert!((seen[0] - 0.004).abs() < 5e-5, "sticks at {} m", seen[0]);
    assert!(
        (seen[1] - seen[0]).abs() < 2e-5,
        "moved from {} to {} m",
        seen[0],
        seen[1]
    );
}

/// Load transfer m a h / L (high): 1500 kg braked with 0.9 g, centre at 0.52 m, wheelbase 2.7 m: 260 kgf.
#[test]
fn braking_moves_load_to_the_front() {
    let plain = Plain {
        body_kg: 1500.0 - 80.0,
        inertia_kg_m2: 2000.0,
        away_m: [1.35; 2],
        wheel_kg: [40.0; 2],
        spring_n_per_m: [40e3; 2],
        damper_n_s_per_m: [6000.0; 2],
        tyre_n_per_m: [400e3; 2],
        ..RIGID
    };
    let mut bike = plain.bike();
    bike.parts.transfer_kg_m = 1500.0 * 0.52;
    bike.parts.front_brake = 0.6;
    // The example does not ask whether the ground holds.
    bike.parts.grip = 2.0;
    let riding = Riding::changing(60.0, 0.9 * STANDARD_GRAVITY);
    let course = Course::of_heights(Vec::new(), riding, bike.wheelbase_m, 6.0);
    let mut ride = Ride::start(&bike, &course, 5e-4);
    let before = ride.now.load_n;
    while !ride.over() {
        ride.step();
    }
    let moved = |end: usize| (ride.now.load_n[end] - before[end]) / STANDARD_GRAVITY;
    near(
        "onto the front",
        moved(0),
        printed("load_transfer", "dW"),
        1e-3,
    );
    near(
        "off the rear",
        -moved(1),
        printed("load_transfer", "dW"),
        1e-3,
    );
}
