//! The set-up that suits a situation: springs and pressure for the sags, springs as sold, preload, clickers.

use super::clickers::{Clickers, clickers};
use super::error::StanceError;
use super::offers::{Offer, fork_rates_near, shock_rates_near};
use super::settle::{Pitch, Stance, settle};
use super::situation::Situation;
use super::wanted::{
    Case, fork_preload_for, fork_rate_for, gas_pressure_for, shock_preload_for, shock_rate_for,
};
use crate::bike::setup::per_spring;
use crate::bike::{Class, ForkSpring, Machine, SetUp, ShockSet, Surroundings};
use crate::units::{Band, Length, Pressure, SpringRate, metre, newton_per_m};

/// Preload of a shock spring that practice accepts; beyond, another spring is due (common practice).
pub const SHOCK_PRELOAD: Band<Length> = Band {
    low: metre(0.004),
    middle: metre(0.010),
    high: metre(0.018),
};
/// Preload of a fork spring that practice accepts (common practice).
pub const FORK_PRELOAD: Band<Length> = Band {
    low: metre(0.001),
    middle: metre(0.006),
    high: metre(0.018),
};

/// What suits, as far as it can be worked out: an answer out of reach is absent, with the reason beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct Baseline {
    /// The spring at the front.
    pub front: Front,
    /// The spring at the rear.
    pub rear: Rear,
    /// The whole set-up advised, springs as sold.
    pub set_up: SetUp,
    /// Where it sits.
    pub stance: Result<Stance, StanceError>,
    /// Where the adjusters start on it.
    pub clickers: Result<Clickers, StanceError>,
}

/// What suits at the front.
#[derive(Debug, Clone, PartialEq)]
pub enum Front {
    /// Coil springs.
    Coil {
        /// The rate of each spring that gives the sag aimed at.
        rate: Result<SpringRate, StanceError>,
        /// The nearest sold below and above.
        nearest: Vec<Offer>,
        /// The rate to fit: the present one if it is within half a step, else the nearest sold.
        fitted: SpringRate,
        /// Preload that gives the sag with the fitted springs.
        preload: Result<Length, StanceError>,
    },
    /// Gas.
    Gas {
        /// The gauge pressure that gives the sag, set today where the bike is ridden.
        pressure: Result<Pressure, StanceError>,
        /// The pressure to set: that one, but never above the maximum marked on the part.
        held: Pressure,
    },
}

/// What suits at the rear.
#[derive(Debug, Clone, PartialEq)]
pub struct Rear {
    /// The rate that gives the sag aimed at with the preload practice gives.
    pub rate: Result<SpringRate, StanceError>,
    /// The nearest sold below and above.
    pub nearest: Vec<Offer>,
    /// The rate to fit: the present one if it is within one step, else the nearest sold.
    pub fitted: SpringRate,
    /// Preload that gives the sag with the fitted spring.
    pub preload: Result<Length, StanceError>,
}

/// The set-up that is the reference for what suits: the preloads aimed at, everything else as it stands.
fn reference(situation: &Situation) -> SetUp {
    let mut set_up = situation.now;
    set_up.shock.preload = situation.shock_preload;
    if let ForkSpring::Coil { preload, .. } = &mut set_up.fork.spring {
        *preload = situation.fork_preload;
    }
    set_up
}

/// Air in which pressure is set today: where the bike is ridden.
fn set_today(situation: &Situation) -> Surroundings {
    Surroundings::same(situation.surroundings.riding)
}

/// Rate of each fork spring for the sag aimed at, the rear at its own.
pub fn fork_rate(situation: &Situation) -> Result<SpringRate, StanceError> {
    with_case(
        situation,
        &reference(situation),
        Pitch::OtherAt(situation.rear_sag),
        |case| fork_rate_for(case, situation.fork_sag),
    )
}

/// Gauge pressure for the sag aimed at, set today, the rear at its own.
pub fn fork_pressure(situation: &Situation) -> Result<Pressure, StanceError> {
    with_case(
        situation,
        &reference(situation),
        Pitch::OtherAt(situation.rear_sag),
        |case| gas_pressure_for(case, situation.fork_sag),
    )
}

/// Rate of the shock spring for the sag aimed at with the preload of practice, the front at its own.
pub fn shock_rate(situation: &Situation) -> Result<SpringRate, StanceError> {
    with_case(
        situation,
        &reference(situation),
        Pitch::OtherAt(situation.fork_sag),
        |case| shock_rate_for(case, situation.rear_sag),
    )
}

/// Preload of the shock for the sag aimed at with a spring of this rate, the front at its own.
pub fn shock_preload(situation: &Situation, rate: SpringRate) -> Result<Length, StanceError> {
    let mut set_up = reference(situation);
    set_up.shock.rate = rate;
    with_case(
        situation,
        &set_up,
        Pitch::OtherAt(situation.fork_sag),
        |case| shock_preload_for(case, situation.rear_sag),
    )
}

