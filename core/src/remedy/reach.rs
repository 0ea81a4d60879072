//! How far a remedy reaches a fault: not at all, in part, or wholly.

use super::RemedyId;
use super::apply::{Suits, done};
use super::remedied::Steps;
use crate::bench::{Cast, Still, Trial};
use crate::cause::felt::{Felt, Seen, felt};
use crate::cause::rehearsal::Rehearsed;

/// How many times its own change, and what share of the fault is left; `None` where fault and remedy go past each other.
pub fn reached(
    cast: &Cast,
    suits: &Suits,
    remedy: RemedyId,
    (healthy, sound): (&Trial, &Trial),
    fault: &Rehearsed,
) -> Option<(f64, f64)> {
    let with = fault.fault().put_on(healthy);
    let after = done(remedy, suits, &with);
    // A gas leg's nature is no change of a gas fork.
    if with == *healthy {
        return None;
    }
    if after == with {
        return (sound != healthy).then_some((0.0, 1.0));
    }
    if after == *sound {
        return Some((1.0, 0.0));
    }
    if after == fault.fault().put_on(sound) {
        return None;
    }
    if after == *healthy {
        return Some((0.0, 0.0));
    }
    let turned = |from: &Trial, to: &Trial| -> f64 {
        let by = |place: usize| f64::from(to.clicks[place]) - f64::from(from.clicks[place]);
        (0..from.clicks.len()).map(by).sum()
    };
    let stiffer = |trial: &Trial| -> f64 {
        trial
            .condition
            .valving
            .iter()
            .map(|one| libm::log(*one))
            .sum()
    };
    let (usual, here) = (turned(healthy, sound), turned(&with, &after));
    let turned_back = (stiffer(&with) - stiffer(&after)).abs() > 0.0;
    if usual != 0.0 || here != 0.0 || turned_back {
        let times = if usual == 0.0 { 0.0 } else { here / usual };
        let left = if turned_back {
            stiffer(&after) / stiffer(&with)
        } else {
            1.0
        };
        return Some((times, left));
    }
    Some((1.0, left_standing_still(cast, &with, &after)))
}

/// Share of what shows of a fault standing still that stays after a remedy; all of it where nothing shows.
fn left_standing_still(cast: &Cast, with: &Trial, after: &Trial) -> f64 {
    let bench = cast.bench();
    let healthy = Seen {
        trial: cast.trial(Cast::HEALTHY),
        still: *cast.still(Cast::HEALTHY),
        ridden: &[],
    };
    let shows = |trial: &Trial| -> Option<Steps> {
        let still = Still::of(bench, trial).ok()?;
        let seen = Seen {
            trial,
            still,
            ridden: &[],
        };
        Some(moved(&felt(&seen, &healthy, &[])))
    };
    let (Some(with), Some(after)) = (shows(with), shows(after)) else {
        return 1.0;
    };
    let product = |a: &Steps, b: &Steps| -> f64 {
        a.iter()
            .flatten()
            .zip(b.iter().flatten())
            .map(|(a, b)| a * b)
            .sum()
    };
    let all = product(&with, &with);
    if all > 0.0 {
        (product(&with, &after) / all).clamp(0.0, 1.0)
    } else {
        1.0
    }
}

/// Steps moved; 0 at an end where a feeling cannot show.
pub fn moved(felt: &Felt) -> Steps {
    let nothing = Felt::nothing().steps;
    core::array::from_fn(|feeling| {
        core::array::from_fn(|end| {
            if nothing[feeling][end] < 0.0 {
                0.0
            } else {
                short(felt.steps[feeling][end])
            }
        })
    })
}

/// To a thousandth of a step: more digits say nothing and have to be carried about.
pub fn short(steps: f64) -> f64 {
    (1000.0 * steps).round() / 1000.0
}
