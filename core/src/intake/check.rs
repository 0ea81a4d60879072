//! Whether an intake can be worked with: every problem found, not only the first.

use super::Question;
use super::document::{Intake, VERSION};
use super::extra::check_extra;
use super::fields::Field;
use crate::quantity::{Typed, Unit};
use crate::words::{Arg, Book, Text, UnitChoice};

/// Longest free note, characters.
pub const LONGEST_NOTE: usize = 500;

/// Most changes tried that one intake holds.
pub const MOST_TRIED: usize = 60;

/// One thing wrong with an intake, with what to change.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// Where in the document, as `rider.weight`; empty for the document as a whole.
    pub path: String,
    /// The page that asks for it, where one does.
    pub question: Option<Question>,
    /// What is wrong and what to change.
    pub text: Text,
}

/// Why an intake gives no advice: at least one problem.
#[derive(Debug, Clone, PartialEq)]
pub struct IntakeError {
    /// Every problem found, in document order.
    pub problems: Vec<Problem>,
}

impl std::fmt::Display for IntakeError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let paths: Vec<&str> = self.problems.iter().map(|p| p.path.as_str()).collect();
        write!(f, "intake not usable at: {}", paths.join(", "))
    }
}

impl std::error::Error for IntakeError {}

impl IntakeError {
    /// An error of one problem.
    pub(crate) fn one(path: &str, text: Text) -> Self {
        Self {
            problems: vec![Problem {
                path: path.to_owned(),
                question: None,
                text,
            }],
        }
    }

    /// A line for each problem: where it is, what is wrong, what to change.
    pub fn lines(&self, book: &Book, units: &UnitChoice) -> Vec<String> {
        let line = |problem: &Problem| {
            let said = book.say(&problem.text, units);
            if problem.path.is_empty() {
                said
            } else {
                format!("{}: {said}", problem.path)
            }
        };
        self.problems.iter().map(line).collect()
    }
}

/// What is wrong with `value` as an answer to `field`, if anything: the value itself, no neighbours looked at.
pub fn check_value(field: Field, typed: Typed) -> Option<Text> {
    let allowed = field.allowed();
    if typed.value.is_finite() && allowed.holds(typed.si()) {
        return None;
    }
    let unit = typed.unit;
    Some(
        Text::new("problem.out-of-range")
            .with("name", Text::new(format!("field.{}", field.path())).into())
            .with(
                "value",
                Arg::Raw(format!("{} {}", typed.value, unit.symbol())),
            )
            .with("low", Arg::Raw(in_unit(allowed.low, unit)))
            .with("high", Arg::Raw(in_unit(allowed.high, unit))),
    )
}

/// A limit in the unit the person typed, so that the message speaks their language.
fn in_unit(si: f64, unit: Unit) -> String {
    format!(
        "{} {}",
        crate::words::number(unit.from_si(si), unit.decimals()),
        unit.symbol()
    )
}

/// Checks every answer for its range and its neighbours.
///
/// # Errors
/// [`IntakeError`] with every problem found.
pub fn check(intake: &Intake) -> Result<(), IntakeError> {
    let mut problems = Vec::new();
    if intake.version != VERSION {
        problems.push(Problem {
            path: "version".into(),
            question: None,
            text: Text::new("problem.version")
                .with("found", Arg::Count(i64::from(intake.version)))
                .with("known", Arg::Count(i64::from(VERSION))),
        });
    }
    if intake.note.chars().count() > LONGEST_NOTE {
        problems.push(Problem {
            path: "note".into(),
            question: None,
            text: Text::new("problem.note-too-long").with(
                "most",
                Arg::Count(i64::try_from(LONGEST_NOTE).unwrap_or(i64::MAX)),
            ),
        });
    }
    for field in Field::ALL {
        if let Some(text) = field
            .get(intake)
            .and_then(|typed| check_value(*field, typed))
        {
            problems.push(at(*field, text));
        }
    }
    if problems.is_empty() {
        check_neighbours(intake, &mut problems);
    }
    check_complaints(intake, &mut problems);
    if intake.tried.len() > MOST_TRIED {
        problems.push(Problem {
            path: "tried".into(),
            question: None,
            text: Text::new("problem.tried-too-many").with(
                "most",
                Arg::Count(i64::try_from(MOST_TRIED).unwrap_or(i64::MAX)),
            ),
        });
    }
    problems.extend(check_extra(&intake.extra));
    if problems.is_empty() {
        Ok(())
    } else {
        Err(IntakeError { problems })
    }
}

fn at(field: Field, text: Text) -> Problem {
    Problem {
        path: field.path().into(),
        question: Some(field.question()),
        text,
    }
}

/// Pairs in which the second may not be below (or above) the first.
fn check_neighbours(intake: &Intake, problems: &mut Vec<Problem>) {
    const SAGS: [(Field, Field); 2] = [
        (Field::ForkFreeSag, Field::ForkRiderSag),
        (Field::RearFreeSag, Field::RearRiderSag),
    ];
    const CLICKERS: [(Field, Field); 5] = [
        (Field::ForkCompressionRange, Field::ForkCompressionNow),
        (Field::ForkReboundRange, Field::ForkReboundNow),
        (Field::ShockLowRange, Field::ShockLowNow),
        (Field::ShockHighRange, Field::ShockHighNow),
        (Field::ShockReboundRange, Field::ShockReboundNow),
    ];
    for (free, rider) in SAGS {
        if let (Some(free_si), Some(rider_si)) = (free.si(intake), rider.si(intake))
            && rider_si <= free_si
        {
            problems.push(at(rider, Text::new("problem.rider-sag-below-free")));
        }
    }
    for (range, now) in CLICKERS {
        if let (Some(range_si), Some(now_si)) = (range.si(intake), now.si(intake))
            && now_si > range_si
        {
            let text = Text::new("problem.clicks-beyond-range")
                .with("range", Arg::Plain(range_si, 0))
                .with("now", Arg::Plain(now_si, 0));
            problems.push(at(now, text));
        }
    }
    if let (Some(set), Some(most)) = (
        Field::ForkPressure.si(intake),
        Field::ForkPressureMax.si(intake),
    ) && set > most
    {
        problems.push(at(
            Field::ForkPressure,
            Text::new("problem.pressure-over-marked"),
        ));
    }
}

fn check_complaints(intake: &Intake, problems: &mut Vec<Problem>) {
    let complaints = intake.complaints.as_deref().unwrap_or_default();
    for (index, complaint) in complaints.iter().enumerate() {
        let mut before = complaints[..index].iter();
        if before.any(|one| one.feeling == complaint.feeling) {
            problems.push(Problem {
                path: format!("complaints[{index}].feeling"),
                question: Some(Question::Complaints),
                text: Text::new("problem.feeling-twice").with(
                    "feeling",
                    Text::new(format!("feeling.{}", complaint.feeling.word())).into(),
                ),
            });
        }
    }
}
