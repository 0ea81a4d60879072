//! Many riders at once, through the program itself: what it writes, names, skips and ends with.

mod riders;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::time::Instant;

use sagwright_core::advice::{Options, advise};
use sagwright_core::intake::read;
use serde_json::Value;
use tempfile::TempDir;

/// A row of the table by the names of its columns.
type Row = Vec<(String, String)>;

fn run(inside: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_sagwright"))
        .arg("report")
        .args(arguments)
        .current_dir(inside)
        .output()
        .expect("the program starts")
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn table(path: &Path) -> Vec<Row> {
    let mut table = csv::Reader::from_path(path).expect("the table is there");
    let names = table.headers().expect("it has names").clone();
    let row = |record: csv::StringRecord| {
        let cells = names.iter().zip(record.iter());
        cells
            .map(|(name, cell)| (name.to_owned(), cell.to_owned()))
            .collect()
    };
    let records = table.records();
    records
        .map(|record| row(record.expect("every row has as many cells")))
        .collect()
}

fn cell<'a>(row: &'a Row, name: &str) -> &'a str {
    let found = row.iter().find(|(column, _)| column == name);
    &found.unwrap_or_else(|| panic!("no column {name}")).1
}

/// A folder of its own with so many riders in `riders/`.
fn folder(riders: u32) -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let inside = folder.path().join("riders");
    fs::create_dir(&inside).expect("it is empty");
    for seed in 0..riders {
        let path = inside.join(format!("rider-{seed:04}.json"));
        fs::write(path, riders::document(u64::from(seed))).expect("there is room");
    }
    (folder, inside)
}

#[test]
fn bad_documents_are_named_and_skipped_and_the_others_advised_on() {
    let (folder, riders) = folder(2);
    let put = |name: &str, text: &[u8]| fs::write(riders.join(name), text).expect("there is room");
    let good = fs::read_to_string(riders.join("rider-0000.json")).expect("it was just made");
    put("a-half.json", &good.as_bytes()[..good.len() / 2]);
    put(
        "b-heavy.json",
        br#"{"version":1,"rider":{"weight":{"value":900,"unit":"kg"}}}"#,
    );
    put("c-bytes.json", b"\xff\xfe{}");
    put("d-flood.json", &vec![b' '; 1 << 20]);
    put(
        "e-stop.json",
        br#"{"version":1,"stop_signs":["loose-head"]}"#,
    );
    put("notes.txt", b"no document");
    let out = run(
        folder.path(),
        &["riders", "gone.json", "=1+1.json", "--jobs", "2"],
    );
    let (told, named) = (said(&out.stdout), said(&out.stderr));
    assert_eq!(out.status.code(), Some(3), "{told}{named}");
    assert!(
        told.contains("3 of 9 advised on") && told.contains("6 skipped"),
        "{told}"
    );

    let rows = table(&folder.path().join("advice/summary.csv"));
    let results: Vec<&str> = rows.iter().map(|row| cell(row, "result")).collect();
    let expected = [
        "skipped",
        "skipped",
        "skipped",
        "skipped",
        "stop-riding",
        "set-up",
        "set-up",
        "skipped",
        "skipped",
    ];
    assert_eq!(results, expected, "{named}");
    for (row, why) in rows.iter().zip([
        "line 1",
        "rider.weight: ",
        "UTF-8",
        "larger than",
        "",
        "",
        "",
        "cannot be read",
        "cannot be read",
    ]) {
        let (file, problems) = (cell(row, "file"), cell(row, "problems"));
        assert!(
            problems.contains(why) && problems.is_empty() == why.is_empty(),
            "{row:?}"
        );
        let line = format!("{}: {problems}", file.trim_start_matches('\''));
        assert!(
            why.is_empty() || named.contains(&line),
            "{line}\nis not in\n{named}"
        );
    }
    assert_eq!(
        cell(&rows[8], "file"),
        "'=1+1.json",
        "a spreadsheet would work it out"
    );

    let stop = advice_of(folder.path(), &rows[4]);
    assert_eq!(stop["kind"], "stop-riding");
    // The same advice as anywhere else, and the table says what it says.
    let intake = read(&good).expect("the riders are well-formed");
    let expected = advise(&intake, &Options::default()).expect("they are checked");
    let expected = serde_json::to_value(&expected).expect("plain data");
    let mut found = advice_of(folder.path(), &rows[5]);
    assert_eq!(found["sentence"]["text"], cell(&rows[5], "says"));
    assert_eq!(found["causes"][0]["name"]["text"], cell(&rows[5], "cause"));
    let rate = &found["settings"].as_array().expect("a list")[0];
    assert_eq!(rate["label"]["text"], "Fork spring rate, each spring");
    let newton_per_metre = rate["advised"]["value"].as_f64().expect("a number");
    let told: f64 = cell(&rows[5], "fork-rate (N/mm)")
        .parse()
        .expect("a plain number");
    assert!((told - newton_per_metre / 1000.0).abs() <= 0.05, "{told}");
    unspell(&mut found);
    assert!(found == expected, "not the advice of the core");
}

