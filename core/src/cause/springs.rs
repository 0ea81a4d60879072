//! Springs as they are: the rate on them and how far they are squeezed, against what would suit.

use super::Cause;
use super::measured::{ALWAYS, Reading};
use super::readings::{Reader, against, of_degree, together};
use crate::bike::Class;
use crate::intake::{Field, Question};
use crate::quantity::Dimension;
use crate::stance::baseline::{self as stance_baseline, Front};
use crate::stance::unknowns::ranged;

/// How well preload is measured, standard deviation, m: the free length as printed less the length by a ruler, each good to
/// some 1.5 mm. Common practice.
const PRELOAD_M: f64 = 2e-3;
/// Preload is amiss by so many of these, m.
const MILLIMETRE: f64 = 1e-3;

impl Reader<'_> {
    /// Relative error of a spring rate as told: 2 % by the tolerance of springs, 8 % if guessed. Common practice.
    fn rate_error(&self, field: Field) -> f64 {
        if field.is_guess(self.intake) {
            0.08
        } else {
            0.02
        }
    }

    pub(super) fn fork_spring(&self) -> Option<Reading> {
        let Front::Coil {
            rate: Ok(suits), ..
        } = &self.baseline.front
        else {
            return None;
        };
        let now = self.told(Field::ForkRate, suits.value)?;
        let range = ranged(self.situation, |s| {
            stance_baseline::fork_rate(s).map(|r| r.value)
        })
        .ok()?;
        Some(Reading {
            question: Question::ForkSpring,
            text: against("evidence.fork-rate", now, suits.value, Dimension::Rate),
            off_by: now - suits.value,
            sigma: together(
                together(
                    self.rate_error(Field::ForkRate) * now,
                    range.half_width / 1.28,
                ),
                // Half a step of the springs sold is as good as right.
                0.25 * stance_baseline::fork_step(&self.situation.machine).value,
            ),
            pushed: of_degree(&[Cause::ForkRateSoft, Cause::ForkRateStiff], suits.value),
            shows: ALWAYS,
        })
    }

    pub(super) fn shock_spring(&self) -> Option<Reading> {
        let suits = self.baseline.rear.rate.ok()?;
        let now = self.told(Field::ShockRate, suits.value)?;
        let range = ranged(self.situation, |s| {
            stance_baseline::shock_rate(s).map(|r| r.value)
        })
        .ok()?;
        Some(Reading {
            question: Question::ShockSpring,
            text: against("evidence.shock-rate", now, suits.value, Dimension::Rate),
            off_by: now - suits.value,
            sigma: together(
                together(
                    self.rate_error(Field::ShockRate) * now,
                    range.half_width / 1.28,
                ),
                0.5 * Class::SHOCK_RATE_STEP.value,
            ),
            pushed: of_degree(&[Cause::ShockRateSoft, Cause::ShockRateStiff], suits.value),
            shows: ALWAYS,
        })
    }

    /// Preload that suits differs between bikes as practice differs, whatever their springs.
    pub(super) fn fork_preload(&self) -> Option<Reading> {
        let Front::Coil {
            preload: Ok(suits), ..
        } = &self.baseline.front
        else {
            return None;
        };
        let now = self.told(Field::ForkPreload, suits.value)?;
        Some(Reading {
            question: Question::ForkSpring,
            text: against("evidence.fork-preload", now, suits.value, Dimension::Length),
            off_by: now - suits.value,
            sigma: together(PRELOAD_M, Class::SPREAD.preload.value),
            pushed: of_degree(&[Cause::ForkPreload], MILLIMETRE),
            shows: ALWAYS,
        })
    }

    pub(super) fn shock_preload(&self) -> Option<Reading> {
        let suits = self.baseline.rear.preload.ok()?.value;
        let now = self.told(Field::ShockPreload, suits)?;
        Some(Reading {
            question: Question::ShockSpring,
            text: against("evidence.shock-preload", now, suits, Dimension::Length),
            off_by: now - suits,
            sigma: together(PRELOAD_M, Class::SPREAD.preload.value),
            pushed: of_degree(&[Cause::ShockPreload], MILLIMETRE),
            shows: ALWAYS,
        })
    }
}
