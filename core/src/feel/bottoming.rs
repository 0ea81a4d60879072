//! How hard an end hits its stop.

use crate::lane::Lane;

#[derive(Debug, Clone, Copy)]
pub(super) struct Bottoming<T> {
    step_s: T,
    pub(super) peak_n: T,
    pub(super) energy_j: T,
}

impl<T: Lane> Bottoming<T> {
    pub(super) fn new(step_s: f64) -> Self {
        Self {
            step_s: T::splat(step_s),
            peak_n: T::splat(0.0),
            energy_j: T::splat(0.0),
        }
    }

    /// Takes the force of the stop, N, and the rate along it, m/s, positive into the stop.
    pub(super) fn step(&mut self, stop_n: T, rate_m_s: T) {
        self.peak_n = self.peak_n.greater(stop_n);
        let inward_m_s = rate_m_s.greater(T::splat(0.0));
        self.energy_j = self.energy_j + stop_n * inward_m_s * self.step_s;
    }
}
