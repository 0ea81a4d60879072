//! How steadily a tyre presses on the ground.

use super::gather::{Mean, above};
use crate::lane::Lane;

/// A tyre that carries less than this share of its load at rest grips next to nothing; common practice.
const LIGHT: f64 = 0.2;

#[derive(Debug, Clone, Copy)]
pub(super) struct Grip<T> {
    rest_n: T,
    light: Mean<T>,
    /// Load over that at rest, as a share of it, and its square: about the load itself they would be small differences
    /// of large numbers.
    over: Mean<T>,
    power: Mean<T>,
}

impl<T: Lane> Grip<T> {
    /// For a tyre that carries `rest_n` at rest, above 0.
    pub(super) fn new(rest_n: T) -> Self {
        Self {
            rest_n,
            light: Mean::new(),
            over: Mean::new(),
            power: Mean::new(),
        }
    }

    pub(super) fn step(&mut self, load_n: T) {
        let over = (load_n - self.rest_n) / self.rest_n;
        self.light.add(above(T::splat(LIGHT - 1.0), over));
        self.over.add(over);
        self.power.add(over * over);
    }

    pub(super) fn light_share(&self) -> T {
        self.light.or(T::splat(0.0))
    }

    pub(super) fn unsteadiness(&self) -> T {
        let zero = T::splat(0.0);
        let mean = self.over.or(zero);
        // Rounding may leave a steady load a variance just below 0.
        (self.power.or(zero) - mean * mean).greater(zero).sqrt()
    }
}
