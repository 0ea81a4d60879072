//! Desks for the tests: as many invented riders as wanted, each a little heavier than the one before.

use std::fmt::Write as _;

use sagwright_core::intake::{Intake, read, write};
use sagwright_core::quantity::{Entry, MassUnit};
use sha2::{Digest as _, Sha256};

/// The riders they are made after.
const MODELS: [&str; 4] = [
    include_str!("../../../../demo-data/gas-fork-right-but-harsh.json"),
    include_str!("../../../../demo-data/enduro-that-packs-down.json"),
    include_str!("../../../../demo-data/heavy-rider-on-standard-springs.json"),
    include_str!("../../../../demo-data/trail-bike-baseline.json"),
];

/// An invented rider, counted from 1.
pub fn rider(number: usize) -> Intake {
    let mut intake = read(MODELS[number % MODELS.len()]).expect("an invented rider");
    let grams = u32::try_from(number).expect("a few thousand") * 10;
    intake.rider.weight = Some(Entry {
        value: 60.0 + f64::from(grams) / 1000.0,
        unit: MassUnit::Kilogram,
        how: None,
    });
    intake.note = format!("Rider {number}, invented for a test.");
    intake
}

/// The rider's own file.
pub fn file_of(number: usize) -> String {
    write(&rider(number)).expect("plain data")
}

/// The name the desk keeps a rider under.
pub fn name_of(number: usize) -> String {
    let bare = Intake {
        note: String::new(),
        ..rider(number)
    };
    let digest = Sha256::digest(write(&bare).expect("plain data").as_bytes());
    digest
        .iter()
        .take(16)
        .fold(String::new(), |mut name, byte| {
            write!(name, "{byte:02x}").expect("a text takes letters");
            name
        })
}

/// A desk file with these riders, each with a name, a note and a tag.
pub fn desk_of(numbers: impl Iterator<Item = usize>) -> String {
    let jobs = numbers.map(|number| {
        let stages = ["new", "on-stand", "waiting-parts", "ready", "out", "closed"];
        let stage = stages[number % stages.len()];
        let (name, file) = (name_of(number), file_of(number));
        let came = 1_700_000_000_000 + number;
        format!(
            r#""{name}":{{"version":1,"came":{came},"name":{{"is":"Rider {number}","at":{came}}},"stage":{{"is":"{stage}","at":{came}}},"tags":{{"club":{{"is":true,"at":{came}}}}},"notes":{{"{came}-1":{{"is":"Rings after work, number {number}.","at":{came}}}}},"intake":{file}}}"#
        )
    });
    let jobs: Vec<String> = jobs.collect();
    format!(
        r#"{{"kind":"sagwright-desk","version":1,"jobs":{{{}}}}}"#,
        jobs.join(",")
    )
}
