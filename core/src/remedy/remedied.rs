//! Remedies ridden: what each does to a sound bike, what it takes away of each fault, and what the likeliest bikes ride like
//! after it.
//!
//! What a remedy does to a bike with several faults is put together from its parts: what it does to a sound bike, less what
//! it takes away of each fault. Steps are differences and ratios of figures, so that they add up where bike and remedy do.
//! Where it matters most the bike with its faults is ridden as a whole; `docs/remedies.md` says how far the two differ.

use serde::{Deserialize, Serialize};

use super::RemedyId;
use super::apply::{Suits, done};
use super::reach::{moved, reached, short};
use crate::bench::{Cast, Ground, Trial, Watch};
use crate::bike::atmosphere::gauge_to_set;
use crate::bike::{ForkSpring, Surroundings};
use crate::cause::felt::{FEELINGS, Seen, felt};
use crate::cause::figures::figure;
use crate::cause::rehearsal::{Rehearsed, seen};
use crate::cause::{Cause, Hypothesis};
use crate::intake::Feeling;
use crate::ride::RideError;

/// Steps of every feeling at either end, as in [`Felt::steps`].
pub type Steps = [[f64; 2]; FEELINGS];

/// No step either way.
pub const UNMOVED: Steps = [[0.0; 2]; FEELINGS];

/// All that was tried.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Remedied {
    /// What remedies do to a sound bike; those that do nothing are left out.
    pub own: Vec<Own>,
    /// Which faults they take away, all or in part; those they leave as they are are left out.
    pub reach: Vec<Reach>,
    /// The likeliest bikes, ridden as a whole.
    pub whole: Vec<Whole>,
}

/// What a remedy does to a sound bike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Own {
    /// Which remedy.
    pub remedy: RemedyId,
    /// Whether it does so on a gas fork only, on a bike whose fork is not known.
    pub needs_gas: bool,
    /// Steps it adds.
    pub change: Steps,
}

/// What a remedy does to a fault.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reach {
    /// Which remedy.
    pub remedy: RemedyId,
    /// Place of the fault in the rehearsal.
    pub fault: usize,
    /// How many times what it does to a sound bike it does here: clicks go on while they help.
    pub times: f64,
    /// Share of the fault that stays, 0 to 1.
    pub left: f64,
}

/// A bike ridden as it is and after remedies.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Whole {
    /// Places of its faults in the rehearsal, in order.
    pub faults: Vec<usize>,
    /// As it is.
    pub before: Found,
    /// After each of some remedies.
    pub after: Vec<(RemedyId, Found)>,
}

/// What a bike rides like.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Found {
    /// Steps from the bike that suits.
    pub steps: Steps,
    /// The figure of each feeling that has one, front and rear, SI; see [`figure`].
    pub figures: Vec<(Feeling, [f64; 2])>,
}

/// A remedy on the sound bike, and where it stands in the cast.
#[derive(Debug, Clone, Copy)]
pub struct Placed {
    remedy: RemedyId,
    before: usize,
    after: usize,
}

/// Takes into the cast what every remedy makes of a sound bike, to be ridden with the faults.
///
/// `told` is the air in which the bike was filled and rides. Trapped air is let out of legs that were last opened there.
pub fn on_sound_bike(cast: &mut Cast, told: &Surroundings) -> Vec<Placed> {
    let mut all = Vec::new();
    for remedy in RemedyId::ALL {
        let (before, after) = if *remedy == RemedyId::BleedAir {
            (
                cast.place(|_, healthy| Ok(unbled(healthy, told))),
                Some(Cast::HEALTHY),
            )
        } else {
            let after = cast
                .place(|bench, healthy| Ok(done(*remedy, &Suits::new(bench, healthy), healthy)));
            (Some(Cast::HEALTHY), after)
        };
        if let (Some(before), Some(after)) = (before, after)
            && before != after
        {
            all.push(Placed {
                remedy: *remedy,
                before,
                after,
            });
        }
    }
    all
}

/// Share of forks whose legs were not opened since they came to other air (from memory).
const NOT_OPENED: f64 = 0.5;

