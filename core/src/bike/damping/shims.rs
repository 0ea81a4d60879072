//! Stacks of shims: thin rings clamped at the bore that bend away from their seat.
//!
//! Stiffness goes with the number of shims and the cube of their thickness, so the workshop can make a stack stiffer
//! by a wanted share with shims it has in the drawer. Plate theory for small deflections (Roark's Formulas for Stress
//! and Strain, table 11.2, cases 1l and 2l: inner edge fixed, outer edge free); no friction between shims.

use super::super::limits::{OutOfRange, within};
use crate::units::{Length, SpringRate, newton_per_m};
use core::f64::consts::PI;

/// Young's modulus of spring steel strip, Pa (common practice).
const YOUNG_PA: f64 = 206e9;
/// Poisson's ratio of steel, dimensionless.
pub const POISSON: f64 = 0.3;
/// Thicknesses in which shims are sold, m (common practice).
const SOLD_M: [f64; 5] = [0.10e-3, 0.15e-3, 0.20e-3, 0.25e-3, 0.30e-3];
/// Most shims that a swap puts in.
const MOST_ADDED: u8 = 6;
/// How near a swap must come, relative, for fewer parts to matter more than coming nearer.
const NEAR_ENOUGH: f64 = 0.02;

/// A ring fixed at its inner edge and free at its outer one, by the ratio of its radii, 0.05 to 0.95.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    inner: f64,
    poisson: f64,
}

impl Ring {
    /// A ring whose inner radius is this share of the outer.
    pub fn new(inner_over_outer: f64, poisson: f64) -> Result<Self, OutOfRange> {
        within("inner over outer radius", inner_over_outer, 0.05, 0.95)?;
        within("Poisson's ratio", poisson, 0.0, 0.5)?;
        Ok(Self {
            inner: inner_over_outer,
            poisson,
        })
    }

    /// Downward deflection at a radius for a line load w along the outer edge, as a share of w a³ / D.
    /// The radius is a share of the outer radius a, from the inner edge to 1.
    pub fn bend_by_edge(&self, radius: f64) -> f64 {
        let b = self.inner;
        let moment = -self.shear_moment(1.0) / (b * self.moment_moment(1.0));
        let cube = radius * radius * radius;
        -(moment * radius * radius * self.moment_bend(radius) + cube / b * self.shear_bend(radius))
    }

    /// Downward deflection of the outer edge for a pressure q all over, as a share of q a⁴ / D.
    pub fn bend_by_pressure(&self) -> f64 {
        let b = self.inner;
        let b2 = b * b;
        let log = libm::log(1.0 / b);
        let tip = 0.25
            * (1.0
                - 0.25 * (1.0 - self.poisson) * (1.0 - b2 * b2)
                - b2 * (1.0 + (1.0 + self.poisson) * log));
        let load = (1.0 + 4.0 * b2 - 5.0 * b2 * b2 - 4.0 * b2 * (2.0 + b2) * log) / 64.0;
        let shear = (1.0 - b2) / (2.0 * b);
        let moment = -(shear * self.shear_moment(1.0) - tip) / self.moment_moment(1.0);
        load - moment * self.moment_bend(1.0) - shear * self.shear_bend(1.0)
    }

    /// Area on which a pressure lifts the outer edge as far as its force along that edge would, as a share of a².
    pub fn lifting_share(&self) -> f64 {
        2.0 * PI * self.bend_by_pressure() / self.bend_by_edge(1.0)
    }

    /// Roark's F2 at a radius: deflection by a moment at the inner edge.
    fn moment_bend(&self, radius: f64) -> f64 {
        let ratio = self.inner / radius;
        0.25 * (1.0 - ratio * ratio * (1.0 - 2.0 * libm::log(ratio)))
    }

    /// Roark's F3: deflection by a shear force at the inner edge.
    fn shear_bend(&self, radius: f64) -> f64 {
        let ratio = self.inner / radius;
        let square = ratio * ratio;
        0.25 * ratio * (square - 1.0 - (square + 1.0) * libm::log(ratio))
    }

    /// Roark's F8: radial moment by a moment at the inner edge.
    fn moment_moment(&self, radius: f64) -> f64 {
        let ratio = self.inner / radius;
        0.5 * (1.0 + self.poisson + (1.0 - self.poisson) * ratio * ratio)
    }

    /// Roark's F9: radial moment by a shear force at the inner edge.
    fn shear_moment(&self, radius: f64) -> f64 {
        let ratio = self.inner / radius;
        let bent = 0.25 * (1.0 - self.poisson) * (1.0 - ratio * ratio);
        ratio * (bent - 0.5 * (1.0 + self.poisson) * libm::log(ratio))
    }
}

/// Some shims that are alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shims {
    /// How many.
    pub count: u8,
    /// Thickness of each, m.
    pub thickness: Length,
    /// Outer diameter, m.
    pub outer: Length,
}

/// Shims from the seat upwards, clamped together.
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    shims: Vec<Shims>,
    clamp_m: f64,
}

/// What to change so that a stack is stiffer or softer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swap {
    /// Shims on the seat to take out.
    pub out: u8,
    /// Shims of the same diameter to put in.
    pub put: u8,
    /// Thickness of those, m.
    pub thickness: Length,
    /// Stiffness after over stiffness before.
    pub reached: f64,
}

