//! Finds the numbers with which the library's chances fit a fleet best.
//!
//! Coordinate descent: every number in turn is moved a little up and down, and kept where the loss falls. The loss is
//! −ln of the chance stated for exactly what was there, mean over all cases, which is least when chances are honest.
//! Prior odds are left alone: the fleet is drawn by them.

use crate::fleet::in_parallel;
use crate::stable::Stable;
use sagwright_core::cause::variants::Number;
use sagwright_core::cause::{Cause, Hypothesis, Numbers};
use sagwright_core::intake::Intake;

/// A stable with what was answered of each of its bikes and what was amiss with it; nothing, where nothing was.
pub struct Answered {
    /// What the library knows.
    pub stable: Stable,
    /// Answers and causes.
    pub cases: Vec<(Intake, Vec<Cause>)>,
}

/// Moves of a number, widest first.
const MOVES: [f64; 2] = [1.35, 1.12];

/// Mean of −ln of the chance stated for exactly what was there; without `pairs` over the single faults only.
pub fn loss(rows: &[Answered], numbers: &Numbers, pairs: bool) -> f64 {
    let each = in_parallel(rows, |row| {
        let ways = row.stable.hypotheses(numbers, pairs);
        let cases = row.cases.iter().filter(|(_, causes)| pairs || causes.len() < 2);
        cases
            .map(|(intake, causes)| {
                let belief = row.stable.belief(intake, &ways, numbers);
                let stated: f64 = ways
                    .iter()
                    .zip(&belief.of_hypotheses)
                    .filter(|(way, _)| is(way, causes))
                    .map(|(_, chance)| chance)
                    .sum();
                -libm::log(stated.max(1e-6))
            })
            .collect::<Vec<f64>>()
    });
    let all: Vec<f64> = each.into_iter().flatten().collect();
    #[expect(clippy::cast_precision_loss, reason = "some hundred cases")]
    let count = all.len() as f64;
    all.iter().sum::<f64>() / count
}

/// Whether a way the bike could be has exactly these causes.
fn is(way: &Hypothesis, causes: &[Cause]) -> bool {
    way.faults.len() == causes.len() && causes.iter().all(|cause| way.has(*cause))
}

/// The numbers after so many rounds; those named only.
pub fn descend(
    rows: &[Answered],
    from: &Numbers,
    rounds: usize,
    pairs: bool,
    keep: impl Fn(&Number) -> bool,
) -> Numbers {
    let mut best = (loss(rows, from, pairs), from.clone());
    println!("loss {:.4} to begin with", best.0);
    for round in 0..rounds {
        let by = MOVES[round.min(MOVES.len() - 1)];
        for number in Number::all().filter(|number| keep(number)) {
            for factor in [by, 1.0 / by] {
                let mut moved = false;
                for _ in 0..4 {
                    let next = best.1.with(&number, factor);
                    let loss = loss(rows, &next, pairs);
                    if loss > best.0 - 1e-5 {
                        break;
                    }
                    best = (loss, next);
                    moved = true;
                }
                if moved {
                    let of = number.of.unwrap_or("");
                    println!(
                        "round {round}: {} {of} {:.4}, loss {:.4}",
                        number.name,
                        best.1.of(&number),
                        best.0
                    );
                    break;
                }
            }
        }
    }
    best.1
}
