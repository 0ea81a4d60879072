//! Turns a trial (springs, clicks and the condition of everything else) into a bike and rides several side by side.

use wide::f32x8;

use super::condition::Condition;
use super::grounds::Ground;
use crate::bike::damping::design::USUAL_OIL;
use crate::bike::damping::{Damper, DamperLaw, Hardware, Wanted};
use crate::bike::gas::Law;
use crate::bike::limits::OutOfRange;
use crate::bike::shock::Shock;
use crate::bike::{ForkSpring, Machine, SetUp, Surroundings, Tyre};
use crate::feel::{Ends, Feel, Metrics};
use crate::intake::{Field, Intake};
use crate::lane::Lane;
use crate::ride::run::{Ride, SEARCH_STEP_S};
use crate::ride::{Bike, Candidate, Course, RideError, Rider, Tyres};
use crate::stance::baseline::Front;
use crate::stance::clickers::{self, Clickers, MARGIN};
use crate::stance::tyres::tyres;
use crate::stance::{Baseline, Situation};
use crate::units::{BAR_IN_PA, DampingRate, Pressure, newton_second_per_meter, pascal};

/// What set-ups are compared in: eight numbers of 32 bits, the most rides in a second wherever it was measured
/// (`docs/ride.md`, which also says what the short numbers cost).
pub type Row = f32x8;

/// The four low-speed adjusters, clicks from closed: fork compression, fork rebound, shock compression, shock rebound.
pub type Clicks = [u8; 4];

