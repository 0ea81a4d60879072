//! Oil through holes and gaps: the turbulent part goes with the square of flow, the laminar part with flow.

use super::oil::Fluid;
use core::f64::consts::PI;

/// Discharge coefficient of the short, slightly broken edges of valves, dimensionless. Sharp edges have
/// π/(π + 2) = 0.611 (von Mises, in Merritt, Hydraulic Control Systems); 0.6 to 0.7 is common practice.
pub const DISCHARGE: f64 = 0.7;

/// Flow through an orifice, m³/s: Q = Cd A √(2 Δp / ρ). All in SI and not negative.
pub fn orifice_m3_per_s(discharge: f64, area_m2: f64, drop_pa: f64, density_kg_per_m3: f64) -> f64 {
    discharge * area_m2 * (2.0 * drop_pa / density_kg_per_m3).sqrt()
}

/// A way for the oil that does not move: an orifice with a short length of laminar flow in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// Narrowest area, m².
    pub area_m2: f64,
    /// Laminar part by shape: Δp = μ `laminar_per_m3` Q.
    pub laminar_per_m3: f64,
}

impl Passage {
    /// A round hole of an area and a length: Hagen and Poiseuille, Δp = 128 μ l Q / (π d⁴) = 8 π μ l Q / A².
    pub fn hole(area_m2: f64, length_m: f64) -> Self {
        Self {
            area_m2,
            laminar_per_m3: 8.0 * PI * length_m / (area_m2 * area_m2),
        }
    }

    /// A slot, straight or closed to a ring: plane Poiseuille flow, Δp = 12 μ l Q / (w h³).
    pub fn slot(width_m: f64, height_m: f64, length_m: f64) -> Self {
        Self {
            area_m2: width_m * height_m,
            laminar_per_m3: 12.0 * length_m / (width_m * height_m * height_m * height_m),
        }
    }

    /// The round hole of a length over which a flow loses a pressure; both must be above zero.
    pub fn hole_for(flow_m3_per_s: f64, drop_pa: f64, length_m: f64, fluid: Fluid) -> Self {
        let turbulent =
            fluid.density_kg_per_m3 * flow_m3_per_s * flow_m3_per_s / (2.0 * DISCHARGE * DISCHARGE);
        let laminar = 8.0 * PI * fluid.viscosity_pa_s * length_m * flow_m3_per_s;
        Self::hole(((turbulent + laminar) / drop_pa).sqrt(), length_m)
    }

    /// Turbulent part, Pa s²/m⁶: Δp = ρ Q² / (2 Cd² A²).
    pub fn turbulent(&self, fluid: Fluid) -> f64 {
        let effective_m2 = DISCHARGE * self.area_m2;
        fluid.density_kg_per_m3 / (2.0 * effective_m2 * effective_m2)
    }

    /// Laminar part, Pa s/m³.
    pub fn laminar(&self, fluid: Fluid) -> f64 {
        fluid.viscosity_pa_s * self.laminar_per_m3
    }

    /// Pressure lost by a flow, Pa.
    pub fn drop_pa(&self, flow_m3_per_s: f64, fluid: Fluid) -> f64 {
        (self.turbulent(fluid) * flow_m3_per_s + self.laminar(fluid)) * flow_m3_per_s
    }
}

/// A needle that a clicker lifts from its seat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Needle {
    /// Area that one click adds, m².
    pub per_click_m2: f64,
    /// What leaks past with the clicker closed, in clicks.
    pub leak_clicks: f64,
    /// Length of the narrow part, m.
    pub length_m: f64,
}

impl Needle {
    /// The needle that is `hole` at this many clicks from closed.
    pub fn reaching(hole: Passage, clicks: f64, leak_clicks: f64, length_m: f64) -> Self {
        Self {
            per_click_m2: hole.area_m2 / (leak_clicks + clicks),
            leak_clicks,
            length_m,
        }
    }

    /// What is open at this many clicks from closed: A = (leak + n) times the area of a click.
    pub fn at(&self, clicks: f64) -> Passage {
        Passage::hole(
            (self.leak_clicks + clicks) * self.per_click_m2,
            self.length_m,
        )
    }
}
