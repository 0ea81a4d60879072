//! How much results tell of what is wrong: their mutual information, over every bike that is believed.

use super::Cause;
use super::belief::Belief;
use super::hypotheses::Hypothesis;

/// Bikes believed less than this are left out: together they change no result.
const LEAST_BELIEVED: f64 = 2e-4;
/// Results of one check that come up less often are counted as one before another check's are set beside them. That loses a
/// little of what they tell, and never makes it more.
const RARE: f64 = 0.005;

/// The bikes that are believed.
pub struct Believed<'a> {
    /// Which, with how much each is believed.
    ways: Vec<(&'a Hypothesis<'a>, f64)>,
    /// For each of them its place among the sets of causes.
    group: Vec<usize>,
    /// How much each set of causes is believed.
    groups: Vec<f64>,
}

/// The chance of each result on each bike believed.
#[derive(Clone)]
pub struct Results(Vec<Vec<f64>>);

impl<'a> Believed<'a> {
    /// Of all bikes those that are believed at all.
    pub fn of(hypotheses: &'a [Hypothesis<'a>], belief: &Belief) -> Self {
        let chances = belief.of_hypotheses.iter().copied();
        let believed = |(_, chance): &(_, f64)| *chance >= LEAST_BELIEVED;
        let ways: Vec<_> = hypotheses.iter().zip(chances).filter(believed).collect();
        let mut sets: Vec<Vec<Cause>> = Vec::new();
        let mut groups: Vec<f64> = Vec::new();
        let mut group = Vec::with_capacity(ways.len());
        for (way, chance) in &ways {
            let causes: Vec<Cause> = way.faults.iter().map(|fault| fault.cause).collect();
            let place = sets.iter().position(|set| *set == causes);
            let place = place.unwrap_or_else(|| {
                sets.push(causes);
                groups.push(0.0);
                sets.len() - 1
            });
            groups[place] += chance;
            group.push(place);
        }
        Self {
            ways,
            group,
            groups,
        }
    }

    /// The results of a check by what it shows on a bike; the chances of a bike sum to 1.
    pub fn results(&self, shown: impl Fn(&Hypothesis) -> Vec<f64>) -> Results {
        Results(self.ways.iter().map(|(way, _)| shown(way)).collect())
    }

    /// How often each result comes up.
    fn totals(&self, results: &Results) -> Vec<f64> {
        let mut totals = vec![0.0; results.0.first().map_or(0, Vec::len)];
        for ((_, chance), row) in self.ways.iter().zip(&results.0) {
            for (total, one) in totals.iter_mut().zip(row) {
                *total += chance * one;
            }
        }
        totals
    }

    /// The same with rare results counted as one.
    fn without_rare(&self, results: &Results) -> Results {
        let totals = self.totals(results);
        let all: f64 = totals.iter().sum();
        let rare: Vec<bool> = totals.iter().map(|total| *total < RARE * all).collect();
        let merged = |row: &Vec<f64>| {
            let (mut kept, mut others) = (Vec::with_capacity(row.len()), 0.0);
            for (one, rare) in row.iter().zip(&rare) {
                if *rare {
                    others += one;
                } else {
                    kept.push(*one);
                }
            }
            kept.push(others);
            kept
        };
        Results(results.0.iter().map(merged).collect())
    }

    /// The results of two checks side by side: on one bike they do not depend on each other.
    pub fn both(&self, first: &Results, second: &Results) -> Results {
        let (first, second) = (self.without_rare(first), self.without_rare(second));
        let rows = first.0.iter().zip(&second.0);
        let beside = |(first, second): (&Vec<f64>, &Vec<f64>)| {
            let pairs = first.iter().flat_map(|a| second.iter().map(move |b| a * b));
            pairs.collect()
        };
        Results(rows.map(beside).collect())
    }

    /// Mutual information of these results and of which causes are there, bits.
    pub fn bits(&self, results: &Results) -> f64 {
        let totals = self.totals(results);
        let mut joint = vec![vec![0.0; totals.len()]; self.groups.len()];
        for (((_, chance), row), group) in self.ways.iter().zip(&results.0).zip(&self.group) {
            for (sum, one) in joint[*group].iter_mut().zip(row) {
                *sum += chance * one;
            }
        }
        let all: f64 = self.groups.iter().sum();
        let of_group = |(row, chance): (&Vec<f64>, &f64)| -> f64 {
            let told = row.iter().zip(&totals).filter(|(joint, _)| **joint > 0.0);
            told.map(|(joint, total)| joint * libm::log2(joint * all / (chance * total)))
                .sum()
        };
        let bits: f64 = joint.iter().zip(&self.groups).map(of_group).sum();
        bits.max(0.0) / all
    }
}
