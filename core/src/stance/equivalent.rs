//! Which gas stands for which coil, and the other way round.
//!
//! A gas spring has another shape than a coil, so only one thing can be made equal at a time: the sag, or the
//! energy it takes to full stroke, which is what a big landing asks for. The truth lies between; show both.

use super::error::{Asked, StanceError};
use super::settle::{Pitch, check, settle};
use super::situation::Situation;
use super::wanted::{Case, find};
use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::bike::{ForkSet, ForkSpring, Machine, SetUp, Surroundings};
use crate::intake::ForkKind;
use crate::units::{Energy, Length, Pressure, SpringRate, joule, newton_per_m, pascal};

/// Intervals of Simpson's rule over the stroke; even.
const INTERVALS: u32 = 200;

/// The other kind of fork at equal sag: the same bike and set-up with gas for coil, or one coil for gas.
pub fn other_kind(
    situation: &Situation,
    set_up: &SetUp,
    today: &Surroundings,
) -> Result<(Machine, SetUp), StanceError> {
    let case = Case {
        machine: &situation.machine,
        load: &situation.load,
        set_up,
        surroundings: today,
        pitch: Pitch::OtherAsSet,
    };
    let (mut machine, mut other) = (situation.machine, *set_up);
    if situation.gas() {
        let preload = situation.fork_preload;
        let rate = equal_sag_rate(&case, 1, preload)?;
        machine.fork = ForkKind::CoilOneLeg;
        other.fork.spring = ForkSpring::Coil {
            rate,
            springs: 1,
            preload,
        };
    } else {
        let charge = equal_sag_pressure(&case)?;
        machine.fork = ForkKind::GasOneLeg;
        other.fork.spring = ForkSpring::Gas { charge };
    }
    Ok((machine, other))
}

/// Gauge pressure at which the bike's gas spring sits a rider where the coil springs in `case` do.
pub fn equal_sag_pressure(case: &Case) -> Result<Pressure, StanceError> {
    let (coil, ride_m) = case.fork_at_rest()?;
    let wanted_n = coil.spring_n(ride_m, Law::Slow);
    find(Asked::ForkPressure, |charge| {
        case.fork_with(gas(charge)).spring_n(ride_m, Law::Slow) - wanted_n
    })
    .map(pascal)
}

/// Gauge pressure at which a quick stroke to the end takes as much energy as with the coil springs in `case`.
///
/// The stroke is that of a landing: it starts at full extension, where the fork hangs in the air, and quick gas laws
/// hold from there.
pub fn equal_energy_pressure(case: &Case) -> Result<Pressure, StanceError> {
    case.check()?;
    let wanted_j = energy_j(&case.fork_with(case.set_up.fork.spring));
    find(Asked::ForkPressure, |charge| {
        energy_j(&case.fork_with(gas(charge))) - wanted_j
    })
    .map(pascal)
}

/// Rate of each of `springs` coil springs with this preload that sits a rider where the gas fork in `case` does.
pub fn equal_sag_rate(
    case: &Case,
    springs: u8,
    preload: Length,
) -> Result<SpringRate, StanceError> {
    let (gas, ride_m) = case.fork_at_rest()?;
    let wanted_n = gas.spring_n(ride_m, Law::Slow);
    find(Asked::ForkRate, |rate| {
        case.fork_with(coil(rate, springs, preload))
            .spring_n(ride_m, Law::Slow)
            - wanted_n
    })
    .map(newton_per_m)
}

/// Rate of each of `springs` coil springs with this preload for which a quick stroke to the end takes as much energy
/// as with the gas fork in `case`.
pub fn equal_energy_rate(
    case: &Case,
    springs: u8,
    preload: Length,
) -> Result<SpringRate, StanceError> {
    case.check()?;
    let wanted_j = energy_j(&case.fork_with(case.set_up.fork.spring));
    find(Asked::ForkRate, |rate| {
        energy_j(&case.fork_with(coil(rate, springs, preload))) - wanted_j
    })
    .map(newton_per_m)
}

/// Energy of spring and trapped air over a quick stroke from full extension to full stroke.
pub fn energy_to_full_stroke(fork: &Fork) -> Energy {
    joule(energy_j(fork))
}

fn gas(charge: f64) -> ForkSpring {
    ForkSpring::Gas {
        charge: pascal(charge),
    }
}

fn coil(rate: f64, springs: u8, preload: Length) -> ForkSpring {
    ForkSpring::Coil {
        rate: newton_per_m(rate),
        springs,
        preload,
    }
}

/// The same in J, by Simpson's rule. The kink of a gas spring at its port costs less than 1e-5 of it.
fn energy_j(fork: &Fork) -> f64 {
    let step_m = fork.stops.stroke_m / f64::from(INTERVALS);
    let mut sum_n = 0.0;
    for i in 0..=INTERVALS {
        let weight = match i {
            0 | INTERVALS => 1.0,
            i if i % 2 == 1 => 4.0,
            _ => 2.0,
        };
        sum_n += weight * fork.spring_n(f64::from(i) * step_m, Law::Quick { from_m: 0.0 });
    }
    sum_n * step_m / 3.0
}

impl Case<'_> {
    fn check(&self) -> Result<(), StanceError> {
        check(self.machine, self.load, self.set_up)
    }

    /// The fork as set and its stroke at rider sag, m.
    fn fork_at_rest(&self) -> Result<(Fork, f64), StanceError> {
        let stance = settle(self.machine, self.load, self.set_up, self.surroundings)?;
        let fork = Fork::build(self.machine, &self.set_up.fork, self.surroundings);
        Ok((fork, stance.ridden.fork.middle.value))
    }

    /// The fork with another spring and all else as set.
    fn fork_with(&self, spring: ForkSpring) -> Fork {
        let set = ForkSet {
            spring,
            ..self.set_up.fork
        };
        Fork::build(self.machine, &set, self.surroundings)
    }
}
