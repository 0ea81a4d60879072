//! The damper as a ride needs it: coefficients, and force from speed without a branch.
//!
//! A valve is written as force on the area it guards against speed of that area, both not negative. With
//! X = √(F + X₀²), where X₀ stands for the viscous part of the bleed, its two ways for the oil are
//!
//! - bleed: v = (X − X₀) / s, that of an orifice when X₀ = 0,
//! - shims above their crack: v = β X (F − `F_crack`), a gap that rises with force, passed as an orifice.
//!
//! Both together are a cubic in X without a square term. It is solved by a start that is exact at the crack and at
//! one high speed, then two steps of Halley's method: a fixed cost of one root and two divisions, the same for
//! every row of numbers, and within a part in 10⁸ up to 10 m/s at the axle (the checks of practice measure it). A linear law
//! for the shims would need no steps, but rises too steeply: with the low-speed damping of practice it gives twice
//! the force of practice at 3 m/s.

use crate::lane::Lane;

/// One valve in terms of force and speed of the area it guards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ValveLaw<L = f64> {
    /// X₀: viscous part of the bleed, √N.
    pub viscous: L,
    /// s: rise of X with speed while only the bleed is open, √N s/m.
    pub bleed: L,
    /// Speed at which the shims leave their seat, m/s.
    pub crack_speed: L,
    /// Constant of the start, √N.
    pub start_offset: L,
    /// Constant under the root of the start, N.
    pub start_square: L,
    /// Slope under the root of the start, N s/m.
    pub start_slope: L,
    /// Coefficient of X in the cubic, N.
    pub cubic_linear: L,
    /// Constant of the right side of the cubic, N^1.5.
    pub cubic_constant: L,
    /// 1/β: slope of the right side of the cubic, N^1.5 s/m.
    pub cubic_slope: L,
    /// What the ports before the shims add, whatever is open: N s²/m².
    pub port: L,
}

impl<L: Lane> ValveLaw<L> {
    /// Force in N on the area at a speed in m/s that is not negative.
    #[inline]
    pub fn force_n(&self, speed: L) -> L {
        let shut = self.viscous + self.bleed * speed;
        // Below the crack the cubic is asked at the crack, where it meets the bleed: the smaller X is then the bleed's.
        let above = speed.greater(self.crack_speed);
        let wanted = self.cubic_constant + self.cubic_slope * above;
        let start = self.start_offset + (self.start_square + self.start_slope * above).sqrt();
        let open = self.halley(self.halley(start, wanted), wanted);
        let x = shut.lesser(open);
        (x - self.viscous) * (x + self.viscous) + self.port * speed * speed
    }

    /// One step towards the root of x³ + p x = w.
    #[inline]
    fn halley(&self, x: L, wanted: L) -> L {
        let square = x * x;
        let miss = x * (square + self.cubic_linear) - wanted;
        let slope = square + square + square + self.cubic_linear;
        x - miss * slope / (slope * slope - (x + x + x) * miss)
    }

    /// This valve where the sign is above zero, the other elsewhere.
    #[inline]
    fn chosen(sign: L, yes: &Self, no: &Self) -> Self {
        Self::zip(yes, no, |yes, no| sign.if_above(L::splat(0.0), yes, no))
    }

    #[inline]
    fn zip(a: &Self, b: &Self, join: impl Fn(L, L) -> L) -> Self {
        Self {
            viscous: join(a.viscous, b.viscous),
            bleed: join(a.bleed, b.bleed),
            crack_speed: join(a.crack_speed, b.crack_speed),
            start_offset: join(a.start_offset, b.start_offset),
            start_square: join(a.start_square, b.start_square),
            start_slope: join(a.start_slope, b.start_slope),
            cubic_linear: join(a.cubic_linear, b.cubic_linear),
            cubic_constant: join(a.cubic_constant, b.cubic_constant),
            cubic_slope: join(a.cubic_slope, b.cubic_slope),
            port: join(a.port, b.port),
        }
    }

    /// A row of valves, one for each number of the row.
    pub fn row(valve: impl Fn(usize) -> ValveLaw) -> Self {
        Self {
            viscous: L::from_lanes(|i| valve(i).viscous),
            bleed: L::from_lanes(|i| valve(i).bleed),
            crack_speed: L::from_lanes(|i| valve(i).crack_speed),
            start_offset: L::from_lanes(|i| valve(i).start_offset),
            start_square: L::from_lanes(|i| valve(i).start_square),
            start_slope: L::from_lanes(|i| valve(i).start_slope),
            cubic_linear: L::from_lanes(|i| valve(i).cubic_linear),
            cubic_constant: L::from_lanes(|i| valve(i).cubic_constant),
            cubic_slope: L::from_lanes(|i| valve(i).cubic_slope),
            port: L::from_lanes(|i| valve(i).port),
        }
    }
}

