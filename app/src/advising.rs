//! The advice on one set of answers, worked out once, and the rides kept for as long as answers leave them good.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::advice::{
    Advice, CauseFinding, Keep, Options, Ridden, Setting, Still, advise_still, advise_with, keep,
    stand_still,
};
use sagwright_core::intake::{Intake, IntakeError, check};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::Text;
use sagwright_core::workshop::Workshop;

/// What came of asking for advice.
#[derive(Debug, Clone)]
pub enum Outcome {
    /// Advice, and what it rests on.
    Advice(Rc<Advice>, Stand),
    /// The answers contradict each other or are out of range.
    Refused(Rc<IntakeError>),
}

/// What an advice rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// What shows standing still: nothing has been ridden.
    Still,
    /// Rides of this very bike.
    Ridden,
    /// Rides of the bike as it was set up before the last answers.
    RiddenBefore,
}

impl PartialEq for Outcome {
    /// Each is worked out once and shared, so pointers say enough.
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Advice(one, stand), Self::Advice(two, other)) => {
                Rc::ptr_eq(one, two) && stand == other
            }
            (Self::Refused(one), Self::Refused(two)) => Rc::ptr_eq(one, two),
            _ => false,
        }
    }
}

impl Outcome {
    /// The causes, most likely first; none where there is no set-up.
    pub fn causes(&self) -> &[CauseFinding] {
        match self {
            Self::Advice(advice, _) => match advice.as_ref() {
                Advice::SetUp(set_up) => &set_up.causes,
                Advice::StopRiding(_) => &[],
            },
            Self::Refused(_) => &[],
        }
    }

