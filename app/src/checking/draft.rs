//! An answer in the making: it changes nothing else on the page until it is used.

use std::cell::RefCell;
use std::rc::Rc;

use yew::Reducible;

use crate::state::{Action, Subject, Wizard};

/// What the rider has done to the answers of one page, not yet used.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Draft(Vec<Action>);

impl Reducible for Draft {
    type Action = Action;

    /// Only the last state of a number's box counts, so that typing does not pile up.
    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let mut steps = self.0.clone();
        if let (Action::Type(field, _), Some(Action::Type(before, _))) = (&action, steps.last())
            && field == before
        {
            steps.pop();
        }
        steps.push(action);
        Rc::new(Self(steps))
    }
}

impl Draft {
    /// The answers as they would be with the draft. Whoever answers a page here no longer says "I don't know" to it.
    pub fn on(&self, wizard: &Wizard, subject: Subject) -> Wizard {
        let open = match subject {
            Subject::Page(page) => wizard.after(Action::DontKnow(page, false)),
            Subject::Look(_) | Subject::Lap(_) => wizard.clone(),
        };
        let steps = self.0.iter();
        steps.fold(open, |so_far, action| so_far.after(action.clone()))
    }
}

/// What was typed into the forms of checks and not used yet: whoever comes back to a check finds it again.
#[derive(Debug, Clone, Default)]
pub struct Drafts(Rc<RefCell<Vec<(Subject, Draft)>>>);

impl PartialEq for Drafts {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Drafts {
    /// What was typed of this.
    pub fn of(&self, subject: Subject) -> Draft {
        let all = self.0.borrow();
        let found = all.iter().find(|(of, _)| *of == subject);
        found.map_or_else(Draft::default, |(_, draft)| draft.clone())
    }

    /// Keeps what was typed of this in place of what was kept before.
    pub fn keep(&self, subject: Subject, draft: Draft) {
        let mut all = self.0.borrow_mut();
        all.retain(|(of, _)| *of != subject);
        all.push((subject, draft));
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{Field, Question};
    use sagwright_core::quantity::{Dimension, Unit};

    use super::*;
    use crate::state::Page;

    const PAGE: Page = Page::Ask(Question::SagFront);
    const SAG: Subject = Subject::Page(PAGE);

    fn typed(draft: Draft, text: &str) -> Draft {
        let action = Action::Type(Field::ForkRiderSag, text.to_owned());
        Rc::unwrap_or_clone(Rc::new(draft).reduce(action))
    }

    #[test]
    fn a_draft_is_the_answers_with_its_steps_done() {
        let draft = ["7", "71"].into_iter().fold(Draft::default(), typed);
        assert_eq!(draft.0.len(), 1, "every letter is kept");
        let wizard = Wizard::default();
        assert_eq!(draft.on(&wizard, SAG).shown(Field::ForkRiderSag), "71");
        assert_eq!(wizard, Wizard::default());
    }

    #[test]
    fn a_draft_follows_the_unit_shown() {
        let inches = Wizard::default().after(Action::Show(Dimension::Length, Unit::Inch));
        let draft = typed(Draft::default(), "2.8");
        let sag = Field::ForkRiderSag.si(&draft.on(&inches, SAG).intake);
        assert!(sag.is_some_and(|m| (m - 0.071_12).abs() < 1e-9), "{sag:?}");
    }

    #[test]
    fn a_draft_is_found_again() {
        let drafts = Drafts::default();
        let sag = typed(Draft::default(), "71");
        drafts.keep(SAG, sag.clone());
        let push = Subject::Page(Page::Ask(Question::PushTest));
        drafts.keep(push, Draft::default());
        assert_eq!(drafts.of(SAG), sag);
        assert_eq!(drafts.of(push), Draft::default());
        drafts.keep(SAG, Draft::default());
        assert_eq!(drafts.of(SAG), Draft::default());
    }

    #[test]
    fn an_empty_form_is_no_answer_even_where_the_rider_did_not_know() {
        let unknowing = Wizard::default().after(Action::DontKnow(PAGE, true));
        assert!(SAG.troubles(&unknowing).is_empty());
        let open = Draft::default().on(&unknowing, SAG);
        assert!(!SAG.troubles(&open).is_empty());
    }
}
