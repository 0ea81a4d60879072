//! What belief may never do, whatever a rider says: all faults judged standing still, which is quick, but for the demo
//! intakes, which are ridden.

use std::collections::BTreeSet;

use proptest::prelude::*;
use proptest::sample::select;
use sagwright_core::advice::rehearsed;
use sagwright_core::bench::{Bench, Ground, grounds};
use sagwright_core::cause::belief::entropy_bits;
use sagwright_core::cause::rehearsal::Rehearsed;
use sagwright_core::cause::{
    Belief, Cause, Hypothesis, Numbers, Rehearsal, hypotheses, observations, possible,
};
use sagwright_core::intake::{Field, Intake, Look, PushFeel, YesNo, check, read};
use sagwright_core::quantity::{Typed, Unit};
use sagwright_core::stance::sound::sound;
use sagwright_core::stance::{Baseline, Situation, baseline};

use crate::advice::intake;
use crate::config;

/// What is needed to weigh answers.
struct Known {
    situation: Situation,
    suits: Baseline,
    rehearsal: Rehearsal,
}

impl Known {
    fn of(intake: &Intake, ridden: bool) -> Option<Self> {
        // Hours are no part of how a bike should be, so the advice rides without them.
        let mut intake = intake.clone();
        for hours in [Field::ForkHours, Field::ShockHours] {
            hours.set(&mut intake, None);
        }
        let situation = Situation::of(&intake);
        let suits = baseline(&situation);
        let showing: Vec<Ground> = if ridden {
            grounds::showing(&Bench::of(&situation, &suits).ok()?, &[]).ok()?
        } else {
            Vec::new()
        };
        let (rehearsal, _) = rehearsed(&intake, &situation, &suits, &showing, &mut |_, _| true)?;
        Some(Self {
            situation,
            suits,
            rehearsal,
        })
    }

    fn ways(&self, intake: &Intake) -> Vec<Hypothesis<'_>> {
        let can = |cause: Cause| possible(intake, cause);
        hypotheses(&self.rehearsal, &Numbers::USUAL, can, true)
    }

    fn belief(&self, intake: &Intake) -> Belief {
        let (ways, numbers) = (self.ways(intake), Numbers::USUAL);
        let seen = observations(
            intake,
            &self.situation,
            &self.suits,
            &self.rehearsal,
            &ways,
            &numbers,
        );
        Belief::from(&ways, &numbers, seen)
    }

    /// How open it still is which causes are there, bits.
    fn open_bits(&self, intake: &Intake) -> f64 {
        let belief = self.belief(intake);
        let mut sets: Vec<(BTreeSet<Cause>, f64)> = Vec::new();
        for (way, chance) in self.ways(intake).iter().zip(&belief.of_hypotheses) {
            let causes: BTreeSet<Cause> = way.faults.iter().map(|fault| fault.cause).collect();
            match sets.iter_mut().find(|(known, _)| *known == causes) {
                Some((_, sum)) => *sum += chance,
                None => sets.push((causes, *chance)),
            }
        }
        let chances: Vec<f64> = sets.into_iter().map(|(_, chance)| chance).collect();
        entropy_bits(&chances)
    }
}

/// Something found just as a cause plainly there would make it.
#[derive(Debug, Clone, Copy)]
enum Found {
    /// A number, so many times what suits.
    Times(Field, f64),
    /// A yes.
    Look(Look),
    /// A push at the front, or at the rear.
    Push(bool, PushFeel),
}

const CONFIRMS: &[(Cause, Found)] = &[
    (Cause::ForkRateSoft, Found::Times(Field::ForkRate, 0.80)),
    (Cause::ForkRateStiff, Found::Times(Field::ForkRate, 1.22)),
    (Cause::ShockRateSoft, Found::Times(Field::ShockRate, 0.81)),
    (Cause::ShockRateStiff, Found::Times(Field::ShockRate, 1.20)),
    (Cause::GasLow, Found::Times(Field::ForkPressure, 0.78)),
    (Cause::GasHigh, Found::Times(Field::ForkPressure, 1.25)),
    (Cause::TyreLow, Found::Times(Field::FrontTyre, 0.58)),
    (Cause::TyreHigh, Found::Times(Field::RearTyre, 1.75)),
    (Cause::ForkBound, Found::Look(Look::FreesWithAxleLoose)),
    (Cause::ForkFriction, Found::Look(Look::FreesWhenCleaned)),
    (Cause::ForkBound, Found::Look(Look::SticksWithoutGas)),
    (Cause::ForkFriction, Found::Look(Look::SticksWithoutGas)),
    (Cause::GasNegative, Found::Look(Look::HangsShort)),
    (Cause::ForkOilWorn, Found::Look(Look::ForkSquelches)),
    (Cause::ShockGasLost, Found::Look(Look::ShockSquelches)),
    (Cause::LinkageDry, Found::Look(Look::LinkageStiff)),
    (Cause::HeadBearings, Found::Look(Look::HeadKnocks)),
    (Cause::Attitude, Found::Look(Look::SitsOutOfLevel)),
    (
        Cause::ForkFriction,
        Found::Push(true, PushFeel::SticksFirst),
    ),
    (Cause::LinkageDry, Found::Push(false, PushFeel::SticksFirst)),
    (
        Cause::ForkReboundSlow,
        Found::Push(true, PushFeel::SlowReturn),
    ),
    (
        Cause::ShockReboundFast,
        Found::Push(false, PushFeel::FastReturn),
    ),
];

