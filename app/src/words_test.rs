//! Every sentence the pages look up is there, and none is left over.

use std::collections::BTreeSet;
use std::path::Path;

use sagwright_core::intake::{
    Change, End, Feeling, Field, Look, Phase, Question, StopSign, Terrain,
};
use sagwright_core::words::Book;

use crate::state::{Aspect, CANNOT_SAY, Section, Slot, label};
use crate::wear::Theme;
use crate::words::book;

const OWN: &str = include_str!("../words/en/pages.json");

/// The folders whose sources speak only from other books.
const OTHERS: [&str; 6] = [
    "advice_page",
    "counter",
    "drawings",
    "hosted",
    "pictures",
    "track",
];

/// The text of every source of the wizard.
fn sources(folder: &Path) -> String {
    let mut all = String::new();
    for entry in std::fs::read_dir(folder).expect("the sources are there while they are tested") {
        let path = entry.expect("the folder can be read").path();
        let name = path
            .file_name()
            .and_then(|n| n.to_str())
            .unwrap_or_default();
        if path.is_dir() && !OTHERS.contains(&name) {
            all.push_str(&sources(&path));
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            all.push_str(&std::fs::read_to_string(&path).expect("a source is text"));
        }
    }
    all
}

/// The keys made from closed lists.
fn families() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    let mut add = |key: String| {
        keys.insert(key);
    };
    for section in Section::ALL {
        add(format!("section.{}", section.word()));
    }
    for question in Question::ALL {
        let word = question.word();
        add(format!("ask.{word}"));
        add(format!("ask.{word}.why"));
        add(format!("ask.{word}.unknown"));
        if *question != Question::ComplaintDetail {
            add(format!("answers.{word}"));
        }
    }
    for slot in slots() {
        for word in slot.words() {
            add(label(slot, word).key.into_owned());
        }
        add(label(slot, CANNOT_SAY).key.into_owned());
    }
    for aspect in Aspect::ALL {
        let slot = Slot::Detail(Feeling::Dives, *aspect);
        add(format!("detail.{}", slot.family()));
        add(format!("line.{}", slot.family()));
    }
    for word in Slot::How(Field::ForkRate).words() {
        add(format!("known.{word}"));
    }
    for field in [Field::ForkRate, Field::ForkPressure, Field::ShockRate] {
        add(format!("how.{}", field.path()));
    }
    add_words(&mut add, "complaint", Feeling::ALL, Feeling::word);
    add_words(&mut add, "phase", Phase::ALL, Phase::word);
    add_words(&mut add, "terrain", Terrain::ALL, Terrain::word);
    add_words(&mut add, "sign", StopSign::ALL, StopSign::word);
    add_words(&mut add, "wear", Theme::ALL, Theme::word);
    add_words(&mut add, "push", &[End::Front, End::Rear], End::word);
    for key in crate::examples::offered().map(crate::examples::Example::key) {
        add(key);
    }
    for look in Look::ALL {
        add(format!("looking.{}", look.word()));
        add(format!("looking.{}.ask", look.word()));
    }
    keys
}

fn add_words<T: Copy>(
    add: &mut impl FnMut(String),
    family: &str,
    list: &[T],
    word: fn(T) -> &'static str,
) {
    for item in list {
        add(format!("{family}.{}", word(*item)));
    }
}

/// One slot of every kind.
fn slots() -> Vec<Slot> {
    let mut slots: Vec<Slot> = Question::ALL.iter().map(|q| Slot::One(*q)).collect();
    slots.extend(Aspect::ALL.iter().map(|a| Slot::Detail(Feeling::Dives, *a)));
    slots.extend([
        Slot::Push(End::Front),
        Slot::Ground(Terrain::Sand),
        Slot::How(Field::ForkRate),
        Slot::Look(Look::HangsShort),
        Slot::Lap(Change::TyresLess, Feeling::Dives),
    ]);
    slots
}

/// Lines that a page adds where there are any.
fn optional() -> BTreeSet<String> {
    let hints = families().into_iter().map(|key| format!("{key}.hint"));
    let alone = ["complaints.nothing.hint", "signs.dont-know.hint"].map(str::to_owned);
    let hows = Question::ALL
        .iter()
        .map(|q| format!("ask.{}.how", q.word()));
    let about = Field::ALL.iter().map(|f| format!("about.{}", f.path()));
    let beside = Field::ALL.iter().map(|f| format!("unit.{}", f.path()));
    hints
        .chain(hows)
        .chain(about)
        .chain(beside)
        .chain(alone)
        .collect()
}

#[test]
fn no_sentence_is_missing_and_none_is_left_over() {
    let own = Book::from_json(OWN).expect("the table is a flat object of sentences");
    let sources = sources(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src")));
    // A key that stands in the sources as it is looks like `"landing.start"`.
    let literal: BTreeSet<&str> = sources.split('"').collect();
    let families = families();
    let missing: Vec<&String> = families.iter().filter(|key| !own.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
    let optional = optional();
    let idle: Vec<&str> = own
        .keys()
        .filter(|key| {
            !literal.contains(key) && !families.contains(*key) && !optional.contains(*key)
        })
        .collect();
    assert!(idle.is_empty(), "never looked up: {idle:?}");
}

#[test]
fn every_key_in_the_sources_has_a_sentence() {
    let sources = sources(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src")));
    let begin: BTreeSet<&str> = book_prefixes();
    let book = book();
    let keys = sources.split('"').filter(|piece| {
        let plain = piece
            .chars()
            .all(|c| c.is_ascii_lowercase() || matches!(c, '.' | '-'));
        let prefix = piece.split_once('.').map(|(prefix, _)| prefix);
        plain && prefix.is_some_and(|prefix| begin.contains(prefix))
    });
    let keys: BTreeSet<&str> = keys.collect();
    assert!(
        keys.len() > 80,
        "the search for keys found only {}",
        keys.len()
    );
    let missing: Vec<&&str> = keys.iter().filter(|key| !book.has(key)).collect();
    assert!(missing.is_empty(), "without a sentence: {missing:?}");
}

/// What a key of the wizard begins with.
fn book_prefixes() -> BTreeSet<&'static str> {
    [
        "title",
        "shell",
        "wear",
        "landing",
        "frame",
        "input",
        "how",
        "trouble",
        "line",
        "not-asked",
        "section",
        "choice",
        "check",
        "answers",
        "start-again",
        "open",
        "riding",
        "taking",
        "link",
        "sheet",
        "advice",
        "moment",
        "detail",
        "complaints",
        "signs",
    ]
    .into()
}

#[test]
fn every_number_and_feeling_has_a_name() {
    let book = book();
    for field in Field::ALL {
        assert!(book.has(&format!("field.{}", field.path())), "{field:?}");
    }
    for feeling in Feeling::ALL {
        assert!(
            book.has(&format!("feeling.{}", feeling.word())),
            "{feeling:?}"
        );
    }
}
