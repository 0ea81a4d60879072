//! Turns a trial (springs, clicks and the condition of everything else) into a bike and rides several side by side.

use wide::f32x8;

use super::condition::Condition;
use super::grounds::Ground;
use crate::bike::damping::{Hardware, Wanted};
use crate::bike::limits::OutOfRange;
use crate::bike::shock::Shock;
use crate::bike::{Machine, SetUp, Surroundings, Tyre};
use crate::feel::{Ends, Feel, Metrics};
use crate::intake::{Field, Intake};
use crate::lane::Lane;
use crate::ride::run::{Ride, SEARCH_STEP_S};
use crate::ride::{Bike, Candidate, Course, RideError, Rider, Tyres};
use crate::stance::clickers::{self, Clickers};
use crate::stance::tyres::tyres;
use crate::stance::{Baseline, Situation};
use crate::units::{BAR_IN_PA, DampingRate, Pressure, newton_second_per_meter, pascal};

/// What set-ups are compared in: eight numbers of 32 bits, the most rides in a second wherever it was measured
/// (`docs/ride.md`, which also says what the short numbers cost).
pub type Row = f32x8;

/// The four low-speed adjusters, clicks from closed: fork compression, fork rebound, shock compression, shock rebound.
pub type Clicks = [u8; 4];

/// One bike to be ridden.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// The bike.
    pub machine: Machine,
    /// Springs, gas, preload and wear.
    pub set_up: SetUp,
    /// Adjusters.
    pub clicks: Clicks,
    /// Where it was filled and where it rides.
    pub air: Surroundings,
    /// The state of everything else.
    pub condition: Condition,
}

/// What a trial gave on one kind of ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// What the rider noticed, mean over the pieces ridden.
    pub metrics: Metrics<f64>,
    /// Pieces on which the bike fell.
    pub falls: f64,
}

/// Everything that stays the same from trial to trial.
#[derive(Debug, Clone)]
pub struct Bench<'a> {
    pub(super) situation: &'a Situation,
    pub(super) baseline: &'a Baseline,
    pub(super) start: Clicks,
    pub(super) ranges: Clicks,
    pub(super) fork: (Hardware, Wanted),
    pub(super) shock: (Hardware, Wanted),
    tyres: Ends<Pressure>,
    rider: Rider,
    pub(super) now_clicks: Clicks,
}

impl<'a> Bench<'a> {
    /// Sizes dampers and tyres for the advised set-up.
    pub fn of(situation: &'a Situation, baseline: &'a Baseline) -> Result<Self, RideError> {
        let stance = baseline.stance?;
        let start = baseline.clickers?;
        let machine = &situation.machine;
        let riding = situation.surroundings.riding;
        let wanted = |compression: &clickers::Baseline, rebound: &clickers::Baseline| Wanted {
            compression: reached(compression),
            rebound: reached(rebound),
            compression_clicks: compression.clicks.middle.max(1),
            rebound_clicks: rebound.clicks.middle.max(1),
        };
        let fork = (
            Hardware::fork_leg(machine, riding.ambient),
            wanted(&start.fork_compression, &start.fork_rebound),
        );
        let built = Shock::build(machine, &baseline.set_up.shock, &Surroundings::same(riding));
        let shock = (
            Hardware::shock(machine, &built, stance.ridden.rear.middle.value),
            wanted(&start.shock_compression, &start.shock_rebound),
        );
        let usual = tyres(situation);
        Ok(Self {
            situation,
            baseline,
            start: clicks_of(&start, |one| one.clicks.middle),
            ranges: clicks_of(&start, |one| one.range),
            fork,
            shock,
            tyres: Ends {
                front: usual.front.middle,
                rear: usual.rear.middle,
            },
            rider: Rider::of(situation.load.posture),
            now_clicks: clicks_of(&start, |one| one.clicks.middle),
        })
    }

    /// The same with the adjusters where the rider has them, as far as told.
    #[must_use]
    pub fn with_clicks_of(mut self, intake: &Intake) -> Self {
        let fields = [
            Field::ForkCompressionNow,
            Field::ForkReboundNow,
            Field::ShockLowNow,
            Field::ShockReboundNow,
        ];
        for (place, field) in fields.into_iter().enumerate() {
            if let Some(told) = field.si(intake) {
                self.now_clicks[place] = whole(told, self.ranges[place]);
            }
        }
        self
    }

    /// The same with the adjusters and tyres as the rider has them, where told.
    #[must_use]
    pub fn as_told(self, intake: &Intake) -> Self {
        let mut told = self.with_clicks_of(intake);
        let tyre = |field: Field| field.si(intake).map(|pa| pascal(pa.clamp(0.2e5, 3.5e5)));
        told.tyres = Ends {
            front: tyre(Field::FrontTyre).unwrap_or(told.tyres.front),
            rear: tyre(Field::RearTyre).unwrap_or(told.tyres.rear),
        };
        told
    }

    /// Speed of a fork leg and of the shock's shaft over that of their axle, about ride height.
    pub fn shaft_speeds(&self) -> Ends<f64> {
        Ends {
            front: self.fork.0.speed_share,
            rear: self.shock.0.speed_share,
        }
    }

    /// The set-up advised before any ride.
    pub fn advised(&self) -> Trial {
        let air = Surroundings::same(self.situation.surroundings.riding);
        Trial {
            machine: self.situation.machine,
            set_up: self.baseline.set_up,
            clicks: self.start,
            air,
            condition: Condition::SOUND,
        }
    }

    /// The bike as it stands.
    pub fn now(&self) -> Trial {
        Trial {
            machine: self.situation.machine,
            set_up: self.situation.now,
            clicks: self.now_clicks,
            air: self.situation.surroundings,
            condition: Condition::SOUND,
        }
    }

