//! From a bike with its set-up to the figures of its motion.

use super::bike::Candidate;
use super::error::RideError;
use super::parts::Parts;
use crate::bike::Tyre;
use crate::bike::fork::Fork;
use crate::bike::gas::Law;
use crate::bike::shock::Shock;
use crate::stance::loads::Weights;
use crate::stance::{Stance, settle};
use crate::units::{Force, STANDARD_GRAVITY};

/// Way by which the fork's friction element gives before it slips, m (from memory: a few tenths of a millimetre).
const FORK_GIVE_M: f64 = 0.3e-3;
/// The same at the rear axle, m: about 0.3 mm at the shaft.
const REAR_GIVE_M: f64 = 0.8e-3;
/// Stiffness of what is beyond full travel, metal on metal through everything it is bolted to, N/m (from memory).
pub(super) const METAL_N_PER_M: f64 = 400e3;
/// Slope of the line from the rear contact to the swingarm's pivot: pull of the rear brake on the rear per newton of
/// braking (from memory: pivot at 0.36 m, 0.6 m ahead of the axle).
const BRAKE_LINE: f64 = 0.6;
/// Push of the chain on the rear per newton of drive (from memory: about what keeps the rear level).
const CHAIN_LINE: f64 = 0.5;
/// Share of the braking that a rider gives to the front (common practice).
const FRONT_BRAKE_SHARE: f64 = 0.7;
/// Grip of a knobbly tyre on soil, friction coefficient (from memory).
const GRIP: f64 = 0.9;
/// Radius of gyration of the sprung mass in pitch, as a share of the wheelbase (common practice).
const GYRATION: f64 = 0.45;
/// Place of the grips behind the front axle, as a share of the wheelbase (from memory).
const GRIPS_BEHIND: f64 = 0.36;
/// Height of the grips over the ground, share of the wheelbase (from memory: 1.1 m of 1.485 m).
const GRIPS_HEIGHT: f64 = 0.74;
/// Height of the pegs over the ground, share of the wheelbase (from memory: 0.42 m of 1.485 m).
const PEGS_HEIGHT: f64 = 0.28;

/// One set-up before it is put beside others.
pub(super) struct PutTogether {
    pub(super) parts: Parts<f64>,
    pub(super) fork: Fork,
    shock: Shock,
    pub(super) wheelbase_m: f64,
}

