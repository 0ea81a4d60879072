//! The numbers in an intake against the numbers that would suit: one reading per number given.

use super::Cause;
use super::belief::Observation;
use super::measured::{Reading, hours};
use crate::bike::atmosphere::gauge_after;
use crate::intake::{Field, Intake};
use crate::quantity::Dimension;
use crate::stance::baseline::Front;
use crate::stance::clickers;
use crate::stance::tyres::tyres;
use crate::stance::unknowns::ranged;
use crate::stance::{Baseline, Situation, baseline as stance_baseline};
use crate::units::{BAR_IN_PA, pascal};
use crate::words::{Arg, Text};

/// Every number given that says something about a cause.
pub fn readings(intake: &Intake, situation: &Situation, baseline: &Baseline) -> Vec<Observation> {
    let read = Reader {
        intake,
        situation,
        baseline,
    };
    let found = [
        read.fork_spring(),
        read.fork_gas(),
        read.fork_rider_sag(),
        read.fork_free_sag(),
        read.shock_spring(),
        read.rear_rider_sag(),
        read.rear_free_sag(),
        read.travel_used(),
        read.tyre(Field::FrontTyre, "evidence.front-tyre"),
        read.tyre(Field::RearTyre, "evidence.rear-tyre"),
    ];
    let mut all: Vec<Observation> = found
        .into_iter()
        .flatten()
        .map(Reading::observation)
        .collect();
    all.extend(read.clicks().map(Reading::observation));
    for (field, fork) in [(Field::ForkHours, true), (Field::ShockHours, false)] {
        all.extend(
            field
                .si(intake)
                .map(|seconds| hours(seconds / 3600.0, fork)),
        );
    }
    all
}

struct Reader<'a> {
    intake: &'a Intake,
    situation: &'a Situation,
    baseline: &'a Baseline,
}

/// What is found and what would suit, in a sentence.
fn against(key: &'static str, now: f64, suits: f64, dimension: Dimension) -> Text {
    Text::new(key)
        .with("now", Arg::Quantity(now, dimension))
        .with("suits", Arg::Quantity(suits, dimension))
}

/// Independent deviations together: root of the sum of squares.
fn together(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}

