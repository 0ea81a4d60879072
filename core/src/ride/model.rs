//! The equations of motion.

use super::bike::Bike;
use super::friction;
use crate::lane::Lane;
use crate::units::STANDARD_GRAVITY;

/// How many heights and angles move: sprung mass up, its pitch, front wheel up, rear wheel up, rider up.
pub const FREEDOMS: usize = 5;

/// Compression of a tyre over which its damping comes in, m: a tyre that just touches has no footprint yet (from memory).
const FOOTPRINT_M: f64 = 0.005;

/// Where everything is and how fast it moves.
///
/// Heights in m are from where they are with the bike level, fully extended, its tyres just touching level ground at height zero; the rider's from where
/// the legs carry nothing then. Pitch in rad, nose up. Rates in m/s and rad/s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State<T> {
    /// Sprung mass, pitch, front wheel, rear wheel, rider.
    pub place: [T; FREEDOMS],
    /// Their rates.
    pub rate: [T; FREEDOMS],
}

/// What moves with friction and the plates of the mid-valves, which depend on the way they came.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held<T> {
    /// Fork stroke and rear travel at the start of the step, m.
    pub travel_m: [T; 2],
    /// Bend of the friction elements then, m.
    pub bent_m: [T; 2],
    /// Bend at which they slip, m.
    pub limit_m: [T; 2],
    /// Where the plates of the mid-valves stood then, m of stroke of fork and shock.
    pub float_m: [T; 2],
}

/// The course at one moment. It is the same for all lanes but for the height of the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment<T> {
    /// Height of the ground under front and rear wheel, m.
    pub ground_m: [T; 2],
    /// Its rate as the wheels roll over it, m/s.
    pub ground_m_per_s: [T; 2],
    /// Lie of the ground, which the rider follows, as a pitch, rad, and its rate, rad/s.
    pub lie: [T; 2],
    /// Deceleration asked for, m/s²; negative when driving.
    pub braking_m_per_s2: f64,
    /// Factor on the tyres' damping.
    pub tyre_damping: f64,
}

/// Everything that follows from a state at a moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion<T> {
    /// Accelerations of the five, m/s² and rad/s².
    pub acceleration: [T; FREEDOMS],
    /// Fork stroke along the leg and rear axle travel, m.
    pub travel_m: [T; 2],
    /// Their rates, m/s.
    pub travel_m_per_s: [T; 2],
    /// Loads of the tyres, N.
    pub load_n: [T; 2],
    /// Force across the fork legs, N.
    pub side_n: T,
    /// Bend of the friction elements, m.
    pub bent_m: [T; 2],
    /// Where the plates of the mid-valves stand, m.
    pub float_m: [T; 2],
    /// Deceleration that the tyres can give, m/s².
    pub braking_m_per_s2: T,
}

impl<T: Lane> Bike<T> {
    /// Horizontal distance of the front and the rear axle from the centre of mass at a pitch, m: a bike on its hind wheel has its weight over it.
    #[inline]
    fn arms_m(&self, pitch: T) -> [T; 2] {
        let p = &self.parts;
        let back = p.height_m * (pitch - p.tyre_pitch_rad);
        [p.front_ahead_m + back, p.rear_behind_m - back]
    }

    /// How much the sprung mass is lifted by a pitch, m: the second-order part, of which [`Self::arms_m`] are the slopes.
    #[inline]
    pub(super) fn lift_m(&self, pitch: T) -> T {
        let p = &self.parts;
        let from_rest = pitch - p.tyre_pitch_rad;
        T::splat(0.5) * p.height_m * from_rest * from_rest
    }

    /// Fork stroke along the leg and rear axle travel, m.
    #[inline]
    pub fn travels_m(&self, [sprung, pitch, front, rear, _]: [T; FREEDOMS]) -> [T; 2] {
        let p = &self.parts;
        let over = sprung + self.lift_m(pitch);
        let fork = (front - over - p.front_ahead_m * pitch) * p.per_cos;
        [fork, rear - over + p.rear_behind_m * pitch]
    }

