//! The advice on one set of answers, worked out once and kept while the answers stay the same.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::advice::{Advice, Options, Ridden, Setting, advise_with};
use sagwright_core::intake::{Intake, IntakeError};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::Text;

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

/// A setting that rides moved.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Which setting.
    pub label: Text,
    /// Advised from statics alone, SI.
    pub before: f64,
    /// Advised after the rides, SI.
    pub after: f64,
    /// What it measures.
    pub dimension: Dimension,
}

/// The last advice worked out, shared by all pages.
#[derive(Debug, Clone, Default)]
pub struct Adviser(Rc<RefCell<Option<Last>>>);

/// The last answers and what was advised on them.
#[derive(Debug)]
struct Last {
    intake: Intake,
    /// From statics alone.
    at_once: Outcome,
    /// With what rides found, once they have.
    refined: Option<Outcome>,
}

impl PartialEq for Adviser {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Adviser {
    /// The advice on these answers, if it is the last one worked out: with what rides found, where they were ridden.
    pub fn known(&self, intake: &Intake) -> Option<Outcome> {
        let last = self.0.borrow();
        let last = last.as_ref().filter(|last| last.intake == *intake)?;
        Some(last.refined.as_ref().unwrap_or(&last.at_once).clone())
    }

    /// Works the advice out from statics, or takes the last one where it is about the same answers.
    pub fn ask(&self, intake: Intake) -> Outcome {
        if let Some(outcome) = self.known(&intake) {
            return outcome;
        }
        let outcome = work_out(&intake, None);
        *self.0.borrow_mut() = Some(Last {
            intake,
            at_once: outcome.clone(),
            refined: None,
        });
        outcome
    }

    /// The advice with what rides found; `None` when other answers have come in between.
    pub fn refine(&self, intake: &Intake, ridden: &Ridden) -> Option<Outcome> {
        let mut last = self.0.borrow_mut();
        let last = last.as_mut().filter(|last| last.intake == *intake)?;
        let refined = last
            .refined
            .get_or_insert_with(|| work_out(intake, Some(ridden)));
        Some(refined.clone())
    }

    /// The settings that rides moved, in the order of the card.
    pub fn changes(&self, intake: &Intake) -> Vec<Change> {
        let last = self.0.borrow();
        let Some(last) = last.as_ref().filter(|last| last.intake == *intake) else {
            return Vec::new();
        };
        let (before, after) = (settings(&last.at_once), last.refined.as_ref());
        let after = after.map(settings).unwrap_or_default();
        let moved = after.into_iter().filter_map(|new| {
            let old = before.iter().find(|old| old.id == new.id)?;
            let (before, after) = (old.advised.value, new.advised.value);
            // Settings are whole clicks or springs that are sold, so the same choice is the same number.
            (before.to_bits() != after.to_bits()).then(|| Change {
                label: new.label.clone(),
                before,
                after,
                dimension: new.advised.dimension,
            })
        });
        moved.collect()
    }
}

fn work_out(intake: &Intake, ridden: Option<&Ridden>) -> Outcome {
    match advise_with(intake, &Options::default(), ridden) {
        Ok(advice) => Outcome::Advice(Rc::new(advice)),
        Err(error) => Outcome::Refused(Rc::new(error)),
    }
}

/// The settings card; empty where there is none.
fn settings(outcome: &Outcome) -> Vec<&Setting> {
    match outcome {
        Outcome::Advice(advice) => match advice.as_ref() {
            Advice::SetUp(set_up) => set_up.settings.iter().collect(),
            Advice::StopRiding(_) => Vec::new(),
        },
        Outcome::Refused(_) => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::advice::RiddenClicks;

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
    fn what_rides_found_is_kept_for_these_answers_alone() {
        let adviser = Adviser::default();
        let (intake, ridden) = (Intake::default(), ridden());
        let at_once = adviser.ask(intake.clone());
        let other = Intake {
            note: "other".to_owned(),
            ..Intake::default()
        };
        assert_eq!(adviser.refine(&other, &ridden), None);
        assert_eq!(adviser.changes(&intake), []);
        let refined = adviser.refine(&intake, &ridden);
        assert!(refined.is_some() && refined != Some(at_once));
        assert_eq!(adviser.known(&intake), refined);
        assert_eq!(
            adviser.ask(intake.clone()),
            refined.expect("it was just seen")
        );
        assert_eq!(adviser.changes(&other), []);
    }

    fn ridden() -> Ridden {
        Ridden {
            clicks: RiddenClicks {
                fork_compression: 3,
                fork_rebound: 4,
                shock_compression: 5,
                shock_rebound: 6,
            },
            fork_rate: None,
            shock_rate: 50_000.0,
            feel: Vec::new(),
            picture: None,
            before_told: true,
            rides: 1,
        }
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
