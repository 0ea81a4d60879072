//! A valve: a bleed that is always open, shims beside it, ports before both.

use super::super::limits::{OutOfRange, within};
use super::law::ValveLaw;
use super::oil::Fluid;
use super::orifice::{DISCHARGE, Passage};
use super::shims::{POISSON, Ring};

/// The seat under a stack of shims.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seat {
    /// Area on which pressure lifts the edge of the shims, m².
    pub lifting_m2: f64,
    /// Edge under which the oil comes out, m.
    pub edge_m: f64,
}

impl Seat {
    /// Seat of shims of an outer radius, clamped at a share of it, with ports under a share of the ring. The ports
    /// are taken to be spread as a pressure all over the ring would be.
    pub fn of(outer_m: f64, clamp_share: f64, ported: f64) -> Result<Self, OutOfRange> {
        within("share of the ring with ports under it", ported, 0.05, 1.0)?;
        let ring = Ring::new(clamp_share, POISSON)?;
        Ok(Self {
            lifting_m2: ported * ring.lifting_share() * outer_m * outer_m,
            edge_m: 2.0 * core::f64::consts::PI * outer_m,
        })
    }
}

/// A stack of shims on its seat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShimValve {
    /// Seat.
    pub seat: Seat,
    /// Rate of the stack at its edge, N/m.
    pub stack_n_per_m: f64,
    /// How far the stack is bent while it lies on the seat, m.
    pub dish_m: f64,
    /// Force of the high-speed adjuster's spring on the stack, N; zero where there is none.
    pub adjuster_n: f64,
}

impl ShimValve {
    /// Pressure at which the shims leave the seat, Pa.
    pub fn crack_pa(&self) -> f64 {
        (self.stack_n_per_m * self.dish_m + self.adjuster_n) / self.seat.lifting_m2
    }

    /// Flow past the shims, m³/s per Pa^1.5: Q = this (Δp − `Δp_crack`) √Δp. The lift is A (Δp − `Δp_crack`) / k,
    /// the gap under the edge an orifice.
    pub fn opening(&self, fluid: Fluid) -> f64 {
        let lift_m_per_pa = self.seat.lifting_m2 / self.stack_n_per_m;
        DISCHARGE * self.seat.edge_m * lift_m_per_pa * (2.0 / fluid.density_kg_per_m3).sqrt()
    }

    /// The stack that cracks at a pressure and opens as said by [`Self::opening`], without adjuster.
    pub fn opening_as(seat: Seat, crack_pa: f64, opening: f64, fluid: Fluid) -> Self {
        let stack_n_per_m =
            DISCHARGE * seat.edge_m * seat.lifting_m2 * (2.0 / fluid.density_kg_per_m3).sqrt()
                / opening;
        Self {
            seat,
            stack_n_per_m,
            dish_m: crack_pa * seat.lifting_m2 / stack_n_per_m,
            adjuster_n: 0.0,
        }
    }
}

/// A valve as it stands: what is open, what can open, and the ports to both.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Valve {
    /// What is open.
    pub bleed: Passage,
    /// What can open.
    pub shims: ShimValve,
    /// Area of the ports, m².
    pub port_m2: f64,
}

impl Valve {
    /// The valve in terms of force and speed of the area `guarded_m2` whose oil it lets through.
    ///
    /// `top_speed` in m/s is where the start of the solution is exact; it stays near enough to three times that.
    pub fn law(
        &self,
        guarded_m2: f64,
        fluid: Fluid,
        top_speed: f64,
    ) -> Result<ValveLaw, OutOfRange> {
        let a = guarded_m2;
        within("area that a valve guards in m2", a, 1e-5, 1e-2)?;
        within("bleed area in m2", self.bleed.area_m2, 1e-9, 1e-3)?;
        within("port area in m2", self.port_m2, 1e-6, 1e-2)?;
        within(
            "rate of the shims in N/m",
            self.shims.stack_n_per_m,
            1e3,
            1e9,
        )?;
        within("dish of the shims in m", self.shims.dish_m, 0.0, 2e-3)?;
        within(
            "force of the high-speed adjuster in N",
            self.shims.adjuster_n,
            0.0,
            5e3,
        )?;
        let turbulent = self.bleed.turbulent(fluid) * a * a * a;
        let laminar = self.bleed.laminar(fluid) * a * a;
        let bleed = turbulent.sqrt();
        let viscous = 0.5 * laminar / bleed;
        let beta = self.shims.opening(fluid) / (a * a * a.sqrt());
        let crack_square = self.shims.crack_pa() * a + viscous * viscous;
        let crack = crack_square.sqrt();
        let per_bleed = 1.0 / (bleed * beta);

        let speed_at = |x: f64| (x - viscous) / bleed + beta * x * (x * x - crack_square);
        let crack_speed = speed_at(crack);
        let slope = 1.0 / (1.0 / bleed + 2.0 * beta * crack_square);
        // The start runs through the crack with the right slope and through one point near the top speed.
        let rise = libm::cbrt(top_speed / beta);
        let width = speed_at(crack + rise) - crack_speed;
        // Above zero since X rises ever less with speed; shims too stiff to open leave next to nothing of it.
        let bend = (slope * width - rise).max(1e-6 * rise);
        let radius = 0.5 * rise * rise / bend;
        let start_slope = 2.0 * radius * slope;
        let port = Passage {
            area_m2: self.port_m2,
            laminar_per_m3: 0.0,
        };
        Ok(ValveLaw {
            viscous,
            bleed,
            crack_speed,
            start_offset: crack - radius,
            start_square: radius * radius - start_slope * crack_speed,
            start_slope,
            cubic_linear: per_bleed - crack_square,
            cubic_constant: viscous * per_bleed,
            cubic_slope: 1.0 / beta,
            port: port.turbulent(fluid) * a * a * a,
        })
    }
}
