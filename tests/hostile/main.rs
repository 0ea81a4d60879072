//! Bad intake documents: each must be refused at the right place, with words that say what to change.

mod link;

use sagwright_core::intake::{LARGEST_DOCUMENT, Workshop, read};
use sagwright_core::words::{Book, UnitChoice};

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
}

#[test]
fn workshop_documents_are_checked_too() {
    let good = r#"{"version": 1, "name": "A", "currency": "EUR", "labour_per_hour": [60, 80]}"#;
    assert!(Workshop::read(good).is_ok());
    for (from, to, place) in [
        ("\"version\": 1", "\"version\": 9", "version"),
        ("\"A\"", "\"\"", "name"),
        ("EUR", "eur", "currency"),
        ("[60, 80]", "[80, 60]", "labour_per_hour"),
        ("[60, 80]", "[0, 60]", "labour_per_hour"),
        ("[60, 80]", "[60]", ""),
        ("\"name\"", "\"nom\"", ""),
    ] {
        let error = Workshop::read(&good.replace(from, to)).expect_err(to);
        assert_eq!(error.problems[0].path, place, "{to}");
    }
}
