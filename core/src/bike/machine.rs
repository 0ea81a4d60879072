//! One bike: its class, and what is known of it beyond its class.

use super::class::Class;
use super::gas::GasSpring;
use super::leverage::Leverage;
use super::limits::{OutOfRange, within};
use crate::intake::{BikeClass, ForkKind, ShockKind};
use crate::units::{Band, Length, Mass, SpringRate, newton_per_m};

/// The hardware of one bike. Starts as its class; a measured figure replaces the class's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Machine {
    /// Class, for all that is not below.
    pub class: &'static Class,
    /// What carries the front.
    pub fork: ForkKind,
    /// How the shock reaches the swingarm.
    pub shock: ShockKind,
    /// Mass ready to ride with a full tank, without rider, kg.
    pub wet_mass: Mass,
    /// Share of it on the front axle with the bike level, dimensionless.
    pub front_share: f64,
    /// Full stroke of the fork along the leg, m.
    pub fork_stroke: Length,
    /// Leverage of the rear.
    pub leverage: Leverage,
    /// Gas spring of the fork, used when `fork` says there is one.
    pub gas: GasSpring,
}

impl Machine {
    /// A bike of this class with this kind of fork and shock.
    pub fn of(kind: BikeClass, fork: ForkKind, shock: ShockKind) -> Self {
        let class = Class::of(kind);
        // A shock that is mounted unlike its class's borrows the curve of the enduro bike so mounted.
        let curve = match (kind, shock) {
            (BikeClass::EnduroLinkless, ShockKind::Linkage) => Class::of(BikeClass::EnduroLinkage),
            (BikeClass::EnduroLinkless, ShockKind::Linkless) | (_, ShockKind::Linkage) => class,
            (_, ShockKind::Linkless) => Class::of(BikeClass::EnduroLinkless),
        };
        Self {
            class,
            fork,
            shock,
            wet_mass: class.wet_mass,
            front_share: class.front_share,
            fork_stroke: class.fork_stroke,
            leverage: Leverage {
                top: curve.ratio_top,
                bottom: curve.ratio_bottom,
                late: 0.0,
                travel_m: class.rear_travel.value,
            },
            gas: class.gas_spring(),
        }
    }

    /// The usual kind of shock mounting of a class.
    pub const fn usual_shock(kind: BikeClass) -> ShockKind {
        match kind {
            BikeClass::EnduroLinkless => ShockKind::Linkless,
            _ => ShockKind::Linkage,
        }
    }

    /// Shock spring rate that practice gives the class's usual rider, N/m.
    ///
    /// Where the shock is mounted unlike its class's, the class's band is scaled by the square of the mean motion
    /// ratios: the same rate at the wheel.
    pub fn usual_shock_rate(&self) -> Band<SpringRate> {
        let class = self.class;
        let of_class = class.ratio_top + class.ratio_bottom;
        let of_bike = self.leverage.top + self.leverage.bottom;
        let share = of_class / of_bike;
        class
            .shock_rate
            .map(|rate| newton_per_m(rate.value * share * share))
    }

    /// How many coil springs stand in the fork.
    pub const fn fork_springs(&self) -> u8 {
        match self.fork {
            ForkKind::CoilBothLegs => 2,
            ForkKind::CoilOneLeg => 1,
            ForkKind::GasOneLeg => 0,
        }
    }

    /// Says which figure, if any, cannot be one of an off-road motorcycle.
    pub fn check(&self) -> Result<(), OutOfRange> {
        let main = &self.gas.main;
        within("wet mass in kg", self.wet_mass.value, 40.0, 350.0)?;
        within("front share", self.front_share, 0.40, 0.60)?;
        within("fork stroke in m", self.fork_stroke.value, 0.10, 0.40)?;
        within("rear travel in m", self.leverage.travel_m, 0.10, 0.40)?;
        within("motion ratio at the top", self.leverage.top, 0.2, 0.8)?;
        within("motion ratio at the bottom", self.leverage.bottom, 0.2, 0.8)?;
        within(
            "late rise of the motion ratio",
            self.leverage.late,
            0.0,
            1.0,
        )?;
        within("gas area in m2", main.area_m2, 2e-4, 2e-3)?;
        let least = self.fork_stroke.value + 0.02;
        within("gas column in m", main.length_m, least, least + 0.3)
    }
}
