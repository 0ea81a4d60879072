//! The advice on one set of answers, worked out once and kept while the answers stay the same.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::advice::{Advice, Options, advise};
use sagwright_core::intake::{Intake, IntakeError};

/// What came of asking for advice.
#[derive(Debug, Clone)]
pub enum Outcome {
    /// Advice.
    Advice(Rc<Advice>),
    /// The answers contradict each other or are out of range.
    Refused(Rc<IntakeError>),
}

impl PartialEq for Outcome {
    /// Each is worked out once and shared, so pointers say enough.
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Advice(one), Self::Advice(two)) => Rc::ptr_eq(one, two),
            (Self::Refused(one), Self::Refused(two)) => Rc::ptr_eq(one, two),
            _ => false,
        }
    }
}

/// The last advice worked out, shared by all pages.
#[derive(Debug, Clone, Default)]
pub struct Adviser(Rc<RefCell<Option<(Intake, Outcome)>>>);

impl PartialEq for Adviser {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Adviser {
    /// The advice on these answers, if it is the last one worked out.
    pub fn known(&self, intake: &Intake) -> Option<Outcome> {
        let last = self.0.borrow();
        let (on, outcome) = last.as_ref()?;
        (on == intake).then(|| outcome.clone())
    }

    /// Works the advice out, or takes the last one where it is about the same answers.
    pub fn ask(&self, intake: Intake) -> Outcome {
        if let Some(outcome) = self.known(&intake) {
            return outcome;
        }
        let outcome = match advise(&intake, &Options::default()) {
            Ok(advice) => Outcome::Advice(Rc::new(advice)),
            Err(error) => Outcome::Refused(Rc::new(error)),
        };
        *self.0.borrow_mut() = Some((intake, outcome.clone()));
        outcome
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_answers_are_worked_out_once() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        assert_eq!(adviser.known(&intake), None);
        let first = adviser.ask(intake.clone());
        assert_eq!(adviser.known(&intake), Some(first.clone()));
        assert_eq!(adviser.ask(intake), first);
    }

    #[test]
    fn other_answers_are_worked_out_anew() {
        let adviser = Adviser::default();
        let first = adviser.ask(Intake::default());
        let other = Intake {
            note: "other".to_owned(),
            ..Intake::default()
        };
        assert_eq!(adviser.known(&other), None);
        assert_ne!(adviser.ask(other), first);
    }
}
