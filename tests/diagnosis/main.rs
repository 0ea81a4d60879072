//! What a practitioner would say to a handful of complaints: common practice, from memory.
//!
//! Words alone are looked at here; how numbers move the belief is tested with the advice as a whole.

use sagwright_core::cause::{Belief, Cause, diagnose};
use sagwright_core::intake::{
    Complaint, End, Feeling, ForkKind, Intake, Phase, PushFeel, Severity, Since,
};

fn feels(feeling: Feeling, end: End) -> Complaint {
    Complaint {
        feeling,
        end: Some(end),
        phases: [].into(),
        severity: Some(Severity::Clear),
        since: None,
    }
}

fn said(fork: ForkKind, complaints: Vec<Complaint>) -> Intake {
    let mut intake = Intake {
        complaints: Some(complaints),
        ..Intake::default()
    };
    intake.bike.fork = Some(fork);
    intake
}

fn belief(intake: &Intake) -> Belief {
    diagnose(intake, Vec::new())
}

/// Asserts that `cause` is among the three most believed.
#[track_caller]
fn leads(intake: &Intake, cause: Cause) {
    let ranked = belief(intake).ranked();
    let top: Vec<Cause> = ranked.iter().take(3).map(|(cause, _)| *cause).collect();
    assert!(top.contains(&cause), "{cause:?} not in {:?}", &ranked[..6]);
}

#[test]
fn a_gas_fork_harsh_from_the_first_day_is_the_gas_leg_itself() {
    let mut harsh = feels(Feeling::HarshSmallBumps, End::Front);
    harsh.since = Some(Since::Always);
    let sticks = feels(Feeling::Sticks, End::Front);
    leads(
        &said(ForkKind::GasOneLeg, vec![harsh, sticks]),
        Cause::GasDrag,
    );
}

#[test]
fn a_fork_grown_harsh_over_months_is_dry() {
    let mut harsh = feels(Feeling::HarshSmallBumps, End::Front);
    harsh.since = Some(Since::Slowly);
    for fork in [ForkKind::CoilBothLegs, ForkKind::GasOneLeg] {
        leads(&said(fork, vec![harsh.clone()]), Cause::ForkFriction);
    }
}

#[test]
fn a_fork_that_judders_since_the_wheel_was_out_is_bound() {
    let mut sticks = feels(Feeling::Sticks, End::Front);
    sticks.since = Some(Since::SinceWork);
    let mut intake = said(ForkKind::CoilBothLegs, vec![sticks]);
    intake.measured.push_front = Some(PushFeel::Judders);
    leads(&intake, Cause::ForkBound);
}

#[test]
fn diving_and_bottoming_is_a_soft_spring_or_low_gas() {
    let both = vec![
        feels(Feeling::Dives, End::Front),
        feels(Feeling::Bottoms, End::Front),
    ];
    leads(
        &said(ForkKind::CoilBothLegs, both.clone()),
        Cause::ForkRateSoft,
    );
    leads(&said(ForkKind::GasOneLeg, both), Cause::GasLow);
}

#[test]
fn packing_in_the_whoops_is_slow_rebound_at_that_end() {
    let mut packs = feels(Feeling::Packs, End::Front);
    packs.phases = [Phase::Straight].into();
    leads(
        &said(ForkKind::CoilBothLegs, vec![packs.clone()]),
        Cause::ForkReboundSlow,
    );
    packs.end = Some(End::Rear);
    leads(
        &said(ForkKind::CoilBothLegs, vec![packs]),
        Cause::ShockReboundSlow,
    );
}

#[test]
fn a_rear_that_kicks_springs_back_too_fast() {
    leads(
        &said(
            ForkKind::CoilBothLegs,
            vec![feels(Feeling::Kicks, End::Rear)],
        ),
        Cause::ShockReboundFast,
    );
}

#[test]
fn going_soft_during_the_ride_is_gas_or_oil_lost() {
    leads(
        &said(
            ForkKind::CoilBothLegs,
            vec![feels(Feeling::Fades, End::Rear)],
        ),
        Cause::ShockGasLost,
    );
    leads(
        &said(
            ForkKind::CoilOneLeg,
            vec![feels(Feeling::Fades, End::Front)],
        ),
        Cause::ForkReservoir,
    );
}

#[test]
fn a_shake_of_the_bars_puts_head_bearings_and_attitude_up() {
    let shake = said(
        ForkKind::CoilBothLegs,
        vec![feels(Feeling::Headshake, End::Front)],
    );
    leads(&shake, Cause::HeadBearings);
    leads(&shake, Cause::Attitude);
}

#[test]
fn nothing_wrong_is_believed_when_nothing_is_said_to_be_wrong() {
    let ranked = belief(&said(ForkKind::CoilBothLegs, vec![])).ranked();
    assert_eq!(ranked[0].0, Cause::NothingWrong);
}

#[test]
fn a_coil_fork_has_no_gas_causes_and_the_shares_sum_to_one() {
    let harsh = said(
        ForkKind::CoilBothLegs,
        vec![feels(Feeling::HarshSmallBumps, End::Front)],
    );
    let belief = belief(&harsh);
    for cause in [
        Cause::GasDrag,
        Cause::GasLow,
        Cause::GasHigh,
        Cause::GasNegative,
    ] {
        assert!(belief.of(cause) == 0.0, "{cause:?}");
    }
    let sum: f64 = Cause::ALL.iter().map(|cause| belief.of(*cause)).sum();
    assert!((sum - 1.0).abs() < 1e-12);
    assert!(
        Cause::ALL.iter().all(|cause| belief.of(*cause) < 0.99),
        "nothing is certain"
    );
}

#[test]
fn the_order_of_complaints_does_not_matter() {
    // Within a group the first mention weighs most, so the two here are of different groups.
    let (a, b) = (
        feels(Feeling::Dives, End::Front),
        feels(Feeling::Packs, End::Rear),
    );
    let one = belief(&said(ForkKind::CoilBothLegs, vec![a.clone(), b.clone()]));
    let other = belief(&said(ForkKind::CoilBothLegs, vec![b, a]));
    for cause in Cause::ALL {
        assert!(
            (one.of(*cause) - other.of(*cause)).abs() < 1e-12,
            "{cause:?}"
        );
    }
}
