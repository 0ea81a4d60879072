//! Heights along the way, smooth to the curvature.

/// Heights at even places, read through the uniform cubic B-spline over them (de Boor, A Practical Guide to Splines).
///
/// The spline does not pass through the heights but averages them with its own bell, of standard deviation [`STEP_M`] / √3,
/// which belongs to the tyre's smoothing. It has no kink in height, slope or curvature: kinks would leave an error that no shorter step
/// takes away.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    heights_m: Vec<f64>,
}

/// Distance between two heights, m.
pub const STEP_M: f64 = 0.01;

/// Heights in a metre.
const PER_M: f64 = 1.0 / STEP_M;

impl Profile {
    /// From heights every [`STEP_M`] from place 0 on. No heights are level ground.
    pub fn new(heights_m: Vec<f64>) -> Self {
        Self { heights_m }
    }

    /// Height in m and slope at a place in m. Before the first and after the last height the ground goes on level.
    #[inline]
    pub fn at(&self, place_m: f64) -> [f64; 2] {
        let along = place_m * PER_M;
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_precision_loss,
            reason = "a course is far shorter than the integers; the cast saturates"
        )]
        let (whole, u) = {
            // Towards zero, then down where that was up: quicker than asking for the floor.
            let near = along as i64;
            let whole = near - i64::from(near as f64 > along);
            (whole, along - whole as f64)
        };
        let [a, b, c, d] = self.four(whole.saturating_sub(1));
        // The four bells of the spline in powers of u.
        let (rise, bend) = (c - a, a - b - b + c);
        let twist = d - a + 3.0 * (b - c);
        let height = (a + 4.0 * b + c + u * (3.0 * rise + u * (3.0 * bend + u * twist))) / 6.0;
        let slope = 0.5 * (rise + u * (bend + bend + u * twist));
        [height, slope * PER_M]
    }

    /// Four heights in a row, those beyond the ends being like the ends.
    #[inline]
    fn four(&self, first: i64) -> [f64; 4] {
        if let Ok(start) = usize::try_from(first)
            && let Some(&[a, b, c, d]) = self.heights_m.get(start..start + 4)
        {
            return [a, b, c, d];
        }
        let Some(last) = self.heights_m.len().checked_sub(1) else {
            return [0.0; 4];
        };
        core::array::from_fn(|i| {
            let at = first + i64::try_from(i).unwrap_or(0);
            self.heights_m[usize::try_from(at.max(0)).unwrap_or(last).min(last)]
        })
    }

    /// The heights it is made of.
    pub fn heights_m(&self) -> &[f64] {
        &self.heights_m
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A parabola comes back as itself, raised by its curvature times `STEP_M`² / 6, and its slope exactly.
    #[test]
    fn keeps_a_parabola() {
        let heights: Vec<f64> = (0..200).map(|i| f64::from(i * i) * 1e-4 * 0.7).collect();
        let profile = Profile::new(heights);
        for place in [0.5, 0.503, 1.0, 1.237] {
            let [height, slope] = profile.at(place);
            assert!((height - 0.7 * (place * place + 1e-4 / 3.0)).abs() < 1e-12);
            assert!((slope - 1.4 * place).abs() < 1e-10);
        }
    }

    #[test]
    fn goes_on_level() {
        let profile = Profile::new(vec![0.2, 0.3]);
        for (profile, place, wanted) in [
            (&profile, -5.0, 0.2),
            (&profile, 5.0, 0.3),
            (&Profile::new(Vec::new()), 1.0, 0.0),
        ] {
            let [height, slope] = profile.at(place);
            assert!((height - wanted).abs() < 1e-15 && slope.abs() < 1e-15);
        }
    }
}
