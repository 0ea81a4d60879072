//! From figures to feelings: how far each thing a rider could complain of has moved from the healthy bike, in steps that can
//! just be noticed.
//!
//! One step is a change that half of all riders would notice riding the two bikes back to back. For vibration that is about
//! 10 % (difference thresholds of seated people for whole-body vibration: Morioka and Griffin, 2000, from memory); the
//! rest is common practice, from memory. Steps add up: a fork that both dives further and dives quicker is felt diving by both.

use serde::{Deserialize, Serialize};

use crate::bench::{Ground, Outcome, Still, Trial};
use crate::feel::{Ends, Metrics};
use crate::intake::{Feeling, Phase};
use crate::ride::ground::Feature;

/// How many feelings and phases there are.
pub const FEELINGS: usize = Feeling::ALL.len();
/// How many moments of a lap there are.
pub const PHASES: usize = Phase::ALL.len();

/// Steps beyond which more is no more telling: a bike that falls or bottoms all day is as bad as a complaint gets.
pub(super) const MOST_STEPS: f64 = 8.0;
/// Weight of ground that is not in the rider's mix beside what is, whose weights sum to 1: met now and then.
const NOW_AND_THEN: f64 = 0.12;

/// How far every feeling has moved, in steps that can just be noticed; above 0 is worse.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Felt {
    /// Front and rear, in the order of [`Feeling::ALL`].
    pub steps: [[f64; 2]; FEELINGS],
    /// The worse end in each moment of the lap, in the order of [`Phase::ALL`].
    pub moments: [[f64; PHASES]; FEELINGS],
}

impl Felt {
    /// Nothing has moved.
    pub fn nothing() -> Self {
        Self {
            steps: core::array::from_fn(|place| {
                shows_at(Feeling::ALL[place]).map(|shows| if shows { 0.0 } else { -MOST_STEPS })
            }),
            moments: [[0.0; PHASES]; FEELINGS],
        }
    }

    /// Two faults at once: what they do to the bike adds up.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let sum = |a: f64, b: f64| (a + b).clamp(-MOST_STEPS, MOST_STEPS);
        Self {
            steps: core::array::from_fn(|feeling| {
                core::array::from_fn(|end| sum(self.steps[feeling][end], other.steps[feeling][end]))
            }),
            moments: core::array::from_fn(|feeling| {
                core::array::from_fn(|phase| {
                    sum(self.moments[feeling][phase], other.moments[feeling][phase])
                })
            }),
        }
    }
}

impl Felt {
    /// The worse end of a feeling.
    pub fn worse(&self, feeling: Feeling) -> f64 {
        let [front, rear] = self.steps[feeling as usize];
        front.max(rear)
    }
}

/// At which ends, front and rear, a feeling can show.
pub const fn shows_at(feeling: Feeling) -> [bool; 2] {
    match feeling {
        Feeling::Dives | Feeling::Pushes | Feeling::Headshake => [true, false],
        Feeling::Kicks | Feeling::Squats => [false, true],
        _ => [true, true],
    }
}

/// A trial as it was ridden and as it stands.
#[derive(Debug, Clone)]
pub struct Seen<'a> {
    /// The trial.
    pub trial: &'a Trial,
    /// Standing still.
    pub still: Still,
    /// Ridden, in the order of the grounds.
    pub ridden: &'a [Outcome],
}

/// What moved from `reference` to `now`, both over the same `grounds`.
pub fn felt(now: &Seen, reference: &Seen, grounds: &[Ground]) -> Felt {
    let compare = Compare {
        now,
        reference,
        grounds,
    };
    let mut felt = Felt::nothing();
    for (place, feeling) in Feeling::ALL.iter().enumerate() {
        let here = compare.moved(*feeling, None);
        let shows = shows_at(*feeling);
        for ((steps, moved), shows) in felt.steps[place]
            .iter_mut()
            .zip([here.front, here.rear])
            .zip(shows)
        {
            if shows {
                *steps = moved;
            }
        }
        for (moment, phase) in felt.moments[place].iter_mut().zip(Phase::ALL) {
            let here = compare.moved(*feeling, Some(*phase));
            *moment = match shows {
                [true, true] => here.front.max(here.rear),
                [true, false] => here.front,
                _ => here.rear,
            };
        }
    }
    felt
}

/// Ground on which a feeling shows.
pub(super) const SMALL: &[Feature] = &[
    Feature::SmallRipple,
    Feature::RootsRocks,
    Feature::Chatter,
    Feature::Gravel,
];
pub(super) const BIG: &[Feature] = &[
    Feature::SquareEdge,
    Feature::RootsRocks,
    Feature::BrakingBumps,
    Feature::JumpToSlope,
];
pub(super) const ROWS: &[Feature] = &[
    Feature::BrakingBumps,
    Feature::Whoops,
    Feature::Rollers,
    Feature::AccelerationBumps,
];
pub(super) const DEEP: &[Feature] = &[
    Feature::BrakingBumps,
    Feature::Whoops,
    Feature::JumpToSlope,
    Feature::JumpToFlat,
    Feature::GOut,
    Feature::Rollers,
];
pub(super) const THROWN: &[Feature] = &[
    Feature::SquareEdge,
    Feature::TakeOff,
    Feature::Whoops,
    Feature::Rollers,
    Feature::Braking,
];
pub(super) const LOOSE: &[Feature] = &[
    Feature::RootsRocks,
    Feature::BrakingBumps,
    Feature::AccelerationBumps,
    Feature::Gravel,
    Feature::Rollers,
];
const FLOATING: &[Feature] = &[Feature::SquareEdge, Feature::Rollers, Feature::Whoops];

