//! What a change ridden for a lap says.
//!
//! A complaint may come from what is wrong with the bike, or be one that riders make of any bike. Only the first moves with
//! the bike. So a change that ought to help tells for the causes that would make the complaint, and against those on which
//! it was no more than a grumble.
//!
//! What a change does to a bike with a fault is what it does to the healthy one: the two add up.

use super::belief::Observation;
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use super::rehearsal::Rehearsal;
use super::said::{chances, either};
use crate::intake::{Change, Feeling, Intake, Verdict};
use crate::words::Text;

/// Steps of a change at which half of all riders say better or worse.
const NOTICED: f64 = 1.0;
/// How much the log odds of saying so rise with each further step.
const SURER: f64 = 1.5;
/// Chance of a verdict that has nothing to do with the change: the lap was not like the one before.
const BY_CHANCE: f64 = 0.08;

/// Everything tried, one observation for each complaint looked at.
pub fn observations(
    intake: &Intake,
    rehearsal: &Rehearsal,
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
) -> Vec<Observation> {
    let mut all = Vec::new();
    for tried in &intake.tried {
        for (feeling, verdict) in &tried.felt {
            let Some(moved) = moved(rehearsal, tried.change, *feeling) else {
                continue;
            };
            let text = Text::new(format!("evidence.tried-{}", verdict.word()))
                .with("change", change_text(tried.change).into())
                .with(
                    "feeling",
                    Text::new(format!("feeling.{}", feeling.word())).into(),
                );
            all.push(Observation::by_rider(
                text,
                hypotheses,
                numbers,
                |hypothesis, touchy| {
                    libm::log(chance(
                        numbers, hypothesis, *feeling, moved, touchy, *verdict,
                    ))
                },
            ));
        }
    }
    all
}

/// The name of a change.
pub fn change_text(change: Change) -> Text {
    Text::new(format!("change.{}", change.word()))
}

/// How far a change moves a feeling at its worse end, in steps; `None` for one that this bike has not.
pub fn moved(rehearsal: &Rehearsal, change: Change, feeling: Feeling) -> Option<f64> {
    let row = rehearsal.changes.iter().find(|row| row.change == change)?;
    let [front, rear] = row.felt.steps[feeling as usize];
    Some(
        if front.abs() > rear.abs() && front > -7.9 || rear <= -7.9 {
            front
        } else {
            rear
        },
    )
}

/// Chance of a verdict on a complaint for a hypothesis, the complaint having been made.
pub fn chance(
    numbers: &Numbers,
    hypothesis: &Hypothesis,
    feeling: Feeling,
    moved: f64,
    touchy: f64,
    verdict: Verdict,
) -> f64 {
    let made = either(chances(numbers, feeling, hypothesis, touchy));
    let leak = numbers.leak[feeling as usize];
    // The share of such complaints that the bike's faults make, not the rider's mood.
    let of_the_bike = (1.0 - leak / made).clamp(0.0, 1.0);
    let honest = of_the_bike * says(moved, verdict) + (1.0 - of_the_bike) * says(0.0, verdict);
    (1.0 - BY_CHANCE) * honest + BY_CHANCE / 3.0
}

fn says(moved: f64, verdict: Verdict) -> f64 {
    let beyond = |steps: f64| 1.0 / (1.0 + libm::exp(-SURER * (steps - NOTICED)));
    let (better, worse) = (beyond(-moved), beyond(moved));
    match verdict {
        Verdict::Better => better,
        Verdict::Worse => worse,
        Verdict::Same => (1.0 - better - worse).max(0.02),
    }
}
