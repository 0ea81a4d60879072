//! The rate, pressure or preload that gives a wanted sag.
//!
//! Each asks for the middle of the friction band. The wanted sag fixes where the end sits, [`Pitch`] where the
//! other end sits, both together the load; what is left is one unknown in one rising force.

use super::error::{Asked, StanceError};
use super::loads::{Load, Weights};
use super::settle::{Ends, Pitch, check};
use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::bike::limits::within;
use crate::bike::shock::Shock;
use crate::bike::{ForkSet, ForkSpring, Machine, SetUp, ShockSet, Surroundings};
use crate::solve::{NoRoot, root};
use crate::units::{BAR_IN_PA, Length, Pressure, SpringRate, metre, newton_per_m, pascal};

/// Limits of fork rates per spring, N/m: from a child's bike to one spring alone under an adventure bike.
const FORK_RATE_N_PER_M: (f64, f64) = (1e3, 30e3);
/// Limits of shock rates, N/m.
const SHOCK_RATE_N_PER_M: (f64, f64) = (15e3, 250e3);
/// Limits of fork gas pressure, Pa gauge.
const FORK_PRESSURE_PA: (f64, f64) = (0.5 * BAR_IN_PA, 25.0 * BAR_IN_PA);
/// Limits of preload, m.
const PRELOAD_M: (f64, f64) = (0.0, 0.04);
/// Tolerance of the search as a share of the range searched.
const SHARE_OF_RANGE: f64 = 1e-10;

/// One bike under one load, for which a set-up is wanted.
#[derive(Debug, Clone, Copy)]
pub struct Case<'a> {
    /// The bike.
    pub machine: &'a Machine,
    /// Who and what is aboard.
    pub load: &'a Load,
    /// The set-up as it is, from which all is taken that is not asked for.
    pub set_up: &'a SetUp,
    /// Where it was filled and where it rides.
    pub surroundings: &'a Surroundings,
    /// What is taken of the other end.
    pub pitch: Pitch,
}

/// Rate of each fork spring for a rider sag of `sag` along the leg; number of springs, preload and air gap as set.
pub fn fork_rate_for(case: &Case, sag: Length) -> Result<SpringRate, StanceError> {
    let ForkSpring::Coil {
        springs, preload, ..
    } = case.set_up.fork.spring
    else {
        return Err(StanceError::WrongSpring(Asked::ForkRate));
    };
    let with = |rate: f64| ForkSpring::Coil {
        rate: newton_per_m(rate),
        springs,
        preload,
    };
    case.fork_value(with, sag, Asked::ForkRate)
        .map(newton_per_m)
}

/// Preload of the fork springs for a rider sag of `sag` along the leg, with the springs as set.
pub fn fork_preload_for(case: &Case, sag: Length) -> Result<Length, StanceError> {
    let ForkSpring::Coil { rate, springs, .. } = case.set_up.fork.spring else {
        return Err(StanceError::WrongSpring(Asked::ForkPreload));
    };
    let with = |preload: f64| ForkSpring::Coil {
        rate,
        springs,
        preload: metre(preload),
    };
    case.fork_value(with, sag, Asked::ForkPreload).map(metre)
}

/// Gauge pressure to set in the air in which the fork is filled, for a rider sag of `sag` along the leg where it
/// is ridden.
pub fn gas_pressure_for(case: &Case, sag: Length) -> Result<Pressure, StanceError> {
    if !matches!(case.set_up.fork.spring, ForkSpring::Gas { .. }) {
        return Err(StanceError::WrongSpring(Asked::ForkPressure));
    }
    let with = |charge: f64| ForkSpring::Gas {
        charge: pascal(charge),
    };
    case.fork_value(with, sag, Asked::ForkPressure).map(pascal)
}

/// Rate of the shock spring for a vertical rider sag of `sag` at the rear axle; preload and reservoir as set.
pub fn shock_rate_for(case: &Case, sag: Length) -> Result<SpringRate, StanceError> {
    let with = |rate: f64| ShockSet {
        rate: newton_per_m(rate),
        ..case.set_up.shock
    };
    case.shock_value(with, sag, Asked::ShockRate)
        .map(newton_per_m)
}

