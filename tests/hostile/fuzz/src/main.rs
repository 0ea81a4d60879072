//! Hands one reader, named by `SAGWRIGHT_READER`, whatever the fuzzer thinks of. `run` beside this builds and starts it.

#![no_main]

use std::sync::LazyLock;

use sagwright_tests_readers::{Named, all, named};

static READER: LazyLock<Named> = LazyLock::new(|| {
    let name = std::env::var("SAGWRIGHT_READER").unwrap_or_default();
    named(&name).unwrap_or_else(|| {
        let names: Vec<&str> = all().map(|reader| reader.name).collect();
        eprintln!("SAGWRIGHT_READER is to name one of {}", names.join(", "));
        std::process::exit(2)
    })
});

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    READER.read(bytes);
});
