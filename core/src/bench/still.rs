//! What can be told of a trial without riding it: where it sits, what it takes to move it, how much it damps.

use super::trials::{Bench, Trial};
use crate::bike::ForkSpring;
use crate::bike::atmosphere::gauge_after;
use crate::bike::damping::DamperLaw;
use crate::bike::damping::design::LOW_SPEED;
use crate::bike::shock::Shock;
use crate::feel::Ends;
use crate::ride::RideError;
use crate::stance::wanted::Case;
use crate::stance::{Pitch, breakaway, settle};

/// A trial standing still.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Still {
    /// Sag of the bike alone, middle of the friction band: along the leg, at the rear axle, m.
    pub free_m: Ends<f64>,
    /// Sag with the rider, middle of the friction band, m.
    pub ridden_m: Ends<f64>,
    /// Nose-up attitude with the rider, where the fork sits in its clamps included, rad.
    pub nose_up_rad: f64,
    /// Force that starts the fork at ride height, along the leg, and friction at the rear axle, N.
    pub breakaway_n: Ends<f64>,
    /// Force that starts the fork off its top-out, along the leg, N.
    pub off_top_out_n: f64,
    /// Force at low speed over that speed, void not counted: fork compression, fork rebound, shock compression, shock
    /// rebound, each along the leg or at the shaft, N s/m.
    pub damping_n_s_per_m: [f64; 4],
    /// Void that each stroke has to close, m.
    pub void_m: Ends<f64>,
    /// What a gauge would read on the fork today, Pa; `None` for coil.
    pub gauge_pa: Option<f64>,
}

impl Still {
    /// Looks at a trial.
    ///
    /// # Errors
    /// When it does not come to rest or cannot be put together.
    pub fn of(bench: &Bench, trial: &Trial) -> Result<Self, RideError> {
        let Trial {
            machine,
            set_up,
            air,
            condition,
            ..
        } = trial;
        let load = &bench.situation().load;
        let stance = settle(machine, load, set_up, air)?;
        let start = breakaway(&Case {
            machine,
            load,
            set_up,
            surroundings: air,
            pitch: Pitch::OtherAsSet,
        })?;
        let shock = Shock::build(machine, &set_up.shock, air);
        let rear_m = stance.ridden.rear.middle.value;
        let laws = bench.laws(trial)?;
        let shaft_speed = LOW_SPEED * machine.leverage.ratio(rear_m);
        let [fork_in, fork_out] = coefficients(&laws.front, LOW_SPEED);
        let [shock_in, shock_out] = coefficients(&laws.rear, shaft_speed);
        Ok(Self {
            free_m: Ends {
                front: stance.free.fork.middle.value,
                rear: stance.free.rear.middle.value,
            },
            ridden_m: Ends {
                front: stance.ridden.fork.middle.value,
                rear: rear_m,
            },
            nose_up_rad: stance.ridden.pitch.value
                + condition.raised_m / machine.class.wheelbase.value,
            breakaway_n: Ends {
                front: start.at_ride_height.value,
                rear: shock.friction_n(rear_m),
            },
            off_top_out_n: start.off_top_out.value,
            damping_n_s_per_m: [fork_in, fork_out, shock_in, shock_out],
            void_m: bench.voids_m(trial)?,
            gauge_pa: match set_up.fork.spring {
                ForkSpring::Gas { charge } => {
                    Some(gauge_after(charge, air.filled, air.riding).value)
                }
                ForkSpring::Coil { .. } => None,
            },
        })
    }
}

/// Compression and rebound at a speed in m/s with the plate of the mid-valve arrived, N s/m.
fn coefficients(law: &DamperLaw, speed: f64) -> [f64; 2] {
    [
        law.force_n(speed, law.float_m) / speed,
        law.force_n(-speed, 0.0) / -speed,
    ]
}
