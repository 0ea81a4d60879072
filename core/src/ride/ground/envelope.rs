//! What a wheel feels of the ground: a disc rolling over it, softened by the footprint.

#![expect(
    clippy::cast_precision_loss,
    reason = "counts of cells, lanes, places and steps, far below what an f64 holds exactly"
)]

use super::profile::STEP_M;

/// Half the length over which a footprint averages, m: an 80 mm Hann window in all.
const FOOTPRINT_HALF_M: f64 = 0.04;

/// Height of the lowest point of a rigid disc of `radius_m` that rolls over `ground_m` (heights every [`STEP_M`]).
///
/// The disc rests on whatever carries it highest: over a sharp edge its path is rounded, and it does not reach into
/// holes narrower than itself.
pub fn rolling_disc(ground_m: &[f64], radius_m: f64) -> Vec<f64> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a wheel's radius in steps of a centimetre"
    )]
    let reach = (radius_m.clamp(0.0, 1.0) / STEP_M) as usize;
    // How far the disc is above its lowest point, by distance from the middle.
    let rise: Vec<f64> = (0..=reach)
        .map(|i| {
            let away_m = i as f64 * STEP_M;
            radius_m - (radius_m * radius_m - away_m * away_m).max(0.0).sqrt()
        })
        .collect();
    (0..ground_m.len())
        .map(|at| {
            let from = at.saturating_sub(reach);
            let to = (at + reach).min(ground_m.len() - 1);
            (from..=to)
                .map(|i| ground_m[i] - rise[i.abs_diff(at)])
                .fold(f64::NEG_INFINITY, f64::max)
        })
        .collect()
}

/// Heights averaged by a Hann window of `half_m` to either side. The ends count as going on level.
pub fn hann(heights_m: &[f64], half_m: f64) -> Vec<f64> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few metres in steps of a centimetre"
    )]
    let half = (half_m.max(0.0) / STEP_M).round() as usize;
    let weights: Vec<f64> = (0..=half)
        .map(|i| 0.5 + 0.5 * libm::cos(core::f64::consts::PI * i as f64 / half.max(1) as f64))
        .collect();
    let whole: f64 = weights[0] + 2.0 * weights[1..].iter().sum::<f64>();
    let Some(last) = heights_m.len().checked_sub(1) else {
        return Vec::new();
    };
    (0..=last)
        .map(|at| {
            let sides: f64 = (1..=half)
                .map(|i| {
                    weights[i] * (heights_m[at.saturating_sub(i)] + heights_m[(at + i).min(last)])
                })
                .sum();
            (weights[0] * heights_m[at] + sides) / whole
        })
        .collect()
}

/// Both together: the path of a tyre.
pub fn felt(ground_m: &[f64], radius_m: f64) -> Vec<f64> {
    hann(&rolling_disc(ground_m, radius_m), FOOTPRINT_HALF_M)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_meets_a_step_before_it_and_rolls_up_a_circle() {
        let ground: Vec<f64> = (0..300).map(|i| if i < 150 { 0.0 } else { 0.08 }).collect();
        let path = rolling_disc(&ground, 0.345);
        assert!(
            path[100].abs() < 1e-12,
            "long before the step it rolls on the level"
        );
        // Against the edge: height h at a distance d with d² = 2 R h′ − h′², h′ what is left to climb.
        for away in 1..20_usize {
            let d = away as f64 * STEP_M;
            let left = 0.345 - (0.345 * 0.345 - d * d).sqrt();
            let wanted = (0.08 - left).max(0.0);
            assert!((path[150 - away] - wanted).abs() < 1e-12);
        }
        assert!((path[150] - 0.08).abs() < 1e-12);
    }

    #[test]
    fn a_narrow_hole_is_not_felt_to_its_bottom() {
        let mut ground = vec![0.0; 200];
        ground[98..=102].fill(-0.1);
        let path = rolling_disc(&ground, 0.345);
        let deepest = path.iter().copied().fold(0.0, f64::min);
        // A chord of 60 mm between the edges: R − √(R² − 0.03²).
        assert!((deepest + (0.345 - (0.345_f64 * 0.345 - 9e-4).sqrt())).abs() < 1e-12);
    }

    #[test]
    fn the_window_keeps_level_and_slope_and_stops_its_own_length() {
        let slope: Vec<f64> = (0..400).map(|i| 0.3 + 0.01 * f64::from(i)).collect();
        let out = hann(&slope, 0.04);
        assert!((out[200] - slope[200]).abs() < 1e-12);
        // A Hann window of 0.08 m has its first zero at a wavelength of 0.04 m.
        let wave: Vec<f64> = (0..400)
            .map(|i| libm::sin(core::f64::consts::PI * f64::from(i) * 0.5))
            .collect();
        assert!(hann(&wave, 0.04)[200].abs() < 1e-12);
    }
}
