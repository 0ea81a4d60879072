//! Free sag and rider sag of a set-up: heave and pitch balanced at once.

use super::error::StanceError;
use super::loads::{Load, Weights};
use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::bike::shock::Shock;
use crate::bike::{Machine, SetUp, Surroundings};
use crate::intake::End;
use crate::solve::{NoRoot, root};
use crate::units::{Angle, Band, Force, Length, SpringRate, metre, newton, newton_per_m, radian};

/// Tolerance on travel, m: far below what anyone measures, far above rounding.
const TRAVEL_TOLERANCE_M: f64 = 1e-10;
/// Tolerance on pitch, rad.
const PITCH_TOLERANCE_RAD: f64 = 1e-10;
/// More pitch than any travel over any wheelbase could give, rad.
const MOST_PITCH_RAD: f64 = 0.5;
/// Half the stroke over which local rates are taken, m.
const RATE_STEP_M: f64 = 1e-4;

/// What is taken of the other end when one end is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pitch {
    /// Nothing: weight stays shared as on the level bike. Quick to reason with, a few percent off.
    Level,
    /// It sits at this sag: along the leg for the fork, vertical for the rear. For setting both ends to target.
    OtherAt(Length),
    /// It finds its own place with what is fitted there.
    OtherAsSet,
}

/// A balanced bike with or without rider.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rest {
    /// Sag of the fork along the leg, m.
    pub fork: Band<Length>,
    /// Vertical sag of the rear axle, m.
    pub rear: Band<Length>,
    /// Nose-up pitch against the fully extended bike, rad.
    pub pitch: Angle,
    /// Vertical load on the front springs, N.
    pub front_load: Force,
    /// Vertical load on the rear springs, N.
    pub rear_load: Force,
}

/// Where a set-up sits.
///
/// The bands are of friction alone: pushed down and let up slowly the bike stops at the high end, lifted and let
/// down slowly at the low end; the middle is where it would rest without friction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stance {
    /// The bike alone.
    pub free: Rest,
    /// With its rider.
    pub ridden: Rest,
    /// Vertical rate at the front axle for quick strokes about ride height, N/m.
    pub front_wheel_rate: SpringRate,
    /// Vertical rate at the rear axle for quick strokes about ride height, N/m.
    pub rear_wheel_rate: SpringRate,
}

/// Free sag and rider sag of a set-up, coupled in pitch.
pub fn settle(
    machine: &Machine,
    load: &Load,
    set_up: &SetUp,
    surroundings: &Surroundings,
) -> Result<Stance, StanceError> {
    settle_as(machine, load, set_up, surroundings, true)
}

/// As [`settle`], each end on its own with the weight shared as on the level bike.
pub fn settle_level(
    machine: &Machine,
    load: &Load,
    set_up: &SetUp,
    surroundings: &Surroundings,
) -> Result<Stance, StanceError> {
    settle_as(machine, load, set_up, surroundings, false)
}

fn settle_as(
    machine: &Machine,
    load: &Load,
    set_up: &SetUp,
    surroundings: &Surroundings,
    coupled: bool,
) -> Result<Stance, StanceError> {
    check(machine, load, set_up)?;
    let ends = Ends::build(machine, set_up, surroundings);
    let rest = |ridden| ends.rest(&Weights::of(machine, load, ridden), coupled);
    let (free, ridden) = (rest(false)?, rest(true)?);
    Ok(Stance {
        free,
        ridden,
        front_wheel_rate: newton_per_m(ends.fork_rate_n_per_m(ridden.fork.middle.value)),
        rear_wheel_rate: newton_per_m(ends.rear_rate_n_per_m(ridden.rear.middle.value)),
    })
}

/// Says which figure, if any, is out of range.
pub(super) fn check(machine: &Machine, load: &Load, set_up: &SetUp) -> Result<(), StanceError> {
    machine.check()?;
    load.check()?;
    set_up.check()?;
    Ok(())
}

/// Both ends put together.
pub(super) struct Ends {
    pub(super) fork: Fork,
    pub(super) shock: Shock,
    pub(super) wheelbase_m: f64,
}

impl Ends {
    pub(super) fn build(machine: &Machine, set_up: &SetUp, surroundings: &Surroundings) -> Self {
        Self {
            fork: Fork::build(machine, &set_up.fork, surroundings),
            shock: Shock::build(machine, &set_up.shock, surroundings),
            wheelbase_m: machine.class.wheelbase.value,
        }
    }

