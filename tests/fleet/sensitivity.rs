//! How much hangs on the numbers set by hand: each halved and doubled, alone and all together.

use std::collections::BTreeMap;
use std::fmt::Write;

use crate::fleet::{Row, in_parallel};
use crate::luck::Luck;
use sagwright_core::cause::variants::Number;
use sagwright_core::cause::{Belief, Cause, Hypothesis, Numbers};

/// Draws of all numbers moved at once.
const JOINT: usize = 50;
/// Ways a bike could be that are believed less than this cannot take the lead by one number moved.
const LEAST_BELIEVED: f64 = 1e-4;

/// Share of cases whose leading cause is another with the numbers moved.
pub struct Flips {
    /// For each kind of number the mean over its items and ways, and the worst.
    pub each: BTreeMap<&'static str, (f64, f64)>,
    /// Mean over all numbers moved one at a time.
    pub mean: f64,
    /// Mean over draws of all moved at once.
    pub joint: f64,
}

/// Moves the numbers under every case of a fleet, words alone.
pub fn flips(rows: &[Row], usual: &Numbers) -> Flips {
    let one_at_a_time: Vec<(&'static str, Numbers)> = usual
        .variants()
        .map(|variant| (variant.number.name, variant.numbers))
        .collect();
    let mut luck = Luck::seeded(77, 0);
    let together: Vec<Numbers> = (0..JOINT)
        .map(|_| {
            Number::all().fold(usual.clone(), |moved, number| {
                moved.with(&number, if luck.happens(0.5) { 2.0 } else { 0.5 })
            })
        })
        .collect();
    let all: Vec<&Numbers> = one_at_a_time
        .iter()
        .map(|(_, numbers)| numbers)
        .chain(&together)
        .collect();
    let each_row = in_parallel(rows, |row| flipped(row, usual, &all));
    let cases: usize = rows.iter().map(|row| row.single.len()).sum();
    #[expect(clippy::cast_precision_loss, reason = "some hundred cases")]
    let shares: Vec<f64> = (0..all.len())
        .map(|place| {
            let count: usize = each_row.iter().map(|counts| counts[place]).sum();
            count as f64 / cases.max(1) as f64
        })
        .collect();
    let (alone, joint) = shares.split_at(one_at_a_time.len());
    let mut by_name: BTreeMap<&'static str, Vec<f64>> = BTreeMap::new();
    for ((name, _), share) in one_at_a_time.iter().zip(alone) {
        by_name.entry(name).or_default().push(*share);
    }
    Flips {
        each: by_name
            .into_iter()
            .map(|(name, shares)| {
                let worst = shares.iter().copied().fold(0.0, f64::max);
                (name, (mean(&shares), worst))
            })
            .collect(),
        mean: mean(alone),
        joint: mean(joint),
    }
}

#[expect(clippy::cast_precision_loss, reason = "some hundred shares")]
fn mean(shares: &[f64]) -> f64 {
    shares.iter().sum::<f64>() / shares.len().max(1) as f64
}

/// For each table of numbers how many cases of a stable have another leader than with the usual one.
fn flipped(row: &Row, usual: &Numbers, all: &[&Numbers]) -> Vec<usize> {
    let stable = &row.stable;
    let ways = stable.hypotheses(usual, true);
    let believed: Vec<(Cause, Vec<usize>)> = row
        .single
        .iter()
        .map(|case| {
            let belief = stable.belief(&case.intake, &ways, usual);
            let places = belief.of_hypotheses.iter().enumerate();
            let kept = places.filter(|(_, chance)| **chance >= LEAST_BELIEVED);
            (leader(&belief), kept.map(|(place, _)| place).collect())
        })
        .collect();
    all.iter()
        .map(|numbers| {
            let ways = stable.hypotheses(numbers, true);
            row.single
                .iter()
                .zip(&believed)
                .filter(|(case, (before, places))| {
                    let kept: Vec<Hypothesis> =
                        places.iter().map(|place| ways[*place].clone()).collect();
                    leader(&stable.belief(&case.intake, &kept, numbers)) != *before
                })
                .count()
        })
        .collect()
}

fn leader(belief: &Belief) -> Cause {
    belief.ranked()[0].0
}

impl Flips {
    /// As a table.
    pub fn table(&self) -> String {
        let mut table = String::from("| number | mean flips | worst |\n|---|---|---|\n");
        for (name, (mean, worst)) in &self.each {
            let _ = writeln!(
                table,
                "| `{name}` | {:.1} % | {:.1} % |",
                100.0 * mean,
                100.0 * worst
            );
        }
        let _ = writeln!(
            table,
            "| all, one at a time | {:.1} % | |\n| all at once, {JOINT} draws | {:.1} % | |",
            100.0 * self.mean,
            100.0 * self.joint
        );
        table
    }
}
