//! The remedies as they are told: what to do, what it is worth here, what it costs.

use super::answer::{CostBand, Cure, Money, RemedyFinding};
use super::causes;
use super::cautions::cautions;
use super::effects::effects;
use super::sheet::Sheet;
use super::useful::useful;
use crate::cause::Belief;
use crate::intake::Workshop;
use crate::remedy::{Rung, ladder};
use crate::words::{Arg, Text};

/// The ladder for this belief, with effects on this bike and a workshop's prices where there is one.
pub fn findings(sheet: &Sheet, belief: &Belief, workshop: Option<&Workshop>) -> Vec<RemedyFinding> {
    ladder(belief, sheet.intake.bike.fork, |id| useful(sheet, id))
        .into_iter()
        .map(|rung| finding(sheet, belief, workshop, &rung))
        .collect()
}

fn finding(
    sheet: &Sheet,
    belief: &Belief,
    workshop: Option<&Workshop>,
    rung: &Rung,
) -> RemedyFinding {
    /// A cause believed less than this is not named under a remedy.
    const LEAST_SHARE: f64 = 0.02;
    let entry = rung.entry;
    let part = |part: &str| Text::new(format!("remedy.{}.{part}", entry.id.word()));
    let cures = entry
        .cures
        .iter()
        .filter(|(cause, _)| belief.of(*cause) >= LEAST_SHARE);
    RemedyFinding {
        id: entry.id,
        tier: entry.tier,
        name: part("name"),
        steps: (1..=entry.steps)
            .map(|step| part(&format!("step{step}")))
            .collect(),
        cures: cures
            .map(|(cause, share)| Cure {
                cause: *cause,
                name: causes::name(*cause),
                share: *share,
            })
            .collect(),
        relief: rung.relief,
        gain: rung.gain,
        effects: effects(sheet, entry.id),
        cannot: part("cannot"),
        cost: cost(entry.labour_hours, workshop),
        minutes: entry.minutes,
        reversible: entry.reversible,
        leads: rung.leads,
        cautions: cautions(entry.cautions),
    }
}

fn cost(labour_hours: (f64, f64), workshop: Option<&Workshop>) -> CostBand {
    let (low, high) = labour_hours;
    let money = workshop.map(|workshop| Money {
        low: low * workshop.labour_per_hour.0,
        high: high * workshop.labour_per_hour.1,
        currency: workshop.currency.clone(),
    });
    let source = match workshop {
        Some(workshop) => Text::new("cost.workshop").with("name", Arg::Raw(workshop.name.clone())),
        None => Text::new("cost.practice"),
    };
    CostBand {
        labour_hours,
        money,
        source,
    }
}
