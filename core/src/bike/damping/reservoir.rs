//! What keeps the oil under pressure and makes room for the rod.

use super::super::gas::{Column, Law};

/// A reservoir. Its pressure acts on the rod's area as preload does and keeps the oil from boiling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reservoir {
    /// A spring behind a piston, as in a twin-chamber fork leg.
    Spring {
        /// Gauge pressure at full extension, Pa (practice: 1.5 to 4 bar over the stroke).
        extended_pa: f64,
        /// Rise of pressure by the oil that the rod pushes aside, Pa/m³.
        rise_pa_per_m3: f64,
        /// Absolute pressure behind the piston, Pa.
        ambient_pa: f64,
    },
    /// Gas behind a piston or in a bladder, as in a shock.
    Gas {
        /// Its volume as a column of the rod's area.
        column: Column,
        /// Absolute pressure at full extension, Pa.
        extended_pa: f64,
    },
}

impl Reservoir {
    /// The same with this share, 0 to 1, of what its spring or gas adds to the surrounding air's pressure.
    #[must_use]
    pub fn holding(self, share: f64) -> Self {
        match self {
            Self::Spring {
                extended_pa,
                rise_pa_per_m3,
                ambient_pa,
            } => Self::Spring {
                extended_pa: share * extended_pa,
                rise_pa_per_m3: share * rise_pa_per_m3,
                ambient_pa,
            },
            Self::Gas {
                column,
                extended_pa,
            } => Self::Gas {
                column,
                extended_pa: share * extended_pa,
            },
        }
    }

    /// Absolute pressure in Pa at a stroke of the rod, m. `rod_m2` is the area of the rod; a quick stroke in `law`
    /// starts from a stroke of the rod. Springs are the same slow and quick.
    pub fn pressure_pa(&self, stroke_m: f64, rod_m2: f64, law: Law) -> f64 {
        match *self {
            Self::Spring {
                extended_pa,
                rise_pa_per_m3,
                ambient_pa,
            } => ambient_pa + extended_pa + rise_pa_per_m3 * rod_m2 * stroke_m,
            Self::Gas {
                column,
                extended_pa,
            } => column.pressure_pa(extended_pa, stroke_m, law),
        }
    }
}
