//! How the bike is thrown about its pitch, and how far the rear leaves the ground.

use super::sample::Sample;
use crate::lane::Lane;

#[derive(Debug, Clone, Copy)]
pub(super) struct Kick<T> {
    pub(super) nose_down_rad_s: T,
    pub(super) nose_up_rad_s: T,
    pub(super) rear_lift_m: T,
}

impl<T: Lane> Kick<T> {
    pub(super) fn new() -> Self {
        let zero = T::splat(0.0);
        Self {
            nose_down_rad_s: zero,
            nose_up_rad_s: zero,
            rear_lift_m: zero,
        }
    }

    pub(super) fn step(&mut self, sample: &Sample<T>) {
        self.nose_down_rad_s = self.nose_down_rad_s.greater(-sample.pitch_rate_rad_s);
        self.nose_up_rad_s = self.nose_up_rad_s.greater(sample.pitch_rate_rad_s);
        self.rear_lift_m = self.rear_lift_m.greater(sample.rear_gap_m);
    }
}
