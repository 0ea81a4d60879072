//! Friction of seals, bushings and bearings: dry, so it holds until it slips.
//!
//! All figures are common practice from memory. They differ by a third between two sound bikes.

use super::limits::{OutOfRange, within};
use crate::units::{BAR_IN_PA, Force, newton};

/// Friction of one fresh fork leg without gas or side load, N (practice: 20 to 35).
const LEG_N: f64 = 25.0;
/// Seals of a gas spring press harder with pressure: N per Pa gauge (practice: about 4 N/bar).
const GAS_N_PER_PA: f64 = 4.0 / BAR_IN_PA;
/// Friction of the bushings for each newton they carry sideways, dimensionless (from memory).
const SIDE: f64 = 0.02;
/// Seal and bearings of a fresh shock and its linkage, taken together at the shaft, N (from memory).
const SHAFT_N: f64 = 80.0;
/// Hours without service after which the base friction has doubled (from memory).
const DOUBLING_H: f64 = 80.0;
/// Neglect stops mattering beyond this factor: the seals then leak rather than stick (from memory).
const MOST_NEGLECT: f64 = 3.0;
/// What thin oil and a slippery finish leave of the seal friction in a leg that does no damping (practice: 25 to
/// 40 % less). They lower the coefficient of friction, so what gas pressure adds shrinks alike: the gas seals are
/// in that leg.
const SLIPPERY: f64 = 0.68;

/// The state of the sliding parts of one end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wear {
    /// Hours since service.
    pub hours: f64,
    /// Extra friction of a twisted axle, clamps out of line or a tight bearing, along the part, N
    /// (practice: 40 to 150 when it is there).
    pub binding: Force,
    /// Thin oil and a slippery finish in a fork leg that does no damping. Means nothing at the rear.
    pub slippery: bool,
    /// Drag of the gas seals for each bar over that of usual ones, dimensionless: 1 when sound. Means nothing without gas.
    pub gas_seals: f64,
}

impl Wear {
    /// Just serviced, nothing amiss.
    pub const FRESH: Self = Self {
        hours: 0.0,
        binding: newton(0.0),
        slippery: false,
        gas_seals: 1.0,
    };

    /// Says which figure, if any, is out of range.
    pub fn check(&self) -> Result<(), OutOfRange> {
        within("hours since service", self.hours, 0.0, 3000.0)?;
        within("binding in N", self.binding.value, 0.0, 600.0)?;
        within("drag of the gas seals", self.gas_seals, 0.2, 5.0)
    }

    /// Factor on the base friction.
    fn neglect(&self) -> f64 {
        (1.0 + self.hours / DOUBLING_H).min(MOST_NEGLECT)
    }
}

/// Friction of a whole fork along the leg in N, for either direction.
///
/// `gauge_pa` is that of the gas spring, zero in a coil fork; `side_n` the load across the legs, both together;
/// `idle_leg` tells that one leg does no damping.
pub fn fork_n(wear: &Wear, gauge_pa: f64, side_n: f64, idle_leg: bool) -> f64 {
    let second = if wear.slippery && idle_leg {
        SLIPPERY
    } else {
        1.0
    };
    let base_n = LEG_N * wear.neglect() * (1.0 + second);
    let gas_n = second * wear.gas_seals * GAS_N_PER_PA * gauge_pa.max(0.0);
    base_n + gas_n + SIDE * side_n.abs() + wear.binding.value
}

/// Friction of shock and linkage at the shaft in N, for either direction.
pub fn shock_n(wear: &Wear) -> f64 {
    SHAFT_N * wear.neglect() + wear.binding.value
}
