//! How strongly people feel vibration of each frequency: the standards' weightings as analogue filters.
//!
//! ISO 5349-1:2001 (hands, Wh) and ISO 2631-1:1997 (whole body, Wk upright and Wd level); parameters as in
//! ISO 8041-1 annex B. The standards themselves were not at hand: parameters and the tables they are checked
//! against come from public secondary sources.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// One second-order section, H(s) = (n₀ + n₁ s + n₂ s²) / (1 + s/(Q ω₀) + (s/ω₀)²).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    /// n₀ (dimensionless), n₁ (s), n₂ (s²).
    pub(super) numerator: [f64; 3],
    /// ω₀, rad/s, above 0.
    pub(super) corner_rad_s: f64,
    /// Q, dimensionless, above ½, so that the poles are complex.
    pub(super) quality: f64,
}

impl Section {
    /// Second-order Butterworth high-pass with its corner at `hz` above 0.
    pub const fn high_pass(hz: f64) -> Self {
        let corner_rad_s = 2.0 * PI * hz;
        Self {
            numerator: [0.0, 0.0, 1.0 / (corner_rad_s * corner_rad_s)],
            corner_rad_s,
            quality: FRAC_1_SQRT_2,
        }
    }

    /// Second-order Butterworth low-pass with its corner at `hz` above 0.
    pub const fn low_pass(hz: f64) -> Self {
        Self {
            numerator: [1.0, 0.0, 0.0],
            corner_rad_s: 2.0 * PI * hz,
            quality: FRAC_1_SQRT_2,
        }
    }

    /// Second derivative of the signal below `hz` above 0, Butterworth low-pass from there; gain in 1/s².
    pub const fn second_derivative(hz: f64) -> Self {
        Self {
            numerator: [0.0, 0.0, 1.0],
            ..Self::low_pass(hz)
        }
    }

    /// From proportional to acceleration below `hz` to proportional to velocity above it, `quality` above ½.
    pub const fn acceleration_to_velocity(hz: f64, quality: f64) -> Self {
        let corner_rad_s = 2.0 * PI * hz;
        Self {
            numerator: [1.0, 1.0 / corner_rad_s, 0.0],
            corner_rad_s,
            quality,
        }
    }

    /// From (f₅/f₆)² well below `from_hz` to 1 well above `to_hz`; the qualities are above ½.
    pub const fn upward_step(from_hz: f64, from_quality: f64, to_hz: f64, to_quality: f64) -> Self {
        let from_rad_s = 2.0 * PI * from_hz;
        let floor = (from_hz / to_hz) * (from_hz / to_hz);
        Self {
            numerator: [
                floor,
                floor / (from_quality * from_rad_s),
                floor / (from_rad_s * from_rad_s),
            ],
            corner_rad_s: 2.0 * PI * to_hz,
            quality: to_quality,
        }
    }

    /// Square of the gain at an angular frequency, rad/s.
    pub(super) fn power_gain(&self, rad_s: f64) -> f64 {
        let [constant, slope, curve] = self.numerator;
        let above = square(constant - curve * square(rad_s)) + square(slope * rad_s);
        let relative = rad_s / self.corner_rad_s;
        above / (square(1.0 - square(relative)) + square(relative / self.quality))
    }
}

/// A weighting: sections one after the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weighting<const N: usize> {
    /// The sections; their order does not matter.
    pub sections: [Section; N],
}

impl<const N: usize> Weighting<N> {
    /// Factor by which acceleration at `hz` counts (the gain of the analogue filter), dimensionless.
    pub fn factor(&self, hz: f64) -> f64 {
        let rad_s = 2.0 * PI * hz;
        self.sections
            .iter()
            .fold(1.0, |power, section| power * section.power_gain(rad_s))
            .sqrt()
    }
}

/// Hand-transmitted vibration, any direction (ISO 5349-1:2001, table A.1).
///
/// The limits of the band are the exact 10^0.8 and 10^3.1 Hz, which the standard prints as 6.310 and 1258.9 Hz;
/// the transition is at 100 rad/s, printed as 15.915 Hz.
pub const HANDS: Weighting<3> = Weighting {
    sections: [
        Section::high_pass(6.309_573_444_801_933),
        Section::low_pass(1_258.925_411_794_167_5),
        Section::acceleration_to_velocity(15.915_494_309_189_533, 0.64),
    ],
};

/// Whole-body vibration, upward, Wk (ISO 2631-1:1997, annex A).
pub const BODY_UP: Weighting<4> = Weighting {
    sections: [
        Section::high_pass(0.4),
        Section::low_pass(100.0),
        Section::acceleration_to_velocity(12.5, 0.63),
        Section::upward_step(2.37, 0.91, 3.35, 0.91),
    ],
};

/// Whole-body vibration, level (fore and aft or sideways), Wd (ISO 2631-1:1997, annex A).
pub const BODY_LEVEL: Weighting<3> = Weighting {
    sections: [
        Section::high_pass(0.4),
        Section::low_pass(100.0),
        Section::acceleration_to_velocity(2.0, 0.63),
    ],
};

/// Movements of the bike on its springs, up to 4 Hz; wheels hop well above that. Common practice.
pub(super) const SWAYING: Section = Section::low_pass(4.0);

/// Lower and upper limit of the small bumps a fork should swallow, Hz; common practice.
const SMALL_BUMPS_FROM_HZ: f64 = 8.0;
const SMALL_BUMPS_TO_HZ: f64 = 30.0;

/// Accelerations between 8 and 30 Hz, Butterworth of second order at either end.
pub const SMALL_BUMPS: Weighting<2> = Weighting {
    sections: [
        Section::high_pass(SMALL_BUMPS_FROM_HZ),
        Section::low_pass(SMALL_BUMPS_TO_HZ),
    ],
};

/// Accelerations between 8 and 30 Hz of a height, 1/s² per unit: s² times [`SMALL_BUMPS`].
pub const SMALL_BUMPS_OF_HEIGHT: Weighting<2> = Weighting {
    sections: [
        Section::high_pass(SMALL_BUMPS_FROM_HZ),
        Section::second_derivative(SMALL_BUMPS_TO_HZ),
    ],
};

pub(super) fn square(value: f64) -> f64 {
    value * value
}
