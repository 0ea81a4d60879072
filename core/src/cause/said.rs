//! What the rider's words say: how likely each is, given how far each feeling would have moved.
//!
//! The log odds that a rider complains of a feeling at an end rise in a line with the steps it has moved there, from a leak
//! at which riders complain of anything: a logistic response, as is usual for thresholds of perception. Two faults add up
//! in what the bike does before it is felt, so that one can hide the other; a complaint at either end is enough for it
//! to be made.

use std::array;

use super::Cause;
use super::belief::{Observation, RIDERS};
use super::felt::{MOST_STEPS, shows_at};
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use crate::intake::Since::{self, Always, SinceWork, Slowly, Suddenly};
use crate::intake::{Complaint, End, Feeling, Intake, Phase, Severity};
use crate::words::Text;

/// A chance is never held to be less than this, or more than 1 less this: riders say all sorts of things.
const LEAST_CHANCE: f64 = 0.004;
const MOST_CHANCE: f64 = 0.94;

/// Whose leak and gain something said hangs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HangsOn {
    /// Those of one feeling.
    One(Feeling),
    /// Those of all.
    All,
    /// None.
    Nothing,
}

impl HangsOn {
    /// Whether it hangs on those of this feeling.
    pub fn is(self, feeling: Feeling) -> bool {
        self == Self::All || self == Self::One(feeling)
    }
}

/// Everything said, as observations. Nothing said ("I don't know") is no observation.
pub fn observations(
    intake: &Intake,
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
) -> Vec<Observation> {
    let all = hanging(intake, hypotheses, numbers, None).into_iter();
    all.map(|(_, observation)| observation).collect()
}

/// As [`observations`], each with what it hangs on; only those that hang on the leak and gain of `only` where it is given.
pub(super) fn hanging(
    intake: &Intake,
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
    only: Option<Feeling>,
) -> Vec<(HangsOn, Observation)> {
    let Some(complaints) = &intake.complaints else {
        return Vec::new();
    };
    let said = Said {
        hypotheses,
        numbers,
        made: made(hypotheses, numbers),
    };
    if complaints.is_empty() {
        return vec![(HangsOn::All, said.all_quiet())];
    }
    // In the order of the list of feelings, so that the order in which they were said does not matter.
    let mut in_order: Vec<&Complaint> = complaints.iter().collect();
    in_order.sort_by_key(|complaint| complaint.feeling);
    #[expect(
        clippy::cast_precision_loss,
        reason = "at most one complaint per feeling"
    )]
    let histories = in_order.iter().filter(|c| c.since.is_some()).count() as f64;
    let mut found = Vec::new();
    let wanted = |feeling: Feeling| only.is_none_or(|only| only == feeling);
    for complaint in in_order {
        if wanted(complaint.feeling) {
            found.push((HangsOn::One(complaint.feeling), said.mention(complaint)));
        }
        if only.is_none() {
            let others = [said.moments(complaint), said.history(complaint, histories)];
            found.extend(
                others
                    .into_iter()
                    .flatten()
                    .map(|one| (HangsOn::Nothing, one)),
            );
        }
    }
    let silent = Feeling::ALL
        .iter()
        .filter(|f| wanted(**f) && complaints.iter().all(|c| c.feeling != **f));
    // Who names one thing has no other to name; who names several may have left out as many.
    #[expect(
        clippy::cast_precision_loss,
        reason = "at most one complaint per feeling"
    )]
    let several = (0.5 * (complaints.len() as f64 - 1.0)).min(1.0);
    let weight = 1.0 - several * (1.0 - numbers.silence);
    found.extend(silent.map(|feeling| (HangsOn::One(*feeling), said.silence(*feeling, weight))));
    found.push((HangsOn::All, said.brought_in(complaints)));
    found
}

/// Chance that a rider of this touchiness complains of a feeling at each end.
pub fn chances(
    numbers: &Numbers,
    feeling: Feeling,
    hypothesis: &Hypothesis,
    touchy: f64,
) -> [f64; 2] {
    let place = feeling as usize;
    chances_of(numbers, feeling, hypothesis.felt.steps[place], touchy)
}

