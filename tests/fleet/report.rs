//! All figures of a fleet, as text.

use std::fmt::Write;

use crate::fleet::Row;
use crate::readers::{Reader, Which};
use crate::score::{self, Judged, Score};
use crate::sensitivity::{Flips, flips};
use sagwright_core::cause::Numbers;

/// Rounds of checks that are followed.
pub const ROUNDS: usize = 4;
/// How many confusions are told.
const CONFUSIONS: usize = 15;

/// What a fleet showed.
pub struct Found {
    /// Tables.
    pub text: String,
    /// The library, from words alone and after each round of checks.
    pub library: Vec<Score>,
    /// The hand table, likewise.
    pub table: Vec<Score>,
    /// Prior odds, likewise.
    pub priors: Vec<Score>,
    /// Two causes at once, words alone.
    pub double: Score,
    /// How much hangs on the numbers.
    pub flips: Flips,
}

/// Scores the library and both baselines over a fleet.
pub fn report(rows: &[Row], numbers: &Numbers) -> Found {
    let mut text = String::from("# The fleet\n\n");
    let _ = write!(text, "{}", score::HEAD);
    let mut scored = |reader: Reader, name: &str| {
        let judged = reader.judged(rows, numbers, Which::Single, ROUNDS);
        let scores: Vec<Score> = judged.iter().map(|all| Score::of(all)).collect();
        for (rounds, score) in scores.iter().enumerate() {
            let row = match rounds {
                0 => score.row(&format!("{name}, words alone")),
                1 => score.row(&format!("{name}, one round")),
                more => score.row(&format!("{name}, {more} rounds")),
            };
            text.push_str(&row);
        }
        (judged, scores)
    };
    let (judged, library) = scored(Reader::Library, "library");
    let (_, table) = scored(Reader::Table, "hand table");
    let (_, priors) = scored(Reader::Priors, "prior odds");
    let doubles = Reader::Library.judged(rows, numbers, Which::Double, 0);
    let double = Score::of(&doubles[0]);
    text.push_str(&double.row("library, two causes, words alone"));
    let words = &judged[0];
    let _ = write!(
        text,
        "\nRounds until the true cause leads (of {ROUNDS}): {}\n",
        until_it_leads(&judged)
    );
    let leaders = score::reliability(score::leaders(words));
    let _ = write!(
        text,
        "\n## Reliability of the leading cause, words alone\n\n{}",
        score::curve(&leaders)
    );
    let stated = score::reliability(score::stated(words));
    let _ = write!(
        text,
        "\n## Reliability of all chances of 5 % and more, words alone\n\n{}",
        score::curve(&stated)
    );
    if let Some(last) = judged.last() {
        let leaders = score::reliability(score::leaders(last));
        let _ = write!(
            text,
            "\n## Reliability of the leading cause after {ROUNDS} rounds\n\n{}",
            score::curve(&leaders)
        );
    }
    let _ = write!(
        text,
        "\n## By cause, words alone\n\n{}",
        score::by_cause(words)
    );
    let _ = write!(
        text,
        "\n## Confusions, words alone\n\n| is | taken for | cases |\n|---|---|---|\n"
    );
    for (is, taken, count) in score::confusions(words).into_iter().take(CONFUSIONS) {
        let _ = writeln!(text, "| {} | {} | {count} |", is.word(), taken.word());
    }
    let flips = flips(rows, numbers);
    let _ = write!(
        text,
        "\n## Leading causes that flip when numbers move\n\n{}",
        flips.table()
    );
    Found {
        text,
        library,
        table,
        priors,
        double,
        flips,
    }
}

/// How many cases needed how many rounds.
fn until_it_leads(by_rounds: &[Vec<Judged>]) -> String {
    let cases = by_rounds.first().map_or(0, Vec::len);
    let mut needed = vec![0_usize; by_rounds.len() + 1];
    for case in 0..cases {
        let first = by_rounds.iter().position(|all| all[case].place() == 0);
        needed[first.unwrap_or(by_rounds.len())] += 1;
    }
    let words: Vec<String> = needed
        .iter()
        .enumerate()
        .map(|(rounds, count)| {
            if rounds == by_rounds.len() {
                format!("not yet in {count}")
            } else {
                format!("{rounds} in {count}")
            }
        })
        .collect();
    words.join(", ")
}
