//! The settings search: many set-ups ridden over the rider's own ground, the best one inside hard limits kept.
//!
//! It starts from what statics and damping ratios say, tries the springs sold next to the ones advised, then moves
//! the four low-speed adjusters a few clicks each way, together and once more around the best. A set-up is taken
//! only when it is clearly better: over random ground a difference under [`CLEAR`] could be chance.

mod score;

use crate::bench::{Bench, Ground, Outcome, Trial, grounds, ride};
use crate::feel::Metrics;
use crate::ride::RideError;
use score::{Limits, cost};

/// Relative gain below which two set-ups are told apart by chance only.
///
/// From memory: other seeds of the same ground move such means by 1 to 2 %.
pub const CLEAR: f64 = 0.01;

/// What is being tried, for whoever waits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// Sizing the ground so that a healthy bike uses its travel.
    Ground,
    /// The springs sold next to the ones advised.
    Springs,
    /// Each adjuster alone.
    Alone,
    /// The moves that helped, together.
    Together,
    /// Once more around the best.
    Around,
}

/// Rides done, rides there will be, and what is being tried; answers whether to go on.
pub type Watch<'a> = dyn FnMut(u32, u32, Stage) -> bool + 'a;

/// What the search found.
#[derive(Debug, Clone)]
pub struct Found {
    /// The best set-up.
    pub best: Trial,
    /// The bike as it stands.
    pub now: Trial,
    /// Per ground: the bike as it stands and the best set-up.
    pub feel: Vec<(Ground, Metrics<f64>, Metrics<f64>)>,
    /// Rides ridden.
    pub rides: u32,
}

/// A set-up with what it scored.
#[derive(Debug, Clone)]
struct Scored {
    trial: Trial,
    cost: f64,
    metrics: Vec<Outcome>,
}

/// Rides out what the situation leaves open. `None` when `watch` says to stop.
///
/// # Errors
/// When the bike cannot be put together for a ride; an intake that has passed its checks can still ask for that.
pub fn search(bench: &Bench, watch: &mut Watch) -> Result<Option<Found>, RideError> {
    let mut search = Search {
        bench,
        grounds: Vec::new(),
        start: None,
        rides: 0,
        watch,
    };
    if !search.go_on(Stage::Ground) {
        return Ok(None);
    }
    search.grounds = grounds::of(bench)?;
    let now = bench.now();
    let mut first = vec![bench.advised(), now.clone()];
    first.extend(bench.other_springs());
    let Some(scored) = search.score(first, Stage::Springs)? else {
        return Ok(None);
    };
    let now = scored[1].clone();
    let others = scored
        .iter()
        .enumerate()
        .filter(|(place, _)| *place != 1)
        .map(|(_, s)| s);
    let start = best(others.cloned()).unwrap_or_else(|| scored[0].clone());

    let Some(alone) = search.score(bench.each_way(&start.trial, ALONE), Stage::Alone)? else {
        return Ok(None);
    };
    let together = bench.joined(&start.trial, &helping(&start, &alone));
    let Some(joined) = search.score(together, Stage::Together)? else {
        return Ok(None);
    };
    let so_far = clearly_better(&start, alone.into_iter().chain(joined));
    let Some(around) = search.score(bench.each_way(&so_far.trial, AROUND), Stage::Around)? else {
        return Ok(None);
    };
    let best = clearly_better(&so_far, around);
    let feel = search
        .grounds
        .iter()
        .zip(now.metrics.iter().zip(&best.metrics))
        .map(|(ground, (before, after))| (ground.clone(), before.metrics, after.metrics))
        .collect();
    Ok(Some(Found {
        best: best.trial,
        now: now.trial,
        feel,
        rides: search.rides,
    }))
}

/// Clicks an adjuster is moved when each is tried alone, and around the best.
const ALONE: f64 = 3.0;
const AROUND: f64 = 1.0;

/// The trials of the whole search, for an honest "of how many": springs 4, alone 8, together 4, around 8.
const TRIALS: u32 = 24;

struct Search<'a, 'w> {
    bench: &'a Bench<'a>,
    grounds: Vec<Ground>,
    /// Figures of the advised set-up, against which all others are scored.
    start: Option<Vec<Outcome>>,
    rides: u32,
    watch: &'a mut Watch<'w>,
}

impl Search<'_, '_> {
    fn go_on(&mut self, stage: Stage) -> bool {
        let courses: u32 = self.grounds.iter().map(Ground::courses).sum();
        (self.watch)(self.rides, TRIALS * courses.max(1), stage)
    }

    /// Rides every trial over every ground. The very first one is the measure for all.
    fn score(
        &mut self,
        trials: Vec<Trial>,
        stage: Stage,
    ) -> Result<Option<Vec<Scored>>, RideError> {
        let bikes = self.bench.side_by_side(&trials)?;
        let mut metrics: Vec<Vec<Outcome>> = vec![Vec::new(); trials.len()];
        for place in 0..self.grounds.len() {
            if !self.go_on(stage) {
                return Ok(None);
            }
            let ground = &self.grounds[place];
            for (of_trial, found) in metrics.iter_mut().zip(ride(&bikes, trials.len(), ground)) {
                of_trial.push(found);
            }
            let ridden = u32::try_from(trials.len()).unwrap_or(u32::MAX);
            self.rides += ridden * ground.courses();
        }
        let start = self.start.get_or_insert_with(|| metrics[0].clone());
        let limits = Limits::of(self.bench, &self.grounds, start);
        let scored = trials.into_iter().zip(metrics).map(|(trial, metrics)| {
            let cost = cost(&limits, &trial, &metrics);
            Scored {
                trial,
                cost,
                metrics,
            }
        });
        Ok(Some(scored.collect()))
    }
}

fn best(all: impl Iterator<Item = Scored>) -> Option<Scored> {
    all.min_by(|a, b| a.cost.total_cmp(&b.cost))
}

/// The best of `others` where it is clearly better than `so_far`, else that.
fn clearly_better(so_far: &Scored, others: impl IntoIterator<Item = Scored>) -> Scored {
    match best(others.into_iter()) {
        Some(other) if other.cost < so_far.cost * (1.0 - CLEAR) => other,
        _ => so_far.clone(),
    }
}

/// The trials that are better than where they started, best first.
fn helping(start: &Scored, alone: &[Scored]) -> Vec<Trial> {
    let mut better: Vec<&Scored> = alone.iter().filter(|s| s.cost < start.cost).collect();
    better.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    better
        .into_iter()
        .map(|scored| scored.trial.clone())
        .collect()
}
