//! Every way in which the answers change.

use std::rc::Rc;

use sagwright_core::intake::{
    Complaint, ExtraAnswer, Feeling, Field, Intake, Phase, Question, StopSign, Tried,
};
use sagwright_core::quantity::{Dimension, Unit};
use sagwright_core::sorted::Set;
use yew::Reducible;

use super::order::{Page, Section};
use super::slot::{Aspect, CANNOT_SAY, Slot};
use super::subject::Subject;
use super::typed::TypedText;
use super::wizard::Wizard;

/// Something the rider did.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// Typed in a number's box.
    Type(Field, String),
    /// Chose the unit a quantity is shown in.
    Show(Dimension, Unit),
    /// Said that the number typed was meant in this unit.
    Meant(Field, Unit),
    /// Said that the unit is right although the number is unusual in it.
    KeepUnit(Field),
    /// Picked one of a group.
    Pick(Slot, &'static str),
    /// Ticked or cleared something felt.
    Feel(Feeling, bool),
    /// Said that nothing is wrong, or took that back.
    NothingWrong(bool),
    /// Ticked or cleared a moment of a complaint.
    When(Feeling, Phase, bool),
    /// Ticked or cleared a stop-riding sign.
    Sign(StopSign, bool),
    /// Said that none of the signs was seen, or took that back.
    NoSigns(bool),
    /// Answered a whole page with "I don't know", or took that back.
    DontKnow(Page, bool),
    /// Said that nothing was measured: every such page without an answer is passed.
    NothingMeasured,
    /// Answered a workshop's own question, or emptied the answer.
    Extra(ExtraAnswer),
    /// Let a page's boxes stand as its answer.
    Accept(Page),
    /// Took one answer over from other answers: from a draft that is used, or from before, to take it back.
    Adopt(Subject, Rc<Wizard>),
    /// Rode a lap with one change, or took one back: these are all laps now.
    Laps(Vec<Tried>),
    /// Opened a saved document.
    Open(Box<Intake>),
    /// Went on with the answers of another page of the site.
    TakeOver(Box<Wizard>),
    /// Started again.
    Clear,
}

impl Reducible for Wizard {
    type Action = Action;

    /// Same answers, same pointer: then nothing is drawn again.
    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let next = self.after(action);
        if next == *self { self } else { Rc::new(next) }
    }
}

impl Wizard {
    /// The answers after `action`.
    #[must_use]
    pub fn after(&self, action: Action) -> Self {
        let mut next = self.clone();
        match action {
            Action::Type(field, text) => {
                let unit = self.unit_of(field);
                let how = self.typed.get(&field).and_then(|typed| typed.how);
                let typed = TypedText {
                    text,
                    unit,
                    how,
                    unit_kept: false,
                };
                next.typed.insert(field, typed);
                next.intake.dont_know.remove(&field.question());
                next.settle(field);
            }
            Action::Show(dimension, unit) => next.units.choose(dimension, unit),
            Action::Meant(field, unit) => {
                next.units.choose(field.dimension(), unit);
                next.box_of(field).unit = unit;
                next.settle(field);
            }
            Action::KeepUnit(field) => next.box_of(field).unit_kept = true,
            Action::Pick(slot, word) => slot.set(&mut next, word),
            Action::Feel(feeling, felt) => next.feel(feeling, felt),
            Action::NothingWrong(so) => {
                next.intake.complaints = so.then(Vec::new);
                next.intake.dont_know.remove(&Question::Complaints);
            }
            Action::When(feeling, phase, so) => next.when(feeling, phase, so),
            Action::Sign(sign, seen) => next.sign(sign, seen),
            Action::NoSigns(so) => {
                next.intake.stop_signs = so.then(Set::new);
                next.intake.dont_know.remove(&Question::StopSigns);
            }
            Action::DontKnow(page, so) => next.dont_know(page, so),
            Action::NothingMeasured => {
                let pages = Page::all(&self.intake).into_iter();
                pages
                    .filter(|page| page.section() == Section::Measured && !self.is_answered(*page))
                    .for_each(|page| next.dont_know(page, true));
            }
            Action::Extra(told) => next.extra(told),
            Action::Accept(page) => return self.accepted(page),
            Action::Adopt(subject, other) => next.adopt(subject, &other),
            Action::Laps(laps) => next.intake.tried = laps,
            Action::Open(intake) => return Self::from_intake(*intake),
            Action::TakeOver(wizard) => return *wizard,
            Action::Clear => return Self::default(),
        }
        next
    }

    fn feel(&mut self, feeling: Feeling, felt: bool) {
        let complaints = self.intake.complaints.get_or_insert_default();
        complaints.retain(|c| c.feeling != feeling);
        if felt {
            let complaint = Complaint {
                feeling,
                end: None,
                phases: Set::new(),
                severity: None,
                since: None,
            };
            let after = complaints.iter().position(|c| c.feeling > feeling);
            complaints.insert(after.unwrap_or(complaints.len()), complaint);
        }
        // An empty list would say "nothing is wrong", which the rider did not.
        if complaints.is_empty() {
            self.intake.complaints = None;
        }
        self.intake.dont_know.remove(&Question::Complaints);
    }

    fn when(&mut self, feeling: Feeling, phase: Phase, so: bool) {
        self.cannot_say
            .remove(&Slot::Detail(feeling, Aspect::Phases));
        if let Some(complaint) = self.complaint_mut(feeling) {
            if so {
                complaint.phases.insert(phase);
            } else {
                complaint.phases.remove(&phase);
            }
        }
    }

    fn sign(&mut self, sign: StopSign, seen: bool) {
        let signs = self.intake.stop_signs.get_or_insert_default();
        if seen {
            signs.insert(sign);
        } else {
            signs.remove(&sign);
        }
        // An empty set would say "none seen", which the rider did not.
        if signs.is_empty() {
            self.intake.stop_signs = None;
        }
        self.intake.dont_know.remove(&Question::StopSigns);
    }

    fn extra(&mut self, told: ExtraAnswer) {
        let answers = &mut self.intake.extra;
        let place = answers.iter().position(|one| one.id == told.id);
        match place {
            Some(at) if told.answer.is_empty() => {
                answers.remove(at);
            }
            Some(at) => answers[at] = told,
            None if told.answer.is_empty() => {}
            None => answers.push(told),
        }
    }

    fn dont_know(&mut self, page: Page, so: bool) {
        let question = match page {
            Page::Detail(feeling) => {
                for aspect in Aspect::ALL {
                    let slot = Slot::Detail(feeling, *aspect);
                    if so {
                        slot.set(self, CANNOT_SAY);
                    } else {
                        self.cannot_say.remove(&slot);
                    }
                }
                return;
            }
            Page::Ask(question) => question,
        };
        if !so {
            self.intake.dont_know.remove(&question);
            return;
        }
        self.intake.dont_know.insert(question);
        match question {
            Question::Complaints => self.intake.complaints = None,
            Question::StopSigns => self.intake.stop_signs = None,
            Question::GroundMix => self.intake.ground.mix = None,
            Question::PushTest => {
                self.intake.measured.push_front = None;
                self.intake.measured.push_rear = None;
            }
            // What stands in the boxes stays there to come back to; the document leaves it out.
            _ => {}
        }
    }
}