impl Stack {
    /// A stack with the clamp's diameter. The first shims lie on the seat and none may be larger or as small as the clamp.
    /// Thickness 0.05 to 0.5 mm, diameters 6 to 60 mm.
    pub fn new(shims: Vec<Shims>, clamp: Length) -> Result<Self, OutOfRange> {
        let clamp_m = clamp.value;
        within("diameter of the clamp in m", clamp_m, 3e-3, 40e-3)?;
        within("kinds of shims in the stack", small(shims.len()), 1.0, 40.0)?;
        let largest_m = shims.first().map_or(0.0, |first| first.outer.value);
        within(
            "diameter of the shims on the seat in m",
            largest_m,
            6e-3,
            60e-3,
        )?;
        for some in &shims {
            let outer_m = some.outer.value;
            within("shims of a kind", f64::from(some.count), 1.0, 60.0)?;
            within("shim thickness in m", some.thickness.value, 0.05e-3, 0.5e-3)?;
            within(
                "shim diameter in m",
                outer_m,
                clamp_m / 0.95,
                largest_m.min(clamp_m / 0.05),
            )?;
        }
        Ok(Self { shims, clamp_m })
    }

    /// Force along the edge of the shims on the seat for their deflection there.
    ///
    /// Shims of that diameter add up. A smaller one is bent by what lies under it: it counts with the square of
    /// the share that the large shim's deflection has at its edge (Rayleigh's method with the shape of the large shim).
    pub fn rate(&self) -> Result<SpringRate, OutOfRange> {
        let mut sum = 0.0;
        for some in &self.shims {
            sum += self.part_n_per_m(some)?;
        }
        Ok(newton_per_m(sum))
    }

    /// Largest diameter, m.
    fn face_m(&self) -> f64 {
        self.shims.first().map_or(0.0, |first| first.outer.value)
    }

    fn part_n_per_m(&self, some: &Shims) -> Result<f64, OutOfRange> {
        let (face_m, outer_m) = (self.face_m(), some.outer.value);
        let own = disc_n_per_m(some.thickness.value, 0.5 * outer_m, 0.5 * self.clamp_m)?;
        let face = Ring::new(self.clamp_m / face_m, POISSON)?;
        let share = face.bend_by_edge(outer_m / face_m) / face.bend_by_edge(1.0);
        Ok(f64::from(some.count) * own * share * share)
    }

    /// The change to the shims on the seat that comes nearest to making the stack this many times as stiff (0.5 to 2):
    /// some of them out, others of the same diameter in. Of all that come within 2 % the one that moves the fewest shims.
    pub fn swap_for(&self, ratio: f64) -> Result<Swap, OutOfRange> {
        within("wanted stiffness over stiffness now", ratio, 0.5, 2.0)?;
        let before = self.rate()?.value;
        let Some(face) = self.shims.first() else {
            return Ok(Swap {
                out: 0,
                put: 0,
                thickness: Length::default(),
                reached: 1.0,
            });
        };
        let one = self.part_n_per_m(&Shims { count: 1, ..*face })?;
        let mut best = Swap {
            out: 0,
            put: 0,
            thickness: face.thickness,
            reached: 1.0,
        };
        // At least one shim must stay on the seat or come in.
        for out in 0..=face.count {
            for thickness_m in SOLD_M {
                let relative = thickness_m / face.thickness.value;
                let new = one * relative * relative * relative;
                for put in 0..=MOST_ADDED {
                    if out == face.count && put == 0 {
                        continue;
                    }
                    let change = f64::from(put) * new - f64::from(out) * one;
                    let next = Swap {
                        out,
                        put,
                        thickness: crate::units::metre(thickness_m),
                        reached: 1.0 + change / before,
                    };
                    if next.better_than(&best, ratio) {
                        best = next;
                    }
                }
            }
        }
        Ok(best)
    }
}

impl Swap {
    fn better_than(&self, other: &Self, ratio: f64) -> bool {
        let miss = |swap: &Self| ((swap.reached / ratio - 1.0).abs() - NEAR_ENOUGH).max(0.0);
        let parts = |swap: &Self| u16::from(swap.out) + u16::from(swap.put);
        let (mine, theirs) = (miss(self), miss(other));
        mine < theirs || (mine <= theirs && parts(self) < parts(other))
    }
}

/// A count as a number to check; beyond what a stack can hold all counts are alike.
fn small(count: usize) -> f64 {
    f64::from(u16::try_from(count).unwrap_or(u16::MAX))
}

/// Rate of one shim for a force along its outer edge, N/m: k = 2 π a D / (K a³), D = E t³ / (12 (1 − ν²)).
fn disc_n_per_m(thickness_m: f64, outer_m: f64, inner_m: f64) -> Result<f64, OutOfRange> {
    let ring = Ring::new(inner_m / outer_m, POISSON)?;
    let cube = thickness_m * thickness_m * thickness_m;
    let plate_n_m = YOUNG_PA * cube / (12.0 * (1.0 - POISSON * POISSON));
    Ok(2.0 * PI * plate_n_m / (ring.bend_by_edge(1.0) * outer_m * outer_m))
}
