//! One piece of ground made ready to ride, with the speed over it.

use super::dice::Dice;
use super::envelope::{felt, hann};
use super::features::{Feature, Shape};
use super::profile::Profile;
use crate::feel::Clock;
use crate::intake::Pace;

/// Half the length over which a rider judges the lie of the ground, m (from memory: a few wheelbases).
const LIE_HALF_M: f64 = 4.0;
/// Time a rider takes to come fully on the brakes or the throttle, s (from memory).
const ONSET_S: f64 = 0.2;
/// Speed at which braking ends, m/s: that of a tight corner.
const CORNER_M_PER_S: f64 = 4.0;
/// Time of level rolling before the ground begins, s, for filters and pitch to settle.
const LEAD_S: f64 = 0.4;
/// Time for which a ride goes on after the rear wheel has left the last bump, s.
const AFTER_S: f64 = 0.8;

/// Acceleration that changes evenly over a while.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Phase {
    lasts_s: f64,
    from_m_per_s2: f64,
    to_m_per_s2: f64,
}

/// Speed over the course: given, whatever the ground does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Riding {
    start_m_per_s: f64,
    phases: [Phase; 4],
}

impl Riding {
    /// At an even speed.
    pub fn even(m_per_s: f64) -> Self {
        Self::changing(m_per_s, 0.0)
    }

    /// Braking (positive) or driving (negative, m/s²) from the end of the lead on; braking down to the speed of a tight corner.
    pub fn changing(start_m_per_s: f64, braking_m_per_s2: f64) -> Self {
        let a = -braking_m_per_s2;
        let hold_s = if a < 0.0 {
            ((start_m_per_s - CORNER_M_PER_S) / -a - ONSET_S).max(0.0)
        } else {
            f64::MAX
        };
        let phase = |lasts_s, from_m_per_s2, to_m_per_s2| Phase {
            lasts_s,
            from_m_per_s2,
            to_m_per_s2,
        };
        Self {
            start_m_per_s,
            phases: [
                phase(LEAD_S, 0.0, 0.0),
                phase(ONSET_S, 0.0, a),
                phase(hold_s, a, a),
                phase(ONSET_S, a, 0.0),
            ],
        }
    }

    /// Way in m, speed in m/s and acceleration in m/s² at a time in s since the start.
    pub fn at(&self, time_s: f64) -> [f64; 3] {
        let (mut way, mut speed, mut left) = (0.0, self.start_m_per_s, time_s);
        for phase in &self.phases {
            let t = left.min(phase.lasts_s);
            let jerk = (phase.to_m_per_s2 - phase.from_m_per_s2) / phase.lasts_s;
            way += t * (speed + t * (phase.from_m_per_s2 / 2.0 + t * jerk / 6.0));
            speed += t * (phase.from_m_per_s2 + t * jerk / 2.0);
            left -= t;
            if left <= 0.0 {
                return [way, speed, phase.from_m_per_s2 + t * jerk];
            }
        }
        [way + left * speed, speed, 0.0]
    }

    /// Time in s at which a way in m is done, to a millisecond; a minute at most.
    fn time_s(&self, way_m: f64) -> f64 {
        (0..60_000_u32)
            .map(|ms| f64::from(ms) * 1e-3)
            .find(|t| self.at(*t)[0] >= way_m)
            .unwrap_or(60.0)
    }
}

/// How a ride begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Start {
    /// Rolling on level ground, settled.
    Settled,
    /// In the air with both wheels about to touch, at this speed towards the ground, m/s.
    Falling {
        /// Speed towards the ground, m/s.
        m_per_s: f64,
    },
}

/// A piece of ground and how it is ridden.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// What it is.
    pub feature: Feature,
    /// Speed along it.
    pub riding: Riding,
    /// How the ride begins.
    pub start: Start,
    /// Factor on its heights and on the speed of the fall.
    pub size: f64,
    /// Factor on the tyres' damping.
    pub tyre_damping: f64,
    /// When to measure, s from the start.
    pub measured_s: [f64; 2],
    /// When the rear wheel is off the last bump, s from the start.
    pub bumps_end_s: f64,
    /// How long the ride is, s.
    pub lasts_s: f64,
    ground: Profile,
    guide: Profile,
    wheelbase_m: f64,
}

