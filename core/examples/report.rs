//! From an intake document on standard input to the advice as JSON on standard output.
//!
//! `cargo run -q -p sagwright-core --example report < intake.json`
//!
//! An optional argument names a workshop document, whose prices are then used.
//! Exit 0: advice printed. Exit 2: the intake or the workshop document cannot be used; one line per problem
//! on standard error, each with the field, the value found and what is allowed.

use std::io::Read;
use std::process::ExitCode;

use sagwright_core::advice::{Options, advise};
use sagwright_core::intake::read;
use sagwright_core::words::{Book, UnitChoice};
use sagwright_core::workshop;

fn main() -> ExitCode {
    match report() {
        Ok(json) => {
            println!("{json}");
            ExitCode::SUCCESS
        }
        Err(lines) => {
            for line in lines {
                eprintln!("{line}");
            }
            ExitCode::from(2)
        }
    }
}

fn report() -> Result<String, Vec<String>> {
    let (book, units) = (Book::english(), UnitChoice::default());
    let workshop = match std::env::args().nth(1) {
        None => None,
        Some(path) => {
            let json = std::fs::read_to_string(&path)
                .map_err(|error| vec![format!("{path}: cannot be read: {error}")])?;
            Some(workshop::read(&json).map_err(|error| error.lines(&book, &units))?)
        }
    };
    let mut json = String::new();
    std::io::stdin()
        .read_to_string(&mut json)
        .map_err(|error| vec![format!("standard input cannot be read: {error}")])?;
    let intake = read(&json).map_err(|error| error.lines(&book, &units))?;
    let advice =
        advise(&intake, &Options { workshop }).map_err(|error| error.lines(&book, &units))?;
    let mut document = serde_json::to_value(&advice).map_err(|error| vec![error.to_string()])?;
    book.spell_out(&mut document, &units);
    serde_json::to_string_pretty(&document).map_err(|error| vec![error.to_string()])
}
