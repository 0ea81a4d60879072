//! What remedies do to bikes with the faults they are meant for, ridden; and which a practitioner would try first.

use sagwright_core::advice::{Advice, Options, RemedyFinding, advise};
use sagwright_core::bench::{Bench, Cast, Ground, grounds};
use sagwright_core::cause::felt::shows_at;
use sagwright_core::cause::rehearsal::rehearse;
use sagwright_core::cause::said::{chances_of, trouble};
use sagwright_core::cause::{Cause, Hypothesis, Numbers, Rehearsal, hypotheses};
use sagwright_core::intake::{
    BikeClass, Complaint, End, Feeling, Field, ForkKind, Intake, Pace, PushFeel, Severity, Share,
    Since, Terrain, Workshop, YesNo,
};
use sagwright_core::quantity::{How, Typed, Unit};
use sagwright_core::remedy::remedied::{Remedied, Steps, on_sound_bike, places};
use sagwright_core::remedy::{RemedyId, Tier};
use sagwright_core::stance::baseline::fork_pressure;
use sagwright_core::stance::{Baseline, Situation, baseline};

/// A remedy with a cause that it is meant for. Common practice.
const MEANT_FOR: &[(RemedyId, Cause)] = &[
    (RemedyId::OpenForkCompression, Cause::ForkCompressionMuch),
    (RemedyId::CloseForkCompression, Cause::ForkCompressionLittle),
    (RemedyId::OpenForkRebound, Cause::ForkReboundSlow),
    (RemedyId::CloseForkRebound, Cause::ForkReboundFast),
    (RemedyId::OpenShockCompression, Cause::ShockCompressionMuch),
    (
        RemedyId::CloseShockCompression,
        Cause::ShockCompressionLittle,
    ),
    (RemedyId::OpenShockRebound, Cause::ShockReboundSlow),
    (RemedyId::CloseShockRebound, Cause::ShockReboundFast),
    (RemedyId::SetTyres, Cause::TyreHigh),
    (RemedyId::SetGasPressure, Cause::GasHigh),
    (RemedyId::LevelNegative, Cause::GasNegative),
    (RemedyId::AlignAxle, Cause::ForkBound),
    (RemedyId::SetShockPreload, Cause::ShockPreload),
    (RemedyId::LevelBike, Cause::Attitude),
    (RemedyId::ServiceHead, Cause::HeadBearings),
    (RemedyId::ServiceSeals, Cause::ForkFriction),
    (RemedyId::ServiceForkOil, Cause::ForkOilWorn),
    (RemedyId::ServiceLinkage, Cause::LinkageDry),
    (RemedyId::ServiceShock, Cause::ShockGasLost),
    (RemedyId::ForkSpacer, Cause::ForkPreload),
    (RemedyId::ReduceDrag, Cause::GasDrag),
    (RemedyId::RestoreReservoir, Cause::ForkReservoir),
    (RemedyId::ForkSprings, Cause::ForkRateSoft),
    (RemedyId::ShockSpring, Cause::ShockRateSoft),
    (RemedyId::FloatMidValve, Cause::MidValve),
    (RemedyId::RevalveFork, Cause::ForkCompressionMuch),
    (RemedyId::RevalveShock, Cause::ShockReboundSlow),
    (RemedyId::ConvertToCoil, Cause::GasDrag),
    (RemedyId::ReplaceForkInternals, Cause::MidValve),
    (RemedyId::ReplaceShock, Cause::ShockGasLost),
];
/// Remedies for no fault: one leaves the bike alone, the other lets out air that the day's weather made too much.
const FOR_NO_FAULT: &[RemedyId] = &[RemedyId::RideOn, RemedyId::BleedAir];

fn intake(fork: ForkKind) -> Intake {
    let mut intake = Intake::default();
    intake.bike.class = Some(BikeClass::EnduroLinkage);
    intake.bike.fork = Some(fork);
    intake.rider.pace = Some(Pace::Club);
    intake.ground.mix = Some(
        [
            (Terrain::RootsRocks, Share::Lot),
            (Terrain::BrakingBumps, Share::Some),
            (Terrain::Jumps, Share::Some),
        ]
        .into(),
    );
    intake
}

