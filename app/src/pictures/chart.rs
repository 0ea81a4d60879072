//! What a picture holds, SI, before it is put into a reader's units: curves over one axis, and marks on it.

use sagwright_core::advice::{CurveRole, DampingPicture, DampingRole, ForcePicture, SettingId};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Text, UnitChoice};

use crate::advice_page::Voice;

/// Decimals of a time within a ride.
const SECONDS_DECIMALS: usize = 2;

/// Decimals of a speed.
const SPEED_DECIMALS: usize = 2;

/// What an axis measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// A kind of number that riders read in units of their choice.
    Of(Dimension),
    /// Time within a ride, always in seconds.
    Seconds,
    /// How fast a leg or a shaft moves, always in metres a second, as the trade does whatever else it counts in.
    Speed,
}

impl Measure {
    /// A number of SI as it stands on the axis.
    pub fn shown(self, units: &UnitChoice, si: f64) -> f64 {
        match self {
            Self::Of(dimension) => units.unit(dimension).from_si(si),
            Self::Seconds | Self::Speed => si,
        }
    }

    /// Decimals of a number on the axis, as it is told.
    pub fn decimals(self, units: &UnitChoice) -> usize {
        match self {
            Self::Of(dimension) => units.unit(dimension).decimals(),
            Self::Seconds => SECONDS_DECIMALS,
            Self::Speed => SPEED_DECIMALS,
        }
    }

    /// The unit on the axis.
    pub fn symbol(self, units: &UnitChoice) -> &'static str {
        match self {
            Self::Of(dimension) => units.unit(dimension).symbol(),
            Self::Seconds => "s",
            Self::Speed => "m/s",
        }
    }

    /// A number of SI in words.
    pub fn say(self, voice: &Voice, si: f64) -> String {
        match self {
            Self::Of(dimension) => voice.quantity(si, dimension),
            Self::Seconds | Self::Speed => {
                let number = voice.units().number(si, self.decimals(voice.units()));
                format!("{number}\u{a0}{}", self.symbol(voice.units()))
            }
        }
    }
}

/// One axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axis {
    /// Key of its name, with a gap for the unit.
    pub title: &'static str,
    /// What it measures.
    pub measure: Measure,
}

/// How a curve is drawn: colour and dashes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pen {
    /// A coil spring.
    Coil,
    /// A gas spring.
    Gas,
    /// The bike as it stands.
    Now,
    /// The bike as advised.
    Advised,
    /// An end of what can be set.
    End,
}

impl Pen {
    /// Lines and gaps, CSS pixels; the pens of one picture differ without colour.
    pub const fn dashes(self) -> &'static [f64] {
        match self {
            Self::Gas | Self::Advised => &[],
            Self::Coil => &[12.0, 6.0],
            Self::Now => &[3.0, 5.0],
            Self::End => &[12.0, 5.0, 3.0, 5.0],
        }
    }

    /// Class of its stroke in the key.
    pub const fn class(self) -> &'static str {
        match self {
            Self::Coil => "role-coil",
            Self::Gas | Self::Advised => "role-gas",
            Self::Now | Self::End => "role-now",
        }
    }
}

impl From<CurveRole> for Pen {
    fn from(role: CurveRole) -> Self {
        match role {
            CurveRole::Coil => Self::Coil,
            CurveRole::Gas => Self::Gas,
            CurveRole::Now => Self::Now,
            CurveRole::Tried => Self::Advised,
        }
    }
}

impl From<DampingRole> for Pen {
    fn from(role: DampingRole) -> Self {
        match role {
            DampingRole::Chosen => Self::Advised,
            DampingRole::Now => Self::Now,
            DampingRole::Closed => Self::Coil,
            DampingRole::Open => Self::End,
        }
    }
}

/// One curve, SI.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// What it is.
    pub name: Text,
    /// How it is drawn.
    pub pen: Pen,
    /// Along the level axis and up, from left to right.
    pub points: Vec<(f64, f64)>,
}

impl Curve {
    /// Its height at `at`, read off straight between its points; `None` beyond its ends.
    pub fn height_at(&self, at: f64) -> Option<f64> {
        // Half a micrometre, or microsecond, of slack, so that the last point is not lost to rounding.
        let slack = 5e-7;
        self.points.windows(2).find_map(|pair| match *pair {
            [(from, height_from), (to, height_to)] if at >= from - slack && at <= to + slack => {
                let part = if to > from {
                    ((at - from) / (to - from)).clamp(0.0, 1.0)
                } else {
                    0.0
                };
                Some(height_from + part * (height_to - height_from))
            }
            _ => None,
        })
    }
}

