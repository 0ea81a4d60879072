//! Answers through a link and back, and links that nobody made.

use proptest::prelude::*;
use sagwright_core::intake::{Intake, LONGEST_LINK, check, from_link, to_link};

use crate::advice::intake;
use crate::config;

/// What needs no escape in the fragment of an address.
fn plain(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || b".-_".contains(&byte)
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn answers_survive_the_link(intake in intake(), note in "\\PC{0,60}") {
        let intake = Intake { note, ..intake };
        prop_assume!(check(&intake).is_ok());
        let word = to_link(&intake).expect("plain data");
        prop_assert!(word.len() < LONGEST_LINK);
        prop_assert!(word.bytes().all(plain), "{}", word);
        prop_assert_eq!(from_link(&word), Ok(intake));
    }

    #[test]
    fn any_word_is_refused_without_panic(word in ".{0,300}") {
        prop_assert!(from_link(&word).is_err());
    }

    #[test]
    fn any_letters_in_our_form_are_refused_without_panic(letters in "[A-Za-z0-9_-]{0,600}") {
        prop_assert!(from_link(&["1.", letters.as_str()].concat()).is_err());
    }
}
