//! Masses, lengths and coefficients of the motion.

use crate::lane::Lane;

/// Masses, lengths and coefficients of the motion, in SI, one figure per lane.
///
/// Distances ahead are from the centre of the sprung mass, forward. With D the deceleration that the limited tyre forces give, the forces of the motion are,
/// upward on the sprung mass: at the front F / cos e − (`B_f` − `m_f` D) tan e, from a wheel that moves back along the rake e
/// while it is braked by `B_f`; at the rear `W` − (`B_r` − `m_r` D) κ, where κ is the slope of the line from the contact to the
/// point about which brake or chain pull.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parts<T> {
    /// Sprung mass of the bike, kg.
    pub sprung_kg: T,
    /// Its moment of inertia in pitch, kg m².
    pub pitch_kg_m2: T,
    /// Front wheel with all that moves with it, kg.
    pub front_kg: T,
    /// Rear wheel with all that moves with it, kg.
    pub rear_kg: T,
    /// Rider with gear, kg.
    pub rider_kg: T,
    /// Front axle ahead, m.
    pub front_ahead_m: T,
    /// Rear axle behind, m.
    pub rear_behind_m: T,
    /// Where legs and seat carry the rider, ahead, m.
    pub body_ahead_m: T,
    /// Grips ahead, m.
    pub grips_ahead_m: T,
    /// Pegs above the centre of the sprung mass, m.
    pub pegs_above_m: T,
    /// Grips above the same, m.
    pub grips_above_m: T,
    /// 1 / cos(rake).
    pub per_cos: T,
    /// tan(rake).
    pub tan: T,
    /// Motion ratio of the rear as a polynomial of axle travel: constant, 1/m, 1/m².
    pub ratio: [T; 3],
    /// Tyre rates, front and rear, N/m.
    pub tyre_n_per_m: [T; 2],
    /// Tyre damping, front and rear, N s/m.
    pub tyre_n_s_per_m: [T; 2],
    /// Stiffness of the friction elements, fork along the leg and rear at the axle, N/m.
    pub friction_n_per_m: [T; 2],
    /// Friction of the fork for each newton across its legs, dimensionless.
    pub side_friction: T,
    /// Friction of the shock at its shaft, N.
    pub shaft_friction_n: T,
    /// Legs: N/m, N s/m, and the most they pull, N.
    pub leg: [T; 3],
    /// Arms: N/m and N s/m.
    pub arm: [T; 2],
    /// The rider against pitch: N m/rad, N m s/rad, and the most, N m.
    pub hold: [T; 3],
    /// Height of the centre of all that the springs carry, over the ground with the bike extended, as the stance has it, m.
    pub height_m: T,
    /// Nose-down moment for each m/s² of braking: the Σ m h of the loaded bike, kg m.
    pub transfer_kg_m: T,
    /// All the mass, kg.
    pub total_kg: T,
    /// Share of braking on the front, dimensionless.
    pub front_brake: T,
    /// Slopes at the rear: of the brake's line, of the chain's.
    pub lines: [T; 2],
    /// Grip of the tyres, dimensionless.
    pub grip: T,
    /// Stroke of the fork, m, and travel of the rear, m.
    pub travel_m: [T; 2],
    /// Force of the bump stops at full travel, fork along the leg, shock at its shaft, N.
    pub bump_n: [T; 2],
    /// Shock stroke at full travel, m.
    pub shock_stroke_m: T,
    /// At rest with the rider: fork stroke, rear travel, m.
    pub rest_m: [T; 2],
    /// At rest: pitch, rad.
    pub rest_pitch_rad: T,
    /// The share of it that comes from the tyres, from which the stance, which knows no tyres, does not count, rad.
    pub tyre_pitch_rad: T,
    /// At rest: loads on the springs, front and rear, vertical, N.
    pub rest_n: [T; 2],
}

impl<T: Lane> Parts<T> {
    /// Those of several bikes side by side.
    pub(super) fn row<'a>(of: impl Fn(usize) -> &'a Parts<f64>) -> Self {
        Self {
            sprung_kg: T::from_lanes(|lane| of(lane).sprung_kg),
            pitch_kg_m2: T::from_lanes(|lane| of(lane).pitch_kg_m2),
            front_kg: T::from_lanes(|lane| of(lane).front_kg),
            rear_kg: T::from_lanes(|lane| of(lane).rear_kg),
            rider_kg: T::from_lanes(|lane| of(lane).rider_kg),
            front_ahead_m: T::from_lanes(|lane| of(lane).front_ahead_m),
            rear_behind_m: T::from_lanes(|lane| of(lane).rear_behind_m),
            body_ahead_m: T::from_lanes(|lane| of(lane).body_ahead_m),
            grips_ahead_m: T::from_lanes(|lane| of(lane).grips_ahead_m),
            pegs_above_m: T::from_lanes(|lane| of(lane).pegs_above_m),
            grips_above_m: T::from_lanes(|lane| of(lane).grips_above_m),
            per_cos: T::from_lanes(|lane| of(lane).per_cos),
            tan: T::from_lanes(|lane| of(lane).tan),
            ratio: several(|lane| of(lane).ratio),
            tyre_n_per_m: several(|lane| of(lane).tyre_n_per_m),
            tyre_n_s_per_m: several(|lane| of(lane).tyre_n_s_per_m),
            friction_n_per_m: several(|lane| of(lane).friction_n_per_m),
            side_friction: T::from_lanes(|lane| of(lane).side_friction),
            shaft_friction_n: T::from_lanes(|lane| of(lane).shaft_friction_n),
            leg: several(|lane| of(lane).leg),
            arm: several(|lane| of(lane).arm),
            hold: several(|lane| of(lane).hold),
            height_m: T::from_lanes(|lane| of(lane).height_m),
            transfer_kg_m: T::from_lanes(|lane| of(lane).transfer_kg_m),
            total_kg: T::from_lanes(|lane| of(lane).total_kg),
            front_brake: T::from_lanes(|lane| of(lane).front_brake),
            lines: several(|lane| of(lane).lines),
            grip: T::from_lanes(|lane| of(lane).grip),
            travel_m: several(|lane| of(lane).travel_m),
            bump_n: several(|lane| of(lane).bump_n),
            shock_stroke_m: T::from_lanes(|lane| of(lane).shock_stroke_m),
            rest_m: several(|lane| of(lane).rest_m),
            tyre_pitch_rad: T::from_lanes(|lane| of(lane).tyre_pitch_rad),
            rest_pitch_rad: T::from_lanes(|lane| of(lane).rest_pitch_rad),
            rest_n: several(|lane| of(lane).rest_n),
        }
    }
}

fn several<T: Lane, const N: usize>(of: impl Fn(usize) -> [f64; N]) -> [T; N] {
    core::array::from_fn(|i| T::from_lanes(|lane| of(lane)[i]))
}