/// As [`chances`], from steps at each end.
pub fn chances_of(numbers: &Numbers, feeling: Feeling, steps: [f64; 2], touchy: f64) -> [f64; 2] {
    let base = unasked(numbers, feeling) + touchy;
    from_base(base, numbers.gain[feeling as usize], steps)
}

/// Log odds of a complaint that nothing causes, by a middling rider.
fn unasked(numbers: &Numbers, feeling: Feeling) -> f64 {
    let leak = numbers.leak[feeling as usize];
    libm::log(leak / (1.0 - leak))
}

fn from_base(base: f64, gain: f64, steps: [f64; 2]) -> [f64; 2] {
    steps.map(|steps| logistic(base + gain * steps).clamp(LEAST_CHANCE, MOST_CHANCE))
}

/// Chance of a complaint of each feeling, wherever: one row per hypothesis, a column per feeling of each of [`RIDERS`].
///
/// What is said and what is not both rest on all of them, for every way the bike could be, so they are worked out once.
fn made(hypotheses: &[Hypothesis], numbers: &Numbers) -> Vec<[OfFeelings; RIDERS.len()]> {
    let mut made = vec![[[0.0; Feeling::ALL.len()]; RIDERS.len()]; hypotheses.len()];
    for feeling in Feeling::ALL {
        let place = *feeling as usize;
        let (unasked, gain) = (unasked(numbers, *feeling), numbers.gain[place]);
        for (hypothesis, row) in hypotheses.iter().zip(&mut made) {
            let steps = hypothesis.felt.steps[place];
            for ((touchy, _), of) in RIDERS.iter().zip(row) {
                let base = unasked + touchy * numbers.touchiness;
                of[place] = either(from_base(base, gain, steps));
            }
        }
    }
    made
}

/// One number per feeling, in the order of [`Feeling::ALL`].
type OfFeelings = [f64; Feeling::ALL.len()];

/// Chance that it is complained of at all.
pub fn either([front, rear]: [f64; 2]) -> f64 {
    1.0 - (1.0 - front) * (1.0 - rear)
}

/// How much a feeling bothers a middling rider who places it at `end`: how likely it is complained of, times how bad it then
/// is said to be, slight for 1, clear for 2 and bad for 3.
pub fn trouble(numbers: &Numbers, feeling: Feeling, end: Option<End>, steps: [f64; 2]) -> f64 {
    let ends = chances_of(numbers, feeling, steps, 0.0);
    let (chance, steps) = match end {
        Some(End::Front) => (ends[0], steps[0]),
        Some(End::Rear) => (ends[1], steps[1]),
        Some(End::Both) | None => (either(ends), steps[0].max(steps[1])),
    };
    let worse_than = |at: f64| logistic(numbers.severity * (steps - at));
    chance * (1.0 + worse_than(numbers.clear_at) + worse_than(numbers.bad_at))
}

fn logistic(log_odds: f64) -> f64 {
    1.0 / (1.0 + libm::exp(-log_odds))
}

struct Said<'a> {
    hypotheses: &'a [Hypothesis<'a>],
    numbers: &'a Numbers,
    /// See [`made`].
    made: Vec<[OfFeelings; RIDERS.len()]>,
}

