//! Every figure on signals whose answer is known in closed form.

use core::f64::consts::PI;

use super::{AtRest, Clock, Feel, Metrics, Sample};

mod ground;
mod motion;
mod vibration;
mod whole;

const STEP_S: f64 = 5e-4;

const REST: AtRest<f64> = AtRest {
    fork_stroke_m: 0.06,
    rear_travel_m: 0.1,
    fork_full_m: 0.3,
    rear_full_m: 0.3,
    pitch_rad: 0.01,
    front_load_n: 900.0,
    rear_load_n: 1100.0,
};

const STILL: Sample<f64> = Sample {
    hand_up_m_s2: 0.0,
    hand_forward_m_s2: 0.0,
    body_up_m_s2: 0.0,
    body_forward_m_s2: 0.0,
    course_forward_m_s2: 0.0,
    fork_stroke_m: REST.fork_stroke_m,
    fork_rate_m_s: 0.0,
    rear_travel_m: REST.rear_travel_m,
    rear_rate_m_s: 0.0,
    fork_stop_n: 0.0,
    rear_stop_n: 0.0,
    fork_held: 1.0,
    front_load_n: REST.front_load_n,
    rear_load_n: REST.rear_load_n,
    front_gap_m: 0.0,
    rear_gap_m: 0.0,
    heave_m: 0.0,
    pitch_rad: REST.pitch_rad,
    pitch_rate_rad_s: 0.0,
    ground_front_m: 0.0,
};

/// Runs the signal `at` of time in s and measures from `from_s` to `to_s`.
fn ridden(from_s: f64, to_s: f64, at: impl Fn(f64) -> Sample<f64>) -> Metrics<f64> {
    let clock = Clock {
        step_s: STEP_S,
        from_s,
        bumps_end_s: to_s,
        to_s,
    };
    let mut feel = Feel::new(&clock, &REST);
    let mut step = 0.0;
    while step * STEP_S < to_s + 1.0 {
        step += 1.0;
        feel.step(&at(step * STEP_S));
    }
    feel.metrics()
}

fn sine(hz: f64, time_s: f64) -> f64 {
    libm::sin(2.0 * PI * hz * time_s)
}

#[track_caller]
fn near(got: f64, wanted: f64, relative: f64) {
    assert!(
        (got - wanted).abs() <= relative * wanted.abs(),
        "{got} instead of {wanted}"
    );
}
