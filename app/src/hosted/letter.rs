//! Answers on their way to a workshop, and when to try again.

use serde::{Deserialize, Serialize};

use super::wire::Answered;
use crate::store::{Kind, Record};

/// How long to wait after each try that came to nothing, s; after the last one, as long again each time.
const PAUSES: [u32; 6] = [5, 20, 60, 300, 900, 1800];

/// The longest wait that a workshop may ask for, s.
const LONGEST_PAUSE: u32 = 3600;

/// How long a page that tries has the letter to itself, ms: longer than any try lasts, so that two pages do not try at once,
/// and short enough that a page closed meanwhile holds nothing up for long.
const HELD_MS: f64 = 20_000.0;

/// What has become of a letter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// It has still to be sent.
    Waiting,
    /// The workshop has it. Its text is gone from here.
    Arrived,
    /// The workshop refuses it, with this status; trying again by itself would change nothing.
    Refused(u16),
}

/// One parcel for one address.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Letter {
    /// Where it goes.
    pub address: String,
    /// The workshop's name.
    pub workshop: String,
    /// The text that is sent, as it was shown; empty once it has arrived.
    pub text: String,
    /// What has become of it.
    pub state: State,
    /// How often it was tried.
    pub tries: u32,
    /// Not to be tried before, ms since 1970.
    pub not_before: f64,
    /// A page is trying until then, ms since 1970.
    pub held_until: f64,
    /// When it last changed, ms since 1970.
    pub changed: f64,
}

impl Record for Letter {
    const KIND: Kind = Kind::Outbox;
}

impl Letter {
    /// A letter to be sent at once.
    pub fn new(address: String, workshop: String, text: String, now: f64) -> Self {
        Self {
            address,
            workshop,
            text,
            state: State::Waiting,
            tries: 0,
            not_before: now,
            held_until: 0.0,
            changed: now,
        }
    }

    /// When it may next be tried; `None` where it is not waiting.
    pub fn due(&self) -> Option<f64> {
        (self.state == State::Waiting).then(|| self.not_before.max(self.held_until))
    }

    /// Whether a page is trying it just now. Then its word is on the way, and nobody else may write over it.
    pub fn is_held(&self, now: f64) -> bool {
        self.held_until > now
    }

    /// The letter while it is being tried.
    #[must_use]
    pub fn held(&self, now: f64) -> Self {
        Self {
            tries: self.tries.saturating_add(1),
            held_until: now + HELD_MS,
            ..self.clone()
        }
    }

    /// The letter to be tried at once, as the rider asks or as the network is back.
    #[must_use]
    pub fn at_once(&self, now: f64) -> Self {
        Self {
            state: State::Waiting,
            not_before: now,
            ..self.clone()
        }
    }

    /// The letter after a try.
    #[must_use]
    pub fn after(&self, answered: &Answered, now: f64) -> Self {
        let mut next = Self {
            held_until: 0.0,
            changed: now,
            ..self.clone()
        };
        let wait = match answered {
            Answered::With(200..=299, ..) => {
                next.state = State::Arrived;
                next.text.clear();
                return next;
            }
            // Too early, too many, too slow, or trouble of its own: each passes.
            Answered::With(408 | 425 | 429 | 500.., wait, _) => *wait,
            Answered::With(status, ..) => {
                next.state = State::Refused(*status);
                return next;
            }
            Answered::Nothing => None,
        };
        let tried = usize::try_from(self.tries.saturating_sub(1)).unwrap_or(usize::MAX);
        let pause = PAUSES[tried.min(PAUSES.len() - 1)];
        let pause = wait.map_or(pause, |wait| wait.clamp(pause, LONGEST_PAUSE.max(pause)));
        next.not_before = now + f64::from(pause) * 1000.0;
        next
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn letter() -> Letter {
        Letter::new("/in".into(), "A".into(), "{}".into(), 1000.0)
    }

    fn with(status: u16) -> Answered {
        Answered::With(status, None, String::new())
    }

    #[test]
    fn what_arrived_leaves_no_text_behind_and_what_did_not_stays_whole() {
        let held = letter().held(1000.0);
        let arrived = held.after(&with(204), 2000.0);
        assert_eq!((arrived.state, arrived.text.as_str()), (State::Arrived, ""));
        for answered in [
            with(500),
            with(503),
            with(429),
            with(408),
            Answered::Nothing,
        ] {
            let waits = held.after(&answered, 2000.0);
            assert_eq!((&waits.state, waits.text.as_str()), (&State::Waiting, "{}"));
            assert_eq!(waits.due(), Some(7000.0));
        }
        for status in [301, 400, 401, 404, 413, 422] {
            let refused = held.after(&with(status), 2000.0);
            assert_eq!(refused.state, State::Refused(status));
            assert_eq!((refused.due(), refused.text.as_str()), (None, "{}"));
            assert_eq!(refused.at_once(3000.0).due(), Some(3000.0));
        }
    }

    #[test]
    fn each_wait_is_longer_until_the_longest() {
        let (mut now, mut last, mut letter) = (0.0, 0.0, letter());
        for _ in 0..10 {
            letter = letter.held(now).after(&Answered::Nothing, now);
            let wait = letter.not_before - now;
            assert!(wait >= last && wait <= 1_800_000.0, "{wait}");
            (now, last) = (letter.not_before, wait);
        }
        assert!((last - 1_800_000.0).abs() < 1.0);
    }

    #[test]
    fn the_workshop_may_ask_for_a_longer_wait_within_an_hour() {
        let held = letter().held(0.0);
        for (asked, waits) in [(2, 5_000.0), (60, 60_000.0), (9_999_999, 3_600_000.0)] {
            let next = held.after(&Answered::With(503, Some(asked), String::new()), 0.0);
            assert_eq!(next.due(), Some(waits));
        }
    }

    #[test]
    fn a_letter_that_is_being_tried_is_not_due_for_another_page() {
        let held = letter().held(1000.0);
        assert_eq!(held.due(), Some(21_000.0));
        assert_eq!(held.at_once(2000.0).due(), Some(21_000.0));
        assert!(held.is_held(2000.0) && !held.is_held(21_000.0) && !letter().is_held(1000.0));
        let arrived = held.after(&with(204), 2000.0);
        assert!(!arrived.is_held(2000.0));
    }
}
