//! Belief: prior odds times what each observation says, over every way the bike could be, and over how touchy its rider is.

use super::Cause;
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use crate::words::Text;

/// One number per cause, in the order of [`Cause::ALL`].
pub type PerCause = [f64; Cause::COUNT];

/// How touchy riders are: an easy, a middling and a touchy one, in parts of [`Numbers::touchiness`], with the share of
/// riders each stands for. One rider answers all questions, so complaints of one rider go together.
pub const RIDERS: [(f64, f64); 3] = [(-1.0, 0.25), (0.0, 0.5), (1.0, 0.25)];

/// No single observation moves a cause by more than this in natural log odds (a factor of about 90):
/// nothing is ever certain.
pub const MOST_LOG_ODDS: f64 = 4.5;

/// One thing said or measured, with what it says about each way the bike could be.
#[derive(Debug, Clone, PartialEq)]
pub struct Observation {
    /// In words.
    pub text: Text,
    /// Natural log of how likely it is for each hypothesis and each of [`RIDERS`], up to a common constant.
    log_likelihood: Vec<[f64; RIDERS.len()]>,
}

impl Observation {
    /// From how likely it is, natural log, for a hypothesis and a rider's touchiness in log odds.
    pub fn by_rider(
        text: Text,
        hypotheses: &[Hypothesis],
        numbers: &Numbers,
        log_likelihood: impl Fn(&Hypothesis, f64) -> f64,
    ) -> Self {
        let likelihood = |hypothesis| {
            RIDERS.map(|(touchy, _)| log_likelihood(hypothesis, touchy * numbers.touchiness))
        };
        Self::from_each(text, hypotheses.iter().map(likelihood))
    }

    /// From how likely it is, natural log, for each hypothesis in their order and each of [`RIDERS`].
    pub(super) fn from_each(
        text: Text,
        log_likelihood: impl Iterator<Item = [f64; RIDERS.len()]>,
    ) -> Self {
        Self::bounded(text, log_likelihood.collect())
    }

    /// From how likely it is, natural log, for a hypothesis, whoever the rider is.
    pub fn of(
        text: Text,
        hypotheses: &[Hypothesis],
        log_likelihood: impl Fn(&Hypothesis) -> f64,
    ) -> Self {
        let likelihood = |hypothesis| [log_likelihood(hypothesis); RIDERS.len()];
        Self::from_each(text, hypotheses.iter().map(likelihood))
    }

    /// Natural log of its mean likelihood under these weights, which sum to 1.
    fn fit(&self, weights: &[[f64; RIDERS.len()]]) -> f64 {
        let of_one = |(weights, ones): (&[f64; RIDERS.len()], &[f64; RIDERS.len()])| -> f64 {
            let both = weights.iter().zip(ones);
            both.map(|(weight, one)| weight * libm::exp(*one)).sum()
        };
        let mean: f64 = weights.iter().zip(&self.log_likelihood).map(of_one).sum();
        libm::log(mean)
    }

    /// Holds every likelihood within [`MOST_LOG_ODDS`] of the highest.
    fn bounded(text: Text, mut log_likelihood: Vec<[f64; RIDERS.len()]>) -> Self {
        let top = log_likelihood
            .iter()
            .flatten()
            .copied()
            .fold(f64::NEG_INFINITY, f64::max);
        for one in log_likelihood.iter_mut().flatten() {
            *one = (*one - top).max(-MOST_LOG_ODDS);
        }
        Self {
            text,
            log_likelihood,
        }
    }
}

/// How much each cause is believed, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    /// Chance that each cause is there; "nothing is wrong" is the chance that none is. They need not add up to 1, since
    /// two can be there at once.
    pub probability: PerCause,
    /// Chance of each hypothesis, in the order given.
    pub of_hypotheses: Vec<f64>,
    observations: Vec<Observation>,
    /// What each observation weighs for each cause, see [`Self::evidence`].
    weights: Vec<PerCause>,
    /// Natural log of how likely each observation is on the bikes believed, over the bike on which it is likeliest.
    fits: Vec<f64>,
}

