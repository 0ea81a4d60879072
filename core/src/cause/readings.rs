//! The numbers in an intake against the numbers that would suit: one reading per number given.

use super::Cause;
use super::belief::Observation;
use super::hypotheses::Hypothesis;
use super::measured::{ALWAYS, Push, Reading, hours};
use super::numbers::Numbers;
use super::rehearsal::{Rehearsed, Shown};
use crate::bike::atmosphere::gauge_after;
use crate::intake::{Field, Intake, Question};
use crate::quantity::Dimension;
use crate::stance::baseline::Front;
use crate::stance::clickers;
use crate::stance::tyres::tyres;
use crate::stance::unknowns::ranged;
use crate::stance::{Baseline, Situation, baseline as stance_baseline};
use crate::units::{BAR_IN_PA, pascal};
use crate::words::{Arg, Text};

/// What every reading says, and the hours since service.
pub fn observations(
    intake: &Intake,
    readings: &[Reading],
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
) -> Vec<Observation> {
    let mut all: Vec<Observation> = readings
        .iter()
        .map(|reading| reading.observation(hypotheses, numbers))
        .collect();
    for (field, fork) in [(Field::ForkHours, true), (Field::ShockHours, false)] {
        all.extend(
            field
                .si(intake)
                .map(|seconds| hours(seconds / 3600.0, fork, hypotheses)),
        );
    }
    all
}

/// Every number given that says something about a cause, against the number that would suit.
pub fn readings(intake: &Intake, situation: &Situation, baseline: &Baseline) -> Vec<Reading> {
    read(&Reader {
        intake,
        situation,
        baseline,
        supposed: None,
    })
}

/// The readings that a page would give, as if each number on it were found to be what suits.
pub fn supposed(
    intake: &Intake,
    situation: &Situation,
    baseline: &Baseline,
    question: Question,
) -> Vec<Reading> {
    let mut all = read(&Reader {
        intake,
        situation,
        baseline,
        supposed: Some(question),
    });
    all.retain(|reading| reading.question == question);
    all
}

/// Where the adjusters that were counted stand, against where they suit.
pub fn clicks(intake: &Intake, situation: &Situation, baseline: &Baseline) -> Vec<Reading> {
    let reader = Reader {
        intake,
        situation,
        baseline,
        supposed: None,
    };
    reader.clicks().collect()
}

fn read(read: &Reader) -> Vec<Reading> {
    let found = [
        read.fork_spring(),
        read.fork_gas(),
        read.air_shift(),
        read.fork_rider_sag(),
        read.fork_free_sag(),
        read.fork_preload(),
        read.shock_spring(),
        read.shock_preload(),
        read.rear_rider_sag(),
        read.rear_free_sag(),
        read.travel_used(),
        read.tyre(Field::FrontTyre, "evidence.front-tyre"),
        read.tyre(Field::RearTyre, "evidence.rear-tyre"),
    ];
    let mut all: Vec<Reading> = found.into_iter().flatten().collect();
    all.extend(read.clicks());
    all
}

/// How far a fault pushes something that is measured.
pub(super) fn of_shown(of: impl Fn(&Shown) -> f64 + 'static) -> Push {
    Box::new(move |fault: &Rehearsed| of(&fault.shown))
}

/// How far a fault of one of these causes pushes what it changes itself.
pub(super) fn of_degree(causes: &'static [Cause], unit: f64) -> Push {
    Box::new(move |fault: &Rehearsed| {
        if causes.contains(&fault.cause) {
            unit * fault.degree
        } else {
            0.0
        }
    })
}

pub(super) struct Reader<'a> {
    pub(super) intake: &'a Intake,
    pub(super) situation: &'a Situation,
    pub(super) baseline: &'a Baseline,
    /// A page whose numbers are taken to be what suits where they were not given.
    supposed: Option<Question>,
}

/// What is found and what would suit, in a sentence.
pub(super) fn against(key: &'static str, now: f64, suits: f64, dimension: Dimension) -> Text {
    Text::new(key)
        .with("now", Arg::Quantity(now, dimension))
        .with("suits", Arg::Quantity(suits, dimension))
}

/// Independent deviations together: root of the sum of squares.
pub(super) fn together(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}

