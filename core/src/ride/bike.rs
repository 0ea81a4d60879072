//! What is ridden: bikes put together from their parts, one per lane.

use super::curve::Curve;
use super::error::RideError;
use super::parts::Parts;
use super::put_together::PutTogether;
use super::rider::Rider;
use crate::bike::damping::DamperLaw;
use crate::bike::{Machine, SetUp, Surroundings, Tyre};
use crate::lane::Lane;
use crate::stance::Load;

/// Wheelbases that differ by less are one wheelbase, m.
const SAME_M: f64 = 1e-9;

/// Both tyres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tyres {
    /// Front.
    pub front: Tyre,
    /// Rear.
    pub rear: Tyre,
}

/// One bike as it would be ridden.
#[derive(Debug, Clone, Copy)]
pub struct Candidate<'a> {
    /// The bike.
    pub machine: &'a Machine,
    /// Who and what is aboard.
    pub load: &'a Load,
    /// Springs, gas and friction.
    pub set_up: &'a SetUp,
    /// Where it was filled and where it rides.
    pub surroundings: &'a Surroundings,
    /// All dampers of the fork together, along the leg.
    pub fork_damper: DamperLaw,
    /// The shock's damper, at its shaft.
    pub shock_damper: DamperLaw,
    /// Tyres.
    pub tyres: Tyres,
    /// How the rider holds on.
    pub rider: Rider,
}

/// Bikes that are ridden in step.
#[derive(Debug, Clone)]
pub struct Bike<T: Lane> {
    /// What they weigh and measure.
    pub parts: Parts<T>,
    /// Fork: springs, gas and stops along the leg over stroke.
    pub(super) fork: Curve<T>,
    /// Rear: springs, gas and stops at the axle over travel.
    pub(super) rear: Curve<T>,
    /// Friction limit of the fork over stroke, without what side load adds.
    pub(super) fork_friction: Curve<T>,
    /// Dampers of the fork.
    pub fork_damper: DamperLaw<T>,
    /// Damper of the shock.
    pub shock_damper: DamperLaw<T>,
    /// Wheelbase, m.
    pub wheelbase_m: f64,
}

/// Forces over travel in m, by lane, in N.
#[derive(Debug, Clone, Copy)]
pub struct Forces<F, R, D> {
    /// Fork springs, gas and stops along the leg over stroke.
    pub fork_n: F,
    /// Rear springs, gas and stops at the axle over travel.
    pub rear_n: R,
    /// Friction of the fork over stroke, without what side load adds.
    pub fork_friction_n: D,
}

impl<T: Lane> Bike<T> {
    /// Puts up to [`Lane::LANES`] set-ups side by side; the last fills the lanes that are left.
    pub fn of(candidates: &[Candidate]) -> Result<Self, RideError> {
        let taken = &candidates[..candidates.len().min(T::LANES)];
        let built: Vec<PutTogether> = taken
            .iter()
            .map(PutTogether::of)
            .collect::<Result<_, _>>()?;
        let Some(last) = built.len().checked_sub(1) else {
            return Err(RideError::Nothing);
        };
        let wheelbase_m = built[0].wheelbase_m;
        let differs = |b: &&PutTogether| (b.wheelbase_m - wheelbase_m).abs() > SAME_M;
        if let Some(other) = built.iter().find(differs) {
            return Err(RideError::WheelbasesDiffer {
                first_m: wheelbase_m,
                other_m: other.wheelbase_m,
            });
        }
        let of = |lane: usize| &built[lane.min(last)];
        let at = |lane: usize| &taken[lane.min(last)];
        Ok(Self::of_first(
            last + 1,
            Parts::row(|lane| &of(lane).parts),
            Forces {
                fork_n: |lane: usize, s| of(lane).fork_n(s),
                rear_n: |lane: usize, z| of(lane).rear_n(z),
                fork_friction_n: |lane: usize, s: f64| {
                    let inside = s.clamp(0.0, of(lane).parts.travel_m[0]);
                    of(lane).fork.friction_n(inside, 0.0)
                },
            },
            DamperLaw::row(|lane| at(lane).fork_damper),
            DamperLaw::row(|lane| at(lane).shock_damper),
            wheelbase_m,
        ))
    }

    /// From figures and forces of any kind, for instance those of an example with a known answer.
    pub fn of_forces(
        parts: Parts<T>,
        forces: Forces<
            impl Fn(usize, f64) -> f64,
            impl Fn(usize, f64) -> f64,
            impl Fn(usize, f64) -> f64,
        >,
        fork_damper: DamperLaw<T>,
        shock_damper: DamperLaw<T>,
        wheelbase_m: f64,
    ) -> Self {
        Self::of_first(
            T::LANES,
            parts,
            forces,
            fork_damper,
            shock_damper,
            wheelbase_m,
        )
    }

    /// As [`Self::of_forces`], the lanes beyond the first `lanes` being like the last of these.
    fn of_first(
        lanes: usize,
        parts: Parts<T>,
        forces: Forces<
            impl Fn(usize, f64) -> f64,
            impl Fn(usize, f64) -> f64,
            impl Fn(usize, f64) -> f64,
        >,
        fork_damper: DamperLaw<T>,
        shock_damper: DamperLaw<T>,
        wheelbase_m: f64,
    ) -> Self {
        let travel_m = |end: usize| move |lane: usize| parts.travel_m[end].lane(lane);
        Self {
            parts,
            fork: Curve::of(lanes, travel_m(0), forces.fork_n),
            rear: Curve::of(lanes, travel_m(1), forces.rear_n),
            fork_friction: Curve::of(lanes, travel_m(0), forces.fork_friction_n),
            fork_damper,
            shock_damper,
            wheelbase_m,
        }
    }

    /// Force of fork springs, gas and stops along the leg at a stroke in m, N.
    pub fn fork_n(&self, stroke_m: T) -> T {
        self.fork.at(stroke_m)
    }

    /// Force of rear spring, gas and stops at the axle at a travel in m, N.
    pub fn rear_n(&self, travel_m: T) -> T {
        self.rear.at(travel_m)
    }

    /// Motion ratio of the rear at an axle travel in m.
    #[inline]
    pub fn ratio(&self, travel_m: T) -> T {
        let [a, b, c] = self.parts.ratio;
        a + travel_m * (b + travel_m * c)
    }

    /// Shock stroke at an axle travel in m, the integral of the ratio.
    #[inline]
    pub fn shock_stroke_m(&self, travel_m: T) -> T {
        let [a, b, c] = self.parts.ratio;
        let (half, third) = (T::splat(0.5), T::splat(1.0 / 3.0));
        travel_m * (a + travel_m * (half * b + travel_m * third * c))
    }
}
