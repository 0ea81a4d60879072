//! What stands in for rides until there are some: every fault and every remedy judged by what shows standing still.

use super::keep::ridden_part;
use super::rehearsed::rehearsed;
use crate::cause::Rehearsal;
use crate::intake::Intake;
use crate::remedy::remedied::Remedied;
use crate::stance::{Situation, baseline};

/// What every fault and every remedy would change on the bike standing still.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Still {
    pub(super) rehearsal: Rehearsal,
    pub(super) remedied: Remedied,
}

/// Looks at every fault and every remedy on the bike that would be ridden.
///
/// It holds for as long as rides would, see [`super::keep()`]. On a bike that cannot be ridden there is nothing to see.
pub fn stand_still(intake: &Intake) -> Still {
    let situation = Situation::of(&ridden_part(intake));
    let suits = baseline(&situation);
    let seen = rehearsed(intake, &situation, &suits, &[], &mut |_, _| true);
    let (rehearsal, remedied) = seen.unwrap_or_default();
    Still {
        rehearsal,
        remedied,
    }
}
