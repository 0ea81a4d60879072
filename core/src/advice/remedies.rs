//! The remedies as they are told: what to do, what it is worth here, what it costs.

use super::answer::Setting;
use super::at_workshop::for_remedy;
use super::causes;
use super::cautions::cautions;
use super::effects::effects;
use super::figure::Reason;
use super::remedy_finding::{
    ComplaintEffect, CostBand, Cure, Dominated, Effect, Money, RemedyFinding, SideEffect,
};
use super::restacked::restacked;
use super::sheet::Sheet;
use super::useful::{plainly_off, useful};
use crate::cause::Cause;
use crate::cause::checks::Check;
use crate::cause::felt::shows_at;
use crate::cause::figures::told_as;
use crate::intake::{End, Feeling, ForkKind};
use crate::remedy::relief::{Case, Judge, Worth};
use crate::remedy::remedied::{Found, places};
use crate::remedy::{RemedyId, Rung, Tier, ladder};
use crate::words::{Arg, Text};
use crate::workshop::Workshop;

/// Shares under this, and steps under [`NOTICED`], are not worth a sentence.
const WORTH_TELLING: f64 = 0.05;
/// A step that can just be noticed.
const NOTICED: f64 = 1.0;

/// The ladder for this belief, with effects on this bike and a workshop's prices where there is one.
pub fn findings(
    sheet: &Sheet,
    case: &Case,
    check: Option<&Check>,
    settings: &[Setting],
    workshop: Option<&Workshop>,
) -> Vec<RemedyFinding> {
    let judge = Judge::new(case);
    let fork = sheet.intake.bike.fork;
    let told = Told {
        sheet,
        case,
        judge: &judge,
        check,
        settings,
        workshop,
    };
    let offered = |id| workshop.is_none_or(|workshop| workshop.offers(id));
    let may_help = |id| fits(id, fork) && useful(sheet, id) && offered(id);
    ladder(&judge, case.belief, may_help, |id| {
        may_help(id) && plainly_off(sheet, id)
    })
    .into_iter()
    .map(|rung| told.finding(&rung))
    .collect()
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

struct Told<'a> {
    sheet: &'a Sheet<'a>,
    case: &'a Case<'a>,
    judge: &'a Judge<'a>,
    check: Option<&'a Check>,
    settings: &'a [Setting],
    workshop: Option<&'a Workshop>,
}

impl Told<'_> {
    fn finding(&self, rung: &Rung) -> RemedyFinding {
        let entry = rung.entry;
        let part = |part: &str| about(entry.id, part);
        let mut told = self.ridden(entry.id);
        told.extend(effects(self.sheet, entry.id));
        RemedyFinding {
            id: entry.id,
            tier: entry.tier,
            name: part("name"),
            steps: (1..=entry.steps)
                .map(|step| part(&format!("step{step}")))
                .collect(),
            cures: self.cures(&rung.worth),
            relief: rung.worth.relief,
            gain: rung.gain,
            complaints: self.complaints(&rung.worth),
            side_effects: side_effects(&rung.worth),
            check_first: self.check_first(rung),
            dominated_by: rung.dominated_by.map(|by| Dominated {
                by,
                text: Text::new("remedy-told.dominated").with("by", about(by, "name").into()),
            }),
            effects: told,
            restack: restacked(self.sheet, self.case, entry.id),
            source: Text::new(if self.sheet.ridden.is_some() {
                "remedy-told.source-ridden"
            } else {
                "remedy-told.source-still"
            }),
            cannot: part("cannot"),
            in_stock: self
                .workshop
                .and_then(|workshop| for_remedy(entry.id, self.settings, self.sheet, workshop)),
            cost: cost(entry.id, entry.labour_hours, self.workshop),
            minutes: entry.minutes,
            reversible: entry.reversible,
            leads: rung.leads,
            cautions: cautions(entry.cautions),
        }
    }

    /// The next check, where it costs less than paying for the leading remedy in vain is expected to: one more answer then
    /// tells more than a change does.
    fn check_first(&self, rung: &Rung) -> Option<Text> {
        let check = self
            .check
            .filter(|_| rung.leads && rung.entry.tier > Tier::Adjust)?;
        let in_vain = 60.0 * rung.entry.effort() * (1.0 - rung.worth.relief);
        (in_vain > f64::from(check.minutes)).then(|| {
            Text::new("remedy-told.check-first").with("minutes", Arg::Count(check.minutes.into()))
        })
    }

    /// The causes for which it helps: how much of the complaints goes on the bikes that have each.
    fn cures(&self, worth: &Worth) -> Vec<Cure> {
        /// A cause believed less than this is not named under a remedy.
        const LEAST_BELIEVED: f64 = 0.02;
        /// More are not read.
        const MOST: usize = 4;
        let mut cures: Vec<(Cure, f64)> = Cause::ALL
            .iter()
            .filter(|cause| **cause != Cause::NothingWrong)
            .filter_map(|cause| {
                let (mut sum, mut chances) = (0.0, 0.0);
                for ((place, chance), net) in self.judge.believed.iter().zip(&worth.net) {
                    if self.case.hypotheses[*place].has(*cause) {
                        sum += chance * net;
                        chances += chance;
                    }
                }
                let share = if chances >= LEAST_BELIEVED {
                    sum / chances
                } else {
                    0.0
                };
                (share >= WORTH_TELLING).then(|| {
                    let cure = Cure {
                        cause: *cause,
                        name: causes::name(*cause),
                        share,
                    };
                    (cure, sum)
                })
            })
            .collect();
        cures.sort_by(|a, b| b.1.total_cmp(&a.1));
        cures.into_iter().take(MOST).map(|(cure, _)| cure).collect()
    }

    fn complaints(&self, worth: &Worth) -> Vec<ComplaintEffect> {
        let each = self.case.complaints.iter().zip(&worth.of_complaints);
        each.map(|(complaint, goes)| {
            let key = match *goes {
                goes if goes >= WORTH_TELLING => "remedy-told.less",
                goes if goes <= -WORTH_TELLING => "remedy-told.more",
                _ => "remedy-told.same",
            };
            ComplaintEffect {
                feeling: complaint.feeling,
                goes: *goes,
                text: Text::new(key)
                    .with("feeling", feeling(complaint.feeling))
                    .with(
                        "share",
                        Arg::Quantity(goes.abs(), crate::quantity::Dimension::Share),
                    ),
            }
        })
        .collect()
    }

    /// Figures of what was complained of, before and after, on the likeliest bike that was ridden as a whole.
    fn ridden(&self, id: RemedyId) -> Vec<Effect> {
        let faults = &self.case.rehearsal.faults;
        let ridden = self.judge.believed.iter().find_map(|(place, _)| {
            let hypothesis = &self.case.hypotheses[*place];
            let (before, after) = self.case.remedied.ridden(id, &places(hypothesis, faults))?;
            Some((hypothesis, before, after))
        });
        let Some((hypothesis, before, after)) = ridden else {
            return Vec::new();
        };
        let because = match hypothesis.faults.as_slice() {
            [] => Text::new("remedy-told.ridden-sound"),
            [one] => {
                Text::new("remedy-told.ridden-one").with("cause", causes::name(one.cause).into())
            }
            [one, two, ..] => Text::new("remedy-told.ridden-two")
                .with("cause", causes::name(one.cause).into())
                .with("other", causes::name(two.cause).into()),
        };
        let mut effects: Vec<Effect> = Vec::new();
        for complaint in self.case.complaints {
            for effect in figures(complaint.feeling, complaint.end, (before, after), &because) {
                if effects.iter().all(|known| known.name != effect.name) {
                    effects.push(effect);
                }
            }
        }
        effects
    }
}

