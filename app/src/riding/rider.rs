//! The one who rides for all pages: one worker, kept between rides, and the last result.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::timers::callback::Timeout;
use sagwright_core::advice::what_if::Trying;
use sagwright_core::advice::{Keep, Ridden, keep};
use sagwright_core::intake::{Intake, write};
use yew::Callback;

use super::link::{Heard, Link};
use super::message::{Asked, Told};
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
    /// What has been read off the line and is still to be taken in.
    arriving: Option<Timeout>,
    /// The answers ridden to the end, the last ones first, and what came of it.
    done: Vec<(Intake, Option<Rc<Ridden>>)>,
}

/// Rides remembered: those of the bike as it is, and of the bike before an answer that may be taken back.
const MOST_KEPT: usize = 2;

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
    /// Rides out `intake`; `told` hears all that follows. Rides under way go on where `intake` leaves them good, and are
    /// dropped where not; what was ridden to the end lately is not ridden again.
    pub fn ride(&self, intake: &Intake, told: &Callback<Event>) {
        if self.goes_on(intake, told) {
            return;
        }
        self.stop();
        if let Some(known) = self.known(intake) {
            told.emit(known);
            return;
        }
        let document = document(intake, None);
        let (Some(document), true) = (document, self.has_worker()) else {
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

    /// Whether the rides under way are good for these answers too; then it is about these that they are told.
    fn goes_on(&self, intake: &Intake, told: &Callback<Event>) -> bool {
        let mut inner = self.0.borrow_mut();
        let job = inner.job.as_mut();
        let Some(job) = job.filter(|job| keep(&job.intake, intake) == Keep::Good) else {
            return false;
        };
        job.intake = intake.clone();
        job.told = told.clone();
        true
    }

    /// What came of these answers, if they were ridden to the end lately.
    fn known(&self, intake: &Intake) -> Option<Event> {
        let inner = self.0.borrow();
        let mut done = inner.done.iter();
        let known = done.find(|(on, _)| keep(on, intake) == Keep::Good);
        known.map(|(_, ridden)| Event::Known(ridden.clone()))
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
            Heard::Told(told @ Told::Done(_)) => {
                // Reading so much off the line was a task already, and what it leads to is another.
                let rider = self.clone();
                let task = Timeout::new(0, move || rider.take(told));
                self.0.borrow_mut().arriving = Some(task);
            }
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
                Told::Done(_) | Told::Tried(_) => inner.patience = None,
            }
            inner.job.as_ref().map(|job| job.told.clone())
        };
        if let Told::Done(ridden) = &told {
            let mut inner = self.0.borrow_mut();
            if let Some(job) = inner.job.take() {
                inner.done.insert(0, (job.intake, ridden.clone()));
                inner.done.truncate(MOST_KEPT);
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

/// What to send a worker that is to ride these answers, with something tried on that bike or without.
pub fn document(intake: &Intake, trying: Option<Trying>) -> Option<String> {
    let intake = write(intake).ok()?;
    Asked { intake, trying }.to_text().ok()
}

impl Inner {
    fn dismiss(&mut self) {
        self.link = None;
        self.ready = false;
        self.waiting = None;
        self.patience = None;
        self.arriving = None;
    }
}