/// A bike on its bench, every fault ridden.
struct Ridden<'a> {
    cast: Cast<'a>,
    grounds: Vec<Ground>,
    rehearsal: Rehearsal,
    remedied: Remedied,
}

fn made_of(intake: &Intake) -> (Situation, Baseline) {
    let situation = Situation::of(intake);
    let suits = baseline(&situation);
    (situation, suits)
}

fn ridden<'a>(benches: &'a [Bench<'a>]) -> Ridden<'a> {
    let grounds = grounds::showing(&benches[0], &[]).expect("a sound bike");
    let situation = benches[0].situation();
    let own = |cause: Cause| {
        if situation.gas() {
            !cause.needs_coil()
        } else {
            !cause.needs_gas()
        }
    };
    let mut cast = Cast::new(benches).expect("a sound bike");
    let placed = on_sound_bike(&mut cast, &situation.surroundings);
    let rehearsal = rehearse(&mut cast, &grounds, own, &mut |_, _| true)
        .expect("a sound bike")
        .expect("nobody stops it");
    let remedied = Remedied::of(&cast, &placed, (&rehearsal.faults, 0), &grounds, false);
    Ridden {
        cast,
        grounds,
        rehearsal,
        remedied,
    }
}

impl Ridden<'_> {
    fn ride(&mut self, wanted: &[(Vec<usize>, Vec<RemedyId>)]) {
        let faults = &self.rehearsal.faults;
        self.remedied
            .ride_whole(
                &mut self.cast,
                faults,
                wanted,
                &self.grounds,
                &mut |_, _| true,
            )
            .expect("sound bikes")
            .expect("nobody stops it");
    }

    /// The plain degree of a cause.
    fn plain(&self, cause: Cause) -> usize {
        let faults = &self.rehearsal.faults;
        let plain = faults
            .iter()
            .position(|fault| fault.cause == cause && fault.plain);
        plain.unwrap_or_else(|| panic!("{cause:?} was not ridden"))
    }
}

/// The feeling that a fault moves most, and at which end.
fn worst(steps: &Steps) -> (Feeling, usize, f64) {
    let all = Feeling::ALL.iter().flat_map(|feeling| {
        [0, 1]
            .into_iter()
            .filter(|end| shows_at(*feeling)[*end])
            .map(|end| (*feeling, end, steps[*feeling as usize][end]))
    });
    all.max_by(|a, b| a.2.total_cmp(&b.2))
        .expect("there are feelings")
}

fn of_fork(fork: ForkKind, all: &[(RemedyId, Cause)]) -> Vec<(RemedyId, Cause)> {
    let gas = fork == ForkKind::GasOneLeg;
    all.iter()
        .copied()
        .filter(|(_, cause)| {
            if gas {
                !cause.needs_coil()
            } else {
                !cause.needs_gas()
            }
        })
        .collect()
}

#[test]
fn every_remedy_is_meant_for_something() {
    for remedy in RemedyId::ALL {
        let meant = MEANT_FOR.iter().any(|(of, _)| of == remedy);
        assert!(meant || FOR_NO_FAULT.contains(remedy), "{remedy:?}");
    }
}