/// The figure of a feeling at the ends where it was complained of.
fn figures(
    feeling: Feeling,
    end: Option<End>,
    (before, after): (&Found, &Found),
    because: &Text,
) -> Vec<Effect> {
    let of = |found: &Found| {
        found
            .figures
            .iter()
            .find(|(of, _)| *of == feeling)
            .map(|(_, ends)| *ends)
    };
    let (Some(before), Some(after), Some((keys, dimension))) =
        (of(before), of(after), told_as(feeling))
    else {
        return Vec::new();
    };
    let there = [
        !matches!(end, Some(End::Rear)),
        !matches!(end, Some(End::Front)),
    ];
    (0..keys.len())
        .filter(|place| there[*place] && shows_at(feeling)[*place])
        .map(|place| Effect {
            name: Text::new(keys[place]),
            before: Some(before[place]),
            after: after[place],
            dimension,
            reason: Reason {
                because: because.clone(),
                inputs: Vec::new(),
                equation: Text::new(format!("{}.because", keys[place])),
                source: Text::new(format!("{}.source", keys[place])),
                range_from: Vec::new(),
                sensitivity: Vec::new(),
            },
        })
        .collect()
}

/// What gets worse by more than can just be noticed, worst first.
fn side_effects(worth: &Worth) -> Vec<SideEffect> {
    let mut all = Vec::new();
    for (of, ends) in Feeling::ALL.iter().zip(&worth.worse) {
        for (end, steps) in [End::Front, End::Rear].into_iter().zip(ends) {
            if *steps >= NOTICED {
                let key = match end {
                    End::Rear => "remedy-told.worse-rear",
                    _ => "remedy-told.worse-front",
                };
                all.push(SideEffect {
                    feeling: *of,
                    end,
                    steps: *steps,
                    text: Text::new(key)
                        .with("feeling", feeling(*of))
                        .with("steps", Arg::Plain(*steps, 1)),
                });
            }
        }
    }
    all.sort_by(|a, b| b.steps.total_cmp(&a.steps));
    all
}

fn about(id: RemedyId, part: &str) -> Text {
    Text::new(format!("remedy.{}.{part}", id.word()))
}

fn feeling(feeling: Feeling) -> Arg {
    Text::new(format!("feeling.{}", feeling.word())).into()
}

/// What a remedy costs: what the workshop says, else its labour by the hours that are common.
fn cost(id: RemedyId, labour_hours: (f64, f64), workshop: Option<&Workshop>) -> CostBand {
    let money = workshop.map(|workshop| {
        let (hours, rates) = (labour_hours, workshop.labour_per_hour);
        let own = workshop.prices.get(&id).copied();
        let (low, high) = own.unwrap_or((hours.0 * rates.0, hours.1 * rates.1));
        Money {
            low,
            high,
            currency: workshop.currency.clone(),
        }
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