    /// The settings card; empty where there is none.
    fn settings(&self) -> &[Setting] {
        match self {
            Self::Advice(advice, _) => match advice.as_ref() {
                Advice::SetUp(set_up) => &set_up.settings,
                Advice::StopRiding(_) => &[],
            },
            Self::Refused(_) => &[],
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

/// What was worked out lately, shared by all pages.
#[derive(Debug, Clone, Default)]
pub struct Adviser(Rc<RefCell<Inner>>);

#[derive(Debug, Default)]
struct Inner {
    options: Options,
    rides: Option<Rides>,
    /// What shows standing still, and on which answers, for want of rides.
    still: Option<(Intake, Rc<Still>)>,
    /// Worked out with these rides, the last one asked for at the end.
    told: Vec<(Intake, Outcome)>,
}

/// The last rides.
#[derive(Debug)]
struct Rides {
    /// The answers that were ridden.
    on: Intake,
    /// What they found.
    ridden: Ridden,
    /// The settings that they moved, in the order of the card.
    changes: Vec<Change>,
}

/// The answers now, those before the last check, and one more to take back.
const MOST_KEPT: usize = 3;

impl PartialEq for Adviser {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Adviser {
    /// An adviser who reckons with what a workshop says about itself.
    pub fn of(workshop: Option<Workshop>) -> Self {
        Self(Rc::new(RefCell::new(Inner {
            options: Options { workshop },
            ..Inner::default()
        })))
    }

    /// The advice on these answers, if it has been worked out.
    pub fn known(&self, intake: &Intake) -> Option<Outcome> {
        let inner = self.0.borrow();
        let known = inner.told.iter().find(|(on, _)| on == intake);
        known.map(|(_, outcome)| outcome.clone())
    }

    /// Makes ready for [`Self::ask`] where there are no rides to work from: half of the work, to be done in a task of its
    /// own.
    pub fn prepare(&self, intake: &Intake) {
        let inner = &mut *self.0.borrow_mut();
        let known = inner.told.iter().any(|(on, _)| on == intake);
        if !known && inner.worth(intake).is_none() && check(intake).is_ok() {
            inner.still(intake);
        }
    }

    /// The advice on these answers from the rides there are, as far as they hold, else from statics.
    pub fn ask(&self, intake: &Intake) -> Outcome {
        let inner = &mut *self.0.borrow_mut();
        if let Some(place) = inner.told.iter().position(|(on, _)| on == intake) {
            let known = inner.told.remove(place);
            let outcome = known.1.clone();
            inner.told.push(known);
            return outcome;
        }
        let outcome = inner.work_out(intake);
        inner.told.push((intake.clone(), outcome.clone()));
        let spare = inner.told.len().saturating_sub(MOST_KEPT);
        inner.told.drain(..spare);
        outcome
    }

    /// The advice on other answers to hold these against; it is not what was asked last.
    pub fn beside(&self, intake: &Intake) -> Outcome {
        if let Some(known) = self.known(intake) {
            return known;
        }
        let inner = &mut *self.0.borrow_mut();
        let outcome = inner.work_out(intake);
        inner.told.insert(0, (intake.clone(), outcome.clone()));
        outcome
    }

    /// Takes in what rides of these answers found. The advice with it, where these answers are the last asked about.
    pub fn refine(&self, intake: &Intake, ridden: &Ridden) -> Option<Outcome> {
        let inner = &mut *self.0.borrow_mut();
        let asked = inner.told.pop().filter(|(on, _)| on == intake);
        let known = inner
            .rides
            .as_ref()
            .is_some_and(|rides| keep(&rides.on, intake) == Keep::Good && rides.ridden == *ridden);
        if known {
            let (_, outcome) = asked?;
            inner.told.push((intake.clone(), outcome.clone()));
            return Some(outcome);
        }
        inner.rides = Some(Rides {
            on: intake.clone(),
            ridden: ridden.clone(),
            changes: Vec::new(),
        });
        inner.told.clear();
        let (_, before) = asked?;
        let after = inner.work_out(intake);
        if let Some(rides) = &mut inner.rides {
            rides.changes = changes(&before, &after);
        }
        inner.told.push((intake.clone(), after.clone()));
        Some(after)
    }

    /// The settings that the rides of these answers moved, in the order of the card.
    pub fn changes(&self, intake: &Intake) -> Vec<Change> {
        let inner = self.0.borrow();
        let rides = inner.rides.as_ref();
        let rides = rides.filter(|rides| keep(&rides.on, intake) == Keep::Good);
        rides.map_or_else(Vec::new, |rides| rides.changes.clone())
    }
}

impl Inner {
    /// The rides, where they say something about these answers, and what the advice then rests on.
    fn worth(&self, intake: &Intake) -> Option<(&Ridden, Stand)> {
        let rides = self.rides.as_ref()?;
        let stand = match keep(&rides.on, intake) {
            Keep::Good => Stand::Ridden,
            Keep::UntilRidden => Stand::RiddenBefore,
            Keep::Not => return None,
        };
        Some((&rides.ridden, stand))
    }

    /// What shows standing still, worked out anew only where rides would be.
    fn still(&mut self, intake: &Intake) -> Rc<Still> {
        if let Some((on, still)) = &self.still
            && keep(on, intake) == Keep::Good
        {
            return Rc::clone(still);
        }
        let still = Rc::new(stand_still(intake));
        self.still = Some((intake.clone(), Rc::clone(&still)));
        still
    }

    /// Advice from the rides there are, as far as they hold, else from statics.
    fn work_out(&mut self, intake: &Intake) -> Outcome {
        let options = self.options.clone();
        let told = match self.worth(intake) {
            Some((ridden, stand)) => {
                advise_with(intake, &options, Some(ridden)).map(|advice| (advice, stand))
            }
            // The check comes first: what it refuses may not be fit to stand.
            None => check(intake).and_then(|()| {
                let still = self.still(intake);
                advise_still(intake, &options, &still).map(|advice| (advice, Stand::Still))
            }),
        };
        match told {
            Ok((advice, stand)) => Outcome::Advice(Rc::new(advice), stand),
            Err(error) => Outcome::Refused(Rc::new(error)),
        }
    }
}

/// The settings that differ, in the order of the card.
fn changes(before: &Outcome, after: &Outcome) -> Vec<Change> {
    let moved = after.settings().iter().filter_map(|new| {
        let old = before.settings().iter().find(|old| old.id == new.id)?;
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

#[cfg(test)]
mod tests {
    use sagwright_core::advice::RiddenClicks;
    use sagwright_core::cause::Rehearsal;
    use sagwright_core::intake::{Field, PushFeel};
    use sagwright_core::quantity::{Typed, Unit};
    use sagwright_core::remedy::Remedied;

    use super::*;

    fn ridden(clicks: u8) -> Ridden {
        Ridden {
            clicks: RiddenClicks {
                fork_compression: clicks,
                fork_rebound: 4,
                shock_compression: 5,
                shock_rebound: 6,
            },
            fork_rate: None,
            shock_rate: 50_000.0,
            feel: Vec::new(),
            pictures: Vec::new(),
            before_told: true,
            rides: 1,
            rehearsal: Rehearsal::default(),
            remedied: Remedied::default(),
        }
    }

    fn pushed() -> Intake {
        let mut intake = Intake::default();
        intake.measured.push_front = Some(PushFeel::SticksFirst);
        intake
    }

    fn clicked() -> Intake {
        let mut intake = Intake::default();
        let two = Typed {
            value: 2.0,
            unit: Unit::Click,
            how: None,
        };
        Field::ForkReboundNow.set(&mut intake, Some(two));
        intake
    }

    #[track_caller]
    fn stands_on(outcome: &Outcome, expected: Stand) {
        match outcome {
            Outcome::Advice(_, stand) => assert_eq!(*stand, expected),
            Outcome::Refused(error) => panic!("refused: {error:?}"),
        }
    }

    #[test]
    fn the_same_answers_are_worked_out_once() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        assert_eq!(adviser.known(&intake), None);
        let first = adviser.ask(&intake);
        stands_on(&first, Stand::Still);
        assert_eq!(adviser.known(&intake), Some(first.clone()));
        assert_eq!(adviser.ask(&intake), first);
        assert_ne!(adviser.ask(&pushed()), first);
        // Asked about again, as when an answer is taken back.
        assert_eq!(adviser.ask(&intake), first);
    }

    #[test]
    fn what_was_made_ready_is_used() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        adviser.prepare(&intake);
        let ready = |adviser: &Adviser| {
            let inner = adviser.0.borrow();
            let still = inner.still.as_ref();
            Rc::clone(&still.expect("it was made ready").1)
        };
        let before = ready(&adviser);
        stands_on(&adviser.ask(&intake), Stand::Still);
        // A push test shows on the same bike standing still.
        adviser.prepare(&pushed());
        adviser.ask(&pushed());
        assert!(Rc::ptr_eq(&before, &ready(&adviser)));
        adviser.prepare(&clicked());
        assert!(!Rc::ptr_eq(&before, &ready(&adviser)));
    }

    #[test]
    fn no_more_is_kept_than_is_of_use() {
        let adviser = Adviser::default();
        for name in ["one", "two", "three", "four", "five"] {
            let note = name.to_owned();
            adviser.ask(&Intake {
                note,
                ..Intake::default()
            });
        }
        assert_eq!(adviser.0.borrow().told.len(), MOST_KEPT);
    }

    #[test]
    fn rides_refine_what_was_asked_last() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        let at_once = adviser.ask(&intake);
        let refined = adviser.refine(&intake, &ridden(3)).expect("it was asked");
        stands_on(&refined, Stand::Ridden);
        assert_ne!(refined, at_once);
        assert_eq!(adviser.known(&intake), Some(refined.clone()));
        assert!(!adviser.changes(&intake).is_empty(), "nothing was moved");
        // The same rides again change nothing.
        assert_eq!(adviser.refine(&intake, &ridden(3)), Some(refined));
    }

    #[test]
    fn a_push_test_keeps_the_rides_and_clicks_only_until_they_are_ridden() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        adviser.ask(&intake);
        adviser.refine(&intake, &ridden(3));
        stands_on(&adviser.ask(&pushed()), Stand::Ridden);
        assert_eq!(adviser.changes(&pushed()), adviser.changes(&intake));
        stands_on(&adviser.ask(&clicked()), Stand::RiddenBefore);
        assert_eq!(adviser.changes(&clicked()), []);
        let again = adviser.refine(&clicked(), &ridden(9));
        stands_on(&again.expect("it was asked"), Stand::Ridden);
        assert_eq!(adviser.changes(&clicked()).len(), 1);
        // Back to the clicks of before: these rides are not of that bike.
        stands_on(&adviser.ask(&intake), Stand::RiddenBefore);
    }

    #[test]
    fn rides_that_come_before_the_question_answer_it_all_the_same() {
        let adviser = Adviser::default();
        let intake = Intake::default();
        adviser.ask(&clicked());
        assert_eq!(adviser.refine(&intake, &ridden(3)), None);
        stands_on(&adviser.ask(&intake), Stand::Ridden);
    }
}