#[test]
fn each_remedy_eases_what_it_is_meant_for_and_one_that_undoes_it_leaves_nothing() {
    let numbers = Numbers::USUAL;
    for fork in [ForkKind::GasOneLeg, ForkKind::CoilBothLegs] {
        let (situation, suits) = made_of(&intake(fork));
        let benches = [Bench::of(&situation, &suits).expect("a sound bike")];
        let mut ridden = ridden(&benches);
        let meant = of_fork(fork, MEANT_FOR);
        let wanted: Vec<(Vec<usize>, Vec<RemedyId>)> = meant
            .iter()
            .map(|(remedy, cause)| (vec![ridden.plain(*cause)], vec![*remedy]))
            .collect();
        ridden.ride(&wanted);
        for ((remedy, cause), whole) in meant.iter().zip(&ridden.remedied.whole) {
            let (before, after) = (&whole.before.steps, &whole.after[0].1.steps);
            let (feeling, end, moved) = worst(before);
            let place = feeling as usize;
            let of = |steps: &Steps| trouble(&numbers, feeling, None, steps[place]);
            assert!(moved > 1.0, "{cause:?} can hardly be felt: {moved}");
            assert!(
                of(after) < 0.97 * of(before),
                "{remedy:?} for {cause:?} on {fork:?}: {feeling:?} {before:?} to {after:?}",
                before = before[place],
                after = after[place],
            );
            let reach = ridden
                .remedied
                .reach
                .iter()
                .find(|reach| reach.remedy == *remedy && reach.fault == whole.faults[0]);
            let gone = reach.is_some_and(|reach| reach.left == 0.0 && reach.times == 1.0);
            let changes_sound_bikes = ridden.remedied.own.iter().any(|own| own.remedy == *remedy);
            if gone && !changes_sound_bikes {
                let chance = chances_of(&numbers, feeling, after[place], 0.0)[end];
                let leak = numbers.leak[place];
                assert!(
                    (chance - leak).abs() < 1e-9,
                    "{remedy:?}: {chance}, not {leak}"
                );
            }
        }
    }
}

#[test]
fn air_that_a_hot_day_shut_in_is_let_out() {
    let mut intake = intake(ForkKind::CoilBothLegs);
    Field::UsualTemperature.set(&mut intake, Some(typed(5.0, Unit::Celsius)));
    Field::TodayTemperature.set(&mut intake, Some(typed(38.0, Unit::Celsius)));
    Field::UsualAltitude.set(&mut intake, Some(typed(100.0, Unit::Metre)));
    Field::TodayAltitude.set(&mut intake, Some(typed(2400.0, Unit::Metre)));
    let (situation, suits) = made_of(&intake);
    let benches = [Bench::of(&situation, &suits).expect("a sound bike")];
    let ridden = ridden(&benches);
    let own = &ridden.remedied.own;
    let bled = own.iter().find(|own| own.remedy == RemedyId::BleedAir);
    let bled = bled.expect("it changes something");
    assert!(
        bled.change[Feeling::RampsUp as usize][0] < -0.1,
        "{:?}",
        bled.change
    );
}

/// What parts put together say against rides of the whole bike: over every pair of a fault at the fork and one at the rear, and
/// pairs at one end, with the remedies that are meant for them and those that change any bike.
#[test]
fn parts_put_together_are_near_to_the_whole_bike() {
    let pairs = [
        (Cause::ForkFriction, Cause::ShockReboundFast),
        (Cause::ForkReboundSlow, Cause::ShockReboundSlow),
        (Cause::GasHigh, Cause::ForkFriction),
        (Cause::GasDrag, Cause::ForkBound),
        (Cause::GasLow, Cause::ForkCompressionLittle),
        (Cause::ShockRateSoft, Cause::ShockCompressionLittle),
        (Cause::TyreHigh, Cause::ForkCompressionMuch),
        (Cause::Attitude, Cause::ShockPreload),
        (Cause::LinkageDry, Cause::ForkOilWorn),
        (Cause::MidValve, Cause::ForkFriction),
    ];
    let always = [
        RemedyId::OpenForkCompression,
        RemedyId::ReduceDrag,
        RemedyId::ConvertToCoil,
    ];
    let fork = ForkKind::GasOneLeg;
    let (situation, suits) = made_of(&intake(fork));
    let benches = [Bench::of(&situation, &suits).expect("a sound bike")];
    let mut ridden = ridden(&benches);
    let mut wanted = Vec::new();
    for (one, other) in pairs {
        for set in [vec![one], vec![one, other]] {
            let mut remedies = always.to_vec();
            let meant = MEANT_FOR.iter().filter(|(_, cause)| set.contains(cause));
            remedies.extend(meant.map(|(remedy, _)| *remedy));
            let mut faults: Vec<usize> = set.iter().map(|cause| ridden.plain(*cause)).collect();
            faults.sort_unstable();
            wanted.push((faults, remedies));
        }
    }
    ridden.ride(&wanted);
    let numbers = Numbers::USUAL;
    let ways = hypotheses(&ridden.rehearsal, &numbers, |_| 1.0, true);
    let faults = &ridden.rehearsal.faults;
    // Errors of the change that a remedy makes, in steps, over what can be felt of it: one fault, then two.
    let mut errors = [Vec::new(), Vec::new()];
    for whole in &ridden.remedied.whole {
        let hypothesis: &Hypothesis = ways
            .iter()
            .find(|way| places(way, faults) == whole.faults)
            .expect("every pair is thought of");
        for (remedy, after) in &whole.after {
            let (before, put_together) =
                ridden
                    .remedied
                    .put_together(*remedy, hypothesis, &whole.faults, faults);
            for feeling in Feeling::ALL {
                for end in [0, 1] {
                    let place = *feeling as usize;
                    let at_limit = |steps: f64| steps.abs() > 7.9;
                    let (was, is) = (whole.before.steps[place][end], after.steps[place][end]);
                    if shows_at(*feeling)[end] && !at_limit(was) && !at_limit(is) {
                        let guess = put_together[place][end] - before[place][end];
                        errors[whole.faults.len() - 1].push(guess - (is - was));
                    }
                }
            }
        }
    }
    for (errors, least) in errors.iter().zip([0.35, 0.45]) {
        let count = f64::from(u32::try_from(errors.len()).expect("few"));
        let rms = (errors.iter().map(|error| error * error).sum::<f64>() / count).sqrt();
        let within = errors.iter().filter(|error| error.abs() < 0.5).count();
        let within = f64::from(u32::try_from(within).expect("few")) / count;
        println!(
            "{count} changes: {rms:.2} steps root mean square, {within:.2} within half a step"
        );
        assert!(rms < least, "{rms} steps");
    }
}

