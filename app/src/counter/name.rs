//! The name a job is kept under: made from the answers, so that the same intake gets the same name wherever it is opened.

use sagwright_core::intake::{Intake, write};
use sha2::{Digest, Sha256};

/// Bytes of the digest that make a name: 128 bits, so that nobody can make two intakes of one name.
const BYTES: usize = 16;

/// The longest name read from a file, characters: a digest, and a number for a second rider with the same answers.
const LONGEST: usize = 2 * BYTES + 8;

/// The name for an intake. The note and the answers to the workshop's own questions do not
/// count: answers that came by a code have none.
pub fn name_of(intake: &Intake) -> String {
    let bare = Intake {
        note: String::new(),
        extra: Vec::new(),
        ..intake.clone()
    };
    // An intake always gives a document: all its keys are strings.
    let document = write(&bare).unwrap_or_default();
    let digest = Sha256::digest(document.as_bytes());
    digest
        .iter()
        .take(BYTES)
        .flat_map(|byte| [byte >> 4, byte & 15])
        .filter_map(|digit| char::from_digit(digit.into(), 16))
        .collect()
}

/// The first name that is free, for another rider whose answers are the same to the letter.
pub fn another_name(name: &str, taken: impl Fn(&str) -> bool) -> String {
    let mut number = 2_u32;
    loop {
        let next = format!("{name}-{number}");
        if !taken(&next) {
            return next;
        }
        number += 1;
    }
}

/// Whether a name from a file is one of ours: the digest of its intake, alone or with a number.
pub fn fits(name: &str, intake: &Intake) -> bool {
    let Some(rest) = name.strip_prefix(&name_of(intake)) else {
        return false;
    };
    let number = rest.strip_prefix('-');
    rest.is_empty()
        || name.len() <= LONGEST
            && number.is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{from_link, to_link};

    use super::*;
    use crate::examples;

    #[test]
    fn every_rider_has_a_name_of_their_own_and_the_same_by_file_and_by_link() {
        let names: Vec<String> = examples::riders().map(|rider| name_of(&rider)).collect();
        let mut apart = names.clone();
        apart.sort();
        apart.dedup();
        assert_eq!(apart.len(), names.len());
        for (rider, name) in examples::riders().zip(&names) {
            assert!(name.len() == 32 && fits(name, &rider), "{name}");
            let link = to_link(&rider).expect("examples fit into a link");
            let arrived = from_link(&link).expect("it was just packed");
            assert_eq!(name_of(&arrived), *name);
        }
    }

    #[test]
    fn a_name_that_is_not_of_its_intake_does_not_fit() {
        let rider = examples::riders().next().expect("there are examples");
        let name = name_of(&rider);
        let second = another_name(&name, |taken| taken == format!("{name}-2"));
        assert_eq!(second, format!("{name}-3"));
        assert!(fits(&second, &rider));
        for wrong in [
            "",
            "x",
            &name[1..],
            &format!("{name}-"),
            &format!("{name}-a"),
            &format!("{name}-123456789"),
        ] {
            assert!(!fits(wrong, &rider), "{wrong}");
        }
    }
}