impl Course {
    /// A piece of a kind of ground for a bike of this wheelbase with tyres of this radius, in m. The same seed gives the same ground.
    pub fn new(feature: Feature, pace: Pace, wheelbase_m: f64, radius_m: f64, seed: u64) -> Self {
        let speed = feature.speed_m_per_s(pace);
        let riding = Riding::changing(speed, feature.braking_m_per_s2(pace));
        let fall = feature.drop_m_per_s(pace);
        let start = if fall > 0.0 {
            Start::Falling { m_per_s: fall }
        } else {
            Start::Settled
        };
        let mut dice = Dice::seeded(seed);
        let lead_m = wheelbase_m + radius_m + LEAD_S * speed;
        let Shape {
            ground_m,
            guide_m,
            bumps_m,
        } = feature.shape(lead_m, &mut dice);
        let time_s = |front_m: f64| riding.time_s(front_m - wheelbase_m);
        let from_s = match start {
            Start::Settled => time_s(bumps_m[0] - radius_m),
            Start::Falling { .. } => 0.0,
        };
        let to_s = time_s(bumps_m[1] + wheelbase_m);
        let lasts_s = to_s + AFTER_S;
        Self {
            feature,
            riding,
            start,
            size: 1.0,
            tyre_damping: feature.tyre_damping(),
            measured_s: [from_s, lasts_s],
            bumps_end_s: to_s,
            lasts_s,
            guide: Profile::new(hann(guide_m.as_ref().unwrap_or(&ground_m), LIE_HALF_M)),
            ground: Profile::new(felt(&ground_m, radius_m)),
            wheelbase_m,
        }
    }

    /// Ground of given heights every [`super::profile::STEP_M`], as a tyre feels it, from where the rear wheel starts on.
    pub fn of_heights(felt_m: Vec<f64>, riding: Riding, wheelbase_m: f64, lasts_s: f64) -> Self {
        Self {
            feature: Feature::Gravel,
            riding,
            start: Start::Settled,
            size: 1.0,
            tyre_damping: 1.0,
            measured_s: [0.0, lasts_s],
            bumps_end_s: lasts_s,
            lasts_s,
            guide: Profile::new(Vec::new()),
            ground: Profile::new(felt_m),
            wheelbase_m,
        }
    }

    /// At a time in s, before [`Self::size`]: heights under the front and rear wheel in m, their rates in m/s, the lie of the
    /// ground in rad and its rate in rad/s, and the deceleration asked for in m/s².
    pub fn at(&self, time_s: f64) -> Underfoot {
        let [way, speed, acceleration] = self.riding.at(time_s);
        let rear_m = way;
        let front_m = way + self.wheelbase_m;
        let [front, front_slope] = self.ground.at(front_m);
        let [rear, rear_slope] = self.ground.at(rear_m);
        let middle_m = rear_m + 0.5 * self.wheelbase_m;
        let half = 0.5 * self.wheelbase_m;
        let ([_, before], [_, here], [_, after]) = (
            self.guide.at(middle_m - half),
            self.guide.at(middle_m),
            self.guide.at(middle_m + half),
        );
        Underfoot {
            ground_m: [front, rear],
            ground_m_per_s: [front_slope * speed, rear_slope * speed],
            lie: [here, (after - before) / self.wheelbase_m * speed],
            braking_m_per_s2: -acceleration,
        }
    }

    /// When it is measured, in steps of `step_s`.
    pub fn clock(&self, step_s: f64) -> Clock {
        let [from_s, to_s] = self.measured_s;
        Clock {
            step_s,
            from_s,
            bumps_end_s: self.bumps_end_s,
            to_s,
        }
    }

    /// The ground as the tyres feel it.
    pub fn ground(&self) -> &Profile {
        &self.ground
    }
}

/// What is under the wheels at one moment, see [`Course::at`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Underfoot {
    /// Heights, m.
    pub ground_m: [f64; 2],
    /// Their rates, m/s.
    pub ground_m_per_s: [f64; 2],
    /// Lie of the ground, rad, and its rate, rad/s.
    pub lie: [f64; 2],
    /// Deceleration asked for, m/s².
    pub braking_m_per_s2: f64,
}
