//! What could be wrong with this bike: nothing, one fault, or two at once.

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
    let odds = |fault: &Rehearsed| {
        let of_cause: Vec<&Rehearsed> = rehearsal
            .faults
            .iter()
            .filter(|other| other.cause == fault.cause && other.plain == fault.plain)
            .collect();
        #[expect(clippy::cast_precision_loss, reason = "one or two ways of being off")]
        let ways = of_cause.len().max(1) as f64;
        let degree = if fault.plain {
            1.0 - numbers.mild
        } else {
            numbers.mild
        };
        possible(fault.cause) * numbers.prior[fault.cause.index()] * degree / ways
    };
    let odds: Vec<f64> = rehearsal.faults.iter().map(odds).collect();
    let log = |odds: f64| {
        if odds > 0.0 {
            libm::log(odds)
        } else {
            f64::NEG_INFINITY
        }
    };
    let none = log(numbers.prior[Cause::NothingWrong.index()]);
    let mut all = vec![Hypothesis {
        faults: Vec::new(),
        log_prior: none,
        felt: Felt::nothing(),
        shown: Shown::NOTHING,
    }];
    for (place, (fault, own)) in rehearsal.faults.iter().zip(&odds).enumerate() {
        if *own <= 0.0 {
            continue;
        }
        all.push(Hypothesis {
            faults: vec![fault],
            log_prior: log(*own),
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
                log_prior: log(*own) + log(*others_own) + log(numbers.together),
                felt: fault.felt.and(&other.felt),
                shown: fault.shown.and(&other.shown),
            });
        }
    }
    all
}
