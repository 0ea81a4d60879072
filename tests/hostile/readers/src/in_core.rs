//! The readers of the core.

use std::sync::LazyLock;

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD as BASE64URL;
use sagwright_app::readers::Reader;
use sagwright_core::advice::{Advice, Options, advise_with};
use sagwright_core::intake::{
    Field, Intake, IntakeError, LONGEST_LINK, check, from_link, read, read_unfinished, to_link,
    write,
};
use sagwright_core::quantity::read_number;
use sagwright_core::words::{Arg, Book, Text, UnitChoice};
use sagwright_core::workshop as settings;

/// All of them.
pub const READERS: &[(&str, Reader)] = &[
    ("intake", intake),
    ("workshop", workshop),
    ("link", link),
    ("packed", packed),
    ("number", number),
    ("advice", advice),
];

static BOOK: LazyLock<Book> = LazyLock::new(Book::english);

/// A rider's document.
fn intake(text: &str) -> bool {
    match read(text) {
        Ok(intake) => {
            survives(&intake);
            true
        }
        Err(error) => {
            refuses(&error);
            if let Ok(unfinished) = read_unfinished(text) {
                // Kept although it is not right yet, as answers are while they are typed.
                let document = write(&unfinished).expect("plain data");
                assert_eq!(read_unfinished(&document).as_ref(), Ok(&unfinished));
            }
            false
        }
    }
}

/// Answers that were taken keep to the checks and come back from file and link.
fn survives(intake: &Intake) {
    check(intake).expect("what was read has passed its checks");
    let document = write(intake).expect("plain data");
    assert_eq!(read(&document).as_ref(), Ok(intake));
    // What is too long for a link has none.
    if let Some(word) = to_link(intake) {
        assert!(word.len() <= LONGEST_LINK);
        assert_eq!(from_link(&word).as_ref(), Ok(intake));
    }
}

/// A workshop's document.
fn workshop(text: &str) -> bool {
    match settings::read(text) {
        Ok(workshop) => {
            let document = serde_json::to_string(&workshop).expect("plain data");
            assert_eq!(settings::read(&document), Ok(workshop));
            true
        }
        Err(error) => {
            refuses(&error);
            false
        }
    }
}

/// The word of a link, and any bytes where packed answers should be.
fn link(text: &str) -> bool {
    let bytes = ["1.", &BASE64URL.encode(text)].concat();
    let found = [text, &bytes].map(|word| match from_link(word) {
        Ok(intake) => {
            survives(&intake);
            true
        }
        Err(error) => {
            refuses(&error);
            false
        }
    });
    found.contains(&true)
}

/// Any text as the document in a whole link, so that neither the packing nor its sum keeps it out.
fn packed(text: &str) -> bool {
    let sum = adler2::adler32_slice(text.as_bytes()).to_be_bytes();
    let packed = miniz_oxide::deflate::compress_to_vec(text.as_bytes(), 6);
    let word = ["1.", &BASE64URL.encode([&sum[..], &packed].concat())].concat();
    let found = from_link(&word);
    match &found {
        Ok(intake) => {
            assert_eq!(read(text).as_ref(), Ok(intake));
            survives(intake);
        }
        Err(error) => refuses(error),
    }
    found.is_ok()
}

/// A number as people type it, beside every unit.
fn number(text: &str) -> bool {
    let units = Field::ALL
        .iter()
        .flat_map(|field| field.dimension().units());
    let mut taken = false;
    for unit in units {
        if let Ok(value) = read_number(text, *unit) {
            taken = true;
            assert!(!value.is_nan(), "{text:?} became no number");
        }
    }
    taken
}

/// The advice for a document, without rides: whatever passes the checks gets some.
fn advice(text: &str) -> bool {
    let Ok(intake) = read(text) else {
        return false;
    };
    let advice = advise_with(&intake, &Options::default(), None);
    if let Advice::SetUp(advice) = advice.expect("any intake that passes its checks gets advice") {
        for setting in &advice.settings {
            let figure = &setting.advised;
            let ordered = figure.low <= figure.value && figure.value <= figure.high;
            assert!(ordered && figure.high.is_finite(), "{setting:?}");
        }
        for cause in &advice.causes {
            assert!((0.0..=1.0).contains(&cause.probability), "{cause:?}");
        }
        says(&advice.sentence);
    }
    true
}

/// A refusal names something, and there are words for all of it, not too many to be read.
fn refuses(error: &IntakeError) {
    const MOST: usize = 2_000;
    assert!(!error.problems.is_empty(), "no word about why");
    for problem in &error.problems {
        says(&problem.text);
        let said = BOOK.say(&problem.text, &UnitChoice::default());
        assert!(said.chars().count() <= MOST, "{said}");
        assert!(problem.path.chars().count() <= MOST, "{}", problem.path);
    }
}

fn says(text: &Text) {
    assert!(BOOK.has(&text.key), "no sentence for {}", text.key);
    for arg in text.args.values() {
        if let Arg::Text(inner) = arg {
            says(inner);
        }
    }
}
