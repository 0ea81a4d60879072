//! The dampers of a trial: sized for what its condition asks for, with the oil and the voids it has.

use super::trials::{Bench, Trial};
use crate::bike::damping::design::USUAL_OIL;
use crate::bike::damping::{Damper, DamperLaw, Hardware, Wanted};
use crate::bike::gas::Law;
use crate::bike::limits::OutOfRange;
use crate::bike::shock::Shock;
use crate::feel::Ends;
use crate::units::BAR_IN_PA;

/// Speed of the axle in a hard hit, at which the pressure inside a damper must hold, m/s.
const HARD_HIT_M_S: f64 = 3.0;
/// Void that a damper is left with at the reversal for each pascal of pressure missing in a hard hit, m (from memory: some
/// 2 mm per bar).
const VOID_M_PER_PA: f64 = 2e-3 / BAR_IN_PA;

impl Bench<'_> {
    /// Both dampers of a trial.
    ///
    /// # Errors
    /// When the damping its condition asks for is beyond what a damper can be sized for.
    pub fn dampers(&self, trial: &Trial) -> Result<Ends<Damper>, OutOfRange> {
        let condition = &trial.condition;
        let sized = |(hardware, wanted): &(Hardware, Wanted), [into, out]: [f64; 2]| {
            let wanted = Wanted {
                compression: wanted.compression * into,
                rebound: wanted.rebound * out,
                ..*wanted
            };
            (*hardware, wanted)
        };
        let [fork_in, fork_out, shock_in, shock_out] = condition.valving;
        let (mut hardware, wanted) = sized(&self.fork, [fork_in, fork_out]);
        if let Some(shares) = condition.mid_valve {
            (hardware.mid_low, hardware.mid_high) = (shares.low_speed, shares.hard_hit);
            hardware.floats = false;
        }
        hardware.reservoir = hardware.reservoir.holding(condition.fork_reservoir);
        let mut fork = Damper::for_targets(&hardware, &wanted)?;
        let (mut hardware, wanted) = sized(&self.shock, [shock_in, shock_out]);
        let built = Shock::build(&trial.machine, &trial.set_up.shock, &trial.air);
        hardware.reservoir = Hardware::shock(&trial.machine, &built, 0.0).reservoir;
        let mut shock = Damper::for_targets(&hardware, &wanted)?;
        let [fork_in, fork_out, shock_in, shock_out] = trial.clicks.map(f64::from);
        (fork.base.clicks, fork.rebound.clicks) = (fork_in, fork_out);
        (shock.base.clicks, shock.rebound.clicks) = (shock_in, shock_out);
        fork.oil = fork.oil.with_air(condition.air.front);
        shock.oil = shock.oil.with_air(condition.air.rear);
        Ok(Ends {
            front: fork,
            rear: shock,
        })
    }

    /// Void that each stroke of either damper has to close, m along the leg and at the shaft: what is known of its
    /// condition, and what oil that boils in a hard hit leaves.
    pub fn voids_m(&self, trial: &Trial) -> Result<Ends<f64>, OutOfRange> {
        Self::voids_of(trial, &self.dampers(trial)?)
    }

    fn voids_of(trial: &Trial, dampers: &Ends<Damper>) -> Result<Ends<f64>, OutOfRange> {
        let [front, rear] = margins_pa(dampers)?;
        let boiled = |margin_pa: f64| VOID_M_PER_PA * (-margin_pa).max(0.0);
        let known = trial.condition.void_m;
        Ok(Ends {
            front: known.front + boiled(front),
            rear: known.rear + boiled(rear),
        })
    }

    /// What a ride computes of both dampers, voids in them included.
    pub fn laws(&self, trial: &Trial) -> Result<Ends<DamperLaw>, OutOfRange> {
        let dampers = self.dampers(trial)?;
        let void = Self::voids_of(trial, &dampers)?;
        Ok(Ends {
            front: dampers.front.law(USUAL_OIL)?.with_void(void.front),
            rear: dampers.rear.law(USUAL_OIL)?.with_void(void.rear),
        })
    }

    /// Lowest pressure above vapour in either damper in a hard hit, both ways, Pa.
    ///
    /// # Errors
    /// As [`Self::dampers`].
    pub fn margin_pa(&self, trial: &Trial) -> Result<f64, OutOfRange> {
        let [front, rear] = margins_pa(&self.dampers(trial)?)?;
        Ok(front.min(rear))
    }
}

/// Lowest pressure above vapour in each damper in a hard hit, both ways, front and rear, Pa.
fn margins_pa(dampers: &Ends<Damper>) -> Result<[f64; 2], OutOfRange> {
    let one = |damper: &Damper, speed: f64| {
        let law = damper.law(USUAL_OIL)?;
        let at = |speed| {
            damper
                .cavitation_margin(&law, 0.0, speed, law.float_m, Law::Slow)
                .value
        };
        Ok(at(speed).min(at(-speed)))
    };
    Ok([
        one(&dampers.front, HARD_HIT_M_S)?,
        one(&dampers.rear, 0.4 * HARD_HIT_M_S)?,
    ])
}
