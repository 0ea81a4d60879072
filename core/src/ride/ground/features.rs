//! Kinds of ground: their shapes, and how fast riders go there.
//!
//! Heights, lengths and speeds are common practice, from memory. Speeds run from learners to experts.

use super::dice::Dice;
use super::profile::STEP_M;
use super::roughness::{Roughness, harmonics};
use crate::intake::Pace;

/// A kind of ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Feature {
    /// Bumps of 6 to 20 mm, 0.1 to 0.3 m long: where friction shows.
    SmallRipple,
    /// Rounded edges of 15 to 45 mm, 0.15 to 0.4 m long.
    RootsRocks,
    /// Bumps of 25 to 45 mm every 0.5 to 0.9 m.
    Chatter,
    /// One step up of 60 to 100 mm.
    SquareEdge,
    /// Bumps of 80 to 160 mm, 1.6 to 2.6 m apart, while braking.
    BrakingBumps,
    /// Bumps of 60 to 120 mm, 1.5 to 2.5 m apart, while driving.
    AccelerationBumps,
    /// Fourteen rounded bumps of 300 to 500 mm, 3 to 4.5 m apart.
    Whoops,
    /// Landing on a slope of 20° that runs out into the level.
    JumpToSlope,
    /// Landing on the level with both wheels.
    JumpToFlat,
    /// A concave lip, off which the bike flies.
    TakeOff,
    /// A dip with a bottom of 7 to 12 m radius.
    GOut,
    /// Long soft rollers of 150 to 300 mm, 4 to 7 m long, as in sand, mud and ruts.
    Rollers,
    /// Random ground of ISO 8608, class D.
    Gravel,
    /// Braking on level ground.
    Braking,
    /// A gentle step up of 60 mm within a metre, for how the bike settles.
    Heave,
}

/// What a feature is made of before a wheel has rolled over it.
pub(super) struct Shape {
    /// Heights every [`STEP_M`] from where the front wheel starts.
    pub(super) ground_m: Vec<f64>,
    /// Heights the rider expects to follow; the ground where there are none.
    pub(super) guide_m: Option<Vec<f64>>,
    /// Where the first bump begins and the last one ends, m.
    pub(super) bumps_m: [f64; 2],
}

impl Feature {
    /// All of them.
    pub const ALL: [Self; 15] = [
        Self::SmallRipple,
        Self::RootsRocks,
        Self::Chatter,
        Self::SquareEdge,
        Self::BrakingBumps,
        Self::AccelerationBumps,
        Self::Whoops,
        Self::JumpToSlope,
        Self::JumpToFlat,
        Self::TakeOff,
        Self::GOut,
        Self::Rollers,
        Self::Gravel,
        Self::Braking,
        Self::Heave,
    ];

    /// Speed at its beginning, m/s.
    pub fn speed_m_per_s(self, pace: Pace) -> f64 {
        let [slow, fast] = match self {
            Self::SmallRipple => [4.0, 7.0],
            Self::RootsRocks => [4.0, 9.0],
            Self::Chatter => [7.0, 12.0],
            Self::SquareEdge => [6.0, 12.0],
            Self::BrakingBumps => [11.0, 18.0],
            Self::AccelerationBumps => [7.0, 12.0],
            Self::Whoops => [8.0, 15.0],
            Self::JumpToSlope | Self::JumpToFlat | Self::TakeOff => [8.0, 12.0],
            Self::GOut => [9.0, 16.0],
            Self::Rollers => [7.0, 13.0],
            Self::Gravel => [12.0, 25.0],
            Self::Braking => [11.0, 16.0],
            Self::Heave => [6.0, 8.0],
        };
        slow + (fast - slow) * by_pace(pace)
    }

    /// Deceleration asked for on it, m/s²; negative when driving.
    pub fn braking_m_per_s2(self, pace: Pace) -> f64 {
        let [slow, fast] = match self {
            Self::BrakingBumps => [3.0, 5.0],
            Self::Braking => [4.0, 6.0],
            Self::AccelerationBumps => [-2.0, -3.0],
            _ => [0.0, 0.0],
        };
        slow + (fast - slow) * by_pace(pace)
    }

