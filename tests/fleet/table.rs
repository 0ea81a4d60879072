//! The baseline: how each cause usually shows, as a hand would write it down, weighed as naive Bayes.
//!
//! Every figure is common practice, from memory, and was set without this fleet.

use sagwright_core::cause::said::onset;
use sagwright_core::cause::{Cause, Hypothesis, Observation};
use sagwright_core::intake::End::{self, Both, Front, Rear};
use sagwright_core::intake::Feeling::{
    self, Bottoms, Dives, Fades, HarshBigHits, HarshSmallBumps, Headshake, Kicks, Packs, Pushes,
    RampsUp, SitsWrong, Skips, Springs, Squats, Sticks, Wallows,
};
use sagwright_core::intake::Phase::{self, Braking, Exit, Landing, MidTurn, Straight, TurnEntry};
use sagwright_core::intake::{Complaint, Intake, Severity};
use sagwright_core::words::Text;

/// What is felt, at which end, with the chance that a rider whose bike has the cause says so; and when it shows most.
type Row = (Cause, &'static [(Feeling, End, f64)], &'static [Phase]);

/// Chance that a rider mentions a feeling though nothing causes it.
const LEAK: f64 = 0.05;
/// A feeling not mentioned counts half.
const SILENCE: f64 = 0.5;

