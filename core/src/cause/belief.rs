//! Belief: prior odds times what each observation says, normalised; and the weight of each piece.

use super::Cause;
use crate::words::Text;

/// One number per cause, in the order of [`Cause::ALL`].
pub type PerCause = [f64; Cause::COUNT];

/// No single observation moves a cause by more than this in natural log odds (a factor of about 90):
/// nothing is ever certain.
pub const MOST_LOG_ODDS: f64 = 4.5;

/// What is said and measured overlaps (one fault is felt in several ways), and adding it up as if it did not
/// overstates: every log likelihood counts this much. Hand-set, until shares can be compared with outcomes.
pub const TEMPER: f64 = 0.75;

/// One thing said or measured, with what it says about each cause.
///
/// Where the likelihoods come from, a hand table or simulated rides, is no concern of the belief.
#[derive(Debug, Clone, PartialEq)]
pub struct Observation {
    /// In words.
    pub text: Text,
    /// Natural log of how likely it is under each cause, up to a common constant.
    pub log_likelihood: PerCause,
}

/// How much each cause is believed, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    /// Share of the belief per cause; sums to 1.
    pub probability: PerCause,
    observations: Vec<Observation>,
}

/// One observation as evidence about one cause.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed<'a> {
    /// The observation.
    pub observation: &'a Observation,
    /// Natural log of how much likelier it is under this cause than under the others as believed.
    pub weight: f64,
}

impl Belief {
    /// Weighs `observations` on top of `prior` odds (not negative; a cause that cannot be has 0).
    ///
    /// Order does not matter. If every prior is 0 the belief is spread evenly.
    pub fn from(prior: &PerCause, observations: Vec<Observation>) -> Self {
        let mut log_odds = prior.map(|odds| {
            if odds > 0.0 {
                libm::log(odds)
            } else {
                f64::NEG_INFINITY
            }
        });
        for observation in &observations {
            let top = observation
                .log_likelihood
                .iter()
                .copied()
                .fold(f64::NEG_INFINITY, f64::max);
            for (sum, ll) in log_odds.iter_mut().zip(observation.log_likelihood) {
                *sum += TEMPER * (ll - top).max(-MOST_LOG_ODDS);
            }
        }
        Self {
            probability: normalised(&log_odds),
            observations,
        }
    }

    /// How much `cause` is believed, 0 to 1.
    pub fn of(&self, cause: Cause) -> f64 {
        self.probability[cause.index()]
    }

    /// Causes with their shares, most believed first; ties in the order of the list.
    pub fn ranked(&self) -> Vec<(Cause, f64)> {
        let mut ranked: Vec<_> = Cause::ALL.iter().map(|c| (*c, self.of(*c))).collect();
        ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
        ranked
    }

    /// What speaks for (positive) and against (negative) `cause`, weightiest first.
    ///
    /// The weight compares the cause with all others together, each by its present share.
    pub fn evidence(&self, cause: Cause) -> Vec<Weighed<'_>> {
        let mut weighed: Vec<_> = self
            .observations
            .iter()
            .map(|observation| Weighed {
                observation,
                weight: self.weight(observation, cause),
            })
            .collect();
        weighed.sort_by(|a, b| b.weight.abs().total_cmp(&a.weight.abs()));
        weighed
    }

    fn weight(&self, observation: &Observation, cause: Cause) -> f64 {
        let here = observation.log_likelihood[cause.index()];
        let (mut sum, mut share) = (0.0, 0.0);
        for other in Cause::ALL.iter().filter(|other| **other != cause) {
            let p = self.of(*other);
            sum += p * libm::exp(TEMPER * (observation.log_likelihood[other.index()] - here));
            share += p;
        }
        if sum <= 0.0 || share <= 0.0 {
            return 0.0;
        }
        (-libm::log(sum / share)).clamp(-MOST_LOG_ODDS, MOST_LOG_ODDS)
    }

    /// Uncertainty of the belief in bits: 0 when certain, log2 of the number of causes when evenly spread.
    pub fn entropy_bits(&self) -> f64 {
        entropy_bits(&self.probability)
    }
}

/// Shannon entropy in bits.
pub fn entropy_bits(probability: &PerCause) -> f64 {
    probability
        .iter()
        .filter(|p| **p > 0.0)
        .map(|p| -p * libm::log2(*p))
        .sum()
}

/// Log odds to shares that sum to 1.
fn normalised(log_odds: &PerCause) -> PerCause {
    let top = log_odds.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if !top.is_finite() {
        #[allow(clippy::cast_precision_loss, reason = "a few dozen causes")]
        return [1.0 / Cause::COUNT as f64; Cause::COUNT];
    }
    let odds = log_odds.map(|l| libm::exp(l - top));
    let sum: f64 = odds.iter().sum();
    odds.map(|o| o / sum)
}
