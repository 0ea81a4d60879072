//! What an answer moved: each leading cause before and after.

use sagwright_core::advice::{CauseFinding, NextCheck};
use sagwright_core::cause::Cause;
use sagwright_core::words::Text;

use crate::advice_page::{Voice, chance};
use crate::state::Page;

/// A change smaller than this is not worth a sentence.
const TELLING: f64 = 0.03;
/// A cause less likely than this before and after is not shown.
const SHOWN_FROM: f64 = 0.05;
/// How many causes are shown; more do not fit beside the check.
const MOST_SHOWN: usize = 4;

/// What one answer did to the belief.
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// The page of the answer.
    pub page: Page,
    /// Whether it was taken back.
    pub back: bool,
    /// The causes, likeliest now first.
    pub shifts: Vec<Shift>,
}

/// One cause before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Shift {
    /// Which.
    pub cause: Cause,
    /// Its name.
    pub name: Text,
    /// Its chance before, 0 to 1.
    pub before: f64,
    /// Its chance now, 0 to 1.
    pub after: f64,
}

impl Shift {
    fn by(&self) -> f64 {
        self.after - self.before
    }
}

impl Moved {
    /// Compares the causes before and after an answer.
    pub fn between(
        page: Page,
        back: bool,
        before: &[CauseFinding],
        after: &[CauseFinding],
    ) -> Self {
        let chance_in = |causes: &[CauseFinding], cause: Cause| {
            let found = causes.iter().find(|finding| finding.cause == cause);
            // A cause that is not listed is next to impossible.
            found.map_or(0.0, |finding| finding.probability)
        };
        let gone = before
            .iter()
            .filter(|finding| after.iter().all(|other| other.cause != finding.cause));
        let mut shifts: Vec<Shift> = after
            .iter()
            .chain(gone)
            .map(|finding| Shift {
                cause: finding.cause,
                name: finding.name.clone(),
                before: chance_in(before, finding.cause),
                after: chance_in(after, finding.cause),
            })
            .collect();
        shifts.sort_by(|one, two| two.after.total_cmp(&one.after));
        Self { page, back, shifts }
    }

    /// The chance that a cause had before.
    pub fn before(&self, cause: Cause) -> Option<f64> {
        let shift = self.shifts.iter().find(|shift| shift.cause == cause)?;
        Some(shift.before)
    }

    /// The causes to show: those that lead now, and those that have fallen furthest from where they stood.
    pub fn shown(&self) -> Vec<&Shift> {
        let mut worth: Vec<&Shift> = self
            .shifts
            .iter()
            .filter(|shift| shift.before.max(shift.after) >= SHOWN_FROM)
            .collect();
        let weight = |shift: &Shift| shift.before.max(shift.after) + shift.by().abs();
        worth.sort_by(|one, two| weight(two).total_cmp(&weight(one)));
        worth.truncate(MOST_SHOWN);
        worth.sort_by(|one, two| two.after.total_cmp(&one.after));
        worth
    }

    /// All of it in one sentence, and what comes next.
    pub fn sentence(&self, voice: &Voice, next: Option<&NextCheck>) -> String {
        let furthest = self
            .shifts
            .iter()
            .max_by(|one, two| one.by().abs().total_cmp(&two.by().abs()));
        let key = match furthest {
            Some(shift) if shift.by() >= TELLING => "advice.moved.up",
            Some(shift) if shift.by() <= -TELLING => "advice.moved.down",
            _ => "advice.moved.little",
        };
        let raw = |text: String| sagwright_core::words::Arg::Raw(text);
        let mut told = Text::new(key).with("check", name(self.page).into());
        if let Some(shift) = furthest {
            told = told
                .with("cause", shift.name.clone().into())
                .with("before", raw(chance(voice, shift.before)))
                .with("after", raw(chance(voice, shift.after)));
        }
        let what = if self.back {
            Text::new("advice.moved.back").with("told", told.into())
        } else {
            told
        };
        let next = match next.and_then(|check| check.question) {
            Some(question) => {
                Text::new("advice.moved.next").with("check", name(Page::Ask(question)).into())
            }
            None => Text::new("advice.moved.last"),
        };
        voice.say(
            &Text::new("advice.moved.sentence")
                .with("told", what.into())
                .with("next", next.into()),
        )
    }
}

/// What a page is about, in two or three words.
pub fn name(page: Page) -> Text {
    Text::new(format!("answers.{}", page.question().word()))
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::Question;

    use super::*;
    use crate::advice_page::test_voice;

    fn finding(cause: Cause, probability: f64) -> CauseFinding {
        let name = Text::new(format!("cause.{}.name", cause.word()));
        CauseFinding {
            cause,
            what: name.clone(),
            feel: name.clone(),
            confirm: name.clone(),
            cures: name.clone(),
            chance: name.clone(),
            name,
            probability,
            evidence_for: Vec::new(),
            evidence_against: Vec::new(),
        }
    }

    fn moved(before: &[(Cause, f64)], after: &[(Cause, f64)]) -> Moved {
        let list = |all: &[(Cause, f64)]| -> Vec<CauseFinding> {
            all.iter().map(|(cause, p)| finding(*cause, *p)).collect()
        };
        let page = Page::Ask(Question::PushTest);
        Moved::between(page, false, &list(before), &list(after))
    }

    const DRY: Cause = Cause::ForkFriction;
    const BOUND: Cause = Cause::ForkBound;

    #[test]
    fn causes_are_compared_whether_listed_before_or_after() {
        let moved = moved(
            &[(DRY, 0.4), (Cause::GasHigh, 0.3)],
            &[(BOUND, 0.7), (DRY, 0.2)],
        );
        assert_eq!(moved.before(DRY), Some(0.4));
        assert_eq!(moved.before(BOUND), Some(0.0));
        let order: Vec<Cause> = moved.shown().iter().map(|shift| shift.cause).collect();
        assert_eq!(order, [BOUND, DRY, Cause::GasHigh]);
    }

    #[test]
    fn a_cause_that_has_fallen_far_is_shown_before_one_that_never_counted() {
        let small = [Cause::TyreHigh, Cause::TyreLow, Cause::HeadBearings, BOUND];
        let mut before: Vec<(Cause, f64)> = small.iter().map(|cause| (*cause, 0.10)).collect();
        before.push((DRY, 0.6));
        let mut after: Vec<(Cause, f64)> = small.iter().map(|cause| (*cause, 0.11)).collect();
        after.push((DRY, 0.02));
        let moved = moved(&before, &after);
        assert_eq!(moved.shown().len(), MOST_SHOWN);
        assert_eq!(moved.shown().last().map(|shift| shift.cause), Some(DRY));
    }

    #[test]
    fn the_sentence_tells_what_moved_furthest() {
        let voice = test_voice();
        let up = moved(&[(DRY, 0.3), (BOUND, 0.2)], &[(DRY, 0.6), (BOUND, 0.1)]);
        let said = up.sentence(&voice, None);
        assert!(said.contains("60") && said.contains("30"), "{said}");
        let little = moved(&[(DRY, 0.30)], &[(DRY, 0.31)]);
        assert_ne!(little.sentence(&voice, None), said);
        let back = Moved { back: true, ..up };
        assert_ne!(back.sentence(&voice, None), said);
    }
}
