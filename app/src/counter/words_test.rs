//! Every sentence the counter looks up is there, and none is left over.

use std::collections::BTreeSet;
use std::path::Path;

use sagwright_core::words::Book;
use sagwright_core::workshop::{AnswerKind, ColourScheme, Counting, Delivery};

use super::find::{Order, stage_name};
use super::job::Stage;
use super::{ENGLISH, speak};
use crate::words::book;

/// The text of every source of the counter but its tests of words.
fn sources(folder: &Path) -> String {
    let mut all = String::new();
    for entry in std::fs::read_dir(folder).expect("the sources are there while they are tested") {
        let path = entry.expect("the folder can be read").path();
        if path.is_dir() {
            all.push_str(&sources(&path));
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            all.push_str(&std::fs::read_to_string(&path).expect("a source is text"));
        }
    }
    all
}

fn own_sources() -> String {
    sources(Path::new(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/src/counter"
    )))
}

/// The keys made from closed lists.
fn families() -> BTreeSet<String> {
    let stages = Stage::ALL
        .iter()
        .map(|stage| stage_name(*stage).key.into_owned());
    let orders = Order::ALL
        .iter()
        .map(|order| format!("counter.order.{}", order.word()));
    let families = [
        ("settings.kind", words(AnswerKind::ALL, AnswerKind::word)),
        (
            "settings.colours",
            words(ColourScheme::ALL, ColourScheme::word),
        ),
        ("settings.counting", words(Counting::ALL, Counting::word)),
        ("settings.way", Delivery::WORDS.to_vec()),
        (
            "settings.unit",
            vec![
                "mass",
                "length",
                "rate",
                "pressure",
                "height",
                "temperature",
                "altitude",
            ],
        ),
    ];
    let families = families.into_iter().flat_map(|(family, words)| {
        let words = words.into_iter();
        words.map(move |word| format!("counter.{family}.{word}"))
    });
    stages.chain(orders).chain(families).collect()
}

fn words<T: Copy>(all: &[T], word: fn(T) -> &'static str) -> Vec<&'static str> {
    all.iter().map(|item| word(*item)).collect()
}

#[test]
fn no_sentence_is_missing_and_none_is_left_over() {
    let own = Book::from_json(ENGLISH).expect("the table is a flat object of sentences");
    let sources = own_sources();
    let literal: BTreeSet<&str> = sources.split('"').collect();
    let families = families();
    let missing: Vec<&String> = families.iter().filter(|key| !own.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
    let idle: Vec<&str> = own
        .keys()
        .filter(|key| !literal.contains(key) && !families.contains(*key))
        .collect();
    assert!(idle.is_empty(), "never looked up: {idle:?}");
}

#[test]
fn every_key_in_the_sources_has_a_sentence() {
    speak();
    let book = book();
    let sources = own_sources();
    let keys = sources.split('"').filter(|piece| {
        let plain = |c: char| c.is_ascii_lowercase() || matches!(c, '.' | '-');
        let own = ["counter.", "advice.", "shell.", "choice.", "line."];
        piece.chars().all(plain)
            && own.iter().any(|beginning| piece.starts_with(beginning))
            && !piece.ends_with('.')
    });
    let keys: BTreeSet<&str> = keys.collect();
    assert!(keys.len() > 100, "the search found only {}", keys.len());
    let missing: Vec<&&str> = keys.iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
}
