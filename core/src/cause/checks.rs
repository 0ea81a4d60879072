//! What can be checked: on every bike it could be, the chance of every result, as it is for results that have come in.

use super::Cause;
use super::belief::Belief;
use super::hypotheses::Hypothesis;
use super::looks;
use super::measured::{Reading, hours_factor, push_chance};
use super::numbers::Numbers;
use super::readings::{clicks, supposed};
use super::rehearsal::Rehearsal;
use super::telling::Believed;
use super::tried::Tryout;
use crate::intake::{Change, Feeling, Field, Intake, Look, PushFeel, Question, Severity, Verdict};
use crate::stance::{Baseline, Situation};

/// A check a rider can do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Check {
    /// The word that stands for it in text keys.
    pub word: &'static str,
    /// Minutes it takes, tools at hand and what is looked at lying open. Common practice.
    pub minutes: u32,
    /// How it is done.
    pub how: How,
}

/// How a check is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// By answering a page.
    Answer(Question),
    /// By a look or a feel at the parked bike.
    Look(Look),
    /// By one change, one lap, and a verdict on the worst complaint.
    Try(Change),
}

const fn check(word: &'static str, minutes: u32, question: Question) -> Check {
    Check {
        word,
        minutes,
        how: How::Answer(question),
    }
}

/// Minutes for a change and a lap (common practice).
pub const LAP_MINUTES: u32 = 12;

/// Every check that a page takes, in the order of the pages; then every look at the parked bike, and every change that can be
/// tried for a lap.
pub fn all() -> impl Iterator<Item = Check> {
    let looks = Look::ALL.iter().map(|look| Check {
        word: "look",
        minutes: looks::minutes(*look),
        how: How::Look(*look),
    });
    let tried = Change::ALL.iter().map(|change| Check {
        word: "try",
        minutes: LAP_MINUTES,
        how: How::Try(*change),
    });
    PAGES.iter().copied().chain(looks).chain(tried)
}

const PAGES: &[Check] = &[
    check("fork-gas", 5, Question::ForkGas),
    check("fork-clickers", 5, Question::ForkClickers),
    check("shock-clickers", 5, Question::ShockClickers),
    check("air", 2, Question::GroundToday),
    check("service-hours", 5, Question::ServiceHours),
    check("sag-front", 10, Question::SagFront),
    check("sag-rear", 10, Question::SagRear),
    check("travel-used", 15, Question::TravelUsed),
    check("tyre-pressures", 3, Question::TyrePressures),
    check("push-test", 3, Question::PushTest),
    check("shock-spring", 5, Question::ShockSpring),
    check("fork-spring", 15, Question::ForkSpring),
];

/// Results of a reading that are told apart, in standard deviations from what would suit.
const RESULTS: [f64; 11] = [-8.0, -5.0, -3.5, -2.0, -1.0, 0.0, 1.0, 2.0, 3.5, 5.0, 8.0];
/// Hours since service that are told apart.
const HOURS: [f64; 4] = [4.0, 15.0, 40.0, 100.0];

/// All that a check is judged by.
pub struct Case<'a> {
    /// What was answered.
    pub intake: &'a Intake,
    /// The bike it makes.
    pub situation: &'a Situation,
    /// What suits it.
    pub baseline: &'a Baseline,
    /// What each fault and each change would do.
    pub rehearsal: &'a Rehearsal,
    /// What could be wrong.
    pub hypotheses: &'a [Hypothesis<'a>],
    /// The table of hand-set numbers.
    pub numbers: &'a Numbers,
    /// What is believed.
    pub belief: &'a Belief,
}

/// The two most believed causes that `check` tells apart: those whose results differ most, weighted by belief.
pub fn told_apart(case: &Case, check: &Check) -> (Cause, Cause) {
    let ranked: Vec<(Cause, f64)> = case.belief.ranked().into_iter().take(6).collect();
    let results = result_chances(case, check);
    let of = |cause: Cause| -> Option<Vec<f64>> {
        let alone = |h: &&Hypothesis| h.has(cause) && h.faults.len() <= 1;
        let bike = case.hypotheses.iter().filter(alone).max_by(|a, b| {
            let plain = |h: &Hypothesis| h.faults.first().is_some_and(|f| f.plain);
            plain(a).cmp(&plain(b))
        })?;
        Some(results(bike))
    };
    let mut best = (Cause::NothingWrong, Cause::NothingWrong, -1.0);
    for (place, (first, p)) in ranked.iter().enumerate() {
        for (second, q) in &ranked[place + 1..] {
            let (Some(a), Some(b)) = (of(*first), of(*second)) else {
                continue;
            };
            let apart: f64 = a.iter().zip(&b).map(|(a, b)| (a - b).abs()).sum();
            if apart * p * q > best.2 {
                best = (*first, *second, apart * p * q);
            }
        }
    }
    (best.0, best.1)
}

/// Mutual information of the result of `check` and of which causes are there, bits.
pub fn expected_bits(case: &Case, check: &Check) -> f64 {
    let believed = Believed::of(case.hypotheses, case.belief);
    believed.bits(&believed.results(result_chances(case, check)))
}

/// The chance of each result of a check on a bike; they sum to 1.
pub fn result_chances<'a>(
    case: &'a Case,
    check: &'a Check,
) -> impl Fn(&Hypothesis) -> Vec<f64> + 'a {
    let readings = readings_of(case, check);
    move |hypothesis| results(case, check, &readings, hypothesis)
}

