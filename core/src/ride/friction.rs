//! Dry friction that holds: a stiff elastic element that slips at its limit.
//!
//! While the element holds it is a spring, so that a bike at rest stays where it is. It gives by a fraction of a millimetre before it slips, as seals
//! and bushings do. Within a step it moves one way, so its force follows from where it stood at the step's start; nothing has
//! to be integrated and nothing creeps.

use crate::lane::Lane;

/// How far the element is bent after a way of `moved_m` since it was bent by `bent_m`, m, when it slips at `limit_m`.
#[inline]
pub fn bent_m<T: Lane>(bent_m: T, moved_m: T, limit_m: T) -> T {
    (bent_m + moved_m).between(-limit_m, limit_m)
}

/// 1 where the element holds, 0 where it slips.
#[inline]
pub fn held<T: Lane>(bent_m: T, limit_m: T) -> T {
    limit_m.if_above(bent_m.size(), T::splat(1.0), T::splat(0.0))
}