#[rustfmt::skip]
const TABLE: &[Row] = &[
    (Cause::ForkRateSoft, &[(Dives, Front, 0.75), (Bottoms, Front, 0.65), (SitsWrong, Front, 0.5), (HarshBigHits, Front, 0.25), (Packs, Front, 0.2), (Headshake, Front, 0.2)], &[Braking, Landing, TurnEntry]),
    (Cause::ForkRateStiff, &[(RampsUp, Front, 0.6), (HarshSmallBumps, Front, 0.45), (HarshBigHits, Front, 0.45), (Pushes, Front, 0.45), (SitsWrong, Front, 0.4), (Skips, Front, 0.35)], &[TurnEntry, MidTurn, Straight]),
    (Cause::ForkPreload, &[(SitsWrong, Front, 0.6), (HarshSmallBumps, Front, 0.3), (Pushes, Front, 0.25), (Dives, Front, 0.25)], &[TurnEntry, Braking]),
    (Cause::GasLow, &[(Dives, Front, 0.75), (Bottoms, Front, 0.6), (SitsWrong, Front, 0.55), (Packs, Front, 0.2), (Headshake, Front, 0.2)], &[Braking, Landing, TurnEntry]),
    (Cause::GasHigh, &[(HarshSmallBumps, Front, 0.6), (RampsUp, Front, 0.55), (Sticks, Front, 0.5), (Pushes, Front, 0.4), (Skips, Front, 0.4), (SitsWrong, Front, 0.35), (HarshBigHits, Front, 0.3)], &[Straight, TurnEntry, MidTurn]),
    (Cause::GasNegative, &[(HarshSmallBumps, Front, 0.6), (Sticks, Front, 0.5), (SitsWrong, Front, 0.45), (Skips, Front, 0.3), (Dives, Front, 0.2)], &[Straight, TurnEntry]),
    (Cause::GasDrag, &[(HarshSmallBumps, Front, 0.75), (Sticks, Front, 0.6), (RampsUp, Front, 0.45), (Skips, Front, 0.4), (Dives, Front, 0.35)], &[Straight, Braking]),
    (Cause::ForkFriction, &[(HarshSmallBumps, Front, 0.75), (Sticks, Front, 0.7), (Skips, Front, 0.4), (HarshBigHits, Front, 0.2), (Pushes, Front, 0.2), (SitsWrong, Front, 0.15)], &[Straight, Braking]),
    (Cause::ForkBound, &[(Sticks, Front, 0.7), (HarshSmallBumps, Front, 0.6), (HarshBigHits, Front, 0.3), (Skips, Front, 0.3)], &[Straight, Braking]),
    (Cause::ForkOilLow, &[(Bottoms, Front, 0.75), (Dives, Front, 0.4), (HarshBigHits, Front, 0.2), (Fades, Front, 0.15)], &[Landing, Braking]),
    (Cause::ForkOilHigh, &[(RampsUp, Front, 0.75), (HarshBigHits, Front, 0.5)], &[Landing, Braking]),
    (Cause::ForkOilWorn, &[(Fades, Front, 0.55), (Springs, Front, 0.35), (Dives, Front, 0.35), (Wallows, Front, 0.35), (Bottoms, Front, 0.3)], &[Braking, Straight]),
    (Cause::ForkCompressionMuch, &[(HarshBigHits, Front, 0.7), (HarshSmallBumps, Front, 0.5), (RampsUp, Front, 0.45), (Skips, Front, 0.45), (Pushes, Front, 0.25)], &[Straight, Braking]),
    (Cause::ForkCompressionLittle, &[(Dives, Front, 0.6), (Bottoms, Front, 0.5), (Wallows, Front, 0.35)], &[Braking, Landing]),
    (Cause::ForkReboundSlow, &[(Packs, Front, 0.8), (HarshBigHits, Front, 0.35), (HarshSmallBumps, Front, 0.3), (Skips, Front, 0.3), (SitsWrong, Front, 0.2), (Sticks, Front, 0.15)], &[Straight, Braking]),
    (Cause::ForkReboundFast, &[(Springs, Front, 0.75), (Headshake, Front, 0.4), (Skips, Front, 0.35), (Pushes, Front, 0.3), (Wallows, Front, 0.3)], &[TurnEntry, Straight, Landing]),
    (Cause::MidValve, &[(HarshBigHits, Front, 0.65), (HarshSmallBumps, Front, 0.45), (RampsUp, Front, 0.3), (Fades, Front, 0.25), (Sticks, Front, 0.2)], &[Landing, Braking, Straight]),
    (Cause::ForkReservoir, &[(Fades, Front, 0.65), (Springs, Front, 0.3), (Wallows, Front, 0.3), (Dives, Front, 0.3), (Bottoms, Front, 0.3)], &[Braking, Landing, Straight]),
    (Cause::ShockRateSoft, &[(Bottoms, Rear, 0.65), (Squats, Rear, 0.6), (SitsWrong, Rear, 0.55), (Pushes, Front, 0.35), (Wallows, Rear, 0.3), (Kicks, Rear, 0.25), (Packs, Rear, 0.2)], &[Exit, Landing]),
    (Cause::ShockRateStiff, &[(Kicks, Rear, 0.5), (Skips, Rear, 0.5), (HarshBigHits, Rear, 0.4), (HarshSmallBumps, Rear, 0.35), (SitsWrong, Rear, 0.35), (RampsUp, Rear, 0.35), (Headshake, Front, 0.15)], &[Braking, Straight]),
    (Cause::ShockPreload, &[(SitsWrong, Rear, 0.6), (Squats, Rear, 0.4), (Pushes, Front, 0.35), (Headshake, Front, 0.25), (Kicks, Rear, 0.2)], &[TurnEntry, Exit, MidTurn]),
    (Cause::ShockCompressionMuch, &[(HarshBigHits, Rear, 0.6), (Kicks, Rear, 0.55), (Skips, Rear, 0.45), (HarshSmallBumps, Rear, 0.4), (RampsUp, Rear, 0.3)], &[Straight, Braking]),
    (Cause::ShockCompressionLittle, &[(Bottoms, Rear, 0.55), (Squats, Rear, 0.5), (Wallows, Rear, 0.45)], &[Exit, Landing]),
    (Cause::ShockReboundSlow, &[(Packs, Rear, 0.8), (Skips, Rear, 0.4), (HarshBigHits, Rear, 0.35), (Squats, Rear, 0.25), (SitsWrong, Rear, 0.2)], &[Straight, Exit]),
    (Cause::ShockReboundFast, &[(Kicks, Rear, 0.75), (Springs, Rear, 0.6), (Wallows, Rear, 0.35), (Skips, Rear, 0.3)], &[Braking, Straight, Landing]),
    (Cause::ShockGasLost, &[(Fades, Rear, 0.7), (Wallows, Rear, 0.55), (Springs, Rear, 0.4), (Bottoms, Rear, 0.35), (Kicks, Rear, 0.35)], &[Straight, Landing, Exit]),
    (Cause::LinkageDry, &[(Sticks, Rear, 0.55), (HarshSmallBumps, Rear, 0.5), (Skips, Rear, 0.4), (Kicks, Rear, 0.25), (Packs, Rear, 0.15)], &[Straight, Braking]),
    (Cause::Attitude, &[(Pushes, Front, 0.55), (Headshake, Front, 0.5), (SitsWrong, Both, 0.45), (Kicks, Rear, 0.15)], &[TurnEntry, MidTurn, Straight]),
    (Cause::TyreHigh, &[(Skips, Both, 0.55), (HarshSmallBumps, Both, 0.5), (Pushes, Front, 0.3)], &[Straight, Braking, MidTurn]),
    (Cause::TyreLow, &[(Wallows, Both, 0.35), (Pushes, Front, 0.35), (HarshBigHits, Both, 0.15)], &[MidTurn, TurnEntry]),
    (Cause::HeadBearings, &[(Headshake, Front, 0.65), (Pushes, Front, 0.3)], &[Straight, Braking]),
];