/// One observation as evidence about one cause.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed<'a> {
    /// The observation.
    pub observation: &'a Observation,
    /// Natural log of how much likelier it is when the cause is there than when it is not, all else as believed.
    pub weight: f64,
}

impl Belief {
    /// Weighs `observations` on top of the hypotheses' own odds. Order does not matter.
    pub fn from(
        hypotheses: &[Hypothesis],
        numbers: &Numbers,
        observations: Vec<Observation>,
    ) -> Self {
        let temper = numbers.temper;
        let weights = weights(hypotheses, temper, observations.iter());
        let causes: Vec<Vec<usize>> = hypotheses.iter().map(places).collect();
        let of_hypotheses: Vec<f64> = weights.iter().map(|ones| ones.iter().sum()).collect();
        let probability = of_causes(&causes, &of_hypotheses);
        let weigh = |observation| weigh(observation, &causes, &weights, &probability, temper);
        Self {
            probability,
            of_hypotheses,
            weights: observations.iter().map(weigh).collect(),
            fits: observations
                .iter()
                .map(|observation| observation.fit(&weights))
                .collect(),
            observations,
        }
    }

    /// How much `cause` is believed, 0 to 1.
    pub fn of(&self, cause: Cause) -> f64 {
        self.probability[cause.index()]
    }

    /// How much two causes are believed to be there at once.
    pub fn both(&self, hypotheses: &[Hypothesis], first: Cause, second: Cause) -> f64 {
        hypotheses
            .iter()
            .zip(&self.of_hypotheses)
            .filter(|(hypothesis, _)| hypothesis.has(first) && hypothesis.has(second))
            .map(|(_, chance)| chance)
            .sum()
    }

    /// Causes with their chances, most believed first; ties in the order of the list.
    pub fn ranked(&self) -> Vec<(Cause, f64)> {
        ranked(&self.probability)
    }

    /// What does not fit with everything else: observations that are unlikely on every bike that is believed, the worst first.
    pub fn misfits(&self) -> Vec<&Observation> {
        /// Natural log of how much less likely than on the bike it fits best: about one in thirty.
        const UNLIKELY: f64 = -3.4;
        let mut found: Vec<(f64, &Observation)> = self
            .fits
            .iter()
            .zip(&self.observations)
            .filter(|(fit, _)| **fit < UNLIKELY)
            .map(|(fit, observation)| (*fit, observation))
            .collect();
        found.sort_by(|a, b| a.0.total_cmp(&b.0));
        found
            .into_iter()
            .map(|(_, observation)| observation)
            .collect()
    }

    /// What speaks for (positive) and against (negative) `cause`, weightiest first: for each observation how much likelier
    /// it is with the cause than without, all other observations believed.
    pub fn evidence(&self, cause: Cause) -> Vec<Weighed<'_>> {
        let mut weighed: Vec<_> = self
            .observations
            .iter()
            .zip(&self.weights)
            .map(|(observation, weights)| Weighed {
                observation,
                weight: weights[cause.index()],
            })
            .collect();
        weighed.sort_by(|a, b| b.weight.abs().total_cmp(&a.weight.abs()));
        weighed
    }
}

/// How much each cause is believed after these observations, as [`Belief::from`] has it.
pub(super) fn chances<'a>(
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
    observations: impl Iterator<Item = &'a Observation>,
) -> PerCause {
    let causes: Vec<Vec<usize>> = hypotheses.iter().map(places).collect();
    let chances: Vec<f64> = weights(hypotheses, numbers.temper, observations)
        .iter()
        .map(|ones| ones.iter().sum())
        .collect();
    of_causes(&causes, &chances)
}

