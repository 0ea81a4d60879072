//! What a workshop's document means for its riders.

use super::document::{Units, Workshop};
use crate::intake::BikeClass;
use crate::quantity::{Dimension, Unit, UnitSet};
use crate::remedy::catalogue::CATALOGUE;
use crate::remedy::{RemedyId, Tier};
use crate::words::Language;

impl Workshop {
    /// Whether it does this, or leaves it to the rider: what is only set or adjusted needs no workshop.
    pub fn offers(&self, remedy: RemedyId) -> bool {
        let listed = self.remedies.as_ref();
        let adjusts = |id| {
            CATALOGUE
                .iter()
                .any(|one| one.id == id && one.tier == Tier::Adjust)
        };
        listed.is_none_or(|list| list.contains(&remedy)) || adjusts(remedy)
    }

    /// Whether it works on bikes of this kind.
    pub fn serves(&self, class: BikeClass) -> bool {
        let listed = self.classes.as_ref();
        listed.is_none_or(|list| list.contains(&class))
    }

    /// The languages it offers, the first one first.
    pub fn spoken(&self) -> &[Language] {
        if self.languages.is_empty() {
            Language::ALL
        } else {
            &self.languages
        }
    }
}

impl Units {
    /// Each unit that is told, with what it measures.
    pub fn told(&self) -> Vec<(Dimension, Unit)> {
        fn of<U: UnitSet>(unit: Option<U>) -> Option<(Dimension, Unit)> {
            unit.map(|unit| (U::DIMENSION, unit.unit()))
        }
        [
            of(self.mass),
            of(self.height),
            of(self.length),
            of(self.rate),
            of(self.pressure),
            of(self.temperature),
            of(self.altitude),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
