//! Bad intake documents: each must be refused at the right place, with words that say what to change.

mod link;

use sagwright_core::intake::{LARGEST_DOCUMENT, read};
use sagwright_core::words::{Book, UnitChoice};
use sagwright_core::workshop::{self, LARGEST_WORKSHOP, WORKSHOP_VERSION};

/// Reads `json` and gives "path: sentence" for each problem.
fn problems(json: &str) -> Vec<String> {
    let book = Book::english();
    match read(json) {
        Ok(_) => Vec::new(),
        Err(error) => error
            .problems
            .iter()
            .map(|p| format!("{}: {}", p.path, book.say(&p.text, &UnitChoice::default())))
            .collect(),
    }
}

/// Asserts that each expected piece stands in a problem of its own, and that there are no other problems.
#[track_caller]
fn refused(json: &str, expected: &[&[&str]]) {
    let found = problems(json);
    assert_eq!(found.len(), expected.len(), "{json}\ngave {found:#?}");
    for pieces in expected {
        assert!(
            found
                .iter()
                .any(|line| pieces.iter().all(|piece| line.contains(piece))),
            "{json}\nno line with {pieces:?} in {found:#?}"
        );
    }
    for line in found {
        let wordless = [": [", " [", "\"["].iter().any(|mark| line.contains(mark));
        assert!(!wordless, "a sentence is missing its words: {line}");
    }
}

#[test]
fn the_smallest_intake_is_accepted() {
    assert_eq!(problems(r#"{"version": 1}"#), Vec::<String>::new());
}

#[test]
fn what_is_not_json_says_where_it_breaks() {
    refused("", &[&["line 1"]]);
    refused("{\"version\": 1,", &[&["line 1", "column"]]);
    refused("[]", &[&["not an intake file"]]);
    refused("nonsense", &[&["line 1"]]);
}

#[test]
fn versions_are_told_apart() {
    refused("{}", &[&["version: ", "does not say which version"]]);
    refused(r#"{"version": 2}"#, &[&["version: ", "newer", "2"]]);
    refused(r#"{"version": 0}"#, &[&["version: ", "0"]]);
    refused(r#"{"version": "one"}"#, &[&["version: ", "one"]]);
}

#[test]
fn unknown_fields_are_named_every_one_of_them() {
    refused(
        r#"{"version": 1, "colour": "red", "rider": {"wieght": {"value": 80, "unit": "kg"}}}"#,
        &[&["colour: "], &["rider.wieght: "]],
    );
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": 80, "unit": "kg", "about": true}}}"#,
        &[&["rider.weight: ", "about"]],
    );
}

#[test]
fn unknown_words_are_named_with_the_words_allowed() {
    refused(
        r#"{"version": 1, "rider": {"pace": "warp"}, "bike": {"class": "hovercraft"}}"#,
        &[
            &["rider.pace: ", "warp", "club"],
            &["bike.class: ", "hovercraft", "trail"],
        ],
    );
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": 80, "unit": "stone"}}}"#,
        &[&["rider.weight: ", "stone", "lb"]],
    );
}

#[test]
fn numbers_out_of_range_say_the_range_in_the_unit_typed() {
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": 1850, "unit": "lb"}}}"#,
        &[&["rider.weight: ", "1850 lb", "44 lb", "441 lb"]],
    );
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": -5, "unit": "kg"}, "height": {"value": 18, "unit": "cm"}}}"#,
        &[
            &["rider.weight: ", "-5 kg", "20 kg", "200 kg"],
            &["rider.height: ", "18 cm"],
        ],
    );
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": 1e999, "unit": "kg"}}}"#,
        &[&["line 1"]],
    );
    refused(
        r#"{"version": 1, "rider": {"weight": {"value": "80", "unit": "kg"}}}"#,
        &[&["rider.weight: ", "80"]],
    );
}

#[test]
fn neighbours_that_contradict_each_other_are_named() {
    refused(
        r#"{"version": 1, "measured": {"fork_free_sag": {"value": 60, "unit": "mm"}, "fork_rider_sag": {"value": 50, "unit": "mm"}}}"#,
        &[&["measured.fork_rider_sag: "]],
    );
    refused(
        r#"{"version": 1, "bike": {"fork_rebound": {"range": {"value": 20, "unit": "clicks"}, "now": {"value": 25, "unit": "clicks"}}}}"#,
        &[&["bike.fork_rebound.now: ", "20", "25"]],
    );
    refused(
        r#"{"version": 1, "bike": {"fork_pressure": {"value": 14, "unit": "bar"}, "fork_pressure_max": {"value": 12, "unit": "bar"}}}"#,
        &[&["bike.fork_pressure: ", "do not ride"]],
    );
    refused(
        r#"{"version": 1, "complaints": [{"feeling": "dives"}, {"feeling": "dives", "end": "front"}]}"#,
        &[&["complaints[1].feeling: "]],
    );
}

