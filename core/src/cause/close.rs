//! Whether the call is close: what would lead if one number set by hand were half or twice what it is.

use std::array;

use super::belief::{self, Observation, PerCause};
use super::checks::Case;
use super::hypotheses::{Hypothesis, give_odds};
use super::measured::Reading;
use super::numbers::Numbers;
use super::said::{self, HangsOn};
use super::variants::Moves;
use super::{Cause, looks, measured, possible, readings, tried};
use crate::intake::Feeling;

/// Ways a bike could be that are believed less than this are not weighed anew: they keep the share they have.
const LEAST_BELIEVED: f64 = 1e-3;

/// A leading cause that would not lead with other numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CloseCall {
    /// The cause that most often leads in its place.
    pub rival: Cause,
    /// In how many of all ways to move one number another cause leads, 1 to `of`.
    pub flips: usize,
    /// How many ways there are: each number halved and doubled, a chance in odds.
    pub of: usize,
}

/// The likelier ways the bike of a case could be, to be weighed anew with other numbers.
pub struct Reweighed<'a> {
    case: &'a Case<'a>,
    ways: Vec<Hypothesis<'a>>,
    readings: Vec<Reading>,
    /// What was said, and how laps with a change were judged.
    said: Vec<(HangsOn, Observation)>,
    /// What was measured and looked at.
    found: Vec<Observation>,
    /// The chances of causes in the ways that are not weighed anew, and how much the others are believed together.
    rest: PerCause,
    share: f64,
}

impl<'a> Reweighed<'a> {
    /// Of a case.
    pub fn of(case: &'a Case<'a>) -> Self {
        let ways: Vec<Hypothesis> = case
            .hypotheses
            .iter()
            .zip(&case.belief.of_hypotheses)
            .filter(|(_, chance)| **chance >= LEAST_BELIEVED)
            .map(|(way, _)| way.clone())
            .collect();
        let believed = case.belief.of_hypotheses.iter().copied();
        let readings = readings::readings(case.intake, case.situation, case.baseline);
        let mut reweighed = Self {
            case,
            ways,
            readings,
            said: Vec::new(),
            found: Vec::new(),
            rest: case.belief.probability,
            share: believed.filter(|chance| *chance >= LEAST_BELIEVED).sum(),
        };
        reweighed.said = reweighed.said(case.numbers, None);
        reweighed.found = reweighed.found(case.numbers);
        let weighed = reweighed.chances(case.numbers, Moves::Odds);
        for (rest, weighed) in reweighed.rest.iter_mut().zip(weighed) {
            *rest -= reweighed.share * weighed;
        }
        reweighed
    }

    /// The likelier ways, by the numbers of the case.
    pub fn ways(&self) -> &[Hypothesis<'a>] {
        &self.ways
    }

    /// The leading cause by other numbers; `moves` is what they change.
    pub fn leader(&mut self, numbers: &Numbers, moves: Moves) -> Cause {
        let weighed = self.chances(numbers, moves);
        let all = array::from_fn(|cause| self.rest[cause] + self.share * weighed[cause]);
        belief::ranked(&all)[0].0
    }

    /// Chances of causes by other numbers, were there no ways but the likelier ones; `moves` is what the numbers change.
    pub fn chances(&mut self, numbers: &Numbers, moves: Moves) -> PerCause {
        let moves_odds = matches!(moves, Moves::Odds | Moves::All);
        if moves_odds {
            self.give_odds(numbers);
        }
        let said = match moves {
            Moves::Odds | Moves::Found => Vec::new(),
            Moves::SaidOf(feeling) => self.said(numbers, Some(feeling)),
            Moves::Said | Moves::All => self.said(numbers, None),
        };
        let found = match moves {
            Moves::Found | Moves::All => self.found(numbers),
            Moves::Odds | Moves::Said | Moves::SaidOf(_) => Vec::new(),
        };
        let said_stays = |hangs_on: HangsOn| match moves {
            Moves::Odds | Moves::Found => true,
            Moves::SaidOf(feeling) => !hangs_on.is(feeling),
            Moves::Said | Moves::All => false,
        };
        let found_stays = !matches!(moves, Moves::Found | Moves::All);
        let of_said = self.said.iter().filter(|(on, _)| said_stays(*on));
        let of_found = self.found.iter().filter(|_| found_stays);
        let observations = of_said
            .chain(&said)
            .map(|(_, observation)| observation)
            .chain(of_found)
            .chain(&found);
        let chances = belief::chances(&self.ways, numbers, observations);
        if moves_odds {
            self.give_odds(self.case.numbers);
        }
        chances
    }

    fn give_odds(&mut self, numbers: &Numbers) {
        let odds = |cause| possible(self.case.intake, cause);
        give_odds(&mut self.ways, self.case.rehearsal, numbers, odds);
    }

    /// All of it, or what hangs on the leak and gain of one feeling.
    fn said(&self, numbers: &Numbers, only: Option<Feeling>) -> Vec<(HangsOn, Observation)> {
        let (intake, ways) = (self.case.intake, self.ways.as_slice());
        let tried = tried::observations(intake, self.case.rehearsal, ways, numbers);
        let mut said = said::hanging(intake, ways, numbers, only);
        said.extend(tried.into_iter().map(|verdict| (HangsOn::All, verdict)));
        said
    }

    fn found(&self, numbers: &Numbers) -> Vec<Observation> {
        let (intake, ways) = (self.case.intake, self.ways.as_slice());
        let mut found = measured::pushes(intake, ways, numbers);
        let readings = self.readings.as_slice();
        found.extend(looks::observations(intake, readings, ways, numbers));
        found.extend(readings::observations(intake, readings, ways, numbers));
        found
    }
}

/// Moves every number in turn; `None` where the same cause leads whichever is moved.
pub fn close_call(case: &Case) -> Option<CloseCall> {
    let (leader, _) = case.belief.ranked()[0];
    let mut reweighed = Reweighed::of(case);
    let mut led = [0_usize; Cause::COUNT];
    let mut of = 0;
    for variant in case.numbers.variants() {
        of += 1;
        let now = reweighed.leader(&variant.numbers, variant.number.moves());
        led[now.index()] += usize::from(now != leader);
    }
    let flips = led.iter().sum();
    let rival = Cause::ALL.iter().max_by_key(|cause| led[cause.index()])?;
    (flips > 0).then_some(CloseCall {
        rival: *rival,
        flips,
        of,
    })
}
