//! What each remedy does to a bike, whatever is amiss with it.
//!
//! A remedy sets what it works on to what suits and leaves everything else as it is: a fault that it cannot reach stays. How
//! much stays of what it reaches only in part is common practice, from memory.

use core::cell::OnceCell;

use super::RemedyId;
use crate::bench::{Bench, Condition, Trial};
use crate::bike::friction::Wear;
use crate::bike::{ForkSet, ForkSpring};
use crate::intake::ForkKind;
use crate::stance::baseline::{FORK_PRELOAD, SHOCK_PRELOAD, fork_preload, shock_preload};
use crate::stance::clickers::CLICK;
use crate::stance::equivalent::other_kind;

/// Clicks turned before riding again.
pub const CLICKS_AT_A_TIME: f64 = 2.0;
/// What is left of legs that bind when axle and clamps have found their line: a bent tube stays bent.
const BINDING_ALIGNED: f64 = 0.2;
/// What is left of it after new seals and bushings alone.
const BINDING_SERVICED: f64 = 0.85;
/// What is left of neglect when only the oil is changed: it takes dirt with it, the seals stay.
const NEGLECT_FLUSHED: f64 = 0.65;

/// What suits a rider on a bike, for remedies to go by.
#[derive(Debug)]
pub struct Suits<'a> {
    bench: &'a Bench<'a>,
    healthy: &'a Trial,
    /// Kind of fork and spring of a coil in place of the gas; `None` where no coil could take its place.
    coil: OnceCell<Option<(ForkKind, ForkSpring)>>,
}

impl<'a> Suits<'a> {
    /// The healthy bike of a bench.
    pub const fn new(bench: &'a Bench<'a>, healthy: &'a Trial) -> Self {
        Self {
            bench,
            healthy,
            coil: OnceCell::new(),
        }
    }

    fn coil(&self) -> Option<(ForkKind, ForkSpring)> {
        let find = || {
            let Trial { set_up, air, .. } = self.healthy;
            let (machine, set_up) = other_kind(self.bench.situation(), set_up, air).ok()?;
            Some((machine.fork, set_up.fork.spring))
        };
        *self.coil.get_or_init(find)
    }
}

/// The bike after the remedy; the same bike where it would change nothing, or cannot be done on it.
pub fn done(id: RemedyId, suits: &Suits, now: &Trial) -> Trial {
    if let Some((place, way)) = adjuster(id) {
        return clicked(suits, now, place, way);
    }
    let healthy = suits.healthy;
    let mut after = now.clone();
    let fork = &mut after.set_up.fork;
    let shock = &mut after.set_up.shock;
    let condition = &mut after.condition;
    let sound = &healthy.condition;
    match id {
        RemedyId::SetTyres => condition.tyres = sound.tyres,
        RemedyId::SetGasPressure => {
            if matches!(fork.spring, ForkSpring::Gas { .. }) {
                fork.spring = healthy.set_up.fork.spring;
            }
        }
        RemedyId::LevelNegative => after.machine.gas.negative = healthy.machine.gas.negative,
        RemedyId::BleedAir => after.air.bled = true,
        RemedyId::AlignAxle => fork.wear.binding *= BINDING_ALIGNED,
        RemedyId::SetShockPreload => {
            let usual = healthy.set_up.shock;
            // On the spring that suits, the preload that suits is known already.
            if shock.rate == usual.rate {
                shock.preload = usual.preload;
            } else if let Ok(wanted) = shock_preload(suits.bench.situation(), shock.rate) {
                shock.preload = wanted.max(SHOCK_PRELOAD.low).min(SHOCK_PRELOAD.high);
            }
        }
        RemedyId::LevelBike => {
            condition.raised_m = sound.raised_m;
            after.machine.front_share = healthy.machine.front_share;
        }
        RemedyId::ServiceHead => condition.head_play = sound.head_play,
        RemedyId::ServiceSeals => {
            fork.wear = Wear {
                binding: fork.wear.binding * BINDING_SERVICED,
                slippery: fork.wear.slippery,
                ..Wear::FRESH
            };
        }
        RemedyId::ServiceForkOil => {
            fork.air_gap = healthy.set_up.fork.air_gap;
            fork.wear.hours *= NEGLECT_FLUSHED;
            // Oil that has lost the pressure behind it takes up air again.
            if condition.fork_reservoir >= sound.fork_reservoir {
                fresh_oil(condition, sound);
            }
        }
        RemedyId::ServiceLinkage => shock.wear = Wear::FRESH,
        RemedyId::ServiceShock => {
            shock.reservoir = healthy.set_up.shock.reservoir;
            fresh_shock_oil(condition, sound);
        }
        RemedyId::ForkSpacer => fork.spring = respaced(suits, fork.spring),
        RemedyId::ReduceDrag => {
            fork.wear.slippery = now.machine.fork != ForkKind::CoilBothLegs;
        }
        RemedyId::RestoreReservoir if condition.fork_reservoir < sound.fork_reservoir => {
            condition.fork_reservoir = sound.fork_reservoir;
            fresh_oil(condition, sound);
        }
        RemedyId::ForkSprings => {
            if matches!(fork.spring, ForkSpring::Coil { .. }) {
                fork.spring = healthy.set_up.fork.spring;
            }
        }
        RemedyId::ShockSpring => {
            (shock.rate, shock.preload) = (healthy.set_up.shock.rate, healthy.set_up.shock.preload);
        }
        RemedyId::FloatMidValve => float(condition, sound),
        RemedyId::RevalveFork => {
            condition.valving[0] = sound.valving[0];
            condition.valving[1] = sound.valving[1];
        }
        RemedyId::RevalveShock => {
            condition.valving[2] = sound.valving[2];
            condition.valving[3] = sound.valving[3];
            shock.reservoir = healthy.set_up.shock.reservoir;
            fresh_shock_oil(condition, sound);
        }
        RemedyId::ConvertToCoil => return converted(suits, now),
        RemedyId::ReplaceForkInternals => return new_internals(suits, now),
        RemedyId::ReplaceShock => {
            let binding = shock.wear.binding;
            *shock = healthy.set_up.shock;
            shock.wear.binding = binding;
            condition.valving[2] = sound.valving[2];
            condition.valving[3] = sound.valving[3];
            fresh_shock_oil(condition, sound);
        }
        // A reservoir that holds, or leaving the bike alone; the adjusters were turned above.
        _ => {}
    }
    after
}

