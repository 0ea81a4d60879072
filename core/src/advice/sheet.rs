//! What the parts of the advice share: the case at hand and how a number gets its reason.

use super::figure::{Figure, Provenance, Reason, ReasonInput, Sensitivity};
use super::ridden::Ridden;
use crate::intake::{BikeClass, Field, Intake};
use crate::quantity::Dimension;
use crate::stance::unknowns::{Input, Move, Ranged, ranged};
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
}

/// How many "if this were different" lines a number gets.
const MOST_SENSITIVITIES: usize = 4;

impl Sheet<'_> {
    /// A number worked out from the situation, with its range and everything it rests on.
    ///
    /// With the class unknown the range spans every class that could be meant.
    pub fn computed(
        &self,
        word: &'static str,
        dimension: Dimension,
        inputs: Vec<ReasonInput>,
        answer: impl Fn(&Situation) -> Result<f64, StanceError>,
    ) -> Option<Figure> {
        let Ranged {
            value,
            half_width,
            moves,
        } = ranged(self.situation, &answer).ok()?;
        let (mut low, mut high) = (value - half_width, value + half_width);
        if !self.situation.told.class {
            for kind in BikeClass::ALL {
                if let Ok(other) = answer(&Situation::of_class(self.intake, *kind)) {
                    low = low.min(other);
                    high = high.max(other);
                }
            }
        }
        let sensitivity = moves
            .iter()
            .take(MOST_SENSITIVITIES)
            .map(supposing)
            .collect();
        Some(Figure {
            value,
            low: low.max(0.0),
            high,
            dimension,
            reason: reason(word, inputs, sensitivity),
        })
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
pub fn reason(word: &str, inputs: Vec<ReasonInput>, sensitivity: Vec<Sensitivity>) -> Reason {
    let part = |part: &str| Text::new(format!("reason.{word}.{part}"));
    Reason {
        because: part("because"),
        inputs,
        equation: part("equation"),
        source: part("source"),
        sensitivity,
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

/// A number from a rule of the trade, with the range that rule gives.
pub fn practice(
    word: &str,
    (low, value, high): (f64, f64, f64),
    dimension: Dimension,
    inputs: Vec<ReasonInput>,
) -> Figure {
    Figure {
        value,
        low,
        high,
        dimension,
        reason: reason(word, inputs, Vec::new()),
    }
}

/// "If you weighed so much more …"
fn supposing(moved: &Move) -> Sensitivity {
    let (word, by) = match moved.input {
        Input::Rider => ("rider", Arg::Change(moved.deviation, Dimension::Mass)),
        Input::RiderShare => (
            "rider-share",
            Arg::Change(moved.deviation, Dimension::Share),
        ),
        Input::Bike => ("bike", Arg::Change(moved.deviation, Dimension::Mass)),
        Input::FrontShare => (
            "front-share",
            Arg::Change(moved.deviation, Dimension::Share),
        ),
        Input::ForkSag => ("fork-sag", Arg::Change(moved.deviation, Dimension::Length)),
        Input::RearSag => ("rear-sag", Arg::Change(moved.deviation, Dimension::Length)),
        Input::ForkPreload => (
            "fork-preload",
            Arg::Change(moved.deviation, Dimension::Length),
        ),
        Input::AirGap => ("air-gap", Arg::Change(moved.deviation, Dimension::Length)),
        Input::MotionRatio => (
            "motion-ratio",
            Arg::Change(moved.deviation, Dimension::Share),
        ),
        Input::ShockPreload => (
            "shock-preload",
            Arg::Change(moved.deviation, Dimension::Length),
        ),
    };
    Sensitivity {
        supposing: Text::new(format!("supposing.{word}")).with("by", by),
        moves_by: moved.moves_by,
    }
}