    /// Their rates, m/s.
    #[inline]
    pub fn travels_m_per_s(&self, state: &State<T>) -> [T; 2] {
        let [front_arm, rear_arm] = self.arms_m(state.place[1]);
        let [sprung, pitch, front, rear, _] = state.rate;
        let fork = (front - sprung - front_arm * pitch) * self.parts.per_cos;
        [fork, rear - sprung + rear_arm * pitch]
    }

    /// Accelerations and forces of a state at a moment.
    #[inline]
    pub fn motion(&self, state: &State<T>, held: &Held<T>, moment: &Moment<T>) -> Motion<T> {
        let p = &self.parts;
        let gravity = T::splat(STANDARD_GRAVITY);
        let zero = T::splat(0.0);
        let [sprung, pitch, front, rear, rider] = state.place;
        let [sprung_v, pitch_v, front_v, rear_v, rider_v] = state.rate;

        let [stroke, travel] = self.travels_m(state.place);
        let [stroke_v, travel_v] = self.travels_m_per_s(state);

        let soft = T::splat(moment.tyre_damping);
        let load_n = [
            self.tyre_n(
                0,
                moment.ground_m[0] - front,
                soft * (moment.ground_m_per_s[0] - front_v),
            ),
            self.tyre_n(
                1,
                moment.ground_m[1] - rear,
                soft * (moment.ground_m_per_s[1] - rear_v),
            ),
        ];
        let drag_n = self.drag_n(load_n, moment.braking_m_per_s2);
        let braking = (drag_n[0] + drag_n[1]) / p.total_kg;

        // Friction and mid-valve plates go on from where they stood.
        let moved = [stroke - held.travel_m[0], travel - held.travel_m[1]];
        let bent_m = [
            friction::bent_m(held.bent_m[0], moved[0], held.limit_m[0]),
            friction::bent_m(held.bent_m[1], moved[1], held.limit_m[1]),
        ];
        let ratio = self.ratio(travel);
        let one = T::splat(1.0);
        let float_m = [
            self.fork_damper.float_after(held.float_m[0], moved[0], one),
            self.shock_damper
                .float_after(held.float_m[1], moved[1] * ratio, one),
        ];

        let fork_n = self.fork.at(stroke)
            + self.fork_damper.force_n(stroke_v, float_m[0])
            + p.friction_n_per_m[0] * bent_m[0];
        let shock_n = self.shock_damper.force_n(travel_v * ratio, float_m[1]);
        let rear_n = self.rear.at(travel) + ratio * shock_n + p.friction_n_per_m[1] * bent_m[1];
        let line = if moment.braking_m_per_s2 < 0.0 {
            p.lines[1]
        } else {
            p.lines[0]
        };
        let front_up = fork_n * p.per_cos - (drag_n[0] - p.front_kg * braking) * p.tan;
        let rear_up = rear_n - (drag_n[1] - p.rear_kg * braking) * line;

        let squat = sprung + p.body_ahead_m * pitch - rider;
        let squat_v = sprung_v + p.body_ahead_m * pitch_v - rider_v;
        let leg_n = (p.leg[0] * squat + p.leg[1] * squat_v).greater(-p.leg[2]);
        // At rest the arms carry nothing: the legs are then squeezed by the rider's weight alone.
        let lean = p.grips_ahead_m - p.body_ahead_m;
        let arm_n = p.arm[0] * (squat - self.squat_at_rest_m() + lean * (pitch - p.rest_pitch_rad))
            + p.arm[1] * (squat_v + lean * pitch_v);
        let hold_n_m = (p.hold[0] * (pitch - p.rest_pitch_rad - moment.lie[0])
            + p.hold[1] * (pitch_v - moment.lie[1]))
            .between(-p.hold[2], p.hold[2]);

        let [front_arm, rear_arm] = self.arms_m(pitch);
        let turn_n_m = front_arm * front_up
            - rear_arm * rear_up
            - p.body_ahead_m * leg_n
            - p.grips_ahead_m * arm_n
            - p.transfer_kg_m * braking
            - hold_n_m;
        // Across the legs presses what is left of the tyre's force: N sin e − B cos e.
        let side_n = (load_n[0] * p.tan - (drag_n[0] - p.front_kg * braking)) / p.per_cos;
        Motion {
            acceleration: [
                (front_up + rear_up - leg_n - arm_n) / p.sprung_kg - gravity,
                turn_n_m / p.pitch_kg_m2,
                (load_n[0] - front_up) / p.front_kg - gravity,
                (load_n[1] - rear_up) / p.rear_kg - gravity,
                (leg_n + arm_n) / p.rider_kg - gravity,
            ],
            travel_m: [stroke, travel],
            travel_m_per_s: [stroke_v, travel_v],
            load_n,
            side_n: side_n.greater(zero - side_n),
            bent_m,
            float_m,
            braking_m_per_s2: braking,
        }
    }