/// The moment of a lap in which a kind of ground is met.
const fn met_in(feature: Feature) -> Phase {
    match feature {
        Feature::BrakingBumps | Feature::Braking => Phase::Braking,
        Feature::AccelerationBumps => Phase::Exit,
        Feature::JumpToSlope | Feature::JumpToFlat | Feature::TakeOff => Phase::Landing,
        Feature::GOut => Phase::MidTurn,
        _ => Phase::Straight,
    }
}

struct Compare<'a> {
    now: &'a Seen<'a>,
    reference: &'a Seen<'a>,
    grounds: &'a [Ground],
}

type Figure = fn(&Metrics<f64>) -> f64;

impl Compare<'_> {
    /// How far a feeling moved at each end, in all of the lap or in one moment of it.
    #[expect(
        clippy::too_many_lines,
        reason = "a table: one row for each feeling, read side by side"
    )]
    fn moved(&self, feeling: Feeling, phase: Option<Phase>) -> Ends<f64> {
        let on = |features, steps: &dyn Fn(&Metrics<f64>, &Metrics<f64>) -> f64| {
            self.mean(features, phase, steps)
        };
        // Relative growth over one noticeable growth; the floor keeps figures near nothing from deciding.
        let grown = |of: Figure, floor: f64, step: f64| {
            move |now: &Metrics<f64>, then: &Metrics<f64>| {
                libm::log((of(now).max(0.0) + floor) / (of(then).max(0.0) + floor)) / step
            }
        };
        let more = |of: Figure, step: f64| {
            move |now: &Metrics<f64>, then: &Metrics<f64>| (of(now) - of(then)) / step
        };
        let (now, then) = (&self.now.still, &self.reference.still);
        let nose_up = (now.nose_up_rad - then.nose_up_rad) / NOSE_RAD;
        let damping = |place: usize| {
            libm::log(now.damping_n_s_per_m[place] / then.damping_n_s_per_m[place]) / DAMPING
        };
        let void = |end: fn(&Ends<f64>) -> f64| (end(&now.void_m) - end(&then.void_m)) / VOID_M;
        let [state, held] = [self.now, self.reference].map(|seen| &seen.trial.condition);
        let play = state.head_play - held.head_play;
        // A ride in one plane has no side walls to fold: what a soft tyre does in turns is taken from its pressure.
        let soft_tyre = held
            .tyres
            .with(state.tyres, |held, now| (held - now).max(0.0) / SOFT_TYRE);
        let ends = match feeling {
            Feeling::HarshSmallBumps => Ends {
                front: on(SMALL, &grown(|m| m.hand_m_s2, 0.3, 0.05))
                    + on(SMALL, &more(|m| m.bumps_ignored, 0.08)),
                rear: on(SMALL, &grown(|m| m.body_m_s2, 0.2, 0.05)),
            },
            Feeling::HarshBigHits => Ends {
                front: on(BIG, &grown(|m| m.hand_m_s2, 0.3, 0.05)) + 0.3 * void(|v| v.front),
                rear: on(BIG, &grown(|m| m.body_dose_m_s1_75, 0.5, 0.05)) + 0.3 * void(|v| v.rear),
            },
            Feeling::Dives => {
                let (smooth, rough) = (&[Feature::Braking], &[Feature::BrakingBumps]);
                let sag = (now.ridden_m.front - then.ridden_m.front) / 0.025;
                Ends {
                    front: on(smooth, &more(|m| m.dive_m, 0.006))
                        + on(smooth, &grown(|m| m.dive_rate_m_s, 0.1, 0.10))
                        + 0.4 * on(rough, &more(|m| m.dive_m, 0.008))
                        + sag,
                    rear: 0.0,
                }
            }
            Feeling::Packs => Ends {
                front: on(ROWS, &more(|m| m.packed_m.front, 0.012)),
                rear: on(ROWS, &more(|m| m.packed_m.rear, 0.014)),
            },
            Feeling::Bottoms => Ends {
                front: on(DEEP, &grown(|m| m.bottoming_j.front, 8.0, 0.3))
                    + on(DEEP, &more(|m| m.travel_deepest.front, 0.04)),
                rear: on(DEEP, &grown(|m| m.bottoming_j.rear, 8.0, 0.3))
                    + on(DEEP, &more(|m| m.travel_deepest.rear, 0.04)),
            },
            Feeling::RampsUp => Ends {
                front: -on(DEEP, &more(|m| m.travel_deepest.front, 0.02)),
                rear: -on(DEEP, &more(|m| m.travel_deepest.rear, 0.02)),
            },
            Feeling::Kicks => Ends {
                front: 0.0,
                rear: on(THROWN, &grown(|m| m.kick_rad_s, 0.2, 0.04)),
            },
            Feeling::Wallows => {
                let float = on(FLOATING, &more(|m| m.heave_overshoot, 0.12))
                    + on(FLOATING, &more(|m| m.pitch_overshoot, 0.12));
                Ends {
                    front: 0.5 * float - 0.6 * damping(0) - 0.4 * damping(1)
                        + 0.6 * soft_tyre.front,
                    rear: 0.5 * float - 0.6 * damping(2) - 0.4 * damping(3) + 0.6 * soft_tyre.rear,
                }
            }
            Feeling::Springs => {
                let thrown = on(THROWN, &grown(|m| m.nose_up_rad_s, 0.3, 0.2));
                Ends {
                    front: -damping(1) + 0.4 * void(|v| v.front) + 0.4 * thrown,
                    rear: -damping(3) + 0.4 * void(|v| v.rear),
                }
            }
            Feeling::Pushes => Ends {
                front: on(LOOSE, &more(|m| m.light_share.front, 0.04))
                    + on(LOOSE, &grown(|m| m.load_unsteadiness.front, 0.1, 0.15))
                    + nose_up
                    + soft_tyre.front
                    + 0.5 * play,
                rear: 0.0,
            },
            Feeling::Headshake => Ends {
                front: on(LOOSE, &more(|m| m.light_share.front, 0.05)) - nose_up + 2.0 * play,
                rear: 0.0,
            },
            Feeling::Squats => {
                let driving = &[Feature::AccelerationBumps];
                Ends {
                    front: 0.0,
                    rear: on(driving, &more(|m| m.packed_m.rear, 0.012))
                        + (now.ridden_m.rear - then.ridden_m.rear) / 0.018
                        - 0.4 * damping(2),
                }
            }
            Feeling::Skips => Ends {
                front: on(LOOSE, &more(|m| m.light_share.front, 0.03))
                    + on(LOOSE, &grown(|m| m.load_unsteadiness.front, 0.1, 0.12)),
                rear: on(LOOSE, &more(|m| m.light_share.rear, 0.03))
                    + on(LOOSE, &grown(|m| m.load_unsteadiness.rear, 0.1, 0.12)),
            },
            Feeling::Sticks => Ends {
                front: (now.breakaway_n.front - then.breakaway_n.front) / 22.0
                    + (now.off_top_out_n - then.off_top_out_n) / 200.0
                    + on(SMALL, &more(|m| m.bumps_ignored, 0.15)),
                rear: (now.breakaway_n.rear - then.breakaway_n.rear) / 22.0,
            },
            Feeling::Fades => {
                let air = state.air.with(held.air, |now, held| (now - held) / 0.06);
                Ends {
                    front: air.front + 0.4 * void(|v| v.front),
                    rear: air.rear + 0.4 * void(|v| v.rear),
                }
            }
            Feeling::SitsWrong => Ends {
                front: (now.ridden_m.front - then.ridden_m.front).abs() / 0.008
                    + 0.5 * (state.raised_m - held.raised_m).abs() / 0.008,
                rear: (now.ridden_m.rear - then.ridden_m.rear).abs() / 0.010,
            },
        };
        ends.map(|steps| steps.clamp(-MOST_STEPS, MOST_STEPS))
    }

    /// Weighted mean over the grounds of these kinds, met in this moment; 0 where there are none.
    fn mean(
        &self,
        features: &[Feature],
        phase: Option<Phase>,
        steps: &dyn Fn(&Metrics<f64>, &Metrics<f64>) -> f64,
    ) -> f64 {
        let (mut sum, mut weights) = (0.0, 0.0);
        for (ground, (now, then)) in self
            .grounds
            .iter()
            .zip(self.now.ridden.iter().zip(self.reference.ridden))
        {
            let here = features.contains(&ground.feature)
                && phase.is_none_or(|phase| met_in(ground.feature) == phase);
            if here {
                let weight = NOW_AND_THEN + ground.weight;
                let moved =
                    steps(&now.metrics, &then.metrics) + MOST_STEPS * (now.falls - then.falls);
                sum += weight * moved.clamp(-MOST_STEPS, MOST_STEPS);
                weights += weight;
            }
        }
        if weights > 0.0 { sum / weights } else { 0.0 }
    }
}

/// A change of attitude that is just noticed, rad: 5 mm at one end, by which forks are slid in their clamps to feel it.
const NOSE_RAD: f64 = 0.0034;
/// A change of damping that is just noticed, natural logarithm: some four clicks.
const DAMPING: f64 = 0.20;
/// A void at the reversal that is just noticed, m.
const VOID_M: f64 = 0.0012;
/// A fall of tyre pressure that is just noticed in turns, relative.
const SOFT_TYRE: f64 = 0.12;
