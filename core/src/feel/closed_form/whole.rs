//! Every figure at once.

use super::{REST, STEP_S, STILL, near, ridden, sine};
use crate::feel::{AtRest, Clock, Feel, Metrics, Sample};
use crate::lane::Lane;

/// Lanes side by side.
type Row = wide::f64x4;

#[test]
fn a_bike_at_rest_feels_nothing() {
    let metrics = ridden(1.0, 3.0, |_| STILL);
    let nothing = metrics.map(|_| 0.0);
    let mut expected = nothing;
    // It still uses the travel it sags by: the middle of the step that holds it, 95 % of the way up.
    let of = |rest_m: f64| (libm::floor(rest_m / 0.3 * 128.0) + 0.95) / 128.0;
    expected.travel_used.front = of(REST.fork_stroke_m);
    expected.travel_used.rear = of(REST.rear_travel_m);
    expected.travel_deepest.front = REST.fork_stroke_m / 0.3;
    expected.travel_deepest.rear = REST.rear_travel_m / 0.3;
    assert_eq!(metrics, expected);
}

/// What lies outside the time measured does not count.
#[test]
fn only_the_time_measured_counts() {
    let metrics = ridden(1.0, 2.0, |time_s| {
        if time_s > 0.9995 && time_s < 2.0005 {
            return STILL;
        }
        Sample {
            fork_stop_n: 1e4,
            fork_rate_m_s: 1.0,
            rear_gap_m: 1.0,
            pitch_rate_rad_s: 5.0,
            front_load_n: 0.0,
            fork_stroke_m: 0.3,
            ..STILL
        }
    });
    near(
        metrics.bottoming_n.front + metrics.bottoming_j.front,
        0.0,
        0.0,
    );
    near(metrics.rear_lift_m + metrics.nose_up_rad_s, 0.0, 0.0);
    near(metrics.light_share.front + metrics.packed_m.front, 0.0, 0.0);
}

/// Samples side by side in the lanes of a row.
fn side_by_side(samples: &[Sample<f64>; 4]) -> Sample<Row> {
    let row = |of: fn(&Sample<f64>) -> f64| Row::from_lanes(|lane| of(&samples[lane]));
    Sample {
        hand_up_m_s2: row(|sample| sample.hand_up_m_s2),
        hand_forward_m_s2: row(|sample| sample.hand_forward_m_s2),
        body_up_m_s2: row(|sample| sample.body_up_m_s2),
        body_forward_m_s2: row(|sample| sample.body_forward_m_s2),
        course_forward_m_s2: row(|sample| sample.course_forward_m_s2),
        fork_stroke_m: row(|sample| sample.fork_stroke_m),
        fork_rate_m_s: row(|sample| sample.fork_rate_m_s),
        rear_travel_m: row(|sample| sample.rear_travel_m),
        rear_rate_m_s: row(|sample| sample.rear_rate_m_s),
        fork_stop_n: row(|sample| sample.fork_stop_n),
        rear_stop_n: row(|sample| sample.rear_stop_n),
        fork_held: row(|sample| sample.fork_held),
        front_load_n: row(|sample| sample.front_load_n),
        rear_load_n: row(|sample| sample.rear_load_n),
        front_gap_m: row(|sample| sample.front_gap_m),
        rear_gap_m: row(|sample| sample.rear_gap_m),
        heave_m: row(|sample| sample.heave_m),
        pitch_rad: row(|sample| sample.pitch_rad),
        pitch_rate_rad_s: row(|sample| sample.pitch_rate_rad_s),
        ground_front_m: row(|sample| sample.ground_front_m),
    }
}

/// Set-ups side by side are felt to the bit as each alone.
#[test]
fn lanes_feel_as_one_alone() {
    let strength = |lane: usize| [0.2, 1.0, 1.7, 3.0][lane];
    let at = |time_s: f64, strength: f64| Sample {
        hand_up_m_s2: strength * sine(13.0, time_s),
        body_up_m_s2: strength * sine(5.0, time_s),
        fork_stroke_m: 0.1 + 0.05 * strength * sine(3.0, time_s),
        fork_rate_m_s: strength * sine(3.0, time_s),
        fork_held: if strength > 1.2 { 0.0 } else { 1.0 },
        rear_gap_m: (strength * sine(2.0, time_s)).max(0.0),
        rear_stop_n: (900.0 * strength * sine(2.0, time_s)).max(0.0),
        rear_rate_m_s: strength * sine(1.0, time_s),
        front_load_n: 900.0 * (1.0 + 0.4 * strength * sine(4.0, time_s)).max(0.0),
        pitch_rad: 0.1 * strength * sine(2.0, time_s),
        pitch_rate_rad_s: strength * sine(2.0, time_s),
        course_forward_m_s2: -strength,
        ground_front_m: 0.01 * strength * sine(6.0, time_s),
        ..STILL
    };
    let clock = Clock {
        step_s: STEP_S,
        from_s: 1.0,
        bumps_end_s: 3.0,
        to_s: 4.0,
    };
    let mut alone = [0, 1, 2, 3].map(|_| Feel::new(&clock, &REST));
    let rest = AtRest {
        fork_stroke_m: Row::splat(REST.fork_stroke_m),
        rear_travel_m: Row::splat(REST.rear_travel_m),
        fork_full_m: Row::splat(REST.fork_full_m),
        rear_full_m: Row::splat(REST.rear_full_m),
        pitch_rad: Row::splat(REST.pitch_rad),
        front_load_n: Row::splat(REST.front_load_n),
        rear_load_n: Row::splat(REST.rear_load_n),
    };
    let mut together = Feel::new(&clock, &rest);
    for step in 1..=8000 {
        let time_s = f64::from(step) * STEP_S;
        let samples = [0, 1, 2, 3].map(|lane| at(time_s, strength(lane)));
        together.step(&side_by_side(&samples));
        for (feel, sample) in alone.iter_mut().zip(&samples) {
            feel.step(sample);
        }
    }
    let row: Metrics<Row> = together.metrics();
    for (lane, feel) in alone.iter().enumerate() {
        assert_eq!(row.lane(lane), feel.metrics(), "lane {lane}");
    }
}
