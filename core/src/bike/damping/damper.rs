//! A damper put together: valves, piston, rod, reservoir and oil.
//!
//! In compression the rod pushes its own volume through the base valve, and the piston passes the annulus through
//! the mid-valve: with the reservoir at `p_res`, the compression side stands at `p_res` + `Δp_base` and the rebound side at
//! `p_res` + `Δp_base` − `Δp_mid`, so the force is `p_res` `A_rod` + `Δp_base` `A_rod` + `Δp_mid` (`A_p` − `A_rod`). In rebound
//! oil comes back through a check and the force is `p_res` `A_rod` − `Δp_check` `A_rod` − `Δp_rebound` (`A_p` − `A_rod`).
//! The lower of the two pressures must stay above that at which oil boils and its air comes out.
//!
//! Not modelled: oil that the rebound needle lets past in compression (a check usually shuts that way), and the
//! springiness of oil and tubes.

use super::super::gas::Law;
use super::super::limits::{OutOfRange, within};
use super::law::DamperLaw;
use super::oil::{Fluid, Oil};
use super::orifice::{Needle, Passage};
use super::reservoir::Reservoir;
use super::valve::{Seat, ShimValve, Valve};
use crate::units::{Pressure, ThermodynamicTemperature, pascal};

/// Pressure at which damping oil boils when hot, Pa absolute (from memory: some tens of pascals).
const VAPOUR_PA: f64 = 100.0;
/// Margin above vapour pressure that a damper should keep, Pa (from memory: below it dissolved air comes out and the
/// damping goes slack at the next reversal).
pub const WANTED_MARGIN: Pressure = pascal(0.5e5);
/// Length of the land between the plate of a mid-valve and its seat, m (from memory).
const LAND_M: f64 = 0.5e-3;

/// How the plate of a mid-valve lies under its shims.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Plate {
    /// The shims can slide away from the seat before anything bends: they pass oil freely until they arrive at their
    /// stop, and leave the gap open from then on.
    Float {
        /// How far, m (practice: 0.1 to 0.5 mm).
        lift_m: f64,
    },
    /// The shims lie on the seat.
    Solid {
        /// What leaks past them.
        leak: Passage,
    },
}

/// The valve in the piston that works in compression.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MidValve {
    /// Its shims.
    pub shims: ShimValve,
    /// What lies between them and the seat.
    pub plate: Plate,
    /// Area of its ports, m².
    pub port_m2: f64,
}

impl MidValve {
    /// What is open once the plate has arrived.
    fn bleed(&self) -> Passage {
        match self.plate {
            Plate::Float { lift_m } => Passage::slot(self.shims.seat.edge_m, lift_m, LAND_M),
            Plate::Solid { leak } => leak,
        }
    }

    /// The float whose gap loses a pressure in Pa to a flow in m³/s, and what is then open.
    ///
    /// Turbulent and laminar part, a/h² + b/h³ = Δp, are a cubic in 1/h with one root: Newton's method from above
    /// goes down to it, each step at least twice as near; sixty reach the last bit.
    pub(super) fn floating(seat: Seat, flow: f64, drop_pa: f64, fluid: Fluid) -> (Plate, Passage) {
        let unit = Passage::slot(seat.edge_m, 1.0, LAND_M);
        let (square, cube) = (
            unit.turbulent(fluid) * flow * flow,
            unit.laminar(fluid) * flow,
        );
        // Either part alone gives a bound from above.
        let mut inverse = (drop_pa / square).sqrt().min(libm::cbrt(drop_pa / cube));
        for _ in 0..60 {
            let miss = (square + cube * inverse) * inverse * inverse - drop_pa;
            inverse -= miss / ((2.0 * square + 3.0 * cube * inverse) * inverse);
        }
        let lift_m = 1.0 / inverse;
        (
            Plate::Float { lift_m },
            Passage::slot(seat.edge_m, lift_m, LAND_M),
        )
    }

    /// Volume that carries the plate from seat to stop, m³.
    fn float_m3(&self) -> f64 {
        match self.plate {
            Plate::Float { lift_m } => lift_m * self.shims.seat.lifting_m2,
            Plate::Solid { .. } => 0.0,
        }
    }
}

