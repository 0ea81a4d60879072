//! What a look at the parked bike says: a yes or a no that a fault makes likelier.

use super::Cause;
use super::belief::Observation;
use super::hypotheses::Hypothesis;
use crate::intake::{ForkKind, Intake, Look, ShockKind, YesNo};
use crate::words::Text;

/// Chance of a yes where nothing that makes it is wrong. Common practice, from memory.
const FALSE_ALARM: f64 = 0.08;

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
        (Look::OilOffTheLevel, Cause::ForkOilLow | Cause::ForkOilHigh) => (0.85, 0.95),
        _ => return None,
    };
    Some(if plain { severe } else { mild })
}

/// Minutes it takes, tools at hand. Common practice.
pub const fn minutes(look: Look) -> u32 {
    match look {
        Look::HangsShort | Look::HeadKnocks | Look::ForkSquelches | Look::ShockSquelches => 3,
        Look::TubesOffTheMark => 5,
        Look::FreesWhenCleaned | Look::SitsOutOfLevel | Look::FreesWithAxleLoose => 10,
        Look::LinkageStiff => 25,
        Look::OilOffTheLevel => 40,
    }
}

/// Whether this bike can be looked at so.
pub fn fits(intake: &Intake, look: Look) -> bool {
    match look {
        Look::HangsShort => intake
            .bike
            .fork
            .is_none_or(|kind| kind == ForkKind::GasOneLeg),
        // A gas leg is opened by a workshop only.
        Look::OilOffTheLevel => intake
            .bike
            .fork
            .is_some_and(|kind| kind != ForkKind::GasOneLeg),
        Look::LinkageStiff => intake.bike.shock != Some(ShockKind::Linkless),
        _ => true,
    }
}

/// Chance of a yes for a hypothesis: noisy-or of its faults and a false alarm.
pub fn chance(hypothesis: &Hypothesis, look: Look) -> f64 {
    let quiet = hypothesis
        .faults
        .iter()
        .filter_map(|fault| shows(look, fault.cause, fault.plain))
        .fold(1.0 - FALSE_ALARM, |quiet, shows| quiet * (1.0 - shows));
    1.0 - quiet
}

/// Every look that was taken.
pub fn observations(intake: &Intake, hypotheses: &[Hypothesis]) -> Vec<Observation> {
    let looks = intake.measured.looks.iter().flatten();
    looks
        .map(|(look, answer)| {
            let text = Text::new(format!("evidence.look-{}-{}", look.word(), answer.word()));
            Observation::of(text, hypotheses, |hypothesis| {
                let yes = chance(hypothesis, *look);
                libm::log(match answer {
                    YesNo::Yes => yes,
                    YesNo::No => 1.0 - yes,
                })
            })
        })
        .collect()
}
