//! The advice for every demo intake, to the last bit, natively and in the browser.
//!
//! What it pins: every number, share, order and sentence key of the advice. JSON numbers are written as the
//! shortest text that reads back to the same bits, so equal text means equal bits. How to run it in the browser:
//! `cargo test -p sagwright-core --target wasm32-unknown-unknown --test goldens`. After a change that is meant to
//! change advice: `SAGWRIGHT_WRITE_GOLDENS=1 cargo test -p sagwright-core --test goldens`, then read the difference.

use std::fmt::Write as _;

use sagwright_core::advice::{Options, advise};
use sagwright_core::intake::read;
use sagwright_core::workshop;
use serde_json::Value;
#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::{wasm_bindgen_test as test, wasm_bindgen_test_configure};

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test_configure!(run_in_browser);

/// Name, intake and expected advice of one case.
type Case = (&'static str, &'static str, &'static str);

macro_rules! cases {
    ($($name:literal),+ $(,)?) => {
        &[$((
            $name,
            include_str!(concat!("../../demo-data/", $name, ".json")),
            include_str!(concat!("advice/", $name, ".txt")),
        )),+]
    };
}

const CASES: &[Case] = cases![
    "adventure-bike-that-fades",
    "enduro-that-packs-down",
    "gas-fork-cold-morning",
    "gas-fork-over-pressured",
    "gas-fork-right-but-harsh",
    "heavy-rider-on-standard-springs",
    "light-expert-whose-rear-kicks",
    "shake-that-grows",
    "trail-bike-baseline",
    "youth-who-knows-little",
];

/// The advice as text with one item a line, so that a difference can be read.
fn advice_text(intake: &str) -> String {
    let intake = read(intake).expect("demo intakes are well-formed");
    let workshop = workshop::read(include_str!("../../demo-data/workshop.json"))
        .expect("the demo workshop is well-formed");
    let advice = advise(
        &intake,
        &Options {
            workshop: Some(workshop),
        },
    )
    .expect("a checked intake");
    let Value::Object(parts) = serde_json::to_value(&advice).expect("advice is plain data") else {
        panic!("advice is an object");
    };
    let mut text = String::new();
    for (name, part) in parts {
        match part {
            Value::Array(items) => {
                for item in items {
                    let _ = writeln!(text, "{name}: {item}");
                }
            }
            part => {
                let _ = writeln!(text, "{name}: {part}");
            }
        }
    }
    text
}

#[test]
fn every_demo_intake_gives_the_advice_on_record() {
    #[cfg(not(target_arch = "wasm32"))]
    let writing = std::env::var_os("SAGWRIGHT_WRITE_GOLDENS").is_some();
    #[cfg(target_arch = "wasm32")]
    let writing = false;
    for (name, intake, expected) in CASES {
        let found = advice_text(intake);
        if writing {
            let path = format!(
                "{}/../tests/goldens/advice/{name}.txt",
                env!("CARGO_MANIFEST_DIR")
            );
            std::fs::write(path, found).expect("the goldens can be written");
            continue;
        }
        for (line, (found, expected)) in found.lines().zip(expected.lines()).enumerate() {
            assert_eq!(found, expected, "{name}, line {}", line + 1);
        }
        assert_eq!(found.lines().count(), expected.lines().count(), "{name}");
    }
}

#[cfg(not(target_arch = "wasm32"))]
#[test]
fn every_demo_intake_is_on_record() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data");
    let mut found: Vec<String> = std::fs::read_dir(folder)
        .expect("the demo data is there")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter_map(|name| name.strip_suffix(".json").map(str::to_owned))
        .filter(|name| name != "workshop")
        .collect();
    found.sort();
    let listed: Vec<&str> = CASES.iter().map(|(name, ..)| *name).collect();
    assert_eq!(found, listed);
}
