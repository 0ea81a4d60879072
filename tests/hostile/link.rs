//! Links with something else in them: cut, altered, from elsewhere, or made to swell.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use sagwright_core::intake::{Intake, LONGEST_LINK, from_link, to_link};
use sagwright_core::words::{Book, UnitChoice};

/// What is said about a link that is refused; `None` for one that opens.
fn refusal(word: &str) -> Option<String> {
    let error = from_link(word).err()?;
    assert_eq!(error.problems.len(), 1, "{word}: {error:?}");
    let text = &error.problems[0].text;
    Some(Book::english().say(text, &UnitChoice::default()))
}

#[track_caller]
fn refused(word: &str, piece: &str) {
    let said = refusal(word).unwrap_or_else(|| panic!("{word} opened"));
    assert!(said.contains(piece), "{word}: {said}");
}

fn demo() -> Intake {
    let json = include_str!("../../demo-data/enduro-that-packs-down.json");
    sagwright_core::intake::read(json).expect("the invented riders can be read")
}

#[test]
fn what_is_no_link_of_ours_says_so() {
    refused("", "nothing in this link");
    refused("  \n", "nothing in this link");
    for word in [
        "rider", "x.AAAA", "0.AAAA", "-1.AAAA", "+1.AAAA", ".AAAA", "١.AAAA",
    ] {
        refused(word, "no answers of Sagwright");
    }
}

#[test]
fn a_newer_form_is_told_apart_from_junk() {
    refused("2.AAAA", "newer Sagwright (form 2; this one reads 1)");
    refused("4294967295.", "newer Sagwright");
    refused("4294967296.", "no answers of Sagwright");
}

#[test]
fn letters_that_are_no_packed_answers_are_damaged() {
    for word in [
        "1.",
        "1.A",
        "1.AAAA",
        "1.AAAAAA",
        "1.AAAAAAAA",
        "1.%7B%7D",
        "1.äöü",
        "1.AA==",
        "1.A A",
        "1.____________",
        "1.AQAAAAEA",
        "1.<script>",
    ] {
        refused(word, "not whole");
    }
}

#[test]
fn a_link_cut_short_or_run_on_is_damaged_wherever() {
    let whole = to_link(&demo()).expect("plain data");
    assert_eq!(refusal(&whole), None);
    for end in 2..whole.len() {
        refused(&whole[..end], "not whole");
    }
    for tail in ["A", "AA", "AAA", "AAAA", "/", ".", "?x=1", "#/"] {
        refused(&format!("{whole}{tail}"), "not whole");
    }
}

#[test]
fn one_letter_changed_never_opens_as_other_answers() {
    let whole = to_link(&demo()).expect("plain data");
    for at in 2..whole.len() {
        for letter in ["A", "b", "7", "-"] {
            let mut changed = whole.clone();
            changed.replace_range(at..=at, letter);
            // The last byte of deflate has bits that mean nothing; so a change may open, but only as the same.
            if let Ok(opened) = from_link(&changed) {
                assert_eq!(opened, demo(), "letter {at} became {letter}");
            }
        }
    }
}

#[test]
fn floods_are_refused_before_anything_is_unpacked() {
    refused(&format!("1.{}", "A".repeat(LONGEST_LINK)), "longer than");
}

/// Deflate can write a thousand letters in one byte: what swells beyond any intake is refused.
#[test]
fn a_link_that_swells_is_refused() {
    let swollen = Intake {
        note: "a".repeat(1_000_000),
        ..demo()
    };
    // None such is written, so this one is packed by hand.
    assert_eq!(to_link(&swollen), None);
    let document = sagwright_core::intake::write(&swollen).expect("plain data");
    let mut bytes = adler2::adler32_slice(document.as_bytes())
        .to_be_bytes()
        .to_vec();
    bytes.extend(miniz_oxide::deflate::compress_to_vec(
        document.as_bytes(),
        9,
    ));
    let word = format!("1.{}", URL_SAFE_NO_PAD.encode(bytes));
    assert!(word.len() < LONGEST_LINK, "{} letters", word.len());
    refused(&word, "not whole");
}

/// What the checks refuse in a file they refuse in a link.
#[test]
fn answers_out_of_range_are_named() {
    let long = Intake {
        note: "é".repeat(501),
        ..demo()
    };
    let error = from_link(&to_link(&long).expect("plain data")).expect_err("too long a note");
    assert_eq!(error.problems[0].path, "note");
}
