//! Springs as they are: the rate on them and how far they are squeezed, against what would suit.

use super::Cause;
use super::measured::{ALWAYS, Reading};
use super::readings::{Reader, against, of_degree};
use crate::intake::{Field, Question};
use crate::quantity::Dimension;
use crate::stance::baseline::Front;

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

    pub(super) fn fork_spring(&self, usual: f64) -> Option<Reading> {
        let Front::Coil {
            rate: Ok(suits), ..
        } = &self.baseline.front
        else {
            return None;
        };
        let now = self.told(Field::ForkRate, suits.value)?;
        Some(Reading {
            question: Question::ForkSpring,
            text: against("evidence.fork-rate", now, suits.value, Dimension::Rate),
            off_by: now - usual,
            sigma: self.rate_error(Field::ForkRate) * now,
            pushed: of_degree(&[Cause::ForkRateSoft, Cause::ForkRateStiff], suits.value),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    pub(super) fn shock_spring(&self, usual: f64) -> Option<Reading> {
        let suits = self.baseline.rear.rate.ok()?;
        let now = self.told(Field::ShockRate, suits.value)?;
        Some(Reading {
            question: Question::ShockSpring,
            text: against("evidence.shock-rate", now, suits.value, Dimension::Rate),
            off_by: now - usual,
            sigma: self.rate_error(Field::ShockRate) * now,
            pushed: of_degree(&[Cause::ShockRateSoft, Cause::ShockRateStiff], suits.value),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    /// Preload that suits differs between bikes as practice differs, whatever their springs.
    pub(super) fn fork_preload(&self, usual: f64) -> Option<Reading> {
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
            off_by: now - usual,
            sigma: PRELOAD_M,
            pushed: of_degree(&[Cause::ForkPreload], MILLIMETRE),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }

    pub(super) fn shock_preload(&self, usual: f64) -> Option<Reading> {
        let suits = self.baseline.rear.preload.ok()?.value;
        let now = self.told(Field::ShockPreload, suits)?;
        Some(Reading {
            question: Question::ShockSpring,
            text: against("evidence.shock-preload", now, suits, Dimension::Length),
            off_by: now - usual,
            sigma: PRELOAD_M,
            pushed: of_degree(&[Cause::ShockPreload], MILLIMETRE),
            shows: ALWAYS,
            beside: Vec::new(),
        })
    }
}