    /// Vertical speed at which the wheels meet the ground at its beginning, m/s; zero when it is ridden up to.
    pub fn drop_m_per_s(self, pace: Pace) -> f64 {
        let [slow, fast] = match self {
            Self::JumpToSlope => [3.0, 5.0],
            Self::JumpToFlat => [2.5, 4.5],
            _ => [0.0, 0.0],
        };
        slow + (fast - slow) * by_pace(pace)
    }

    /// How much more soft ground takes from a bouncing tyre than hard ground, as a factor on the tyre's damping (from memory).
    pub const fn tyre_damping(self) -> f64 {
        match self {
            Self::Rollers => 2.0,
            _ => 1.0,
        }
    }

    /// Its shape, from where the front wheel starts; level for the first `lead_m`.
    pub(super) fn shape(self, lead_m: f64, dice: &mut Dice) -> Shape {
        let mut road = Road::level(lead_m);
        let mut guide_m = None;
        match self {
            Self::SmallRipple => road.bumps(40, [0.006, 0.020], [0.1, 0.3], [0.1, 0.6], dice),
            Self::RootsRocks => road.bumps(18, [0.015, 0.045], [0.15, 0.4], [0.4, 1.5], dice),
            Self::Chatter => road.train(24, [0.025, 0.045], [0.5, 0.9], dice),
            Self::SquareEdge => {
                let height = dice.between(0.06, 0.10);
                road.to(height, 0.1);
                road.to(height, 6.0);
            }
            Self::BrakingBumps => road.train(11, [0.08, 0.16], [1.6, 2.6], dice),
            Self::AccelerationBumps => road.train(11, [0.06, 0.12], [1.5, 2.5], dice),
            Self::Whoops => road.train(14, [0.3, 0.5], [3.0, 4.5], dice),
            Self::JumpToSlope => {
                // Falls from the very start, so that both wheels land on it.
                road = Road::level(0.0);
                road.arc(-SLOPE_RAD, -SLOPE_RAD, 7.0);
                road.arc(-SLOPE_RAD, 0.0, 12.0);
                road.to(road.last_m(), 8.0);
            }
            Self::JumpToFlat => road.to(0.0, 12.0),
            Self::TakeOff => {
                let radius_m = dice.between(6.0, 9.0);
                road.arc(0.0, LIP_RAD, radius_m);
                let lip = road.ground_m.len();
                road.to(road.last_m() + 2.0 * LIP_RAD, 4.0);
                road.to(road.last_m(), AFTER_LIP_M - 4.0);
                guide_m = Some(road.ground_m.clone());
                road.ground_m[lip..].fill(-20.0);
            }
            Self::GOut => {
                let radius_m = dice.between(7.0, 12.0);
                // Rounder at its edges, so that the bike rolls into it rather than jumps.
                road.arc(0.0, -DIP_RAD, 3.0 * radius_m);
                road.arc(-DIP_RAD, DIP_RAD, radius_m);
                road.arc(DIP_RAD, 0.0, 3.0 * radius_m);
            }
            Self::Rollers => road.train(9, [0.15, 0.3], [4.0, 7.0], dice),
            Self::Gravel => road.random(60.0, Roughness::D.density_m3(), dice),
            Self::Braking => road.to(0.0, 20.0),
            Self::Heave => {
                road.to(0.06, 1.0);
                road.to(0.06, 8.0);
            }
        }
        let end_m = match self {
            // What the bike lands on is another matter.
            Self::TakeOff => road.ground_m.len() as f64 * STEP_M - AFTER_LIP_M,
            _ => road.ground_m.len() as f64 * STEP_M,
        };
        Shape {
            ground_m: road.ground_m,
            guide_m,
            bumps_m: [lead_m, end_m],
        }
    }
}

/// Steepness of a landing slope, rad.
const SLOPE_RAD: f64 = 0.35;
/// Steepness of a lip where the bike leaves it, rad.
const LIP_RAD: f64 = 0.42;
/// Way beyond a lip for which ground is there to aim at, m.
const AFTER_LIP_M: f64 = 12.0;
/// Steepness of the sides of a dip, rad.
const DIP_RAD: f64 = 0.30;