impl PutTogether {
    pub(super) fn of(candidate: &Candidate) -> Result<Self, RideError> {
        let Candidate {
            machine,
            load,
            set_up,
            surroundings,
            tyres,
            rider,
            ..
        } = *candidate;
        let stance = settle(machine, load, set_up, surroundings)?;
        let fork = Fork::build(machine, &set_up.fork, surroundings);
        let shock = Shock::build(machine, &set_up.shock, surroundings);
        let class = machine.class;
        let wheelbase_m = class.wheelbase.value;
        let (alone, ridden) = (
            Weights::of(machine, load, false),
            Weights::of(machine, load, true),
        );
        let mass = |n: f64| n / STANDARD_GRAVITY;
        let sprung_kg = mass(alone.front_level_n + alone.rear_level_n);
        let front_share = mass(alone.front_level_n) / sprung_kg;
        let front_ahead_m = wheelbase_m * (1.0 - front_share);
        let rider_kg = load.rider.value;
        let leg_rad_s = 2.0 * core::f64::consts::PI * rider.leg_hz;
        let (front_kg, rear_kg) = (class.unsprung_front.value, class.unsprung_rear.value);
        let (ratio_late, ratio_rise) = (
            machine.leverage.late,
            machine.leverage.bottom - machine.leverage.top,
        );
        let travel_m = machine.leverage.travel_m;
        let fork_m = stance.ridden.fork.middle.value;
        let rear_m = stance.ridden.rear.middle.value;
        let side_n = 1000.0;
        let across = fork.friction_n(0.0, side_n / fork.sin_rake * fork.cos_rake)
            - fork.friction_n(0.0, 0.0);
        let heights = Heights::of(
            &fork,
            &stance,
            wheelbase_m,
            &alone,
            &ridden,
            sprung_kg,
            rider_kg,
        );
        let radius_m = 0.5 * (tyres.front.radius.value + tyres.rear.radius.value);
        let total_kg = sprung_kg + rider_kg + front_kg + rear_kg;
        let sunk_m = |kg: f64, load: Force, tyre: &Tyre| {
            (load.value + kg * STANDARD_GRAVITY) / tyre.rate.value
        };
        let tyre_pitch_rad = (sunk_m(rear_kg, stance.ridden.rear_load, &tyres.rear)
            - sunk_m(front_kg, stance.ridden.front_load, &tyres.front))
            / wheelbase_m;
        let parts = Parts {
            sprung_kg,
            pitch_kg_m2: sprung_kg * GYRATION * wheelbase_m * GYRATION * wheelbase_m,
            front_kg,
            rear_kg,
            rider_kg,
            front_ahead_m,
            rear_behind_m: wheelbase_m - front_ahead_m,
            body_ahead_m: front_ahead_m - wheelbase_m * (1.0 - load.rider_front_share),
            grips_ahead_m: front_ahead_m - wheelbase_m * GRIPS_BEHIND,
            pegs_above_m: wheelbase_m * PEGS_HEIGHT - heights.sprung_m,
            grips_above_m: wheelbase_m * GRIPS_HEIGHT - heights.sprung_m,
            per_cos: 1.0 / fork.cos_rake,
            tan: fork.sin_rake / fork.cos_rake,
            ratio: [
                machine.leverage.top + ratio_rise * ratio_late / 6.0,
                ratio_rise * (1.0 - ratio_late) / travel_m,
                ratio_rise * ratio_late / (travel_m * travel_m),
            ],
            tyre_n_per_m: [tyres.front.rate.value, tyres.rear.rate.value],
            tyre_n_s_per_m: [tyres.front.damping.value, tyres.rear.damping.value],
            friction_n_per_m: [
                fork.friction_n(fork_m, 0.0) / FORK_GIVE_M,
                shock.friction_n(rear_m) / REAR_GIVE_M,
            ],
            side_friction: across / side_n,
            shaft_friction_n: shock.friction_n(rear_m) / machine.leverage.ratio(rear_m),
            leg: [
                rider_kg * leg_rad_s * leg_rad_s,
                2.0 * rider.leg_ratio * rider_kg * leg_rad_s,
                rider.pull_share * rider_kg * STANDARD_GRAVITY,
            ],
            arm: [rider.arm_n_per_m, rider.arm_n_s_per_m],
            hold: [
                rider.pitch_n_m_per_rad,
                rider.pitch_n_m_s_per_rad,
                rider.most_pitch_n_m,
            ],
            height_m: ridden.shift_n_per_rad * wheelbase_m
                / (ridden.front_level_n + ridden.rear_level_n),
            transfer_kg_m: sprung_kg * heights.sprung_m
                + rider_kg * heights.rider_m
                + (front_kg + rear_kg) * radius_m,
            total_kg,
            front_brake: FRONT_BRAKE_SHARE,
            lines: [BRAKE_LINE, CHAIN_LINE],
            grip: GRIP,
            travel_m: [fork.stops.stroke_m, travel_m],
            bump_n: [fork.stops.bump_n, shock.stops.bump_n],
            shock_stroke_m: shock.stops.stroke_m,
            rest_m: [fork_m, rear_m],
            rest_pitch_rad: stance.ridden.pitch.value + tyre_pitch_rad,
            tyre_pitch_rad,
            rest_n: [
                stance.ridden.front_load.value,
                stance.ridden.rear_load.value,
            ],
        };
        Ok(Self {
            parts,
            fork,
            shock,
            wheelbase_m,
        })
    }

    /// Along the leg: quick strokes from ride height, stops, and metal beyond full stroke.
    pub(super) fn fork_n(&self, stroke_m: f64) -> f64 {
        let from_m = self.parts.rest_m[0];
        let beyond_m = (stroke_m - self.parts.travel_m[0]).max(0.0);
        self.fork.force_n(stroke_m, Law::Quick { from_m }) + METAL_N_PER_M * beyond_m
    }

    /// The same at the rear axle.
    pub(super) fn rear_n(&self, travel_m: f64) -> f64 {
        let from_m = self.parts.rest_m[1];
        let beyond_m = (travel_m - self.parts.travel_m[1]).max(0.0);
        self.shock.wheel_n(travel_m, Law::Quick { from_m }) + METAL_N_PER_M * beyond_m
    }
}

/// Heights of the masses over the ground at ride height, m.
struct Heights {
    sprung_m: f64,
    rider_m: f64,
}

impl Heights {
    /// From those of the fully extended bike, which [`Weights`] holds, less the mean drop of both ends.
    fn of(
        fork: &Fork,
        stance: &Stance,
        wheelbase_m: f64,
        alone: &Weights,
        ridden: &Weights,
        sprung_kg: f64,
        rider_kg: f64,
    ) -> Self {
        let rest = &stance.ridden;
        let drop_m = 0.5 * (fork.drop_m(rest.fork.middle.value) + rest.rear.middle.value);
        let moment_kg_m =
            |weights: &Weights| weights.shift_n_per_rad * wheelbase_m / STANDARD_GRAVITY;
        Self {
            sprung_m: moment_kg_m(alone) / sprung_kg - drop_m,
            rider_m: (moment_kg_m(ridden) - moment_kg_m(alone)) / rider_kg - drop_m,
        }
    }
}
