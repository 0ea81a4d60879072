//! How far and how fast the front goes down under the brakes.

use super::filter::Filter;
use super::gather::{Mean, above};
use super::sample::{AtRest, Sample};
use super::weighting::{SWAYING, Weighting};
use crate::lane::Lane;

/// Slowing from which the brakes count as on, m/s²; below it a closed throttle does as much. From memory.
const LEAST_BRAKING_M_S2: f64 = 1.0;
/// How long braking must have lasted to be steady, s: about half a swing of the bike on its springs.
const STEADY_AFTER_S: f64 = 0.5;

#[derive(Debug, Clone, Copy)]
pub(super) struct Dive<T> {
    rest_m: T,
    rest_rad: T,
    rate: Filter<T, 1>,
    /// For how many steps the brakes have been on, and after how many that is steady.
    braking_steps: T,
    steady_steps: T,
    /// Stroke and nose-down pitch, both over those of rest.
    stroke: Mean<T>,
    pitch: Mean<T>,
    pub(super) quickest_m_s: T,
}

impl<T: Lane> Dive<T> {
    /// For a fork that rests as `rest` says.
    pub(super) fn new(step_s: f64, rest: &AtRest<T>) -> Self {
        let sections = [SWAYING];
        Self {
            rest_m: rest.fork_stroke_m,
            rest_rad: rest.pitch_rad,
            rate: Filter::new(&Weighting { sections }, step_s),
            braking_steps: T::splat(0.0),
            steady_steps: T::splat((STEADY_AFTER_S / step_s).round()),
            stroke: Mean::new(),
            pitch: Mean::new(),
            quickest_m_s: T::splat(0.0),
        }
    }

    pub(super) fn step(&mut self, sample: &Sample<T>, measuring: bool) {
        let rate_m_s = self.rate.step(sample.fork_rate_m_s);
        let braking = above(-sample.course_forward_m_s2, T::splat(LEAST_BRAKING_M_S2));
        self.braking_steps = braking * (self.braking_steps + T::splat(1.0));
        if measuring {
            let steady = above(self.braking_steps, self.steady_steps);
            self.stroke
                .add_where(steady, sample.fork_stroke_m - self.rest_m);
            self.pitch
                .add_where(steady, self.rest_rad - sample.pitch_rad);
            self.quickest_m_s = self.quickest_m_s.greater(braking * rate_m_s);
        }
    }

    pub(super) fn added_m(&self) -> T {
        self.stroke.or(T::splat(0.0))
    }

    pub(super) fn nose_down_rad(&self) -> T {
        self.pitch.or(T::splat(0.0))
    }
}
