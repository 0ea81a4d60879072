//! What must hold for every bike, rider and set-up, tried on many.

mod advice;
mod causes;
mod link;
mod parts;
mod ranges;
mod refusals;
mod stance;

use proptest::prelude::ProptestConfig;
use proptest::test_runner::RngSeed;

/// A fixed seed: the same cases on every machine, so that a failure is never a matter of luck.
fn config() -> ProptestConfig {
    ProptestConfig {
        cases: 256,
        rng_seed: RngSeed::Fixed(20_262),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}
