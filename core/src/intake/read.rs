//! From JSON to an intake: nothing unknown let through, every problem named, older versions brought up.

use serde_json::Value;

use super::check::{IntakeError, Problem, check};
use super::document::{Intake, VERSION};
use crate::words::{Arg, Text};

/// Largest document read, bytes. A full intake is about 4 kB; this leaves room and stops abuse.
pub const LARGEST_DOCUMENT: usize = 64 * 1024;

/// Most structural problems reported at once; beyond that the document is not an intake at all.
const MOST_PROBLEMS: usize = 40;

/// Reads and checks an intake document.
///
/// # Errors
/// [`IntakeError`] naming, for each problem, the place, what stands there and what is allowed.
pub fn read(json: &str) -> Result<Intake, IntakeError> {
    let (intake, mut problems) = form(json)?;
    if let Some(intake) = intake {
        if let Err(more) = check(&intake) {
            problems.extend(more.problems);
        }
        if problems.is_empty() {
            return Ok(intake);
        }
    }
    Err(IntakeError { problems })
}

/// Reads an intake that is still being filled in: its form is judged, its answers are not.
///
/// # Errors
/// [`IntakeError`] naming, for each problem, the place and what stands there.
pub fn read_unfinished(json: &str) -> Result<Intake, IntakeError> {
    match form(json)? {
        (Some(intake), problems) if problems.is_empty() => Ok(intake),
        (_, problems) => Err(IntakeError { problems }),
    }
}

/// The document as far as its form holds, and every place where it does not.
fn form(json: &str) -> Result<(Option<Intake>, Vec<Problem>), IntakeError> {
    if json.len() > LARGEST_DOCUMENT {
        return Err(IntakeError::one(
            "",
            Text::new("problem.too-large").with("most", Arg::Count(64)),
        ));
    }
    let mut document: Value = serde_json::from_str(json).map_err(|error| {
        IntakeError::one(
            "",
            Text::new("problem.not-json")
                .with("line", Arg::Raw(error.line().to_string()))
                .with("column", Arg::Raw(error.column().to_string())),
        )
    })?;
    migrate(&document)?;
    Ok(structure(&mut document))
}

/// Brings an older document up to this version; there is none older than 1 yet.
fn migrate(document: &Value) -> Result<(), IntakeError> {
    let refuse = |key: &'static str, found: String| {
        Err(IntakeError::one(
            "version",
            Text::new(key)
                .with("found", Arg::Raw(found))
                .with("known", Arg::Count(i64::from(VERSION))),
        ))
    };
    let Value::Object(fields) = document else {
        return Err(IntakeError::one("", Text::new("problem.not-an-object")));
    };
    match fields.get("version") {
        None => refuse("problem.version-missing", String::new()),
        Some(found) => match found.as_u64() {
            Some(n) if n == u64::from(VERSION) => Ok(()),
            Some(n) if n > u64::from(VERSION) => refuse("problem.version-newer", n.to_string()),
            _ => refuse("problem.version", found.to_string()),
        },
    }
}

/// Reads the form of the document. Each misfit is named and taken out, so that the next one shows too.
fn structure(document: &mut Value) -> (Option<Intake>, Vec<Problem>) {
    let mut problems: Vec<Problem> = Vec::new();
    while problems.len() < MOST_PROBLEMS {
        match serde_path_to_error::deserialize::<_, Intake>(&*document) {
            Ok(intake) => return (Some(intake), problems),
            Err(error) => {
                let path = error.path().to_string();
                let detail = error.inner().to_string();
                let (path, removed) = take_out(document, &path, &detail);
                let value = removed
                    .as_ref()
                    .map(ToString::to_string)
                    .unwrap_or_default();
                // Taking a part out can leave its parent incomplete: that is our doing, not a new problem.
                let inside = format!("{path}.");
                if !problems.iter().any(|p| p.path.starts_with(&inside)) {
                    problems.push(Problem {
                        path,
                        question: None,
                        text: misfit(&shortened(&value), &detail),
                    });
                }
                if removed.is_none() {
                    break;
                }
            }
        }
    }
    (None, problems)
}

/// Says what is wrong with a misfit in our own words; the parser's words only where we know no better.
fn misfit(value: &str, detail: &str) -> Text {
    let allowed = detail
        .split_once("expected ")
        .map_or("", |(_, allowed)| allowed)
        .replace('`', "");
    let key = if detail.starts_with("unknown field") {
        "problem.unknown-field"
    } else if detail.starts_with("unknown variant") {
        "problem.unknown-word"
    } else if detail.starts_with("missing field") {
        let name = detail.split('`').nth(1).unwrap_or_default();
        return Text::new("problem.missing-field")
            .with("value", Arg::Raw(value.to_owned()))
            .with("name", Arg::Raw(name.to_owned()));
    } else if allowed.is_empty() {
        return Text::new("problem.misfit")
            .with("value", Arg::Raw(value.to_owned()))
            .with("detail", Arg::Raw(detail.to_owned()));
    } else {
        "problem.wrong-kind"
    };
    Text::new(key)
        .with("value", Arg::Raw(value.to_owned()))
        .with("allowed", Arg::Raw(allowed))
}

/// Removes the part of the document that `path` names, and gives the path of what was removed.
///
/// A required part that is missing names its parent: then the parent goes.
fn take_out(document: &mut Value, path: &str, detail: &str) -> (String, Option<Value>) {
    let mut steps: Vec<String> = path
        .replace('[', ".")
        .replace(']', "")
        .split('.')
        .filter(|step| !step.is_empty())
        .map(str::to_owned)
        .collect();
    if let Some(name) = detail
        .strip_prefix("unknown field `")
        .and_then(|d| d.split('`').next())
        && steps.last().is_none_or(|last| last != name)
    {
        steps.push(name.to_owned());
    }
    let Some(last) = steps.pop() else {
        return (path.to_owned(), None);
    };
    let mut place = &mut *document;
    for step in &steps {
        let next = match place {
            Value::Object(fields) => fields.get_mut(step),
            Value::Array(items) => step.parse().ok().and_then(|n: usize| items.get_mut(n)),
            _ => None,
        };
        match next {
            Some(next) => place = next,
            None => return (path.to_owned(), None),
        }
    }
    let removed = match place {
        Value::Object(fields) => fields.remove(&last),
        Value::Array(items) => match last.parse::<usize>() {
            Ok(n) if n < items.len() => Some(items.remove(n)),
            _ => None,
        },
        _ => None,
    };
    steps.push(last);
    (steps.join("."), removed)
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