impl Reader<'_> {
    /// What was told, or what suits where that is to be supposed.
    pub(super) fn told(&self, field: Field, suits: f64) -> Option<f64> {
        let supposed = (self.supposed == Some(field.question())).then_some(suits);
        field.si(self.intake).or(supposed)
    }

    /// Gauge pressure as it was set, against what suits on such a day.
    fn fork_gas(&self) -> Option<Reading> {
        let Front::Gas {
            pressure: Ok(suits),
            ..
        } = &self.baseline.front
        else {
            return None;
        };
        let told = self.told(Field::ForkPressure, suits.value)?;
        let range = ranged(self.situation, |s| {
            stance_baseline::fork_pressure(s).map(|p| p.value)
        })
        .ok()?;
        // A gauge reads to about 0.2 bar (common practice); a guess to about 1 bar.
        let gauge = if Field::ForkPressure.is_guess(self.intake) {
            1.0
        } else {
            0.2
        } * BAR_IN_PA;
        Some(Reading {
            question: Question::ForkGas,
            text: against(
                "evidence.fork-pressure",
                told,
                suits.value,
                Dimension::Pressure,
            ),
            off_by: told - suits.value,
            sigma: together(together(gauge, range.half_width / 1.28), 0.15 * BAR_IN_PA),
            pushed: of_degree(&[Cause::GasLow, Cause::GasHigh], suits.value),
            shows: ALWAYS,
        })
    }

    /// What colder, warmer or thinner air has made of the pressure since it was set, where both airs were told.
    fn air_shift(&self) -> Option<Reading> {
        let Front::Gas { held, .. } = &self.baseline.front else {
            return None;
        };
        let set = Field::ForkPressure.si(self.intake).map_or(*held, pascal);
        let air = &self.situation.surroundings;
        let told = |fields: &[Field]| fields.iter().any(|field| field.si(self.intake).is_some());
        let both = told(&[
            Field::ForkPressureTemperature,
            Field::UsualTemperature,
            Field::UsualAltitude,
        ]) && told(&[Field::TodayTemperature, Field::TodayAltitude]);
        let supposed = self.supposed == Some(Question::GroundToday);
        if !both && !supposed {
            return None;
        }
        let now = gauge_after(set, air.filled, air.riding);
        Some(Reading {
            question: Question::GroundToday,
            text: against(
                "evidence.air-shift",
                now.value,
                set.value,
                Dimension::Pressure,
            ),
            off_by: (now / set).value - 1.0,
            // The gas is seldom as warm as the air: within some 8 K of it (common practice).
            sigma: 0.03,
            pushed: of_degree(&[Cause::GasShifted], 1.0),
            shows: ALWAYS,
        })
    }

    fn tyre(&self, field: Field, key: &'static str) -> Option<Reading> {
        let usual = tyres(self.situation);
        let suits = if field == Field::FrontTyre {
            usual.front
        } else {
            usual.rear
        };
        let now = self.told(field, suits.middle.value)?;
        Some(Reading {
            question: Question::TyrePressures,
            text: against(key, now, suits.middle.value, Dimension::Pressure),
            off_by: now - suits.middle.value,
            // Two gauges differ by about 0.1 bar (common practice), and taste by the width of what suits.
            sigma: together(0.1 * BAR_IN_PA, 0.3 * (suits.high - suits.low).value),
            pushed: of_degree(&[Cause::TyreHigh, Cause::TyreLow], suits.middle.value),
            shows: ALWAYS,
        })
    }

    /// Clicks from closed: fewer is firmer. A click either way of three is taste. A damping fault may stand in the
    /// clickers or in the valves behind them.
    fn clicks(&self) -> impl Iterator<Item = Reading> {
        let start = self.baseline.clickers.ok();
        let rows: [(Field, &'static str, Clicker); 4] = [
            (
                Field::ForkCompressionNow,
                "evidence.fork-compression",
                |c| &c.fork_compression,
            ),
            (Field::ForkReboundNow, "evidence.fork-rebound", |c| {
                &c.fork_rebound
            }),
            (Field::ShockLowNow, "evidence.shock-low-compression", |c| {
                &c.shock_compression
            }),
            (Field::ShockReboundNow, "evidence.shock-rebound", |c| {
                &c.shock_rebound
            }),
        ];
        rows.into_iter()
            .enumerate()
            .filter_map(move |(place, (field, key, of))| {
                let suits = f64::from(of(&start?).clicks.middle);
                let now = self.told(field, suits)?;
                Some(Reading {
                    question: field.question(),
                    text: against(key, now, suits, Dimension::Clicks),
                    off_by: now - suits,
                    sigma: 3.0,
                    pushed: clicks_for(place),
                    shows: |numbers| numbers.in_clickers,
                })
            })
    }
}

/// Clicks that make as much of a change as a damping fault does; other faults change damping without a click.
fn clicks_for(place: usize) -> Push {
    const CAUSES: [[Cause; 2]; 4] = [
        [Cause::ForkCompressionMuch, Cause::ForkCompressionLittle],
        [Cause::ForkReboundSlow, Cause::ForkReboundFast],
        [Cause::ShockCompressionMuch, Cause::ShockCompressionLittle],
        [Cause::ShockReboundSlow, Cause::ShockReboundFast],
    ];
    Box::new(move |fault: &Rehearsed| {
        if CAUSES[place].contains(&fault.cause) {
            -fault.degree / libm::log1p(clickers::CLICK.middle)
        } else {
            0.0
        }
    })
}

type Clicker = fn(&clickers::Clickers) -> &clickers::Baseline;