fn typed(value: f64, unit: Unit) -> Typed {
    Typed {
        value,
        unit,
        how: Some(How::Measured),
    }
}

/// A rider whose gas fork is harsh on small bumps and sticks, told by weight, pressure over what suits in bar, and hours.
fn harsh_gas_fork(class: BikeClass, kg: f64, over: f64, hours: f64, since: Since) -> Intake {
    let mut told = intake(ForkKind::GasOneLeg);
    told.bike.class = Some(class);
    Field::RiderWeight.set(&mut told, Some(typed(kg, Unit::Kilogram)));
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
        feels(Feeling::Sticks, Severity::Clear),
    ]);
    told.measured.push_front = Some(PushFeel::SticksFirst);
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
    let intake = harsh_gas_fork(BikeClass::Motocross450, 89.0, 2.5, 6.0, Since::SinceWork);
    assert_eq!(first(&intake), RemedyId::SetGasPressure);
}

#[test]
fn a_harsh_gas_fork_that_was_neglected_is_serviced_first() {
    let intake = harsh_gas_fork(BikeClass::Motocross450, 89.0, 0.0, 70.0, Since::Slowly);
    assert_eq!(first(&intake), RemedyId::ServiceSeals);
}

#[test]
fn a_harsh_gas_fork_that_is_right_and_fresh_has_its_drag_reduced_first() {
    let intake = harsh_gas_fork(BikeClass::Motocross450, 89.0, 0.0, 6.0, Since::Always);
    assert_eq!(first(&intake), RemedyId::ReduceDrag);
}

#[test]
fn a_harsh_gas_fork_under_a_rider_too_light_for_less_drag_to_do_is_converted() {
    let intake = harsh_gas_fork(BikeClass::Motocross125, 48.0, 0.0, 6.0, Since::Always);
    assert_eq!(first(&intake), RemedyId::ConvertToCoil);
}

#[test]
fn a_workshop_changes_prices_and_nothing_else() {
    let intake = harsh_gas_fork(BikeClass::Motocross450, 89.0, 0.0, 6.0, Since::Always);
    let workshop =
        Workshop::read(include_str!("../../demo-data/workshop.json")).expect("well-formed");
    let (low, high) = workshop.labour_per_hour;
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
        assert_eq!((money.low, money.high), (low * least, high * most));
    }
}

#[test]
fn a_remedy_is_dominated_only_by_one_that_costs_less() {
    let intake = harsh_gas_fork(BikeClass::Motocross450, 89.0, 2.5, 70.0, Since::Slowly);
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
