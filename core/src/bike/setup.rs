//! What is screwed, poured and pumped into a bike.

use super::class::Class;
use super::friction::Wear;
use super::limits::{OutOfRange, within};
use super::machine::Machine;
use crate::units::{Band, Length, Pressure, SpringRate, newton_per_m};

/// What holds the front up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ForkSpring {
    /// Coil springs.
    Coil {
        /// Rate of each spring, N/m.
        rate: SpringRate,
        /// How many springs: two, or one that does the work of both.
        springs: u8,
        /// How far each is squeezed at full extension, m.
        preload: Length,
    },
    /// Gas in one leg.
    Gas {
        /// Gauge pressure as set at full extension in the air in which it was filled, Pa.
        charge: Pressure,
    },
}

/// The fork as set up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForkSet {
    /// What holds it up.
    pub spring: ForkSpring,
    /// Air over the oil in each leg, squeezed to its end, m.
    pub air_gap: Length,
    /// State of its sliding parts.
    pub wear: Wear,
}

/// The shock as set up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShockSet {
    /// Spring rate, N/m.
    pub rate: SpringRate,
    /// How far the spring is squeezed at full extension, m.
    pub preload: Length,
    /// Gas pressure of the reservoir at full extension, gauge, as set in the air in which it was filled, Pa.
    pub reservoir: Pressure,
    /// State of its sliding parts and of the bearings it works through.
    pub wear: Wear,
}

/// Both ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetUp {
    /// Front.
    pub fork: ForkSet,
    /// Rear.
    pub shock: ShockSet,
}

impl SetUp {
    /// What such a bike leaves the shop with: the middle of what practice gives the class's usual rider, fresh.
    pub fn usual(machine: &Machine) -> Self {
        let class = machine.class;
        let spring = match machine.fork_springs() {
            0 => ForkSpring::Gas {
                charge: Class::FORK_GAS.middle,
            },
            springs => ForkSpring::Coil {
                rate: per_spring(class.fork_rate, springs).middle,
                springs,
                preload: class.fork_preload,
            },
        };
        Self {
            fork: ForkSet {
                spring,
                air_gap: Class::AIR_GAP,
                wear: Wear::FRESH,
            },
            shock: ShockSet {
                rate: machine.usual_shock_rate().middle,
                preload: class.shock_preload,
                reservoir: Class::RESERVOIR.middle,
                wear: Wear::FRESH,
            },
        }
    }

    /// Says which figure, if any, cannot be one of a set-up.
    pub fn check(&self) -> Result<(), OutOfRange> {
        match self.fork.spring {
            ForkSpring::Coil {
                rate,
                springs,
                preload,
            } => {
                within("fork spring rate in N/m", rate.value, 500.0, 40_000.0)?;
                within("fork springs", f64::from(springs), 1.0, 2.0)?;
                within("fork preload in m", preload.value, 0.0, 0.06)?;
            }
            ForkSpring::Gas { charge } => {
                within("fork gas pressure in Pa", charge.value, 0.2e5, 25e5)?;
            }
        }
        within("air gap in m", self.fork.air_gap.value, 0.03, 0.25)?;
        within(
            "shock spring rate in N/m",
            self.shock.rate.value,
            10e3,
            300e3,
        )?;
        within("shock preload in m", self.shock.preload.value, 0.0, 0.06)?;
        within(
            "reservoir pressure in Pa",
            self.shock.reservoir.value,
            0.0,
            25e5,
        )?;
        self.fork.wear.check()?;
        self.shock.wear.check()
    }
}

/// A band quoted per spring with two springs, for this number of springs: one spring must be as stiff as both.
pub fn per_spring(with_two: Band<SpringRate>, springs: u8) -> Band<SpringRate> {
    let factor = 2.0 / f64::from(springs.max(1));
    with_two.map(|rate| newton_per_m(rate.value * factor))
}
