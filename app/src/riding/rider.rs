//! The one who rides for all pages: one worker, kept between rides, and the last result.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::timers::callback::Timeout;
use sagwright_core::advice::Ridden;
use sagwright_core::intake::{Intake, write};
use yew::Callback;

use super::link::{Heard, Link};
use super::message::Told;
use super::ride::{Event, Why};

/// How long a worker may say nothing before it is given up, ms. Each report stands for a batch of rides, so even a
/// slow phone speaks many times as often.
const SILENCE_MS: u32 = 30_000;

/// Shared by all pages; clones are the same rider.
#[derive(Debug, Clone, Default)]
pub struct Rider(Rc<RefCell<Inner>>);

#[derive(Debug, Default)]
struct Inner {
    link: Option<Link>,
    /// Whether the worker at the other end hears.
    ready: bool,
    /// The document to send as soon as it does.
    waiting: Option<String>,
    job: Option<Job>,
    /// Runs out when the worker has said nothing for too long.
    patience: Option<Timeout>,
    /// The last answers ridden to the end, and what came of it.
    last: Option<(Intake, Option<Box<Ridden>>)>,
}

/// What the worker is busy with.
#[derive(Debug)]
struct Job {
    intake: Intake,
    told: Callback<Event>,
}

impl PartialEq for Rider {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Rider {
    /// Rides out `intake`; `told` hears all that follows. What was being ridden before is dropped, and answers that
    /// were ridden to the end last are not ridden again.
    pub fn ride(&self, intake: &Intake, told: &Callback<Event>) {
        self.stop();
        if let Some(done) = self.known(intake) {
            told.emit(Event::Begun);
            told.emit(Event::Told(done));
            return;
        }
        let document = write(intake);
        let (Ok(document), true) = (document, self.has_worker()) else {
            told.emit(Event::Begun);
            told.emit(Event::Stopped(Why::NoWorker));
            return;
        };
        {
            let mut inner = self.0.borrow_mut();
            inner.job = Some(Job {
                intake: intake.clone(),
                told: told.clone(),
            });
            inner.patience = Some(self.patience());
            match (&inner.link, inner.ready) {
                (Some(link), true) => link.send(&document),
                _ => inner.waiting = Some(document),
            }
        }
        told.emit(Event::Begun);
    }

    /// Drops what is being ridden. A busy worker hears nothing, so it is ended; an idle one is kept.
    pub fn stop(&self) {
        let mut inner = self.0.borrow_mut();
        if inner.job.take().is_some() {
            inner.dismiss();
        }
    }

    /// What came of these answers, if they were ridden to the end last.
    fn known(&self, intake: &Intake) -> Option<Told> {
        let inner = self.0.borrow();
        let (on, ridden) = inner.last.as_ref()?;
        (on == intake).then(|| Told::Done(ridden.clone()))
    }

    /// Makes sure of a worker; `false` where the browser gives none.
    fn has_worker(&self) -> bool {
        if self.0.borrow().link.is_some() {
            return true;
        }
        let rider = self.clone();
        let link = Link::open(&Callback::from(move |heard| rider.hear(heard)));
        let mut inner = self.0.borrow_mut();
        inner.ready = false;
        inner.link = link;
        inner.link.is_some()
    }

    fn hear(&self, heard: Heard) {
        match heard {
            Heard::Broke => self.give_up(Why::Broke),
            Heard::Told(told) => self.take(told),
        }
    }

    fn take(&self, told: Told) {
        let page = {
            let mut inner = self.0.borrow_mut();
            match &told {
                Told::Ready => {
                    inner.ready = true;
                    if let (Some(document), Some(link)) = (inner.waiting.take(), &inner.link) {
                        link.send(&document);
                    }
                }
                Told::Riding(_) => {
                    if inner.job.is_some() {
                        inner.patience = Some(self.patience());
                    }
                }
                Told::Done(_) => inner.patience = None,
            }
            inner.job.as_ref().map(|job| job.told.clone())
        };
        if let Told::Done(ridden) = &told {
            let mut inner = self.0.borrow_mut();
            if let Some(job) = inner.job.take() {
                inner.last = Some((job.intake, ridden.clone()));
            }
        }
        if let Some(page) = page {
            page.emit(Event::Told(told));
        }
    }

    /// Ends the worker and says why. The next ride starts another.
    fn give_up(&self, why: Why) {
        let job = {
            let mut inner = self.0.borrow_mut();
            inner.dismiss();
            inner.job.take()
        };
        if let Some(job) = job {
            job.told.emit(Event::Stopped(why));
        }
    }

    fn patience(&self) -> Timeout {
        let rider = self.clone();
        Timeout::new(SILENCE_MS, move || rider.give_up(Why::Silent))
    }
}

impl Inner {
    fn dismiss(&mut self) {
        self.link = None;
        self.ready = false;
        self.waiting = None;
        self.patience = None;
    }
}
