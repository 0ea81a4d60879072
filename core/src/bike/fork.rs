//! The fork put together: spring, trapped air, stops and friction, along the leg and at the axle.

use super::atmosphere::{Surroundings, warmed_pa};
use super::class::Class;
use super::coil::Coil;
use super::friction::{self, Wear};
use super::gas::{Column, GasSpring, Law, QUICK_EXPONENT, SLOW_EXPONENT};
use super::machine::Machine;
use super::setup::{ForkSet, ForkSpring};
use super::stops::Stops;
use super::trapped_air::TrappedAir;
use crate::intake::ForkKind;

/// Force of the bump stop at full stroke, both legs, N (from memory).
const BUMP_N: f64 = 2000.0;
/// Rate of the top-out springs, both legs, N/m (from memory).
const TOP_OUT_N_PER_M: f64 = 30e3;

/// The spring of a fork, ready to compute with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spring {
    /// All coil springs together.
    Coil(Coil),
    /// A gas leg.
    Gas {
        /// The chambers.
        spring: GasSpring,
        /// Absolute pressure at full extension, where and as warm as the bike rides, Pa.
        charge_pa: f64,
    },
}

/// A fork in its surroundings, both legs together, in SI. Forces and strokes are along the leg unless said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fork {
    /// What holds it up.
    pub spring: Spring,
    /// Air over the oil of both legs.
    pub air: TrappedAir,
    /// Ends of the stroke.
    pub stops: Stops,
    /// State of the sliding parts.
    pub wear: Wear,
    /// One leg has no damper.
    pub idle_leg: bool,
    /// Cosine of the rake.
    pub cos_rake: f64,
    /// Sine of the rake.
    pub sin_rake: f64,
}

impl Fork {
    /// Puts a fork together.
    ///
    /// A gas fork's damper leg and the outside of its gas leg hold trapped air as a coil fork does.
    pub fn build(machine: &Machine, set: &ForkSet, surroundings: &Surroundings) -> Self {
        let stroke_m = machine.fork_stroke.value;
        let spring = match set.spring {
            ForkSpring::Coil {
                rate,
                springs,
                preload,
            } => Spring::Coil(Coil {
                rate_n_per_m: rate.value * f64::from(springs),
                preload_m: preload.value,
            }),
            ForkSpring::Gas { charge } => {
                let Surroundings { filled, riding, .. } = *surroundings;
                let filled_pa = charge.value + filled.ambient.value;
                Spring::Gas {
                    spring: machine.gas,
                    charge_pa: warmed_pa(filled_pa, filled, riding),
                }
            }
        };
        let column = Column {
            area_m2: Class::TRAPPED_AREA.value,
            length_m: stroke_m + set.air_gap.value,
            slow_exponent: SLOW_EXPONENT,
            quick_exponent: QUICK_EXPONENT,
        };
        let rake_rad = machine.class.rake.value;
        Self {
            spring,
            air: TrappedAir::shut_in(column, surroundings),
            stops: Stops {
                stroke_m,
                bump_n: BUMP_N,
                top_out_n_per_m: TOP_OUT_N_PER_M,
            },
            wear: set.wear,
            idle_leg: machine.fork != ForkKind::CoilBothLegs,
            cos_rake: libm::cos(rake_rad),
            sin_rake: libm::sin(rake_rad),
        }
    }

    /// Force of spring and air without stops, N. Rises with stroke.
    pub fn spring_n(&self, stroke_m: f64, law: Law) -> f64 {
        let spring_n = match &self.spring {
            Spring::Coil(coil) => coil.force_n(stroke_m),
            Spring::Gas { spring, charge_pa } => {
                spring.force_n(*charge_pa, self.air.ambient_pa, stroke_m, law)
            }
        };
        spring_n + self.air.force_n(stroke_m, law)
    }

    /// Force of spring, air and stops, N.
    pub fn force_n(&self, stroke_m: f64, law: Law) -> f64 {
        self.spring_n(stroke_m, law) + self.stops.force_n(stroke_m)
    }

    /// Friction against either direction, N, while the leg holds `axial_n`. The tyre's load stands upright, so the
    /// part of it across the leg, `axial_n` tan(rake), presses on the bushings.
    pub fn friction_n(&self, stroke_m: f64, axial_n: f64) -> f64 {
        let gauge_pa = match &self.spring {
            Spring::Coil(_) => 0.0,
            Spring::Gas { spring, charge_pa } => {
                spring.main.pressure_pa(*charge_pa, stroke_m, Law::Slow) - self.air.ambient_pa
            }
        };
        let side_n = axial_n * self.sin_rake / self.cos_rake;
        friction::fork_n(&self.wear, gauge_pa, side_n, self.idle_leg)
    }

    /// Load along the leg that a vertical load at the axle makes, N: the wheel is free to roll, so no force holds
    /// it back and only the part along the leg is carried by the spring.
    pub fn axial_n(&self, vertical_n: f64) -> f64 {
        vertical_n * self.cos_rake
    }

    /// Vertical drop of the bike at the axle for a stroke along the leg, m.
    pub fn drop_m(&self, stroke_m: f64) -> f64 {
        stroke_m * self.cos_rake
    }
}