/// Preload of the fork springs for the sag aimed at with springs of this rate, the rear at its own.
pub fn fork_preload(situation: &Situation, rate: SpringRate) -> Result<Length, StanceError> {
    let mut set_up = reference(situation);
    if let ForkSpring::Coil { rate: fitted, .. } = &mut set_up.fork.spring {
        *fitted = rate;
    }
    with_case(
        situation,
        &set_up,
        Pitch::OtherAt(situation.rear_sag),
        |case| fork_preload_for(case, situation.fork_sag),
    )
}

/// What suits as if springs of any rate were made, with the preloads of practice, and where that sits; `but` may still change
/// the set-up. An end for which no spring or pressure gives the sag aimed at stays as it is.
///
/// # Errors
/// When the bike cannot come to rest.
pub fn as_if_made(
    situation: &Situation,
    but: impl FnOnce(&Situation, &mut SetUp),
) -> Result<(SetUp, Stance), StanceError> {
    let mut set_up = reference(situation);
    match &mut set_up.fork.spring {
        ForkSpring::Coil { rate, .. } => *rate = fork_rate(situation).unwrap_or(*rate),
        ForkSpring::Gas { charge } => *charge = fork_pressure(situation).unwrap_or(*charge),
    }
    set_up.shock.rate = shock_rate(situation).unwrap_or(set_up.shock.rate);
    but(situation, &mut set_up);
    let stance = stance_of(situation, &set_up)?;
    Ok((set_up, stance))
}

/// Where a set-up sits when it is filled today.
pub fn stance_of(situation: &Situation, set_up: &SetUp) -> Result<Stance, StanceError> {
    settle(
        &situation.machine,
        &situation.load,
        set_up,
        &set_today(situation),
    )
}

/// Where the bike sits as it stands, filled when it was filled.
pub fn stance_now(situation: &Situation) -> Result<Stance, StanceError> {
    settle(
        &situation.machine,
        &situation.load,
        &situation.now,
        &situation.surroundings,
    )
}

/// Does something with a set-up filled today.
pub fn with_case<T>(
    situation: &Situation,
    set_up: &SetUp,
    pitch: Pitch,
    ask: impl FnOnce(&Case) -> T,
) -> T {
    let surroundings = set_today(situation);
    ask(&Case {
        machine: &situation.machine,
        load: &situation.load,
        set_up,
        surroundings: &surroundings,
        pitch,
    })
}

impl Baseline {
    /// The same with the springs that riding chose among those sold and their preload, all else as it was: sags and pictures
    /// then belong to the springs that are advised.
    #[must_use]
    pub fn with_springs(
        mut self,
        situation: &Situation,
        fork: Option<SpringRate>,
        shock: SpringRate,
    ) -> Self {
        let chosen = self.on_springs(situation, fork, shock);
        if self.set_up != chosen {
            self.set_up = chosen;
            self.stance = stance_of(situation, &chosen);
        }
        self
    }

    /// The advised set-up on other springs, each with the preload that gives the sag aimed at.
    pub fn on_springs(
        &self,
        situation: &Situation,
        fork: Option<SpringRate>,
        shock: SpringRate,
    ) -> SetUp {
        let mut set_up = self.set_up;
        if let (Some(chosen), ForkSpring::Coil { rate, preload, .. }) =
            (fork, &mut set_up.fork.spring)
            && *rate != chosen
        {
            *rate = chosen;
            *preload = to_set(fork_preload(situation, chosen), FORK_PRELOAD, *preload);
        }
        let ShockSet { rate, preload, .. } = &mut set_up.shock;
        if *rate != shock {
            *rate = shock;
            *preload = to_set(shock_preload(situation, shock), SHOCK_PRELOAD, *preload);
        }
        set_up
    }
}

/// What another rider or bike is given who is told to fit the same springs: preload and pressure set anew.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetAnew {
    /// The whole set-up.
    pub set_up: SetUp,
    /// Where it sits.
    pub stance: Result<Stance, StanceError>,
    /// Where the adjusters start on it.
    pub clickers: Result<Clickers, StanceError>,
}

impl Baseline {
    /// The springs advised here under a bike or rider that differ a little, preload and pressure set for the sags aimed at
    /// there. In the situation this was worked out for it gives back what is advised.
    pub fn set_anew(&self, situation: &Situation) -> SetAnew {
        let mut set_up = reference(situation);
        match (&mut set_up.fork.spring, &self.front) {
            (ForkSpring::Coil { rate, preload, .. }, Front::Coil { .. }) => {
                if let ForkSpring::Coil { rate: advised, .. } = self.set_up.fork.spring {
                    *rate = advised;
                }
                *preload = to_set(fork_preload(situation, *rate), FORK_PRELOAD, *preload);
            }
            (ForkSpring::Gas { charge }, _) => {
                *charge = held(situation, fork_pressure(situation).unwrap_or(*charge));
            }
            (ForkSpring::Coil { .. }, Front::Gas { .. }) => {}
        }
        set_up.shock.rate = self.set_up.shock.rate;
        let preload = shock_preload(situation, set_up.shock.rate);
        set_up.shock.preload = to_set(preload, SHOCK_PRELOAD, set_up.shock.preload);
        SetAnew {
            set_up,
            stance: stance_of(situation, &set_up),
            clickers: clickers_on(situation, &set_up),
        }
    }
}

