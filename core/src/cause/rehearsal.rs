//! What every cause would do to this bike under this rider on this ground: ridden once, then asked as often as answers change.

use serde::{Deserialize, Serialize};

use super::Cause;
use super::fault::Fault;
use super::felt::{Felt, Seen, felt};
use crate::bench::{Cast, Ground, Watch};
use crate::feel::{Ends, Metrics};
use crate::intake::Change;
use crate::ride::RideError;

/// A fault as this bike would show it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Rehearsed {
    /// What is amiss.
    pub cause: Cause,
    /// How far, see [`Fault::degrees`].
    pub degree: f64,
    /// Whether it is there plainly, not mildly.
    pub plain: bool,
    /// What the rider would feel.
    pub felt: Felt,
    /// What would be measured, beside what the healthy bike measures.
    pub shown: Shown,
}

impl Rehearsed {
    /// The fault that was ridden.
    pub const fn fault(&self) -> Fault {
        Fault {
            cause: self.cause,
            degree: self.degree,
            plain: self.plain,
        }
    }
}

/// What would be measured on a bike with a fault, less the same on the healthy one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Shown {
    /// Free sag, front along the leg and rear at the axle, m.
    pub free_m: [f64; 2],
    /// Rider sag, m.
    pub ridden_m: [f64; 2],
    /// Deepest travel on the hardest usual ground, share of the full travel, front and rear.
    pub travel: [f64; 2],
    /// Gauge pressure of the fork, relative.
    pub gauge: f64,
    /// Force that starts the fork and friction at the rear axle, N.
    pub breakaway_n: [f64; 2],
    /// Low-speed damping, natural logarithm: fork compression, fork rebound, shock compression, shock rebound.
    pub damping: [f64; 4],
    /// Void at the reversal, m.
    pub void_m: [f64; 2],
}

impl Shown {
    /// A healthy bike.
    pub const NOTHING: Self = Self {
        free_m: [0.0; 2],
        ridden_m: [0.0; 2],
        travel: [0.0; 2],
        gauge: 0.0,
        breakaway_n: [0.0; 2],
        damping: [0.0; 4],
        void_m: [0.0; 2],
    };

    /// Two faults at once: what they do adds up.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let both = |a: [f64; 2], b: [f64; 2]| [a[0] + b[0], a[1] + b[1]];
        Self {
            free_m: both(self.free_m, other.free_m),
            ridden_m: both(self.ridden_m, other.ridden_m),
            travel: both(self.travel, other.travel),
            gauge: self.gauge + other.gauge,
            breakaway_n: both(self.breakaway_n, other.breakaway_n),
            damping: core::array::from_fn(|place| self.damping[place] + other.damping[place]),
            void_m: both(self.void_m, other.void_m),
        }
    }
}

/// All faults this bike could have, as it would show them.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Rehearsal {
    /// Every fault of every cause the bike can have.
    pub faults: Vec<Rehearsed>,
    /// What each change made at the track does to the healthy bike.
    pub changes: Vec<Moved>,
    /// Rides ridden.
    pub rides: u32,
}

/// What one change made at the track does to the healthy bike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Moved {
    /// The change.
    pub change: Change,
    /// What the rider would feel of it; below 0 is better.
    pub felt: Felt,
}

/// Rides every fault over the grounds. `None` when `watch` says to stop.
///
/// The cast keeps the rides, so that whatever else is asked of the same bike need not ride them again. Without grounds a
/// fault is judged by what shows standing still.
///
/// # Errors
/// When the bike cannot be ridden. A fault that cannot be put together is left out.
pub fn rehearse(
    cast: &mut Cast,
    grounds: &[Ground],
    can_have: impl Fn(Cause) -> bool,
    watch: &mut Watch,
) -> Result<Option<Rehearsal>, RideError> {
    // For each fault, where it and what it is held against stand among the trials.
    let mut places: Vec<(Fault, usize, usize)> = Vec::new();
    for fault in Fault::all().filter(|fault| can_have(fault.cause)) {
        let against = cast.place(|bench, healthy| fault.reference(bench, healthy));
        let with = cast.place(|_, healthy| Ok(fault.put_on(healthy)));
        if let (Some(with), Some(against)) = (with, against) {
            places.push((fault, with, against));
        }
    }
    let made: Vec<(Change, usize)> = Change::ALL
        .iter()
        .filter_map(|change| {
            let place = cast.place(|bench, healthy| {
                bench.changed(healthy, *change).ok_or(RideError::Nothing)
            })?;
            Some((*change, place))
        })
        .collect();
    let Some(rides) = cast.ride(grounds, watch)? else {
        return Ok(None);
    };
    let faults = places
        .into_iter()
        .map(|(fault, with, against)| {
            let (with, against) = (seen(cast, with), seen(cast, against));
            Rehearsed {
                cause: fault.cause,
                degree: fault.degree,
                plain: fault.plain,
                felt: felt(&with, &against, grounds),
                shown: shown(&with, &against),
            }
        })
        .collect();
    let changes = made
        .into_iter()
        .map(|(change, place)| Moved {
            change,
            felt: felt(&seen(cast, place), &seen(cast, Cast::HEALTHY), grounds),
        })
        .collect();
    Ok(Some(Rehearsal {
        faults,
        changes,
        rides,
    }))
}

/// A trial of a cast as it stands and as it was ridden.
pub fn seen<'a>(cast: &'a Cast, place: usize) -> Seen<'a> {
    Seen {
        trial: cast.trial(place),
        still: *cast.still(place),
        ridden: cast.ridden(place),
    }
}

fn shown(with: &Seen, against: &Seen) -> Shown {
    let (now, then) = (&with.still, &against.still);
    let deepest = |seen: &Seen| {
        let most = |of: fn(&Metrics<f64>) -> f64| {
            seen.ridden
                .iter()
                .map(|outcome| of(&outcome.metrics))
                .fold(0.0, f64::max)
        };
        [
            most(|m| m.travel_deepest.front),
            most(|m| m.travel_deepest.rear),
        ]
    };
    let (deep_now, deep_then) = (deepest(with), deepest(against));
    let both = |now: Ends<f64>, then: Ends<f64>| [now.front - then.front, now.rear - then.rear];
    Shown {
        free_m: both(now.free_m, then.free_m),
        ridden_m: both(now.ridden_m, then.ridden_m),
        travel: [deep_now[0] - deep_then[0], deep_now[1] - deep_then[1]],
        gauge: match (now.gauge_pa, then.gauge_pa) {
            (Some(now), Some(then)) => now / then - 1.0,
            _ => 0.0,
        },
        breakaway_n: both(now.breakaway_n, then.breakaway_n),
        damping: core::array::from_fn(|place| {
            libm::log(now.damping_n_s_per_m[place] / then.damping_n_s_per_m[place])
        }),
        void_m: both(now.void_m, then.void_m),
    }
}
