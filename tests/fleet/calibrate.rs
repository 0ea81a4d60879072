//! Finds the numbers with which the library's chances fit a fleet best.
//!
//! Coordinate descent: every number in turn is moved a little up and down, and kept where the loss falls. The loss is
//! −ln of the chance stated for exactly what was there, mean over all cases, which is least when chances are honest.
//! Prior odds are left alone: the fleet is drawn by them.

use crate::case::Case;
use crate::fleet::{Row, in_parallel};
use sagwright_core::cause::variants::Number;
use sagwright_core::cause::{Hypothesis, Numbers};

/// Moves of a number, widest first.
const MOVES: [f64; 2] = [1.35, 1.12];

/// Mean of −ln of the chance stated for exactly what was there; without `pairs` over the single faults only.
pub fn loss(rows: &[Row], numbers: &Numbers, pairs: bool) -> f64 {
    let each = in_parallel(rows, |row| {
        let ways = row.stable.hypotheses(numbers, pairs);
        let doubles: &[Case] = if pairs { &row.double } else { &[] };
        row.single
            .iter()
            .chain(doubles)
            .map(|case| {
                let belief = row.stable.belief(&case.intake, &ways, numbers);
                let stated: f64 = ways
                    .iter()
                    .zip(&belief.of_hypotheses)
                    .filter(|(way, _)| is(way, case))
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

/// Whether a way the bike could be has exactly the causes of a case.
fn is(way: &Hypothesis, case: &Case) -> bool {
    way.faults.len() == case.faults.len() && case.faults.iter().all(|fault| way.has(fault.cause))
}

/// The numbers after so many rounds; those named only.
pub fn descend(
    rows: &[Row],
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
