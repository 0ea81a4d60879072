//! The order to try remedies in.

use super::RemedyId;
use super::catalogue::{CATALOGUE, Entry};
use crate::cause::Belief;
use crate::intake::ForkKind;

/// A remedy may lead when it deals with at least this part of what the most far-reaching one would.
///
/// A third: below, the free ones would always lead however little they do; above, wholesale ones would, since
/// they cure a bit of everything. Common practice, and hand-set.
const TARGET: f64 = 1.0 / 3.0;

/// Below this share of the belief a remedy is not worth naming.
const LEAST_RELIEF: f64 = 0.03;

/// One rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// The remedy.
    pub entry: &'static Entry,
    /// Share of the belief it deals with, 0 to 1.
    pub relief: f64,
    /// Whether it is the first to try.
    pub leads: bool,
}

/// The remedies worth naming: the leading one first, then by relief over effort.
///
/// Ordering by probability over cost is optimal for independent repairs of a single fault:
/// Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", CACM 38(3), 1995.
/// The cheapest remedy that reaches the target leads.
pub fn ladder(belief: &Belief, fork: Option<ForkKind>) -> Vec<Rung> {
    let mut rungs: Vec<Rung> = CATALOGUE
        .iter()
        .filter(|entry| fits(entry.id, fork))
        .map(|entry| Rung {
            entry,
            relief: entry.relief(|cause| belief.of(cause)),
            leads: false,
        })
        .filter(|rung| rung.relief >= LEAST_RELIEF)
        .collect();
    let worth = |rung: &Rung| rung.relief / rung.entry.effort();
    rungs.sort_by(|a, b| worth(b).total_cmp(&worth(a)));
    let best = rungs.iter().map(|rung| rung.relief).fold(0.0, f64::max);
    let cheapest = rungs
        .iter()
        .enumerate()
        .filter(|(_, rung)| rung.relief >= TARGET * best)
        .min_by(|(_, a), (_, b)| a.entry.effort().total_cmp(&b.entry.effort()))
        .map(|(place, _)| place);
    if let Some(place) = cheapest {
        let mut leading = rungs.remove(place);
        leading.leads = true;
        rungs.insert(0, leading);
    }
    rungs
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
