//! The order to try remedies in.

use super::catalogue::{CATALOGUE, Entry};
use super::relief::{Judge, Worth};
use super::{RemedyId, Tier};
use crate::cause::{Belief, Cause};

/// A remedy may lead when it relieves at least this part of what the best short of conversion and replacement does: those
/// relieve a bit of everything, and come last, not first. Common practice.
const TARGET: f64 = 0.75;
/// Conversion and replacement may lead only where all else relieves less of what they do than the rider is content with, and
/// where at least this part of what they do is beyond all else on the bikes believed in. Common practice.
const BEYOND_ALL_ELSE: f64 = 0.5;
/// What is free to put right and likelier than this to be out of place comes before anything that is paid for: all else is
/// judged against it (common practice).
const LIKELY_OFF: f64 = 0.4;
/// Below this share of the complaints a remedy is not worth naming.
const LEAST_RELIEF: f64 = 0.02;
/// A remedy that adds less than this share of the complaints to a cheaper one, and less than this part of what it does itself,
/// does no more than that.
const NO_MORE: (f64, f64) = (0.03, 0.25);
/// Belief in "nothing is wrong" below which leaving the bike alone is not named.
const LEAST_DOUBT: f64 = 0.10;

/// One rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// The remedy.
    pub entry: &'static Entry,
    /// What it is worth.
    pub worth: Worth,
    /// Share of the complaints that goes beyond what cheaper tiers can do, on the bikes on which they cannot: what the step
    /// up buys.
    pub gain: f64,
    /// Whether it is the first to try.
    pub leads: bool,
    /// A remedy that costs less and does as much on every bike believed in.
    pub dominated_by: Option<RemedyId>,
    /// Whether what it sets was told to stand outside the range that suits.
    pub plainly_off: bool,
}

impl Rung {
    /// Mean over the bikes believed in of what it is worth.
    fn net(&self, believed: &[(usize, f64)]) -> f64 {
        let each = self.worth.net.iter().zip(believed);
        each.map(|(net, (_, chance))| chance * net).sum()
    }
}

/// The remedies worth naming: the leading one first, then by gain over effort.
///
/// Ordering by probability over cost is optimal for independent repairs of a single fault:
/// Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", CACM 38(3), 1995.
/// The worthiest remedy of the cheapest tier that reaches the target leads, after what is free to put right and likely to be
/// out of place; where nothing being wrong is the likeliest, leaving the bike alone does. `useful` tells whether a remedy would change anything on this bike; one that would not is left
/// out. `plainly_off` tells whether what it sets was told to stand outside the range that suits: that is put right first,
/// whatever is believed (common practice).
pub fn ladder(
    judge: &Judge,
    belief: &Belief,
    useful: impl Fn(RemedyId) -> bool,
    plainly_off: impl Fn(RemedyId) -> bool,
) -> Vec<Rung> {
    let believed = &judge.believed;
    let mut rungs: Vec<Rung> = CATALOGUE
        .iter()
        .filter(|entry| entry.id != RemedyId::RideOn && useful(entry.id))
        .map(|entry| Rung {
            entry,
            worth: judge.worth(entry.id),
            gain: 0.0,
            leads: false,
            dominated_by: None,
            plainly_off: plainly_off(entry.id),
        })
        .filter(|rung| rung.plainly_off || rung.net(believed) >= LEAST_RELIEF)
        .collect();
    let gains: Vec<(f64, Option<RemedyId>)> = rungs
        .iter()
        .map(|rung| {
            (
                gain(rung, &rungs, believed),
                dominated(rung, &rungs, believed),
            )
        })
        .collect();
    for (rung, (gain, dominated_by)) in rungs.iter_mut().zip(gains) {
        (rung.gain, rung.dominated_by) = (gain, dominated_by);
    }
    let order = |rung: &Rung| rung.gain / rung.entry.effort();
    rungs.sort_by(|a, b| order(b).total_cmp(&order(a)));
    lead(&mut rungs, judge);
    leave_alone(&mut rungs, judge, belief);
    rungs
}