#[test]
fn floods_are_refused() {
    let big = format!(
        r#"{{"version": 1, "note": "{}"}}"#,
        "x".repeat(LARGEST_DOCUMENT)
    );
    refused(&big, &[&["larger than"]]);
    let long = format!(r#"{{"version": 1, "note": "{}"}}"#, "é".repeat(501));
    refused(&long, &[&["note: ", "500"]]);
    let deep = format!(
        r#"{{"version": 1, "rider": {}1{}}}"#,
        "[".repeat(10_000),
        "]".repeat(10_000)
    );
    assert!(!problems(&deep).is_empty());
    let many: Vec<String> = (0..2000).map(|n| format!("\"f{n}\": 1")).collect();
    let found = problems(&format!("{{\"version\": 1, {}}}", many.join(", ")));
    assert!((1..=40).contains(&found.len()), "{} problems", found.len());
    let unknown = ["expected ", &"n".repeat(10_000)].concat();
    let found = problems(&format!(
        r#"{{"version": 1, "{unknown}": 1, "rider": {{"{unknown}": 1}}}}"#
    ));
    let short = |line: &String| line.chars().count() < 1_000;
    assert!(found.len() == 2 && found.iter().all(short), "{found:?}");
}

#[test]
fn workshop_documents_are_checked_too() {
    let good = r#"{"version": 1, "name": "A", "currency": "EUR", "labour_per_hour": [60, 80]}"#;
    assert!(workshop::read(good).is_ok());
    for (from, to, place) in [
        ("\"version\": 1", "\"version\": 9", "version"),
        ("\"A\"", "\"\"", "name"),
        ("EUR", "eur", "currency"),
        ("[60, 80]", "[80, 60]", "labour_per_hour"),
        ("[60, 80]", "[0, 60]", "labour_per_hour"),
        ("[60, 80]", "[60]", "labour_per_hour"),
        ("\"name\"", "\"nom\"", "nom"),
    ] {
        let error = workshop::read(&good.replace(from, to)).expect_err(to);
        assert_eq!(error.problems[0].path, place, "{to}");
    }
    let oldest = workshop::read(good).expect("version 1 is still read");
    assert_eq!(oldest.version, WORKSHOP_VERSION);
    let long = "x".repeat(LARGEST_WORKSHOP);
    let large = workshop::read(&good.replace("\"A\"", &format!("\"{long}\"")));
    let large = large.expect_err("too large").problems;
    assert_eq!(large[0].text.key, "problem.workshop-too-large");
    // However many of its parts are wrong, a rider's page tells no more than can be read.
    let ways = vec![r#"{"way":"email","address":"-"}"#; 1_000].join(",");
    let many = workshop::read(&with(&format!("\"delivery\":[{ways}]")));
    assert_eq!(many.expect_err("no addresses").problems.len(), 40);
}

/// A workshop's document with one part more than it needs.
fn with(part: &str) -> String {
    format!(
        r#"{{"version": 2, "name": "A", "currency": "EUR", "labour_per_hour": [60, 80], {part}}}"#
    )
}

#[test]
fn every_part_of_a_workshop_document_is_held_to_its_limits() {
    let question = |rest: &str| format!(r#""questions": [{{"id": "a", "text": "b", {rest}}}]"#);
    for (part, place) in [
        (
            format!(r#""contact": {{"phone": "{}"}}"#, "1".repeat(201)),
            "contact.phone",
        ),
        (r#""contact": {"fax": "1"}"#.to_owned(), "contact"),
        (r#""languages": ["xx"]"#.to_owned(), "languages"),
        (r#""languages": ["en", "en"]"#.to_owned(), "languages"),
        (r#""units": {"mass": "bar"}"#.to_owned(), "units"),
        (
            r#""prices": {"set-tyres": [9, 1]}"#.to_owned(),
            "prices.set-tyres",
        ),
        (
            r#""prices": {"set-tyres": [-1, 1]}"#.to_owned(),
            "prices.set-tyres",
        ),
        (r#""prices": {"magic": [1, 2]}"#.to_owned(), "prices"),
        (r#""remedies": []"#.to_owned(), "remedies"),
        (r#""classes": []"#.to_owned(), "classes"),
        (
            r#""stock": {"fork": [{"value": 999, "unit": "N/mm"}]}"#.to_owned(),
            "stock.fork",
        ),
        (
            r#""stock": {"shock": [{"value": 4.6, "unit": "N/mm"}]}"#.to_owned(),
            "stock.shock",
        ),
        (
            question(r#""kind": "choice", "choices": ["one"]"#),
            "questions[0].choices",
        ),
        (
            question(r#""kind": "text", "choices": ["one", "two"]"#),
            "questions[0].choices",
        ),
        (
            r#""questions": [{"id": "A b", "text": "b", "kind": "text"}]"#.to_owned(),
            "questions[0].id",
        ),
        (
            r#""questions": [{"id": "a", "text": " ", "kind": "text"}]"#.to_owned(),
            "questions[0].text",
        ),
        (format!(r#""consent": "{}""#, "x".repeat(1_001)), "consent"),
        (
            r##""theme": {"accent": "#ff0000"}"##.to_owned(),
            "theme.accent",
        ),
        (
            r#""theme": {"accent": "url(x)"}"#.to_owned(),
            "theme.accent",
        ),
        (r#""theme": {"corner": 25}"#.to_owned(), "theme.corner"),
        (r#""theme": {"text": 200}"#.to_owned(), "theme.text"),
        (r#""theme": {"danger": "green"}"#.to_owned(), "theme"),
        (r#""delivery": [{"way": "pigeon"}]"#.to_owned(), "delivery"),
        (
            r#""delivery": [{"way": "file"}, {"way": "file"}]"#.to_owned(),
            "delivery[1]",
        ),
        (
            r#""delivery": [{"way": "email", "address": "a@b.c?bcc=d@e.f"}]"#.to_owned(),
            "delivery[0].address",
        ),
        (r#""counting": "from-the-middle""#.to_owned(), "counting"),
    ] {
        let error = workshop::read(&with(&part)).expect_err(&part);
        assert_eq!(error.problems[0].path, place, "{part:.80}");
        let said = Book::english().say(&error.problems[0].text, &UnitChoice::default());
        assert!(!said.starts_with("[problem.") && !said.is_empty(), "{said}");
    }
    let many: Vec<String> = (0..13)
        .map(|n| format!(r#"{{"id": "q{n}", "text": "b", "kind": "text"}}"#))
        .collect();
    let error =
        workshop::read(&with(&format!("\"questions\": [{}]", many.join(",")))).expect_err("13");
    assert_eq!(error.problems[0].path, "questions");
    let demo = include_str!("../../demo-data/workshop.json");
    assert!(workshop::read(&["\u{feff}", demo].concat()).is_ok());
}

#[test]
fn intakes_go_to_encrypted_lines_the_own_site_or_the_own_machine_only() {
    let read = |url: &str| {
        let url = serde_json::Value::from(url);
        workshop::read(&with(&format!(
            r#""delivery": [{{"way": "endpoint", "url": {url}}}]"#
        )))
    };
    for url in [
        "https://a.b/in?x=1",
        "/in",
        "http://127.0.0.1:8080/",
        "http://localhost/in",
    ] {
        assert!(read(url).is_ok(), "{url}");
    }
    for url in [
        "",
        "in",
        "javascript:alert(1)",
        "http://a.b",
        "http://localhost.a.b/",
        "http://localhost:1@a.b/",
        "https://u:p@a.b/",
        "https:///in",
        "https://a.b/#in",
        "https://a.b/in out",
        "//a.b/",
        "/\\a.b/",
    ] {
        let error = read(url).expect_err(url);
        assert_eq!(error.problems[0].path, "delivery[0].url", "{url}");
    }
}

#[test]
fn answers_to_a_workshops_own_questions_are_held_to_their_limits() {
    let with = |extra: &str| read(&format!(r#"{{"version": 1, "extra": {extra}}}"#));
    let one = |id: &str, question: &str, answer: &str| {
        format!(r#"{{"id": "{id}", "question": "{question}", "answer": "{answer}"}}"#)
    };
    let long = "x".repeat(301);
    for (extra, place) in [
        (format!("[{}]", one("A b", "b", "c")), "extra[0].id"),
        (format!("[{0}, {0}]", one("a", "b", "c")), "extra[1].id"),
        (format!("[{}]", one("a", " ", "c")), "extra[0].question"),
        (format!("[{}]", one("a", &long, "c")), "extra[0].question"),
        (format!("[{}]", one("a", "b", "")), "extra[0].answer"),
        (format!("[{}]", one("a", "b", &long)), "extra[0].answer"),
        (
            format!("[{}]", vec![one("a", "b", "c"); 13].join(",")),
            "extra",
        ),
        (r#"[{"id": "a", "question": "b"}]"#.to_owned(), "extra"),
        (r#"{"a": "b"}"#.to_owned(), "extra"),
    ] {
        let error = with(&extra).expect_err(&extra);
        assert_eq!(error.problems[0].path, place, "{extra:.80}");
        let said = Book::english().say(&error.problems[0].text, &UnitChoice::default());
        assert!(!said.starts_with("[problem."), "{said}");
    }
    let full: Vec<String> = (0..12)
        .map(|n| one(&format!("q{n}"), &"q".repeat(200), &"\u{e4}".repeat(300)))
        .collect();
    let full = with(&format!("[{}]", full.join(","))).expect("as many and as long as allowed");
    let word = sagwright_core::intake::to_link(&full).expect("it packs well");
    assert_eq!(sagwright_core::intake::from_link(&word), Ok(full));
}
