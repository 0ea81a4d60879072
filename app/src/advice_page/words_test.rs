//! Every key this page looks up has a sentence, and no sentence of its own is left over.

use std::collections::BTreeSet;

use sagwright_core::advice::{Reason, SignalWord};
use sagwright_core::intake::{Question, StopSign};
use sagwright_core::remedy::Tier;
use sagwright_core::words::{Book, Text, UnitChoice};

use super::Voice;
use crate::words::book;

const OWN: &str = include_str!("../../words/en/advice.json");

/// The sources of the page and its pictures, to find the keys that stand in them as they are.
const SOURCES: &[&str] = &[
    include_str!("breakaway.rs"),
    include_str!("causes.rs"),
    include_str!("chances.rs"),
    include_str!("contents.rs"),
    include_str!("evidence.rs"),
    include_str!("nearest.rs"),
    include_str!("next_check.rs"),
    include_str!("paper.rs"),
    include_str!("price.rs"),
    include_str!("reason.rs"),
    include_str!("remedies.rs"),
    include_str!("rides.rs"),
    include_str!("settings.rs"),
    include_str!("shown.rs"),
    include_str!("signal.rs"),
    include_str!("stop.rs"),
    include_str!("units.rs"),
    include_str!("view.rs"),
    include_str!("../checking/moved.rs"),
    include_str!("../checking/section.rs"),
    include_str!("../pictures/chart.rs"),
    include_str!("../pictures/figure.rs"),
    include_str!("../pictures/ride_chart.rs"),
    include_str!("../pictures/save.rs"),
    include_str!("../pictures/scene.rs"),
    include_str!("../pictures/table.rs"),
    include_str!("../film/show.rs"),
    include_str!("../film/table.rs"),
    include_str!("../what_if/levers.rs"),
    include_str!("../what_if/rode.rs"),
    include_str!("../what_if/section.rs"),
    include_str!("../what_if/seen.rs"),
];

/// How keys of the page and its pictures begin.
const PARTS: [&str; 4] = ["advice.", "film.", "picture.", "what-if."];

/// A voice with every sentence and metric units.
pub fn voice() -> Voice {
    Voice::new(book(), UnitChoice::default())
}

/// What a number rests on where a test does not read it.
pub fn no_reason() -> Reason {
    Reason {
        because: Text::new("x"),
        inputs: Vec::new(),
        equation: Text::new("x"),
        source: Text::new("x"),
        sensitivity: Vec::new(),
        range_from: Vec::new(),
    }
}

/// Every literal in the sources that begins like a key, and the keys made from closed lists.
fn wanted() -> BTreeSet<String> {
    let literals = SOURCES
        .iter()
        .flat_map(|source| source.split('"'))
        .filter(|piece| PARTS.iter().any(|part| piece.starts_with(part)))
        .filter(|piece| !piece.contains('{'))
        .map(str::to_owned);
    let pages = Question::ALL
        .iter()
        .map(|question| format!("answers.{}", question.word()));
    let signs = StopSign::ALL
        .iter()
        .map(|sign| format!("sign.{}", sign.word()));
    let tiers = Tier::ALL.iter().flat_map(|tier| {
        let key = format!("tier.{}", tier.word());
        [format!("{key}.what"), key]
    });
    let signals = [
        SignalWord::Danger,
        SignalWord::Warning,
        SignalWord::Caution,
        SignalWord::Notice,
    ]
    .map(|signal| format!("signal.{}", signal.word()));
    let ends = ["front", "rear"].map(|end| format!("what-if.end.{end}"));
    literals
        .chain(ends)
        .chain(pages)
        .chain(signs)
        .chain(tiers)
        .chain(signals)
        .collect()
}

#[test]
fn every_key_has_a_sentence_and_every_sentence_is_used() {
    let book = book();
    let wanted = wanted();
    assert!(wanted.len() > 100, "the search for keys found too few");
    let missing: Vec<_> = wanted.iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
    let own = Book::from_json(OWN).expect("the table is a flat object of sentences");
    let idle: Vec<_> = own.keys().filter(|key| !wanted.contains(*key)).collect();
    assert!(idle.is_empty(), "never looked up: {idle:?}");
}
