//! What a change ridden for a lap says.
//!
//! A complaint may come from what is wrong with the bike, or be one that riders make of any bike. Only the first moves with
//! the bike. So a change that ought to help tells for the causes that would make the complaint, and against those on which
//! it was no more than a grumble.
//!
//! A change that works on the very thing that is amiss takes away so much of the fault, and of all that is felt of it, as it
//! brings that thing nearer to what suits: four clicks out are half of what a mildly strong compression is too strong by. What
//! it does to a bike with any other fault is what it does to the healthy one: the two add up.

use std::array;

use super::Cause;
use super::belief::Observation;
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use super::rehearsal::{Rehearsal, Rehearsed};
use super::said::{chances, either};
use crate::bench::changes::{CLAMPS_M, CLICKS, GAS_PA, PRELOAD_M, TYRES};
use crate::intake::{Change, Feeling, Field, Intake, Verdict};
use crate::stance::clickers::CLICK;
use crate::words::Text;

/// Steps of a change at which half of all riders say better or worse.
const NOTICED: f64 = 1.0;
/// How much the log odds of saying so rise with each further step.
const SURER: f64 = 1.5;
/// Chance of a verdict that has nothing to do with the change: the lap was not like the one before.
const BY_CHANCE: f64 = 0.08;
/// Gas pressure in a fork where nobody told it, gauge, Pa. Common practice.
const USUAL_GAS_PA: f64 = 10e5;
/// Steps at or below which a feeling cannot show at an end at all.
const HIDDEN: f64 = -7.9;

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
            let Some(trial) = Tryout::of(intake, rehearsal, tried.change) else {
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
                    let chances = trial.chances(numbers, hypothesis, *feeling, touchy);
                    libm::log(chances[*verdict as usize])
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

/// A change as it would be tried on a bike with faults.
#[derive(Debug, Clone, Copy)]
pub struct Tryout<'a> {
    change: Change,
    /// What it does to the healthy bike.
    healthy: &'a [[f64; 2]],
    /// Gas pressure of the fork, gauge, Pa.
    gas_pa: f64,
}

impl<'a> Tryout<'a> {
    /// `None` for a change that this bike has not.
    pub fn of(intake: &Intake, rehearsal: &'a Rehearsal, change: Change) -> Option<Self> {
        let row = rehearsal.changes.iter().find(|row| row.change == change)?;
        Some(Self {
            change,
            healthy: &row.felt.steps,
            gas_pa: Field::ForkPressure.si(intake).unwrap_or(USUAL_GAS_PA),
        })
    }

    /// How far it moves a feeling on the healthy bike, at the end where it moves it more, in steps.
    pub fn on_healthy(&self, feeling: Feeling) -> f64 {
        self.further(feeling, self.healthy[feeling as usize])
    }

    /// The same on a bike with faults.
    fn on(&self, hypothesis: &Hypothesis, feeling: Feeling) -> f64 {
        let reached = hypothesis.faults.iter().find_map(|fault| {
            let share = self.takes_away(fault)?;
            Some(fault.felt.steps[feeling as usize].map(|steps| -share * steps))
        });
        self.further(feeling, reached.unwrap_or(self.healthy[feeling as usize]))
    }

    fn further(&self, feeling: Feeling, [front, rear]: [f64; 2]) -> f64 {
        let shows = self.healthy[feeling as usize].map(|steps| steps > HIDDEN);
        match shows {
            [true, true] if front.abs() > rear.abs() => front,
            [true, false] => front,
            _ => rear,
        }
    }

    /// Share of a fault that it takes away, below 0 where it adds to it; `None` where it works on something else.
    fn takes_away(&self, fault: &Rehearsed) -> Option<f64> {
        let step = self.step(fault)?;
        Some((-step / fault.degree).clamp(-1.0, 1.0))
    }

