//! What is wrong: causes, the evidence for and against each, and the belief that follows.
//!
//! The seam: anything that yields [`Observation`]s can feed a [`Belief`]. Today they come from hand tables
//! ([`signature`], [`said`], [`measured`]).

pub mod belief;
pub mod checks;
mod list;
pub mod measured;
pub mod said;
pub mod signature;

pub use belief::{Belief, Observation, PerCause};
pub use list::Cause;
