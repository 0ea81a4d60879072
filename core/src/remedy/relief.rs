//! What a remedy is worth to this rider: how much of what was complained of goes, and what gets worse for it.

use super::RemedyId;
use super::remedied::{Remedied, Steps, UNMOVED, places};
use crate::cause::said::trouble;
use crate::cause::{Belief, Hypothesis, Numbers, Rehearsal};
use crate::intake::{Complaint, End, Feeling, Severity};

/// Bikes believed less than this are left out: together they move no relief by a percent.
const LEAST_BELIEVED: f64 = 1e-3;
/// How much new trouble counts against relief of what was complained of: a rider minds it as much, but can undo or give
/// back some of it with a click (hand-set).
const NEW_TROUBLE: f64 = 0.5;
/// What a complaint weighs that was not said to be slight, clear or bad.
const NOT_SAID: f64 = 2.0;
/// Slight, clear and bad complaints weigh 1, 2 and 3 of so many parts of what could be had at all (hand-set).
const CONTENT: f64 = 5.5;

/// All that remedies are judged by.
pub struct Case<'a> {
    /// What could be wrong.
    pub hypotheses: &'a [Hypothesis<'a>],
    /// What every fault does to this bike.
    pub rehearsal: &'a Rehearsal,
    /// What is believed.
    pub belief: &'a Belief,
    /// What was complained of; nothing where nothing was said or nothing bothers.
    pub complaints: &'a [Complaint],
    /// What every remedy does to this bike.
    pub remedied: &'a Remedied,
    /// The table of hand-set numbers.
    pub numbers: &'a Numbers,
}

/// The bikes believed in, to be asked for remedy after remedy.
pub struct Judge<'a> {
    case: &'a Case<'a>,
    /// Place of each bike among the hypotheses, with its chance; the chances sum to 1.
    pub believed: Vec<(usize, f64)>,
    stated: Vec<Stated>,
}

/// Something that bothers.
struct Stated {
    feeling: Feeling,
    end: Option<End>,
    weight: f64,
}

/// What a remedy is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// Share of the complaints, weighted by how bad they are, that is expected to go, −1 to 1.
    pub relief: f64,
    /// The same less what new trouble takes back, for each bike believed in.
    pub net: Vec<f64>,
    /// Chance that it finds something out of place to put right.
    pub puts_right: f64,
    /// Share of each complaint that goes, in the order they were made; empty where there were none.
    pub of_complaints: Vec<f64>,
    /// What else is felt to get worse, in steps that can just be noticed: front and rear of every feeling, 0 or more.
    pub worse: Steps,
}

impl Worth {
    /// What it is worth beyond the best of others on each bike.
    pub fn beyond<'b>(&self, believed: &[(usize, f64)], others: impl Fn(usize) -> f64 + 'b) -> f64 {
        let each = self.net.iter().zip(believed).enumerate();
        each.map(|(place, (net, (_, chance)))| chance * (net - others(place)).max(0.0))
            .sum()
    }
}

impl<'a> Judge<'a> {
    /// Takes the bikes that are believed in.
    pub fn new(case: &'a Case<'a>) -> Self {
        let chances = case.belief.of_hypotheses.iter().copied().enumerate();
        let mut believed: Vec<(usize, f64)> = chances
            .filter(|(_, chance)| *chance >= LEAST_BELIEVED)
            .collect();
        let sum: f64 = believed.iter().map(|(_, chance)| chance).sum();
        for (_, chance) in &mut believed {
            *chance /= sum;
        }
        believed.sort_by(|a, b| b.1.total_cmp(&a.1));
        let stated = if case.complaints.is_empty() {
            Feeling::ALL
                .iter()
                .map(|feeling| anything(*feeling))
                .collect()
        } else {
            case.complaints.iter().map(said).collect()
        };
        Self {
            case,
            believed,
            stated,
        }
    }

    /// Share of what could be had at all with which this rider is content: under a fifth where all is slight, over a third where it
    /// is clear, over half where it is bad. Hand-set, common practice.
    pub fn content_with(&self) -> f64 {
        let complaints = self.case.complaints;
        if complaints.is_empty() {
            return NOT_SAID / CONTENT;
        }
        let sum: f64 = self.stated.iter().map(|stated| stated.weight).sum();
        #[expect(clippy::cast_precision_loss, reason = "at most one for each feeling")]
        let count = complaints.len() as f64;
        sum / count / CONTENT
    }

