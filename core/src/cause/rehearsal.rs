//! What every cause would do to this bike under this rider on this ground: ridden once, then asked as often as answers change.

use serde::{Deserialize, Serialize};

use super::Cause;
use super::fault::Fault;
use super::felt::{Felt, Seen, felt};
use crate::bench::{Bench, Ground, Outcome, Still, Trial};
use crate::feel::{Ends, Metrics};
use crate::intake::Change;
use crate::ride::RideError;

/// A fault as this bike would show it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Rehearsed {
    /// What is amiss.
    pub cause: Cause,
    /// How far, see [`Fault::degrees`].
    pub degree: f64,
    /// Whether it is there plainly, not mildly.
    pub plain: bool,
    /// What the rider would feel.
    pub felt: Felt,
    /// What would be measured, beside what the healthy bike measures.
    pub shown: Shown,
}

/// What would be measured on a bike with a fault, less the same on the healthy one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Shown {
    /// Free sag, front along the leg and rear at the axle, m.
    pub free_m: [f64; 2],
    /// Rider sag, m.
    pub ridden_m: [f64; 2],
    /// Deepest travel on the hardest usual ground, share of the full travel, front and rear.
    pub travel: [f64; 2],
    /// Gauge pressure of the fork, relative.
    pub gauge: f64,
    /// Force that starts the fork and friction at the rear axle, N.
    pub breakaway_n: [f64; 2],
    /// Low-speed damping, natural logarithm: fork compression, fork rebound, shock compression, shock rebound.
    pub damping: [f64; 4],
    /// Void at the reversal, m.
    pub void_m: [f64; 2],
}

impl Shown {
    /// A healthy bike.
    pub const NOTHING: Self = Self {
        free_m: [0.0; 2],
        ridden_m: [0.0; 2],
        travel: [0.0; 2],
        gauge: 0.0,
        breakaway_n: [0.0; 2],
        damping: [0.0; 4],
        void_m: [0.0; 2],
    };

    /// Two faults at once: what they do adds up.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let both = |a: [f64; 2], b: [f64; 2]| [a[0] + b[0], a[1] + b[1]];
        Self {
            free_m: both(self.free_m, other.free_m),
            ridden_m: both(self.ridden_m, other.ridden_m),
            travel: both(self.travel, other.travel),
            gauge: self.gauge + other.gauge,
            breakaway_n: both(self.breakaway_n, other.breakaway_n),
            damping: core::array::from_fn(|place| self.damping[place] + other.damping[place]),
            void_m: both(self.void_m, other.void_m),
        }
    }
}

/// All faults this bike could have, as it would show them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Rehearsal {
    /// Every fault of every cause the bike can have.
    pub faults: Vec<Rehearsed>,
    /// What each change made at the track does to the healthy bike.
    pub changes: Vec<Moved>,
    /// Rides ridden.
    pub rides: u32,
}

/// What one change made at the track does to the healthy bike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Moved {
    /// The change.
    pub change: Change,
    /// What the rider would feel of it; below 0 is better.
    pub felt: Felt,
}

/// Rides done, rides there will be; answers whether to go on.
pub type Watch<'a> = dyn FnMut(u32, u32) -> bool + 'a;

/// Rides every fault over the grounds. `None` when `watch` says to stop.
///
/// `benches` are the same bike, the likeliest first, as it could be where it is not known exactly: the grounds are ridden on
/// them by turns, so that what is felt does not rest on one guess at what was not told. Without grounds a fault is judged by
/// what shows standing still.
///
/// # Errors
/// When the healthy bike cannot be ridden. A fault that cannot be put together is left out.
pub fn rehearse(
    benches: &[Bench],
    grounds: &[Ground],
    can_have: impl Fn(Cause) -> bool,
    watch: &mut Watch,
) -> Result<Option<Rehearsal>, RideError> {
    let Some(likeliest) = benches.first() else {
        return Err(RideError::Nothing);
    };
    let mut cast = Cast {
        benches,
        stills: vec![Still::of(likeliest, &likeliest.advised())?],
        trials: benches.iter().map(|bench| vec![bench.advised()]).collect(),
    };
    // For each fault, where it and what it is held against stand among the trials.
    let mut places: Vec<(Fault, usize, usize)> = Vec::new();
    for fault in Fault::all().filter(|fault| can_have(fault.cause)) {
        let against = cast.place(|bench, healthy| fault.reference(bench, healthy));
        let with = cast.place(|_, healthy| Ok(fault.put_on(healthy)));
        if let (Some(with), Some(against)) = (with, against) {
            places.push((fault, with, against));
        }
    }
    let made: Vec<(Change, usize)> = Change::ALL
        .iter()
        .filter_map(|change| {
            let place = cast.place(|bench, healthy| {
                bench.changed(healthy, *change).ok_or(RideError::Nothing)
            })?;
            Some((*change, place))
        })
        .collect();
    let Some((ridden, rides)) = cast.ride(grounds, watch)? else {
        return Ok(None);
    };
    let seen = |place: usize| Seen {
        trial: &cast.trials[0][place],
        still: cast.stills[place],
        ridden: &ridden[place],
    };
    let faults = places
        .into_iter()
        .map(|(fault, with, against)| {
            let (with, against) = (seen(with), seen(against));
            Rehearsed {
                cause: fault.cause,
                degree: fault.degree,
                plain: fault.plain,
                felt: felt(&with, &against, grounds),
                shown: shown(&with, &against),
            }
        })
        .collect();
    let changes = made
        .into_iter()
        .map(|(change, place)| Moved {
            change,
            felt: felt(&seen(place), &seen(0), grounds),
        })
        .collect();
    Ok(Some(Rehearsal {
        faults,
        changes,
        rides,
    }))
}

