//! Causes as changes of a healthy bike: what is amiss, how far.
//!
//! Every amount is common practice, from memory: what a workshop finds when the cause is there mildly, and when it is there
//! plainly.

use super::Cause;
use crate::bench::{Bench, MidValveShare, Trial};
use crate::bike::gas::Negative;
use crate::bike::{ForkSpring, SetUp};
use crate::ride::RideError;
use crate::stance::equivalent::other_kind;
use crate::units::{Length, SpringRate, metre, newton};

/// A cause at one severity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fault {
    /// What is amiss.
    pub cause: Cause,
    /// How far, in the unit that [`Fault::degrees`] documents for the cause; the sign says which way where there are two.
    pub degree: f64,
    /// Whether it is there plainly, not mildly.
    pub plain: bool,
}

impl Fault {
    /// The degrees looked at, mild before plain, one pair for each way it can be off.
    ///
    /// Springs and gas: relative to what suits. Preload, clamps, oil level, void: mm. Friction: hours without service; N for
    /// binding and bearings. Valves: natural logarithm of the damping over what suits. Oil and gas behind it: shares. Tyres:
    /// relative. Steering head: see [`crate::bench::Condition::head_play`].
    #[expect(clippy::match_same_arms, reason = "a table: one row for each cause")]
    pub const fn degrees(cause: Cause) -> &'static [[f64; 2]] {
        match cause {
            Cause::ForkRateSoft => &[[-0.10, -0.20]],
            Cause::ForkRateStiff => &[[0.10, 0.22]],
            Cause::ForkPreload => &[[-4.0, -8.0], [8.0, 15.0]],
            Cause::GasLow => &[[-0.10, -0.22]],
            Cause::GasHigh => &[[0.12, 0.25]],
            Cause::GasShifted => &[[-0.06, -0.12], [0.06, 0.12]],
            Cause::GasNegative => &[[0.95, 0.65], [1.5, 1.85]],
            Cause::GasDrag => &[[1.0, 1.6]],
            Cause::ForkFriction => &[[70.0, 150.0]],
            Cause::ForkBound => &[[60.0, 130.0]],
            Cause::ForkOilLow => &[[40.0, 90.0]],
            Cause::ForkOilHigh => &[[-30.0, -55.0]],
            Cause::ForkOilWorn => &[[0.15, 0.30]],
            Cause::ForkCompressionMuch | Cause::ShockCompressionMuch => &[[0.34, 0.69]],
            Cause::ForkCompressionLittle | Cause::ShockCompressionLittle => &[[-0.36, -0.75]],
            Cause::ForkReboundSlow | Cause::ShockReboundSlow => &[[0.41, 0.81]],
            Cause::ForkReboundFast | Cause::ShockReboundFast => &[[-0.43, -0.85]],
            Cause::MidValve => &[[0.35, 0.50]],
            Cause::ForkReservoir => &[[0.5, 0.1]],
            Cause::ShockRateSoft => &[[-0.10, -0.19]],
            Cause::ShockRateStiff => &[[0.10, 0.20]],
            Cause::ShockPreload => &[[-4.0, -7.0], [5.0, 10.0]],
            Cause::ShockGasLost => &[[0.5, 0.1]],
            Cause::LinkageDry => &[[120.0, 300.0]],
            Cause::Attitude => &[[-8.0, -15.0], [8.0, 15.0]],
            Cause::TyreHigh => &[[0.35, 0.75]],
            Cause::TyreLow => &[[-0.25, -0.42]],
            Cause::HeadBearings => &[[1.0, 2.0]],
            Cause::NothingWrong => &[],
        }
    }

    /// Every fault of every cause.
    pub fn all() -> impl Iterator<Item = Self> {
        Cause::ALL.iter().flat_map(|cause| {
            Self::degrees(*cause).iter().flat_map(|[mild, plain]| {
                [(*mild, false), (*plain, true)].map(|(degree, plain)| Self {
                    cause: *cause,
                    degree,
                    plain,
                })
            })
        })
    }

    /// The bike with this fault, from a healthy one.
    ///
    /// A gas leg's own nature is no change of it: the gas leg is what it is, and [`Fault::reference`] is what it is held
    /// against.
    #[must_use]
    pub fn put_on(&self, healthy: &Trial) -> Trial {
        let mut trial = healthy.clone();
        let SetUp { fork, shock } = &mut trial.set_up;
        let condition = &mut trial.condition;
        let mm = |length: Length| (length + metre(1e-3 * self.degree)).max(metre(0.0));
        let share = |rate: SpringRate| rate * (1.0 + self.degree);
        let times = libm::exp(self.degree);
        match self.cause {
            Cause::ForkRateSoft | Cause::ForkRateStiff => {
                if let ForkSpring::Coil { rate, .. } = &mut fork.spring {
                    *rate = share(*rate);
                }
            }
            Cause::ForkPreload => {
                if let ForkSpring::Coil { preload, .. } = &mut fork.spring {
                    *preload = mm(*preload);
                }
            }
            Cause::GasLow | Cause::GasHigh | Cause::GasShifted => {
                if let ForkSpring::Gas { charge } = &mut fork.spring {
                    *charge *= 1.0 + self.degree;
                }
            }
            Cause::GasNegative => {
                if let Negative::Chamber { port_m, fill, .. } = &mut trial.machine.gas.negative {
                    (*port_m, *fill) = (0.0, self.degree);
                }
            }
            Cause::GasDrag => fork.wear.gas_seals = self.degree,
            Cause::ForkFriction => {
                fork.wear.hours = self.degree;
                fork.wear.gas_seals = 1.0 + self.degree / NEGLECTED_GAS_SEALS_H;
            }
            Cause::ForkBound => fork.wear.binding = newton(self.degree),
            Cause::ForkOilLow | Cause::ForkOilHigh => {
                fork.air_gap = (fork.air_gap + metre(1e-3 * self.degree)).max(LEAST_AIR_GAP);
            }
            Cause::ForkOilWorn => {
                condition.air.front = self.degree;
                condition.void_m.front = WORN_VOID_M * self.degree;
            }
            Cause::ForkCompressionMuch | Cause::ForkCompressionLittle => {
                condition.valving[0] = times;
            }
            Cause::ForkReboundSlow | Cause::ForkReboundFast => condition.valving[1] = times,
            Cause::ShockCompressionMuch | Cause::ShockCompressionLittle => {
                condition.valving[2] = times;
            }
            Cause::ShockReboundSlow | Cause::ShockReboundFast => condition.valving[3] = times,
            Cause::MidValve => {
                // The base valve stays as it is; what the mid-valve adds comes on top.
                condition.valving[0] = (1.0 - SOUND_MID_VALVE) / (1.0 - self.degree);
                condition.mid_valve = Some(MidValveShare {
                    low_speed: self.degree,
                    hard_hit: self.degree + 0.2,
                });
            }
            Cause::ForkReservoir => {
                condition.fork_reservoir = self.degree;
                condition.air.front = 0.2 * (1.0 - self.degree);
                condition.void_m.front = LOST_VOID_M.0 * (1.0 - self.degree);
            }
            Cause::ShockRateSoft | Cause::ShockRateStiff => shock.rate = share(shock.rate),
            Cause::ShockPreload => shock.preload = mm(shock.preload),
            Cause::ShockGasLost => {
                shock.reservoir *= self.degree;
                condition.air.rear = 0.4 * (1.0 - self.degree);
                condition.void_m.rear = LOST_VOID_M.1 * (1.0 - self.degree);
            }
            Cause::LinkageDry => shock.wear.binding = newton(self.degree),
            Cause::Attitude => {
                let raised_m = 1e-3 * self.degree;
                condition.raised_m = raised_m;
                // Height of the centre of mass over wheelbase, times the pitch: common practice for an off-road bike.
                let wheelbase_m = trial.machine.class.wheelbase.value;
                trial.machine.front_share -= 0.5 * raised_m / wheelbase_m;
            }
            Cause::TyreHigh | Cause::TyreLow => {
                condition.tyres = condition.tyres.map(|share| share * (1.0 + self.degree));
            }
            Cause::HeadBearings => condition.head_play = self.degree,
            Cause::NothingWrong => {}
        }
        trial
    }

    /// What the bike with this fault is held against: the healthy one, but for a gas leg's own nature, which shows
    /// only beside a coil in its place that sits the rider alike.
    ///
    /// # Errors
    /// When no coil could take the place of the gas.
    pub fn reference(&self, bench: &Bench, healthy: &Trial) -> Result<Trial, RideError> {
        if self.cause != Cause::GasDrag {
            return Ok(healthy.clone());
        }
        let (machine, set_up) = other_kind(bench.situation(), &healthy.set_up, &healthy.air)?;
        Ok(Trial {
            machine,
            set_up,
            ..healthy.clone()
        })
    }
}

/// Share of the low-speed compression that a mid-valve with float makes, as dampers are sized here.
const SOUND_MID_VALVE: f64 = 0.2;
/// Hours in which the drag of gas seals doubles without service (from memory).
const NEGLECTED_GAS_SEALS_H: f64 = 150.0;
/// Least air over the oil that still leaves a stroke, m.
const LEAST_AIR_GAP: Length = metre(0.04);
/// Void in worn oil, m for its whole volume taken by air (from memory).
const WORN_VOID_M: f64 = 0.008;
/// Void when all pressure behind the oil is lost: fork, along the leg, and shock, at its shaft, m (from memory).
const LOST_VOID_M: (f64, f64) = (0.006, 0.0045);