fn row(cause: Cause) -> Option<&'static Row> {
    TABLE.iter().find(|(of, ..)| *of == cause)
}

/// What a rider's words say to the table, feeling by feeling.
pub fn read(intake: &Intake, ways: &[Hypothesis]) -> Vec<Observation> {
    let Some(complaints) = &intake.complaints else {
        return Vec::new();
    };
    let one = |feeling: &Feeling| {
        let said = complaints.iter().find(|said| said.feeling == *feeling);
        Observation::of(Text::new("hand-table"), ways, |way| {
            let causes: Vec<Cause> = way.faults.iter().map(|fault| fault.cause).collect();
            match said {
                Some(said) => heard(&causes, said),
                None => SILENCE * libm::log(1.0 - mentioned(&causes, *feeling, None)),
            }
        })
    };
    Feeling::ALL.iter().map(one).collect()
}

fn heard(causes: &[Cause], said: &Complaint) -> f64 {
    let weight = match said.severity {
        Some(Severity::Slight) => 0.6,
        Some(Severity::Clear) | None => 1.0,
        Some(Severity::Bad) => 1.2,
    };
    let mention = weight * libm::log(mentioned(causes, said.feeling, said.end));
    let each = |of: &dyn Fn(Cause) -> f64, none: f64| {
        if causes.is_empty() {
            none
        } else {
            #[expect(clippy::cast_precision_loss, reason = "one or two")]
            let count = causes.len() as f64;
            causes.iter().map(|cause| of(*cause)).sum::<f64>() / count
        }
    };
    let moment = |cause: Cause| match row(cause) {
        Some((_, feelings, phases)) if feelings.iter().any(|(of, ..)| *of == said.feeling) => {
            if said.phases.iter().any(|phase| phases.contains(phase)) {
                0.7
            } else {
                0.4
            }
        }
        _ => 0.55,
    };
    let moments = if said.phases.is_empty() {
        1.0
    } else {
        each(&moment, 0.55)
    };
    let history = said.since.map_or(1.0, |since| {
        each(
            &|cause| {
                if onset(cause).contains(&since) {
                    3.0
                } else {
                    1.0
                }
            },
            1.7,
        )
    });
    mention + libm::log(moments) + libm::log(history)
}

/// Chance that a feeling is mentioned at an end: noisy-or of the causes and a leak.
fn mentioned(causes: &[Cause], feeling: Feeling, said: Option<End>) -> f64 {
    let leak = if said.is_some() { LEAK / 3.0 } else { LEAK };
    let mut quiet = 1.0 - leak;
    for (_, feelings, _) in causes.iter().filter_map(|cause| row(*cause)) {
        for (shown, at, strength) in *feelings {
            if *shown == feeling {
                quiet *= 1.0 - strength * placed(said, *at);
            }
        }
    }
    1.0 - quiet
}

/// Chance that a rider places a feeling at `said` when its cause sits at `real`.
fn placed(said: Option<End>, real: End) -> f64 {
    match (said, real) {
        (None, _) => 1.0,
        (Some(Both), Both) => 0.5,
        (Some(Both), _) => 0.12,
        (Some(_), Both) => 0.25,
        (Some(said), real) if said == real => 0.82,
        _ => 0.06,
    }
}
