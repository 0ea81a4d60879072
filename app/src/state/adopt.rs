//! One page's answer taken over from other answers: from a draft when it is used, from before when it is taken back.

use sagwright_core::intake::Question;

use super::order::Page;
use super::slot::Slot;
use super::subject::Subject;
use super::wizard::{Wizard, fields_of};

impl Wizard {
    /// Gives `subject` the answer it has in `other`, "I don't know" and no answer included. All other answers and the
    /// units stay as they are.
    pub(super) fn adopt(&mut self, subject: Subject, other: &Self) {
        match subject {
            Subject::Page(page) => self.adopt_page(page, other),
            Subject::Look(look) => {
                let slot = Slot::Look(look);
                slot.set(self, slot.get(other).unwrap_or_default());
                // Nothing looked at is no answer, not an empty one.
                let looks = &mut self.intake.measured.looks;
                looks.take_if(|looks| looks.is_empty());
            }
            Subject::Lap(change) => {
                let laps = &mut self.intake.tried;
                laps.retain(|lap| lap.change != change);
                let theirs = other.intake.tried.iter();
                laps.extend(theirs.filter(|lap| lap.change == change).cloned());
            }
        }
        self.cannot_say.retain(|slot| slot.subject() != subject);
        let theirs = other.cannot_say.iter();
        self.cannot_say
            .extend(theirs.copied().filter(|slot| slot.subject() == subject));
    }

    fn adopt_page(&mut self, page: Page, other: &Self) {
        let question = page.question();
        for field in fields_of(question) {
            match other.typed.get(&field) {
                Some(typed) => self.typed.insert(field, typed.clone()),
                None => self.typed.remove(&field),
            };
            field.set(&mut self.intake, field.get(&other.intake));
        }
        match page {
            Page::Detail(feeling) => {
                if let (Some(own), Some(others)) =
                    (self.complaint_mut(feeling), other.complaint(feeling))
                {
                    own.clone_from(others);
                }
            }
            Page::Ask(Question::Complaints) => {
                self.intake.complaints.clone_from(&other.intake.complaints);
            }
            Page::Ask(Question::StopSigns) => {
                self.intake.stop_signs.clone_from(&other.intake.stop_signs);
            }
            Page::Ask(Question::GroundMix) => {
                self.intake.ground.mix.clone_from(&other.intake.ground.mix);
            }
            Page::Ask(Question::PushTest) => {
                self.intake.measured.push_front = other.intake.measured.push_front;
                self.intake.measured.push_rear = other.intake.measured.push_rear;
            }
            Page::Ask(single) if Slot::is_single(single) => {
                let slot = Slot::One(single);
                slot.set(self, slot.get(other).unwrap_or_default());
            }
            Page::Ask(_) => {}
        }
        if matches!(page, Page::Ask(_)) {
            if other.intake.dont_know.contains(&question) {
                self.intake.dont_know.insert(question);
            } else {
                self.intake.dont_know.remove(&question);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::rc::Rc;

    use sagwright_core::intake::{Change, End, Feeling, Field, Look, Phase, StopSign, Terrain};
    use sagwright_core::quantity::{Dimension, Unit};

    use super::*;
    use crate::state::{Action, Aspect, CANNOT_SAY};

    fn said(actions: &[Action]) -> Wizard {
        actions.iter().fold(Wizard::default(), |wizard, action| {
            wizard.after(action.clone())
        })
    }

    /// An answer of every kind of page.
    fn answers() -> Vec<(Subject, Vec<Action>)> {
        let ask = |question| Subject::Page(Page::Ask(question));
        let dives = Feeling::Dives;
        vec![
            (
                ask(Question::SagFront),
                vec![Action::Type(Field::ForkRiderSag, "71".to_owned())],
            ),
            (
                ask(Question::ForkSpring),
                vec![
                    Action::Type(Field::ForkRate, "4.6".to_owned()),
                    Action::Pick(Slot::How(Field::ForkRate), "guess"),
                ],
            ),
            (
                ask(Question::PushTest),
                vec![
                    Action::Pick(Slot::Push(End::Front), "judders"),
                    Action::Pick(Slot::Push(End::Rear), CANNOT_SAY),
                ],
            ),
            (
                ask(Question::GroundMix),
                vec![Action::Pick(Slot::Ground(Terrain::Sand), "lot")],
            ),
            (
                ask(Question::RiderPace),
                vec![Action::Pick(Slot::One(Question::RiderPace), CANNOT_SAY)],
            ),
            (ask(Question::Complaints), vec![Action::Feel(dives, true)]),
            (
                Subject::Page(Page::Detail(dives)),
                vec![
                    Action::Feel(dives, true),
                    Action::When(dives, Phase::ALL[0], true),
                    Action::Pick(Slot::Detail(dives, Aspect::Since), CANNOT_SAY),
                ],
            ),
            (
                ask(Question::StopSigns),
                vec![Action::Sign(StopSign::ALL[0], true)],
            ),
            (
                ask(Question::TravelUsed),
                vec![Action::DontKnow(Page::Ask(Question::TravelUsed), true)],
            ),
            (
                Subject::Look(Look::HangsShort),
                vec![Action::Pick(Slot::Look(Look::HangsShort), "no")],
            ),
            (
                Subject::Lap(Change::TyresLess),
                vec![Action::Pick(Slot::Lap(Change::TyresLess, dives), "better")],
            ),
        ]
    }

    #[test]
    fn an_answer_comes_over_whole_and_goes_again() {
        for (subject, actions) in answers() {
            // A complaint must be there before there can be more about it.
            let before = match subject {
                Subject::Page(Page::Detail(feeling)) => said(&[Action::Feel(feeling, true)]),
                _ => Wizard::default(),
            };
            let drafted = said(&actions);
            assert_ne!(before, drafted, "{subject:?}");
            let there = before.after(Action::Adopt(subject, Rc::new(drafted.clone())));
            assert_eq!(there, drafted, "{subject:?} came over otherwise");
            let back = there.after(Action::Adopt(subject, Rc::new(before.clone())));
            assert_eq!(back, before, "{subject:?} left something behind");
        }
    }

    #[test]
    fn other_pages_and_units_stay() {
        let before = said(&[Action::Type(Field::RearRiderSag, "100".to_owned())]);
        let other = said(&[
            Action::Type(Field::RearRiderSag, "120".to_owned()),
            Action::Pick(Slot::Push(End::Front), "smooth"),
        ]);
        let units = before.after(Action::Show(Dimension::Length, Unit::Inch));
        let next = units.after(Action::Adopt(
            Subject::Page(Page::Ask(Question::PushTest)),
            Rc::new(other.clone()),
        ));
        assert_eq!(next.typed, units.typed);
        assert_eq!(next.units, units.units);
        assert_eq!(
            next.intake.measured.push_front,
            other.intake.measured.push_front
        );
        assert_eq!(
            next.intake.measured.rear_rider_sag,
            before.intake.measured.rear_rider_sag
        );
    }
}
