//! The threats in docs/security.md and the tests that it names.

use std::path::Path;

const DOCUMENT: &str = include_str!("../../../../docs/security.md");

/// All sources below a folder, in one.
fn sources(folder: &Path, all: &mut String) {
    for entry in std::fs::read_dir(folder).expect("the sources are there while they are tested") {
        let path = entry.expect("a folder can be read").path();
        let built = ["target", "node_modules", "dist"];
        if path.is_dir() && !built.iter().any(|name| path.ends_with(name)) {
            sources(&path, all);
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            all.push_str(&std::fs::read_to_string(&path).expect("a source is text"));
        }
    }
}

#[test]
fn every_threat_has_its_test_and_every_test_named_exists() {
    let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../../.."));
    let mut all = String::new();
    for folder in ["app", "core", "tests"] {
        sources(&root.join(folder), &mut all);
    }
    let (_, table) = DOCUMENT
        .split_once("| Threat |")
        .expect("there is a table of threats");
    let rows = table
        .lines()
        .skip(2)
        .take_while(|line| line.starts_with('|'));
    let mut threats = 0;
    for row in rows {
        let cells: Vec<&str> = row.split('|').map(str::trim).collect();
        let [_, threat, _, tests, _] = cells[..] else {
            panic!("no threat, answer and test: {row}");
        };
        let mut named = tests.split('`').skip(1).step_by(2).peekable();
        assert!(named.peek().is_some(), "no test: {threat}");
        for test in named {
            assert!(
                all.contains(&format!("fn {test}(")),
                "{threat} There is no test called {test}"
            );
        }
        threats += 1;
    }
    assert!(threats > 20, "{threats}");
}
