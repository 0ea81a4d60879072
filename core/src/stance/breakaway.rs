//! What it takes to get a fork moving.

use super::error::StanceError;
use super::settle::settle;
use super::wanted::Case;
use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::units::{Force, newton};

/// Forces along the leg that start a fork, both legs together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Breakaway {
    /// Off its top-out: what the spring holds at full extension, and friction, N.
    pub off_top_out: Force,
    /// At ride height, beyond what already carries the bike: friction, N. Where the rider does not even lift the
    /// fork off its top-out, the rest of the spring's force is in it too.
    pub at_ride_height: Force,
}

/// Breakaway of the fork in `case`. For gas beside coil, ask once for each.
pub fn breakaway(case: &Case) -> Result<Breakaway, StanceError> {
    let stance = settle(case.machine, case.load, case.set_up, case.surroundings)?;
    let fork = Fork::build(case.machine, &case.set_up.fork, case.surroundings);
    let extended_n = fork.spring_n(0.0, Law::Slow);
    let ride_m = stance.ridden.fork.middle.value;
    let carried_n = fork.axial_n(stance.ridden.front_load.value);
    let left_n = (fork.force_n(ride_m, Law::Slow) - carried_n).max(0.0);
    Ok(Breakaway {
        off_top_out: newton(extended_n.max(0.0) + fork.friction_n(0.0, extended_n)),
        at_ride_height: newton(left_n + fork.friction_n(ride_m, carried_n)),
    })
}
