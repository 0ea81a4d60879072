//! Every key the log looks up has a sentence, and no sentence of its own is left over.

use std::collections::BTreeSet;

use sagwright_core::intake::{Change, Feeling, Verdict};
use sagwright_core::words::Book;

use crate::words::book;

const OWN: &str = include_str!("../../words/en/track.json");

const SOURCES: &[&str] = &[
    include_str!("earlier.rs"),
    include_str!("judging.rs"),
    include_str!("laps.rs"),
    include_str!("next.rs"),
    include_str!("page.rs"),
    include_str!("told.rs"),
];

/// Every literal in the sources that begins like a key, and the keys made from closed lists.
fn wanted() -> BTreeSet<String> {
    let pieces = SOURCES.iter().flat_map(|source| source.split('"'));
    let literals = pieces.filter(|piece| {
        let begins = ["track.", "advice.", "taking.", "not-asked."];
        begins.iter().any(|begin| piece.starts_with(begin)) && !piece.contains(['{', ' '])
    });
    let verdicts = Verdict::ALL.iter().flat_map(|verdict| {
        let word = verdict.word();
        [
            format!("track.was.{word}"),
            format!("choice.verdict.{word}"),
        ]
    });
    let feelings = Feeling::ALL
        .iter()
        .map(|f| format!("complaint.{}", f.word()));
    let changes = Change::ALL.iter().map(|c| format!("lap.do.{}", c.word()));
    literals
        .map(str::to_owned)
        .chain(verdicts)
        .chain(feelings)
        .chain(changes)
        .collect()
}

#[test]
fn every_key_has_a_sentence_and_every_sentence_is_used() {
    let (book, wanted) = (book(), wanted());
    assert!(wanted.len() > 50, "the search for keys found too few");
    let missing: Vec<_> = wanted.iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
    let own = Book::from_json(OWN).expect("the table is a flat object of sentences");
    let idle: Vec<_> = own.keys().filter(|key| !wanted.contains(*key)).collect();
    assert!(idle.is_empty(), "never looked up: {idle:?}");
}