/// Speed of the axle in a hard hit, at which the pressure inside a damper must hold, m/s.
const HARD_HIT_M_S: f64 = 3.0;
/// Void that a damper is left with at the reversal for each pascal of pressure missing in a hard hit, m (from memory: some
/// 2 mm per bar).
const VOID_M_PER_PA: f64 = 2e-3 / BAR_IN_PA;

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
    baseline: &'a Baseline,
    start: Clicks,
    ranges: Clicks,
    fork: (Hardware, Wanted),
    shock: (Hardware, Wanted),
    tyres: Ends<Pressure>,
    rider: Rider,
    now_clicks: Clicks,
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

    /// The advised set-up with the other one of the two nearest springs, front, then rear; a spring that is kept has none.
    pub fn other_springs(&self) -> Vec<Trial> {
        let advised = self.advised();
        let mut others = Vec::new();
        if let (
            Front::Coil {
                nearest, fitted, ..
            },
            ForkSpring::Coil {
                springs, preload, ..
            },
        ) = (&self.baseline.front, advised.set_up.fork.spring)
        {
            let on_offer = nearest.iter().any(|offer| offer.rate == *fitted);
            if let Some(other) = nearest
                .iter()
                .find(|offer| offer.rate != *fitted)
                .filter(|_| on_offer)
            {
                let mut trial = advised.clone();
                trial.set_up.fork.spring = ForkSpring::Coil {
                    rate: other.rate,
                    springs,
                    preload,
                };
                others.push(trial);
            }
        }
        let rear = &self.baseline.rear;
        let on_offer = rear.nearest.iter().any(|offer| offer.rate == rear.fitted);
        if let Some(other) = rear
            .nearest
            .iter()
            .find(|offer| offer.rate != rear.fitted)
            .filter(|_| on_offer)
        {
            let mut trial = advised.clone();
            trial.set_up.shock.rate = other.rate;
            others.push(trial);
        }
        others
    }

    /// A trial with each adjuster moved alone by so many clicks, in and out, within its range.
    pub fn each_way(&self, from: &Trial, by: f64) -> Vec<Trial> {
        (0..4)
            .flat_map(|place| [(place, -by), (place, by)])
            .map(|(place, by)| self.moved(from, &[(place, by)]))
            .filter(|trial| trial.clicks != from.clicks)
            .collect()
    }

    /// The moves of several trials put together: the best two, then one more each.
    pub fn joined(&self, from: &Trial, helping: &[Trial]) -> Vec<Trial> {
        let mut moves: Vec<(usize, f64)> = Vec::new();
        let mut joined = Vec::new();
        for trial in helping {
            let change = (0..4).find_map(|place| {
                let by = f64::from(trial.clicks[place]) - f64::from(from.clicks[place]);
                (by != 0.0).then_some((place, by))
            });
            let Some((place, by)) = change else { continue };
            if moves.iter().any(|(taken, _)| *taken == place) {
                continue;
            }
            moves.push((place, by));
            if moves.len() > 1 {
                joined.push(self.moved(from, &moves));
            } else {
                // The best move alone, twice as far.
                joined.push(self.moved(from, &[(place, 2.0 * by)]));
            }
        }
        joined
    }

    /// A trial with adjusters moved by so many clicks each, out above 0, within their ranges.
    pub fn moved(&self, from: &Trial, moves: &[(usize, f64)]) -> Trial {
        let mut trial = from.clone();
        for (place, by) in moves {
            let wanted = f64::from(from.clicks[*place]) + by;
            let last = self.ranges[*place].saturating_sub(MARGIN);
            trial.clicks[*place] = whole(wanted.max(f64::from(MARGIN)), last);
        }
        trial
    }

    /// How far out of where it starts an adjuster stands, in clicks, and how many it has left outwards or inwards.
    pub fn adjuster(&self, place: usize, out: bool) -> (f64, f64) {
        let now = f64::from(self.now_clicks[place]);
        let room = if out {
            f64::from(self.ranges[place].saturating_sub(MARGIN)) - now
        } else {
            now - f64::from(MARGIN)
        };
        (now - f64::from(self.start[place]), room.max(0.0))
    }

    /// Both dampers of a trial.
    ///
    /// # Errors
    /// When the damping its condition asks for is beyond what a damper can be sized for.
    pub fn dampers(&self, trial: &Trial) -> Result<Ends<Damper>, OutOfRange> {
        let condition = &trial.condition;
        let sized = |(hardware, wanted): &(Hardware, Wanted), [into, out]: [f64; 2]| {
            let wanted = Wanted {
                compression: wanted.compression * into,
                rebound: wanted.rebound * out,
                ..*wanted
            };
            (*hardware, wanted)
        };
        let [fork_in, fork_out, shock_in, shock_out] = condition.valving;
        let (mut hardware, wanted) = sized(&self.fork, [fork_in, fork_out]);
        if let Some(shares) = condition.mid_valve {
            (hardware.mid_low, hardware.mid_high) = (shares.low_speed, shares.hard_hit);
            hardware.floats = false;
        }
        hardware.reservoir = hardware.reservoir.holding(condition.fork_reservoir);
        let mut fork = Damper::for_targets(&hardware, &wanted)?;
        let (mut hardware, wanted) = sized(&self.shock, [shock_in, shock_out]);
        let built = Shock::build(&trial.machine, &trial.set_up.shock, &trial.air);
        hardware.reservoir = Hardware::shock(&trial.machine, &built, 0.0).reservoir;
        let mut shock = Damper::for_targets(&hardware, &wanted)?;
        let [fork_in, fork_out, shock_in, shock_out] = trial.clicks.map(f64::from);
        (fork.base.clicks, fork.rebound.clicks) = (fork_in, fork_out);
        (shock.base.clicks, shock.rebound.clicks) = (shock_in, shock_out);
        fork.oil = fork.oil.with_air(condition.air.front);
        shock.oil = shock.oil.with_air(condition.air.rear);
        Ok(Ends {
            front: fork,
            rear: shock,
        })
    }

    /// Void that each stroke of either damper has to close, m along the leg and at the shaft: what is known of its
    /// condition, and what oil that boils in a hard hit leaves.
    pub fn voids_m(&self, trial: &Trial) -> Result<Ends<f64>, OutOfRange> {
        Self::voids_of(trial, &self.dampers(trial)?)
    }

    fn voids_of(trial: &Trial, dampers: &Ends<Damper>) -> Result<Ends<f64>, OutOfRange> {
        let [front, rear] = margins_pa(dampers)?;
        let boiled = |margin_pa: f64| VOID_M_PER_PA * (-margin_pa).max(0.0);
        let known = trial.condition.void_m;
        Ok(Ends {
            front: known.front + boiled(front),
            rear: known.rear + boiled(rear),
        })
    }

    /// What a ride computes of both dampers, voids in them included.
    pub fn laws(&self, trial: &Trial) -> Result<Ends<DamperLaw>, OutOfRange> {
        let dampers = self.dampers(trial)?;
        let void = Self::voids_of(trial, &dampers)?;
        Ok(Ends {
            front: dampers.front.law(USUAL_OIL)?.with_void(void.front),
            rear: dampers.rear.law(USUAL_OIL)?.with_void(void.rear),
        })
    }

    /// Lowest pressure above vapour in either damper in a hard hit, both ways, Pa.
    ///
    /// # Errors
    /// As [`Self::dampers`].
    pub fn margin_pa(&self, trial: &Trial) -> Result<f64, OutOfRange> {
        let [front, rear] = margins_pa(&self.dampers(trial)?)?;
        Ok(front.min(rear))
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
    pub(super) fn tyre_radius_m(&self) -> Result<f64, OutOfRange> {
        let kind = self.situation.machine.class.kind;
        let front = Tyre::front(kind, self.tyres.front)?.radius;
        let rear = Tyre::rear(kind, self.tyres.rear)?.radius;
        Ok(0.5 * (front + rear).value)
    }
}

/// Pressures between which a tyre's rate is known, gauge.
const LEAST_TYRE: Pressure = pascal(0.2 * BAR_IN_PA);
const MOST_TYRE: Pressure = pascal(3.5 * BAR_IN_PA);

/// Lowest pressure above vapour in each damper in a hard hit, both ways, front and rear, Pa.
fn margins_pa(dampers: &Ends<Damper>) -> Result<[f64; 2], OutOfRange> {
    let one = |damper: &Damper, speed: f64| {
        let law = damper.law(USUAL_OIL)?;
        let at = |speed| {
            damper
                .cavitation_margin(&law, 0.0, speed, law.float_m, Law::Slow)
                .value
        };
        Ok(at(speed).min(at(-speed)))
    };
    Ok([
        one(&dampers.front, HARD_HIT_M_S)?,
        one(&dampers.rear, 0.4 * HARD_HIT_M_S)?,
    ])
}

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
fn whole(clicks: f64, last: u8) -> u8 {
    clicks.round().clamp(0.0, f64::from(last)) as u8
}
