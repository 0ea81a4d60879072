//! The two ends of the travel.

/// Share of the travel over which the bump stop works (common practice: the last tenth).
pub(crate) const BUMP_SHARE: f64 = 0.1;

/// Bump stop and top-out spring of one end, along the part that carries them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stops {
    /// Full stroke, m.
    pub stroke_m: f64,
    /// Force of the bump stop at full stroke, N. Common practice has it near three times the static load.
    pub bump_n: f64,
    /// Rate of the top-out spring, N/m. It acts beyond the full extension that sag is measured from.
    pub top_out_n_per_m: f64,
}

impl Stops {
    /// Force in N at a stroke: rises with the cube of the way into the bump stop (a foam's late rise),
    /// falls below zero past full extension, and is zero between.
    pub fn force_n(&self, stroke_m: f64) -> f64 {
        let bump_m = BUMP_SHARE * self.stroke_m;
        let into = (stroke_m - (self.stroke_m - bump_m)).max(0.0) / bump_m;
        self.bump_n * into * into * into + self.top_out_n_per_m * stroke_m.min(0.0)
    }
}
