//! What was said on a page, for reading it over.

use sagwright_core::intake::{End, Feeling, Phase, Question, Terrain};
use sagwright_core::words::{Arg, Text};

use super::order::Page;
use super::slot::{Aspect, CANNOT_SAY, Slot};
use super::subject::Subject;
use super::wizard::{Wizard, fields_of};
use crate::words::beside;

/// What a page holds.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Nothing yet.
    NotAnswered,
    /// "I don't know".
    DontKnow,
    /// Answers, one per line.
    Said(Vec<Line>),
}

/// One answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it is about, where the page holds more than one answer.
    pub name: Option<Text>,
    /// The answer.
    pub said: Text,
}

/// What was said on `page`.
pub fn lines(wizard: &Wizard, page: Page) -> Value {
    if !wizard.is_answered(page) {
        return Value::NotAnswered;
    }
    if wizard.intake.dont_know.contains(&page.question()) {
        return Value::DontKnow;
    }
    let said = match page {
        Page::Detail(feeling) => Aspect::ALL
            .iter()
            .filter_map(|aspect| of_aspect(wizard, feeling, *aspect))
            .collect(),
        Page::Ask(Question::Complaints) => of_complaints(wizard),
        Page::Ask(Question::StopSigns) => of_signs(wizard),
        Page::Ask(Question::GroundMix) => Terrain::ALL
            .iter()
            .filter_map(|t| of_slot(wizard, Slot::Ground(*t), format!("terrain.{}", t.word())))
            .collect(),
        Page::Ask(Question::PushTest) => [End::Front, End::Rear]
            .iter()
            .filter_map(|e| of_slot(wizard, Slot::Push(*e), format!("push.{}", e.word())))
            .collect(),
        Page::Ask(single) if Slot::is_single(single) => {
            let slot = Slot::One(single);
            let line = slot.get(wizard).map(|word| Line {
                name: None,
                said: label(slot, word),
            });
            line.into_iter().collect()
        }
        Page::Ask(question) => of_fields(wizard, question),
    };
    if said.is_empty() {
        Value::DontKnow
    } else {
        Value::Said(said)
    }
}

/// What looks at the parked bike and laps with one change showed, each with its lines.
pub fn checked_lines(wizard: &Wizard) -> Vec<(Subject, Vec<Line>)> {
    let looks = wizard.intake.measured.looks.iter().flatten();
    let looks = looks.map(|(look, _)| (Subject::Look(*look), Vec::new()));
    let mut all: Vec<(Subject, Vec<Line>)> = looks.collect();
    for lap in &wizard.intake.tried {
        let subject = Subject::Lap(lap.change);
        let change = Line {
            name: None,
            said: Text::new(format!("change.{}", lap.change.word())),
        };
        // A change ridden twice is one answer: the last lap counts.
        all.retain(|(other, _)| *other != subject);
        all.push((subject, vec![change]));
    }
    for (subject, lines) in &mut all {
        for slot in subject.slots(wizard) {
            let name = match slot {
                Slot::Lap(_, feeling) => format!("complaint.{}", feeling.word()),
                _ => format!("looking.{}.ask", slot.id()),
            };
            lines.extend(of_slot(wizard, slot, name));
        }
    }
    all
}

/// The text of one option of a group.
pub fn label(slot: Slot, word: &str) -> Text {
    match (word, slot) {
        (CANNOT_SAY, Slot::Push(_)) => Text::new("choice.not-tried"),
        (CANNOT_SAY, Slot::Detail(..)) => Text::new("choice.cannot-say"),
        (CANNOT_SAY, _) => Text::new("choice.dont-know"),
        _ => Text::new(format!("choice.{}.{word}", slot.family())),
    }
}

fn of_slot(wizard: &Wizard, slot: Slot, name: String) -> Option<Line> {
    let word = slot.get(wizard).filter(|word| *word != CANNOT_SAY)?;
    Some(Line {
        name: Some(Text::new(name)),
        said: label(slot, word),
    })
}

fn of_aspect(wizard: &Wizard, feeling: Feeling, aspect: Aspect) -> Option<Line> {
    let slot = Slot::Detail(feeling, aspect);
    let name = format!("line.{}", slot.family());
    if aspect != Aspect::Phases {
        return of_slot(wizard, slot, name);
    }
    let phases = &wizard.complaint(feeling)?.phases;
    let ticked = Phase::ALL.iter().filter(|phase| phases.contains(phase));
    let said = ticked
        .map(|phase| Text::new(format!("phase.{}", phase.word())))
        .reduce(|so_far, next| {
            Text::new("line.and")
                .with("so_far", so_far.into())
                .with("next", next.into())
        })?;
    Some(Line {
        name: Some(Text::new(name)),
        said,
    })
}

fn of_complaints(wizard: &Wizard) -> Vec<Line> {
    let complaints = wizard.intake.complaints.iter().flatten();
    let felt: Vec<Line> = complaints
        .map(|c| plain(format!("complaint.{}", c.feeling.word())))
        .collect();
    if felt.is_empty() {
        vec![plain("complaints.nothing".to_owned())]
    } else {
        felt
    }
}

fn of_signs(wizard: &Wizard) -> Vec<Line> {
    let signs = wizard.intake.stop_signs.iter().flatten();
    let seen: Vec<Line> = signs.map(|s| plain(format!("sign.{}", s.word()))).collect();
    if seen.is_empty() {
        vec![plain("signs.none".to_owned())]
    } else {
        seen
    }
}

fn plain(key: String) -> Line {
    Line {
        name: None,
        said: Text::new(key),
    }
}

fn of_fields(wizard: &Wizard, question: Question) -> Vec<Line> {
    let alone = fields_of(question).count() == 1;
    fields_of(question)
        .filter(|field| field.get(&wizard.intake).is_some())
        .map(|field| {
            let number = Text::new("line.number")
                .with("number", Arg::Raw(wizard.shown(field)))
                .with("unit", Arg::Raw(beside(field, wizard.unit_of(field))));
            let how = Slot::How(field);
            let said = match how.get(wizard).filter(|word| *word != CANNOT_SAY) {
                Some(word) => Text::new("line.with-how")
                    .with("number", number.into())
                    .with("how", Text::new(format!("known.{word}")).into()),
                None => number,
            };
            let name = Text::new(format!("field.{}", field.path()));
            Line {
                name: (!alone).then_some(name),
                said,
            }
        })
        .collect()
}
