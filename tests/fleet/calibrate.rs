//! Finds the numbers with which the library's chances fit a fleet best.
//!
//! Coordinate descent: every number in turn is moved a little up and down, and kept where the loss falls. The loss is
//! −ln of the chance stated for exactly what was there, mean over all cases, which is least when chances are honest.
//! Prior odds are left alone: the fleet is drawn by them.

use crate::case::Case;
use crate::fleet::{Row, in_parallel};
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

impl Answered {
    /// What is said of all bikes of a stable; the bikes themselves are let go.
    pub fn of(row: Row) -> Self {
        let told = |case: Case| {
            let causes = case.faults.iter().map(|fault| fault.cause).collect();
            (case.intake, causes)
        };
        Self {
            stable: row.stable,
            cases: row.single.into_iter().chain(row.double).map(told).collect(),
        }
    }
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

/// Numbers that words alone say nothing about, or that define the fleet.
const LEFT_ALONE: [&str; 6] = ["prior", "mild", "blunder", "vagueness", "in_clickers", "push"];

/// All numbers that words tell about: first the leaks and the gains each by one common factor, then the others, then each
/// leak and gain by itself over single faults; last those that weigh two faults against one.
pub fn fit(rows: &[Answered], from: &Numbers) -> Numbers {
    let each = |number: &Number| ["leak", "gain"].contains(&number.name);
    let mut best = from.clone();
    for round in 0..2 {
        for name in ["gain", "leak"] {
            best = common_factor(rows, best, name);
        }
        best = descend(rows, &best, 1 + round, false, |number| {
            !each(number) && number.name != "together" && !LEFT_ALONE.contains(&number.name)
        });
    }
    best = descend(rows, &best, 2, false, each);
    descend(rows, &best, 2, true, |number| {
        ["temper", "together", "silence", "touchiness"].contains(&number.name)
    })
}

/// All numbers of a name by one factor.
fn common_factor(rows: &[Answered], from: Numbers, name: &str) -> Numbers {
    let mut best = (loss(rows, &from, false), from);
    for factor in [1.25, 0.8, 1.1, 0.9] {
        loop {
            let named = Number::all().filter(|number| number.name == name);
            let next = named.fold(best.1.clone(), |all, number| all.with(&number, factor));
            let loss = loss(rows, &next, false);
            if loss > best.0 - 1e-4 {
                break;
            }
            println!("{name} times {factor}, loss {loss:.4}");
            best = (loss, next);
        }
    }
    best.1
}
