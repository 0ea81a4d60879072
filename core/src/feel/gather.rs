//! The small sums the figures are made of.

use crate::lane::Lane;

/// Mean of a signal over the values it was given.
#[derive(Debug, Clone, Copy)]
pub(super) struct Mean<T> {
    sum: T,
    count: T,
}

impl<T: Lane> Mean<T> {
    pub(super) fn new() -> Self {
        Self {
            sum: T::splat(0.0),
            count: T::splat(0.0),
        }
    }

    pub(super) fn add(&mut self, value: T) {
        self.add_where(T::splat(1.0), value);
    }

    /// Counts `value` in the lanes where `here` is 1 and not in those where it is 0.
    pub(super) fn add_where(&mut self, here: T, value: T) {
        self.sum = self.sum + here * value;
        self.count = self.count + here;
    }

    /// The mean, or `otherwise` in lanes that were given nothing.
    pub(super) fn or(&self, otherwise: T) -> T {
        share(self.sum, self.count, otherwise)
    }
}

/// `part` of `whole`, or `otherwise` where the whole is not above 0.
pub(super) fn share<T: Lane>(part: T, whole: T, otherwise: T) -> T {
    let none = T::splat(0.0);
    let safe = whole.if_above(none, whole, T::splat(1.0));
    whole.if_above(none, part / safe, otherwise)
}

/// 1 where `value` is above `limit`, 0 elsewhere.
pub(super) fn above<T: Lane>(value: T, limit: T) -> T {
    value.if_above(limit, T::splat(1.0), T::splat(0.0))
}
