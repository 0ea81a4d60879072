//! The shock put together: spring, reservoir gas, stops and friction, at its shaft and at the axle.

use super::atmosphere::{Surroundings, warmed_pa};
use super::coil::Coil;
use super::friction::{self, Wear};
use super::gas::{Column, Law, QUICK_EXPONENT, SLOW_EXPONENT};
use super::leverage::Leverage;
use super::machine::Machine;
use super::setup::ShockSet;
use super::stops::Stops;

/// Gas of the reservoir at full extension, m³ (from memory: a finger's length of a 45 mm bore).
const RESERVOIR_M3: f64 = 130e-6;
/// Force of the bump stop at full stroke at the shaft, N (from memory).
const BUMP_N: f64 = 5000.0;
/// Rate of the top-out spring at the shaft, N/m (from memory).
const TOP_OUT_N_PER_M: f64 = 200e3;

/// A shock in its surroundings, in SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shock {
    /// Its spring.
    pub coil: Coil,
    /// Reservoir gas as a column of the shaft's area: what the shaft pushes aside, the gas gives way to.
    pub reservoir: Column,
    /// Absolute pressure of that gas at full extension, where and as warm as the bike rides, Pa.
    pub reservoir_pa: f64,
    /// Absolute pressure outside, Pa.
    pub ambient_pa: f64,
    /// Leverage.
    pub leverage: Leverage,
    /// Ends of the stroke, at the shaft.
    pub stops: Stops,
    /// State of the sliding parts.
    pub wear: Wear,
}

impl Shock {
    /// Puts a shock together.
    pub fn build(machine: &Machine, set: &ShockSet, surroundings: &Surroundings) -> Self {
        let Surroundings { filled, riding, .. } = *surroundings;
        let leverage = machine.leverage;
        let shaft_m = machine.class.shaft.value;
        let area_m2 = core::f64::consts::PI / 4.0 * shaft_m * shaft_m;
        Self {
            coil: Coil {
                rate_n_per_m: set.rate.value,
                preload_m: set.preload.value,
            },
            reservoir: Column {
                area_m2,
                length_m: RESERVOIR_M3 / area_m2,
                slow_exponent: SLOW_EXPONENT,
                quick_exponent: QUICK_EXPONENT,
            },
            reservoir_pa: warmed_pa(set.reservoir.value + filled.ambient.value, filled, riding),
            ambient_pa: riding.ambient.value,
            leverage,
            stops: Stops {
                stroke_m: leverage.shock_stroke_m(leverage.travel_m),
                bump_n: BUMP_N,
                top_out_n_per_m: TOP_OUT_N_PER_M,
            },
            wear: set.wear,
        }
    }

    /// Force of the reservoir gas on the shaft at a shock stroke, N. It pushes the shaft out as preload does.
    /// A quick stroke in `law` starts from a shock stroke.
    pub fn gas_n(&self, x_m: f64, law: Law) -> f64 {
        let pressure_pa = self.reservoir.pressure_pa(self.reservoir_pa, x_m, law);
        self.reservoir.area_m2 * (pressure_pa - self.ambient_pa)
    }

    /// Upward force at the axle in N at axle travel `z_m`: r(z) times the force at the shaft. A quick stroke in `law`
    /// starts from an axle travel.
    pub fn wheel_n(&self, z_m: f64, law: Law) -> f64 {
        let x_m = self.leverage.shock_stroke_m(z_m);
        let at_shaft = match law {
            Law::Slow => Law::Slow,
            Law::Quick { from_m } => Law::Quick {
                from_m: self.leverage.shock_stroke_m(from_m),
            },
        };
        let shaft_n = self.coil.force_n(x_m) + self.gas_n(x_m, at_shaft) + self.stops.force_n(x_m);
        self.leverage.ratio(z_m) * shaft_n
    }

    /// Friction against either direction at the axle, N.
    pub fn friction_n(&self, z_m: f64) -> f64 {
        self.leverage.ratio(z_m) * friction::shock_n(&self.wear)
    }
}
