//! The fleet: virtual bikes with something hidden in them, and how well the library finds it.
//!
//! Truth comes from a simulation of its own (`truth`), words from riders with thresholds and noise (`rider`), measurements with
//! errors (`workshop`). The numbers of the library were fitted to one fleet (`calibrate`); this test scores it on
//! another, writes all figures to `fleet.md` in the target folder, and holds the most important ones. What they were is in
//! `docs/diagnosis.md`.

mod calibrate;
mod case;
mod fleet;
mod luck;
mod readers;
mod report;
mod rider;
mod score;
mod sensitivity;
mod stable;
mod table;
mod truth;
mod workshop;

use calibrate::Answered;
use fleet::{Size, fleet};
use report::report;
use sagwright_core::cause::Numbers;

/// Seeds of the fleet the numbers were fitted to, and of the one they are scored on.
const TRAINING: u64 = 1;
const HELD_OUT: u64 = 2;

/// How many stables are drawn; `SAGWRIGHT_FLEET` asks for another number.
fn size(stables: usize) -> Size {
    let asked = std::env::var("SAGWRIGHT_FLEET");
    Size {
        stables: asked
            .ok()
            .and_then(|asked| asked.parse().ok())
            .unwrap_or(stables),
        single: 17,
        double: 3,
    }
}

#[test]
fn hidden_causes_are_found() {
    let rows = fleet(HELD_OUT, size(14));
    let found = report(&rows, &Numbers::USUAL);
    let file = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("fleet.md");
    std::fs::write(&file, &found.text).expect("the target folder can be written");
    println!("{}\nwritten to {}", found.text, file.display());
    // Margins of about two standard errors on what `docs/diagnosis.md` quotes, which for the calibration of chances after checks is
    // 0.03 in 679 cases; what is luck in it goes with the root of their number and is 1.7 times as much in the 238 drawn here. A fleet of another size is only looked at.
    if std::env::var("SAGWRIGHT_FLEET").is_ok() {
        return;
    }
    let [words, .., last] = found.library.as_slice() else {
        panic!("nothing was scored");
    };
    assert!(words.top_1 >= 0.53 && words.top_3 >= 0.82, "{words:?}");
    assert!(
        words.stated_error <= 0.06 && words.leader_error <= 0.11,
        "{words:?}"
    );
    assert!(
        last.top_1 >= words.top_1 + 0.07 && last.stated_error <= 0.06,
        "{last:?}"
    );
    for (library, (table, priors)) in found
        .library
        .iter()
        .zip(found.table.iter().zip(&found.priors))
    {
        assert!(library.top_1 >= table.top_1 + 0.03 && library.brier <= table.brier - 0.05);
        assert!(library.top_1 >= priors.top_1 + 0.15);
    }
    assert!(found.double.top_3 >= 0.70, "{:?}", found.double);
    assert!(
        found.flips.mean <= 0.06,
        "one number in {:.3} flips",
        found.flips.mean
    );
}

/// `cargo test -p sagwright-core --test fleet -- --ignored --nocapture calibrate` prints numbers for the table.
#[test]
#[ignore = "an hour; fits the numbers of the library to the training fleet and prints them"]
fn calibrate() {
    let rows: Vec<Answered> = fleet(TRAINING, size(32))
        .into_iter()
        .map(Answered::of)
        .collect();
    let fitted = calibrate::fit(&rows, &Numbers::USUAL);
    println!("{fitted:#?}");
}
