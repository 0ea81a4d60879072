//! Odds of each cause before anything is said: the table's, without what this bike cannot have.

use super::belief::PerCause;
use super::{Cause, signature};
use crate::intake::{ForkKind, Intake, ShockKind};

/// Prior odds for this bike, 0 for a cause it cannot have. A kind of fork not known keeps both sets.
pub fn priors(intake: &Intake) -> PerCause {
    let fork = intake.bike.fork;
    let gas_possible = fork.is_none_or(|kind| kind == ForkKind::GasOneLeg);
    let coil_possible = fork.is_none_or(|kind| kind != ForkKind::GasOneLeg);
    let mut odds = [0.0; Cause::COUNT];
    for cause in Cause::ALL {
        let possible =
            (gas_possible || !cause.needs_gas()) && (coil_possible || !cause.needs_coil());
        if possible {
            odds[cause.index()] = signature::of(*cause).prior;
        }
    }
    if intake.bike.shock == Some(ShockKind::Linkless) {
        // Without a linkage only the swingarm bearings are left to run dry.
        odds[Cause::LinkageDry.index()] *= 0.5;
    }
    odds
}
