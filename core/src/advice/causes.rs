//! The causes as they are told: share, words for it, evidence for and against.

use super::answer::{CauseFinding, Evidence};
use crate::cause::{Belief, Cause};
use crate::words::{Arg, Text};

/// Evidence weaker than this (natural log) moves odds by under a fifth and is not worth reading.
const LEAST_WEIGHT: f64 = 0.18;
/// How much evidence is told per cause.
const MOST_FOR: usize = 5;
const MOST_AGAINST: usize = 3;

/// Every cause with a share worth printing, most believed first.
pub fn findings(belief: &Belief) -> Vec<CauseFinding> {
    const LEAST_SHARE: f64 = 0.002;
    let ranked = belief
        .ranked()
        .into_iter()
        .filter(|(_, share)| *share >= LEAST_SHARE);
    ranked
        .map(|(cause, share)| finding(belief, cause, share))
        .collect()
}

fn finding(belief: &Belief, cause: Cause, probability: f64) -> CauseFinding {
    let weighed = belief.evidence(cause);
    let told = |keep: &dyn Fn(f64) -> bool, most: usize| {
        weighed
            .iter()
            .filter(|w| keep(w.weight))
            .take(most)
            .map(|w| Evidence {
                text: w.observation.text.clone(),
                weight: w.weight,
            })
            .collect()
    };
    CauseFinding {
        cause,
        name: name(cause),
        what: about(cause, "what"),
        feel: about(cause, "feel"),
        confirm: about(cause, "confirm"),
        cures: about(cause, "cures"),
        probability,
        chance: chance(probability),
        evidence_for: told(&|weight| weight >= LEAST_WEIGHT, MOST_FOR),
        evidence_against: told(&|weight| weight <= -LEAST_WEIGHT, MOST_AGAINST),
    }
}

/// The name of a cause.
pub fn name(cause: Cause) -> Text {
    about(cause, "name")
}

fn about(cause: Cause, part: &str) -> Text {
    Text::new(format!("cause.{}.{part}", cause.word()))
}

/// A share in words that always come with a number: "likely, about 2 in 3".
pub fn chance(share: f64) -> Text {
    let word = match share {
        p if p >= 0.97 => "nearly-sure",
        p if p >= 0.9 => "almost-certain",
        p if p >= 0.6 => "likely",
        p if p >= 0.4 => "even",
        p if p >= 0.2 => "possible",
        p if p >= 0.05 => "unlikely",
        _ => "remote",
    };
    let (n, of) = plain_fraction(share);
    Text::new(format!("chance.{word}"))
        .with("n", Arg::Count(n))
        .with("of", Arg::Count(of))
}

/// The simplest fraction near `share`: the first denominator that comes within 0.03, else twentieths.
fn plain_fraction(share: f64) -> (i64, i64) {
    const CLOSE_ENOUGH: f64 = 0.03;
    for of in [2_i32, 3, 4, 5, 10] {
        let n = libm::round(share * f64::from(of));
        if n >= 1.0 && n < f64::from(of) && (n / f64::from(of) - share).abs() <= CLOSE_ENOUGH {
            return (whole(n), i64::from(of));
        }
    }
    (whole(libm::round(share * 20.0).clamp(1.0, 19.0)), 20)
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "a whole number from 1 to 19"
)]
fn whole(n: f64) -> i64 {
    n as i64
}

#[cfg(test)]
mod tests {
    use super::plain_fraction;

    #[test]
    fn shares_become_fractions_people_say() {
        assert_eq!(plain_fraction(0.66), (2, 3));
        assert_eq!(plain_fraction(0.5), (1, 2));
        assert_eq!(plain_fraction(0.8), (4, 5));
        assert_eq!(plain_fraction(0.31), (1, 3));
        assert_eq!(plain_fraction(0.999), (19, 20));
        assert_eq!(plain_fraction(0.0), (1, 20));
    }
}