/// Where the adjusters start on a set-up.
fn clickers_on(situation: &Situation, set_up: &SetUp) -> Result<Clickers, StanceError> {
    with_case(situation, set_up, Pitch::OtherAsSet, |case| {
        clickers(case, situation.pace, &situation.ground, &situation.ranges)
    })
}

/// Step of fork rates per spring: one spring that does the work of two comes in steps twice as wide.
pub fn fork_step(machine: &Machine) -> SpringRate {
    let step = Class::FORK_RATE_STEP;
    per_spring(
        Band {
            low: step,
            middle: step,
            high: step,
        },
        machine.fork_springs().max(1),
    )
    .middle
}

/// Works out what suits.
pub fn baseline(situation: &Situation) -> Baseline {
    let mut set_up = reference(situation);
    let front = front(situation, &mut set_up);
    let rear = rear(situation, &mut set_up);
    let stance = stance_of(situation, &set_up);
    let clickers = clickers_on(situation, &set_up);
    Baseline {
        front,
        rear,
        set_up,
        stance,
        clickers,
    }
}

fn front(situation: &Situation, set_up: &mut SetUp) -> Front {
    let before = *set_up;
    match &mut set_up.fork.spring {
        ForkSpring::Coil {
            rate: fitted,
            preload: fitted_preload,
            ..
        } => {
            let rate = fork_rate(situation);
            let step = fork_step(&situation.machine);
            let pitch = Pitch::OtherAt(situation.rear_sag);
            let nearest = rate
                .and_then(|rate| {
                    with_case(situation, &before, pitch, |case| {
                        fork_rates_near(case, rate, step)
                    })
                })
                .map(Vec::from)
                .unwrap_or_default();
            let present = situation.told.fork_spring.then_some(*fitted);
            if let Ok(wanted) = rate {
                *fitted = to_fit(wanted, step, 0.5, present);
            }
            let preload = fork_preload(situation, *fitted);
            *fitted_preload = to_set(preload, FORK_PRELOAD, *fitted_preload);
            Front::Coil {
                rate,
                nearest,
                fitted: *fitted,
                preload,
            }
        }
        ForkSpring::Gas { charge } => {
            let pressure = fork_pressure(situation);
            let held = held(situation, pressure.unwrap_or(*charge));
            *charge = held;
            Front::Gas { pressure, held }
        }
    }
}

fn rear(situation: &Situation, set_up: &mut SetUp) -> Rear {
    let rate = shock_rate(situation);
    let step = Class::SHOCK_RATE_STEP;
    let before = *set_up;
    let pitch = Pitch::OtherAt(situation.fork_sag);
    let nearest = rate
        .and_then(|rate| {
            with_case(situation, &before, pitch, |case| {
                shock_rates_near(case, rate, step)
            })
        })
        .map(Vec::from)
        .unwrap_or_default();
    let present = situation
        .told
        .shock_rate
        .then_some(situation.now.shock.rate);
    let fitted = rate.map_or(set_up.shock.rate, |wanted| {
        to_fit(wanted, step, 1.0, present)
    });
    let preload = shock_preload(situation, fitted);
    set_up.shock.rate = fitted;
    set_up.shock.preload = to_set(preload, SHOCK_PRELOAD, set_up.shock.preload);
    Rear {
        rate,
        nearest,
        fitted,
        preload,
    }
}

/// The present spring where it lies within `steps` of what is wanted, else the nearest one sold.
fn to_fit(
    wanted: SpringRate,
    step: SpringRate,
    steps: f64,
    present: Option<SpringRate>,
) -> SpringRate {
    match present {
        Some(present) if (present - wanted).abs() <= step * steps => present,
        _ => newton_per_m((wanted.value / step.value).round().max(1.0) * step.value),
    }
}

/// The preload to set: what was found, held within what practice accepts. Where nothing reaches the sag it is the end that
/// comes nearest, and the present one where that cannot be told.
fn to_set(found: Result<Length, StanceError>, accepted: Band<Length>, present: Length) -> Length {
    match found {
        Ok(length) => length.max(accepted.low).min(accepted.high),
        Err(StanceError::OutOfReach { too_much: true, .. }) => accepted.low,
        Err(StanceError::OutOfReach { .. }) => accepted.high,
        Err(_) => present,
    }
}

/// A pressure held under the maximum marked on the part.
fn held(situation: &Situation, wanted: Pressure) -> Pressure {
    situation
        .marked_maximum
        .map_or(wanted, |most| wanted.min(most))
}
