//! The numbers in an intake against the numbers that would suit: one reading per number given.

use std::rc::Rc;

use super::Cause;
use super::belief::Observation;
use super::end::{Read, together};
use super::hypotheses::Hypothesis;
use super::measured::{ALWAYS, Push, Reading, hours};
use super::numbers::Numbers;
use super::rehearsal::{Rehearsed, Shown};
use crate::bike::atmosphere::gauge_after;
use crate::intake::{Field, Intake, Question};
use crate::quantity::Dimension;
use crate::stance::baseline::Front;
use crate::stance::clickers;
use crate::stance::sound::{Part, Sound, sound};
use crate::stance::tyres::tyres;
use crate::stance::{Baseline, Situation};
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

/// The pages that take springs, preload and sags.
const OF_ENDS: [Question; 5] = [
    Question::ForkSpring,
    Question::ForkGas,
    Question::ShockSpring,
    Question::SagFront,
    Question::SagRear,
];

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
    let mut all = read.ends();
    let others = [
        read.air_shift(),
        read.travel_used(),
        read.tyre(Field::FrontTyre, "evidence.front-tyre"),
        read.tyre(Field::RearTyre, "evidence.rear-tyre"),
    ];
    all.extend(others.into_iter().flatten());
    all.extend(read.clicks());
    all
}

/// How far a fault pushes something that is measured.
pub(super) fn of_shown(of: impl Fn(&Shown) -> f64 + 'static) -> Push {
    Rc::new(move |fault: &Rehearsed| of(&fault.shown))
}

/// How far a fault of one of these causes pushes what it changes itself.
pub(super) fn of_degree(causes: &'static [Cause], unit: f64) -> Push {
    Rc::new(move |fault: &Rehearsed| {
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
pub(super) fn root_sum(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}

impl Reader<'_> {
    /// What was told, or what suits where that is to be supposed.
    pub(super) fn told(&self, field: Field, suits: f64) -> Option<f64> {
        let supposed = (self.supposed == Some(field.question())).then_some(suits);
        field.si(self.intake).or(supposed)
    }

    /// Springs, preload and sags, each end for itself.
    fn ends(&self) -> Vec<Reading> {
        let wanted = match self.supposed {
            Some(question) => OF_ENDS.contains(&question),
            None => Field::ALL.iter().any(|field| {
                OF_ENDS.contains(&field.question()) && field.si(self.intake).is_some()
            }),
        };
        if !wanted {
            return Vec::new();
        }
        let Ok(Sound { usual, covariances }) = sound(self.situation) else {
            return Vec::new();
        };
        let [[spring, preload, ridden, free], rear] = usual;
        let front = [
            self.fork_spring(spring).or_else(|| self.fork_gas(spring)),
            self.fork_preload(preload),
            self.fork_rider_sag(ridden),
            self.fork_free_sag(free),
        ];
        let [spring, preload, ridden, free] = rear;
        let rear = [
            self.shock_spring(spring),
            self.shock_preload(preload),
            self.rear_rider_sag(ridden),
            self.rear_free_sag(free),
        ];
        let ends = [front, rear].map(|parts| {
            let read = Part::ALL
                .into_iter()
                .zip(parts)
                .filter_map(|(part, reading)| {
                    let reading = reading?;
                    let known = self.supposed != Some(reading.question);
                    Some(Read {
                        part,
                        reading,
                        known,
                    })
                });
            let mut read: Vec<Read> = read.collect();
            // What is only supposed comes after what is known.
            read.sort_by_key(|read| !read.known);
            read
        });
        let mut all = Vec::new();
        for (read, sound) in ends.into_iter().zip(&covariances) {
            all.extend(together(read, sound));
        }
        all
    }

    /// Gauge pressure as it was set, against what suits on such a day.
    fn fork_gas(&self, usual: f64) -> Option<Reading> {
        let Front::Gas {
            pressure: Ok(suits),
            ..
        } = &self.baseline.front
        else {
            return None;
        };
        let told = self.told(Field::ForkPressure, suits.value)?;
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
            off_by: told - usual,
            sigma: root_sum(gauge, 0.15 * BAR_IN_PA),
            pushed: of_degree(&[Cause::GasLow, Cause::GasHigh], suits.value),
            shows: ALWAYS,
            beside: Vec::new(),
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
            beside: Vec::new(),
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
            sigma: root_sum(0.1 * BAR_IN_PA, 0.3 * (suits.high - suits.low).value),
            pushed: of_degree(&[Cause::TyreHigh, Cause::TyreLow], suits.middle.value),
            shows: ALWAYS,
            beside: Vec::new(),
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
                    beside: Vec::new(),
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
    Rc::new(move |fault: &Rehearsed| {
        if CAUSES[place].contains(&fault.cause) {
            -fault.degree / libm::log1p(clickers::CLICK.middle)
        } else {
            0.0
        }
    })
}

type Clicker = fn(&clickers::Clickers) -> &clickers::Baseline;
