//! Sags and travel as measured, against where the bike that suits would stand.

use super::measured::{ALWAYS, Reading};
use super::readings::{Reader, against, of_shown};
use crate::intake::{Field, Question};
use crate::quantity::Dimension;
use crate::words::{Arg, Text};

/// Standard deviation of a sag, m: two people with a tape agree to about 4 mm, and friction moves it by some more. Common practice.
const SAG_M: f64 = 0.005;

impl Reader<'_> {
    pub(super) fn fork_rider_sag(&self, usual: f64) -> Option<Reading> {
        let suits = self.baseline.stance.ok()?.ridden.fork.middle.value;
        let now = self.told(Field::ForkRiderSag, suits)?;
        Some(Reading {
            question: Question::SagFront,
            text: against("evidence.fork-rider-sag", now, suits, Dimension::Length),
            off_by: now - usual,
            sigma: SAG_M,
            pushed: of_shown(|shown| shown.ridden_m[0]),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    /// Free sag beside rider sag. The words tell their difference, which is the spring's, since preload moves both.
    pub(super) fn fork_free_sag(&self, usual: f64) -> Option<Reading> {
        let stance = self.baseline.stance.ok()?;
        let [suits_free, suits] = [
            stance.free.fork.middle.value,
            stance.ridden.fork.middle.value,
        ];
        let free = self.told(Field::ForkFreeSag, suits_free)?;
        let ridden = self.told(Field::ForkRiderSag, suits)?;
        Some(Reading {
            question: Question::SagFront,
            text: against(
                "evidence.fork-free-sag",
                ridden - free,
                suits - suits_free,
                Dimension::Length,
            ),
            off_by: free - usual,
            sigma: SAG_M,
            pushed: of_shown(|shown| shown.free_m[0]),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    pub(super) fn rear_rider_sag(&self, usual: f64) -> Option<Reading> {
        let suits = self.baseline.stance.ok()?.ridden.rear.middle.value;
        let now = self.told(Field::RearRiderSag, suits)?;
        Some(Reading {
            question: Question::SagRear,
            text: against("evidence.rear-rider-sag", now, suits, Dimension::Length),
            off_by: now - usual,
            sigma: SAG_M,
            pushed: of_shown(|shown| shown.ridden_m[1]),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    /// As at the front.
    pub(super) fn rear_free_sag(&self, usual: f64) -> Option<Reading> {
        let stance = self.baseline.stance.ok()?;
        let [suits_free, suits] = [
            stance.free.rear.middle.value,
            stance.ridden.rear.middle.value,
        ];
        let free = self.told(Field::RearFreeSag, suits_free)?;
        let ridden = self.told(Field::RearRiderSag, suits)?;
        Some(Reading {
            question: Question::SagRear,
            text: against(
                "evidence.rear-free-sag",
                ridden - free,
                suits - suits_free,
                Dimension::Length,
            ),
            off_by: free - usual,
            sigma: SAG_M,
            pushed: of_shown(|shown| shown.free_m[1]),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    /// A healthy fork uses 85 to 100 % of its travel on the hardest usual hits, without a bang (common practice).
    pub(super) fn travel_used(&self) -> Option<Reading> {
        let of = self.situation.machine.fork_stroke.value;
        let used = self.told(Field::ForkTravelUsed, 0.925 * of)?;
        Some(Reading {
            question: Question::TravelUsed,
            text: Text::new("evidence.travel-used")
                .with("now", Arg::Quantity(used, Dimension::Length))
                .with("of", Arg::Quantity(of, Dimension::Length)),
            off_by: used / of - 0.925,
            sigma: 0.05,
            pushed: of_shown(|shown| shown.travel[0]),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }
}