/// Learners 0, experts 1.
const fn by_pace(pace: Pace) -> f64 {
    match pace {
        Pace::Learning => 0.0,
        Pace::Club => 1.0 / 3.0,
        Pace::Fast => 2.0 / 3.0,
        Pace::Expert => 1.0,
    }
}

/// Ground that grows at its end.
struct Road {
    ground_m: Vec<f64>,
}

impl Road {
    fn level(length_m: f64) -> Self {
        Self {
            ground_m: vec![0.0; places(length_m)],
        }
    }

    fn last_m(&self) -> f64 {
        self.ground_m.last().copied().unwrap_or(0.0)
    }

    /// Goes to a height within a length, starting and arriving level.
    fn to(&mut self, height_m: f64, length_m: f64) {
        let (start_m, count) = (self.last_m(), places(length_m));
        self.ground_m.extend((1..=count).map(|i| {
            let share = i as f64 / count as f64;
            start_m + (height_m - start_m) * 0.5 * (1.0 - libm::cos(core::f64::consts::PI * share))
        }));
    }

    /// An arc between two slope angles; with both alike, a straight piece as long as `radius_m`.
    fn arc(&mut self, from_rad: f64, to_rad: f64, radius_m: f64) {
        let turn = libm::sin(to_rad) - libm::sin(from_rad);
        let length_m = if turn == 0.0 {
            radius_m
        } else {
            radius_m * turn.abs()
        };
        let (start_m, count) = (self.last_m(), places(length_m));
        let mut height_m = start_m;
        for i in 1..=count {
            // The slope's sine grows evenly along a circle.
            let sine = libm::sin(from_rad) + turn * (i as f64 - 0.5) / count as f64;
            height_m += STEP_M * sine / (1.0 - sine * sine).sqrt();
            self.ground_m.push(height_m);
        }
    }

    /// One rounded bump.
    fn bump(&mut self, height_m: f64, length_m: f64) {
        let (base_m, count) = (self.last_m(), places(length_m));
        self.ground_m.extend((1..=count).map(|i| {
            let share = i as f64 / count as f64;
            base_m + height_m * 0.5 * (1.0 - libm::cos(2.0 * core::f64::consts::PI * share))
        }));
    }

    /// Bumps with level ground between them.
    fn bumps(
        &mut self,
        count: u8,
        height_m: [f64; 2],
        length_m: [f64; 2],
        gap_m: [f64; 2],
        dice: &mut Dice,
    ) {
        for _ in 0..count {
            self.bump(
                dice.between(height_m[0], height_m[1]),
                dice.between(length_m[0], length_m[1]),
            );
            self.to(self.last_m(), dice.between(gap_m[0], gap_m[1]));
        }
    }

    /// Bumps that begin where the last one ends.
    fn train(&mut self, count: u8, height_m: [f64; 2], apart_m: [f64; 2], dice: &mut Dice) {
        // A train is dug by one kind of bike at one speed: spacing and height vary by a fifth of their range within it.
        let apart = Around::of(apart_m, dice);
        let height = Around::of(height_m, dice);
        for _ in 0..count {
            self.bump(height.next(dice), apart.next(dice));
        }
    }

    /// Random ground that fades in over two metres.
    fn random(&mut self, length_m: f64, density_m3: f64, dice: &mut Dice) {
        let count = places(length_m);
        let heights = harmonics(count, density_m3, [0.05, 4.0], dice);
        let fade = places(2.0);
        let share = |i: usize| {
            let s = (i as f64 / fade as f64).min(1.0);
            s * s * (3.0 - 2.0 * s)
        };
        self.ground_m
            .extend(heights.iter().enumerate().map(|(i, h)| h * share(i)));
    }
}

/// A figure about which others vary.
struct Around {
    middle: f64,
    spread: f64,
}

impl Around {
    fn of([low, high]: [f64; 2], dice: &mut Dice) -> Self {
        let spread = 0.2 * (high - low);
        Self {
            middle: dice.between(low + spread, high - spread),
            spread,
        }
    }

    fn next(&self, dice: &mut Dice) -> f64 {
        self.middle + self.spread * dice.between(-1.0, 1.0)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "lengths here are up to a hundred metres in steps of a centimetre"
)]
fn places(length_m: f64) -> usize {
    (length_m / STEP_M).round() as usize
}
