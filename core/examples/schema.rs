//! The JSON Schema (2020-12) of the intake document, or of the workshop document, on standard output.
//!
//! `cargo run -q -p sagwright-core --features schema --example schema [intake|workshop]`

use std::process::ExitCode;

use sagwright_core::intake::Intake;
use sagwright_core::workshop::Workshop;

fn main() -> ExitCode {
    let schema = match std::env::args().nth(1).as_deref() {
        None | Some("intake") => schemars::schema_for!(Intake),
        Some("workshop") => schemars::schema_for!(Workshop),
        Some(other) => {
            eprintln!("There is no document called \"{other}\": name intake or workshop.");
            return ExitCode::from(2);
        }
    };
    match serde_json::to_string_pretty(&schema) {
        Ok(json) => {
            println!("{json}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
