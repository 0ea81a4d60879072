//! Every sentence about the workshop is there, and none is left over.

use std::collections::BTreeSet;
use std::path::Path;

use sagwright_core::words::Book;
use sagwright_core::workshop::Delivery;

use crate::words::{ADVISING, ASKING};

/// The sources of the advice's program; all others are of the questions'.
const SENDING: [&str; 6] = [
    "around",
    "courier",
    "letter",
    "outbox_page",
    "send_page",
    "ways",
];

/// The text of the sources of the advice's program, or of the others.
fn sources(sending: bool) -> String {
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src/hosted"));
    let mut all = String::new();
    for entry in std::fs::read_dir(folder).expect("the sources are there while they are tested") {
        let path = entry.expect("the folder can be read").path();
        let stem = path.file_stem().and_then(|stem| stem.to_str());
        if stem.is_some_and(|stem| SENDING.contains(&stem)) == sending {
            all.push_str(&std::fs::read_to_string(path).expect("a source is text"));
        }
    }
    all
}

/// The keys of ours that stand in a source as they are.
fn literal(sources: &str) -> BTreeSet<String> {
    let pieces = sources.split('"');
    let keys = pieces.filter(|piece| piece.starts_with("hosted.") && *piece != "hosted.");
    let keys = keys.filter(|key| !key.contains('{'));
    keys.map(str::to_owned).collect()
}

#[test]
fn no_sentence_is_missing_and_none_is_left_over() {
    let table = |text| Book::from_json(text).expect("the table is a flat object of sentences");
    let keys = |book: &Book| book.keys().map(str::to_owned).collect::<BTreeSet<_>>();
    let early = table(include_str!("../../words/en/hosted.json"));
    let late = table(include_str!("../../words/en/sending.json"));
    let (asking, sending) = (sources(false), sources(true));
    let ways = Delivery::WORDS.iter();
    let ways = ways.map(|word| format!("hosted.way.{word}"));
    assert_eq!(literal(&asking), keys(&early));
    let mut looked_up = literal(&sending);
    looked_up.extend(ways);
    looked_up.retain(|key| !early.has(key));
    assert_eq!(looked_up, keys(&late));
    // The questions' program says its own before the advice's sentences have come.
    let (early, all) = ((ASKING.english)(), (ADVISING.english)());
    for key in asking.split('"').filter(|piece| all.has(piece)) {
        assert!(early.has(key), "{key} comes with the advice only");
    }
}
