//! An answer in the making: it changes nothing else on the page until it is used.

use std::rc::Rc;

use yew::Reducible;

use crate::state::{Action, Wizard};

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
    /// The answers as they would be with the draft.
    pub fn on(&self, wizard: &Wizard) -> Wizard {
        let steps = self.0.iter();
        steps.fold(wizard.clone(), |so_far, action| {
            so_far.after(action.clone())
        })
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{End, Field};
    use sagwright_core::quantity::{Dimension, Unit};

    use super::*;
    use crate::state::Slot;

    fn typed(draft: Draft, text: &str) -> Draft {
        let action = Action::Type(Field::ForkRiderSag, text.to_owned());
        Rc::unwrap_or_clone(Rc::new(draft).reduce(action))
    }

    #[test]
    fn a_draft_is_the_answers_with_its_steps_done() {
        let draft = ["7", "71"].into_iter().fold(Draft::default(), typed);
        assert_eq!(draft.0.len(), 1, "every letter is kept");
        let draft = Rc::new(draft).reduce(Action::Pick(Slot::Push(End::Front), "smooth"));
        let wizard = Wizard::default();
        let with = draft.on(&wizard);
        assert_eq!(with.shown(Field::ForkRiderSag), "71");
        assert_eq!(Slot::Push(End::Front).get(&with), Some("smooth"));
        assert_eq!(wizard, Wizard::default());
    }

    #[test]
    fn a_draft_follows_the_unit_shown() {
        let inches = Wizard::default().after(Action::Show(Dimension::Length, Unit::Inch));
        let draft = typed(Draft::default(), "2.8");
        let sag = Field::ForkRiderSag.si(&draft.on(&inches).intake);
        assert!(sag.is_some_and(|m| (m - 0.071_12).abs() < 1e-9), "{sag:?}");
    }
}