/// A place on the level axis worth marking, SI.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What is there.
    pub name: Text,
    /// Where.
    pub at: f64,
}

/// The words that go with a chart, by their keys.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ChartWords {
    /// Name of the read-out.
    pub read: &'static str,
    /// What stands in the read-out before it is used.
    pub start: &'static str,
    /// The read-out, with gaps `at` and `values`.
    pub at: &'static str,
    /// Head of the table's first column.
    pub column: &'static str,
    /// Name of the files it is kept in, without what tells their kind.
    pub file: &'static str,
}

/// A picture, SI.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// What it shows, in a few words.
    pub name: Text,
    /// Its message in a sentence.
    pub message: Text,
    /// The level axis, from 0.
    pub level: Axis,
    /// The upright axis, from 0.
    pub upright: Axis,
    /// End of the level axis.
    pub level_end: f64,
    /// The curves.
    pub curves: Vec<Curve>,
    /// The marks.
    pub marks: Vec<Mark>,
    /// Its words.
    pub words: ChartWords,
    /// Even steps of its table.
    pub table_steps: u32,
}

impl Chart {
    /// The place a part of the way along the level axis.
    pub fn at(&self, part: f64) -> f64 {
        self.level_end * part
    }

    /// Spring force over fork travel.
    pub fn of_force(picture: &ForcePicture) -> Self {
        let curves = picture.curves.iter().map(|curve| Curve {
            name: curve.name.clone(),
            pen: curve.role.into(),
            points: curve.points.clone(),
        });
        let marks = picture.marks.iter().map(|mark| Mark {
            name: mark.name.clone(),
            at: mark.travel,
        });
        Self {
            name: Text::new("picture.force.name"),
            message: picture.message.clone(),
            level: Axis {
                title: "picture.axis.travel",
                measure: Measure::Of(Dimension::Length),
            },
            upright: Axis {
                title: "picture.axis.force",
                measure: Measure::Of(Dimension::Force),
            },
            level_end: picture.full_travel,
            curves: curves.collect(),
            marks: marks.collect(),
            words: ChartWords {
                read: "picture.read.label",
                start: "picture.read.start",
                at: "picture.read.at",
                column: "picture.table.travel",
                file: "picture.force.file",
            },
            table_steps: 10,
        }
    }

    /// Damping force over speed.
    pub fn of_damping(picture: &DampingPicture) -> Self {
        let curves = picture.curves.iter().map(|curve| Curve {
            name: curve.name.clone(),
            pen: curve.role.into(),
            points: curve.points.clone(),
        });
        let marks = picture.marks.iter().map(|mark| Mark {
            name: mark.name.clone(),
            at: mark.speed,
        });
        Self {
            name: picture.name.clone(),
            message: picture.message.clone(),
            level: Axis {
                title: "picture.axis.speed",
                measure: Measure::Speed,
            },
            upright: Axis {
                title: "picture.axis.damping",
                measure: Measure::Of(Dimension::Force),
            },
            level_end: picture.top_speed,
            curves: curves.collect(),
            marks: marks.collect(),
            words: ChartWords {
                read: "picture.damping.read.label",
                start: "picture.damping.read.start",
                at: "picture.read.at",
                column: "picture.damping.speed",
                file: match picture.setting {
                    SettingId::ForkCompression => "picture.damping.file.fork-compression",
                    SettingId::ForkRebound => "picture.damping.file.fork-rebound",
                    SettingId::ShockRebound => "picture.damping.file.shock-rebound",
                    _ => "picture.damping.file.shock-compression",
                },
            },
            table_steps: 10,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_are_read_between_points_and_never_beyond_the_ends() {
        let curve = Curve {
            name: Text::new("x"),
            pen: Pen::Coil,
            points: vec![(0.0, 100.0), (0.1, 200.0), (0.3, 800.0)],
        };
        assert_eq!(curve.height_at(0.05), Some(150.0));
        assert_eq!(curve.height_at(0.3), Some(800.0));
        assert_eq!(curve.height_at(0.31), None);
        assert_eq!(curve.height_at(-0.01), None);
    }
}