impl Reader<'_> {
    /// Relative error of a spring rate as told: 2 % by the tolerance of springs, 8 % if guessed. Common practice.
    fn rate_error(&self, field: Field) -> f64 {
        if field.is_guess(self.intake) {
            0.08
        } else {
            0.02
        }
    }

    fn fork_spring(&self) -> Option<Reading> {
        let now = Field::ForkRate.si(self.intake)?;
        let Front::Coil {
            rate: Ok(suits), ..
        } = &self.baseline.front
        else {
            return None;
        };
        let range = ranged(self.situation, |s| {
            stance_baseline::fork_rate(s).map(|r| r.value)
        })
        .ok()?;
        Some(Reading {
            text: against("evidence.fork-rate", now, suits.value, Dimension::Rate),
            off_by: now - suits.value,
            sigma: together(
                self.rate_error(Field::ForkRate) * now,
                range.half_width / 1.28,
            ),
            // Half a step of the springs sold.
            right_within: 0.5 * stance_baseline::fork_step(&self.situation.machine).value,
            low_means: &[Cause::ForkRateSoft],
            high_means: &[Cause::ForkRateStiff],
        })
    }

    fn shock_spring(&self) -> Option<Reading> {
        let now = Field::ShockRate.si(self.intake)?;
        let suits = self.baseline.rear.rate.ok()?;
        let range = ranged(self.situation, |s| {
            stance_baseline::shock_rate(s).map(|r| r.value)
        })
        .ok()?;
        Some(Reading {
            text: against("evidence.shock-rate", now, suits.value, Dimension::Rate),
            off_by: now - suits.value,
            sigma: together(
                self.rate_error(Field::ShockRate) * now,
                range.half_width / 1.28,
            ),
            right_within: crate::bike::Class::SHOCK_RATE_STEP.value,
            low_means: &[Cause::ShockRateSoft],
            high_means: &[Cause::ShockRateStiff],
        })
    }

    /// Gauge pressure as it would read today, given when and where it was set.
    fn fork_gas(&self) -> Option<Reading> {
        let told = Field::ForkPressure.si(self.intake)?;
        let Front::Gas {
            pressure: Ok(suits),
            ..
        } = &self.baseline.front
        else {
            return None;
        };
        let air = &self.situation.surroundings;
        let now = gauge_after(pascal(told), air.filled, air.riding).value;
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
            text: against(
                "evidence.fork-pressure",
                now,
                suits.value,
                Dimension::Pressure,
            ),
            off_by: now - suits.value,
            sigma: together(gauge, range.half_width / 1.28),
            right_within: 0.3 * BAR_IN_PA,
            low_means: &[Cause::GasLow],
            high_means: &[Cause::GasHigh],
        })
    }

    fn fork_rider_sag(&self) -> Option<Reading> {
        let now = Field::ForkRiderSag.si(self.intake)?;
        Some(Reading {
            text: against(
                "evidence.fork-rider-sag",
                now,
                self.situation.fork_sag.value,
                Dimension::Length,
            ),
            off_by: now - self.situation.fork_sag.value,
            // Two people with a tape agree to about 4 mm (common practice), friction moves it as much again.
            sigma: 0.005,
            right_within: 0.006,
            low_means: &[
                Cause::ForkRateStiff,
                Cause::GasHigh,
                Cause::ForkPreload,
                Cause::GasNegative,
            ],
            high_means: &[Cause::ForkRateSoft, Cause::GasLow, Cause::ForkPreload],
        })
    }

    /// Free sag beside rider sag: their difference is the spring's, preload moves both.
    fn fork_free_sag(&self) -> Option<Reading> {
        let free = Field::ForkFreeSag.si(self.intake)?;
        let ridden = Field::ForkRiderSag.si(self.intake)?;
        let stance = self.baseline.stance.ok()?;
        let suits = stance.ridden.fork.middle.value - stance.free.fork.middle.value;
        Some(Reading {
            text: against(
                "evidence.fork-free-sag",
                ridden - free,
                suits,
                Dimension::Length,
            ),
            off_by: ridden - free - suits,
            sigma: 0.006,
            right_within: 0.005,
            low_means: &[Cause::ForkRateStiff, Cause::ForkFriction, Cause::ForkBound],
            high_means: &[Cause::ForkRateSoft],
        })
    }

    fn rear_rider_sag(&self) -> Option<Reading> {
        let now = Field::RearRiderSag.si(self.intake)?;
        Some(Reading {
            text: against(
                "evidence.rear-rider-sag",
                now,
                self.situation.rear_sag.value,
                Dimension::Length,
            ),
            off_by: now - self.situation.rear_sag.value,
            sigma: 0.004,
            right_within: 0.006,
            low_means: &[Cause::ShockPreload, Cause::ShockRateStiff, Cause::Attitude],
            high_means: &[Cause::ShockPreload, Cause::ShockRateSoft, Cause::Attitude],
        })
    }

    /// What the free sag would be with rider sag on target: preload moves both alike, near enough.
    fn rear_free_sag(&self) -> Option<Reading> {
        let free = Field::RearFreeSag.si(self.intake)?;
        let ridden = Field::RearRiderSag.si(self.intake)?;
        let stance = self.baseline.stance.ok()?;
        let suits = stance.ridden.rear.middle.value - stance.free.rear.middle.value;
        Some(Reading {
            text: against(
                "evidence.rear-free-sag",
                ridden - free,
                suits,
                Dimension::Length,
            ),
            off_by: ridden - free - suits,
            sigma: 0.005,
            right_within: 0.006,
            low_means: &[Cause::ShockRateStiff, Cause::LinkageDry],
            high_means: &[Cause::ShockRateSoft],
        })
    }

    /// A healthy fork uses 85 to 100 % of its travel on the hardest usual hits, without a bang (common practice).
    fn travel_used(&self) -> Option<Reading> {
        let used = Field::ForkTravelUsed.si(self.intake)?;
        let of = self.situation.machine.fork_stroke.value;
        Some(Reading {
            text: Text::new("evidence.travel-used")
                .with("now", Arg::Quantity(used, Dimension::Length))
                .with("of", Arg::Quantity(of, Dimension::Length)),
            off_by: used / of - 0.925,
            sigma: 0.04,
            right_within: 0.075,
            low_means: &[
                Cause::ForkOilHigh,
                Cause::ForkRateStiff,
                Cause::GasHigh,
                Cause::GasDrag,
                Cause::ForkCompressionMuch,
                Cause::MidValve,
            ],
            high_means: &[
                Cause::ForkOilLow,
                Cause::ForkRateSoft,
                Cause::GasLow,
                Cause::ForkCompressionLittle,
                Cause::ForkReservoir,
            ],
        })
    }

    fn tyre(&self, field: Field, key: &'static str) -> Option<Reading> {
        let now = field.si(self.intake)?;
        let usual = tyres(self.situation);
        let suits = if field == Field::FrontTyre {
            usual.front
        } else {
            usual.rear
        };
        Some(Reading {
            text: against(key, now, suits.middle.value, Dimension::Pressure),
            off_by: now - suits.middle.value,
            // Two gauges differ by about this much (common practice).
            sigma: 0.1 * BAR_IN_PA,
            right_within: 0.5 * (suits.high - suits.low).value,
            low_means: &[Cause::TyreLow],
            high_means: &[Cause::TyreHigh],
        })
    }

    /// Clicks from closed: fewer is firmer. A click either way of three is taste.
    fn clicks(&self) -> impl Iterator<Item = Reading> {
        let start = self.baseline.clickers.ok();
        let rows: [(Field, &'static str, Clicker, [&'static [Cause]; 2]); 4] = [
            (
                Field::ForkCompressionNow,
                "evidence.fork-compression",
                |c| &c.fork_compression,
                [
                    &[Cause::ForkCompressionMuch],
                    &[Cause::ForkCompressionLittle],
                ],
            ),
            (
                Field::ForkReboundNow,
                "evidence.fork-rebound",
                |c| &c.fork_rebound,
                [&[Cause::ForkReboundSlow], &[Cause::ForkReboundFast]],
            ),
            (
                Field::ShockLowNow,
                "evidence.shock-low-compression",
                |c| &c.shock_compression,
                [
                    &[Cause::ShockCompressionMuch],
                    &[Cause::ShockCompressionLittle],
                ],
            ),
            (
                Field::ShockReboundNow,
                "evidence.shock-rebound",
                |c| &c.shock_rebound,
                [&[Cause::ShockReboundSlow], &[Cause::ShockReboundFast]],
            ),
        ];
        rows.into_iter()
            .filter_map(move |(field, key, of, [low_means, high_means])| {
                let now = field.si(self.intake)?;
                let suits = f64::from(of(&start?).clicks.middle);
                Some(Reading {
                    text: against(key, now, suits, Dimension::Clicks),
                    off_by: now - suits,
                    sigma: 2.5,
                    right_within: 3.0,
                    low_means,
                    high_means,
                })
            })
    }
}

type Clicker = fn(&clickers::Clickers) -> &clickers::Baseline;
