//! Answers to questions that a workshop asks besides.

use serde::{Deserialize, Serialize};

use super::check::Problem;
use crate::words::{Arg, Text};

/// Most such answers of one intake.
pub const MOST_EXTRA: usize = 12;

/// Longest such answer, characters.
pub const LONGEST_EXTRA: usize = 300;

/// Longest question, characters.
pub const LONGEST_ASKED: usize = 200;

/// An answer to a question of a workshop's own. The question stands beside it, so that it can be read without the
/// workshop's document.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ExtraAnswer {
    /// The question's name: 1 to 40 small letters, digits and hyphens; each once.
    pub id: String,
    /// The question as it was asked, 1 to 200 characters.
    pub question: String,
    /// The answer as it was given, 1 to 300 characters.
    pub answer: String,
}

/// Whether a question can have this name.
pub fn is_extra_id(id: &str) -> bool {
    let letters = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
    (1..=40).contains(&id.len()) && id.bytes().all(letters)
}

/// What is wrong with these answers.
pub(super) fn check_extra(answers: &[ExtraAnswer]) -> Vec<Problem> {
    let told = |path: String, key: &'static str, most: usize| Problem {
        path,
        question: None,
        text: Text::new(key).with("most", Arg::Count(i64::try_from(most).unwrap_or(i64::MAX))),
    };
    if answers.len() > MOST_EXTRA {
        return vec![told("extra".to_owned(), "problem.extra-many", MOST_EXTRA)];
    }
    let fits = |text: &str, most: usize| (1..=most).contains(&text.trim().chars().count());
    let mut found = Vec::new();
    for (at, one) in answers.iter().enumerate() {
        let path = |part: &str| format!("extra[{at}].{part}");
        let before = answers.iter().take(at);
        let again = before.into_iter().any(|other| other.id == one.id);
        if again || !is_extra_id(&one.id) {
            found.push(told(path("id"), "problem.extra-id", 40));
        }
        if !fits(&one.question, LONGEST_ASKED) {
            found.push(told(
                path("question"),
                "problem.extra-length",
                LONGEST_ASKED,
            ));
        }
        if !fits(&one.answer, LONGEST_EXTRA) {
            found.push(told(path("answer"), "problem.extra-length", LONGEST_EXTRA));
        }
    }
    found
}