/// All dampers of one end that are alike, together.
///
/// Speeds are along the leg or the shaft and positive in compression, and so are the forces: a force above zero
/// resists compression. The push of the reservoir on the rod is no part of it, since it acts at rest as well.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DamperLaw<L = f64> {
    /// Base valve in compression, on the area of the rod.
    pub base: ValveLaw<L>,
    /// Mid-valve in compression, on the annulus.
    pub mid: ValveLaw<L>,
    /// Piston valve in rebound, on the annulus.
    pub rebound: ValveLaw<L>,
    /// Check in the base valve through which the rod's oil comes back in rebound, on the area of the rod: N s²/m².
    pub refill: L,
    /// Stroke over which the plate of the mid-valve is carried from its seat to its stop, m. Zero when it has no float.
    pub float_m: L,
    /// Its reciprocal, 1/m; zero when there is no float.
    pub per_float: L,
    /// One when the mid-valve has no float, else zero.
    pub solid: L,
    /// Area of the rod of one damper, m².
    pub rod_m2: L,
    /// Area of the piston of one damper less its rod, m².
    pub annulus_m2: L,
    /// How many dampers there are: the legs that damp.
    pub dampers: L,
}

impl DamperLaw {
    /// This damper with a void inside that each stroke has to close first, m of stroke, 0 or more: until then the
    /// piston meets no oil, in either direction. It is what gas in the oil or a lost reservoir pressure leaves at every reversal.
    #[must_use]
    pub fn with_void(mut self, void_m: f64) -> Self {
        self.float_m += void_m.max(0.0);
        if self.float_m > 0.0 {
            self.per_float = 1.0 / self.float_m;
            self.solid = 0.0;
        }
        self
    }
}

impl<L: Lane> DamperLaw<L> {
    /// Force in N of all dampers at a speed in m/s. `float` is the state of the mid-valve's plate, see [`Self::float_after`].
    #[inline]
    pub fn force_n(&self, velocity: L, float: L) -> L {
        let (base_n, piston_n) = self.valves_n(velocity, float);
        let size_n = self.dampers * (base_n + piston_n);
        velocity.if_above(L::splat(0.0), size_n, -size_n)
    }

    /// Where the plate of the mid-valve stands after `step` seconds at a speed, m of stroke: zero on its seat, as
    /// rebound leaves it, [`Self::float_m`] on its stop. Starts at zero on a bike at rest.
    #[inline]
    #[must_use]
    pub fn float_after(&self, float: L, velocity: L, step: L) -> L {
        (float + velocity * step)
            .greater(L::splat(0.0))
            .lesser(self.float_m)
    }

    /// The lowest pressure inside, less that of the reservoir, Pa: behind the piston in compression
    /// (what the base valve adds less what the mid-valve takes), before it in rebound (what the refill takes).
    #[inline]
    pub fn lowest_over_reservoir_pa(&self, velocity: L, float: L) -> L {
        let (base_n, piston_n) = self.valves_n(velocity, float);
        let base_pa = base_n / self.rod_m2;
        velocity.if_above(
            L::splat(0.0),
            base_pa - piston_n / self.annulus_m2,
            -base_pa,
        )
    }

    /// Force on the rod's area and on the annulus of one damper, N, neither below zero.
    #[inline]
    fn valves_n(&self, velocity: L, float: L) -> (L, L) {
        let (zero, one) = (L::splat(0.0), L::splat(1.0));
        let (inwards, outwards) = (velocity.greater(zero), (-velocity).greater(zero));
        let base_n = self.base.force_n(inwards) + self.refill * outwards * outwards;
        // Oil passes the plate freely until it has arrived: at its stop in compression, back on its seat in rebound.
        let away = (float * self.per_float).lesser(one);
        let arrived = velocity
            .if_above(L::splat(0.0), away, one - away)
            .greater(self.solid);
        let piston = ValveLaw::chosen(velocity, &self.mid, &self.rebound);
        (base_n, arrived * piston.force_n(inwards + outwards))
    }

    /// A row of dampers, one for each number of the row.
    pub fn row(damper: impl Fn(usize) -> DamperLaw) -> Self {
        Self {
            base: ValveLaw::row(|i| damper(i).base),
            mid: ValveLaw::row(|i| damper(i).mid),
            rebound: ValveLaw::row(|i| damper(i).rebound),
            refill: L::from_lanes(|i| damper(i).refill),
            float_m: L::from_lanes(|i| damper(i).float_m),
            per_float: L::from_lanes(|i| damper(i).per_float),
            solid: L::from_lanes(|i| damper(i).solid),
            rod_m2: L::from_lanes(|i| damper(i).rod_m2),
            annulus_m2: L::from_lanes(|i| damper(i).annulus_m2),
            dampers: L::from_lanes(|i| damper(i).dampers),
        }
    }
}
