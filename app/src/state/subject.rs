//! What a check finds out, and what keeps its answer from being used.

use sagwright_core::intake::{Change, Look};
use sagwright_core::words::Text;

use super::order::Page;
use super::slot::Slot;
use super::trouble::{Trouble, troubles_or};
use super::wizard::Wizard;

/// What an answer is about: a page of the wizard, or something that only a check asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// A page.
    Page(Page),
    /// A look at the parked bike.
    Look(Look),
    /// A lap with one change.
    Lap(Change),
}

impl Subject {
    /// The groups to pick in, where no page has them.
    pub fn slots(self, wizard: &Wizard) -> Vec<Slot> {
        match self {
            Self::Page(_) => Vec::new(),
            Self::Look(look) => vec![Slot::Look(look)],
            Self::Lap(change) => {
                let complaints = wizard.intake.complaints.iter().flatten();
                complaints
                    .map(|complaint| Slot::Lap(change, complaint.feeling))
                    .collect()
            }
        }
    }

    /// Everything that keeps the answer from being used; empty when it can be.
    pub fn troubles(self, wizard: &Wizard) -> Vec<Trouble> {
        const NOTHING_SAID: &str = "checking.empty";
        if let Self::Page(page) = self {
            return troubles_or(wizard, page, NOTHING_SAID);
        }
        let slots = self.slots(wizard);
        if slots.iter().any(|slot| slot.get(wizard).is_some()) {
            return Vec::new();
        }
        vec![Trouble {
            at: "first-answer",
            text: Text::new(NOTHING_SAID),
            offer: None,
        }]
    }

    /// What it is about, in two or three words.
    pub fn name(self) -> Text {
        match self {
            Self::Page(page) => Text::new(format!("answers.{}", page.question().word())),
            Self::Look(look) => Text::new(format!("looking.{}", look.word())),
            Self::Lap(_) => Text::new("checking.lap"),
        }
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::Feeling;

    use super::*;
    use crate::state::{Action, checked_lines};

    #[test]
    fn a_lap_asks_about_every_complaint_and_one_verdict_is_enough() {
        let lap = Subject::Lap(Change::TyresLess);
        let (dives, packs) = (Feeling::Dives, Feeling::Packs);
        let wizard = Wizard::default()
            .after(Action::Feel(dives, true))
            .after(Action::Feel(packs, true));
        assert_eq!(lap.slots(&wizard).len(), 2);
        assert_eq!(lap.troubles(&wizard).len(), 1);
        let verdict = Slot::Lap(Change::TyresLess, packs);
        let wizard = wizard.after(Action::Pick(verdict, "worse"));
        assert!(lap.troubles(&wizard).is_empty());
        assert_eq!(verdict.get(&wizard), Some("worse"));
        assert_eq!(Slot::Lap(Change::TyresLess, dives).get(&wizard), None);
        let told = checked_lines(&wizard);
        // The change, and the one complaint there was a verdict on.
        assert_eq!(told.len(), 1);
        assert_eq!((told[0].0, told[0].1.len()), (lap, 2));
    }

    #[test]
    fn a_look_is_answered_by_yes_or_no() {
        let (look, slot) = (
            Subject::Look(Look::HeadKnocks),
            Slot::Look(Look::HeadKnocks),
        );
        let wizard = Wizard::default();
        assert_eq!(look.troubles(&wizard).len(), 1);
        for word in ["yes", "no"] {
            let wizard = wizard.after(Action::Pick(slot, word));
            assert!(look.troubles(&wizard).is_empty());
            assert_eq!(slot.get(&wizard), Some(word));
        }
    }
}
