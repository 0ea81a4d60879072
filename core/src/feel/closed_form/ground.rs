//! What bumps and brakes do.

use core::f64::consts::PI;

use super::{REST, STILL, near, ridden, sine};
use crate::feel::Sample;

/// Ten bumps of 10 mm; by turns the fork slides 8 mm in all, slides 2 mm, and is held.
#[test]
fn bumps_ignored_are_counted() {
    let bump_s = 0.2;
    let metrics = ridden(0.5, 3.0, |time_s| {
        let from_start_s = time_s - 0.6;
        let number = libm::floor(from_start_s / bump_s);
        if !(0.0..10.0).contains(&number) {
            return STILL;
        }
        let phase = from_start_s / bump_s - number;
        let rate_m_s = match number % 3.0 {
            0.0 => 0.04,
            1.0 => 0.01,
            _ => 0.0,
        };
        Sample {
            ground_front_m: 0.005 * (1.0 - libm::cos(2.0 * PI * phase)),
            fork_rate_m_s: if phase < 0.5 { rate_m_s } else { -rate_m_s },
            fork_held: if rate_m_s > 0.0 { 0.0 } else { 1.0 },
            ..STILL
        }
    });
    // The tenth is not followed by another. Of the nine, the first, fourth and seventh moved the fork.
    near(metrics.bumps, 9.0, 0.0);
    near(metrics.bumps_ignored, 6.0 / 9.0, 1e-12);
}

/// Ripples of 2 mm are no bumps.
#[test]
fn ripples_are_not_counted() {
    let metrics = ridden(0.5, 3.0, |time_s| Sample {
        ground_front_m: 0.001 * sine(8.0, time_s),
        ..STILL
    });
    near(metrics.bumps + metrics.bumps_ignored, 0.0, 0.0);
}

/// A row of bumps in which the fork swings about 150 mm once it has gone down there: packed by that less its sag.
#[test]
fn packing_in_the_last_third() {
    let metrics = ridden(1.0, 7.0, |time_s| Sample {
        fork_stroke_m: if time_s < 4.0 {
            REST.fork_stroke_m + 0.03 * (time_s - 1.0)
        } else {
            0.15 + 0.05 * sine(2.0, time_s)
        },
        ..STILL
    });
    near(metrics.packed_m.front, 0.15 - REST.fork_stroke_m, 1e-3);
    near(metrics.packed_m.rear, 0.0, 0.0);
}

/// The fork goes down at 0.1 m/s for 0.4 s under braking and stays. A Butterworth of second order overshoots a step by exp(−π).
#[test]
fn dive_under_braking() {
    let metrics = ridden(0.5, 4.0, |time_s| {
        let at_s = (time_s - 1.0).clamp(0.0, 2.0);
        let diving = at_s > 0.0 && at_s < 0.4;
        Sample {
            course_forward_m_s2: if at_s > 0.0 && at_s < 2.0 { -4.0 } else { 0.0 },
            fork_rate_m_s: if diving { 0.1 } else { 0.0 },
            fork_stroke_m: REST.fork_stroke_m + 0.1 * at_s.min(0.4),
            pitch_rad: REST.pitch_rad - 0.05 * at_s.min(0.4),
            ..STILL
        }
    });
    near(metrics.dive_m, 0.04, 1e-9);
    near(metrics.dive_pitch_rad, 0.02, 1e-9);
    near(metrics.dive_rate_m_s, 0.1 * (1.0 + libm::exp(-PI)), 1e-3);
}

/// Without brakes nothing dives, whatever the fork does.
#[test]
fn no_dive_without_brakes() {
    let metrics = ridden(0.0, 2.0, |time_s| Sample {
        course_forward_m_s2: -0.5,
        fork_rate_m_s: sine(1.0, time_s),
        fork_stroke_m: 0.2,
        ..STILL
    });
    near(
        metrics.dive_m + metrics.dive_pitch_rad + metrics.dive_rate_m_s,
        0.0,
        0.0,
    );
}

/// A linear stop of 400 N/mm pushed in by 10 mm: 4000 N and ½ k x² = 20 J, on the way in only, and once per hit.
#[test]
fn bottoming_on_a_linear_stop() {
    let (rate_n_per_m, deep_m, hz) = (4e5, 0.01, 5.0);
    let metrics = ridden(0.0, 0.2, |time_s| {
        let into_m = deep_m * sine(hz, time_s).max(0.0);
        Sample {
            rear_stop_n: rate_n_per_m * into_m,
            rear_rate_m_s: deep_m * 2.0 * PI * hz * libm::cos(2.0 * PI * hz * time_s),
            ..STILL
        }
    });
    near(metrics.bottoming_n.rear, 4000.0, 1e-6);
    near(metrics.bottoming_j.rear, 20.0, 1e-3);
    near(
        metrics.bottoming_n.front + metrics.bottoming_j.front,
        0.0,
        0.0,
    );
    near(metrics.bottoming_j.balance(), -1.0, 0.0);
}
