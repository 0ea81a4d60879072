//! What this bike can have at all.

use super::Cause;
use crate::intake::{ForkKind, Intake, ShockKind};

/// Share of gas forks among off-road bikes of unknown fork (from memory).
const GAS_SHARE: f64 = 0.25;

/// Factor on the odds of a cause for this bike, 0 for one it cannot have. A kind of fork not known keeps both sets, each by
/// its share.
pub fn possible(intake: &Intake, cause: Cause) -> f64 {
    let gas = match intake.bike.fork {
        Some(ForkKind::GasOneLeg) => 1.0,
        Some(_) => 0.0,
        None => GAS_SHARE,
    };
    if cause.needs_gas() {
        gas
    } else if cause.needs_coil() {
        1.0 - gas
    } else if cause == Cause::LinkageDry && intake.bike.shock == Some(ShockKind::Linkless) {
        // Without a linkage only the swingarm bearings are left to run dry.
        0.5
    } else {
        1.0
    }
}