/// Chance of each hypothesis together with each of [`RIDERS`]; all of them add up to 1.
fn weights<'a>(
    hypotheses: &[Hypothesis],
    temper: f64,
    observations: impl Iterator<Item = &'a Observation>,
) -> Vec<[f64; RIDERS.len()]> {
    let mut log_odds: Vec<[f64; RIDERS.len()]> = hypotheses
        .iter()
        .map(|h| RIDERS.map(|(_, share)| h.log_prior + libm::log(share)))
        .collect();
    for observation in observations {
        for (sums, ones) in log_odds.iter_mut().zip(&observation.log_likelihood) {
            for (sum, one) in sums.iter_mut().zip(ones) {
                *sum += temper * one;
            }
        }
    }
    let top = log_odds
        .iter()
        .flatten()
        .copied()
        .fold(f64::NEG_INFINITY, f64::max);
    let mut weights: Vec<[f64; RIDERS.len()]> = log_odds
        .iter()
        .map(|ones| ones.map(|one| libm::exp(one - top)))
        .collect();
    let sum: f64 = weights.iter().flatten().sum();
    for weight in weights.iter_mut().flatten() {
        *weight /= sum;
    }
    weights
}

/// Chance of each cause: of all bikes that have it.
fn of_causes(causes: &[Vec<usize>], of_hypotheses: &[f64]) -> PerCause {
    let mut probability = [0.0; Cause::COUNT];
    for (causes, chance) in causes.iter().zip(of_hypotheses) {
        for cause in causes {
            probability[*cause] += chance;
        }
    }
    probability
}

/// Causes with their chances, most believed first; ties in the order of the list.
pub(super) fn ranked(probability: &PerCause) -> Vec<(Cause, f64)> {
    let mut ranked: Vec<_> = Cause::ALL
        .iter()
        .map(|cause| (*cause, probability[cause.index()]))
        .collect();
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
    ranked
}

/// For each cause ln of P(observation | cause, the rest) over P(observation | no cause, the rest): with W the posterior weight
/// and L the likelihood, P(observation | S, the rest) = Σ W / Σ (W / L), each sum over S.
fn weigh(
    observation: &Observation,
    causes: &[Vec<usize>],
    weights: &[[f64; RIDERS.len()]],
    probability: &PerCause,
    temper: f64,
) -> PerCause {
    /// Bikes believed less than this weigh nothing.
    const LEAST: f64 = 1e-8;
    let (mut rest_with, mut rest) = ([0.0; Cause::COUNT], 0.0);
    let rows = weights.iter().zip(&observation.log_likelihood);
    for ((weights, ones), causes) in rows.zip(causes) {
        let without: f64 = weights
            .iter()
            .zip(ones)
            .filter(|(weight, _)| **weight > LEAST)
            .map(|(weight, one)| weight * libm::exp(-temper * one))
            .sum();
        rest += without;
        for cause in causes {
            rest_with[*cause] += without;
        }
    }
    core::array::from_fn(|place| {
        let (with, others) = (probability[place], 1.0 - probability[place]);
        let (rest_with, rest_others) = (rest_with[place], rest - rest_with[place]);
        if with <= LEAST || others <= LEAST || rest_with <= 0.0 || rest_others <= 0.0 {
            return 0.0;
        }
        libm::log(with / rest_with * (rest_others / others)).clamp(-MOST_LOG_ODDS, MOST_LOG_ODDS)
    })
}

/// The causes of a hypothesis as places in the list; none is "nothing is wrong".
fn places(hypothesis: &Hypothesis) -> Vec<usize> {
    if hypothesis.faults.is_empty() {
        return vec![Cause::NothingWrong.index()];
    }
    hypothesis
        .faults
        .iter()
        .map(|fault| fault.cause.index())
        .collect()
}

/// Shannon entropy of shares, in bits: 0 when certain, log2 of their number when evenly spread. Shares that are 0 add nothing.
pub fn entropy_bits(shares: &[f64]) -> f64 {
    shares
        .iter()
        .filter(|p| **p > 0.0)
        .map(|p| -p * libm::log2(*p))
        .sum()
}
