//! Odds of each cause before anything is said: the table's, without what this bike cannot have.

use super::belief::PerCause;
use super::{Cause, signature};
use crate::intake::{ForkKind, Intake, ShockKind};

/// Share of gas forks among off-road bikes of unknown fork (from memory).
const GAS_SHARE: f64 = 0.25;

/// Prior odds for this bike, 0 for a cause it cannot have. A kind of fork not known keeps both sets, each by its share.
pub fn priors(intake: &Intake) -> PerCause {
    let fork = intake.bike.fork;
    let gas = match fork {
        Some(ForkKind::GasOneLeg) => 1.0,
        Some(_) => 0.0,
        None => GAS_SHARE,
    };
    let mut odds = [0.0; Cause::COUNT];
    for cause in Cause::ALL {
        let share = if cause.needs_gas() {
            gas
        } else if cause.needs_coil() {
            1.0 - gas
        } else {
            1.0
        };
        odds[cause.index()] = share * signature::of(*cause).prior;
    }
    if intake.bike.shock == Some(ShockKind::Linkless) {
        // Without a linkage only the swingarm bearings are left to run dry.
        odds[Cause::LinkageDry.index()] *= 0.5;
    }
    odds
}
