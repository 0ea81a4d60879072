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

/// A demo intake and the advice on record for it.
struct Case {
    name: &'static str,
    intake: &'static str,
    expected: &'static str,
}

/// A list of all cases, and a test of each: in a browser, ten advices in one test would hold the page up for longer than
/// its driver waits.
macro_rules! cases {
    ($($test:ident: $name:literal),+ $(,)?) => {
        const CASES: &[Case] = &[$(Case {
            name: $name,
            intake: include_str!(concat!("../../demo-data/", $name, ".json")),
            expected: include_str!(concat!("advice/", $name, ".txt")),
        }),+];

        $(#[test]
        fn $test() {
            let case = CASES.iter().find(|case| case.name == $name);
            as_on_record(case.expect("it is in the list"));
        })+
    };
}

cases![
    an_adventure_bike_that_fades: "adventure-bike-that-fades",
    an_enduro_that_packs_down: "enduro-that-packs-down",
    a_gas_fork_on_a_cold_morning: "gas-fork-cold-morning",
    an_over_pressured_gas_fork: "gas-fork-over-pressured",
    a_gas_fork_that_is_right_but_harsh: "gas-fork-right-but-harsh",
    a_heavy_rider_on_standard_springs: "heavy-rider-on-standard-springs",
    a_light_expert_whose_rear_kicks: "light-expert-whose-rear-kicks",
    a_shake_that_grows: "shake-that-grows",
    a_trail_bike_for_a_baseline: "trail-bike-baseline",
    a_youth_who_knows_little: "youth-who-knows-little",
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

fn as_on_record(case: &Case) {
    #[cfg(not(target_arch = "wasm32"))]
    let writing = std::env::var_os("SAGWRIGHT_WRITE_GOLDENS").is_some();
    #[cfg(target_arch = "wasm32")]
    let writing = false;
    let found = advice_text(case.intake);
    if writing {
        let path = format!(
            "{}/../tests/goldens/advice/{}.txt",
            env!("CARGO_MANIFEST_DIR"),
            case.name
        );
        std::fs::write(path, found).expect("the goldens can be written");
        return;
    }
    for (line, (found, expected)) in found.lines().zip(case.expected.lines()).enumerate() {
        assert_eq!(found, expected, "line {}", line + 1);
    }
    assert_eq!(found.lines().count(), case.expected.lines().count());
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
    let listed: Vec<&str> = CASES.iter().map(|case| case.name).collect();
    assert_eq!(found, listed);
}