/// What a rung buys beyond the best of cheaper tiers on each bike.
fn gain(rung: &Rung, all: &[Rung], believed: &[(usize, f64)]) -> f64 {
    let cheaper: Vec<&Rung> = all
        .iter()
        .filter(|other| other.entry.tier < rung.entry.tier)
        .collect();
    rung.worth.beyond(believed, |place| {
        cheaper
            .iter()
            .map(|other| other.worth.net[place])
            .fold(0.0, f64::max)
    })
}

/// The cheapest of those that cost less and leave nothing for this one to add.
fn dominated(rung: &Rung, all: &[Rung], believed: &[(usize, f64)]) -> Option<RemedyId> {
    let no_more = NO_MORE.0.min(NO_MORE.1 * rung.net(believed));
    all.iter()
        .filter(|other| {
            let (mine, theirs) = (rung.entry, other.entry);
            theirs.tier <= mine.tier
                && theirs.effort() < mine.effort()
                && rung.worth.beyond(believed, |place| other.worth.net[place]) < no_more
        })
        .min_by(|a, b| a.entry.effort().total_cmp(&b.entry.effort()))
        .map(|other| other.entry.id)
}

/// Puts the leading rung first. They stand in order of gain over effort.
fn lead(rungs: &mut Vec<Rung>, judge: &Judge) {
    let believed = &judge.believed;
    let wholesale = |rung: &&Rung| rung.entry.tier >= Tier::Convert;
    let net = |rung: &Rung| rung.net(believed);
    let short_of_it = rungs
        .iter()
        .filter(|rung| !wholesale(rung))
        .map(net)
        .fold(0.0, f64::max);
    let beyond = rungs
        .iter()
        .filter(wholesale)
        .filter(|rung| short_of_it < judge.content_with() * net(rung))
        .filter(|rung| rung.gain >= BEYOND_ALL_ELSE * net(rung))
        .map(net)
        .fold(0.0, f64::max);
    let target = TARGET * if beyond > 0.0 { beyond } else { short_of_it };
    let reaches = |rung: &&Rung| rung.net(believed) >= target && rung.dominated_by.is_none();
    let off = |rung: &&Rung| {
        let likely = rung.worth.puts_right > LIKELY_OFF;
        rung.entry.tier == Tier::Adjust && (likely || rung.plainly_off)
    };
    let tier = rungs
        .iter()
        .filter(reaches)
        .map(|rung| rung.entry.tier)
        .min();
    let set_first = tier > Some(Tier::Adjust) && rungs.iter().any(|rung| off(&rung));
    let may_lead = |rung: &&Rung| {
        if set_first {
            off(rung)
        } else {
            reaches(rung) && Some(rung.entry.tier) == tier
        }
    };
    let worthiest = rungs
        .iter()
        .enumerate()
        .filter(|(_, rung)| may_lead(rung))
        .max_by(|(_, a), (_, b)| {
            let worth = |rung: &Rung| rung.net(believed) / rung.entry.effort();
            worth(a).total_cmp(&worth(b))
        });
    if let Some((place, _)) = worthiest {
        let mut leading = rungs.remove(place);
        leading.leads = true;
        rungs.insert(0, leading);
    }
}

/// Names leaving the bike alone, first where nothing being wrong is the likeliest.
fn leave_alone(rungs: &mut Vec<Rung>, judge: &Judge, belief: &Belief) {
    let Some(entry) = CATALOGUE.iter().find(|entry| entry.id == RemedyId::RideOn) else {
        return;
    };
    let likeliest = belief
        .ranked()
        .first()
        .is_some_and(|(cause, _)| *cause == Cause::NothingWrong);
    if !likeliest && belief.of(Cause::NothingWrong) < LEAST_DOUBT {
        return;
    }
    if likeliest {
        for rung in rungs.iter_mut() {
            rung.leads = false;
        }
    }
    let rung = Rung {
        entry,
        worth: judge.worth(entry.id),
        gain: 0.0,
        leads: likeliest,
        dominated_by: None,
        plainly_off: false,
    };
    rungs.insert(if likeliest { 0 } else { rungs.len() }, rung);
}
