//! Coil springs.

use crate::units::{Length, Pressure, SpringRate, newton_per_m};

/// One or more coil springs side by side, in SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coil {
    /// Rate of all of them together, N/m.
    pub rate_n_per_m: f64,
    /// How far they are squeezed at full extension, m.
    pub preload_m: f64,
}

impl Coil {
    /// Force in N after a further compression of `stroke_m`: Hooke's law.
    pub fn force_n(&self, stroke_m: f64) -> f64 {
        self.rate_n_per_m * (stroke_m + self.preload_m)
    }
}

/// Rate of a round-wire helical spring: k = G d⁴ / (8 D³ n) (EN 13906-1).
///
/// `shear` is G (about 79.5e9 Pa for oil-tempered spring steel, EN 13906-1 from memory), `wire` the wire diameter d, `mean` the mean coil diameter D and `active` the number n
/// of active coils. Tells a spring without markings from what a calliper says; 1 % on the wire is 4 % on the rate.
/// All must be positive, else the result is infinite or not a number.
pub fn helical_rate(shear: Pressure, wire: Length, mean: Length, active: f64) -> SpringRate {
    let d2 = wire.value * wire.value;
    let d3 = mean.value * mean.value * mean.value;
    newton_per_m(shear.value * d2 * d2 / (8.0 * d3 * active))
}
