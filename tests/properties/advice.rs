//! Any valid intake gives advice, any invalid one an error, none panics; and what more weight or a confirming
//! measurement may never do.

use proptest::collection::btree_map;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use sagwright_core::advice::{Advice, Options, SetUpAdvice, SettingId, advise, advise_with};
use sagwright_core::cause::Cause;
use sagwright_core::intake::{
    BikeClass, Complaint, End, Feeling, Field, ForkKind, FuelLoad, Intake, Pace, Phase, Posture,
    PushFeel, Severity, Share, ShockKind, Since, Terrain, YesNo, check, read,
};
use sagwright_core::quantity::{Typed, Unit};

use crate::config;

/// A number for a field, anywhere in its allowed window, in any of its units.
fn number(field: Field) -> impl Strategy<Value = Option<Typed>> {
    let window = field.allowed();
    // Kept a hair inside, since a limit in another unit may round to just outside.
    let inside = (window.low + 1e-6 * (window.high - window.low))
        ..(window.high - 1e-6 * (window.high - window.low));
    let units: Vec<Unit> = field.dimension().units().to_vec();
    of((inside, select(units)).prop_map(|(si, unit)| Typed {
        value: unit.from_si(si),
        unit,
        how: None,
    }))
}

fn complaint() -> impl Strategy<Value = (Option<End>, Vec<Phase>, Option<Severity>, Option<Since>)>
{
    (
        of(select(End::ALL)),
        subsequence(Phase::ALL, 0..=Phase::ALL.len()),
        of(select(Severity::ALL)),
        of(select(Since::ALL)),
    )
}

fn complaints() -> impl Strategy<Value = Option<Vec<Complaint>>> {
    of(
        btree_map(select(Feeling::ALL), complaint(), 0..6).prop_map(|all| {
            all.into_iter()
                .map(|(feeling, (end, phases, severity, since))| Complaint {
                    feeling,
                    end,
                    phases: phases.into_iter().collect(),
                    severity,
                    since,
                })
                .collect()
        }),
    )
}

/// Any intake whose numbers are each within their window; neighbours may still contradict each other.
pub fn intake() -> impl Strategy<Value = Intake> {
    let numbers: Vec<_> = Field::ALL.iter().map(|field| number(*field)).collect();
    let bike = (
        of(select(BikeClass::ALL)),
        of(select(FuelLoad::ALL)),
        of(select(ForkKind::ALL)),
        of(select(ShockKind::ALL)),
    );
    let rider = (
        of(select(YesNo::ALL)),
        of(select(Pace::ALL)),
        of(select(Posture::ALL)),
    );
    let ground = of(btree_map(
        select(Terrain::ALL),
        select(Share::ALL),
        0..Terrain::ALL.len(),
    ));
    let pushes = (of(select(PushFeel::ALL)), of(select(PushFeel::ALL)));
    (numbers, bike, rider, ground, pushes, complaints()).prop_map(
        |(
            numbers,
            (class, fuel, fork, shock),
            (gear, pace, posture),
            mix,
            (front, rear),
            complaints,
        )| {
            let mut intake = Intake {
                complaints,
                stop_signs: Some([].into()),
                ..Intake::default()
            };
            for (field, number) in Field::ALL.iter().zip(numbers) {
                field.set(&mut intake, number);
            }
            (intake.bike.class, intake.bike.fuel) = (class, fuel);
            (intake.bike.fork, intake.bike.shock) = (fork, shock);
            (
                intake.rider.weight_in_gear,
                intake.rider.pace,
                intake.rider.posture,
            ) = (gear, pace, posture);
            intake.ground.mix = mix.map(|mix| mix.into_iter().collect());
            (intake.measured.push_front, intake.measured.push_rear) = (front, rear);
            intake
        },
    )
}

fn set_up(intake: &Intake) -> Box<SetUpAdvice> {
    match advise_with(intake, &Options::default(), None) {
        Ok(Advice::SetUp(advice)) => advice,
        other => panic!("no set-up: {other:?}"),
    }
}

fn share(advice: &SetUpAdvice, cause: Cause) -> f64 {
    advice
        .causes
        .iter()
        .find(|found| found.cause == cause)
        .map_or(0.0, |found| found.probability)
}

fn advised(advice: &SetUpAdvice, id: SettingId) -> Option<f64> {
    advice
        .settings
        .iter()
        .find(|setting| setting.id == id)
        .map(|setting| setting.advised.value)
}

