//! Force over travel as the ride looks it up: whatever springs, gas and stops there are, at one fixed cost.

#![expect(
    clippy::cast_precision_loss,
    reason = "counts of cells, lanes, places and steps, far below what an f64 holds exactly"
)]

use crate::lane::Lane;

/// Cells in the usable travel.
const CELLS: usize = 80;
/// Cells of the whole table: the usable travel, some 30 % beyond either end.
const TABLE: usize = 128;
/// Place of the upper end of the table, in cells.
const LAST: f64 = 127.0;
/// Cells before full extension.
const BEFORE: f64 = 24.0;
/// Way from a knot at which its one-sided slope is taken, in cells.
const NEAR: f64 = 1e-3;

/// A force of each lane over its travel: cubics, one for each eightieth of the travel, that meet the force and its
/// slope at both ends of their cell.
///
/// Full extension, the start of the bump stop and full travel lie between two cells, and slopes are taken from within a
/// cell, so that the kinks there stay where they are. Against the forces it stands for it is right to about 1e-5 of them.
#[derive(Debug, Clone)]
pub(super) struct Curve<T: Lane> {
    /// By lane.
    cells: Vec<[[T::One; 4]; TABLE]>,
    per_cell: T,
    low: T,
    high: T,
    /// Slopes before and beyond the table, N/m.
    before: T,
    beyond: T,
}

impl<T: Lane> Curve<T> {
    /// `travel_m` and `force_n` (of a travel in m) by lane, for the first `lanes` of them, at least one; those left are
    /// like the last of these.
    pub(super) fn of(
        lanes: usize,
        travel_m: impl Fn(usize) -> f64,
        force_n: impl Fn(usize, f64) -> f64,
    ) -> Self {
        let last = lanes.clamp(1, T::LANES) - 1;
        let cell_m = |lane: usize| travel_m(lane) / CELLS as f64;
        // The last cell is spare: rounding may put the upper end of the table there.
        let cells: Vec<[[f64; 4]; TABLE]> = (0..=last)
            .map(|lane| {
                core::array::from_fn(|cell| {
                    cubic(|u| force_n(lane, (cell as f64 + u - BEFORE) * cell_m(lane)))
                })
            })
            .collect();
        let by_lane = |of: &dyn Fn(usize) -> f64| T::from_lanes(|lane| of(lane.min(last)));
        Self {
            per_cell: by_lane(&|lane| 1.0 / cell_m(lane)),
            low: by_lane(&|lane| -BEFORE * cell_m(lane)),
            high: by_lane(&|lane| (LAST - BEFORE) * cell_m(lane)),
            before: by_lane(&|lane| cells[lane][0][1] / cell_m(lane)),
            beyond: by_lane(&|lane| cells[lane][TABLE - 1][1] / cell_m(lane)),
            cells: (0..T::LANES)
                .map(|lane| cells[lane.min(last)].map(|cubic| cubic.map(T::one)))
                .collect(),
        }
    }

    /// Force at a travel in m; beyond the table it goes on straight.
    #[inline]
    pub(super) fn at(&self, travel_m: T) -> T {
        let inside = travel_m.between(self.low, self.high);
        let outside = travel_m - inside;
        let place = (inside - self.low) * self.per_cell;
        let whole = T::splat(T::WHOLE);
        let marked = (place - T::splat(0.5)) + whole;
        let u = place - (marked - whole);
        let cells = &self.cells[..T::LANES];
        let [a, b, c, d] = T::rows(|lane| cells[lane][marked.last_bits(lane) % TABLE]);
        let force = a + u * (b + u * (c + u * d));
        force + outside * outside.if_above(T::splat(0.0), self.beyond, self.before)
    }
}

/// The cubic through a function's values at 0 and 1 with its slopes there, taken from inside.
fn cubic(f: impl Fn(f64) -> f64) -> [f64; 4] {
    let (start, end) = (f(0.0), f(1.0));
    let slope = |at: f64, way: f64| {
        // Second-order one-sided difference.
        (4.0 * f(at + way * NEAR) - 3.0 * f(at) - f(at + way * 2.0 * NEAR)) / (way * 2.0 * NEAR)
    };
    let (rise, last) = (slope(0.0, 1.0), slope(1.0, -1.0));
    let whole = end - start;
    [
        start,
        rise,
        3.0 * whole - 2.0 * rise - last,
        rise + last - 2.0 * whole,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// At either end of the table and far beyond it, in numbers of either length.
    #[test]
    fn goes_on_straight() {
        let force = |s: f64| 500.0 + 4000.0 * s;
        let long = Curve::<f64>::of(1, |_| 0.3, |_, s| force(s));
        let short = Curve::<f32>::of(1, |_| 0.3, |_, s| force(s));
        let low = -BEFORE * 0.3 / CELLS as f64;
        let high = (LAST - BEFORE) * 0.3 / CELLS as f64;
        for s in [
            -5.0,
            low - 1e-9,
            low,
            low + 1e-3,
            0.0,
            high - 1e-3,
            high,
            high + 1e-9,
            5.0,
        ] {
            assert!((long.at(s) - force(s)).abs() < 1e-6, "{s}");
            let got = f64::from(short.at(f32::one(s)));
            assert!((got - force(s)).abs() < 0.01, "{s}: {got}");
        }
    }

    #[test]
    fn keeps_forces_slopes_and_kinks() {
        // A gas column, a top-out kink at zero and a bump stop over the last tenth of 0.3 m.
        let force = |s: f64| {
            let gas = 130.0 * libm::pow(0.4 / (0.4 - s.min(0.39)), 1.3);
            let into = (s - 0.27).max(0.0) / 0.03;
            gas + 9000.0 * s + 30e3 * s.min(0.0) + 2000.0 * into * into * into
        };
        let curve = Curve::<f64>::of(1, |_| 0.3, |_, s| force(s));
        for i in 0..=3300 {
            let s = -0.03 + f64::from(i) * 1e-4;
            let error = (curve.at(s) - force(s)).abs();
            assert!(
                error < 1e-5 * force(s).abs().max(100.0),
                "{error} N at {s} m"
            );
        }
        // Far out it goes on straight instead of running away.
        let rate = (curve.at(-0.1) - curve.at(-0.2)) / 0.1;
        assert!((rate - 39_300.0).abs() < 300.0, "{rate}");
    }
}
