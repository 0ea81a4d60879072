//! Vibration of hands and body, and how much of small bumps reaches the hands.

use super::filter::Filter;
use super::gather::{Mean, share};
use super::sample::Sample;
use super::weighting::{BODY_LEVEL, BODY_UP, HANDS, SMALL_BUMPS, SMALL_BUMPS_OF_HEIGHT};
use crate::lane::Lane;

#[derive(Debug, Clone, Copy)]
pub(super) struct Vibration<T> {
    step_s: f64,
    hand_up: Filter<T, 3>,
    hand_forward: Filter<T, 3>,
    body_up: Filter<T, 4>,
    body_forward: Filter<T, 3>,
    hand_small: Filter<T, 2>,
    ground_small: Filter<T, 2>,
    hand_power: Mean<T>,
    body_power: Mean<T>,
    body_forward_power: Mean<T>,
    body_fourth: T,
    hand_small_power: Mean<T>,
    ground_small_power: Mean<T>,
}

impl<T: Lane> Vibration<T> {
    pub(super) fn new(step_s: f64) -> Self {
        Self {
            step_s,
            hand_up: Filter::new(&HANDS, step_s),
            hand_forward: Filter::new(&HANDS, step_s),
            body_up: Filter::new(&BODY_UP, step_s),
            body_forward: Filter::new(&BODY_LEVEL, step_s),
            hand_small: Filter::new(&SMALL_BUMPS, step_s),
            ground_small: Filter::new(&SMALL_BUMPS_OF_HEIGHT, step_s),
            hand_power: Mean::new(),
            body_power: Mean::new(),
            body_forward_power: Mean::new(),
            body_fourth: T::splat(0.0),
            hand_small_power: Mean::new(),
            ground_small_power: Mean::new(),
        }
    }

    pub(super) fn step(&mut self, sample: &Sample<T>, measuring: bool) {
        let hand_up = self.hand_up.step(sample.hand_up_m_s2);
        let hand_forward = self.hand_forward.step(sample.hand_forward_m_s2);
        let body_up = self.body_up.step(sample.body_up_m_s2);
        let body_forward = self.body_forward.step(sample.body_forward_m_s2);
        let hand_small = self.hand_small.step(sample.hand_up_m_s2);
        let ground_small = self.ground_small.step(sample.ground_front_m);
        if measuring {
            let body_square = body_up * body_up;
            self.hand_power
                .add(hand_up * hand_up + hand_forward * hand_forward);
            self.body_power.add(body_square);
            self.body_fourth = self.body_fourth + body_square * body_square;
            self.body_forward_power.add(body_forward * body_forward);
            self.hand_small_power.add(hand_small * hand_small);
            self.ground_small_power.add(ground_small * ground_small);
        }
    }

    pub(super) fn hand_m_s2(&self) -> T {
        root_or_zero(&self.hand_power)
    }

    pub(super) fn body_m_s2(&self) -> T {
        root_or_zero(&self.body_power)
    }

    pub(super) fn body_fore_aft_m_s2(&self) -> T {
        root_or_zero(&self.body_forward_power)
    }

    pub(super) fn body_dose_m_s1_75(&self) -> T {
        (self.body_fourth * T::splat(self.step_s)).sqrt().sqrt()
    }

    pub(super) fn small_bumps_felt(&self) -> T {
        let zero = T::splat(0.0);
        share(
            self.hand_small_power.or(zero),
            self.ground_small_power.or(zero),
            zero,
        )
        .sqrt()
    }
}

fn root_or_zero<T: Lane>(power: &Mean<T>) -> T {
    power.or(T::splat(0.0)).sqrt()
}
