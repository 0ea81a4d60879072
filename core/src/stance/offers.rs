//! What the nearest springs on sale give.

use super::error::StanceError;
use super::settle::{Pitch, Stance, settle, settle_level};
use super::wanted::Case;
use crate::bike::{ForkSet, ForkSpring, SetUp, ShockSet};
use crate::units::{SpringRate, newton_per_m};

/// A spring that can be bought, and where the bike sits on it with nothing else changed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer {
    /// Its rate, N/m.
    pub rate: SpringRate,
    /// Where the bike sits.
    pub stance: Stance,
}

/// The whole steps just below (or at) and just above a rate.
pub fn steps_around(rate: SpringRate, step: SpringRate) -> [SpringRate; 2] {
    let below = (rate.value / step.value).floor();
    [
        newton_per_m(below * step.value),
        newton_per_m((below + 1.0) * step.value),
    ]
}

/// The fork springs just below and just above a rate, in steps sold, with preload and all else as set.
pub fn fork_rates_near(
    case: &Case,
    rate: SpringRate,
    step: SpringRate,
) -> Result<[Offer; 2], StanceError> {
    let [below, above] = steps_around(rate, step);
    let offer = |rate| {
        let spring = match case.set_up.fork.spring {
            ForkSpring::Coil {
                springs, preload, ..
            } => ForkSpring::Coil {
                rate,
                springs,
                preload,
            },
            gas @ ForkSpring::Gas { .. } => gas,
        };
        let set_up = SetUp {
            fork: ForkSet {
                spring,
                ..case.set_up.fork
            },
            ..*case.set_up
        };
        case.offer(rate, &set_up)
    };
    Ok([offer(below)?, offer(above)?])
}

/// The shock springs just below and just above a rate, in steps sold, with preload and all else as set.
pub fn shock_rates_near(
    case: &Case,
    rate: SpringRate,
    step: SpringRate,
) -> Result<[Offer; 2], StanceError> {
    let [below, above] = steps_around(rate, step);
    let offer = |rate| {
        let set_up = SetUp {
            shock: ShockSet {
                rate,
                ..case.set_up.shock
            },
            ..*case.set_up
        };
        case.offer(rate, &set_up)
    };
    Ok([offer(below)?, offer(above)?])
}

impl Case<'_> {
    fn offer(&self, rate: SpringRate, set_up: &SetUp) -> Result<Offer, StanceError> {
        let settle = match self.pitch {
            Pitch::Level => settle_level,
            Pitch::OtherAt(_) | Pitch::OtherAsSet => settle,
        };
        let stance = settle(self.machine, self.load, set_up, self.surroundings)?;
        Ok(Offer { rate, stance })
    }
}
