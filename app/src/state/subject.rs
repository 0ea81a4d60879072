//! What a check finds out, and what keeps its answer from being used.

use sagwright_core::intake::{Change, Look};
use sagwright_core::words::Text;

use super::order::Page;
use super::slot::Slot;
use super::trouble::{Trouble, troubles};
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
        if let Self::Page(page) = self {
            return troubles(wizard, page);
        }
        let slots = self.slots(wizard);
        if slots.iter().any(|slot| slot.get(wizard).is_some()) {
            return Vec::new();
        }
        let key = match self {
            Self::Lap(_) => "trouble.groups-empty",
            _ => "trouble.pick-one",
        };
        vec![Trouble {
            at: "first-answer",
            text: Text::new(key),
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
