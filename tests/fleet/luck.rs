//! Chances of the fleet: the same seed gives the same fleet on every machine.

use sagwright_core::ride::ground::dice::Dice;

/// A source of chance.
#[derive(Debug, Clone)]
pub struct Luck(Dice);

impl Luck {
    /// Independent for each seed and place.
    pub const fn seeded(seed: u64, place: u64) -> Self {
        let mut first = Dice::seeded(seed);
        Self(Dice::seeded(
            first.bits() ^ place.wrapping_mul(0x9e37_79b9_7f4a_7c15),
        ))
    }

    /// Any number of 64 bits.
    pub const fn bits(&mut self) -> u64 {
        self.0.bits()
    }

    /// Evenly from 0 up to, not including, 1.
    pub const fn share(&mut self) -> f64 {
        self.0.share()
    }

    /// Evenly between two figures.
    pub const fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0.between(low, high)
    }

    /// Whether something of this chance happens.
    pub fn happens(&mut self, chance: f64) -> bool {
        self.share() < chance
    }

    /// From the normal distribution of this standard deviation about zero (Box and Muller 1958).
    pub fn normal(&mut self, deviation: f64) -> f64 {
        let (a, b) = (1.0 - self.share(), self.share());
        let radius = (-2.0 * libm::log(a)).sqrt();
        deviation * radius * libm::cos(2.0 * core::f64::consts::PI * b)
    }

    /// A factor about one whose logarithm is normal.
    pub fn factor(&mut self, deviation: f64) -> f64 {
        libm::exp(self.normal(deviation))
    }

    /// One of several, all alike.
    pub fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        let weights = vec![1.0; all.len()];
        all[self.weighted(&weights)]
    }

    /// The place of one of several weights, none below zero.
    pub fn weighted(&mut self, weights: &[f64]) -> usize {
        let all: f64 = weights.iter().sum();
        let mut left = all * self.share();
        for (place, weight) in weights.iter().enumerate() {
            left -= weight;
            if left < 0.0 {
                return place;
            }
        }
        weights.len().saturating_sub(1)
    }
}
