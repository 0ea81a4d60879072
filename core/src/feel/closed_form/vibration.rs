//! Vibration of hands and body.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use super::{STILL, near, ridden, sine};
use crate::feel::Sample;
use crate::feel::weighting::{BODY_LEVEL, BODY_UP, HANDS, Section, Weighting};

/// The root mean square of a sine is its amplitude over √2, times the factor of its frequency.
#[test]
fn weighted_sines() {
    let metrics = ridden(10.0, 20.0, |time_s| Sample {
        hand_up_m_s2: 10.0 * sine(20.0, time_s),
        hand_forward_m_s2: 7.0 * sine(40.0, time_s),
        body_up_m_s2: 2.0 * sine(16.0, time_s),
        body_forward_m_s2: 3.0 * sine(2.0, time_s),
        ..STILL
    });
    let (up, forward) = (10.0 * HANDS.factor(20.0), 7.0 * HANDS.factor(40.0));
    let both = FRAC_1_SQRT_2 * (up * up + forward * forward).sqrt();
    near(metrics.hand_m_s2, both, 1e-3);
    near(
        metrics.body_m_s2,
        2.0 * FRAC_1_SQRT_2 * BODY_UP.factor(16.0),
        1e-3,
    );
    near(
        metrics.body_fore_aft_m_s2,
        3.0 * FRAC_1_SQRT_2 * BODY_LEVEL.factor(2.0),
        1e-3,
    );
}

/// A weighted sine of amplitude a over a time T has the dose a (3 T / 8)^¼ (exact); 2 m/s² over 10 s give 2.7832.
#[test]
fn dose_of_a_sine() {
    let amplitude = 2.0 / BODY_UP.factor(16.0);
    let metrics = ridden(10.0, 20.0, |time_s| Sample {
        body_up_m_s2: amplitude * sine(16.0, time_s),
        ..STILL
    });
    near(metrics.body_dose_m_s1_75, 2.783_157_683_713_740_4, 1e-3);
}

/// Twice as long a ride has the same root mean square and 2^¼ times the dose.
#[test]
fn dose_grows_with_time() {
    let of = |to_s| {
        ridden(10.0, to_s, |time_s| Sample {
            body_up_m_s2: sine(5.0, time_s),
            ..STILL
        })
    };
    let (short, long) = (of(15.0), of(20.0));
    near(long.body_m_s2, short.body_m_s2, 1e-6);
    near(
        long.body_dose_m_s1_75,
        short.body_dose_m_s1_75 * 2.0_f64.sqrt().sqrt(),
        1e-6,
    );
}

/// Hands that move as the ground does, at a share of it.
#[test]
fn small_bumps_at_a_share() {
    for hz in [8.0, 12.5, 20.0, 32.0] {
        let rad_s = 2.0 * PI * hz;
        let metrics = ridden(5.0, 10.0, |time_s| Sample {
            ground_front_m: 0.005 * sine(hz, time_s),
            hand_up_m_s2: -0.4 * 0.005 * rad_s * rad_s * sine(hz, time_s),
            ..STILL
        });
        near(metrics.small_bumps_felt, 0.4, 6e-3);
    }
}

/// A bike that sways at 1 Hz adds what the band lets through of that, and no more.
#[test]
fn swaying_is_no_small_bump() {
    let (bump, sway) = (16.0, 1.0);
    let rad_s = 2.0 * PI * bump;
    let metrics = ridden(5.0, 15.0, |time_s| Sample {
        ground_front_m: 0.005 * sine(bump, time_s),
        hand_up_m_s2: 5.0 * sine(sway, time_s),
        ..STILL
    });
    let band = Weighting {
        sections: [Section::high_pass(8.0), Section::low_pass(30.0)],
    };
    let wanted = 5.0 * band.factor(sway) / (0.005 * rad_s * rad_s * band.factor(bump));
    near(metrics.small_bumps_felt, wanted, 6e-3);
    assert!(wanted < 0.002, "{wanted}");
}