    /// Load of the front (0) or rear (1) tyre: it pushes, never pulls, and damps as far as it has a footprint.
    #[inline]
    fn tyre_n(&self, end: usize, squeezed_m: T, squeezed_m_per_s: T) -> T {
        let zero = T::splat(0.0);
        let into = squeezed_m.greater(zero);
        let footprint = (into * T::splat(1.0 / FOOTPRINT_M)).lesser(T::splat(1.0));
        let damping_n = self.parts.tyre_n_s_per_m[end] * squeezed_m_per_s * footprint;
        (self.parts.tyre_n_per_m[end] * into + damping_n).greater(zero)
    }

    /// Forces with which the tyres hold the bike back, N: what was asked for, as far as there is grip.
    #[inline]
    fn drag_n(&self, load_n: [T; 2], braking_m_per_s2: f64) -> [T; 2] {
        let p = &self.parts;
        let most = [p.grip * load_n[0], p.grip * load_n[1]];
        let asked = p.total_kg * T::splat(braking_m_per_s2);
        if braking_m_per_s2 < 0.0 {
            [T::splat(0.0), asked.greater(-most[1])]
        } else {
            let front = p.front_brake * asked;
            [front.lesser(most[0]), (asked - front).lesser(most[1])]
        }
    }

    /// Bend at which the friction elements slip, for the forces of this motion, m.
    #[inline]
    pub fn slip_m(&self, motion: &Motion<T>) -> [T; 2] {
        let p = &self.parts;
        let fork_n = self.fork_friction.at(motion.travel_m[0]) + p.side_friction * motion.side_n;
        let rear_n = self.ratio(motion.travel_m[1]) * p.shaft_friction_n;
        [
            fork_n / p.friction_n_per_m[0],
            rear_n / p.friction_n_per_m[1],
        ]
    }

    /// How far the rider's weight squeezes the legs, m.
    #[inline]
    pub(super) fn squat_at_rest_m(&self) -> T {
        let p = &self.parts;
        p.rider_kg * T::splat(STANDARD_GRAVITY) / p.leg[0]
    }

    /// At rest on level ground, with its rider.
    pub fn at_rest(&self) -> State<T> {
        let p = &self.parts;
        let gravity = T::splat(STANDARD_GRAVITY);
        let zero = T::splat(0.0);
        let front = -(p.rest_n[0] + p.front_kg * gravity) / p.tyre_n_per_m[0];
        let rear = -(p.rest_n[1] + p.rear_kg * gravity) / p.tyre_n_per_m[1];
        let head = front - p.rest_m[0] / p.per_cos;
        let pitch = p.rest_pitch_rad;
        let sprung = head - p.front_ahead_m * pitch - self.lift_m(pitch);
        let rider = sprung + p.body_ahead_m * pitch - self.squat_at_rest_m();
        State {
            place: [sprung, pitch, front, rear, rider],
            rate: [zero; FREEDOMS],
        }
    }
}
