//! What could be wrong with this bike: nothing, one fault, or two at once.

use std::ptr;

use super::Cause;
use super::felt::Felt;
use super::numbers::Numbers;
use super::rehearsal::{Rehearsal, Rehearsed, Shown};

/// A way the bike could be.
#[derive(Debug, Clone)]
pub struct Hypothesis<'a> {
    /// Its faults: none, one or two.
    pub faults: Vec<&'a Rehearsed>,
    /// Natural log of its odds before anything is said.
    pub log_prior: f64,
    /// What the rider would feel.
    pub felt: Felt,
    /// What would be measured.
    pub shown: Shown,
}

impl Hypothesis<'_> {
    /// Whether `cause` is among its faults; "nothing is wrong" is when there is none.
    pub fn has(&self, cause: Cause) -> bool {
        if cause == Cause::NothingWrong {
            self.faults.is_empty()
        } else {
            self.faults.iter().any(|fault| fault.cause == cause)
        }
    }
}

/// Every way the bike could be. Three faults at once are left out: they are rare, and words cannot tell them apart.
///
/// The odds of two are the product of their odds, as if they came independently of each other, times
/// [`Numbers::together`].
pub fn hypotheses<'a>(
    rehearsal: &'a Rehearsal,
    numbers: &Numbers,
    possible: impl Fn(Cause) -> f64,
    pairs: bool,
) -> Vec<Hypothesis<'a>> {
    let odds = odds_alone(rehearsal, numbers, possible);
    let mut all = vec![Hypothesis {
        faults: Vec::new(),
        log_prior: log_prior(&[], numbers),
        felt: Felt::nothing(),
        shown: Shown::NOTHING,
    }];
    for (place, (fault, own)) in rehearsal.faults.iter().zip(&odds).enumerate() {
        if *own <= 0.0 {
            continue;
        }
        all.push(Hypothesis {
            faults: vec![fault],
            log_prior: log_prior(&[*own], numbers),
            felt: fault.felt.clone(),
            shown: fault.shown,
        });
        if !pairs {
            continue;
        }
        let others = rehearsal.faults.iter().zip(&odds).skip(place + 1);
        for (other, others_own) in others {
            if other.cause == fault.cause || *others_own <= 0.0 {
                continue;
            }
            all.push(Hypothesis {
                faults: vec![fault, other],
                log_prior: log_prior(&[*own, *others_own], numbers),
                felt: fault.felt.and(&other.felt),
                shown: fault.shown.and(&other.shown),
            });
        }
    }
    all
}

/// Gives these ways the odds that another table of numbers has for them.
pub fn give_odds(
    ways: &mut [Hypothesis],
    rehearsal: &Rehearsal,
    numbers: &Numbers,
    possible: impl Fn(Cause) -> f64,
) {
    let odds = odds_alone(rehearsal, numbers, possible);
    let of = |fault: &Rehearsed| {
        let place = rehearsal
            .faults
            .iter()
            .position(|other| ptr::eq(other, fault));
        place.map_or(0.0, |place| odds[place])
    };
    for way in ways {
        let each: Vec<f64> = way.faults.iter().map(|fault| of(fault)).collect();
        way.log_prior = log_prior(&each, numbers);
    }
}

/// The odds of each rehearsed fault before anything is said, in their order.
fn odds_alone(
    rehearsal: &Rehearsal,
    numbers: &Numbers,
    possible: impl Fn(Cause) -> f64,
) -> Vec<f64> {
    let odds = |fault: &Rehearsed| {
        let same = |other: &&Rehearsed| other.cause == fault.cause && other.plain == fault.plain;
        #[expect(clippy::cast_precision_loss, reason = "one or two ways of being off")]
        let ways = rehearsal.faults.iter().filter(same).count().max(1) as f64;
        let degree = if fault.plain {
            1.0 - numbers.mild
        } else {
            numbers.mild
        };
        possible(fault.cause) * numbers.prior[fault.cause.index()] * degree / ways
    };
    rehearsal.faults.iter().map(odds).collect()
}

/// Natural log of the odds of a bike with faults of these odds: none, one or two.
fn log_prior(odds: &[f64], numbers: &Numbers) -> f64 {
    let log = |odds: f64| {
        if odds > 0.0 {
            libm::log(odds)
        } else {
            f64::NEG_INFINITY
        }
    };
    match odds {
        [] => log(numbers.prior[Cause::NothingWrong.index()]),
        [one] => log(*one),
        several => several.iter().map(|one| log(*one)).sum::<f64>() + log(numbers.together),
    }
}
