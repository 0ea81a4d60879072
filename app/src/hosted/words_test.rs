//! Every sentence about the workshop is there, and none is left over.

use std::collections::BTreeSet;
use std::path::Path;

use sagwright_core::words::Book;
use sagwright_core::workshop::Delivery;

use crate::words::{ADVISING, ASKING};

const OWN: &str = include_str!("../../words/en/hosted.json");

#[test]
fn no_sentence_is_missing_and_none_is_left_over() {
    let own = Book::from_json(OWN).expect("the table is a flat object of sentences");
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src/hosted"));
    let mut sources = String::new();
    for entry in std::fs::read_dir(folder).expect("the sources are there while they are tested") {
        let path = entry.expect("the folder can be read").path();
        sources.push_str(&std::fs::read_to_string(path).expect("a source is text"));
    }
    // The page around has its button elsewhere.
    let ways = Delivery::WORDS.iter().filter(|word| **word != "host-page");
    let ways: BTreeSet<String> = ways.map(|word| format!("hosted.way.{word}")).collect();
    let literal = sources
        .split('"')
        .filter(|piece| piece.starts_with("hosted."));
    let looked_up = literal.filter(|key| !key.contains('{')).map(str::to_owned);
    let looked_up: BTreeSet<String> = looked_up
        .chain(ways)
        .filter(|key| key != "hosted.")
        .collect();
    let there: BTreeSet<String> = own.keys().map(str::to_owned).collect();
    assert_eq!(looked_up, there);
    // The questions' program says them, before the advice's sentences have come.
    let (early, all) = ((ASKING.english)(), (ADVISING.english)());
    for key in sources.split('"').filter(|piece| all.has(piece)) {
        assert!(early.has(key), "{key} comes with the advice only");
    }
}
