//! Three ways to read a case: the library's, and the two it is held against.

use crate::case::Case;
use crate::fleet::{Row, in_parallel};
use crate::score::Judged;
use crate::stable::Stable;
use crate::{table, workshop};
use sagwright_core::cause::alike::alike;
use sagwright_core::cause::checks::{self, How};
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

    /// What is believed from words alone, and after each of so many checks that the library would ask for next.
    pub fn judged(
        self,
        rows: &[Row],
        numbers: &Numbers,
        which: Which,
        checks: usize,
    ) -> Vec<Vec<Judged>> {
        let each = in_parallel(rows, |row| {
            let ways = row.stable.hypotheses(numbers, true);
            let cases = match which {
                Which::Single => &row.single,
                Which::Double => &row.double,
            };
            cases
                .iter()
                .map(|case| self.followed(&row.stable, case, &ways, numbers, checks))
                .collect::<Vec<_>>()
        });
        let mut by_checks: Vec<Vec<Judged>> = (0..=checks).map(|_| Vec::new()).collect();
        for case in each.into_iter().flatten() {
            for (all, one) in by_checks.iter_mut().zip(case) {
                all.push(one);
            }
        }
        by_checks
    }

    fn followed(
        self,
        stable: &Stable,
        case: &Case,
        ways: &[Hypothesis],
        numbers: &Numbers,
        checks: usize,
    ) -> Vec<Judged> {
        let mut intake = case.intake.clone();
        let mut belief = self.belief(stable, &intake, ways, numbers);
        let mut judged = Vec::new();
        let mut asked: Vec<How> = Vec::new();
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
            });
            if judged.len() > checks {
                return judged;
            }
            let ranked = checks::ranked(&checks::Case {
                intake: &intake,
                situation: &stable.situation(&intake),
                baseline: &stable.suits,
                rehearsal: &stable.rehearsal,
                hypotheses: ways,
                numbers,
                belief: &belief,
            });
            // Who hears no words cannot judge a lap by them, and what could not be read once is not asked for again.
            let next = ranked.into_iter().find(|(check, _)| {
                let heard = self == Self::Library || !matches!(check.how, How::Try(_));
                heard && !asked.contains(&check.how)
            });
            if let Some((check, _)) = next {
                asked.push(check.how);
                workshop::answer(stable, case, &check, &mut intake, case.seed);
                belief = self.belief(stable, &intake, ways, numbers);
            }
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