/// The adjuster that a remedy turns, by its place in [`crate::bench::Clicks`], and which way: out 1, in −1.
const fn adjuster(id: RemedyId) -> Option<(usize, f64)> {
    Some(match id {
        RemedyId::OpenForkCompression => (0, 1.0),
        RemedyId::CloseForkCompression => (0, -1.0),
        RemedyId::OpenForkRebound => (1, 1.0),
        RemedyId::CloseForkRebound => (1, -1.0),
        RemedyId::OpenShockCompression => (2, 1.0),
        RemedyId::CloseShockCompression => (2, -1.0),
        RemedyId::OpenShockRebound => (3, 1.0),
        RemedyId::CloseShockRebound => (3, -1.0),
        _ => return None,
    })
}

/// The adjuster at `place` turned out (`way` 1) or in (−1): two clicks at a time for as long as its damping does not suit yet
/// and the adjuster has clicks left, and one such step where it does suit.
///
/// Clicks that the rider has told to be off may be what is amiss: turning them back takes that much of the fault away.
fn clicked(suits: &Suits, now: &Trial, place: usize, way: f64) -> Trial {
    let sound = suits.healthy.condition.valving[place];
    let share = now.condition.valving[place] / sound;
    let click = libm::log1p(CLICK.middle);
    let missing = way * libm::log(share) / click;
    let wanted = CLICKS_AT_A_TIME * (missing / CLICKS_AT_A_TIME).round().max(1.0);
    let (off, room) = suits.bench.adjuster(place, way > 0.0);
    let by = wanted.min(room);
    let back = if missing > 0.0 {
        (-way * off).clamp(0.0, by.max(0.0))
    } else {
        0.0
    };
    let mut after = suits.bench.moved(now, &[(place, way * (by - back))]);
    if back > 0.0 {
        let left = share * libm::exp(-way * back * click);
        // Within a click it suits.
        after.condition.valving[place] = if libm::log(left).abs() <= click {
            sound
        } else {
            sound * left
        };
    }
    after
}

/// Fresh oil without air in the fork.
fn fresh_oil(condition: &mut Condition, sound: &Condition) {
    condition.air.front = sound.air.front;
    condition.void_m.front = sound.void_m.front;
}

/// Fresh oil without air in the shock.
fn fresh_shock_oil(condition: &mut Condition, sound: &Condition) {
    condition.air.rear = sound.air.rear;
    condition.void_m.rear = sound.void_m.rear;
}

/// A mid-valve that floats, and no longer adds what it added without float.
fn float(condition: &mut Condition, sound: &Condition) {
    if condition.mid_valve != sound.mid_valve {
        condition.mid_valve = sound.mid_valve;
        condition.valving[0] = sound.valving[0];
    }
}

/// The coil springs that are in, with the preload that gives the sag aimed at, as far as practice accepts it.
fn respaced(suits: &Suits, now: ForkSpring) -> ForkSpring {
    let (ForkSpring::Coil { rate, springs, .. }, ForkSpring::Coil { rate: usual, .. }) =
        (now, suits.healthy.set_up.fork.spring)
    else {
        return now;
    };
    if rate == usual {
        return suits.healthy.set_up.fork.spring;
    }
    match fork_preload(suits.bench.situation(), rate) {
        Ok(wanted) => ForkSpring::Coil {
            rate,
            springs,
            preload: wanted.max(FORK_PRELOAD.low).min(FORK_PRELOAD.high),
        },
        Err(_) => now,
    }
}

/// One coil spring that sits the rider where the right gas pressure would, with a slippery finish, thin oil and fresh seals in
/// its leg, which does no damping. The other leg stays as it is.
fn converted(suits: &Suits, now: &Trial) -> Trial {
    let mut after = now.clone();
    if now.machine.fork != ForkKind::GasOneLeg {
        return after;
    }
    if let Some((kind, spring)) = suits.coil() {
        after.machine.fork = kind;
        after.machine.gas = suits.healthy.machine.gas;
        after.set_up.fork = ForkSet {
            spring,
            wear: Wear {
                binding: now.set_up.fork.wear.binding,
                slippery: true,
                ..Wear::FRESH
            },
            ..now.set_up.fork
        };
    }
    after
}

/// New internals with the right springs, a coil where there was gas, and fresh oil and seals. Tubes that bind stay.
fn new_internals(suits: &Suits, now: &Trial) -> Trial {
    let mut after = converted(suits, now);
    let (usual, sound) = (suits.healthy.set_up.fork, &suits.healthy.condition);
    let (fork, condition) = (&mut after.set_up.fork, &mut after.condition);
    if now.machine.fork != ForkKind::GasOneLeg {
        fork.spring = usual.spring;
    }
    fork.air_gap = usual.air_gap;
    fork.wear = Wear {
        binding: fork.wear.binding,
        slippery: fork.wear.slippery,
        ..Wear::FRESH
    };
    float(condition, sound);
    condition.valving[0] = sound.valving[0];
    condition.valving[1] = sound.valving[1];
    condition.fork_reservoir = sound.fork_reservoir;
    fresh_oil(condition, sound);
    after
}
