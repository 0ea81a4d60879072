//! Bikes and riders that the answers leave open, spread evenly over all of them.

use core::f64::consts::SQRT_2;

use super::input::{Input, Spread};
use crate::solve::root;
use crate::stance::situation::Situation;

/// How many draws an advice takes: a power of two, at which a Sobol sequence is most even.
pub const DRAWS: u32 = 128;
/// Seed of the scrambling. Any other does as well, within what [`DRAWS`] draws can tell.
pub const SEED: u32 = 0;
/// Places and weights at which three values of a normally spread input tell what it does, standard deviations: the
/// Gauss–Hermite rule of three points (Abramowitz and Stegun, *Handbook of Mathematical Functions*, 25.4.46, from memory).
const THREE_POINTS: [(f64, f64); 3] = [
    (-1.732_050_807_568_877, 1.0),
    (0.0, 4.0),
    (1.732_050_807_568_877, 1.0),
];
/// Beyond this many standard deviations nothing is drawn.
const FURTHEST: f64 = 6.0;

/// One bike and rider that the answers leave open.
#[derive(Debug, Clone, PartialEq)]
pub struct Draw {
    /// The bike and rider.
    pub situation: Situation,
    at: [f64; Input::ALL.len()],
}

impl Draw {
    /// The likeliest of all, from which the others are drawn.
    pub fn likeliest(situation: &Situation) -> Self {
        Self {
            situation: situation.clone(),
            at: [0.0; Input::ALL.len()],
        }
    }

    /// Where an input stands: standard deviations from its likeliest value, or the number of the kind or count from 0.
    /// 0 for an input that is known.
    pub fn at(&self, input: Input) -> f64 {
        self.at[input as usize]
    }

    /// What a normally spread input differs by from its likeliest value, in its own SI unit.
    pub fn off_by(&self, input: Input) -> f64 {
        match input.spread(&self.situation) {
            Spread::Normal(deviation) => self.at(input) * deviation,
            Spread::Known | Spread::Kinds(_) | Spread::Counts(_) => 0.0,
        }
    }
}

/// Draws from everything that is not known, the same for the same seed. At most 65 536.
///
/// Each input keeps its own dimension of a Sobol sequence with hashed Owen scrambling (B. Burley, *Journal of Computer
/// Graphics Techniques* 9 no. 4 (2020) 1–20), whatever else is known: an answer more then changes the draws of its own
/// input alone.
pub fn draws(situation: &Situation, count: u32, seed: u32) -> Vec<Draw> {
    (0..count.min(1 << 16))
        .map(|index| draw(situation, index, seed))
        .collect()
}

fn draw(situation: &Situation, index: u32, seed: u32) -> Draw {
    let mut draw = Draw::likeliest(situation);
    for (dimension, input) in (0_u32..).zip(Input::ALL) {
        let spread = input.spread(&draw.situation);
        if spread == Spread::Known {
            continue;
        }
        // Samples have 24 bits; the middle of each keeps clear of 0 and 1.
        let place = f64::from(sobol_burley::sample(index, dimension, seed)) + 0.5 / 16_777_216.0;
        let (at, moved_to) = match spread {
            Spread::Known => (0.0, 0.0),
            Spread::Normal(deviation) => {
                let at = normal_quantile(place);
                (at, at * deviation)
            }
            Spread::Kinds(count) | Spread::Counts(count) => {
                #[expect(clippy::cast_precision_loss, reason = "a dozen kinds at most")]
                let at = (place * count as f64).floor();
                (at, at)
            }
        };
        draw.situation = input.put(&draw.situation, moved_to);
        draw.at[input as usize] = at;
    }
    draw
}

/// The likeliest bike and rider with one input at each of a few values, each with the weight it has among them; nothing
/// for an input that is known.
pub fn around(situation: &Situation, input: Input) -> Vec<(Draw, f64)> {
    let at = |at: f64, moved_to: f64| {
        let mut draw = Draw::likeliest(situation);
        draw.situation = input.put(situation, moved_to);
        draw.at[input as usize] = at;
        draw
    };
    match input.spread(situation) {
        Spread::Known => Vec::new(),
        Spread::Normal(deviation) => THREE_POINTS
            .into_iter()
            .map(|(place, weight)| (at(place, place * deviation), weight))
            .collect(),
        Spread::Kinds(count) | Spread::Counts(count) => (0_u32..)
            .take(count)
            .map(|kind| (at(f64::from(kind), f64::from(kind)), 1.0))
            .collect(),
    }
}

/// Standard deviations below which a normal distribution has this share, 0 to 1: the root of its distribution function,
/// Φ(z) = erfc(−z/√2)/2.
fn normal_quantile(share: f64) -> f64 {
    let below = |z: f64| 0.5 * libm::erfc(-z / SQRT_2) - share;
    // Only shares of less than a thousand-millionth lie beyond the limits of the search.
    root(below, -FURTHEST, FURTHEST, 1e-9).unwrap_or(FURTHEST.copysign(share - 0.5))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::intake::Intake;

    /// Printed in every table of the normal distribution.
    #[test]
    fn quantiles_are_those_of_the_tables() {
        for (share, z) in [
            (0.5, 0.0),
            (0.1, -1.281_552),
            (0.975, 1.959_964),
            (0.999, 3.090_232),
        ] {
            assert!((normal_quantile(share) - z).abs() < 1e-6, "{share}");
        }
    }

    #[test]
    fn draws_are_spread_evenly_along_every_input() {
        let situation = Situation::of(&Intake::default());
        let draws = draws(&situation, DRAWS, SEED);
        for input in Input::ALL {
            let Spread::Normal(_) = input.spread(&situation) else {
                continue;
            };
            let mut at: Vec<f64> = draws.iter().map(|draw| draw.at(input)).collect();
            at.sort_by(f64::total_cmp);
            for (place, at) in (0_u32..).zip(at) {
                let share = 0.5 * libm::erfc(-at / SQRT_2) * f64::from(DRAWS);
                let place = f64::from(place);
                assert!(
                    (place - 1e-3..=place + 1.001).contains(&share),
                    "{input:?}: {share}"
                );
            }
        }
    }
}