/// Preload of the shock spring for a vertical rider sag of `sag` at the rear axle, with the spring as set.
pub fn shock_preload_for(case: &Case, sag: Length) -> Result<Length, StanceError> {
    let with = |preload: f64| ShockSet {
        preload: metre(preload),
        ..case.set_up.shock
    };
    case.shock_value(with, sag, Asked::ShockPreload).map(metre)
}

impl Case<'_> {
    fn ends(&self) -> Result<Ends, StanceError> {
        check(self.machine, self.load, self.set_up)?;
        Ok(Ends::build(self.machine, self.set_up, self.surroundings))
    }

    /// The value of one property of the fork spring at which the fork holds its load at `sag`.
    fn fork_value(
        &self,
        with: impl Fn(f64) -> ForkSpring,
        sag: Length,
        asked: Asked,
    ) -> Result<f64, StanceError> {
        let ends = self.ends()?;
        let sag_m = sag.value;
        within(
            "fork sag in m",
            sag_m,
            0.005,
            0.9 * ends.fork.stops.stroke_m,
        )?;
        let weights = Weights::of(self.machine, self.load, true);
        let pitch_rad = match self.pitch {
            Pitch::Level => 0.0,
            Pitch::OtherAt(rear) => ends.pitch_rad(|_| Ok(sag_m), |_| Ok(rear.value))?,
            Pitch::OtherAsSet => ends.pitch_rad(
                |_| Ok(sag_m),
                |pitch| ends.rear_travel_m(weights.rear_n(pitch)),
            )?,
        };
        let axial_n = ends.fork.axial_n(weights.front_n(pitch_rad));
        find(asked, |value| {
            let set = ForkSet {
                spring: with(value),
                ..self.set_up.fork
            };
            Fork::build(self.machine, &set, self.surroundings).force_n(sag_m, Law::Slow) - axial_n
        })
    }

    /// The value of one property of the shock at which the rear holds its load at `sag`.
    fn shock_value(
        &self,
        with: impl Fn(f64) -> ShockSet,
        sag: Length,
        asked: Asked,
    ) -> Result<f64, StanceError> {
        let ends = self.ends()?;
        let sag_m = sag.value;
        within(
            "rear sag in m",
            sag_m,
            0.005,
            0.9 * ends.shock.leverage.travel_m,
        )?;
        let weights = Weights::of(self.machine, self.load, true);
        let pitch_rad = match self.pitch {
            Pitch::Level => 0.0,
            Pitch::OtherAt(fork) => ends.pitch_rad(|_| Ok(fork.value), |_| Ok(sag_m))?,
            Pitch::OtherAsSet => ends.pitch_rad(
                |pitch| ends.fork_stroke_m(weights.front_n(pitch)),
                |_| Ok(sag_m),
            )?,
        };
        let wheel_n = weights.rear_n(pitch_rad);
        find(asked, |value| {
            let shock = Shock::build(self.machine, &with(value), self.surroundings);
            shock.wheel_n(sag_m, Law::Slow) - wheel_n
        })
    }
}

/// Searches between the limits of what is asked for.
pub(super) fn find(asked: Asked, surplus: impl FnMut(f64) -> f64) -> Result<f64, StanceError> {
    let (low, high) = match asked {
        Asked::ForkRate => FORK_RATE_N_PER_M,
        Asked::ShockRate => SHOCK_RATE_N_PER_M,
        Asked::ForkPressure => FORK_PRESSURE_PA,
        Asked::ForkPreload | Asked::ShockPreload => PRELOAD_M,
    };
    root(surplus, low, high, SHARE_OF_RANGE * (high - low)).map_err(|problem| match problem {
        NoRoot::SameSign {
            low, high, at_low, ..
        } => StanceError::OutOfReach {
            asked,
            low,
            high,
            too_much: at_low > 0.0,
        },
        other => StanceError::Search(other),
    })
}