    /// What a remedy is worth.
    pub fn worth(&self, remedy: RemedyId) -> Worth {
        let mut worth = Worth {
            relief: 0.0,
            net: Vec::with_capacity(self.believed.len()),
            puts_right: 0.0,
            of_complaints: vec![0.0; self.case.complaints.len()],
            worse: UNMOVED,
        };
        for (place, chance) in &self.believed {
            let hypothesis = &self.case.hypotheses[*place];
            let faults = &self.case.rehearsal.faults;
            let around = self.case.remedied.around(remedy, hypothesis, faults);
            let gone = self.gone(&around);
            let relief = self.together(&gone);
            worth.relief += chance * relief;
            if self
                .case
                .remedied
                .puts_right(remedy, &places(hypothesis, faults))
            {
                worth.puts_right += chance;
            }
            worth
                .net
                .push(relief - NEW_TROUBLE * self.new_trouble(&around));
            for (sum, (_, gone)) in worth.of_complaints.iter_mut().zip(&gone) {
                *sum += chance * gone;
            }
            add_worse(&mut worth.worse, &around, *chance);
        }
        worth
    }

    /// Trouble of each stated feeling before, and the share of it that goes.
    ///
    /// Only what is worse than on a bike that suits can go: what riders say of such a bike is not the bike's.
    fn gone(&self, (before, after): &(Steps, Steps)) -> Vec<(f64, f64)> {
        let one = |stated: &Stated| {
            let place = stated.feeling as usize;
            let of = |steps| trouble(self.case.numbers, stated.feeling, stated.end, steps);
            let sound = of(shown_at_rest(before[place]));
            let (then, now) = (of(before[place]), of(after[place]));
            let caused = |trouble: f64| (trouble - sound).max(0.0);
            (then, ((caused(then) - caused(now)) / then).clamp(-1.0, 1.0))
        };
        self.stated.iter().map(one).collect()
    }

    /// Of complaints that were made each counts as bad as it is; where none was made, all that bothers counts by how
    /// likely it does.
    fn together(&self, gone: &[(f64, f64)]) -> f64 {
        let weight = |(stated, (then, _)): (&Stated, &(f64, f64))| {
            if self.case.complaints.is_empty() {
                *then
            } else {
                stated.weight
            }
        };
        let rows = || self.stated.iter().zip(gone);
        let all: f64 = rows().map(weight).sum();
        rows().map(|row| weight(row) * row.1.1).sum::<f64>() / all
    }

    /// Trouble with what was not complained of that comes, over that of what was.
    fn new_trouble(&self, (before, after): &(Steps, Steps)) -> f64 {
        if self.case.complaints.is_empty() {
            return 0.0;
        }
        let of = |feeling: Feeling, end, steps: &Steps| {
            trouble(self.case.numbers, feeling, end, steps[feeling as usize])
        };
        let known = |feeling: &Feeling| self.stated.iter().any(|stated| stated.feeling == *feeling);
        let new: f64 = Feeling::ALL
            .iter()
            .filter(|feeling| !known(feeling))
            .map(|feeling| (of(*feeling, None, after) - of(*feeling, None, before)).max(0.0))
            .sum();
        let stated: f64 = self
            .stated
            .iter()
            .map(|stated| of(stated.feeling, stated.end, before))
            .sum();
        (new / stated).min(1.0)
    }
}

/// Steps of a bike that suits: 0 where a feeling can show.
fn shown_at_rest(steps: [f64; 2]) -> [f64; 2] {
    steps.map(|steps| if steps <= HIDDEN { steps } else { 0.0 })
}

/// Steps at or below which a feeling counts as not to be felt there at all.
const HIDDEN: f64 = -8.0;

fn add_worse(sum: &mut Steps, (before, after): &(Steps, Steps), chance: f64) {
    for (feeling, ends) in sum.iter_mut().enumerate() {
        for (end, worse) in ends.iter_mut().enumerate() {
            let beyond = |steps: &Steps| steps[feeling][end].max(0.0);
            *worse += chance * (beyond(after) - beyond(before));
        }
    }
}

fn said(complaint: &Complaint) -> Stated {
    Stated {
        feeling: complaint.feeling,
        end: complaint.end,
        weight: match complaint.severity {
            Some(Severity::Slight) => 1.0,
            Some(Severity::Clear) => 2.0,
            Some(Severity::Bad) => 3.0,
            None => NOT_SAID,
        },
    }
}

const fn anything(feeling: Feeling) -> Stated {
    Stated {
        feeling,
        end: None,
        weight: 1.0,
    }
}
