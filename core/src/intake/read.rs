//! From JSON to an intake: nothing unknown let through, every problem named, older versions brought up.

use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::check::{IntakeError, Problem, check};
use super::document::{Bike, Complaint, Ground, Intake, Measured, Rider, VERSION};
use crate::words::{Arg, Text};

/// Largest document read, bytes. A full intake is about 4 kB; this leaves room and stops abuse.
pub const LARGEST_DOCUMENT: usize = 64 * 1024;

/// Most structural problems reported at once; beyond that the document is not an intake at all.
pub(crate) const MOST_PROBLEMS: usize = 40;

/// Writes an intake as a document. Everybody who needs one asks here: the form of every answer takes 8 kB of program,
/// and a second writer as much again.
///
/// # Errors
/// None for an intake: all its keys are strings. A number that is not finite is written as `null`, which no reader
/// takes.
pub fn write(intake: &Intake) -> Result<String, serde_json::Error> {
    serde_json::to_string(intake)
}

/// Reads and checks an intake document.
///
/// # Errors
/// [`IntakeError`] naming, for each problem, the place, what stands there and what is allowed.
pub fn read(json: &str) -> Result<Intake, IntakeError> {
    let intake = read_unfinished(json)?;
    check(&intake)?;
    Ok(intake)
}

/// Reads an intake that is still being filled in: its form is judged, its answers are not.
///
/// # Errors
/// [`IntakeError`] naming, for each problem, the place and what stands there.
pub fn read_unfinished(json: &str) -> Result<Intake, IntakeError> {
    let document = whole(
        json,
        LARGEST_DOCUMENT,
        "problem.too-large",
        "problem.not-json",
    )?;
    of_version(&document, VERSION)?;
    structure(&document).map_err(|problems| IntakeError { problems })
}

/// A text from outside as JSON, if it is one, and of at most so many bytes; else what to say of it.
///
/// # Errors
/// [`IntakeError`] with `too_large`, told the `most` kB, or with `broken`, told `line` and `column`.
pub(crate) fn whole(
    text: &str,
    most: usize,
    too_large: &'static str,
    broken: &'static str,
) -> Result<Value, IntakeError> {
    if text.len() > most {
        let most = i64::try_from(most / 1024).unwrap_or(i64::MAX);
        let told = Text::new(too_large).with("most", Arg::Count(most));
        return Err(IntakeError::one("", told));
    }
    serde_json::from_str(text).map_err(|error| {
        let told = Text::new(broken)
            .with("line", Arg::Raw(error.line().to_string()))
            .with("column", Arg::Raw(error.column().to_string()));
        IntakeError::one("", told)
    })
}

/// Whether a document is of the one version there is of its kind.
///
/// # Errors
/// [`IntakeError`] at `version` where it is not, or says none.
pub(crate) fn of_version(document: &Value, known: u32) -> Result<(), IntakeError> {
    let refuse = |key: &'static str, found: String| {
        Err(IntakeError::one(
            "version",
            Text::new(key)
                .with("found", Arg::Raw(found))
                .with("known", Arg::Count(i64::from(known))),
        ))
    };
    let Value::Object(fields) = document else {
        return Err(IntakeError::one("", Text::new("problem.not-an-object")));
    };
    match fields.get("version") {
        None => refuse("problem.version-missing", String::new()),
        Some(found) => match found.as_u64() {
            Some(n) if n == u64::from(known) => Ok(()),
            Some(n) if n > u64::from(known) => refuse("problem.version-newer", n.to_string()),
            _ => refuse("problem.version", shortened(&found.to_string())),
        },
    }
}

/// Reads the form of the document, naming every part that does not fit.
fn structure(document: &Value) -> Result<Intake, Vec<Problem>> {
    Intake::deserialize(document).map_err(|whole| {
        let mut found = misfits(document);
        if found.is_empty() {
            found.push(problem("", document, &whole));
        }
        found.truncate(MOST_PROBLEMS);
        found
    })
}

/// Tries every answer on its own: all are optional, so a part with one answer is a whole part.
fn misfits(document: &Value) -> Vec<Problem> {
    let mut found = Vec::new();
    let fields = document.as_object().into_iter().flatten();
    for (name, value) in fields {
        match name.as_str() {
            "rider" => part::<Rider>(name, value, &mut found),
            "bike" => part::<Bike>(name, value, &mut found),
            "ground" => part::<Ground>(name, value, &mut found),
            "measured" => part::<Measured>(name, value, &mut found),
            "complaints" if value.is_array() => {
                for (index, complaint) in value.as_array().into_iter().flatten().enumerate() {
                    fit::<Complaint>(
                        &format!("{name}[{index}]"),
                        complaint,
                        complaint,
                        &mut found,
                    );
                }
            }
            _ => {
                let alone = json!({ "version": VERSION, name: value });
                fit::<Intake>(name, value, &alone, &mut found);
            }
        }
    }
    found
}

/// Tries each answer of one part.
fn part<T: DeserializeOwned>(name: &str, value: &Value, found: &mut Vec<Problem>) {
    let Value::Object(answers) = value else {
        fit::<T>(name, value, value, found);
        return;
    };
    for (answer, value) in answers {
        fit::<T>(
            &format!("{name}.{answer}"),
            value,
            &json!({ answer: value }),
            found,
        );
    }
}

/// Tries one answer, `alone` being the smallest document that holds it.
fn fit<T: DeserializeOwned>(path: &str, value: &Value, alone: &Value, found: &mut Vec<Problem>) {
    if let Err(error) = T::deserialize(alone) {
        found.push(problem(path, value, &error));
    }
}

/// What is wrong with a value that does not fit, in our own words.
pub(crate) fn problem(path: &str, value: &Value, error: &serde_json::Error) -> Problem {
    let text = misfit(&shortened(&value.to_string()), &error.to_string());
    Problem {
        path: shortened(path),
        question: None,
        text,
    }
}

/// Says what is wrong with a misfit in our own words; the parser's words only where we know no better.
fn misfit(value: &str, detail: &str) -> Text {
    // What was expected comes last: a name that somebody typed may hold the same word.
    let expected = detail
        .rsplit_once("expected ")
        .map_or("", |(_, expected)| expected);
    let allowed = expected
        .strip_prefix("one of ")
        .unwrap_or(expected)
        .replace('`', "");
    let name = shortened(detail.split('`').nth(1).unwrap_or_default());
    let key = match detail {
        _ if detail.starts_with("unknown field") => "problem.unknown-field",
        _ if detail.starts_with("unknown variant") => "problem.unknown-word",
        _ if detail.starts_with("missing field") => "problem.missing-field",
        _ if allowed.is_empty() => "problem.misfit",
        _ => "problem.wrong-kind",
    };
    Text::new(key)
        .with("value", Arg::Raw(value.to_owned()))
        .with("name", Arg::Raw(name))
        .with("allowed", Arg::Raw(allowed))
        .with("detail", Arg::Raw(shortened(detail)))
}

/// Enough of a misfit to recognise it, not enough to flood the page.
fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    if text.chars().count() <= MOST {
        return text.to_owned();
    }
    text.chars()
        .take(MOST)
        .chain(std::iter::once('…'))
        .collect()
}
