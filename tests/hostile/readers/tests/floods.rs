//! What is built to harm: deep, long, wide and swelling texts cost no reader more than it may cost.
//!
//! One test in a program of its own, because memory is counted for the whole program.

use std::time::{Duration, Instant};

use peak_alloc::PeakAlloc;
use sagwright_tests_readers::all;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// A browser's page is stopped at some hundred MB; half of this is the longest text here in all its forms.
const MOST_MEGABYTES: f32 = 64.0;

/// Far above what any of them takes on a slow machine, far below what a hang takes.
const MOST_TIME: Duration = Duration::from_secs(20);

/// Longer than any file that a reader has to take.
const LENGTH: usize = 1 << 20;

fn floods() -> Vec<(&'static str, String)> {
    let often = |piece: &str| piece.repeat(LENGTH / piece.len());
    let deep = |open: &str, shut: &str| {
        let times = LENGTH / (open.len() + shut.len());
        [open.repeat(times), shut.repeat(times)].concat()
    };
    let named = |name: usize| format!("\"f{name}\":1");
    let wide: Vec<String> = (0..LENGTH / 12).map(named).collect();
    let document = |inner: &str| format!("{{\"version\":1,{inner}}}");
    vec![
        ("nothing", String::new()),
        ("one letter", often("a")),
        ("letters of four bytes", often("\u{1f6b2}")),
        ("no letters at all", often("\0")),
        ("lines", often("\n")),
        ("one number", often("9")),
        ("arrays in arrays", deep("[", "]")),
        ("objects in objects", deep("{\"version\":", "}")),
        ("arrays never shut", often("[")),
        ("many names", document(&wide.join(","))),
        ("a long name", document(&format!("\"{}\":1", often("n")))),
        (
            "a long note",
            document(&format!("\"note\":\"{}\"", often("n"))),
        ),
        (
            "many complaints",
            document(&format!("\"complaints\":[{}{{}}]", often("{},"))),
        ),
        (
            "a deep answer",
            document(&format!("\"rider\":{}", deep("[", "]"))),
        ),
        (
            "a desk of many jobs",
            format!(
                "{{\"kind\":\"sagwright-desk\",\"version\":1,\"jobs\":{{{}}}}}",
                wide.join(",")
            ),
        ),
        ("links", often("#/link/1.AAAA\n")),
        ("one long link", format!("1.{}", often("A"))),
        ("marks and brackets", often("\"{[,:]}")),
    ]
}

#[test]
fn floods_cost_little() {
    let floods = floods();
    for reader in all() {
        for (name, text) in &floods {
            // Words and tables are read once, and stay.
            reader.read(b"");
            MEMORY.reset_peak_usage();
            let (before, start) = (MEMORY.current_usage_as_mb(), Instant::now());
            reader.read(text.as_bytes());
            let took = start.elapsed();
            let used = MEMORY.peak_usage_as_mb() - before;
            assert!(
                used < MOST_MEGABYTES,
                "{} and {name}: {used} MB",
                reader.name
            );
            assert!(took < MOST_TIME, "{} and {name}: {took:?}", reader.name);
        }
    }
}
