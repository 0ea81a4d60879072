//! Three ways to read a case: the library's, and the two it is held against.

use crate::case::Case;
use crate::fleet::{Row, in_parallel};
use crate::score::Judged;
use crate::stable::Stable;
use crate::{table, workshop};
use sagwright_core::cause::alike::alike;
use sagwright_core::cause::checks::{self, How};
use sagwright_core::cause::rounds::ranked;
use sagwright_core::cause::{Belief, Cause, Hypothesis, Numbers};
use sagwright_core::intake::Intake;

/// How words are read. Measurements are read by all three as the library does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reader {
    /// The library.
    Library,
    /// A hand table of what each cause feels like.
    Table,
    /// Prior odds: no word is heard.
    Priors,
}

impl Reader {
    /// What is believed after these answers.
    pub fn belief(
        self,
        stable: &Stable,
        intake: &Intake,
        ways: &[Hypothesis],
        numbers: &Numbers,
    ) -> Belief {
        if self == Self::Library {
            return stable.belief(intake, ways, numbers);
        }
        let mut measured = intake.clone();
        measured.complaints = None;
        measured.tried.clear();
        let mut seen = stable.observations(&measured, ways, numbers);
        if self == Self::Table {
            seen.extend(table::read(intake, ways));
        }
        Belief::from(ways, numbers, seen)
    }

    /// What is believed from words alone, and after each of so many rounds of checks that the library would ask for next.
    pub fn judged(
        self,
        rows: &[Row],
        numbers: &Numbers,
        which: Which,
        rounds: usize,
    ) -> Vec<Vec<Judged>> {
        let each = in_parallel(rows, |row| {
            let ways = row.stable.hypotheses(numbers, true);
            let cases = match which {
                Which::Single => &row.single,
                Which::Double => &row.double,
            };
            cases
                .iter()
                .map(|case| self.followed(&row.stable, case, &ways, numbers, rounds))
                .collect::<Vec<_>>()
        });
        let mut by_rounds: Vec<Vec<Judged>> = (0..=rounds).map(|_| Vec::new()).collect();
        for case in each.into_iter().flatten() {
            for (all, one) in by_rounds.iter_mut().zip(case) {
                all.push(one);
            }
        }
        by_rounds
    }

    fn followed(
        self,
        stable: &Stable,
        case: &Case,
        ways: &[Hypothesis],
        numbers: &Numbers,
        rounds: usize,
    ) -> Vec<Judged> {
        let mut intake = case.intake.clone();
        let mut belief = self.belief(stable, &intake, ways, numbers);
        let mut judged = Vec::new();
        let mut asked: Vec<How> = Vec::new();
        let mut done = [0.0; 2];
        loop {
            let truth = case.causes();
            let like = |cause: &Cause| {
                let mut of = truth.iter();
                of.any(|truth| alike(ways, &belief, numbers, *truth, *cause))
            };
            judged.push(Judged {
                alike: Cause::ALL.iter().copied().filter(like).collect(),
                truth,
                belief: belief.probability,
                checks: done,
            });
            if judged.len() > rounds {
                return judged;
            }
            let ranked = ranked(&checks::Case {
                intake: &intake,
                situation: &stable.situation(&intake),
                baseline: &stable.suits,
                rehearsal: &stable.rehearsal,
                hypotheses: ways,
                numbers,
                belief: &belief,
            });
            // Who hears no words cannot judge a lap by them, and what could not be read once is not asked for again.
            let next = ranked.into_iter().find(|round| {
                let how = round.checks[0].how;
                let heard = self == Self::Library || !matches!(how, How::Try(_));
                heard && !asked.contains(&how)
            });
            for check in next.iter().flat_map(|round| &round.checks) {
                asked.push(check.how);
                done[0] += 1.0;
                done[1] += f64::from(check.minutes);
                workshop::answer(stable, case, check, &mut intake, case.seed);
            }
            belief = self.belief(stable, &intake, ways, numbers);
        }
    }
}

/// Which cases of a fleet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// One fault, or none.
    Single,
    /// Two.
    Double,
}
