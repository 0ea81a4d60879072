//! What a revalve has to change: force in percent at a low and a high speed, and what that is in shims.
//!
//! No rider knows what lies in a damper, so the shims are those of a typical stack as stiff as the one this bike's damping
//! asks for. The percentages hold whatever is inside; a workshop matches them with the shims it finds.

use core::f64::consts::PI;

use super::RemedyId;
use crate::bench::{Bench, Trial};
use crate::bike::damping::Damper;
use crate::bike::damping::damper::ClickedValve;
use crate::bike::damping::design::{CLAMP_SHARE, LOW_SPEED};
use crate::bike::damping::shims::{Shims, Stack, Swap};
use crate::cause::Cause;
use crate::feel::Ends;
use crate::units::{Length, metre};

/// Speed of the axle at which damping is compared beside [`LOW_SPEED`], m/s: a square edge (common practice).
pub const QUICK: f64 = 2.0;
/// Thicknesses of which the shims on the seat may be, m (common practice).
const THICKNESSES_M: [f64; 4] = [0.10e-3, 0.15e-3, 0.20e-3, 0.25e-3];
/// How many there usually are (common practice).
const USUAL_COUNT: f64 = 6.0;
/// By how much a stack can be changed in one go.
const AT_ONCE: (f64, f64) = (0.5, 2.0);

/// One valve of a damper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Valve {
    /// Base valve of the fork.
    ForkCompression,
    /// Rebound valve of the fork.
    ForkRebound,
    /// Compression of the shock.
    ShockCompression,
    /// Rebound of the shock.
    ShockRebound,
}

impl Valve {
    /// The valve that a cause puts down to its stack, and the remedy that changes it.
    pub const fn of(cause: Cause) -> Option<(Self, RemedyId)> {
        Some(match cause {
            Cause::ForkCompressionMuch | Cause::ForkCompressionLittle => {
                (Self::ForkCompression, RemedyId::RevalveFork)
            }
            Cause::ForkReboundSlow | Cause::ForkReboundFast => {
                (Self::ForkRebound, RemedyId::RevalveFork)
            }
            Cause::MidValve => (Self::ForkCompression, RemedyId::FloatMidValve),
            Cause::ShockCompressionMuch | Cause::ShockCompressionLittle => {
                (Self::ShockCompression, RemedyId::RevalveShock)
            }
            Cause::ShockReboundSlow | Cause::ShockReboundFast => {
                (Self::ShockRebound, RemedyId::RevalveShock)
            }
            _ => return None,
        })
    }

    const fn compresses(self) -> bool {
        matches!(self, Self::ForkCompression | Self::ShockCompression)
    }

    const fn fork(self) -> bool {
        matches!(self, Self::ForkCompression | Self::ForkRebound)
    }

    fn in_damper(self, damper: &Damper) -> &ClickedValve {
        if self.compresses() {
            &damper.base
        } else {
            &damper.rebound
        }
    }
}

/// What has to change in one valve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Restack {
    /// Which valve.
    pub valve: Valve,
    /// Change of force at an axle speed of [`LOW_SPEED`], relative.
    pub low: f64,
    /// Change of force at [`QUICK`], relative.
    pub quick: f64,
    /// The shims on the seat of a typical stack, and what to take out and put in; `None` where the shims stay as they are.
    pub shims: Option<(Shims, Swap)>,
}

/// From the bike `now` to the one that `suits`. `None` where a damper cannot be sized for either.
pub fn restack(bench: &Bench, valve: Valve, now: &Trial, suits: &Trial) -> Option<Restack> {
    let share = if valve.fork() {
        1.0
    } else {
        let rear_m = bench
            .baseline()
            .stance
            .as_ref()
            .ok()?
            .ridden
            .rear
            .middle
            .value;
        now.machine.leverage.ratio(rear_m)
    };
    let force = |trial: &Trial, speed: f64| -> Option<f64> {
        let laws = bench.laws(trial).ok()?;
        let law = at(valve, &laws);
        let shaft = speed * share;
        Some(if valve.compresses() {
            law.force_n(shaft, law.float_m)
        } else {
            -law.force_n(-shaft, 0.0)
        })
    };
    let change = |speed: f64| Some(force(suits, speed)? / force(now, speed)? - 1.0);
    let (then, wanted) = (bench.dampers(now).ok()?, bench.dampers(suits).ok()?);
    let valve_of = |dampers: &Ends<Damper>| *valve.in_damper(at(valve, dampers));
    Some(Restack {
        valve,
        low: change(LOW_SPEED)?,
        quick: change(QUICK)?,
        shims: swap(&valve_of(&then), &valve_of(&wanted)),
    })
}

fn at<T>(valve: Valve, ends: &Ends<T>) -> &T {
    if valve.fork() {
        &ends.front
    } else {
        &ends.rear
    }
}

/// The shims to change so that a typical stack as stiff as `now` becomes as stiff as `wanted`, as far as one change can.
fn swap(now: &ClickedValve, wanted: &ClickedValve) -> Option<(Shims, Swap)> {
    let radius = metre(now.shims.seat.edge_m / (2.0 * PI));
    let clamp = 2.0 * CLAMP_SHARE * radius;
    let typical = THICKNESSES_M
        .iter()
        .filter_map(|thickness| typical(now.shims.stack_n_per_m, metre(*thickness), radius))
        .min_by(|a, b| {
            let off = |shims: &Shims| (f64::from(shims.count) - USUAL_COUNT).abs();
            off(a).total_cmp(&off(b))
        })?;
    let ratio = wanted.shims.stack_n_per_m / now.shims.stack_n_per_m;
    let stack = Stack::new(vec![typical], clamp).ok()?;
    let swap = stack.swap_for(ratio.clamp(AT_ONCE.0, AT_ONCE.1)).ok()?;
    (swap.out > 0 || swap.put > 0).then_some((typical, swap))
}

/// So many shims of a thickness as are together nearest to a stiffness, 2 to 20; `None` for any other number.
fn typical(n_per_m: f64, thickness: Length, radius: Length) -> Option<Shims> {
    let some = |count| Shims {
        count,
        thickness,
        outer: 2.0 * radius,
    };
    let one = Stack::new(vec![some(1)], 2.0 * CLAMP_SHARE * radius)
        .ok()?
        .rate()
        .ok()?;
    let wanted = n_per_m / one.value;
    (2..=20_u8)
        .find(|count| (f64::from(*count) - wanted).abs() <= 0.5)
        .map(some)
}