    /// How far it moves what is amiss, in the measure of the fault's degree.
    fn step(&self, fault: &Rehearsed) -> Option<f64> {
        use Cause::{
            Attitude, ForkCompressionLittle, ForkCompressionMuch, ForkReboundFast, ForkReboundSlow,
            GasHigh, GasLow, GasShifted, ShockCompressionLittle, ShockCompressionMuch,
            ShockPreload, ShockReboundFast, ShockReboundSlow, TyreHigh, TyreLow,
        };
        let damping = f64::from(CLICKS) * libm::log(1.0 + CLICK.middle);
        let gas = GAS_PA / self.gas_pa;
        // Degrees of preload and height are in millimetres.
        let (preload, clamps) = (1e3 * PRELOAD_M, 1e3 * CLAMPS_M);
        let (causes, step): (&[Cause], f64) = match self.change {
            Change::ForkCompressionOpen => {
                (&[ForkCompressionMuch, ForkCompressionLittle], -damping)
            }
            Change::ForkCompressionClose => {
                (&[ForkCompressionMuch, ForkCompressionLittle], damping)
            }
            Change::ForkReboundOpen => (&[ForkReboundSlow, ForkReboundFast], -damping),
            Change::ForkReboundClose => (&[ForkReboundSlow, ForkReboundFast], damping),
            Change::ShockCompressionOpen => {
                (&[ShockCompressionMuch, ShockCompressionLittle], -damping)
            }
            Change::ShockCompressionClose => {
                (&[ShockCompressionMuch, ShockCompressionLittle], damping)
            }
            Change::ShockReboundOpen => (&[ShockReboundSlow, ShockReboundFast], -damping),
            Change::ShockReboundClose => (&[ShockReboundSlow, ShockReboundFast], damping),
            Change::ForkGasLess => (&[GasLow, GasHigh, GasShifted], -gas),
            Change::ForkGasMore => (&[GasLow, GasHigh, GasShifted], gas),
            Change::ShockPreloadLess => (&[ShockPreload], -preload),
            Change::ShockPreloadMore => (&[ShockPreload], preload),
            Change::TyresLess => (&[TyreHigh, TyreLow], -TYRES * (1.0 + fault.degree)),
            Change::ForkUp => (&[Attitude], -clamps),
            Change::ForkDown => (&[Attitude], clamps),
        };
        causes.contains(&fault.cause).then_some(step)
    }

    /// Chance of each verdict on a complaint for a hypothesis, the complaint having been made.
    pub fn chances(
        &self,
        numbers: &Numbers,
        hypothesis: &Hypothesis,
        feeling: Feeling,
        touchy: f64,
    ) -> OfVerdicts {
        let made = either(chances(numbers, feeling, hypothesis, touchy));
        let leak = numbers.leak[feeling as usize];
        // The share of such complaints that the bike's faults make, not the rider's mood.
        let of_the_bike = (1.0 - leak / made).clamp(0.0, 1.0);
        let moved = says(self.on(hypothesis, feeling));
        let unmoved = says(0.0);
        array::from_fn(|verdict| {
            let honest = of_the_bike * moved[verdict] + (1.0 - of_the_bike) * unmoved[verdict];
            (1.0 - BY_CHANCE) * honest + BY_CHANCE / 3.0
        })
    }

    /// Chance of each verdict over all bikes that are believed in.
    pub fn expected(
        &self,
        numbers: &Numbers,
        (hypotheses, believed): (&[Hypothesis], &[f64]),
        feeling: Feeling,
    ) -> OfVerdicts {
        let mut expected = [0.0; Verdict::ALL.len()];
        for (hypothesis, chance) in hypotheses.iter().zip(believed) {
            let verdicts = self.chances(numbers, hypothesis, feeling, 0.0);
            for (sum, one) in expected.iter_mut().zip(verdicts) {
                *sum += chance * one;
            }
        }
        expected
    }
}

/// One number per verdict, in the order of [`Verdict::ALL`].
pub type OfVerdicts = [f64; Verdict::ALL.len()];

fn says(moved: f64) -> OfVerdicts {
    let beyond = |steps: f64| 1.0 / (1.0 + libm::exp(-SURER * (steps - NOTICED)));
    let (better, worse) = (beyond(-moved), beyond(moved));
    let mut said = [0.0; Verdict::ALL.len()];
    for verdict in Verdict::ALL {
        said[*verdict as usize] = match verdict {
            Verdict::Better => better,
            Verdict::Worse => worse,
            Verdict::Same => (1.0 - better - worse).max(0.02),
        };
    }
    said
}
