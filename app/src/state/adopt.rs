//! One page's answer taken over from other answers: from a draft when it is used, from before when it is taken back.

use sagwright_core::intake::Question;

use super::order::Page;
use super::slot::Slot;
use super::wizard::{Wizard, fields_of};

impl Wizard {
    /// Gives `page` the answer it has in `other`, "I don't know" and no answer included. All other pages and the units
    /// stay as they are.
    pub(super) fn adopt(&mut self, page: Page, other: &Self) {
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
        self.cannot_say.retain(|slot| slot.page() != page);
        let theirs = other.cannot_say.iter().filter(|slot| slot.page() == page);
        self.cannot_say.extend(theirs);
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

    use sagwright_core::intake::{End, Feeling, Field, Phase, StopSign, Terrain};
    use sagwright_core::quantity::{Dimension, Unit};

    use super::*;
    use crate::state::{Action, Aspect, CANNOT_SAY};

    fn said(actions: &[Action]) -> Wizard {
        actions.iter().fold(Wizard::default(), |wizard, action| {
            wizard.after(action.clone())
        })
    }

    /// An answer of every kind of page.
    fn answers() -> Vec<(Page, Vec<Action>)> {
        let ask = Page::Ask;
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
                Page::Detail(dives),
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
                vec![Action::DontKnow(ask(Question::TravelUsed), true)],
            ),
        ]
    }

    #[test]
    fn an_answer_comes_over_whole_and_goes_again() {
        for (page, actions) in answers() {
            // A complaint must be there before there can be more about it.
            let before = match page {
                Page::Detail(feeling) => said(&[Action::Feel(feeling, true)]),
                Page::Ask(_) => Wizard::default(),
            };
            let drafted = said(&actions);
            assert_ne!(before, drafted, "{page:?}");
            let there = before.after(Action::Adopt(page, Rc::new(drafted.clone())));
            assert_eq!(there, drafted, "{page:?} came over otherwise");
            let back = there.after(Action::Adopt(page, Rc::new(before.clone())));
            assert_eq!(back, before, "{page:?} left something behind");
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
            Page::Ask(Question::PushTest),
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
