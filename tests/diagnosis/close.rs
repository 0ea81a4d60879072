//! What would lead if a number set by hand were another.

use crate::riders::{case, coil, feels, gas, measured};
use sagwright_core::cause::checks::Case;
use sagwright_core::cause::close::Reweighed;
use sagwright_core::cause::hypotheses::give_odds;
use sagwright_core::cause::variants::Moves;
use sagwright_core::cause::{
    Belief, Cause, Hypothesis, Numbers, PerCause, close_call, observations, possible,
};
use sagwright_core::intake::{
    Change, End, Feeling, Field, Intake, Look, PushFeel, Tried, Verdict, YesNo,
};
use sagwright_core::quantity::Unit;

/// A rider who answered something of every kind that a number set by hand bears on.
fn talkative() -> Intake {
    let said = vec![
        feels(Feeling::HarshSmallBumps, End::Front),
        feels(Feeling::Packs, End::Front),
    ];
    let numbers = [
        (Field::ForkPressure, 11.0, Unit::Bar),
        (Field::ForkCompressionNow, 8.0, Unit::Click),
        (Field::ForkHours, 35.0, Unit::Hour),
    ];
    let mut intake = measured(gas(said), &numbers);
    intake.measured.push_front = Some(PushFeel::SticksFirst);
    intake.measured.looks = Some([(Look::FreesWhenCleaned, YesNo::No)].into());
    intake.tried = vec![Tried {
        change: Change::ForkCompressionOpen,
        felt: [(Feeling::HarshSmallBumps, Verdict::Same)].into(),
        kept: false,
    }];
    intake
}

/// Chances of causes by other numbers, with everything about the likelier ways worked out anew.
fn anew(case: &Case, likelier: &[Hypothesis], numbers: &Numbers) -> PerCause {
    let mut ways = likelier.to_vec();
    let odds = |cause| possible(case.intake, cause);
    give_odds(&mut ways, case.rehearsal, numbers, odds);
    let (situation, suits) = (case.situation, case.baseline);
    let seen = observations(
        case.intake,
        situation,
        suits,
        case.rehearsal,
        &ways,
        numbers,
    );
    Belief::from(&ways, numbers, seen).probability
}

#[test]
fn only_what_a_number_moves_is_worked_out_again() {
    case(&talkative(), |case| {
        let mut reweighed = Reweighed::of(case);
        let likelier = reweighed.ways().to_vec();
        assert!((10..case.hypotheses.len()).contains(&likelier.len()));
        for variant in case.numbers.variants() {
            let (number, factor) = (variant.number, variant.factor);
            let found = reweighed.chances(&variant.numbers, number.moves());
            let expected = anew(case, &likelier, &variant.numbers);
            for (cause, (found, expected)) in Cause::ALL.iter().zip(found.iter().zip(expected)) {
                assert!(
                    (found - expected).abs() < 1e-12,
                    "{} {:?} times {factor}: {cause:?} {found} {expected}",
                    number.name,
                    number.of
                );
            }
        }
    });
}

#[test]
fn the_same_cause_leads_where_no_number_moves() {
    let vague = coil(vec![feels(Feeling::SitsWrong, End::Rear)]);
    for intake in [talkative(), vague] {
        case(&intake, |case| {
            let (leader, _) = case.belief.ranked()[0];
            let mut reweighed = Reweighed::of(case);
            for moves in [Moves::Odds, Moves::Said, Moves::Found, Moves::All] {
                assert_eq!(reweighed.leader(case.numbers, moves), leader, "{moves:?}");
            }
        });
    }
}

#[test]
fn odds_given_anew_are_those_the_ways_came_with() {
    case(&talkative(), |case| {
        let mut ways = case.hypotheses.to_vec();
        let odds = |cause| possible(case.intake, cause);
        give_odds(&mut ways, case.rehearsal, case.numbers, odds);
        for (given, before) in ways.iter().zip(case.hypotheses) {
            assert_eq!(given.log_prior.to_bits(), before.log_prior.to_bits());
        }
    });
}

#[test]
fn a_call_is_close_where_one_number_moved_puts_another_cause_first() {
    let vague = coil(vec![feels(Feeling::SitsWrong, End::Rear)]);
    case(&vague, |case| {
        let leader = case.belief.ranked()[0].0;
        let close = close_call(case).expect("sitting wrong alone says little");
        assert_ne!(close.rival, leader);
        assert!(close.flips >= 1 && close.flips < close.of);
        assert_eq!(close.of, case.numbers.variants().count());
    });
}

#[test]
fn a_cause_that_was_seen_is_no_close_call() {
    let mut seen = coil(vec![feels(Feeling::Headshake, End::Front)]);
    seen.measured.looks = Some([(Look::HeadKnocks, YesNo::Yes)].into());
    case(&seen, |case| {
        assert_eq!(case.belief.ranked()[0].0, Cause::HeadBearings);
        assert_eq!(close_call(case), None);
    });
}
