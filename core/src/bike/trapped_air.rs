//! Air shut in above the oil of a fork leg. It hardly matters at the top and much at the bottom of the stroke.

use super::atmosphere::{Surroundings, warmed_pa};
use super::gas::{Column, Law};

/// The air columns of both legs together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrappedAir {
    /// Both legs taken as one column.
    pub column: Column,
    /// Absolute pressure at full extension, Pa.
    pub extended_pa: f64,
    /// Absolute pressure outside, Pa.
    pub ambient_pa: f64,
}

impl TrappedAir {
    /// Air that was shut in at ambient pressure: where the bike rides if the legs were bled there, else where
    /// they were last opened, at the temperature it has now.
    pub fn shut_in(column: Column, surroundings: &Surroundings) -> Self {
        let Surroundings {
            filled,
            riding,
            bled,
        } = *surroundings;
        let extended_pa = if bled {
            riding.ambient.value
        } else {
            warmed_pa(filled.ambient.value, filled, riding)
        };
        Self {
            column,
            extended_pa,
            ambient_pa: riding.ambient.value,
        }
    }

    /// Force in N along the leg: F = A (p − `p_amb`).
    pub fn force_n(&self, stroke_m: f64, law: Law) -> f64 {
        let pressure_pa = self.column.pressure_pa(self.extended_pa, stroke_m, law);
        self.column.area_m2 * (pressure_pa - self.ambient_pa)
    }
}
