//! The leverage of the rear: how far the shock moves for a travel of the axle.

/// Motion ratio curve of the rear, r = dx/dz, where x is shock stroke and z vertical axle travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leverage {
    /// Straight-line value at full extension, dimensionless.
    pub top: f64,
    /// Straight-line value at full travel, dimensionless.
    pub bottom: f64,
    /// How much faster it rises late than early, 0 (straight) to 1 (level at the top). The mean stays the same.
    pub late: f64,
    /// Full axle travel, m.
    pub travel_m: f64,
}

impl Leverage {
    /// Motion ratio at `z_m`: r(u) = top + Δ (u + q (u² − u + 1/6)), u = z / travel.
    ///
    /// The bracket beside q has no mean, so that the shock's whole stroke does not depend on the shape.
    pub fn ratio(&self, z_m: f64) -> f64 {
        let u = z_m / self.travel_m;
        self.top + (self.bottom - self.top) * (u + self.late * (u * u - u + 1.0 / 6.0))
    }

    /// Slope of the motion ratio dr/dz, 1/m.
    pub fn slope_per_m(&self, z_m: f64) -> f64 {
        let u = z_m / self.travel_m;
        (self.bottom - self.top) * (1.0 + self.late * (2.0 * u - 1.0)) / self.travel_m
    }

    /// Shock stroke in m at axle travel `z_m`, the integral of the ratio.
    pub fn shock_stroke_m(&self, z_m: f64) -> f64 {
        let u = z_m / self.travel_m;
        let shape = u * u / 2.0 + self.late * (u * u * u / 3.0 - u * u / 2.0 + u / 6.0);
        self.travel_m * (self.top * u + (self.bottom - self.top) * shape)
    }
}
