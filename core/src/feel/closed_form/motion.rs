//! How the bike moves about.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use super::{REST, STILL, near, ridden, sine};
use crate::feel::Sample;

#[test]
fn peaks_of_kick_and_lift() {
    let metrics = ridden(0.0, 2.0, |time_s| Sample {
        pitch_rate_rad_s: if time_s < 1.0 {
            1.5 * sine(1.0, time_s)
        } else {
            2.0 * sine(1.0, time_s).min(0.0)
        },
        rear_gap_m: 0.3 * sine(0.25, time_s).max(0.0),
        ..STILL
    });
    near(metrics.nose_up_rad_s, 1.5, 1e-6);
    near(metrics.kick_rad_s, 2.0, 1e-6);
    near(metrics.rear_lift_m, 0.3, 1e-6);
}

/// Release from rest of a swing with damping ratio ζ: each swing is exp(−π ζ / √(1 − ζ²)) of the one before.
#[test]
fn wallow_by_logarithmic_decrement() {
    for (ratio, swings) in [(0.1, 7.0), (0.2, 3.0), (0.3, 2.0), (0.6, 0.0)] {
        let turn = (1.0_f64 - ratio * ratio).sqrt();
        let rad_s = 2.0 * PI * 1.5;
        let metrics = ridden(0.0, 6.0, |time_s| {
            let fade = libm::exp(-ratio * rad_s * time_s);
            let angle = turn * rad_s * time_s;
            let swing = fade * (libm::cos(angle) + ratio / turn * libm::sin(angle));
            Sample {
                heave_m: -0.5 * swing,
                pitch_rad: 0.4 * swing,
                ..STILL
            }
        });
        let decrement = libm::exp(-PI * ratio / turn);
        near(metrics.heave_overshoot, decrement, 2e-4);
        near(metrics.pitch_overshoot, decrement, 2e-4);
        near(metrics.heave_swings, swings, 0.0);
        near(metrics.pitch_swings, swings, 0.0);
    }
}

/// A load that swings between nothing and double as a sine is under a fifth for acos(0.8) / π of the time.
#[test]
fn grip_of_a_swinging_load() {
    let metrics = ridden(0.0, 4.0, |time_s| Sample {
        front_load_n: REST.front_load_n * (1.0 + sine(2.0, time_s)),
        rear_load_n: REST.rear_load_n * (1.0 + 0.5 * sine(3.0, time_s)),
        ..STILL
    });
    near(metrics.light_share.front, libm::acos(0.8) / PI, 5e-3);
    near(metrics.load_unsteadiness.front, FRAC_1_SQRT_2, 1e-6);
    near(metrics.light_share.rear, 0.0, 0.0);
    near(metrics.load_unsteadiness.rear, 0.5 * FRAC_1_SQRT_2, 1e-6);
}

/// 95 % of the time an even ramp is below 95 % of its height, and a sine below sin(0.45 π) of its amplitude.
#[test]
fn travel_used_of_a_ramp_and_a_sine() {
    let metrics = ridden(0.0, 4.0, |time_s| Sample {
        fork_stroke_m: 0.3 * (time_s / 4.0),
        rear_travel_m: 0.15 + 0.12 * sine(1.0, time_s),
        ..STILL
    });
    // Half a step of the sorting at worst.
    let half = 0.5 / 128.0;
    near(metrics.travel_used.front, 0.95, half);
    near(
        metrics.travel_used.rear,
        0.5 + 0.4 * libm::sin(0.45 * PI),
        half,
    );
    near(metrics.travel_deepest.rear, 0.9, 1e-6);
}