/// The bike with its fork legs last opened where it was filled; its gas as it should be today.
fn unbled(healthy: &Trial, told: &Surroundings) -> Trial {
    let mut trial = healthy.clone();
    if told.filled != told.riding {
        trial.air = Surroundings {
            bled: false,
            ..*told
        };
        let as_filled = |today| gauge_to_set(today, told.filled, told.riding);
        if let ForkSpring::Gas { charge } = &mut trial.set_up.fork.spring {
            *charge = as_filled(*charge);
        }
        trial.set_up.shock.reservoir = as_filled(trial.set_up.shock.reservoir);
    }
    trial
}

impl Remedied {
    /// What remedies do to the sound bike of a ridden cast, and to each of `faults`, whose places count from `first`.
    pub fn of(
        cast: &Cast,
        placed: &[Placed],
        (faults, first): (&[Rehearsed], usize),
        grounds: &[Ground],
        needs_gas: bool,
    ) -> Self {
        let own = placed
            .iter()
            .map(|one| {
                let (after, before) = (seen(cast, one.after), seen(cast, one.before));
                let share = match one.remedy {
                    RemedyId::BleedAir => NOT_OPENED,
                    _ => 1.0,
                };
                Own {
                    remedy: one.remedy,
                    needs_gas,
                    change: moved(&felt(&after, &before, grounds))
                        .map(|ends| ends.map(|steps| short(share * steps))),
                }
            })
            .collect();
        let healthy = cast.trial(Cast::HEALTHY);
        let suits = Suits::new(cast.bench(), healthy);
        let reach = RemedyId::ALL.iter().flat_map(|remedy| {
            let sound = done(*remedy, &suits, healthy);
            let on = |(place, fault): (usize, &Rehearsed)| {
                let (times, left) = reached(cast, &suits, *remedy, (healthy, &sound), fault)?;
                Some(Reach {
                    remedy: *remedy,
                    fault: first + place,
                    times,
                    left,
                })
            };
            faults.iter().enumerate().filter_map(on).collect::<Vec<_>>()
        });
        Self {
            own,
            reach: reach.collect(),
            whole: Vec::new(),
        }
    }

    /// Puts what was tried on another kind of the same bike beside this.
    pub fn and(&mut self, other: Self) {
        for one in other.own {
            if self.own.iter().all(|known| known.remedy != one.remedy) {
                self.own.push(one);
            }
        }
        self.reach.extend(other.reach);
        self.whole.extend(other.whole);
    }

    /// Rides whole bikes: for each set of faults the remedies named beside it. How many rides that took; `None` when `watch`
    /// says to stop.
    ///
    /// # Errors
    /// When a bike cannot be ridden. One that cannot be put together is left out.
    pub fn ride_whole(
        &mut self,
        cast: &mut Cast,
        faults: &[Rehearsed],
        wanted: &[(Vec<usize>, Vec<RemedyId>)],
        grounds: &[Ground],
        watch: &mut Watch,
    ) -> Result<Option<u32>, RideError> {
        let mut places = Vec::new();
        for (set, remedies) in wanted {
            let with = |healthy: &Trial| {
                let put_on = |trial: Trial, place: &usize| faults[*place].fault().put_on(&trial);
                set.iter().fold(healthy.clone(), put_on)
            };
            let nature = set
                .iter()
                .map(|place| faults[*place].fault())
                .find(|fault| fault.cause == Cause::GasDrag);
            let against = match nature {
                Some(fault) => cast.place(|bench, healthy| fault.reference(bench, healthy)),
                None => Some(Cast::HEALTHY),
            };
            let before = cast.place(|_, healthy| Ok(with(healthy)));
            let (Some(before), Some(against)) = (before, against) else {
                continue;
            };
            let after: Vec<(RemedyId, usize)> = remedies
                .iter()
                .filter_map(|remedy| {
                    let place = cast.place(|bench, healthy| {
                        Ok(done(*remedy, &Suits::new(bench, healthy), &with(healthy)))
                    })?;
                    Some((*remedy, place))
                })
                .collect();
            places.push((set, against, before, after));
        }
        let Some(rides) = cast.ride(grounds, watch)? else {
            return Ok(None);
        };
        self.whole = places
            .into_iter()
            .map(|(set, against, before, after)| {
                let against = seen(cast, against);
                let found = |place: usize| found(&seen(cast, place), &against, grounds);
                Whole {
                    faults: set.clone(),
                    before: found(before),
                    after: after
                        .into_iter()
                        .map(|(remedy, place)| (remedy, found(place)))
                        .collect(),
                }
            })
            .collect();
        Ok(Some(rides))
    }

