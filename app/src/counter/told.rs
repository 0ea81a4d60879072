//! Something told at the counter, and when: of two copies of a desk the later word counts.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A moment by the device's clock, milliseconds since 1970.
pub type Moment = u64;

/// What was told last, and when.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Told<T> {
    /// What was told.
    pub is: T,
    /// When.
    pub at: Moment,
}

impl<T: PartialEq + Serialize> Told<T> {
    /// Told at that moment.
    pub const fn new(is: T, at: Moment) -> Self {
        Self { is, at }
    }

    /// Takes in what another copy was told, where that is later. Of two that were told in the same millisecond the one
    /// that sorts later as text counts, so that both copies choose the same.
    pub fn take_in(&mut self, other: &Self)
    where
        T: Clone,
    {
        let later = match other.at.cmp(&self.at) {
            std::cmp::Ordering::Equal => as_text(&other.is) > as_text(&self.is),
            order => order.is_gt(),
        };
        if later {
            self.clone_from(other);
        }
    }
}

fn as_text<T: Serialize>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

/// Takes in every entry of another copy: new names are added, of known ones the later word counts.
pub fn take_in_all<T: Clone + PartialEq + Serialize>(
    own: &mut BTreeMap<String, Told<T>>,
    others: &BTreeMap<String, Told<T>>,
) {
    for (name, other) in others {
        match own.get_mut(name) {
            Some(told) => told.take_in(other),
            None => {
                own.insert(name.clone(), other.clone());
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_later_word_counts_and_in_a_draw_both_sides_choose_alike() {
        let (early, late) = (Told::new("soft", 1), Told::new("firm", 2));
        for (mut one, two) in [(early.clone(), late.clone()), (late.clone(), early.clone())] {
            one.take_in(&two);
            assert_eq!(one, late);
        }
        let (a, b) = (Told::new("firm", 5), Told::new("soft", 5));
        let (mut left, mut right) = (a.clone(), b.clone());
        left.take_in(&b);
        right.take_in(&a);
        assert_eq!(left, right);
    }
}
