//! How much hangs on the numbers set by hand: each halved and doubled, alone and all together.

use std::collections::BTreeMap;
use std::fmt::Write;

use crate::case::Case;
use crate::fleet::{Row, in_parallel};
use crate::luck::Luck;
use sagwright_core::cause::close::Reweighed;
use sagwright_core::cause::variants::{Moves, Number};
use sagwright_core::cause::{Numbers, checks};

/// Draws of all numbers moved at once.
const JOINT: usize = 50;

/// Share of cases whose leading cause is another with the numbers moved.
pub struct Flips {
    /// For each kind of number the mean over its items and ways, and the worst.
    pub each: BTreeMap<&'static str, (f64, f64)>,
    /// Mean over all numbers moved one at a time.
    pub mean: f64,
    /// Mean over draws of all moved at once.
    pub joint: f64,
    /// Share of cases that no number alone flips and that of the others, and how often each kind's leader is right.
    pub firm: (f64, f64),
    /// See [`Self::firm`].
    pub close: (f64, f64),
}

/// Moves the numbers under every case of a fleet, words alone.
pub fn flips(rows: &[Row], usual: &Numbers) -> Flips {
    let names: Vec<&'static str> = usual
        .variants()
        .map(|variant| variant.number.name)
        .collect();
    let one_at_a_time = usual
        .variants()
        .map(|variant| (variant.number.moves(), variant.numbers));
    let mut luck = Luck::seeded(77, 0);
    let together = (0..JOINT).map(|_| {
        let moved = Number::all().fold(usual.clone(), |moved, number| {
            moved.with(&number, if luck.happens(0.5) { 2.0 } else { 0.5 })
        });
        (Moves::All, moved)
    });
    let all: Vec<(Moves, Numbers)> = one_at_a_time.chain(together).collect();
    let cases: Vec<(bool, Vec<bool>)> = in_parallel(rows, |row| flipped(row, usual, &all)).concat();
    let shares: Vec<f64> = (0..all.len())
        .map(|place| share(&cases, |(_, flips)| flips[place]))
        .collect();
    let by_one = |flips: &[bool]| flips[..names.len()].contains(&true);
    let kind = |close: bool| {
        let of: Vec<(bool, Vec<bool>)> = cases
            .iter()
            .filter(|(_, flips)| by_one(flips) == close)
            .cloned()
            .collect();
        let right = share(&of, |(right, _)| *right);
        (share(&cases, |(_, flips)| by_one(flips) == close), right)
    };
    let (alone, joint) = shares.split_at(names.len());
    let mut by_name: BTreeMap<&'static str, Vec<f64>> = BTreeMap::new();
    for (name, share) in names.iter().zip(alone) {
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
        firm: kind(false),
        close: kind(true),
    }
}

/// Share of those for which something holds.
#[expect(clippy::cast_precision_loss, reason = "some hundred cases")]
fn share<T>(all: &[T], holds: impl Fn(&T) -> bool) -> f64 {
    all.iter().filter(|one| holds(one)).count() as f64 / all.len().max(1) as f64
}

#[expect(clippy::cast_precision_loss, reason = "some hundred shares")]
fn mean(shares: &[f64]) -> f64 {
    shares.iter().sum::<f64>() / shares.len().max(1) as f64
}

/// For each case of a stable whether its leader is right, and whether another leads by each table of numbers.
fn flipped(row: &Row, usual: &Numbers, all: &[(Moves, Numbers)]) -> Vec<(bool, Vec<bool>)> {
    let stable = &row.stable;
    let ways = stable.hypotheses(usual, true);
    let of_case = |case: &Case| {
        let belief = stable.belief(&case.intake, &ways, usual);
        let (leader, _) = belief.ranked()[0];
        let known = checks::Case {
            intake: &case.intake,
            situation: &stable.situation(&case.intake),
            baseline: &stable.suits,
            rehearsal: &stable.rehearsal,
            hypotheses: &ways,
            numbers: usual,
            belief: &belief,
        };
        let mut reweighed = Reweighed::of(&known);
        let flips = all
            .iter()
            .map(|(moves, numbers)| reweighed.leader(numbers, *moves) != leader);
        (case.causes().contains(&leader), flips.collect())
    };
    row.single.iter().map(of_case).collect()
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
        for (name, (share, right)) in [("no", self.firm), ("a", self.close)] {
            let _ = writeln!(
                table,
                "\nCases with {name} number that flips the leader by itself: {:.1} %, leader right in {:.1} %",
                100.0 * share,
                100.0 * right
            );
        }
        table
    }
}
