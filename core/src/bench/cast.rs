//! Everyone who rides: trials made from one healthy bike, each ridden once, however often it is asked for.

use super::grounds::Ground;
use super::still::Still;
use super::trials::{Bench, Outcome, Trial};
use crate::ride::RideError;

/// Rides done, rides there will be; answers whether to go on.
pub type Watch<'a> = dyn FnMut(u32, u32) -> bool + 'a;

/// Trials and their rides: on each bench the same trials in the same order, the healthy bike first.
///
/// The benches are the same bike, the likeliest first, as it could be where it is not known exactly: the grounds are ridden on
/// them by turns, so that what is felt does not rest on one guess at what was not told.
#[derive(Debug, Clone)]
pub struct Cast<'a> {
    benches: &'a [Bench<'a>],
    trials: Vec<Vec<Trial>>,
    stills: Vec<Still>,
    ridden: Vec<Vec<Outcome>>,
}

impl<'a> Cast<'a> {
    /// Place of the healthy bike.
    pub const HEALTHY: usize = 0;

    /// The healthy bike alone.
    ///
    /// # Errors
    /// When there is no bench, or the bike on the first one does not come to rest.
    pub fn new(benches: &'a [Bench<'a>]) -> Result<Self, RideError> {
        let likeliest = benches.first().ok_or(RideError::Nothing)?;
        Ok(Self {
            benches,
            stills: vec![Still::of(likeliest, &likeliest.advised())?],
            trials: benches.iter().map(|bench| vec![bench.advised()]).collect(),
            ridden: Vec::new(),
        })
    }

    /// The likeliest bench.
    pub fn bench(&self) -> &Bench<'a> {
        &self.benches[0]
    }

    /// Takes a trial in on every bench, made there from the healthy bike; its place, or the place of one just like it.
    /// `None` where it cannot be put together.
    pub fn place(
        &mut self,
        make: impl Fn(&Bench, &Trial) -> Result<Trial, RideError>,
    ) -> Option<usize> {
        let made: Vec<Trial> = self
            .benches
            .iter()
            .zip(&self.trials)
            .map(|(bench, trials)| make(bench, &trials[Self::HEALTHY]))
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
        let still = Still::of(self.bench(), &made[0]).ok()?;
        for (bench, trial) in self.benches.iter().zip(&made) {
            bench.candidate(trial).ok()?;
        }
        for (all, one) in self.trials.iter_mut().zip(made) {
            all.push(one);
        }
        self.stills.push(still);
        Some(self.stills.len() - 1)
    }

    /// Rides everyone who has not ridden yet over every ground, each ground on one of the benches; how many rides that
    /// were. `None` when `watch` says to stop.
    ///
    /// # Errors
    /// When a trial cannot be ridden.
    pub fn ride(
        &mut self,
        grounds: &[Ground],
        watch: &mut Watch,
    ) -> Result<Option<u32>, RideError> {
        let each: u32 = grounds.iter().map(Ground::courses).sum();
        let rides = |trials: usize| u32::try_from(trials).unwrap_or(u32::MAX) * each;
        let known = self.ridden.len();
        let all = rides(self.stills.len() - known);
        let turns = self.benches.len();
        for from in (known..self.stills.len()).step_by(Bench::SIDE_BY_SIDE) {
            if !watch(rides(from - known), all) {
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
            self.ridden.extend(
                found
                    .into_iter()
                    .map(|all| all.into_iter().flatten().collect()),
            );
        }
        Ok(Some(all))
    }

    /// A trial on the likeliest bench.
    pub fn trial(&self, place: usize) -> &Trial {
        &self.trials[0][place]
    }

    /// A trial standing still.
    pub fn still(&self, place: usize) -> &Still {
        &self.stills[place]
    }

    /// A trial ridden, in the order of the grounds; empty before [`Self::ride`].
    pub fn ridden(&self, place: usize) -> &[Outcome] {
        self.ridden.get(place).map_or(&[], Vec::as_slice)
    }
}
