//! What the free sag tells of the rear spring.

use crate::bike::Class;
use crate::units::{Length, metre};

/// What a rear free sag says once rider sag is on target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FreeSag {
    /// Less than usual: the spring is too soft for the rider and was squeezed to reach the rider sag.
    TooSoft,
    /// The spring suits the rider.
    Suits,
    /// More than usual: the spring is too stiff and was let out to reach the rider sag.
    TooStiff,
}

/// How far rider sag may be from its target for the free sag to tell anything, m (common practice: 5 mm).
const ON_TARGET_M: f64 = 0.005;

/// Reads a rear free sag (common practice: 30 to 45 mm when the spring suits). `None` while rider sag is off its
/// target, since preload then hides what the spring does.
pub fn read(free: Length, ridden: Length, target: Length) -> Option<FreeSag> {
    if (ridden - target).abs() > metre(ON_TARGET_M) {
        return None;
    }
    Some(if free < Class::REAR_FREE_SAG.low {
        FreeSag::TooSoft
    } else if free > Class::REAR_FREE_SAG.high {
        FreeSag::TooStiff
    } else {
        FreeSag::Suits
    })
}