    /// Steps of a bike before and after a remedy: as ridden where it was, else put together from its parts.
    pub fn around(
        &self,
        remedy: RemedyId,
        hypothesis: &Hypothesis,
        faults: &[Rehearsed],
    ) -> (Steps, Steps) {
        let places = places(hypothesis, faults);
        self.ridden(remedy, &places).map_or_else(
            || self.put_together(remedy, hypothesis, &places, faults),
            |(before, after)| (before.steps, after.steps),
        )
    }

    /// Whether a remedy takes away at least half of one of these faults.
    pub fn puts_right(&self, remedy: RemedyId, places: &[usize]) -> bool {
        let mine = self.reach.iter().filter(|reach| reach.remedy == remedy);
        mine.into_iter()
            .any(|reach| reach.left <= 0.5 && places.contains(&reach.fault))
    }

    /// A bike ridden as a whole before and after a remedy.
    pub fn ridden(&self, remedy: RemedyId, places: &[usize]) -> Option<(&Found, &Found)> {
        let whole = self.whole.iter().find(|whole| whole.faults == places)?;
        let (_, after) = whole.after.iter().find(|(id, _)| *id == remedy)?;
        Some((&whole.before, after))
    }

    /// Before and after from parts.
    pub fn put_together(
        &self,
        remedy: RemedyId,
        hypothesis: &Hypothesis,
        places: &[usize],
        faults: &[Rehearsed],
    ) -> (Steps, Steps) {
        let before = hypothesis.felt.steps;
        let gas = hypothesis
            .faults
            .iter()
            .any(|fault| fault.cause.needs_gas());
        let own = self
            .own
            .iter()
            .find(|own| own.remedy == remedy && (gas || !own.needs_gas));
        let reach: Vec<&Reach> = places
            .iter()
            .filter_map(|place| {
                let here = |reach: &&Reach| reach.remedy == remedy && reach.fault == *place;
                self.reach.iter().find(here)
            })
            .collect();
        let times = reach.iter().map(|reach| reach.times).fold(1.0, f64::max);
        let mut after = before;
        for (feeling, ends) in after.iter_mut().enumerate() {
            for (end, steps) in ends.iter_mut().enumerate() {
                *steps += own.map_or(0.0, |own| times * own.change[feeling][end]);
                for reach in &reach {
                    *steps -= (1.0 - reach.left) * beyond_nature(faults, reach.fault)[feeling][end];
                }
            }
        }
        (before, after)
    }
}

/// Places of the faults of a hypothesis in the rehearsal.
pub fn places(hypothesis: &Hypothesis, faults: &[Rehearsed]) -> Vec<usize> {
    let place = |one: &&Rehearsed| faults.iter().position(|fault| core::ptr::eq(fault, *one));
    hypothesis.faults.iter().filter_map(place).collect()
}

/// Steps that a fault adds to a bike as it comes: for a gas leg's nature, which every gas fork has, only what lies beyond.
fn beyond_nature(faults: &[Rehearsed], place: usize) -> Steps {
    let fault = &faults[place];
    let own = moved(&fault.felt);
    if fault.cause != Cause::GasDrag {
        return own;
    }
    // The mild degree is the sound leg itself.
    let nature = faults
        .iter()
        .find(|other| other.cause == Cause::GasDrag && !other.plain);
    let nature = nature.map_or(UNMOVED, |nature| moved(&nature.felt));
    core::array::from_fn(|feeling| {
        core::array::from_fn(|end| own[feeling][end] - nature[feeling][end])
    })
}

fn found(now: &Seen, against: &Seen, grounds: &[Ground]) -> Found {
    let of = |feeling: &Feeling| {
        let ends = figure(*feeling, now, grounds)?;
        Some((*feeling, [ends.front, ends.rear]))
    };
    Found {
        steps: felt(now, against, grounds)
            .steps
            .map(|ends| ends.map(short)),
        figures: Feeling::ALL.iter().filter_map(of).collect(),
    }
}
