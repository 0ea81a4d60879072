//! What a picture shows, in the reader's units and words, ready to draw.

use sagwright_core::words::{Arg, Text, number};

use super::chart::{Axis, Chart, Pen};
use crate::advice_page::Voice;

/// One curve in the reader's units.
#[derive(Debug, Clone, PartialEq)]
pub struct SceneCurve {
    /// What it is.
    pub name: String,
    /// How it is drawn.
    pub pen: Pen,
    /// Along the level axis and up, in the units shown.
    pub points: Vec<(f64, f64)>,
}

/// An upright mark in the reader's units.
#[derive(Debug, Clone, PartialEq)]
pub struct SceneMark {
    /// What is there, and where.
    pub label: String,
    /// Where, in the unit shown.
    pub at: f64,
}

/// A picture, ready to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Name of the level axis, with unit.
    pub level_title: String,
    /// Name of the upright axis, with unit.
    pub upright_title: String,
    /// End of the level axis.
    pub level_end: f64,
    /// End of the upright axis, a round number above every curve.
    pub upright_end: f64,
    /// The curves.
    pub curves: Vec<SceneCurve>,
    /// The marks, from left to right.
    pub marks: Vec<SceneMark>,
    /// Where the reader is reading, in the unit of the level axis.
    pub cursor: Option<f64>,
}

impl Scene {
    /// The scene of `chart` for one reader; `cursor` is the place being read, SI.
    pub fn of(chart: &Chart, voice: &Voice, cursor: Option<f64>) -> Self {
        let along = |si: f64| chart.level.measure.shown(voice.units(), si);
        let up = |si: f64| chart.upright.measure.shown(voice.units(), si);
        let curves: Vec<SceneCurve> = chart
            .curves
            .iter()
            .map(|curve| SceneCurve {
                name: voice.say(&curve.name),
                pen: curve.pen,
                points: curve
                    .points
                    .iter()
                    .map(|&(at, height)| (along(at), up(height)))
                    .collect(),
            })
            .collect();
        let highest = curves
            .iter()
            .flat_map(|curve| &curve.points)
            .map(|&(_, height)| height)
            .fold(0.0, f64::max);
        let mut marks: Vec<SceneMark> = chart
            .marks
            .iter()
            .map(|mark| SceneMark {
                label: voice.say(
                    &Text::new("picture.mark")
                        .with("name", mark.name.clone().into())
                        .with("at", Arg::Raw(chart.level.measure.say(voice, mark.at))),
                ),
                at: along(mark.at),
            })
            .collect();
        marks.sort_by(|a, b| a.at.total_cmp(&b.at));
        let title = |axis: Axis| {
            let unit = axis.measure.symbol(voice.units());
            voice.with(axis.title, "unit", Arg::Raw(unit.to_owned()))
        };
        Self {
            level_title: title(chart.level),
            upright_title: title(chart.upright),
            level_end: along(chart.level_end),
            upright_end: round_above(highest),
            curves,
            marks,
            cursor: cursor.map(along),
        }
    }
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
}
