//! What is wrong: every fault this bike could have, ridden; what the rider says and measures; and the belief that follows.
//!
//! [`fault`] changes a healthy bike, [`rehearsal`] rides every fault over the rider's own ground, [`felt`] turns the figures
//! of the rides into steps a rider can just notice. [`said`] and [`measured`] say how likely an answer is on each bike, and
//! [`belief`] weighs them over all [`mod@hypotheses`]: no fault, one, or two. The rehearsal depends on rider, bike and ground only, so
//! a new answer about what is felt or measured needs no new ride. [`numbers`] holds everything that is set by hand.

pub mod alike;
pub mod belief;
pub mod checks;
pub mod close;
mod end;
pub mod fault;
pub mod felt;
pub mod figures;
pub mod hypotheses;
pub mod laps;
mod list;
pub mod looks;
pub mod measured;
pub mod numbers;
mod priors;
pub mod readings;
pub mod rehearsal;
pub mod rounds;
mod sags;
pub mod said;
mod springs;
mod telling;
pub mod tried;
pub mod variants;

pub use belief::{Belief, Observation, PerCause};
pub use close::{CloseCall, close_call};
pub use hypotheses::{Hypothesis, hypotheses};
pub use list::Cause;
pub use numbers::Numbers;
pub use priors::possible;
pub use rehearsal::Rehearsal;

use crate::intake::Intake;
use crate::stance::{Baseline, Situation};

/// All that was said, measured and tried, ready to be weighed.
pub fn observations(
    intake: &Intake,
    situation: &Situation,
    baseline: &Baseline,
    rehearsal: &Rehearsal,
    hypotheses: &[Hypothesis],
    numbers: &Numbers,
) -> Vec<Observation> {
    let mut all = said::observations(intake, hypotheses, numbers);
    all.extend(measured::pushes(intake, hypotheses, numbers));
    let readings = readings::readings(intake, situation, baseline);
    all.extend(looks::observations(intake, &readings, hypotheses, numbers));
    all.extend(tried::observations(intake, rehearsal, hypotheses, numbers));
    all.extend(readings::observations(
        intake, &readings, hypotheses, numbers,
    ));
    all
}
