//! The test bench: bikes in any state, ridden over the rider's own ground.
//!
//! A [`Trial`] is a bike down to its oil; the [`Bench`] holds all that stays the same from trial to trial and rides many of
//! them in step over [`Ground`]s that are as hard as a healthy bike can take.

mod cast;
pub mod changes;
pub mod condition;
pub mod grounds;
mod still;
mod trials;

pub use cast::{Cast, Watch};
pub use condition::{Condition, MidValveShare};
pub use grounds::Ground;
pub use still::Still;
pub use trials::{Bench, Clicks, Outcome, Row, Trial, ride};
