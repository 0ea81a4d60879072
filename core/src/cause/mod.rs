//! What is wrong: causes, the evidence for and against each, and the belief that follows.
//!
//! The seam: anything that yields [`Observation`]s can feed a [`Belief`]. Today they come from hand tables
//! ([`signature`], [`said`], [`measured`]).

pub mod belief;
pub mod checks;
mod list;
pub mod measured;
mod priors;
mod readings;
pub mod said;
pub mod signature;

pub use belief::{Belief, Observation, PerCause};
pub use list::Cause;
pub use priors::priors;
pub use readings::readings;

use crate::intake::Intake;

/// The belief over causes for an intake, given what the numbers in it say.
pub fn diagnose(intake: &Intake, readings: Vec<Observation>) -> Belief {
    let mut observations = said::observations(intake);
    observations.extend(measured::pushes(intake));
    observations.extend(readings);
    Belief::from(&priors(intake), observations)
}
