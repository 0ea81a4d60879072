//! Which remedy a practitioner would try first, and what the ladder says of the others.

use sagwright_core::advice::{Advice, Options, RemedyFinding, advise};
use sagwright_core::intake::{
    BikeClass, Complaint, End, Feeling, Field, ForkKind, Intake, Look, PushFeel, Severity, Since,
    YesNo,
};
use sagwright_core::quantity::Unit;
use sagwright_core::remedy::{RemedyId, Tier};
use sagwright_core::stance::Situation;
use sagwright_core::stance::baseline::fork_pressure;
use sagwright_core::workshop;

use crate::remedies::{intake, typed};

/// A rider whose gas fork is harsh on small bumps and sticks, told by its pressure over what suits in bar and its hours.
/// It moves no better with the axle let loose.
fn harsh_gas_fork(over: f64, hours: f64, since: Since, sticks: Severity) -> Intake {
    let mut told = intake(ForkKind::GasOneLeg);
    told.bike.class = Some(BikeClass::Motocross450);
    Field::RiderWeight.set(&mut told, Some(typed(89.0, Unit::Kilogram)));
    told.rider.weight_in_gear = Some(YesNo::Yes);
    let feels = |feeling, severity| Complaint {
        feeling,
        end: Some(End::Front),
        phases: [].into(),
        severity: Some(severity),
        since: Some(since),
    };
    told.complaints = Some(vec![
        feels(Feeling::HarshSmallBumps, Severity::Bad),
        feels(Feeling::Sticks, sticks),
    ]);
    told.measured.push_front = Some(PushFeel::SticksFirst);
    told.measured.looks = Some([(Look::FreesWithAxleLoose, YesNo::No)].into());
    told.stop_signs = Some([].into());
    let situation = Situation::of(&told);
    let suits = fork_pressure(&situation).expect("it can be carried");
    let bar = suits.value / 1e5 + over;
    Field::ForkPressure.set(&mut told, Some(typed(bar, Unit::Bar)));
    Field::ForkHours.set(&mut told, Some(typed(hours, Unit::Hour)));
    told
}

fn remedies(intake: &Intake, options: &Options) -> Vec<RemedyFinding> {
    match advise(intake, options) {
        Ok(Advice::SetUp(advice)) => advice.remedies,
        other => panic!("no set-up: {other:?}"),
    }
}

fn first(intake: &Intake) -> RemedyId {
    let remedies = remedies(intake, &Options::default());
    assert!(remedies[0].leads);
    remedies[0].id
}

#[test]
fn a_harsh_gas_fork_at_the_wrong_pressure_is_adjusted_first() {
    let intake = harsh_gas_fork(2.5, 6.0, Since::Always, Severity::Clear);
    assert_eq!(first(&intake), RemedyId::SetGasPressure);
}

#[test]
fn a_harsh_gas_fork_that_was_neglected_is_serviced_first() {
    let intake = harsh_gas_fork(0.0, 70.0, Since::Slowly, Severity::Clear);
    assert_eq!(first(&intake), RemedyId::ServiceSeals);
}

#[test]
fn a_harsh_gas_fork_that_is_right_and_fresh_has_its_drag_reduced_first() {
    let intake = harsh_gas_fork(0.0, 6.0, Since::Always, Severity::Clear);
    assert_eq!(first(&intake), RemedyId::ReduceDrag);
}

#[test]
fn a_gas_fork_so_bad_that_less_drag_would_not_do_is_converted() {
    let intake = harsh_gas_fork(0.0, 6.0, Since::Always, Severity::Bad);
    assert_eq!(first(&intake), RemedyId::ConvertToCoil);
}

#[test]
fn a_workshop_changes_prices_and_nothing_else() {
    let intake = harsh_gas_fork(0.0, 6.0, Since::Always, Severity::Clear);
    let workshop =
        workshop::read(include_str!("../../demo-data/workshop.json")).expect("well-formed");
    let (low, high) = workshop.labour_per_hour;
    let own = workshop.prices.clone();
    assert!(!own.is_empty(), "the demo workshop names a price");
    let priced = remedies(
        &intake,
        &Options {
            workshop: Some(workshop),
        },
    );
    let plain = remedies(&intake, &Options::default());
    assert_eq!(priced.len(), plain.len());
    for (priced, plain) in priced.iter().zip(&plain) {
        assert_eq!((priced.id, priced.relief), (plain.id, plain.relief));
        let money = priced
            .cost
            .money
            .as_ref()
            .expect("the workshop names its rate");
        let (least, most) = priced.cost.labour_hours;
        let reckoned = (low * least, high * most);
        let expected = own.get(&priced.id).copied().unwrap_or(reckoned);
        assert_eq!((money.low, money.high), expected);
    }
}

#[test]
fn a_remedy_is_dominated_only_by_one_that_costs_less() {
    let intake = harsh_gas_fork(2.5, 70.0, Since::Slowly, Severity::Clear);
    let remedies = remedies(&intake, &Options::default());
    let tier = |id: RemedyId| -> Tier {
        remedies
            .iter()
            .find(|one| one.id == id)
            .expect("it stands on the ladder")
            .tier
    };
    let dominated = remedies
        .iter()
        .filter_map(|one| Some((one, one.dominated_by.as_ref()?)));
    let mut any = false;
    for (one, dominated) in dominated {
        assert!(!one.leads && tier(dominated.by) <= one.tier, "{:?}", one.id);
        any = true;
    }
    assert!(any, "new internals do no more than a coil here");
}
