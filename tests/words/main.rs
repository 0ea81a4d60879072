//! Every sentence the advice can ask for is there, and none is there for nothing.

use std::collections::BTreeSet;

use sagwright_core::advice::{Options, SignalWord, advise};
use sagwright_core::cause::Cause;
use sagwright_core::cause::checks::{self, How};
use sagwright_core::intake::{
    BikeClass, Change, Feeling, Field, ForkKind, Intake, Look, PushFeel, ShockKind, StopSign,
    Verdict, YesNo, read,
};
use sagwright_core::remedy::{Tier, catalogue::CATALOGUE};
use sagwright_core::words::{Book, UnitChoice};
use sagwright_core::workshop::{self, Workshop};
use serde_json::Value;

/// Every key in a document of advice.
fn keys_in(document: &Value, keys: &mut BTreeSet<String>) {
    match document {
        Value::Array(items) => items.iter().for_each(|item| keys_in(item, keys)),
        Value::Object(fields) => {
            if let Some(Value::String(key)) = fields.get("key") {
                keys.insert(key.clone());
            }
            fields.values().for_each(|value| keys_in(value, keys));
        }
        _ => {}
    }
}

/// The keys built from closed lists.
fn listed() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    let mut add = |key: String| keys.insert(key);
    for cause in Cause::ALL {
        for part in ["name", "what", "feel", "confirm", "cures"] {
            add(format!("cause.{}.{part}", cause.word()));
        }
    }
    for entry in CATALOGUE {
        let word = entry.id.word();
        for part in ["name", "cannot"] {
            add(format!("remedy.{word}.{part}"));
        }
        for step in 1..=entry.steps {
            add(format!("remedy.{word}.step{step}"));
        }
        for caution in entry.cautions {
            add(format!("caution.{caution}"));
        }
    }
    for check in checks::all() {
        let parts: &[&str] = match check.how {
            // A look has words of its own, but for why it is worth taking.
            How::Look(_) => &["why"],
            How::Answer(_) | How::Try(_) => &["what", "why", "reading"],
        };
        for part in parts {
            add(format!("check.{}.{part}", check.word));
        }
    }
    for look in Look::ALL {
        let word = look.word();
        for key in ["what", "reading"] {
            add(format!("look.{word}.{key}"));
        }
        for answer in YesNo::ALL {
            add(format!("evidence.look-{word}-{}", answer.word()));
        }
    }
    for change in Change::ALL {
        add(format!("change.{}", change.word()));
        add(format!("lap.do.{}", change.word()));
    }
    for verdict in Verdict::ALL {
        add(format!("evidence.tried-{}", verdict.word()));
    }
    for sign in StopSign::ALL {
        add(format!("stop.{}.why", sign.word()));
        add(format!("stop.{}.instead", sign.word()));
    }
    for feel in PushFeel::ALL {
        add(format!("evidence.push-front-{}", feel.word()));
        add(format!("evidence.push-rear-{}", feel.word()));
    }
    for tier in Tier::ALL {
        add(format!("tier.{}", tier.word()));
        add(format!("tier.{}.what", tier.word()));
    }
    for signal in [
        SignalWord::Danger,
        SignalWord::Warning,
        SignalWord::Caution,
        SignalWord::Notice,
    ] {
        add(format!("signal.{}", signal.word()));
    }
    keys.extend(
        Field::ALL
            .iter()
            .map(|field| format!("field.{}", field.path())),
    );
    keys.extend(
        Feeling::ALL
            .iter()
            .map(|feeling| format!("feeling.{}", feeling.word())),
    );
    keys.extend(
        BikeClass::ALL
            .iter()
            .map(|class| format!("class.{}", class.word())),
    );
    keys.extend(
        ForkKind::ALL
            .iter()
            .map(|fork| format!("fork.{}", fork.word())),
    );
    keys.extend(
        ShockKind::ALL
            .iter()
            .map(|shock| format!("shock.{}", shock.word())),
    );
    keys
}

/// Keys that stand as literals in the sources of the core.
fn written_in_sources() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    let mut folders = vec![std::path::PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/src"
    ))];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).expect("the sources are there") {
            let path = entry.expect("readable").path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let text = std::fs::read_to_string(path).expect("readable");
                let quoted = text.split('"').skip(1).step_by(2);
                keys.extend(quoted.filter(|q| q.contains('.')).map(str::to_owned));
            }
        }
    }
    keys
}

#[test]
fn every_listed_sentence_is_there() {
    let book = Book::english();
    let missing: Vec<String> = listed().into_iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "no words for {missing:#?}");
}

#[test]
fn demo_advice_has_words_for_everything_with_every_gap_filled() {
    let book = Book::english();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data");
    let workshop = include_str!("../../demo-data/workshop.json");
    let workshop = workshop::read(workshop).expect("well-formed");
    for entry in std::fs::read_dir(folder).expect("the demo data is there") {
        let path = entry.expect("readable").path();
        if path.ends_with("workshop.json") || path.extension().is_none_or(|e| e != "json") {
            continue;
        }
        let intake = read(&std::fs::read_to_string(&path).expect("readable")).expect("well-formed");
        spoken(&book, &intake, None);
        spoken(&book, &intake, Some(&workshop));
    }
    spoken(&book, &Intake::default(), None);
}

/// Asserts that nothing said about this intake lacks words.
fn spoken(book: &Book, intake: &Intake, workshop: Option<&Workshop>) {
    let workshop = workshop.cloned();
    let advice = advise(intake, &Options { workshop }).expect("a checked intake");
    let mut document = serde_json::to_value(&advice).expect("plain data");
    let mut keys = BTreeSet::new();
    keys_in(&document, &mut keys);
    assert!(keys.len() > 3, "the advice says nothing");
    let missing: Vec<_> = keys.iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "no words for {missing:#?}");
    book.spell_out(&mut document, &UnitChoice::default());
    // A key without words shows in square brackets, and so does a gap without a value; a gap that was not closed
    // would leave its brace.
    let mut said = Vec::new();
    texts_in(&document, &mut said);
    assert!(said.len() > 3, "nothing is spelt out");
    let bad: Vec<_> = said
        .iter()
        .filter(|text| text.contains(['[', '{', '}']))
        .collect();
    assert!(bad.is_empty(), "unfilled gaps in {bad:#?}");
}

/// Every sentence spelt out in a document of advice.
fn texts_in(document: &Value, texts: &mut Vec<String>) {
    match document {
        Value::Array(items) => items.iter().for_each(|item| texts_in(item, texts)),
        Value::Object(fields) => {
            if let Some(Value::String(text)) = fields.get("text") {
                texts.push(text.clone());
            }
            fields.values().for_each(|value| texts_in(value, texts));
        }
        _ => {}
    }
}

#[test]
fn no_sentence_is_there_for_nothing() {
    let mut used = listed();
    used.extend(written_in_sources());
    // Each figure of feel is written by its name and told with what it means and where that comes from.
    let figures: Vec<String> = used
        .iter()
        .filter(|key| key.starts_with("feel."))
        .cloned()
        .collect();
    for figure in figures {
        used.extend(["because", "source"].map(|part| format!("{figure}.{part}")));
    }
    // Keys put together from a literal stem: the stem stands in the sources with its gap.
    let stems: Vec<String> = used
        .iter()
        .filter_map(|key| key.split_once('{').map(|(stem, _)| stem.to_owned()))
        .collect();
    let book = Book::english();
    let unused: Vec<&str> = book
        .keys()
        .filter(|key| {
            !used.contains(*key) && !stems.iter().any(|s| !s.is_empty() && key.starts_with(s))
        })
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:#?}");
}
