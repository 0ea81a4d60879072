//! The motion itself: at rest, with and without losses, linear and not, in one lane and in many.

mod bikes;
mod energy;
mod held;
mod lanes;
mod linear;
mod narrow;
#[allow(dead_code, reason = "the published checks use the rest")]
mod plain;
mod solver;
mod steps;
mod stranger;
