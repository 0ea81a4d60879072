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

impl Profile {
    /// From heights every [`STEP_M`] from place 0 on. No heights are level ground.
    pub fn new(heights_m: Vec<f64>) -> Self {
        Self { heights_m }
    }

    /// Height in m and slope at a place in m. Before the first and after the last height the ground goes on level.
    #[inline]
    pub fn at(&self, place_m: f64) -> [f64; 2] {
        let along = place_m / STEP_M;
        let whole = along.floor();
        let u = along - whole;
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a course is far shorter than the integers; the cast saturates"
        )]
        let first = whole as i64 - 1;
        let [a, b, c, d] = self.four(first);
        let v = 1.0 - u;
        let (uu, vv) = (u * u, v * v);
        let height = (a * vv * v
            + b * (4.0 - 6.0 * uu + 3.0 * uu * u)
            + c * (4.0 - 6.0 * vv + 3.0 * vv * v)
            + d * uu * u)
            / 6.0;
        let slope = 0.5 * ((b - a) * vv + (c - b) * (1.0 + 2.0 * u * v) + (d - c) * uu);
        [height, slope / STEP_M]
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
