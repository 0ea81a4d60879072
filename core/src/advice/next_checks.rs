//! Checks in words: what to do, why, how to read it, and what to heed.

use super::answer::{Caution, NextCheck};
use super::causes;
use super::cautions::cautions;
use super::laps::change_cautions;
use crate::cause::checks::{Case, Check, How, told_apart};
use crate::cause::rounds::Round;
use crate::cause::tried::change_text;
use crate::intake::{ForkKind, Intake, Look, Question};
use crate::words::Text;

/// The checks to offer, the best first, and those to do instead where one cannot be; with each what else its tools are good for.
pub fn next_checks(case: &Case, rounds: &[Round]) -> Vec<NextCheck> {
    /// Who can do none of so many will not do the next one either.
    const MOST_OFFERED: usize = 4;
    let offered = rounds.iter().take(MOST_OFFERED);
    let in_words = |round: &Round| {
        let mut each = round.checks.iter().map(|check| next_check(case, check));
        let mut first = each.next()?;
        first.besides = each.collect();
        Some(first)
    };
    offered.filter_map(in_words).collect()
}

fn next_check(case: &Case, check: &Check) -> NextCheck {
    let (first, second) = told_apart(case, check);
    let (question, look, change) = match check.how {
        How::Answer(question) => (Some(question), None, None),
        How::Look(look) => (None, Some(look), None),
        How::Try(change) => (None, None, Some(change)),
    };
    let part = |part: &str| {
        if let Some(look) = look.filter(|_| part != "why") {
            let gas = case.intake.bike.fork == Some(ForkKind::GasOneLeg);
            let leg = matches!(look, Look::OilOffTheLevel | Look::ForkOilSpent);
            let which = if gas && leg && part == "what" {
                "-gas"
            } else {
                ""
            };
            return Text::new(format!("look.{}.{part}{which}", look.word()));
        }
        let text = Text::new(format!("check.{}.{part}", check.word));
        match change {
            Some(change) => text.with("change", change_text(change).into()),
            None => text,
        }
    };
    NextCheck {
        what: part("what"),
        why: part("why")
            .with("a", causes::name(first).into())
            .with("b", causes::name(second).into()),
        reading: part("reading"),
        minutes: check.minutes,
        question,
        look,
        change,
        cautions: check_cautions(case.intake, check.how),
        besides: Vec::new(),
    }
}

/// What to heed in a check. A fork that may hold gas is never opened without a word about that.
fn check_cautions(intake: &Intake, how: How) -> Vec<Caution> {
    let coil = intake
        .bike
        .fork
        .is_some_and(|kind| kind != ForkKind::GasOneLeg);
    let words: &[&str] = match how {
        How::Try(change) => return change_cautions(change),
        How::Answer(Question::ForkSpring) => &["workshop-lift", "spring-preload"],
        How::Answer(Question::ForkGas) | How::Look(Look::SticksWithoutGas) => {
            &["gas-fork", "marked-maximum"]
        }
        How::Look(Look::FreesWithAxleLoose) => &["axle-clamps"],
        How::Look(Look::LinkageStiff) => &["workshop-lift", "axle-clamps"],
        How::Look(Look::ShockShimsOff) => &["workshop-lift", "shock-gas"],
        How::Look(Look::ForkShimsOff | Look::MidValveTight) if !coil => &[
            "gas-fork",
            "workshop-lift",
            "oil-off-disc",
            "spring-preload",
        ],
        How::Look(Look::OilOffTheLevel | Look::ForkOilSpent) if !coil => {
            &["gas-fork", "workshop-lift", "oil-off-disc"]
        }
        How::Look(
            Look::OilOffTheLevel | Look::ForkOilSpent | Look::ForkShimsOff | Look::MidValveTight,
        ) => &["workshop-lift", "oil-off-disc", "spring-preload"],
        How::Answer(_) | How::Look(_) => &[],
    };
    cautions(words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::cautions::caution;

    #[test]
    fn no_fork_that_may_hold_gas_is_opened_unwarned() {
        for fork in [
            None,
            Some(ForkKind::GasOneLeg),
            Some(ForkKind::CoilBothLegs),
        ] {
            let mut intake = Intake::default();
            intake.bike.fork = fork;
            for look in [
                Look::ForkShimsOff,
                Look::MidValveTight,
                Look::OilOffTheLevel,
                Look::ForkOilSpent,
            ] {
                let cautions = check_cautions(&intake, How::Look(look));
                let gas = cautions.contains(&caution("gas-fork"));
                assert_eq!(
                    gas,
                    fork != Some(ForkKind::CoilBothLegs),
                    "{fork:?} {look:?}"
                );
            }
        }
    }
}
