//! From one answer per draw to a range, and what the range comes from.

use super::draws::{DRAWS, SEED, draws};
use super::input::Input;
use crate::stance::error::StanceError;
use crate::stance::situation::Situation;

/// More draws without an answer than this and there is no range, share of all.
const MOST_LOST: f64 = 2.0 / 3.0;

/// What part of a number's variance one input makes by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// The input.
    pub input: Input,
    /// Part of the variance, 0 to 1.
    pub share: f64,
}

/// Where four of five draws lie.
#[derive(Debug, Clone, PartialEq)]
pub struct Range {
    /// One in ten lies below, the number's SI unit.
    pub low: f64,
    /// One in ten lies above, the number's SI unit.
    pub high: f64,
    /// Draws that have no answer and are left out, share of all, 0 to 1.
    pub lost: f64,
}

/// An answer with its likely range.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranged {
    /// The answer with every input at its likeliest.
    pub value: f64,
    /// Half the width of the range that holds four cases in five.
    pub half_width: f64,
    /// That range.
    pub range: Range,
}

/// Works an answer out for the likeliest bike and rider and for [`DRAWS`] others.
///
/// # Errors
/// That of `answer` in the situation itself, or the first one met where fewer than a third of the draws have an answer.
pub fn ranged(
    situation: &Situation,
    answer: impl Fn(&Situation) -> Result<f64, StanceError>,
) -> Result<Ranged, StanceError> {
    let value = answer(situation)?;
    let draws = draws(situation, DRAWS, SEED);
    let found: Vec<_> = draws.iter().map(|draw| answer(&draw.situation)).collect();
    let values: Vec<Option<f64>> = found.iter().map(|found| found.ok()).collect();
    let problem = found.into_iter().find_map(Result::err);
    let range = match (Range::of(&values), problem) {
        (Some(range), _) => range,
        (None, Some(problem)) => return Err(problem),
        // No draw was lost, so there was none: nothing for the answer to be off by.
        (None, None) => Range {
            low: value,
            high: value,
            lost: 0.0,
        },
    };
    Ok(Ranged {
        value,
        half_width: 0.5 * (range.high - range.low),
        range,
    })
}

impl Range {
    /// The range of the values that draws have. `None` where fewer than a third has one.
    pub fn of(values: &[Option<f64>]) -> Option<Self> {
        let mut sorted: Vec<f64> = values.iter().copied().flatten().collect();
        let lost = 1.0 - count(sorted.len()) / count(values.len().max(1));
        if sorted.is_empty() || lost > MOST_LOST {
            return None;
        }
        sorted.sort_by(f64::total_cmp);
        Some(Self {
            low: percentile(&sorted, 0.1),
            high: percentile(&sorted, 0.9),
            lost,
        })
    }
}

#[expect(clippy::cast_precision_loss, reason = "no more than 65 536 draws")]
fn count(number: usize) -> f64 {
    number as f64
}

/// The value below which a share of the values lies; `sorted` holds at least one, lowest first.
fn percentile(sorted: &[f64], share: f64) -> f64 {
    let place = (share * count(sorted.len()) - 0.5).clamp(0.0, count(sorted.len() - 1));
    let below = place.floor();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "held between 0 and the number of values"
    )]
    let at = below as usize;
    let next = (at + 1).min(sorted.len() - 1);
    sorted[at] + (place - below) * (sorted[next] - sorted[at])
}

/// One number with one input at a few of its values and all others at their likeliest.
#[derive(Debug, Clone, PartialEq)]
pub struct Alone {
    /// The input.
    pub input: Input,
    /// Weight and number at each value, as [`around`](super::around) gives them; no number where a value has no answer.
    pub numbers: Vec<(f64, Option<f64>)>,
}

/// What each input explains of one number, most first: the variance of what it does alone as a share of the sum of all.
///
/// A value without an answer is left out. A number that nothing moves has no shares.
pub fn shares(alone: &[Alone]) -> Vec<Share> {
    let mut shares: Vec<Share> = alone
        .iter()
        .map(|alone| Share {
            input: alone.input,
            share: variance(&alone.numbers),
        })
        .collect();
    let all: f64 = shares.iter().map(|share| share.share).sum();
    if all <= 0.0 {
        return Vec::new();
    }
    for share in &mut shares {
        share.share /= all;
    }
    // What rounding moves is nothing.
    shares.retain(|share| share.share > 1e-9);
    shares.sort_by(|a, b| b.share.total_cmp(&a.share));
    shares
}

/// Variance of weighted values; those without an answer are left out.
fn variance(values: &[(f64, Option<f64>)]) -> f64 {
    let found = || {
        values
            .iter()
            .filter_map(|(weight, value)| Some((*weight, (*value)?)))
    };
    let weight: f64 = found().map(|(weight, _)| weight).sum();
    if weight <= 0.0 {
        return 0.0;
    }
    let mean = found().map(|(weight, value)| weight * value).sum::<f64>() / weight;
    let square = |off: f64| off * off;
    found()
        .map(|(weight, value)| weight * square(value - mean))
        .sum::<f64>()
        / weight
}
