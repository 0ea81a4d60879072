//! One change for one lap, as it is made at the track.

use super::trials::{Bench, Trial};
use crate::bike::ForkSpring;
use crate::intake::Change;
use crate::units::{metre, pascal};

/// Clicks of one change: fewer are hardly felt, more spoil the lap. Common practice.
pub const CLICKS: i16 = 4;
/// Gas pressure of one change, Pa.
pub const GAS_PA: f64 = 0.5e5;
/// Shock preload of one change, m: a turn of the collar or so.
pub const PRELOAD_M: f64 = 2e-3;
/// Tyre pressure of one change, relative.
pub const TYRES: f64 = 0.10;
/// Way of the fork in its clamps of one change, m.
pub const CLAMPS_M: f64 = 5e-3;

impl Bench<'_> {
    /// A trial with one change made; `None` where it cannot be made, such as clicks that are not there.
    pub fn changed(&self, from: &Trial, change: Change) -> Option<Trial> {
        let clicks = |place: usize, by: i16| self.moved(from, &[(place, f64::from(by))]);
        let mut trial = match change {
            Change::ForkCompressionOpen => clicks(0, CLICKS),
            Change::ForkCompressionClose => clicks(0, -CLICKS),
            Change::ForkReboundOpen => clicks(1, CLICKS),
            Change::ForkReboundClose => clicks(1, -CLICKS),
            Change::ShockCompressionOpen => clicks(2, CLICKS),
            Change::ShockCompressionClose => clicks(2, -CLICKS),
            Change::ShockReboundOpen => clicks(3, CLICKS),
            Change::ShockReboundClose => clicks(3, -CLICKS),
            _ => from.clone(),
        };
        match change {
            Change::ForkGasLess => gas(&mut trial, -GAS_PA),
            Change::ForkGasMore => gas(&mut trial, GAS_PA),
            Change::ShockPreloadLess => preload(&mut trial, -PRELOAD_M),
            Change::ShockPreloadMore => preload(&mut trial, PRELOAD_M),
            Change::TyresLess => {
                let tyres = &mut trial.condition.tyres;
                *tyres = tyres.map(|share| share * (1.0 - TYRES));
            }
            Change::ForkUp => trial.condition.raised_m -= CLAMPS_M,
            Change::ForkDown => trial.condition.raised_m += CLAMPS_M,
            _ => {}
        }
        (trial != *from).then_some(trial)
    }
}

fn gas(trial: &mut Trial, by_pa: f64) {
    if let ForkSpring::Gas { charge } = &mut trial.set_up.fork.spring {
        *charge = (*charge + pascal(by_pa)).max(pascal(0.3e5));
    }
}

fn preload(trial: &mut Trial, by_m: f64) {
    let preload = &mut trial.set_up.shock.preload;
    *preload = (*preload + metre(by_m)).max(metre(0.0));
}