/// What would suit, in SI; `None` where this bike has no such thing.
fn suits(field: Field, known: &Known) -> Option<f64> {
    use sagwright_core::stance::baseline::{fork_pressure, fork_rate, shock_rate};
    let tyres = sagwright_core::stance::tyres::tyres(&known.situation);
    match field {
        Field::ForkRate if !known.situation.gas() => {
            fork_rate(&known.situation).ok().map(|rate| rate.value)
        }
        Field::ForkPressure if known.situation.gas() => {
            fork_pressure(&known.situation).ok().map(|pa| pa.value)
        }
        Field::ShockRate => shock_rate(&known.situation).ok().map(|rate| rate.value),
        Field::FrontTyre => Some(tyres.front.middle.value),
        Field::RearTyre => Some(tyres.rear.middle.value),
        _ => None,
    }
}

/// The springs, preload and sags of each end: they hang together, so that one says something else beside others.
const ENDS: [&[Field]; 2] = [
    &[
        Field::ForkRate,
        Field::ForkPressure,
        Field::ForkPreload,
        Field::ForkRiderSag,
        Field::ForkFreeSag,
    ],
    &[
        Field::ShockRate,
        Field::ShockPreload,
        Field::RearRiderSag,
        Field::RearFreeSag,
    ],
];

/// Takes a number away, and what goes together with it.
fn forget(field: Field, intake: &mut Intake) {
    field.set(intake, None);
    for other in ENDS
        .into_iter()
        .filter(|end| end.contains(&field))
        .flatten()
    {
        other.set(intake, None);
    }
}

/// The intake without and with something found; `None` where this bike has no such thing.
fn with(mut intake: Intake, found: Found, known: &Known) -> Option<[Intake; 2]> {
    match found {
        Found::Times(field, factor) => {
            forget(field, &mut intake);
            let before = intake.clone();
            let unit = match field {
                Field::ForkRate | Field::ShockRate => Unit::NewtonPerMillimetre,
                _ => Unit::Bar,
            };
            let typed = Typed {
                value: unit.from_si(factor * suits(field, known)?),
                unit,
                how: None,
            };
            field.set(&mut intake, Some(typed));
            Some([before, intake])
        }
        Found::Look(look) => {
            let before = intake.clone();
            let looks = intake.measured.looks.get_or_insert_default();
            looks.insert(look, YesNo::Yes);
            Some([before, intake])
        }
        Found::Push(front, feel) => {
            let measured = &mut intake.measured;
            let place = if front {
                &mut measured.push_front
            } else {
                &mut measured.push_rear
            };
            *place = None;
            let before = intake.clone();
            let measured = &mut intake.measured;
            let place = if front {
                &mut measured.push_front
            } else {
                &mut measured.push_rear
            };
            *place = Some(feel);
            Some([before, intake])
        }
    }
}

/// What can be amiss with the spring of a shock.
const OF_SHOCKS: &[Cause] = &[
    Cause::ShockRateSoft,
    Cause::ShockRateStiff,
    Cause::ShockPreload,
];

