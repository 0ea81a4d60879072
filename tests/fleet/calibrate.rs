//! Finds the numbers with which the library's chances fit a fleet best.
//!
//! Coordinate descent: every number in turn is moved a little up and down, and kept where the loss falls. The loss is
//! −ln of the chance stated for exactly what was there, mean over all cases, which is least when chances are honest.
//! Prior odds are left alone: the fleet is drawn by them.

use crate::fleet::{Row, in_parallel};
use crate::luck::Luck;
use crate::stable::Stable;
use crate::workshop::answer_some;
use sagwright_core::cause::variants::Number;
use sagwright_core::cause::{Cause, Hypothesis, Numbers};
use sagwright_core::intake::Intake;

/// A stable with what was answered of each of its bikes and what was amiss with it; nothing, where nothing was.
pub struct Answered {
    /// What the library knows.
    pub stable: Stable,
    /// Answers and causes, words alone.
    pub cases: Vec<(Intake, Vec<Cause>)>,
    /// The same bikes with some checks answered too.
    pub checked: Vec<(Intake, Vec<Cause>)>,
}

/// Checks answered of each bike for the numbers that measurements tell about.
const CHECKED: usize = 3;

impl Answered {
    /// What is said of all bikes of a stable; the bikes themselves are let go.
    pub fn of(row: Row) -> Self {
        let mut luck = Luck::seeded(5, row.stable.rehearsal.rides.into());
        let mut answered = Self {
            stable: row.stable,
            cases: Vec::new(),
            checked: Vec::new(),
        };
        for case in row.single.into_iter().chain(row.double) {
            let causes: Vec<Cause> = case.faults.iter().map(|fault| fault.cause).collect();
            let checked = answer_some(&answered.stable, &case, CHECKED, &mut luck);
            answered.checked.push((checked, causes.clone()));
            answered.cases.push((case.intake, causes));
        }
        answered
    }
}

/// What practice holds plausible, so that the invented riders of a fleet do not decide alone: no evidence counts more than
/// once, riders do differ, and none is a measuring instrument.
fn plausible(name: &str) -> [f64; 2] {
    match name {
        "gain" | "denial" => [0.5, 3.0],
        "leak" => [0.01, 0.08],
        "touchiness" => [0.4, 2.0],
        "moment" => [0.1, 1.5],
        "temper" | "each_moment" | "silence" => [0.2, 1.0],
        "bad_at" => [1.5, 6.0],
        _ => [0.0, f64::INFINITY],
    }
}

/// Moves of a number, widest first.
const MOVES: [f64; 2] = [1.35, 1.12];

/// What a loss is taken over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// Single faults, words alone.
    Words,
    /// All, words alone.
    WordsAndPairs,
    /// Single faults with some checks answered.
    Checks,
}

/// Mean of −ln of the chance stated for exactly what was there.
pub fn loss(rows: &[Answered], numbers: &Numbers, over: Over) -> f64 {
    let pairs = over == Over::WordsAndPairs;
    let each = in_parallel(rows, |row| {
        let ways = row.stable.hypotheses(numbers, pairs);
        let cases = if over == Over::Checks {
            &row.checked
        } else {
            &row.cases
        };
        let cases = cases.iter().filter(|(_, causes)| pairs || causes.len() < 2);
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
    over: Over,
    keep: impl Fn(&Number) -> bool,
) -> Numbers {
    let mut best = (loss(rows, from, over), from.clone());
    println!("loss {:.4} to begin with", best.0);
    for round in 0..rounds {
        let by = MOVES[round.min(MOVES.len() - 1)];
        for number in Number::all().filter(|number| keep(number)) {
            for factor in [by, 1.0 / by] {
                let mut moved = false;
                for _ in 0..4 {
                    let next = best.1.with(&number, factor);
                    let [least, most] = plausible(number.name);
                    if !(least..=most).contains(&next.of(&number)) {
                        break;
                    }
                    let loss = loss(rows, &next, over);
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

/// Numbers that words alone say nothing about, and those by which the fleet is drawn.
const LEFT_ALONE: [&str; 6] = [
    "prior",
    "mild",
    "blunder",
    "vagueness",
    "in_clickers",
    "push",
];

/// All numbers that words tell about: first the leaks and the gains each by one common factor, then the others, then each
/// leak and gain by itself over single faults; last what measurements and two faults at once tell about.
pub fn fit(rows: &[Answered], from: &Numbers) -> Numbers {
    let each = |number: &Number| ["leak", "gain"].contains(&number.name);
    let mut best = from.clone();
    for round in 0..2 {
        for name in ["gain", "leak"] {
            best = common_factor(rows, best, name);
        }
        best = descend(rows, &best, 1 + round, Over::Words, |number| {
            !each(number) && number.name != "together" && !LEFT_ALONE.contains(&number.name)
        });
    }
    best = descend(rows, &best, 2, Over::Words, each);
    best = descend(rows, &best, 2, Over::Checks, |number| {
        ["blunder", "vagueness", "in_clickers", "push"].contains(&number.name)
    });
    descend(rows, &best, 2, Over::WordsAndPairs, |number| {
        ["temper", "together", "silence", "touchiness"].contains(&number.name)
    })
}

/// All numbers of a name by one factor.
fn common_factor(rows: &[Answered], from: Numbers, name: &str) -> Numbers {
    let mut best = (loss(rows, &from, Over::Words), from);
    for factor in [1.25, 0.8, 1.1, 0.9] {
        loop {
            let named = Number::all().filter(|number| number.name == name);
            let next = named.fold(best.1.clone(), |all, number| all.with(&number, factor));
            let loss = loss(rows, &next, Over::Words);
            if loss > best.0 - 1e-4 {
                break;
            }
            println!("{name} times {factor}, loss {loss:.4}");
            best = (loss, next);
        }
    }
    best.1
}
