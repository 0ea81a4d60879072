//! Checks in rounds: what is worth doing in one go, with the same tools out.
//!
//! Fetching stand, helper and tools takes as long as many a check, and so does opening a fork. Whoever has them out does at
//! once what else they are good for, as long as that would still tell something on top.

use super::checks::{self, Case, Check, How, is_open, result_chances};
use super::telling::{Believed, Results};
use crate::intake::{Look, Question};

/// Checks worth doing in one go.
#[derive(Debug, Clone, PartialEq)]
pub struct Round {
    /// The checks, the one that tells most for its minutes first; never empty. What has to be opened counts to its minutes.
    pub checks: Vec<Check>,
    /// What they would tell together, bits.
    pub bits: f64,
    /// What the best of them would tell in each of their minutes, setting out included, bits.
    pub per_minute: f64,
}

/// What takes the same tools.
struct Job {
    /// Minutes until what is to be seen lies open. Common practice.
    opening: u32,
    /// What can be checked then.
    parts: &'static [How],
}

/// What the same tools are good for. What is in none of these is a round by itself.
const JOBS: &[Job] = &[
    // From memory and papers.
    Job {
        opening: 0,
        parts: &[
            How::Answer(Question::GroundToday),
            How::Answer(Question::ServiceHours),
        ],
    },
    // By hand, on the stand and off it.
    Job {
        opening: 0,
        parts: &[
            How::Answer(Question::PushTest),
            How::Look(Look::HeadKnocks),
            How::Look(Look::ForkSquelches),
            How::Look(Look::ShockSquelches),
            How::Look(Look::HangsShort),
        ],
    },
    // Gauges and a screwdriver.
    Job {
        opening: 0,
        parts: &[
            How::Answer(Question::TyrePressures),
            How::Answer(Question::ForkGas),
            How::Answer(Question::ForkClickers),
            How::Answer(Question::ShockClickers),
        ],
    },
    // A tape, and a helper.
    Job {
        opening: 0,
        parts: &[
            How::Answer(Question::SagRear),
            How::Answer(Question::SagFront),
            How::Answer(Question::ShockSpring),
            How::Look(Look::TubesOffTheMark),
            How::Look(Look::SitsOutOfLevel),
        ],
    },
    // Spanners, a cloth with oil, and the pump of a gas fork.
    Job {
        opening: 0,
        parts: &[
            How::Look(Look::FreesWithAxleLoose),
            How::Look(Look::FreesWhenCleaned),
            How::Look(Look::SticksWithoutGas),
        ],
    },
    // Fork caps off.
    Job {
        opening: 25,
        parts: &[
            How::Answer(Question::ForkSpring),
            How::Look(Look::OilOffTheLevel),
            How::Look(Look::ForkOilSpent),
        ],
    },
    // The damper out of the fork: on the way there all of the above lies open too.
    Job {
        opening: 60,
        parts: &[
            How::Look(Look::ForkShimsOff),
            How::Look(Look::MidValveTight),
            How::Answer(Question::ForkSpring),
            How::Look(Look::OilOffTheLevel),
            How::Look(Look::ForkOilSpent),
        ],
    },
    // The shock off the bike.
    Job {
        opening: 20,
        parts: &[How::Look(Look::LinkageStiff)],
    },
    // The shock off the bike and opened.
    Job {
        opening: 60,
        parts: &[
            How::Look(Look::ShockShimsOff),
            How::Look(Look::LinkageStiff),
            How::Answer(Question::ShockSpring),
        ],
    },
];

/// A check that would tell less is not worth doing, bits.
const LEAST_BITS: f64 = 0.05;
/// Minutes that fetching stand, helper and tools, putting them back, and coming back to this page take, whatever is checked
/// (common practice). Without them, a quick look that tells little would come before a measurement that settles the matter.
const SETTING_OUT: u32 = 20;

/// The rounds worth doing, the one that tells most for its minutes first. Each check is in one round at most.
pub fn ranked(case: &Case) -> Vec<Round> {
    let believed = Believed::of(case.hypotheses, case.belief);
    let mut left: Vec<Told> = checks::all()
        .filter(|check| is_open(case, check.how))
        .map(|check| Told::of(case, &believed, check))
        .filter(|told| told.bits >= LEAST_BITS)
        .collect();
    let alone = left.iter().filter(|told| {
        let of_job = |job: &Job| job.parts.contains(&told.check.how);
        !JOBS.iter().any(of_job)
    });
    let mut rounds: Vec<Round> = alone.map(|told| Round::begin(told, 0)).collect();
    let mut best_of_job: Vec<Option<Round>> = JOBS
        .iter()
        .map(|job| round(&believed, job, &left))
        .collect();
    // What is done in the best round is not done in another: what else that tool is good for may be worth another one.
    while let Some(best) = take_best(&mut best_of_job) {
        let done = |how: &How| best.checks.iter().any(|check| check.how == *how);
        left.retain(|told| !done(&told.check.how));
        for (job, of_job) in JOBS.iter().zip(&mut best_of_job) {
            if job.parts.iter().any(done) {
                *of_job = round(&believed, job, &left);
            }
        }
        rounds.push(best);
    }
    rounds.sort_by(|a, b| b.per_minute.total_cmp(&a.per_minute));
    rounds
}

/// Takes out the round that tells most for its minutes.
fn take_best(rounds: &mut [Option<Round>]) -> Option<Round> {
    let rate = |round: &Option<Round>| round.as_ref().map_or(f64::NEG_INFINITY, |r| r.per_minute);
    let best = rounds.iter_mut().max_by(|a, b| rate(a).total_cmp(&rate(b)));
    best?.take()
}

/// A check with what it would show and how much that tells by itself.
struct Told {
    check: Check,
    results: Results,
    bits: f64,
}

impl Told {
    fn of(case: &Case, believed: &Believed, check: Check) -> Self {
        let results = believed.results(result_chances(case, &check));
        Self {
            bits: believed.bits(&results),
            check,
            results,
        }
    }
}

impl Round {
    /// One check, after so many minutes of opening.
    fn begin(told: &Told, opening: u32) -> Self {
        let minutes = opening + told.check.minutes;
        Self {
            checks: vec![Check {
                minutes,
                ..told.check
            }],
            bits: told.bits,
            per_minute: rate(told.bits, minutes),
        }
    }

    /// Minutes of all its checks.
    fn minutes(&self) -> u32 {
        self.checks.iter().map(|check| check.minutes).sum()
    }
}

/// Bits for each minute of a round.
fn rate(bits: f64, minutes: u32) -> f64 {
    bits / f64::from(minutes + SETTING_OUT)
}

/// What is worth doing of what is left of a job; `None` where nothing is left.
fn round(believed: &Believed, job: &Job, left: &[Told]) -> Option<Round> {
    let mut parts: Vec<&Told> = left
        .iter()
        .filter(|told| job.parts.contains(&told.check.how))
        .collect();
    let own_rate = |told: &Told| told.bits / f64::from(told.check.minutes);
    parts.sort_by(|a, b| own_rate(b).total_cmp(&own_rate(a)));
    let (first, others) = parts.split_first()?;
    let mut round = Round::begin(first, job.opening);
    let mut results = first.results.clone();
    for told in others {
        let both = believed.both(&results, &told.results);
        let bits = believed.bits(&both);
        if bits < round.bits + LEAST_BITS {
            continue;
        }
        round.checks.push(told.check);
        round.per_minute = round.per_minute.max(rate(bits, round.minutes()));
        (round.bits, results) = (bits, both);
    }
    Some(round)
}
