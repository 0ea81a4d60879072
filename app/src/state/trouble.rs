//! What keeps a page from being finished, in words that say what to do.

use sagwright_core::intake::{Field, Question, check, check_value};
use sagwright_core::quantity::{Dimension, NumberTrouble, Unit};
use sagwright_core::words::{Arg, Text};

use super::order::Page;
use super::slot::Slot;
use super::typed::TypedText;
use super::wizard::{Wizard, fields_of};

/// One thing to put right before going on.
#[derive(Debug, Clone, PartialEq)]
pub struct Trouble {
    /// The element to go to.
    pub at: &'static str,
    /// What to do.
    pub text: Text,
    /// The question whether another unit was meant.
    pub offer: Option<Offer>,
}

/// "Did you mean 0.48 kgf/mm?"
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer {
    /// The number asked about.
    pub field: Field,
    /// The unit it would be usual in.
    pub unit: Unit,
    /// The unit shown.
    pub instead_of: Unit,
}

impl Trouble {
    fn new(at: &'static str, text: Text) -> Self {
        Self {
            at,
            text,
            offer: None,
        }
    }
}

/// Everything that keeps `page` from being finished; empty when one can go on.
pub fn troubles(wizard: &Wizard, page: Page) -> Vec<Trouble> {
    troubles_or(wizard, page, nothing_said(page))
}

/// The same; where nothing is said at all, that is told with the sentence under `nothing`.
pub(super) fn troubles_or(wizard: &Wizard, page: Page, nothing: &'static str) -> Vec<Trouble> {
    let question = page.question();
    let mut found: Vec<Trouble> = fields_of(question)
        .filter_map(|field| of_box(wizard, field))
        .collect();
    if found.is_empty() {
        found.extend(of_neighbours(wizard, question));
    }
    if found.is_empty() && !wizard.is_answered(page) {
        found.push(Trouble::new(first_element(page), Text::new(nothing)));
    }
    found
}

fn of_box(wizard: &Wizard, field: Field) -> Option<Trouble> {
    let typed = wizard.typed.get(&field)?;
    if typed.is_blank() || wizard.intake.dont_know.contains(&field.question()) {
        return None;
    }
    let name = Text::new(format!("field.{}", field.path()));
    let value = match typed.number() {
        Ok(value) => value,
        Err(trouble) => {
            let key = match trouble {
                NumberTrouble::TwoMarks => "trouble.two-marks",
                NumberTrouble::Empty | NumberTrouble::NotANumber => "trouble.not-a-number",
            };
            let text = Text::new(key)
                .with("name", name.into())
                .with("text", Arg::Raw(typed.text.trim().to_owned()));
            return Some(Trouble::new(field.path(), text));
        }
    };
    if let Some(unit) = typed.unit_to_ask(field) {
        return Some(ask_for_unit(field, typed, unit));
    }
    if let Some(text) = typed.answer().and_then(|answer| check_value(field, answer)) {
        return Some(Trouble::new(field.path(), text));
    }
    let whole = field.dimension() != Dimension::Clicks || value.fract() == 0.0;
    (!whole).then(|| {
        let text = Text::new("trouble.whole-clicks").with("name", name.into());
        Trouble::new(field.path(), text)
    })
}

fn ask_for_unit(field: Field, typed: &TypedText, unit: Unit) -> Trouble {
    let bare = typed.text.trim();
    let bare = bare.strip_suffix(typed.unit.symbol()).unwrap_or(bare);
    let text = Text::new("trouble.did-you-mean")
        .with("number", Arg::Raw(bare.trim_end().to_owned()))
        .with("unit", Arg::Raw(unit.symbol().to_owned()));
    Trouble {
        at: field.path(),
        text,
        offer: Some(Offer {
            field,
            unit,
            instead_of: typed.unit,
        }),
    }
}

/// Numbers that contradict each other on one page, such as rider sag below free sag.
fn of_neighbours(wizard: &Wizard, question: Question) -> Vec<Trouble> {
    let Err(error) = check(&wizard.document()) else {
        return Vec::new();
    };
    let here = |problem: &sagwright_core::intake::Problem| problem.question == Some(question);
    let problems = error.problems.into_iter().filter(here);
    problems
        .map(|problem| {
            let field = Field::ALL.iter().find(|f| f.path() == problem.path);
            let at = field.map_or("first-answer", |field| field.path());
            Trouble::new(at, problem.text)
        })
        .collect()
}

/// The element in which an answer would begin.
fn first_element(page: Page) -> &'static str {
    let question = page.question();
    let field = fields_of(question).next();
    field.map_or("first-answer", Field::path)
}

fn nothing_said(page: Page) -> &'static str {
    match page.question() {
        Question::Complaints => "trouble.complaints-empty",
        Question::StopSigns => "trouble.signs-empty",
        Question::ComplaintDetail => "trouble.detail-empty",
        Question::GroundMix | Question::PushTest => "trouble.groups-empty",
        single if Slot::is_single(single) => "trouble.pick-one",
        Question::SagFront | Question::SagRear | Question::TravelUsed | Question::TyrePressures => {
            "trouble.measure-empty"
        }
        _ => "trouble.number-empty",
    }
}
