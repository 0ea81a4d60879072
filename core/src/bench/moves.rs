//! Trials beside a trial: the springs sold next to those advised, and clickers moved one way or the other.

use super::trials::{Bench, Trial, whole};
use crate::bike::ForkSpring;
use crate::stance::baseline::Front;
use crate::stance::clickers::MARGIN;

impl Bench<'_> {
    /// The advised set-up with the other one of the two nearest springs, front, then rear; a spring that is kept has none.
    pub fn other_springs(&self) -> Vec<Trial> {
        let advised = self.advised();
        let on = |fork, shock| Trial {
            set_up: self.baseline.on_springs(self.situation, fork, shock),
            ..advised.clone()
        };
        let mut others = Vec::new();
        if let (
            Front::Coil {
                nearest, fitted, ..
            },
            ForkSpring::Coil { .. },
        ) = (&self.baseline.front, advised.set_up.fork.spring)
        {
            let on_offer = nearest.iter().any(|offer| offer.rate == *fitted);
            if let Some(other) = nearest
                .iter()
                .find(|offer| offer.rate != *fitted)
                .filter(|_| on_offer)
            {
                others.push(on(Some(other.rate), advised.set_up.shock.rate));
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
            others.push(on(None, other.rate));
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
}