/// A valve with a clicker beside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClickedValve {
    /// Its shims.
    pub shims: ShimValve,
    /// Its clicker.
    pub needle: Needle,
    /// Where the clicker stands, clicks from closed, 0 to 60.
    pub clicks: f64,
    /// Area of its ports, m².
    pub port_m2: f64,
}

impl ClickedValve {
    /// The valve with its clicker as it stands.
    pub(super) fn valve(&self) -> Valve {
        Valve {
            bleed: self.needle.at(self.clicks),
            shims: self.shims,
            port_m2: self.port_m2,
        }
    }
}

/// A damper, and how many alike damp one end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Damper {
    /// Area of the piston, m².
    pub piston_m2: f64,
    /// Area of the rod, m².
    pub rod_m2: f64,
    /// Base valve with the compression clicker.
    pub base: ClickedValve,
    /// Mid-valve.
    pub mid: MidValve,
    /// Piston valve with the rebound clicker.
    pub rebound: ClickedValve,
    /// Area of the check through which the rod's oil comes back, m².
    pub refill_m2: f64,
    /// What keeps it under pressure.
    pub reservoir: Reservoir,
    /// Its oil.
    pub oil: Oil,
    /// How many there are: two, or one that does all the work.
    pub count: u8,
    /// Speed of a hard hit, m/s.
    pub top_speed: f64,
}

impl Damper {
    /// What a ride computes with, at an oil temperature of −40 to 150 °C.
    pub fn law(&self, temperature: ThermodynamicTemperature) -> Result<DamperLaw, OutOfRange> {
        within("clicks of compression", self.base.clicks, 0.0, 60.0)?;
        within("clicks of rebound", self.rebound.clicks, 0.0, 60.0)?;
        within("dampers", f64::from(self.count), 1.0, 2.0)?;
        within(
            "rod over piston area",
            self.rod_m2 / self.piston_m2,
            0.02,
            0.9,
        )?;
        within("refill area in m2", self.refill_m2, 1e-6, 1e-2)?;
        let fluid = self.oil.at(temperature)?;
        let annulus_m2 = self.piston_m2 - self.rod_m2;
        let mid = Valve {
            bleed: self.mid.bleed(),
            shims: self.mid.shims,
            port_m2: self.mid.port_m2,
        };
        let float_m = self.mid.float_m3() / annulus_m2;
        let solid = float_m <= 0.0;
        let rod_cube = self.rod_m2 * self.rod_m2 * self.rod_m2;
        let refill = Passage {
            area_m2: self.refill_m2,
            laminar_per_m3: 0.0,
        };
        Ok(DamperLaw {
            base: self.base.valve().law(self.rod_m2, fluid, self.top_speed)?,
            mid: mid.law(annulus_m2, fluid, self.top_speed)?,
            rebound: self
                .rebound
                .valve()
                .law(annulus_m2, fluid, self.top_speed)?,
            refill: refill.turbulent(fluid) * rod_cube,
            float_m,
            per_float: if solid { 0.0 } else { 1.0 / float_m },
            solid: if solid { 1.0 } else { 0.0 },
            rod_m2: self.rod_m2,
            annulus_m2,
            dampers: f64::from(self.count),
        })
    }

    /// How far the lowest pressure inside stands above that at which the oil boils, at a stroke of the rod in m and
    /// a speed in m/s; below [`WANTED_MARGIN`] the damper begins to cavitate. `law` is this damper's, `float_m` the
    /// state of its mid-valve, `gas` how the reservoir came to the stroke.
    pub fn cavitation_margin(
        &self,
        law: &DamperLaw,
        stroke_m: f64,
        velocity: f64,
        float_m: f64,
        gas: Law,
    ) -> Pressure {
        let reservoir_pa = self.reservoir.pressure_pa(stroke_m, self.rod_m2, gas);
        pascal(reservoir_pa + law.lowest_over_reservoir_pa(velocity, float_m) - VAPOUR_PA)
    }
}
