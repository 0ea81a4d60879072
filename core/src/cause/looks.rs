//! What a look at the parked bike says: a yes or a no that a fault makes likelier.

use super::Cause;
use super::belief::Observation;
use super::hypotheses::Hypothesis;
use super::measured::Reading;
use super::numbers::Numbers;
use super::rehearsal::Rehearsed;
use crate::intake::{ForkKind, Intake, Look, Question, ShockKind, YesNo};
use crate::words::Text;

/// Chance of a yes where nothing that makes it is wrong. Common practice, from memory: eyes and hands err, oil darkens before it
/// is worn, and some have other shims on purpose; what a ruler or a feeler gauge tells seldom errs.
const fn false_alarm(look: Look) -> f64 {
    match look {
        Look::OilOffTheLevel | Look::MidValveTight => 0.05,
        _ => 0.08,
    }
}

/// Chance of a yes on a bike with a cause, mildly or plainly there; `None` where the cause has nothing to do with it. Common
/// practice, from memory.
#[expect(
    clippy::match_same_arms,
    reason = "a table: one row for each look and what makes it"
)]
fn shows(look: Look, cause: Cause, plain: bool) -> Option<f64> {
    let (mild, severe) = match (look, cause) {
        (Look::FreesWithAxleLoose, Cause::ForkBound) => (0.75, 0.9),
        (Look::FreesWhenCleaned, Cause::ForkFriction) => (0.6, 0.75),
        (Look::FreesWhenCleaned, Cause::GasDrag) => (0.12, 0.15),
        // Without gas its seals drag no more, so what still sticks is dirt, dry bushes, or legs that bind.
        (Look::SticksWithoutGas, Cause::ForkFriction) => (0.55, 0.85),
        (Look::SticksWithoutGas, Cause::ForkBound) => (0.7, 0.92),
        (Look::HangsShort, Cause::GasNegative) => (0.65, 0.85),
        (Look::ForkSquelches, Cause::ForkOilWorn) => (0.55, 0.8),
        (Look::ForkSquelches, Cause::ForkReservoir) => (0.65, 0.85),
        (Look::ForkSquelches, Cause::ForkOilLow) => (0.25, 0.4),
        (Look::ShockSquelches, Cause::ShockGasLost) => (0.7, 0.9),
        (Look::LinkageStiff, Cause::LinkageDry) => (0.75, 0.92),
        (Look::HeadKnocks, Cause::HeadBearings) => (0.7, 0.92),
        (Look::SitsOutOfLevel, Cause::Attitude) => (0.5, 0.75),
        (Look::SitsOutOfLevel, Cause::ShockPreload | Cause::ForkPreload) => (0.3, 0.45),
        (Look::TubesOffTheMark, Cause::Attitude) => (0.85, 0.95),
        (Look::OilOffTheLevel, Cause::ForkOilLow | Cause::ForkOilHigh) => (0.92, 0.98),
        (Look::ForkOilSpent, Cause::ForkOilWorn) => (0.75, 0.95),
        (Look::MidValveTight, Cause::MidValve) => (0.8, 0.95),
        (Look::ForkShimsOff, Cause::MidValve) => (0.3, 0.5),
        _ => return None,
    };
    Some(if plain { severe } else { mild })
}

/// Minutes it takes, tools at hand and what is looked at lying open. Common practice.
pub const fn minutes(look: Look) -> u32 {
    match look {
        Look::HangsShort | Look::HeadKnocks | Look::ForkSquelches | Look::ShockSquelches => 3,
        Look::TubesOffTheMark | Look::LinkageStiff | Look::ForkOilSpent => 5,
        Look::FreesWhenCleaned
        | Look::SitsOutOfLevel
        | Look::FreesWithAxleLoose
        | Look::SticksWithoutGas
        | Look::MidValveTight => 10,
        Look::OilOffTheLevel => 15,
        Look::ForkShimsOff | Look::ShockShimsOff => 30,
    }
}

/// Whether this bike can be looked at so.
pub fn fits(intake: &Intake, look: Look) -> bool {
    match look {
        Look::HangsShort | Look::SticksWithoutGas => intake
            .bike
            .fork
            .is_none_or(|kind| kind == ForkKind::GasOneLeg),
        // Which leg may be opened depends on the kind.
        Look::OilOffTheLevel | Look::ForkOilSpent => intake.bike.fork.is_some(),
        Look::LinkageStiff => intake.bike.shock != Some(ShockKind::Linkless),
        _ => true,
    }
}

/// Chance of a yes for a hypothesis: noisy-or of its faults and a false alarm. A damping fault that does not stand
/// where the adjusters were found, by their `readings`, is in the shims.
pub fn chance(hypothesis: &Hypothesis, look: Look, readings: &[Reading], numbers: &Numbers) -> f64 {
    let shows = |fault: &&Rehearsed| {
        if !in_shims(look, fault.cause) {
            return shows(look, fault.cause, fault.plain);
        }
        let counted = |reading: &&Reading| {
            let clickers = [Question::ForkClickers, Question::ShockClickers];
            clickers.contains(&reading.question) && reading.is_pushed_by(fault)
        };
        let read = readings.iter().find(counted);
        let elsewhere = read.map_or(1.0 - numbers.in_clickers, |reading| {
            reading.elsewhere(hypothesis, numbers)
        });
        Some(OTHER_SHIMS * elsewhere)
    };
    let faults = hypothesis.faults.iter().copied();
    let quiet = faults
        .filter_map(|fault| shows(&fault))
        .fold(1.0 - false_alarm(look), |quiet, shows| {
            quiet * (1.0 - shows)
        });
    1.0 - quiet
}

/// Chance that shims which make a damping fault are seen to be others. Common practice, from memory.
const OTHER_SHIMS: f64 = 0.9;

/// Whether the look finds a cause where it stands in the shims.
const fn in_shims(look: Look, cause: Cause) -> bool {
    match look {
        Look::ForkShimsOff => matches!(
            cause,
            Cause::ForkCompressionMuch
                | Cause::ForkCompressionLittle
                | Cause::ForkReboundSlow
                | Cause::ForkReboundFast
        ),
        Look::ShockShimsOff => matches!(
            cause,
            Cause::ShockCompressionMuch
                | Cause::ShockCompressionLittle
                | Cause::ShockReboundSlow
                | Cause::ShockReboundFast
        ),
        _ => false,
    }
}

/// Every look that was taken, given what the adjusters were found at.
pub fn observations(
    intake: &Intake,
    readings: &[Reading],
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
) -> Vec<Observation> {
    let looks = intake.measured.looks.iter().flatten();
    looks
        .map(|(look, answer)| {
            let text = Text::new(format!("evidence.look-{}-{}", look.word(), answer.word()));
            Observation::of(text, hypotheses, |hypothesis| {
                let yes = chance(hypothesis, *look, readings, numbers);
                libm::log(match answer {
                    YesNo::Yes => yes,
                    YesNo::No => 1.0 - yes,
                })
            })
        })
        .collect()
}
