//! How far the rides have come, and what follows from what is heard.

use std::rc::Rc;

use sagwright_core::advice::{Progress, Ridden};
use yew::Reducible;

use super::message::Told;

/// Where the rides stand.
#[derive(Debug, Clone, PartialEq)]
pub enum Ride {
    /// Not begun.
    Waiting,
    /// Under way; nothing is known of its length before the first report.
    Riding(Option<Progress>),
    /// Ridden to the end; `None` where nothing could be ridden.
    Done(Option<Rc<Ridden>>),
    /// Ended before its end.
    Stopped(Why),
}

/// Why rides ended before their end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// The rider stopped them.
    Cancelled,
    /// The worker broke.
    Broke,
    /// The worker said nothing for too long.
    Silent,
    /// The browser gave no worker.
    NoWorker,
}

/// What can happen to rides.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// They begin.
    Begun,
    /// These answers were ridden to the end before; `None` where nothing could be ridden.
    Known(Option<Rc<Ridden>>),
    /// The worker says something.
    Told(Told),
    /// They end before their end.
    Stopped(Why),
}

impl Ride {
    /// Where they stand after `event`.
    #[must_use]
    pub fn after(&self, event: Event) -> Self {
        match (self, event) {
            (_, Event::Begun) => Self::Riding(None),
            (Self::Riding(_), Event::Told(Told::Riding(progress))) => Self::Riding(Some(progress)),
            (_, Event::Known(ridden)) | (Self::Riding(_), Event::Told(Told::Done(ridden))) => {
                Self::Done(ridden)
            }
            (Self::Riding(_), Event::Stopped(why)) => Self::Stopped(why),
            // What ended stays ended, whatever was still on its way.
            (ride, Event::Told(_) | Event::Stopped(_)) => ride.clone(),
        }
    }

    /// Whether a worker is busy with them.
    pub fn is_riding(&self) -> bool {
        matches!(self, Self::Riding(_))
    }

    /// The part ridden, 0 to 1; `None` while it cannot be known.
    pub fn part(&self) -> Option<f64> {
        match self {
            Self::Riding(progress) => progress.as_ref()?.part(),
            Self::Waiting | Self::Done(_) | Self::Stopped(_) => None,
        }
    }
}

impl Reducible for Ride {
    type Action = Event;

    fn reduce(self: Rc<Self>, event: Event) -> Rc<Self> {
        Rc::new(self.after(event))
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::words::Text;

    use super::*;

    fn report(done: u32, of: u32) -> Event {
        let trying = Text::new("x");
        Event::Told(Told::Riding(Progress { done, of, trying }))
    }

    #[test]
    fn rides_go_from_beginning_to_end() {
        let ride = Ride::Waiting.after(Event::Begun);
        assert_eq!(ride, Ride::Riding(None));
        assert_eq!(ride.part(), None);
        let ride = ride.after(Event::Told(Told::Ready));
        assert!(ride.is_riding());
        let ride = ride.after(report(120, 480));
        assert_eq!(ride.part(), Some(0.25));
        let ride = ride.after(Event::Told(Told::Done(None)));
        assert_eq!(ride, Ride::Done(None));
        assert!(!ride.is_riding());
        assert_eq!(Ride::Waiting.after(Event::Known(None)), Ride::Done(None));
    }

    #[test]
    fn what_comes_late_changes_nothing() {
        for why in [Why::Cancelled, Why::Broke, Why::Silent, Why::NoWorker] {
            let stopped = Ride::Riding(None).after(Event::Stopped(why));
            assert_eq!(stopped, Ride::Stopped(why));
            assert_eq!(stopped.after(report(1, 2)), stopped);
            assert_eq!(stopped.after(Event::Told(Told::Done(None))), stopped);
            assert_eq!(stopped.after(Event::Stopped(Why::Silent)), stopped);
        }
        let done = Ride::Done(None);
        assert_eq!(done.after(Event::Stopped(Why::Silent)), done);
        assert_eq!(done.after(report(1, 2)), done);
        assert_eq!(Ride::Waiting.after(report(1, 2)), Ride::Waiting);
    }

    #[test]
    fn rides_can_be_ridden_again_after_any_end() {
        for end in [
            Ride::Done(None),
            Ride::Stopped(Why::Cancelled),
            Ride::Stopped(Why::Broke),
        ] {
            assert_eq!(end.after(Event::Begun), Ride::Riding(None));
        }
    }

    #[test]
    fn a_part_is_never_more_than_the_whole() {
        assert_eq!(Ride::Riding(None).after(report(9, 8)).part(), Some(1.0));
        assert_eq!(Ride::Riding(None).after(report(0, 0)).part(), None);
    }
}