    fn rest(&self, weights: &Weights, coupled: bool) -> Result<Rest, StanceError> {
        let pitch_rad = if coupled {
            self.pitch_rad(
                |pitch| self.fork_stroke_m(weights.front_n(pitch)),
                |pitch| self.rear_travel_m(weights.rear_n(pitch)),
            )?
        } else {
            0.0
        };
        let (front_n, rear_n) = (weights.front_n(pitch_rad), weights.rear_n(pitch_rad));
        self.must_hold(front_n, rear_n)?;
        let fork_m = self.fork_stroke_m(front_n)?;
        let rear_m = self.rear_travel_m(rear_n)?;
        let fork_friction_n =
            self.fork.friction_n(fork_m, self.fork.axial_n(front_n)) / self.fork.cos_rake;
        let rear_friction_n = self.shock.friction_n(rear_m);
        Ok(Rest {
            fork: Band {
                low: metre(self.fork_stroke_m(front_n - fork_friction_n)?),
                middle: metre(fork_m),
                high: metre(self.fork_stroke_m(front_n + fork_friction_n)?),
            },
            rear: Band {
                low: metre(self.rear_travel_m(rear_n - rear_friction_n)?),
                middle: metre(rear_m),
                high: metre(self.rear_travel_m(rear_n + rear_friction_n)?),
            },
            pitch: radian(pitch_rad),
            front_load: newton(front_n),
            rear_load: newton(rear_n),
        })
    }

    /// The pitch at which both ends, each placed by the pitch itself, agree with it.
    ///
    /// The limits lie beyond any travel, so there is always an answer. It is the only one for springs that hold a bike
    /// up, since the load that a pitch shifts then moves the ends some seven times less than the pitch itself does.
    pub(super) fn pitch_rad(
        &self,
        fork_m: impl Fn(f64) -> Result<f64, StanceError>,
        rear_m: impl Fn(f64) -> Result<f64, StanceError>,
    ) -> Result<f64, StanceError> {
        let mut failure = None;
        let found = root(
            |pitch| match (fork_m(pitch), rear_m(pitch)) {
                (Ok(fork_m), Ok(rear_m)) => {
                    (rear_m - self.fork.drop_m(fork_m)) / self.wheelbase_m - pitch
                }
                (Err(problem), _) | (_, Err(problem)) => {
                    failure = Some(problem);
                    f64::NAN
                }
            },
            -MOST_PITCH_RAD,
            MOST_PITCH_RAD,
            PITCH_TOLERANCE_RAD,
        );
        found.map_err(|problem| failure.unwrap_or(StanceError::Search(problem)))
    }

    /// Stroke along the leg at which the fork holds a vertical load, between full extension and full stroke.
    pub(super) fn fork_stroke_m(&self, vertical_n: f64) -> Result<f64, StanceError> {
        let axial_n = self.fork.axial_n(vertical_n);
        balance(
            |s| self.fork.force_n(s, Law::Slow) - axial_n,
            self.fork.stops.stroke_m,
        )
    }

    /// Axle travel at which the rear holds a vertical load, between full extension and full travel.
    pub(super) fn rear_travel_m(&self, vertical_n: f64) -> Result<f64, StanceError> {
        balance(
            |z| self.shock.wheel_n(z, Law::Slow) - vertical_n,
            self.shock.leverage.travel_m,
        )
    }

    fn must_hold(&self, front_n: f64, rear_n: f64) -> Result<(), StanceError> {
        let fork_most_n =
            self.fork.force_n(self.fork.stops.stroke_m, Law::Slow) / self.fork.cos_rake;
        let rear_most_n = self.shock.wheel_n(self.shock.leverage.travel_m, Law::Slow);
        for (end, load_n, most_n) in [
            (End::Front, front_n, fork_most_n),
            (End::Rear, rear_n, rear_most_n),
        ] {
            if load_n > most_n {
                return Err(StanceError::Bottoms {
                    end,
                    load: newton(load_n),
                    most: newton(most_n),
                });
            }
        }
        Ok(())
    }

    /// Vertical rate at the front axle: rate along the leg over the square of the cosine of the rake.
    pub(super) fn fork_rate_n_per_m(&self, stroke_m: f64) -> f64 {
        let quick = Law::Quick { from_m: stroke_m };
        let axial = slope(|s| self.fork.force_n(s, quick), stroke_m);
        axial / (self.fork.cos_rake * self.fork.cos_rake)
    }

    /// Vertical rate at the rear axle: r² k + F dr/dz, taken as the slope of the wheel force.
    pub(super) fn rear_rate_n_per_m(&self, travel_m: f64) -> f64 {
        let quick = Law::Quick { from_m: travel_m };
        slope(|z| self.shock.wheel_n(z, quick), travel_m)
    }
}

fn slope(force_n: impl Fn(f64) -> f64, at_m: f64) -> f64 {
    (force_n(at_m + RATE_STEP_M) - force_n(at_m - RATE_STEP_M)) / (2.0 * RATE_STEP_M)
}

/// Where a rising `surplus_n` of spring over load passes zero, or the end of the travel that it stays beyond.
fn balance(surplus_n: impl Fn(f64) -> f64, travel_m: f64) -> Result<f64, StanceError> {
    match root(&surplus_n, 0.0, travel_m, TRAVEL_TOLERANCE_M) {
        Ok(at_m) => Ok(at_m),
        Err(NoRoot::SameSign { at_low, .. }) => Ok(if at_low > 0.0 { 0.0 } else { travel_m }),
        Err(problem) => Err(StanceError::Search(problem)),
    }
}