/// Everyone who rides in a rehearsal: on each bench the same trials in the same order, the healthy bike first.
struct Cast<'a> {
    benches: &'a [Bench<'a>],
    trials: Vec<Vec<Trial>>,
    stills: Vec<Still>,
}

impl Cast<'_> {
    /// Takes a trial in on every bench, made there from the healthy bike; its place, or the place of one just like it.
    /// `None` where it cannot be put together.
    fn place(
        &mut self,
        make: impl Fn(&Bench, &Trial) -> Result<Trial, RideError>,
    ) -> Option<usize> {
        let made: Vec<Trial> = self
            .benches
            .iter()
            .zip(&self.trials)
            .map(|(bench, trials)| make(bench, &trials[0]))
            .collect::<Result<_, _>>()
            .ok()?;
        let alike = |place: &usize| {
            made.iter()
                .zip(&self.trials)
                .all(|(one, all)| all[*place] == *one)
        };
        if let Some(known) = (0..self.stills.len()).find(alike) {
            return Some(known);
        }
        let still = Still::of(&self.benches[0], &made[0]).ok()?;
        for (bench, trial) in self.benches.iter().zip(&made) {
            bench.candidate(trial).ok()?;
        }
        for (all, one) in self.trials.iter_mut().zip(made) {
            all.push(one);
        }
        self.stills.push(still);
        Some(self.stills.len() - 1)
    }

    /// Rides everyone over every ground, each ground on one of the benches: for each place the outcomes in the order of the
    /// grounds, and how many rides that were.
    fn ride(
        &self,
        grounds: &[Ground],
        watch: &mut Watch,
    ) -> Result<Option<(Vec<Vec<Outcome>>, u32)>, RideError> {
        let each: u32 = grounds.iter().map(Ground::courses).sum();
        let rides = |places: usize| u32::try_from(places).unwrap_or(u32::MAX) * each;
        let all = rides(self.stills.len());
        let mut ridden: Vec<Vec<Outcome>> = Vec::with_capacity(self.stills.len());
        let turns = self.benches.len();
        for from in (0..self.stills.len()).step_by(Bench::SIDE_BY_SIDE) {
            if !watch(rides(from), all) {
                return Ok(None);
            }
            let to = (from + Bench::SIDE_BY_SIDE).min(self.stills.len());
            let mut found: Vec<Vec<Option<Outcome>>> = vec![vec![None; grounds.len()]; to - from];
            for (turn, (bench, trials)) in self.benches.iter().zip(&self.trials).enumerate() {
                let here: Vec<usize> = (turn..grounds.len()).step_by(turns).collect();
                let on: Vec<Ground> = here.iter().map(|place| grounds[*place].clone()).collect();
                let outcomes = bench.ride_everywhere(&trials[from..to], &on)?;
                for (of_trial, outcomes) in found.iter_mut().zip(outcomes) {
                    for (place, outcome) in here.iter().zip(outcomes) {
                        of_trial[*place] = Some(outcome);
                    }
                }
            }
            ridden.extend(
                found
                    .into_iter()
                    .map(|all| all.into_iter().flatten().collect()),
            );
        }
        Ok(Some((ridden, all)))
    }
}

fn shown(with: &Seen, against: &Seen) -> Shown {
    let (now, then) = (&with.still, &against.still);
    let deepest = |seen: &Seen| {
        let most = |of: fn(&Metrics<f64>) -> f64| {
            seen.ridden
                .iter()
                .map(|outcome| of(&outcome.metrics))
                .fold(0.0, f64::max)
        };
        [
            most(|m| m.travel_deepest.front),
            most(|m| m.travel_deepest.rear),
        ]
    };
    let (deep_now, deep_then) = (deepest(with), deepest(against));
    let both = |now: Ends<f64>, then: Ends<f64>| [now.front - then.front, now.rear - then.rear];
    Shown {
        free_m: both(now.free_m, then.free_m),
        ridden_m: both(now.ridden_m, then.ridden_m),
        travel: [deep_now[0] - deep_then[0], deep_now[1] - deep_then[1]],
        gauge: match (now.gauge_pa, then.gauge_pa) {
            (Some(now), Some(then)) => now / then - 1.0,
            _ => 0.0,
        },
        breakaway_n: both(now.breakaway_n, then.breakaway_n),
        damping: core::array::from_fn(|place| {
            libm::log(now.damping_n_s_per_m[place] / then.damping_n_s_per_m[place])
        }),
        void_m: both(now.void_m, then.void_m),
    }
}