fn results(case: &Case, check: &Check, readings: &[Reading], hypothesis: &Hypothesis) -> Vec<f64> {
    let weights = match check.how {
        How::Try(change) => of_trying(case, change, hypothesis),
        How::Look(look) => {
            let yes = looks::chance(hypothesis, look, readings, case.numbers);
            vec![yes, 1.0 - yes]
        }
        How::Answer(Question::PushTest) => pairs(&[true, false].map(|front| {
            PushFeel::ALL
                .iter()
                .map(|feel| push_chance(hypothesis, case.numbers, *feel, front))
                .collect()
        })),
        How::Answer(Question::ServiceHours) => pairs(&[true, false].map(|fork| {
            HOURS
                .iter()
                .map(|hours| hours_factor(*hours, fork, hypothesis))
                .collect()
        })),
        How::Answer(_) => {
            // Two readings of one check are enough: with more the results would be too many to count, and tell little more.
            let each: Vec<Vec<f64>> = readings
                .iter()
                .take(2)
                .map(|reading| of_reading(case, reading, hypothesis))
                .collect();
            pairs(&each)
        }
    };
    let sum: f64 = weights.iter().sum();
    if sum > 0.0 {
        weights.into_iter().map(|weight| weight / sum).collect()
    } else {
        weights
    }
}

/// The readings that a check would give; for a look those that were taken and that its chances depend on.
fn readings_of(case: &Case, check: &Check) -> Vec<Reading> {
    match check.how {
        How::Answer(question) => supposed(case.intake, case.situation, case.baseline, question),
        How::Look(_) => clicks(case.intake, case.situation, case.baseline),
        How::Try(_) => Vec::new(),
    }
}

/// Verdicts on the worst complaint.
fn of_trying(case: &Case, change: Change, hypothesis: &Hypothesis) -> Vec<f64> {
    let tried = worst_complaint(case.intake).zip(Tryout::of(case.intake, case.rehearsal, change));
    let Some((worst, tryout)) = tried else {
        return vec![1.0];
    };
    tryout
        .chances(case.numbers, hypothesis, worst, 0.0)
        .to_vec()
}

/// The complaint that is worst, the first of those that are as bad.
pub fn worst_complaint(intake: &Intake) -> Option<Feeling> {
    let complaints = intake.complaints.iter().flatten();
    let how_bad = |severity: Option<Severity>| severity.unwrap_or(Severity::Clear);
    complaints
        .rev()
        .max_by_key(|complaint| how_bad(complaint.severity))
        .map(|complaint| complaint.feeling)
}

fn of_reading(case: &Case, reading: &Reading, hypothesis: &Hypothesis) -> Vec<f64> {
    let densities = RESULTS
        .iter()
        .map(|z| reading.density(hypothesis, case.numbers, z * reading.sigma));
    densities.collect()
}

/// Results of independent parts of one check together; one certain result where there are no parts.
fn pairs(parts: &[Vec<f64>]) -> Vec<f64> {
    parts.iter().fold(vec![1.0], |so_far, part| {
        let sum: f64 = part.iter().sum();
        so_far
            .iter()
            .flat_map(|a| part.iter().map(move |b| a * b / sum))
            .collect()
    })
}

/// Whether a check is still to be done, and can be.
pub fn is_open(case: &Case, how: How) -> bool {
    !answered(case, how) && sensible(case, how)
}

/// Whether the check has been done already, with a result that counts as evidence.
fn answered(case: &Case, how: How) -> bool {
    let intake = case.intake;
    let question = match how {
        How::Answer(question) => question,
        How::Look(look) => {
            return intake
                .measured
                .looks
                .as_ref()
                .is_some_and(|looks| looks.contains_key(&look));
        }
        How::Try(change) => return intake.tried.iter().any(|tried| tried.change == change),
    };
    let measured = &intake.measured;
    let pushed = measured.push_front.is_some() || measured.push_rear.is_some();
    match question {
        Question::PushTest => pushed,
        _ => Field::ALL.iter().any(|field| {
            field.question() == question && tells(*field) && field.get(intake).is_some()
        }),
    }
}

/// Whether this bike can be looked at so, and whether a change is worth a lap: the worst complaint should be likelier to be
/// better than worse, and nothing else clearly worse for it.
pub fn sensible(case: &Case, how: How) -> bool {
    /// By how much likelier. From judgement: a change that moves nothing is as often said to be better as worse.
    const LEAST_GOOD: f64 = 0.06;
    const MOST_HARM: f64 = 1.5;
    let change = match how {
        How::Answer(_) => return true,
        How::Look(look) => return looks::fits(case.intake, look),
        How::Try(change) => change,
    };
    let tried = worst_complaint(case.intake).zip(Tryout::of(case.intake, case.rehearsal, change));
    let Some((worst, tryout)) = tried else {
        return false;
    };
    let bikes = (case.hypotheses, case.belief.of_hypotheses.as_slice());
    let chances = tryout.expected(case.numbers, bikes, worst);
    let gain = chances[Verdict::Better as usize] - chances[Verdict::Worse as usize];
    let good = gain >= LEAST_GOOD;
    let harms = |feeling: &Feeling| tryout.on_healthy(*feeling) >= MOST_HARM;
    good && !Feeling::ALL.iter().any(harms)
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
