//! Causes that this rider's words cannot tell apart.
//!
//! Two bikes are held against each other by all that their riders could say of them. Where even whoever reads the words best,
//! and has nothing else, would take one for the other at least once in four times, no list of complaints can tell them apart:
//! they are one group, which a check has to split.
//!
//! How often two things are mistaken for each other follows from the overlap of what they give, the Bhattacharyya coefficient
//! ρ = Σ √(p q): with even odds the least error is at least ½ (1 − √(1 − ρ²)) (Kailath, "The divergence and Bhattacharyya
//! distance measures in signal selection", IEEE Trans. Commun. Tech. 15, 1967; from memory).

use super::Cause;
use super::belief::{Belief, RIDERS};
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use super::said::chances;
use crate::intake::Feeling;

/// Overlap from which two are mistaken for each other at least one time in four: √3 / 2.
pub const MISTAKEN: f64 = 0.866;

/// Whether the likeliest bikes with each of two causes cannot be told apart by words. "Nothing is wrong" is no cause, and is
/// like none.
pub fn alike(
    hypotheses: &[Hypothesis],
    belief: &Belief,
    numbers: &Numbers,
    first: Cause,
    second: Cause,
) -> bool {
    let nothing = [first, second].contains(&Cause::NothingWrong);
    let likeliest = |cause: Cause| {
        let alone = hypotheses
            .iter()
            .zip(&belief.of_hypotheses)
            .filter(|(way, _)| way.faults.len() == 1 && way.has(cause));
        alone.max_by(|a, b| a.1.total_cmp(b.1)).map(|(way, _)| way)
    };
    let (Some(one), Some(other)) = (likeliest(first), likeliest(second)) else {
        return false;
    };
    first != second && !nothing && overlap(one, other, numbers) >= MISTAKEN
}

/// Overlap of what riders say of two bikes, 0 for nothing in common to 1 for the same: complaints of each feeling at each
/// end, given how touchy the rider is.
pub fn overlap(one: &Hypothesis, other: &Hypothesis, numbers: &Numbers) -> f64 {
    let of_rider = |touchy: f64| -> f64 {
        let feelings = Feeling::ALL.iter().map(|feeling| {
            let ends = chances(numbers, *feeling, one, touchy)
                .into_iter()
                .zip(chances(numbers, *feeling, other, touchy));
            ends.map(|(p, q)| libm::sqrt(p * q) + libm::sqrt((1.0 - p) * (1.0 - q)))
                .product::<f64>()
        });
        feelings.product()
    };
    RIDERS
        .iter()
        .map(|(touchy, share)| share * of_rider(touchy * numbers.touchiness))
        .sum()
}
