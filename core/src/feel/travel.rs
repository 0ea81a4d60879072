//! How much of its travel an end uses.

use crate::lane::Lane;

/// Steps of equal size that the travel is sorted into.
const BINS: usize = 128;
/// [`BINS`] as a number.
const BINS_F64: f64 = 128.0;
/// Share of the time that the travel used is not exceeded for.
const USUAL_SHARE: f64 = 0.95;
/// How often the travel is looked at, s: at 5 m/s it has moved on by 10 mm.
const LOOK_EVERY_S: f64 = 0.002;

#[derive(Debug, Clone, Copy)]
pub(super) struct Travel<T> {
    looks: [T; BINS],
    full_m: T,
    deepest_m: T,
    /// Steps from look to look, and those left until the next.
    every: u32,
    left: u32,
}

impl<T: Lane> Travel<T> {
    /// For an end of `full_m` travel, above 0.
    pub(super) fn new(full_m: T, step_s: f64) -> Self {
        let mut every = 1;
        while f64::from(every + 1) * step_s <= LOOK_EVERY_S {
            every += 1;
        }
        Self {
            looks: [T::splat(0.0); BINS],
            full_m,
            deepest_m: T::splat(0.0),
            every,
            left: 0,
        }
    }

    pub(super) fn step(&mut self, travel_m: T) {
        self.deepest_m = self.deepest_m.greater(travel_m);
        if self.left > 0 {
            self.left -= 1;
            return;
        }
        self.left = self.every - 1;
        let place = travel_m / self.full_m * T::splat(BINS_F64);
        for at in 0..T::LANES {
            let bin = &mut self.looks[whole(place.lane(at))];
            let looks = bin.lane(at) + 1.0;
            bin.set_lane(at, looks);
        }
    }

    /// Deepest travel as a share of full travel.
    pub(super) fn deepest(&self) -> T {
        self.deepest_m / self.full_m
    }

    /// Share of full travel not exceeded for 95 % of the time, to within one of the steps and mostly far closer.
    pub(super) fn used(&self) -> T {
        T::from_lanes(|at| {
            let total = self.looks.iter().fold(0.0, |sum, bin| sum + bin.lane(at));
            let wanted = USUAL_SHARE * total;
            let (mut below, mut share) = (0.0, 0.0);
            for bin in self.looks {
                let here = bin.lane(at);
                if below + here >= wanted {
                    // Within a step the looks are taken as evenly spread.
                    let part = if here > 0.0 {
                        (wanted - below) / here
                    } else {
                        0.0
                    };
                    return share + part / BINS_F64;
                }
                below += here;
                share += 1.0 / BINS_F64;
            }
            share
        })
    }
}

/// The bin of a place among them; beyond either end, the last at that end.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the place is held between 0 and the last bin first"
)]
fn whole(place: f64) -> usize {
    place.clamp(0.0, BINS_F64 - 1.0) as usize
}
