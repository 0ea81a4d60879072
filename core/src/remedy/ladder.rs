//! The order to try remedies in.

use super::catalogue::{CATALOGUE, Entry};
use super::{RemedyId, Tier};
use crate::cause::{Belief, Cause};
use crate::intake::ForkKind;

/// A remedy may lead when its gain is at least this part of the best gain short of conversion or replacement:
/// those cure a bit of everything, and come last, not first. Common practice.
const TARGET: f64 = 0.6;

/// Below this share of the belief a remedy is not worth naming.
const LEAST_RELIEF: f64 = 0.03;

/// One rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// The remedy.
    pub entry: &'static Entry,
    /// Share of the belief it deals with, 0 to 1.
    pub relief: f64,
    /// Share of the belief it deals with beyond what cheaper tiers would, 0 to `relief`: what the step up buys.
    pub gain: f64,
    /// Whether it is the first to try.
    pub leads: bool,
}

/// The remedies worth naming: the leading one first, then by gain over effort.
///
/// Ordering by probability over cost is optimal for independent repairs of a single fault:
/// Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", CACM 38(3), 1995.
/// The worthiest remedy of the cheapest tier that reaches the target leads. `useful` tells whether a remedy would change anything
/// on this bike; one that would not is left out.
pub fn ladder(
    belief: &Belief,
    fork: Option<ForkKind>,
    useful: impl Fn(RemedyId) -> bool,
) -> Vec<Rung> {
    let possible: Vec<&'static Entry> = CATALOGUE
        .iter()
        .filter(|entry| fits(entry.id, fork) && useful(entry.id))
        .collect();
    let mut rungs: Vec<Rung> = possible
        .iter()
        .map(|entry| {
            let cheaper = |cause| best_below(&possible, entry.tier, cause);
            let (mut relief, mut gain) = (0.0, 0.0);
            for (cause, share) in entry.cures {
                let believed = belief.of(*cause);
                relief += believed * share;
                gain += believed * (share - cheaper(*cause)).max(0.0);
            }
            Rung {
                entry,
                relief,
                gain,
                leads: false,
            }
        })
        .filter(|rung| rung.relief >= LEAST_RELIEF)
        .collect();
    let worth = |rung: &Rung| rung.gain / rung.entry.effort();
    rungs.sort_by(|a, b| worth(b).total_cmp(&worth(a)));
    let short_of_wholesale = rungs.iter().filter(|rung| rung.entry.tier < Tier::Convert);
    let best = short_of_wholesale.map(|rung| rung.gain).fold(0.0, f64::max);
    let reaches = |rung: &Rung| rung.gain >= TARGET * best;
    let tier = rungs
        .iter()
        .filter(|rung| reaches(rung))
        .map(|rung| rung.entry.tier)
        .min();
    // They stand in order of worth, so the first of the cheapest tier that reaches is the worthiest of it.
    let leading = rungs
        .iter()
        .position(|rung| reaches(rung) && Some(rung.entry.tier) == tier);
    if let Some(place) = leading {
        let mut leading = rungs.remove(place);
        leading.leads = true;
        rungs.insert(0, leading);
    }
    rungs
}

/// The largest part of `cause` that any possible remedy of a cheaper tier takes away.
fn best_below(possible: &[&'static Entry], tier: Tier, cause: Cause) -> f64 {
    let below = possible.iter().filter(|entry| entry.tier < tier);
    let shares = below
        .flat_map(|entry| entry.cures)
        .filter(|(of, _)| *of == cause);
    shares.map(|(_, share)| *share).fold(0.0, f64::max)
}

/// Whether the remedy can be done on this fork at all.
fn fits(id: RemedyId, fork: Option<ForkKind>) -> bool {
    let gas = fork.is_none_or(|kind| kind == ForkKind::GasOneLeg);
    let coil = fork.is_none_or(|kind| kind != ForkKind::GasOneLeg);
    match id {
        RemedyId::SetGasPressure | RemedyId::LevelNegative | RemedyId::ConvertToCoil => gas,
        RemedyId::ForkSprings | RemedyId::ForkSpacer => coil,
        _ => true,
    }
}
