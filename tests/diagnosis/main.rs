//! What a practitioner would say to a handful of complaints and measurements: common practice, from memory.

mod cases;
mod close;
mod riders;
mod rounds;

use riders::{belief, coil, feels, gas};
use sagwright_core::cause::Cause;
use sagwright_core::intake::{Change, End, Feeling, Tried, Verdict};

#[test]
fn a_coil_fork_has_no_gas_causes_and_nothing_is_certain() {
    let belief = belief(&coil(vec![feels(Feeling::HarshSmallBumps, End::Front)]));
    for cause in Cause::ALL {
        let chance = belief.of(*cause);
        assert!(chance < 0.99, "{cause:?} {chance}");
        assert_eq!(chance > 0.0, !cause.needs_gas(), "{cause:?} {chance}");
    }
}

#[test]
fn chances_of_all_ways_a_bike_could_be_sum_to_one() {
    let belief = belief(&gas(vec![feels(Feeling::Kicks, End::Rear)]));
    let sum: f64 = belief.of_hypotheses.iter().sum();
    assert!((sum - 1.0).abs() < 1e-12, "{sum}");
}

#[test]
fn the_order_of_answers_does_not_matter() {
    let (a, b) = (
        feels(Feeling::Dives, End::Front),
        feels(Feeling::Packs, End::Rear),
    );
    let tried = [Change::ForkCompressionOpen, Change::ShockReboundOpen].map(|change| Tried {
        change,
        felt: [(Feeling::Packs, Verdict::Better)].into(),
        kept: false,
    });
    let (mut one, mut other) = (coil(vec![a.clone(), b.clone()]), coil(vec![b, a]));
    one.tried = tried.to_vec();
    other.tried = tried.into_iter().rev().collect();
    let (one, other) = (belief(&one), belief(&other));
    for cause in Cause::ALL {
        let (a, b) = (one.of(*cause), other.of(*cause));
        assert!((a - b).abs() < 1e-12, "{cause:?} {a} {b}");
    }
}
