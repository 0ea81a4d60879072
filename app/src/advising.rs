//! The advice on one set of answers, worked out once, and the rides kept for as long as answers leave them good.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::advice::{
    Advice, CauseFinding, Keep, Options, Ridden, Seen, Setting, Still, advise_between, advise_from,
    keep, stand_still,
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
    ridden: Rc<Ridden>,
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

    /// The advice on these answers from the rides there are, as far as they hold, else from statics; `pause` is waited
    /// for between its parts.
    pub async fn ask(&self, intake: &Intake, pause: impl AsyncFn()) -> Outcome {
        let outcome = loop {
            if let Some(known) = self.known(intake) {
                break known;
            }
            if let Some(refused) = refused(intake) {
                break refused;
            }
            let basis = self.0.borrow_mut().basis(intake);
            pause().await;
            let outcome = self.work_out(intake, &basis, &pause).await;
            // Rides that were taken in meanwhile know better.
            if self.0.borrow_mut().basis(intake).is(&basis) {
                break outcome;
            }
        };
        let told = &mut self.0.borrow_mut().told;
        told.retain(|(on, _)| on != intake);
        told.push((intake.clone(), outcome.clone()));
        let spare = told.len().saturating_sub(MOST_KEPT);
        told.drain(..spare);
        outcome
    }

    /// The advice on other answers to hold these against, at once; it is not what was asked last.
    pub fn beside(&self, intake: &Intake) -> Outcome {
        if let Some(known) = self.known(intake) {
            return known;
        }
        let inner = &mut *self.0.borrow_mut();
        let outcome = refused(intake).unwrap_or_else(|| {
            let basis = inner.basis(intake);
            basis.outcome(advise_from(intake, &inner.options, basis.seen()))
        });
        inner.told.insert(0, (intake.clone(), outcome.clone()));
        outcome
    }

    /// Takes in what rides of these answers found; `pause` is waited for between the parts of the work. The advice with
    /// it, where these answers are the last asked about.
    pub async fn refine(
        &self,
        intake: &Intake,
        ridden: Rc<Ridden>,
        pause: impl AsyncFn(),
    ) -> Option<Outcome> {
        if self.0.borrow().has(intake, &ridden) {
            return self.0.borrow().asked_last(intake).cloned();
        }
        let basis = Basis::Ridden(Rc::clone(&ridden), Stand::Ridden);
        let after = self.work_out(intake, &basis, &pause).await;
        let inner = &mut *self.0.borrow_mut();
        let moved = inner.asked_last(intake).map(|asked| changes(asked, &after));
        inner.told.clear();
        inner.rides = Some(Rides {
            on: intake.clone(),
            ridden,
            changes: moved.clone().unwrap_or_default(),
        });
        moved.map(|_| {
            inner.told.push((intake.clone(), after.clone()));
            after
        })
    }

    async fn work_out(&self, intake: &Intake, basis: &Basis, pause: &impl AsyncFn()) -> Outcome {
        let options = self.0.borrow().options.clone();
        let advice = advise_between(intake, &options, basis.seen(), pause);
        basis.outcome(advice.await)
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
    /// What there is to work out advice from: the rides there are, as far as they hold, else what shows standing still.
    fn basis(&mut self, intake: &Intake) -> Basis {
        if let Some(rides) = &self.rides {
            let ridden = || Rc::clone(&rides.ridden);
            match keep(&rides.on, intake) {
                Keep::Good => return Basis::Ridden(ridden(), Stand::Ridden),
                Keep::UntilRidden => return Basis::Ridden(ridden(), Stand::RiddenBefore),
                Keep::Not => (),
            }
        }
        Basis::Still(self.still(intake))
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

    /// What was told on these answers, where they are the last asked about.
    fn asked_last(&self, intake: &Intake) -> Option<&Outcome> {
        let (on, outcome) = self.told.last()?;
        (on == intake).then_some(outcome)
    }

    /// Whether it knows of these very rides of these answers.
    fn has(&self, intake: &Intake, ridden: &Ridden) -> bool {
        let rides = self.rides.as_ref();
        rides.is_some_and(|rides| keep(&rides.on, intake) == Keep::Good && *rides.ridden == *ridden)
    }
}

/// What advice is worked out from.
#[derive(Debug)]
enum Basis {
    /// What shows standing still.
    Still(Rc<Still>),
    /// Rides, and how far they hold.
    Ridden(Rc<Ridden>, Stand),
}

impl Basis {
    /// Whether it is the very same.
    fn is(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Still(one), Self::Still(two)) => Rc::ptr_eq(one, two),
            (Self::Ridden(one, stand), Self::Ridden(two, other)) => {
                Rc::ptr_eq(one, two) && stand == other
            }
            _ => false,
        }
    }

    fn seen(&self) -> Seen<'_> {
        match self {
            Self::Still(still) => Seen::Still(still),
            Self::Ridden(ridden, _) => Seen::Ridden(ridden),
        }
    }

    fn outcome(&self, advice: Result<Advice, IntakeError>) -> Outcome {
        let stand = match self {
            Self::Still(_) => Stand::Still,
            Self::Ridden(_, stand) => *stand,
        };
        match advice {
            Ok(advice) => Outcome::Advice(Rc::new(advice), stand),
            Err(error) => Outcome::Refused(Rc::new(error)),
        }
    }
}

/// What to say to answers that do not pass their checks, which may not be fit to stand.
fn refused(intake: &Intake) -> Option<Outcome> {
    check(intake)
        .err()
        .map(|error| Outcome::Refused(Rc::new(error)))
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
mod tests;
