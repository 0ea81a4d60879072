//! Every fault and every remedy on this rider's bike: ridden over the rider's ground, or judged standing still.

use crate::bench::{Bench, Cast, Ground, Watch};
use crate::cause::rehearsal::rehearse;
use crate::cause::{Belief, Cause, Numbers, Rehearsal, hypotheses, observations, possible};
use crate::intake::{ForkKind, Intake};
use crate::remedy::RemedyId;
use crate::remedy::catalogue::CATALOGUE;
use crate::remedy::relief::{Case, Judge};
use crate::remedy::remedied::{Remedied, on_sound_bike, places};
use crate::stance::unknowns::{SEED, draws};
use crate::stance::{self, Baseline, Situation};

/// Every fault this bike could have and every remedy for it, ridden over these grounds, or judged standing still where there
/// are none. `None` when told to stop or when the bike cannot be ridden.
///
/// Where the kind of fork was not told, the faults that only gas has are looked at on the same bike with a gas fork.
pub fn rehearsed(
    intake: &Intake,
    situation: &Situation,
    baseline: &Baseline,
    grounds: &[Ground],
    watch: &mut Watch,
) -> Option<(Rehearsal, Remedied)> {
    let own = |cause: Cause| {
        if situation.gas() {
            !cause.needs_coil()
        } else {
            !cause.needs_gas()
        }
    };
    let bikes = likely_bikes(situation, baseline, !grounds.is_empty());
    let benches = benches(intake, &bikes)?;
    let mut cast = Cast::new(&benches).ok()?;
    let placed = on_sound_bike(&mut cast, &situation.surroundings);
    let mut all = rehearse(&mut cast, grounds, own, watch).ok()??;
    let mut remedied = Remedied::of(&cast, &placed, (&all.faults, 0), grounds, false);
    if intake.bike.fork.is_none() {
        let (gas, with_gas) = on_gas(intake, grounds, all.faults.len(), watch)?;
        all.faults.extend(gas.faults);
        all.rides += gas.rides;
        remedied.and(with_gas);
    }
    if !grounds.is_empty() {
        let wanted = worth_riding(intake, situation, baseline, &all, &remedied);
        let here: Vec<_> = wanted
            .into_iter()
            .filter(|(set, _)| set.iter().all(|place| own(all.faults[*place].cause)))
            .collect();
        all.rides += remedied
            .ride_whole(&mut cast, &all.faults, &here, grounds, watch)
            .ok()??;
    }
    Some((all, remedied))
}

/// The faults and remedies that only gas has, on the same bike with a gas fork.
fn on_gas(
    intake: &Intake,
    grounds: &[Ground],
    first: usize,
    watch: &mut Watch,
) -> Option<(Rehearsal, Remedied)> {
    let mut with_gas = intake.clone();
    with_gas.bike.fork = Some(ForkKind::GasOneLeg);
    let situation = Situation::of(&with_gas);
    let suits = stance::baseline(&situation);
    let bikes = likely_bikes(&situation, &suits, !grounds.is_empty());
    let benches = benches(intake, &bikes)?;
    let mut cast = Cast::new(&benches).ok()?;
    let placed = on_sound_bike(&mut cast, &situation.surroundings);
    let gas = rehearse(&mut cast, grounds, Cause::needs_gas, watch).ok()??;
    let remedied = Remedied::of(&cast, &placed, (&gas.faults, first), grounds, true);
    Some((gas, remedied))
}

/// Bikes drawn from what is not known that take turns with the likeliest where it is ridden.
const OTHER_BIKES: u32 = 2;

/// The likeliest bike and, where it is to be ridden, others drawn from what is not known.
fn likely_bikes(
    situation: &Situation,
    baseline: &Baseline,
    ridden: bool,
) -> Vec<(Situation, Baseline)> {
    let mut bikes = vec![(situation.clone(), baseline.clone())];
    if ridden {
        // The ground is laid out for one wheelbase, so other classes that the answers leave open stay out.
        let class = situation.machine.class.kind;
        let drawn = draws(situation, OTHER_BIKES, SEED).into_iter();
        let others = drawn.map(|draw| draw.situation);
        bikes.extend(
            others
                .filter(|other| other.machine.class.kind == class)
                .map(|other| {
                    let suits = stance::baseline(&other);
                    (other, suits)
                }),
        );
    }
    bikes
}

/// A bench for each bike, its adjusters where they were told to stand; `None` when the likeliest cannot be ridden.
fn benches<'a>(intake: &Intake, bikes: &'a [(Situation, Baseline)]) -> Option<Vec<Bench<'a>>> {
    let bench = |(situation, suits): &'a (Situation, Baseline)| {
        Some(Bench::of(situation, suits).ok()?.with_clicks_of(intake))
    };
    let (likeliest, others) = bikes.split_first()?;
    let mut benches = vec![bench(likeliest)?];
    benches.extend(others.iter().filter_map(bench));
    Some(benches)
}

/// The bikes believed in most, each with the remedies that matter on it: what these do is worth more than adding up parts.
fn worth_riding(
    intake: &Intake,
    situation: &Situation,
    baseline: &Baseline,
    rehearsal: &Rehearsal,
    remedied: &Remedied,
) -> Vec<(Vec<usize>, Vec<RemedyId>)> {
    /// Share of the belief that is ridden, on so many bikes at most, with so many remedies each.
    const SHARE: f64 = 0.8;
    const MOST_BIKES: usize = 4;
    const MOST_REMEDIES: usize = 5;
    /// A remedy that does less than this on a bike does not matter on it.
    const LEAST: f64 = 0.05;
    let numbers = Numbers::USUAL;
    let ways = hypotheses(rehearsal, &numbers, |cause| possible(intake, cause), true);
    let seen = observations(intake, situation, baseline, rehearsal, &ways, &numbers);
    let belief = Belief::from(&ways, &numbers, seen);
    let case = Case {
        hypotheses: &ways,
        rehearsal,
        belief: &belief,
        complaints: intake.complaints.as_deref().unwrap_or_default(),
        remedied,
        numbers: &numbers,
    };
    let judge = Judge::new(&case);
    let worth: Vec<(RemedyId, Vec<f64>)> = CATALOGUE
        .iter()
        .map(|entry| (entry.id, judge.worth(entry.id).net))
        .collect();
    let (mut wanted, mut sum) = (Vec::new(), 0.0);
    for (place, (hypothesis, chance)) in judge.believed.iter().enumerate().take(MOST_BIKES) {
        if sum > SHARE {
            break;
        }
        sum += chance;
        let mut matter: Vec<(RemedyId, f64)> = worth
            .iter()
            .map(|(id, net)| (*id, net[place]))
            .filter(|(_, net)| *net >= LEAST)
            .collect();
        matter.sort_by(|a, b| b.1.total_cmp(&a.1));
        matter.truncate(MOST_REMEDIES);
        let set = places(&ways[*hypothesis], &rehearsal.faults);
        wanted.push((set, matter.into_iter().map(|(id, _)| id).collect()));
    }
    wanted
}