/// The intake with no number of the rear, and with all four as a cause plainly there makes them on the likeliest bike.
fn with_shock(mut intake: Intake, cause: Cause, known: &Known) -> Option<[Intake; 2]> {
    forget(Field::ShockRate, &mut intake);
    let before = intake.clone();
    let [rate, preload, ridden, free] = sound(&known.situation).ok()?.usual[1];
    let plain = |fault: &&Rehearsed| fault.cause == cause && fault.plain;
    let fault = known.rehearsal.faults.iter().find(plain)?;
    let [rate, preload] = match cause {
        Cause::ShockPreload => [rate, preload + 1e-3 * fault.degree],
        _ => [rate * (1.0 + fault.degree), preload],
    };
    let numbers = [
        (Field::ShockRate, rate, Unit::NewtonPerMillimetre),
        (Field::ShockPreload, preload, Unit::Millimetre),
        (
            Field::RearRiderSag,
            ridden + fault.shown.ridden_m[1],
            Unit::Millimetre,
        ),
        (
            Field::RearFreeSag,
            free + fault.shown.free_m[1],
            Unit::Millimetre,
        ),
    ];
    for (field, si, unit) in numbers {
        let typed = Typed {
            value: unit.from_si(si),
            unit,
            how: None,
        };
        field.set(&mut intake, Some(typed));
    }
    Some([before, intake])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..config() })]

    #[test]
    fn what_confirms_a_cause_never_lowers_it(intake in intake(), (cause, found) in select(CONFIRMS)) {
        prop_assume!(check(&intake).is_ok());
        prop_assume!(possible(&intake, cause) > 0.0);
        let known = Known::of(&intake, false);
        prop_assume!(known.is_some());
        let known = known.expect("assumed");
        let both = with(intake, found, &known);
        prop_assume!(both.is_some());
        let [before, after] = both.expect("assumed");
        let (before, after) = (known.belief(&before).of(cause), known.belief(&after).of(cause));
        prop_assert!(after >= before - 1e-9, "{:?} by {:?}: {} then {}", cause, found, before, after);
    }

    #[test]
    fn an_end_read_as_a_cause_makes_it_never_lowers_that_cause(intake in intake(), cause in select(OF_SHOCKS)) {
        prop_assume!(check(&intake).is_ok());
        let known = Known::of(&intake, false);
        prop_assume!(known.is_some());
        let known = known.expect("assumed");
        let both = with_shock(intake, cause, &known);
        prop_assume!(both.is_some());
        let [before, after] = both.expect("assumed");
        prop_assume!(check(&after).is_ok());
        let (before, after) = (known.belief(&before).of(cause), known.belief(&after).of(cause));
        prop_assert!(after >= before - 1e-9, "{:?}: {} then {}", cause, before, after);
    }

    #[test]
    fn more_hours_never_lower_what_wears(intake in intake(), hours in 0.0..500.0_f64, more in 1.0..500.0_f64) {
        prop_assume!(check(&intake).is_ok());
        let known = Known::of(&intake, false);
        prop_assume!(known.is_some());
        let known = known.expect("assumed");
        let after = |hours: f64| {
            let mut intake = intake.clone();
            let typed = Typed { value: hours, unit: Unit::Hour, how: None };
            Field::ForkHours.set(&mut intake, Some(typed));
            known.belief(&intake).of(Cause::ForkFriction)
        };
        let (fewer, more) = (after(hours), after(hours + more));
        prop_assert!(more >= fewer - 1e-9, "{} then {}", fewer, more);
    }

    #[test]
    fn the_order_of_answers_does_not_matter(intake in intake()) {
        prop_assume!(check(&intake).is_ok());
        let known = Known::of(&intake, false);
        prop_assume!(known.is_some());
        let known = known.expect("assumed");
        let mut other = intake.clone();
        other.complaints.iter_mut().for_each(|all| all.reverse());
        other.tried.reverse();
        let (one, other) = (known.belief(&intake), known.belief(&other));
        for cause in Cause::ALL {
            prop_assert!((one.of(*cause) - other.of(*cause)).abs() < 1e-9, "{:?}", cause);
        }
    }
}

/// The numbers and pushes of an intake that can be taken back one by one.
fn without_each(intake: &Intake) -> Vec<Intake> {
    let pages = |field: &&Field| {
        let path = field.path();
        path.starts_with("measured.") || path.starts_with("bike.") && path != "bike.weight"
    };
    let mut all: Vec<Intake> = Field::ALL
        .iter()
        .filter(pages)
        .filter(|field| field.get(intake).is_some())
        .map(|field| {
            let mut without = intake.clone();
            field.set(&mut without, None);
            without
        })
        .collect();
    for front in [true, false] {
        let mut without = intake.clone();
        let push = if front {
            &mut without.measured.push_front
        } else {
            &mut without.measured.push_rear
        };
        if push.take().is_some() {
            all.push(without);
        }
    }
    all
}

#[test]
fn fewer_answers_leave_more_open_on_average() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data");
    let mut widened = Vec::new();
    for file in std::fs::read_dir(folder)
        .expect("the demo intakes")
        .flatten()
    {
        // The workshop's price list is no intake, and its page has a folder.
        let text = std::fs::read_to_string(file.path()).unwrap_or_default();
        let Ok(intake) = read(&text) else { continue };
        let Some(known) = Known::of(&intake, true) else {
            continue;
        };
        let all = known.open_bits(&intake);
        let without = without_each(&intake);
        widened.extend(without.iter().map(|one| known.open_bits(one) - all));
    }
    assert!(widened.len() > 50, "only {} answers", widened.len());
    #[expect(clippy::cast_precision_loss, reason = "some hundred answers")]
    let mean = widened.iter().sum::<f64>() / widened.len() as f64;
    println!(
        "{} answers taken back, {mean:.4} bits wider on average",
        widened.len()
    );
    assert!(mean > 0.0, "{mean} bits");
}
