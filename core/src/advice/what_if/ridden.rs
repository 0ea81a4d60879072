//! A change ridden over the rider's own ground, beside the bike as it stands.

use serde::{Deserialize, Serialize};

use super::levers::{Trying, Workbench};
use super::look::{FeltMove, moves};
use crate::advice::ridden::{FeelChange, Progress, RidePicture};
use crate::advice::rides::{changes, ground_text, picture, shown_ground};
use crate::bench::{Bench, Ground, Still, grounds};
use crate::cause::felt::{Seen, felt};
use crate::words::Text;

/// What rides found of a change.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct WhatIfRidden {
    /// What would be felt, most first.
    pub felt: Vec<FeltMove>,
    /// The same in figures, per kind of ground.
    pub feel: Vec<FeelChange>,
    /// The ride on the ground that shows the rider's complaint, or on the heaviest.
    pub picture: RidePicture,
    /// Rides ridden.
    pub rides: u32,
}

/// Rides the bike as it stands and as tried over the rider's ground. `progress` is told how far it has come and answers whether
/// to go on. `None` when it says no, or when the bike cannot be ridden so.
pub fn ride_what_if(
    workbench: &Workbench,
    trying: &Trying,
    progress: &mut dyn FnMut(&Progress) -> bool,
) -> Option<WhatIfRidden> {
    let sound = Bench::of(&workbench.situation, &workbench.baseline).ok()?;
    let bench = workbench.bench().ok()?;
    let (now, tried) = Workbench::trials(&bench, trying);
    let mut tell = |done: u32, of: u32, trying: &'static str| {
        progress(&Progress {
            done,
            of,
            trying: Text::new(trying),
        })
    };
    if !tell(0, 1, "rides.ground") {
        return None;
    }
    let grounds = grounds::of(&sound).ok()?;
    let both = [now, tried];
    let of: u32 = 2 * grounds.iter().map(Ground::courses).sum::<u32>();
    let (mut rides, mut outcomes) = (0, [Vec::new(), Vec::new()]);
    for ground in &grounds {
        if !tell(rides, of, "rides.what-if") {
            return None;
        }
        let here = bench
            .ride_everywhere(&both, std::slice::from_ref(ground))
            .ok()?;
        for (all, mut found) in outcomes.iter_mut().zip(here) {
            all.append(&mut found);
        }
        rides += 2 * ground.courses();
    }
    let stills = [&both[0], &both[1]].map(|trial| Still::of(&bench, trial));
    let [Ok(before), Ok(after)] = stills else {
        return None;
    };
    let seen = |place: usize, still| Seen {
        trial: &both[place],
        still,
        ridden: &outcomes[place],
    };
    let felt = moves(&felt(&seen(1, after), &seen(0, before), &grounds));
    let figures = grounds.iter().zip(outcomes[0].iter().zip(&outcomes[1]));
    let feel = figures
        .flat_map(|(ground, (before, after))| changes(ground, &before.metrics, &after.metrics));
    let wanted = shown_ground(&workbench.intake);
    let shown = grounds
        .iter()
        .find(|ground| Some(ground_text(ground.feature)) == wanted)
        .or(grounds.first())?;
    let course = shown.pieces.first()?;
    let keys = ["rides.message-tried", "rides.message-rear-tried"];
    Some(WhatIfRidden {
        felt,
        feel: feel.collect(),
        picture: picture(&bench, [&both[0], &both[1]], (shown.feature, course), keys).ok()?,
        rides,
    })
}