    /// Rides trials over every ground: for each trial the outcomes in the order of the grounds.
    pub fn ride_everywhere(
        &self,
        trials: &[Trial],
        grounds: &[Ground],
    ) -> Result<Vec<Vec<Outcome>>, RideError> {
        let bikes = self.side_by_side(trials)?;
        let mut all: Vec<Vec<Outcome>> = vec![Vec::with_capacity(grounds.len()); trials.len()];
        for ground in grounds {
            for (of_trial, outcome) in all.iter_mut().zip(ride(&bikes, trials.len(), ground)) {
                of_trial.push(outcome);
            }
        }
        Ok(all)
    }

    /// How many trials ride side by side: groups of this many waste nothing.
    pub const SIDE_BY_SIDE: usize = Row::LANES;

    /// All trials as bikes, as many side by side as there are lanes.
    pub fn side_by_side(&self, trials: &[Trial]) -> Result<Vec<Bike<Row>>, RideError> {
        trials
            .chunks(Row::LANES)
            .map(|group| self.bike(group))
            .collect()
    }

    /// Several trials as bikes side by side.
    pub fn bike<T: Lane>(&self, trials: &[Trial]) -> Result<Bike<T>, RideError> {
        let candidates = trials
            .iter()
            .map(|trial| self.candidate(trial))
            .collect::<Result<Vec<_>, RideError>>()?;
        Bike::of(&candidates)
    }

    /// A trial as a bike to be ridden.
    pub fn candidate<'b>(&'b self, trial: &'b Trial) -> Result<Candidate<'b>, RideError> {
        let laws = self.laws(trial)?;
        let kind = trial.machine.class.kind;
        let share = trial.condition.tyres;
        let of = |pressure: Pressure, share: f64| (pressure * share).max(LEAST_TYRE).min(MOST_TYRE);
        Ok(Candidate {
            machine: &trial.machine,
            load: &self.situation.load,
            set_up: &trial.set_up,
            surroundings: &trial.air,
            fork_damper: laws.front,
            shock_damper: laws.rear,
            tyres: Tyres {
                front: Tyre::front(kind, of(self.tyres.front, share.front))?,
                rear: Tyre::rear(kind, of(self.tyres.rear, share.rear))?,
            },
            rider: self.rider,
        })
    }

    /// The bike on the bench.
    pub fn machine(&self) -> &Machine {
        &self.situation.machine
    }

    /// Who rides what where.
    pub fn situation(&self) -> &Situation {
        self.situation
    }

    /// What suits, before any ride.
    pub fn baseline(&self) -> &Baseline {
        self.baseline
    }

    /// Clicks of each adjuster from closed to open.
    pub fn ranges(&self) -> Clicks {
        self.ranges
    }

    /// Radius of the tyres, mean of both, m.
    pub fn tyre_radius_m(&self) -> Result<f64, OutOfRange> {
        let kind = self.situation.machine.class.kind;
        let front = Tyre::front(kind, self.tyres.front)?.radius;
        let rear = Tyre::rear(kind, self.tyres.rear)?.radius;
        Ok(0.5 * (front + rear).value)
    }
}

/// Pressures between which a tyre's rate is known, gauge.
const LEAST_TYRE: Pressure = pascal(0.2 * BAR_IN_PA);
const MOST_TYRE: Pressure = pascal(3.5 * BAR_IN_PA);

/// Rides what [`Bench::side_by_side`] made of `trials` trials over one ground, and averages over its courses.
pub fn ride(bikes: &[Bike<Row>], trials: usize, ground: &Ground) -> Vec<Outcome> {
    let mut all = Vec::with_capacity(trials);
    for bike in bikes {
        let ridden: Vec<(Metrics<Row>, Row)> = ground
            .pieces
            .iter()
            .map(|course| feel(bike, course))
            .collect();
        let left = (trials - all.len()).min(Row::LANES);
        all.extend((0..left).filter_map(|lane| {
            let one: Vec<_> = ridden
                .iter()
                .map(|(metrics, _)| metrics.lane(lane))
                .collect();
            let rides: Vec<f64> = ridden.iter().map(|(_, rides)| rides.lane(lane)).collect();
            let falls = rides.iter().map(|rides| 1.0 - rides).sum();
            Some(Outcome {
                metrics: Metrics::mean(&one)?,
                falls,
            })
        }));
    }
    all
}

/// Figures of one ride, and 1 per lane that rode to the end, 0 where the bike fell.
fn feel<T: Lane>(bike: &Bike<T>, course: &Course) -> (Metrics<T>, T) {
    let mut feel = Feel::new(&course.clock(SEARCH_STEP_S), &bike.resting());
    let mut ride = Ride::start(bike, course, SEARCH_STEP_S);
    while !ride.over() {
        ride.step();
        feel.step(&ride.sample());
    }
    (feel.metrics(), ride.rides())
}

/// The damping an adjuster really gives: what its range cut off is not there.
fn reached(start: &clickers::Baseline) -> DampingRate {
    let share = start.clipped.map_or(1.0, |clipped| clipped.share);
    newton_second_per_meter(start.each_damper.value * share)
}

fn clicks_of(start: &Clickers, of: impl Fn(&clickers::Baseline) -> u8) -> Clicks {
    [
        of(&start.fork_compression),
        of(&start.fork_rebound),
        of(&start.shock_compression),
        of(&start.shock_rebound),
    ]
}

/// The nearest whole click from 0 to `last`.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "limited to the range of an adjuster, which is at most 60 clicks"
)]
pub(super) fn whole(clicks: f64, last: u8) -> u8 {
    clicks.round().clamp(0.0, f64::from(last)) as u8
}
