//! The kinds and counts that an answer nobody gave could have been.

use super::input::FOUR_IN_FIVE;
use crate::bike::Class;
use crate::intake::{Posture, Share, Terrain};
use crate::stance::clickers::CLICK;
use crate::stance::loads::Load;

/// Whole numbers from `first` to `last`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    first: u8,
    last: u8,
}

/// Clicks of an adjuster nobody counted.
pub const CLICKS: Counts = Counts {
    first: Class::CLICKS.low,
    last: Class::CLICKS.high,
};
/// Quarter turns of a high-speed adjuster nobody counted: half as many as there are clicks, as is usual.
pub const QUARTER_TURNS: Counts = Counts {
    first: Class::CLICKS.low / 2,
    last: Class::CLICKS.high / 2,
};

impl Counts {
    /// How many there are.
    pub const fn len(self) -> usize {
        (self.last - self.first) as usize + 1
    }

    /// The one numbered `at` from 0, the last for any beyond.
    pub fn nth(self, at: f64) -> u8 {
        let wanted = (self.first..=self.last).nth(whole(at));
        wanted.unwrap_or(self.last)
    }
}

/// One standard deviation of the logarithm of what a click is worth: four in five lie within what practice knows.
pub fn click_deviation() -> f64 {
    0.5 * libm::log(CLICK.high / CLICK.low) / FOUR_IN_FIVE
}

/// The one numbered `at` from 0.
pub fn nth<T>(kinds: &[T], at: f64) -> Option<&T> {
    kinds.get(whole(at))
}

/// The same load in the posture numbered `at`.
pub fn put_posture(load: &mut Load, at: f64) {
    if let Some(posture) = nth(Posture::ALL, at) {
        *load = Load::of(load.rider, *posture, load.fuel);
    }
}

/// Even ground first, then plenty of each kind in turn.
pub fn ground(at: f64) -> Vec<(Terrain, Share)> {
    let kind = whole(at)
        .checked_sub(1)
        .and_then(|kind| Terrain::ALL.get(kind));
    kind.map(|kind| (*kind, Share::Lot)).into_iter().collect()
}

/// The whole number below; 0 for any that is negative or no number at all.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from f64 saturates, which is what is wanted"
)]
fn whole(at: f64) -> usize {
    at as usize
}
