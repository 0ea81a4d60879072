//! The equations of motion handed to a solver that knows nothing of bikes.

use ode_solvers::{Dop853, OutputType, SVector, System};
use sagwright_core::ride::Bike;
use sagwright_core::ride::ground::Course;
use sagwright_core::ride::model::{Held, Moment, State};
use sagwright_core::ride::run::{Ride, STEP_S};

/// Five places, five rates, two bends of the friction elements.
pub type Vector = SVector<f64, 12>;

/// The equations of motion as a stranger would be given them, with friction as a differential equation of its own.
pub struct Motion<'a> {
    bike: &'a Bike<f64>,
    course: &'a Course,
    friction: bool,
}

impl Motion<'_> {
    pub fn state(y: &Vector) -> State<f64> {
        State {
            place: core::array::from_fn(|i| y[i]),
            rate: core::array::from_fn(|i| y[5 + i]),
        }
    }
}

impl System<f64, Vector> for Motion<'_> {
    fn system(&self, time_s: f64, y: &Vector, dy: &mut Vector) {
        let state = Self::state(y);
        let under = self.course.at(time_s);
        let moment = Moment {
            ground_m: under.ground_m,
            ground_m_per_s: under.ground_m_per_s,
            lie: under.lie,
            braking_m_per_s2: under.braking_m_per_s2,
            tyre_damping: self.course.tyre_damping,
        };
        let bent_m = if self.friction {
            [y[10], y[11]]
        } else {
            [0.0; 2]
        };
        let free = Held {
            travel_m: self.bike.travels_m(state.place),
            bent_m,
            limit_m: [1.0; 2],
            float_m: [0.0; 2],
        };
        let limit_m = self.bike.slip_m(&self.bike.motion(&state, &free, &moment));
        let held = Held { limit_m, ..free };
        let motion = self.bike.motion(&state, &held, &moment);
        for i in 0..5 {
            dy[i] = y[5 + i];
            dy[5 + i] = motion.acceleration[i];
        }
        for end in 0..2 {
            let rate = motion.travel_m_per_s[end];
            let slips = bent_m[end].abs() >= limit_m[end] && bent_m[end] * rate > 0.0;
            dy[10 + end] = if slips || !self.friction { 0.0 } else { rate };
        }
    }
}

/// The course's own start ridden by `ode_solvers`' DOP853 at a relative tolerance: times in s, every hundredth, and states then.
pub fn solve(
    bike: &Bike<f64>,
    course: &Course,
    friction: bool,
    tolerance: f64,
) -> (Vec<f64>, Vec<Vector>) {
    let at_start = Ride::start(bike, course, STEP_S).state;
    let mut start = Vector::zeros();
    for i in 0..5 {
        start[i] = at_start.place[i];
        start[5 + i] = at_start.rate[i];
    }
    let system = Motion {
        bike,
        course,
        friction,
    };
    let every_s = 0.01;
    let lasts_s = every_s * (course.lasts_s / every_s).floor();
    let (safety, beta, slowest, fastest) = (0.9, 0.0, 0.333, 6.0);
    // No step longer than a bump, so that none is jumped over.
    let longest_s = 0.01;
    let mut solver = Dop853::from_param(
        system,
        0.0,
        lasts_s,
        every_s,
        start,
        tolerance,
        tolerance * 1e-3,
        safety,
        beta,
        slowest,
        fastest,
        longest_s,
        0.0,
        10_000_000,
        u32::MAX,
        OutputType::Dense,
    );
    solver.integrate().expect("the solver gets there");
    (solver.x_out().clone(), solver.y_out().clone())
}
