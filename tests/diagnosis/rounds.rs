//! Checks in rounds, and looks inside a damper beside where its clickers stand.

use crate::riders::{belief, case, coil, feels, gas, measured};
use sagwright_core::cause::Cause;
use sagwright_core::cause::checks::{How, all, expected_bits, is_open};
use sagwright_core::cause::rounds::ranked;
use sagwright_core::intake::{End, Feeling, Field, Intake, Look, YesNo};
use sagwright_core::quantity::Unit;

fn complaining() -> [Intake; 3] {
    [
        coil(vec![feels(Feeling::HarshBigHits, End::Front)]),
        coil(vec![
            feels(Feeling::Bottoms, End::Rear),
            feels(Feeling::SitsWrong, End::Rear),
        ]),
        gas(vec![feels(Feeling::HarshSmallBumps, End::Front)]),
    ]
}

#[test]
fn every_check_worth_its_time_is_in_one_round_and_the_best_comes_first() {
    for intake in complaining() {
        case(&intake, |case| {
            let rounds = ranked(case);
            let mut done: Vec<How> = Vec::new();
            for round in &rounds {
                assert!(!round.checks.is_empty());
                done.extend(round.checks.iter().map(|check| check.how));
            }
            let worth = all().filter(|check| {
                // At the mark itself, rounding may tip it either way.
                is_open(case, check.how) && expected_bits(case, check) > 0.0501
            });
            for check in worth {
                let times = done.iter().filter(|how| **how == check.how).count();
                assert_eq!(times, 1, "{:?}", check.how);
            }
            assert!(rounds.is_sorted_by(|a, b| a.per_minute >= b.per_minute));
        });
    }
}

#[test]
fn a_round_tells_more_than_its_best_check_and_no_more_than_all_by_themselves() {
    let mut several = 0;
    for intake in complaining() {
        case(&intake, |case| {
            for round in ranked(case) {
                let each = round.checks.iter().map(|check| expected_bits(case, check));
                let each: Vec<f64> = each.collect();
                let best = each.iter().copied().fold(0.0, f64::max);
                let sum: f64 = each.iter().sum();
                // Rare results are counted as one where several checks are set side by side.
                assert!(
                    round.bits <= sum + 1e-9 && round.bits >= 0.97 * best,
                    "{round:?} {each:?}"
                );
                if each.len() > 1 {
                    several += 1;
                }
            }
        });
    }
    assert!(several > 0, "no round has two checks");
}

#[test]
fn what_has_to_be_opened_counts_once() {
    let intake = coil(vec![feels(Feeling::Bottoms, End::Front)]);
    case(&intake, |case| {
        let rounds = ranked(case);
        let inside = [Look::OilOffTheLevel, Look::ForkOilSpent].map(How::Look);
        let opened = rounds
            .iter()
            .find(|round| round.checks.iter().any(|check| inside.contains(&check.how)))
            .expect("a fork that bottoms may lack oil");
        assert!(opened.checks[0].minutes >= 30, "{opened:?}");
        for check in &opened.checks[1..] {
            assert!(check.minutes <= 30, "{opened:?}");
        }
    });
}

/// How much too strong a compression is believed with the clicker so many clicks out of where it suits, and after a look at the
/// shims.
fn too_strong(clicks: f64, shims: Option<YesNo>) -> f64 {
    let told = coil(vec![feels(Feeling::HarshBigHits, End::Front)]);
    let suits = case(&told, |case| {
        let clickers = case.baseline.clickers.as_ref().expect("a usual bike");
        f64::from(clickers.fork_compression.clicks.middle)
    });
    let now = (Field::ForkCompressionNow, suits + clicks, Unit::Click);
    let mut intake = measured(told, &[now]);
    intake.measured.looks = shims.map(|answer| [(Look::ForkShimsOff, answer)].into());
    belief(&intake).of(Cause::ForkCompressionMuch)
}

#[test]
fn shims_tell_most_where_the_clicks_are_as_they_should_be() {
    let (yes, no) = (Some(YesNo::Yes), Some(YesNo::No));
    let [without, with, not] = [None, yes, no].map(|shims| too_strong(0.0, shims));
    assert!(with > without && without > not, "{without} {with} {not}");
    let [as_suits, closed] = [0.0, -9.0].map(|clicks| {
        let [yes, no] = [yes, no].map(|shims| too_strong(clicks, shims));
        let odds = |chance: f64| chance / (1.0 - chance);
        odds(yes) / odds(no)
    });
    assert!(as_suits > 3.0 * closed, "{as_suits} {closed}");
}
