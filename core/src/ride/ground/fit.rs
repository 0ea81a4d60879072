//! Ground as hard as a bike's riders make it: scaled to what the healthy bike can take.

#![expect(
    clippy::cast_precision_loss,
    reason = "counts of cells, lanes, places and steps, far below what an f64 holds exactly"
)]

use super::course::Course;
use crate::lane::Lane;
use crate::ride::bike::{Bike, Candidate};
use crate::ride::error::RideError;
use crate::ride::run::{Ride, SEARCH_STEP_S};
use wide::f32x8;

/// Share of the travel that a healthy bike with its usual rider uses on the hardest of its usual ground (common practice:
/// 85 to 100 %, now and then to the end but not hard).
pub const USUAL_SHARE: f64 = 0.93;
/// Smallest and largest size that still is the same kind of ground.
const SIZES: [f64; 2] = [0.3, 1.7];

/// Size at which a bike uses [`USUAL_SHARE`] of the travel of one end and no more of the other; the end of the range of
/// sizes (0.3 to 1.7) when even that is too much or too little.
///
/// Eight sizes at a time are ridden in step; between two of them the use is taken as straight. Use does not always rise
/// with size, since a larger bump can throw a bike over the next: the smallest size that reaches the share is taken.
pub fn usual_size(candidate: &Candidate, course: &Course) -> Result<f64, RideError> {
    let bike = Bike::<f32x8>::of(&[*candidate])?;
    let [mut low, mut high] = SIZES;
    for _ in 0..2 {
        let sizes: [f64; 8] = core::array::from_fn(|i| low + (high - low) * i as f64 / 7.0);
        let used = travel_used(&bike, course, f32x8::from_lanes(|lane| sizes[lane]));
        let Some(first) = used.iter().position(|used| *used >= USUAL_SHARE) else {
            return Ok(high);
        };
        let Some(before) = first.checked_sub(1) else {
            return Ok(low);
        };
        (low, high) = (sizes[before], sizes[first]);
    }
    Ok(0.5 * (low + high))
}

/// Largest share of its travel that either end uses, by lane; a lane that falls has used all of it.
fn travel_used(bike: &Bike<f32x8>, course: &Course, size: f32x8) -> [f64; 8] {
    let p = &bike.parts;
    let mut most = f32x8::splat(0.0);
    let mut ride = Ride::sized(bike, course, SEARCH_STEP_S, size);
    while !ride.over() {
        ride.step();
        let [fork, rear] = ride.now.travel_m;
        most = most
            .greater(fork / p.travel_m[0])
            .greater(rear / p.travel_m[1]);
    }
    let all = f32x8::splat(1.0);
    let used = ride
        .rides()
        .if_above(f32x8::splat(0.5), most, most.greater(all));
    core::array::from_fn(|lane| used.lane(lane))
}
