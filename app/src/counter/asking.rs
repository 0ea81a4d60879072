//! Advice on one or several sets of answers, held against each other: at once from statics, then from rides.

use std::cell::Cell;
use std::rc::Rc;

use futures_channel::oneshot;
use gloo::timers::future::TimeoutFuture;
use sagwright_core::advice::Ridden;
use sagwright_core::intake::Intake;
use sagwright_core::workshop::Workshop;
use yew::prelude::*;

use crate::advising::{Adviser, Outcome};
use crate::riding::{Event, Rider, Told};
use crate::tasks::{begin, breath};

/// Long enough for the page to draw between two pieces of work.
const BREATH_MS: u32 = 20;

/// What has been worked out so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Answered {
    /// The advice on each set of answers, in their order; `None` until it is there.
    pub outcomes: Vec<Option<Outcome>>,
    /// Whether more is to come.
    pub busy: bool,
}

/// Has these answers advised on. Each set has an adviser of its own, so that rides of one are not taken for the other's.
#[hook]
pub fn use_answered(
    rider: &Rider,
    intakes: &Rc<Vec<Intake>>,
    workshop: Option<&Rc<Workshop>>,
) -> Answered {
    let answered = use_state_eq(Answered::default);
    let (rider, set) = (rider.clone(), answered.setter());
    use_effect_with(
        (Rc::clone(intakes), workshop.cloned()),
        move |(intakes, workshop)| {
            let asking = Asking {
                intakes: Rc::clone(intakes),
                workshop: workshop.as_deref().cloned(),
                rider: rider.clone(),
                set,
            };
            let work = begin(asking.answer());
            move || {
                work.abort();
                // Whoever leaves the page no longer waits.
                rider.stop();
            }
        },
    );
    (*answered).clone()
}

struct Asking {
    intakes: Rc<Vec<Intake>>,
    workshop: Option<Workshop>,
    rider: Rider,
    set: UseStateSetter<Answered>,
}

impl Asking {
    async fn answer(self) {
        let intakes = self.intakes.iter();
        let asked: Vec<(Adviser, &Intake)> = intakes
            .map(|intake| (Adviser::of(self.workshop.clone()), intake))
            .collect();
        let mut outcomes = vec![None; asked.len()];
        self.show(&outcomes, true);
        for (outcome, (adviser, intake)) in outcomes.iter_mut().zip(&asked) {
            TimeoutFuture::new(BREATH_MS).await;
            *outcome = Some(adviser.ask(intake, breath).await);
        }
        self.show(&outcomes, true);
        for at in 0..asked.len() {
            let Some((adviser, intake)) = asked.get(at) else {
                break;
            };
            let ridden = ride(&self.rider, intake).await;
            // Where nothing could be ridden, what shows standing still is the answer.
            if let Some(ridden) = ridden
                && let Some(refined) = adviser.refine(intake, ridden, breath).await
                && let Some(outcome) = outcomes.get_mut(at)
            {
                *outcome = Some(refined);
            }
            self.show(&outcomes, at + 1 < asked.len());
        }
    }

    fn show(&self, outcomes: &[Option<Outcome>], busy: bool) {
        self.set.set(Answered {
            outcomes: outcomes.to_vec(),
            busy,
        });
    }
}

/// Rides one set of answers out; `None` where that cannot be done.
async fn ride(rider: &Rider, intake: &Intake) -> Option<Rc<Ridden>> {
    let (answer, answered) = oneshot::channel();
    let answer = Cell::new(Some(answer));
    let told = Callback::from(move |event: Event| {
        let ridden = match event {
            Event::Told(Told::Done(ridden)) | Event::Known(ridden) => ridden,
            Event::Stopped(_) => None,
            Event::Begun | Event::Told(_) => return,
        };
        if let Some(answer) = answer.take() {
            // Nobody is left to hear it when the page has gone on.
            answer.send(ridden).ok();
        }
    });
    rider.ride(intake, &told);
    drop(told);
    answered.await.ok().flatten()
}