/// The advice that a row names.
fn advice_of(folder: &Path, row: &Row) -> Value {
    let path = folder.join("advice").join(cell(row, "advice"));
    let text = fs::read_to_string(&path).expect("the table names a file that is there");
    serde_json::from_str(&text).expect("it is JSON")
}

/// Takes the sentences away that were written beside their keys.
fn unspell(value: &mut Value) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(unspell),
        Value::Object(fields) => {
            if fields.contains_key("key") {
                fields.remove("text");
            }
            fields.values_mut().for_each(unspell);
        }
        _ => {}
    }
}

#[test]
fn what_cannot_begin_says_why_and_writes_nothing() {
    let (folder, riders) = folder(1);
    let here = folder.path();
    fs::create_dir(here.join("empty")).expect("it is new");
    fs::copy(riders.join("rider-0000.json"), riders.join("x.advice.json")).expect("there is room");
    fs::rename(riders.join("rider-0000.json"), riders.join("x.json")).expect("same folder");
    for (arguments, code, piece) in [
        (&["empty"][..], 1, "no document"),
        (&["riders", "--into", "riders"], 1, "written over"),
        (&["riders", "--into", "riders/x.json/in"], 1, "x.json"),
        (&["riders", "--workshop", "riders/x.json"], 1, "workshop"),
        (&["riders", "--jobs", "0"], 2, "--jobs"),
        (&[], 2, "FILE"),
    ] {
        let out = run(here, arguments);
        let named = said(&out.stderr);
        assert_eq!(out.status.code(), Some(code), "{arguments:?}: {named}");
        assert!(named.contains(piece), "{arguments:?}: {named}");
        assert!(!here.join("advice").exists(), "{arguments:?}");
    }
    assert_eq!(fs::read_dir(&riders).expect("it is there").count(), 2);
}

/// How fast it is, for `docs/batch.md`: so many riders on one core, then all on all of them.
#[test]
#[ignore = "takes half an hour of both cores, and measures instead of judging"]
fn two_thousand_riders() {
    const RIDERS: u32 = 2_000;
    const ON_ONE_CORE: u32 = 100;
    let rate = |riders: u32, jobs: &[&str]| {
        let (folder, _) = folder(riders);
        let start = Instant::now();
        let out = run(folder.path(), &[&["riders"], jobs].concat());
        let took = start.elapsed().as_secs_f64();
        assert!(out.status.success(), "{}", said(&out.stderr));
        let rows = table(&folder.path().join("advice/summary.csv"));
        assert_eq!(rows.len(), riders as usize);
        for row in &rows {
            advice_of(folder.path(), row);
        }
        f64::from(riders) / took
    };
    let one = rate(ON_ONE_CORE, &["--jobs", "1"]);
    let all = rate(RIDERS, &[]);
    println!(
        "{one:.2} a second on one core, {all:.2} on all: {:.2} times",
        all / one
    );
}