fn typed(value: f64, unit: Unit) -> Typed {
    Typed {
        value,
        unit,
        how: None,
    }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn valid_intakes_give_advice_and_invalid_ones_an_error(intake in intake()) {
        match (check(&intake), advise_with(&intake, &Options::default(), None)) {
            (Ok(()), Ok(Advice::SetUp(advice))) => {
                prop_assert!(!advice.settings.is_empty());
                for setting in &advice.settings {
                    let figure = &setting.advised;
                    prop_assert!(figure.value.is_finite() && figure.low.is_finite() && figure.high.is_finite());
                    prop_assert!(figure.low <= figure.value && figure.value <= figure.high, "{:?}", setting.id);
                    if let (SettingId::ForkPressure, Some(most)) = (setting.id, Field::ForkPressureMax.si(&intake)) {
                        prop_assert!(figure.high <= most, "over the marked maximum");
                    }
                }
                // Two causes can be there at once, but none of them while nothing is wrong.
                let nothing = share(&advice, Cause::NothingWrong);
                let of_others = || advice.causes.iter().filter(|c| c.cause != Cause::NothingWrong).map(|c| c.probability);
                prop_assert!(of_others().all(|chance| (0.0..=1.0 - nothing + 1e-9).contains(&chance)));
                let sum: f64 = nothing + of_others().sum::<f64>();
                prop_assert!((0.9..=2.0 + 1e-9).contains(&sum), "chances sum to {}", sum);
                prop_assert!(advice.remedies.iter().filter(|remedy| remedy.leads).count() <= 1);
                prop_assert!(!advice.cautions.is_empty());
            }
            (Err(expected), Err(found)) => prop_assert_eq!(expected, found),
            (checked, advised) => prop_assert!(false, "{:?} but {:?}", checked, advised),
        }
    }

    #[test]
    fn an_intake_survives_the_round_trip(intake in intake()) {
        prop_assume!(check(&intake).is_ok());
        let json = serde_json::to_string(&intake).expect("plain data");
        prop_assert_eq!(read(&json).expect("it was valid"), intake);
    }

    #[test]
    fn any_text_is_refused_without_panic(text in ".{0,200}") {
        prop_assert!(read(&text).is_err());
    }

    #[test]
    fn more_rider_never_asks_for_less_spring(
        class in select(BikeClass::ALL), fork in select(ForkKind::ALL), weight in 30.0..150.0_f64, more in 0.5..30.0_f64,
    ) {
        let with = |kg: f64| {
            let mut intake = Intake { stop_signs: Some([].into()), ..Intake::default() };
            (intake.bike.class, intake.bike.fork) = (Some(class), Some(fork));
            Field::RiderWeight.set(&mut intake, Some(typed(kg, Unit::Kilogram)));
            set_up(&intake)
        };
        let (light, heavy) = (with(weight), with(weight + more));
        for id in [SettingId::ForkRate, SettingId::ForkPressure, SettingId::ShockRate] {
            if let (Some(light), Some(heavy)) = (advised(&light, id), advised(&heavy, id)) {
                prop_assert!(heavy >= light, "{:?}: {} then {}", id, light, heavy);
            }
        }
    }

    #[test]
    fn more_hours_never_lower_the_friction_cause(intake in intake(), hours in 0.0..500.0_f64, more in 1.0..500.0_f64) {
        let with = |h: f64| {
            let mut intake = intake.clone();
            Field::ForkHours.set(&mut intake, Some(typed(h, Unit::Hour)));
            intake
        };
        prop_assume!(check(&with(hours)).is_ok());
        let (fewer, more) = (set_up(&with(hours)), set_up(&with(hours + more)));
        // Shares under the printed threshold are left out of the list and count as 0.
        prop_assert!(share(&more, Cause::ForkFriction) >= share(&fewer, Cause::ForkFriction) - 1e-9 || share(&more, Cause::ForkFriction) < 0.003);
    }
}

proptest! {
    // Rides cost a thousand times what statics do, so fewer intakes are ridden out.
    #![proptest_config(ProptestConfig { cases: 24, ..config() })]

    #[test]
    fn valid_intakes_can_be_ridden(intake in intake()) {
        prop_assume!(check(&intake).is_ok());
        let Ok(Advice::SetUp(advice)) = advise(&intake, &Options::default()) else {
            return Err(TestCaseError::fail("no set-up"));
        };
        for change in advice.rides.iter().flat_map(|ridden| &ridden.feel) {
            prop_assert!(change.before.is_finite() && change.after.is_finite(), "{:?}", change);
        }
        for setting in &advice.settings {
            let figure = &setting.advised;
            prop_assert!(figure.low <= figure.value && figure.value <= figure.high, "{:?}", setting.id);
        }
    }
}
