//! What the force picture shows, in the reader's units and words, ready to draw.

use sagwright_core::advice::{CurveRole, ForceCurve, ForcePicture};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text, UnitChoice, number};

use crate::advice_page::Voice;

/// One curve in the reader's units.
#[derive(Debug, Clone, PartialEq)]
pub struct SceneCurve {
    /// What it is.
    pub name: String,
    /// What it stands for; decides colour and dashes.
    pub role: CurveRole,
    /// Travel and force in the units shown.
    pub points: Vec<(f64, f64)>,
}

/// An upright mark in the reader's units.
#[derive(Debug, Clone, PartialEq)]
pub struct SceneMark {
    /// What is there, with its travel.
    pub label: String,
    /// Travel in the unit shown.
    pub at: f64,
}

/// The force picture, ready to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Name of the level axis, with unit.
    pub travel_title: String,
    /// Name of the upright axis, with unit.
    pub force_title: String,
    /// End of the level axis.
    pub full_travel: f64,
    /// End of the upright axis, a round number above every curve.
    pub top_force: f64,
    /// The curves.
    pub curves: Vec<SceneCurve>,
    /// The marks, from left to right.
    pub marks: Vec<SceneMark>,
    /// Where the reader is reading, travel in the unit shown.
    pub cursor: Option<f64>,
}

impl Scene {
    /// The scene of `picture` for one reader; `cursor` is the travel being read, m.
    pub fn of(picture: &ForcePicture, voice: &Voice, cursor: Option<f64>) -> Self {
        let travel = |si: f64| shown(voice.units(), si, Dimension::Length);
        let force = |si: f64| shown(voice.units(), si, Dimension::Force);
        let curves: Vec<SceneCurve> = picture
            .curves
            .iter()
            .map(|curve| SceneCurve {
                name: voice.say(&curve.name),
                role: curve.role,
                points: curve
                    .points
                    .iter()
                    .map(|&(at, strong)| (travel(at), force(strong)))
                    .collect(),
            })
            .collect();
        let strongest = curves
            .iter()
            .flat_map(|curve| &curve.points)
            .map(|&(_, strong)| strong)
            .fold(0.0, f64::max);
        let mut marks: Vec<SceneMark> = picture
            .marks
            .iter()
            .map(|mark| SceneMark {
                label: voice.say(
                    &Text::new("picture.mark")
                        .with("name", mark.name.clone().into())
                        .with("travel", Arg::Quantity(mark.travel, Dimension::Length)),
                ),
                at: travel(mark.travel),
            })
            .collect();
        marks.sort_by(|a, b| a.at.total_cmp(&b.at));
        let title = |key: &'static str, dimension: Dimension| {
            let unit = voice.units().unit(dimension).symbol();
            voice.with(key, "unit", Arg::Raw(unit.to_owned()))
        };
        Self {
            travel_title: title("picture.axis.travel", Dimension::Length),
            force_title: title("picture.axis.force", Dimension::Force),
            full_travel: travel(picture.full_travel),
            top_force: round_above(strongest),
            curves,
            marks,
            cursor: cursor.map(travel),
        }
    }
}

/// A quantity (SI) as a bare number in the unit chosen.
fn shown(units: &UnitChoice, si: f64, dimension: Dimension) -> f64 {
    units.unit(dimension).from_si(si)
}

/// The smallest of 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that leaves a little room above
/// `value`; 1 where there is nothing to show.
pub fn round_above(value: f64) -> f64 {
    if !value.is_finite() || value <= 0.0 {
        return 1.0;
    }
    let wanted = value * 1.04;
    let mut decade = 1.0;
    while decade > wanted {
        decade /= 10.0;
    }
    while decade * 10.0 <= wanted {
        decade *= 10.0;
    }
    [1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0]
        .into_iter()
        .map(|step| step * decade)
        .find(|&round| round >= wanted)
        .unwrap_or(decade * 10.0)
}

/// A number on an axis: two decimals at most and no idle zeros.
pub fn tick(value: f64) -> String {
    let text = number(value, 2);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The force of a curve at `travel` (SI both), read off straight between its points; `None` beyond its ends.
pub fn force_at(curve: &ForceCurve, travel: f64) -> Option<f64> {
    // Half a micrometre of slack, so that the last point is not lost to rounding.
    let slack = 5e-7;
    curve.points.windows(2).find_map(|pair| match *pair {
        [(from, force_from), (to, force_to)] if travel >= from - slack && travel <= to + slack => {
            let part = if to > from {
                ((travel - from) / (to - from)).clamp(0.0, 1.0)
            } else {
                0.0
            };
            Some(force_from + part * (force_to - force_from))
        }
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn rounds(value: f64, expected: f64) {
        let got = round_above(value);
        assert!(
            (got - expected).abs() < 1e-9 * expected,
            "{value} gave {got}, expected {expected}"
        );
    }

    #[test]
    fn the_axis_ends_on_a_round_number_with_room_above() {
        rounds(2310.0, 2500.0);
        rounds(2450.0, 3000.0);
        rounds(97.0, 120.0);
        rounds(0.031, 0.04);
        rounds(0.0, 1.0);
        rounds(f64::NAN, 1.0);
        rounds(7.9, 10.0);
    }

    #[test]
    fn ticks_carry_no_idle_zeros() {
        assert_eq!(tick(100.0), "100");
        assert_eq!(tick(2.5), "2.5");
        assert_eq!(tick(0.0), "0");
        assert_eq!(tick(-0.0), "0");
        assert_eq!(tick(0.25), "0.25");
    }

    #[test]
    fn forces_are_read_between_points_and_never_beyond_the_ends() {
        let curve = ForceCurve {
            name: Text::new("x"),
            role: CurveRole::Coil,
            points: vec![(0.0, 100.0), (0.1, 200.0), (0.3, 800.0)],
        };
        assert_eq!(force_at(&curve, 0.05), Some(150.0));
        assert_eq!(force_at(&curve, 0.3), Some(800.0));
        assert_eq!(force_at(&curve, 0.31), None);
        assert_eq!(force_at(&curve, -0.01), None);
    }
}
