//! The rider as a mass on legs and arms who holds on to the bike's pitch.

use crate::intake::Posture;

/// How a rider stands or sits. All figures are common practice from memory; people differ by a third.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rider {
    /// Natural frequency of the body on the legs or on the seat, bike held still, Hz.
    pub leg_hz: f64,
    /// Damping ratio of the same, dimensionless.
    pub leg_ratio: f64,
    /// How hard knees and feet can pull the bike along when it drops away, as a share of the rider's weight.
    pub pull_share: f64,
    /// Stiffness of both arms between shoulders and bar, N/m, and their damping, N s/m. At rest they carry nothing.
    pub arm_n_per_m: f64,
    /// See [`Self::arm_n_per_m`].
    pub arm_n_s_per_m: f64,
    /// Moment against a pitch away from the lie of the ground, N m/rad.
    pub pitch_n_m_per_rad: f64,
    /// Moment against its rate, N m s/rad.
    pub pitch_n_m_s_per_rad: f64,
    /// All the moment a rider can give, N m.
    pub most_pitch_n_m: f64,
}

impl Rider {
    /// A rider in a posture: 1.8 Hz standing, 2.6 Hz seated.
    pub const fn of(posture: Posture) -> Self {
        Self {
            leg_hz: match posture {
                Posture::Standing => 1.8,
                Posture::Mixed => 2.2,
                Posture::Seated => 2.6,
            },
            leg_ratio: 0.4,
            pull_share: 0.25,
            arm_n_per_m: 2000.0,
            arm_n_s_per_m: 150.0,
            pitch_n_m_per_rad: 250.0,
            pitch_n_m_s_per_rad: 110.0,
            most_pitch_n_m: 220.0,
        }
    }

    /// One who does nothing and whose legs and arms lose no energy, for checks of the motion itself.
    pub const fn dead_weight(posture: Posture) -> Self {
        Self {
            leg_ratio: 0.0,
            arm_n_s_per_m: 0.0,
            pitch_n_m_per_rad: 0.0,
            pitch_n_m_s_per_rad: 0.0,
            most_pitch_n_m: 0.0,
            ..Self::of(posture)
        }
    }
}
