//! Chance that falls the same way every time.

/// Steele, Lea and Flood's `SplitMix64` (Fast splittable pseudorandom number generators, OOPSLA 2014; constants from memory):
/// a counter, well mixed. Small, good enough for the shape of ground, and the same on every machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dice(u64);

impl Dice {
    /// The same seed gives the same throws.
    pub const fn seeded(seed: u64) -> Self {
        Self(seed)
    }

    /// The next 64 bits.
    pub const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Evenly from 0 up to, not including, 1.
    #[expect(
        clippy::cast_precision_loss,
        reason = "53 bits are what an f64 holds exactly"
    )]
    pub const fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Evenly between two figures.
    pub const fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// First throws of seed 1234567, as commonly quoted for this generator (from memory).
    #[test]
    fn throws_as_quoted() {
        let mut dice = Dice::seeded(1_234_567);
        let first = [dice.bits(), dice.bits(), dice.bits()];
        assert_eq!(
            first,
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423
            ]
        );
    }

    #[test]
    fn shares_are_even() {
        let mut dice = Dice::seeded(7);
        let (mut sum, mut squares) = (0.0, 0.0);
        for _ in 0..10_000 {
            let share = dice.share();
            assert!((0.0..1.0).contains(&share));
            sum += share;
            squares += share * share;
        }
        let (mean, square) = (sum / 1e4, squares / 1e4);
        // Three standard errors of the mean of an even spread, and of its square.
        assert!((mean - 0.5).abs() < 3.0 * 0.00289, "{mean}");
        assert!((square - 1.0 / 3.0).abs() < 3.0 * 0.00298, "{square}");
    }
}
