//! What the parts of the advice share: the case at hand and how a number gets its reason.

use super::answer::SettingId;
use super::figure::{Figure, Provenance, RangeShare, Reason, ReasonInput, Sensitivity};
use super::ranges::{NumberRange, Ranges};
use super::ridden::Ridden;
use crate::intake::{Field, Intake};
use crate::quantity::Dimension;
use crate::stance::unknowns::{Input, Move, moves};
use crate::stance::{Baseline, Situation, StanceError};
use crate::words::{Arg, Text};

/// The case an advice is written for.
pub struct Sheet<'a> {
    /// What was answered.
    pub intake: &'a Intake,
    /// The bike it makes.
    pub situation: &'a Situation,
    /// What suits it.
    pub baseline: &'a Baseline,
    /// What rides found, where they were ridden.
    pub ridden: Option<&'a Ridden>,
    /// How far each number could be off.
    pub ranges: &'a Ranges,
}

/// How many "if this were different" lines a number gets.
const MOST_SENSITIVITIES: usize = 4;

impl Sheet<'_> {
    /// A number worked out from the situation, with its range and everything it rests on.
    pub fn computed(
        &self,
        id: SettingId,
        dimension: Dimension,
        inputs: Vec<ReasonInput>,
        answer: impl Fn(&Situation) -> Result<f64, StanceError>,
    ) -> Option<Figure> {
        let value = answer(self.situation).ok()?;
        // Without a range too few of the bikes this could be have an answer at all.
        let range = self.ranges.get(id)?;
        let sensitivity = moves(self.situation, &answer)
            .ok()?
            .iter()
            .take(MOST_SENSITIVITIES)
            .filter_map(supposing)
            .collect();
        let mut figure = ranged(id.word(), value, range, dimension, inputs);
        figure.reason.sensitivity = sensitivity;
        Some(figure)
    }

    /// A number by a rule of the trade, with its range where there is one.
    pub fn practice(
        &self,
        (id, word): (SettingId, &str),
        value: f64,
        dimension: Dimension,
        inputs: Vec<ReasonInput>,
    ) -> Figure {
        match self.ranges.get(id) {
            Some(range) => ranged(word, value, range, dimension, inputs),
            None => Figure {
                value,
                low: value,
                high: value,
                dimension,
                reason: reason(word, inputs),
            },
        }
    }

    /// The inputs that weigh on a sag, for the front or the rear.
    pub fn load_inputs(&self, front: bool) -> Vec<ReasonInput> {
        let (s, told) = (self.situation, &self.situation.told);
        let given = |told: bool| {
            if told {
                Provenance::Given
            } else {
                Provenance::TypicalOfClass
            }
        };
        let mut inputs = vec![
            input(
                "rider",
                s.load.rider.value,
                Dimension::Mass,
                given(told.rider),
            ),
            input(
                "rider-share",
                s.load.rider_front_share,
                Dimension::Share,
                given(told.posture),
            ),
            input(
                "bike",
                s.machine.wet_mass.value,
                Dimension::Mass,
                given(told.bike),
            ),
            input(
                "front-share",
                s.machine.front_share,
                Dimension::Share,
                Provenance::TypicalOfClass,
            ),
        ];
        inputs.push(if front {
            input(
                "fork-sag-target",
                s.fork_sag.value,
                Dimension::Length,
                Provenance::Practice,
            )
        } else {
            input(
                "rear-sag-target",
                s.rear_sag.value,
                Dimension::Length,
                Provenance::Practice,
            )
        });
        inputs
    }

    /// How a number told came to be known.
    pub fn provenance(&self, field: Field) -> Provenance {
        match field.get(self.intake) {
            None => Provenance::TypicalOfClass,
            Some(_) if field.is_guess(self.intake) => Provenance::Guessed,
            Some(_) => Provenance::Given,
        }
    }
}

/// A reason whose sentence, equation and source are found under `word`.
pub fn reason(word: &str, inputs: Vec<ReasonInput>) -> Reason {
    let part = |part: &str| Text::new(format!("reason.{word}.{part}"));
    Reason {
        because: part("because"),
        inputs,
        equation: part("equation"),
        source: part("source"),
        sensitivity: Vec::new(),
        range_from: Vec::new(),
    }
}

/// One input of a number, its name found under `word`.
pub fn input(word: &str, value: f64, dimension: Dimension, provenance: Provenance) -> ReasonInput {
    ReasonInput {
        name: Text::new(format!("input.{word}")),
        value,
        dimension,
        provenance,
    }
}

/// A number within its range. The range always holds the number, which the likeliest bike has: where what is not known all
/// pulls one way, it is that end of its range.
fn ranged(
    word: &str,
    value: f64,
    NumberRange { range, shares }: &NumberRange,
    dimension: Dimension,
    inputs: Vec<ReasonInput>,
) -> Figure {
    /// How many lines say where a range comes from.
    const MOST_SHARES: usize = 4;
    /// Smaller shares are not worth a line.
    const WORTH_TELLING: f64 = 0.05;
    let mut reason = reason(word, inputs);
    reason.range_from = shares
        .iter()
        .filter(|share| share.share >= WORTH_TELLING)
        .take(MOST_SHARES)
        .map(|share| RangeShare {
            name: Text::new(format!("range-from.{}", share.input.word())),
            share: share.share,
        })
        .collect();
    Figure {
        value,
        low: range.low.min(value).max(0.0),
        high: range.high.max(value),
        dimension,
        reason,
    }
}

/// "If you weighed so much more …"
fn supposing(moved: &Move) -> Option<Sensitivity> {
    let dimension = match moved.input {
        Input::Rider | Input::Bike => Dimension::Mass,
        Input::RiderShare | Input::FrontShare | Input::MotionRatio => Dimension::Share,
        Input::ForkSag
        | Input::RearSag
        | Input::ForkPreload
        | Input::AirGap
        | Input::ShockPreload => Dimension::Length,
        // Choices, and what a hand likes, are not moved by an amount.
        _ => return None,
    };
    let by = Arg::Change(moved.deviation, dimension);
    Some(Sensitivity {
        supposing: Text::new(format!("supposing.{}", moved.input.word())).with("by", by),
        moves_by: moved.moves_by,
    })
}