impl Said<'_> {
    /// From what the chances of all complaints make of it, natural log.
    fn by_made(&self, text: Text, log_likelihood: impl Fn(&OfFeelings) -> f64) -> Observation {
        let each = self
            .made
            .iter()
            .map(|of| of.each_ref().map(&log_likelihood));
        Observation::from_each(text, each)
    }

    fn mention(&self, complaint: &Complaint) -> Observation {
        let end = complaint.end;
        let key = match end {
            Some(End::Front) => "evidence.said-front",
            Some(End::Rear) => "evidence.said-rear",
            Some(End::Both) => "evidence.said-both",
            None => "evidence.said",
        };
        let text = Text::new(key).with("feeling", feeling_text(complaint.feeling).into());
        let place = complaint.feeling as usize;
        Observation::by_rider(text, self.hypotheses, self.numbers, |hypothesis, touchy| {
            let ends = chances(self.numbers, complaint.feeling, hypothesis, touchy);
            let [front, rear] = hypothesis.felt.steps[place];
            let severity = self.severity(complaint.severity, front.max(rear) + touchy);
            libm::log(self.placed(end, ends) * severity)
        })
    }

    /// Chance that it is said and placed there: by the end or ends that do it.
    fn placed(&self, said: Option<End>, ends: [f64; 2]) -> f64 {
        let [front, rear] = ends;
        let (only_front, only_rear, both) =
            (front * (1.0 - rear), rear * (1.0 - front), front * rear);
        let (wrong, says_both) = (self.numbers.wrong_end, self.numbers.says_both);
        let right = 1.0 - wrong - says_both;
        match said {
            None => either(ends),
            Some(End::Front) => right * only_front + wrong * only_rear + 0.25 * both,
            Some(End::Rear) => right * only_rear + wrong * only_front + 0.25 * both,
            Some(End::Both) => says_both * (only_front + only_rear) + 0.5 * both,
        }
    }

    /// Chance of a word for how bad it is, given the steps of the worse end.
    fn severity(&self, said: Option<Severity>, steps: f64) -> f64 {
        let numbers = self.numbers;
        let beyond = |at: f64| logistic(numbers.severity * (steps - at));
        match said {
            None => 1.0,
            Some(Severity::Slight) => 1.0 - beyond(numbers.clear_at),
            Some(Severity::Clear) => (beyond(numbers.clear_at) - beyond(numbers.bad_at)).max(0.0),
            Some(Severity::Bad) => beyond(numbers.bad_at),
        }
    }

    /// When it happens: a moment in which it moves more than in the rest of the lap is ticked more often.
    fn moments(&self, complaint: &Complaint) -> Option<Observation> {
        if complaint.phases.is_empty() {
            return None;
        }
        let text =
            Text::new("evidence.moment").with("feeling", feeling_text(complaint.feeling).into());
        let place = complaint.feeling as usize;
        let numbers = self.numbers;
        let base = libm::log(numbers.ticked / (1.0 - numbers.ticked));
        Some(Observation::of(text, self.hypotheses, |hypothesis| {
            let moments = &hypothesis.felt.moments[place];
            #[expect(clippy::cast_precision_loss, reason = "six moments")]
            let mean = moments.iter().sum::<f64>() / moments.len() as f64;
            let ticks = Phase::ALL.iter().zip(moments).map(|(phase, moved)| {
                let chance = logistic(base + numbers.moment * (moved - mean));
                if complaint.phases.contains(phase) {
                    chance
                } else {
                    1.0 - chance
                }
            });
            numbers.each_moment * ticks.map(libm::log).sum::<f64>()
        }))
    }

    /// How it came on: usual for the cause or not. A bike has one history, so that those told of several complaints count
    /// as one together.
    fn history(&self, complaint: &Complaint, told: f64) -> Option<Observation> {
        let since = complaint.since?;
        let text = Text::new(match since {
            Always => "evidence.since-always",
            Slowly => "evidence.since-slowly",
            Suddenly => "evidence.since-suddenly",
            SinceWork => "evidence.since-work",
        })
        .with("feeling", feeling_text(complaint.feeling).into());
        Some(Observation::of(text, self.hypotheses, |hypothesis| {
            let faults = &hypothesis.faults;
            #[expect(clippy::cast_precision_loss, reason = "one or two faults")]
            let count = faults.len().max(1) as f64;
            let chance = if faults.is_empty() {
                self.came_on(since, Cause::NothingWrong)
            } else {
                let each = faults.iter().map(|fault| self.came_on(since, fault.cause));
                each.sum::<f64>() / count
            };
            libm::log(chance) / told
        }))
    }

    /// Chance of a history for a cause: one that is usual for it, else any.
    fn came_on(&self, since: Since, cause: Cause) -> f64 {
        let usual = onset(cause);
        #[expect(clippy::cast_precision_loss, reason = "four histories")]
        let [among, any] = [usual.len(), Since::ALL.len()].map(|count| count as f64);
        let stray = 1.0 / any;
        if usual.is_empty() {
            stray
        } else if usual.contains(&since) {
            self.numbers.history / among + (1.0 - self.numbers.history) * stray
        } else {
            (1.0 - self.numbers.history) * stray
        }
    }

    fn silence(&self, feeling: Feeling, weight: f64) -> Observation {
        let text = Text::new("evidence.not-said").with("feeling", feeling_text(feeling).into());
        self.by_made(text, |made| {
            weight * libm::log(1.0 - made[feeling as usize])
        })
    }

    /// A bike with a fault is brought in because of it: at least one complaint comes of the fault, not of the leak. With p the
    /// chance of a complaint and l its leak, that is 1 − Π l / p over what is said, given that it happens, of chance
    /// 1 − Π (1 − p) / (1 − l) over all feelings (a noisy-or taken apart).
    fn brought_in(&self, complaints: &[Complaint]) -> Observation {
        let text = Text::new("evidence.brought-in");
        let named = |feeling: Feeling| complaints.iter().any(|said| said.feeling == feeling);
        let of_rider = |(touchy, _): (f64, f64)| {
            let touchy = touchy * self.numbers.touchiness;
            Feeling::ALL
                .iter()
                .map(|feeling| (self.leaks(*feeling, touchy), named(*feeling)))
                .collect()
        };
        let leaks: [Vec<(f64, bool)>; RIDERS.len()] = RIDERS.map(of_rider);
        let of_one = |made: &OfFeelings, leaks: &[(f64, bool)]| {
            let (mut all_leaks, mut all_quiet) = (1.0, 1.0);
            for (made, (leak, named)) in made.iter().zip(leaks) {
                let leak = leak.min(*made);
                if *named {
                    all_leaks *= leak / made;
                }
                all_quiet *= (1.0 - made) / (1.0 - leak);
            }
            let least = LEAST_CHANCE;
            libm::log((1.0 - all_leaks).max(least) / (1.0 - all_quiet).max(least))
        };
        let each = self.hypotheses.iter().zip(&self.made).map(|(way, made)| {
            array::from_fn(|rider| match way.faults.as_slice() {
                [] => 0.0,
                _ => of_one(&made[rider], &leaks[rider]),
            })
        });
        Observation::from_each(text, each)
    }

    /// Chance that a rider complains of a feeling though nothing causes it.
    fn leaks(&self, feeling: Feeling, touchy: f64) -> f64 {
        let none = shows_at(feeling).map(|shows| if shows { 0.0 } else { -MOST_STEPS });
        either(chances_of(self.numbers, feeling, none, touchy))
    }

    /// "Nothing is wrong": every feeling denied at once.
    fn all_quiet(&self) -> Observation {
        let text = Text::new("evidence.nothing-wrong");
        self.by_made(text, |made| {
            let quiet = made.iter().map(|made| libm::log(1.0 - made));
            self.numbers.denial * quiet.sum::<f64>()
        })
    }
}

fn feeling_text(feeling: Feeling) -> Text {
    Text::new(format!("feeling.{}", feeling.word()))
}

/// How a cause usually comes on. Common practice, from memory: no ride can tell.
pub const fn onset(cause: Cause) -> &'static [Since] {
    match cause {
        Cause::ForkFriction | Cause::ForkOilWorn | Cause::LinkageDry | Cause::HeadBearings => {
            &[Slowly]
        }
        Cause::GasLow | Cause::ForkReservoir | Cause::ShockGasLost | Cause::TyreLow => {
            &[Slowly, Suddenly]
        }
        Cause::GasNegative | Cause::ForkBound => &[Suddenly, SinceWork],
        Cause::GasShifted => &[Suddenly],
        Cause::ForkOilLow => &[Slowly, SinceWork],
        Cause::ForkOilHigh => &[SinceWork],
        Cause::GasDrag | Cause::MidValve => &[Always],
        Cause::NothingWrong => &[],
        _ => &[Always, SinceWork],
    }
}
