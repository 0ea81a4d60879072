//! The next best check: what it would tell, for the minutes it takes.

use super::Cause;
use super::belief::{Belief, PerCause, entropy_bits};
use super::measured::push_means;
use crate::intake::{Field, Intake, PushFeel, Question};

/// A check a rider can do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// The word that stands for it in text keys.
    pub word: &'static str,
    /// Minutes it takes, tools at hand. Common practice.
    pub minutes: u32,
    /// The page that takes its result.
    pub question: Question,
    /// Each outcome other than "as it should be", with the causes that make it.
    pub outcomes: &'static [&'static [Cause]],
}

/// Chance that a check shows the outcome its cause makes, and that it shows it without that cause.
const HIT: f64 = 0.8;
const FALSE_ALARM: f64 = 0.1;

/// Every check, in the order of the pages that take their results.
pub const CHECKS: &[Check] = &[
    Check {
        word: "fork-gas",
        minutes: 5,
        question: Question::ForkGas,
        outcomes: &[&[Cause::GasLow], &[Cause::GasHigh]],
    },
    Check {
        word: "fork-clickers",
        minutes: 5,
        question: Question::ForkClickers,
        outcomes: &[
            &[Cause::ForkCompressionMuch],
            &[Cause::ForkCompressionLittle],
            &[Cause::ForkReboundSlow],
            &[Cause::ForkReboundFast],
        ],
    },
    Check {
        word: "shock-clickers",
        minutes: 5,
        question: Question::ShockClickers,
        outcomes: &[
            &[Cause::ShockCompressionMuch],
            &[Cause::ShockCompressionLittle],
            &[Cause::ShockReboundSlow],
            &[Cause::ShockReboundFast],
        ],
    },
    Check {
        word: "service-hours",
        minutes: 5,
        question: Question::ServiceHours,
        outcomes: &[
            &[Cause::ForkFriction, Cause::ForkOilWorn],
            &[Cause::LinkageDry, Cause::ShockGasLost],
        ],
    },
    Check {
        word: "sag-front",
        minutes: 10,
        question: Question::SagFront,
        outcomes: &[
            &[Cause::ForkRateSoft, Cause::GasLow],
            &[Cause::ForkRateStiff, Cause::GasHigh, Cause::GasNegative],
            &[Cause::ForkPreload],
        ],
    },
    Check {
        word: "sag-rear",
        minutes: 10,
        question: Question::SagRear,
        outcomes: &[
            &[Cause::ShockRateSoft],
            &[Cause::ShockRateStiff],
            &[Cause::ShockPreload],
        ],
    },
    Check {
        word: "travel-used",
        minutes: 15,
        question: Question::TravelUsed,
        outcomes: &[
            &[
                Cause::ForkOilLow,
                Cause::ForkRateSoft,
                Cause::GasLow,
                Cause::ForkCompressionLittle,
            ],
            &[
                Cause::ForkOilHigh,
                Cause::ForkRateStiff,
                Cause::GasHigh,
                Cause::ForkCompressionMuch,
                Cause::GasDrag,
            ],
        ],
    },
    Check {
        word: "tyre-pressures",
        minutes: 3,
        question: Question::TyrePressures,
        outcomes: &[&[Cause::TyreHigh], &[Cause::TyreLow]],
    },
    Check {
        word: "push-test",
        minutes: 3,
        question: Question::PushTest,
        outcomes: &[
            push_means(PushFeel::SticksFirst, true),
            push_means(PushFeel::FastReturn, true),
            push_means(PushFeel::SlowReturn, true),
            push_means(PushFeel::SticksFirst, false),
            push_means(PushFeel::SlowReturn, false),
            push_means(PushFeel::FastReturn, false),
        ],
    },
];

/// The check with the most expected information per minute among those not answered yet.
///
/// `None` when everything has been answered or nothing left would tell at least three hundredths of a bit.
pub fn next_best(belief: &Belief, intake: &Intake) -> Option<(&'static Check, f64)> {
    const LEAST_BITS: f64 = 0.03;
    CHECKS
        .iter()
        .filter(|check| !answered(intake, check.question))
        .map(|check| (check, expected_bits(&belief.probability, check)))
        .filter(|(_, bits)| *bits >= LEAST_BITS)
        .max_by(|a, b| per_minute(*a).total_cmp(&per_minute(*b)))
}

fn per_minute((check, bits): (&Check, f64)) -> f64 {
    bits / f64::from(check.minutes)
}

/// The two most believed causes that `check` tells apart: the first it can show, and the next that makes another outcome.
pub fn told_apart(belief: &Belief, check: &Check) -> (Cause, Cause) {
    let outcome = |cause: Cause| {
        check
            .outcomes
            .iter()
            .position(|causes| causes.contains(&cause))
    };
    let ranked = belief.ranked();
    let first = ranked
        .iter()
        .map(|(cause, _)| *cause)
        .find(|cause| outcome(*cause).is_some());
    let first = first.unwrap_or(Cause::NothingWrong);
    let mut others = ranked.iter().map(|(cause, _)| *cause);
    let second = others.find(|cause| *cause != first && outcome(*cause) != outcome(first));
    (first, second.unwrap_or(Cause::NothingWrong))
}

/// Expected fall of the entropy of `belief`, bits: the mutual information of cause and outcome.
pub fn expected_bits(belief: &PerCause, check: &Check) -> f64 {
    let mut after = 0.0;
    for outcome in 0..=check.outcomes.len() {
        let joint: PerCause =
            std::array::from_fn(|i| belief[i] * outcome_chance(check, outcome, Cause::ALL[i]));
        let total: f64 = joint.iter().sum();
        if total > 0.0 {
            after += total * entropy_bits(&joint.map(|p| p / total));
        }
    }
    (entropy_bits(belief) - after).max(0.0)
}

/// Chance of an outcome under a cause; the last outcome is "as it should be".
fn outcome_chance(check: &Check, outcome: usize, cause: Cause) -> f64 {
    let count = check.outcomes.len();
    let own = check
        .outcomes
        .iter()
        .position(|causes| causes.contains(&cause));
    let spread = |among: usize, share: f64| {
        #[allow(clippy::cast_precision_loss, reason = "a handful of outcomes")]
        let among = among.max(1) as f64;
        share / among
    };
    match own {
        Some(own) if own == outcome => HIT,
        Some(_) => spread(count, 1.0 - HIT),
        None if outcome == count => 1.0 - FALSE_ALARM,
        None => spread(count, FALSE_ALARM),
    }
}

/// Whether the page has been answered with something that counts as evidence.
fn answered(intake: &Intake, question: Question) -> bool {
    let measured = &intake.measured;
    let pushed = measured.push_front.is_some() || measured.push_rear.is_some();
    match question {
        Question::PushTest => pushed,
        _ => Field::ALL.iter().any(|field| {
            field.question() == question && tells(*field) && field.get(intake).is_some()
        }),
    }
}

/// A known range of clicks or a marked maximum says nothing about where the thing stands.
fn tells(field: Field) -> bool {
    !matches!(
        field,
        Field::ForkPressureMax
            | Field::ForkCompressionRange
            | Field::ForkReboundRange
            | Field::ShockLowRange
            | Field::ShockHighRange
            | Field::ShockReboundRange
    )
}
