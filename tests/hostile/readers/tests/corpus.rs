//! Every reader, handed its corpus, and the corpus put together wrongly.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::test_runner::{RngSeed, TestRunner};
use sagwright_tests_readers::{Named, all};

fn corpus() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../corpus")
}

/// The names in a folder, in order.
fn names_in(folder: &Path) -> BTreeSet<String> {
    let entries =
        fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let name = |entry: fs::DirEntry| entry.file_name().into_string().expect("plain names");
    entries
        .map(|entry| name(entry.expect("it can be listed")))
        .collect()
}

/// What stands in the corpus of a reader, with its names.
fn texts(reader: Named) -> Vec<(String, Vec<u8>)> {
    let folder = corpus().join(reader.name);
    let names = names_in(&folder).into_iter();
    names
        .map(|name| {
            let bytes = fs::read(folder.join(&name)).expect("it was just listed");
            (name, bytes)
        })
        .collect()
}

/// Words that the documents are made of, without the ones that are no UTF-8.
fn words() -> Vec<String> {
    let lines = include_str!("../../words.dict").lines();
    let quoted = lines.filter_map(|line| line.strip_prefix('"')?.strip_suffix('"'));
    quoted
        .filter(|word| !word.contains("\\x"))
        .map(|word| word.replace("\\\"", "\"").replace("\\\\", "\\"))
        .collect()
}

#[test]
fn every_reader_has_a_corpus_and_every_corpus_a_reader() {
    let readers: BTreeSet<String> = all().map(|reader| reader.name.to_owned()).collect();
    assert_eq!(readers, names_in(&corpus()));
    assert_eq!(readers.len(), all().count(), "two readers of one name");
    assert!(words().len() > 100, "{} words", words().len());
}

#[test]
fn what_is_known_is_taken_or_refused_as_its_name_says() {
    for reader in all() {
        let texts = texts(reader);
        for start in ["taken-", "refused-"] {
            let there = texts.iter().any(|(name, _)| name.starts_with(start));
            assert!(there, "nothing {start} for {}", reader.name);
        }
        for (name, bytes) in texts {
            let expected = match name.split_once('-') {
                Some(("taken", _)) => true,
                Some(("refused", _)) => false,
                _ => panic!("{}/{name} does not say whether it is taken", reader.name),
            };
            assert_eq!(reader.read(&bytes), expected, "{}/{name}", reader.name);
        }
    }
}

/// One thing done to a text.
#[derive(Debug, Clone)]
enum Wrong {
    /// A piece taken out.
    Cut(Index, Index),
    /// A piece of another text put in.
    Graft(Index, Index, Index, Index),
    /// A word put in.
    Word(Index, String),
    /// One byte changed.
    Byte(Index, u8),
    /// A piece said twice.
    Again(Index, Index),
}

fn wrong() -> impl Strategy<Value = Wrong> {
    let at = any::<Index>;
    prop_oneof![
        (at(), at()).prop_map(|(from, to)| Wrong::Cut(from, to)),
        (at(), at(), at(), at()).prop_map(|(to, of, from, end)| Wrong::Graft(to, of, from, end)),
        (at(), select(words())).prop_map(|(to, word)| Wrong::Word(to, word)),
        (at(), any::<u8>()).prop_map(|(to, byte)| Wrong::Byte(to, byte)),
        (at(), at()).prop_map(|(from, to)| Wrong::Again(from, to)),
    ]
}

/// The piece of a text between two places, in whichever order they come.
fn piece(text: &[u8], from: Index, to: Index) -> std::ops::Range<usize> {
    let (from, to) = (from.index(text.len() + 1), to.index(text.len() + 1));
    from.min(to)..from.max(to)
}

fn done(mut text: Vec<u8>, wrong: &Wrong, others: &[(String, Vec<u8>)]) -> Vec<u8> {
    match wrong {
        Wrong::Cut(from, to) => {
            text.drain(piece(&text, *from, *to));
        }
        Wrong::Graft(to, of, from, end) => {
            let (_, other) = of.get(others);
            let at = to.index(text.len() + 1);
            text.splice(at..at, other[piece(other, *from, *end)].to_vec());
        }
        Wrong::Word(to, word) => {
            let at = to.index(text.len() + 1);
            text.splice(at..at, word.bytes());
        }
        Wrong::Byte(to, byte) => {
            if !text.is_empty() {
                let at = to.index(text.len());
                text[at] = *byte;
            }
        }
        Wrong::Again(from, to) => {
            let range = piece(&text, *from, *to);
            let said = text[range.clone()].to_vec();
            text.splice(range.end..range.end, said);
        }
    }
    text
}

/// The fuzzer looks for hours where it was never; these few hundred are the same each time.
#[test]
fn what_is_put_together_wrongly_is_read_or_refused() {
    for reader in all() {
        let texts = texts(reader);
        // What is taken by this one is advised on, which takes as long as hundreds of others.
        let cases = if reader.name == "advice" { 24 } else { 300 };
        let mut runner = TestRunner::new(ProptestConfig {
            cases,
            rng_seed: RngSeed::Fixed(20_263),
            failure_persistence: None,
            ..ProptestConfig::default()
        });
        let start = any::<Index>().prop_map(|which| which.get(&texts).1.clone());
        let result = runner.run(&(start, vec(wrong(), 1..6)), |(start, wrongs)| {
            let text = wrongs
                .iter()
                .fold(start, |text, wrong| done(text, wrong, &texts));
            reader.read(&text);
            Ok(())
        });
        result.unwrap_or_else(|error| panic!("{}: {error}", reader.name));
    }
}
