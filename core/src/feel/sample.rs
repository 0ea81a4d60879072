//! What a ride hands over at every step.

/// The state of the bike and its rider at the end of one fixed step, one lane per set-up.
///
/// Accelerations are those of motion alone: a bike at rest has none. Up, forward and nose up are positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample<T> {
    /// Acceleration of the handlebar at the grips, upward, m/s².
    pub hand_up_m_s2: T,
    /// Acceleration of the handlebar at the grips, forward, the course's own slowing and driving left out, m/s².
    pub hand_forward_m_s2: T,
    /// Acceleration of what carries the rider's body (pegs when standing, seat when seated), upward, m/s².
    pub body_up_m_s2: T,
    /// Acceleration of the same, forward, the course's own slowing and driving left out, m/s².
    pub body_forward_m_s2: T,
    /// Acceleration the course asks for, forward, m/s²: negative when braking, positive when driving.
    pub course_forward_m_s2: T,
    /// Stroke of the fork along the leg from full extension, m.
    pub fork_stroke_m: T,
    /// Its rate, m/s, positive in compression.
    pub fork_rate_m_s: T,
    /// Vertical travel of the rear axle from full extension, m.
    pub rear_travel_m: T,
    /// Its rate, m/s, positive in compression.
    pub rear_rate_m_s: T,
    /// Force of the fork's bottoming stop along the leg, N, never negative.
    pub fork_stop_n: T,
    /// Force of the rear bottoming stop at the axle, vertical, N, never negative.
    pub rear_stop_n: T,
    /// 1 where friction holds the fork still, 0 where it slides.
    pub fork_held: T,
    /// Normal load of the front tyre, N, never negative.
    pub front_load_n: T,
    /// Normal load of the rear tyre, N, never negative.
    pub rear_load_n: T,
    /// Height of the unloaded front tyre over the ground, m; 0 while it touches.
    pub front_gap_m: T,
    /// Height of the unloaded rear tyre over the ground, m; 0 while it touches.
    pub rear_gap_m: T,
    /// Height of the centre of the sprung mass over any level that stays the same, m.
    pub heave_m: T,
    /// Pitch of the bike against the level, rad, nose up.
    pub pitch_rad: T,
    /// Its rate, rad/s, nose up.
    pub pitch_rate_rad_s: T,
    /// Height of the ground as the front tyre feels it (after the tyre's own smoothing), m.
    pub ground_front_m: T,
}

/// The bike standing still on level ground before the ride, one lane per set-up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AtRest<T> {
    /// Stroke of the fork along the leg, m.
    pub fork_stroke_m: T,
    /// Vertical travel of the rear axle, m.
    pub rear_travel_m: T,
    /// Full stroke of the fork along the leg, m, above 0.
    pub fork_full_m: T,
    /// Full vertical travel of the rear axle, m, above 0.
    pub rear_full_m: T,
    /// Pitch, rad, nose up.
    pub pitch_rad: T,
    /// Load of the front tyre, N, above 0.
    pub front_load_n: T,
    /// Load of the rear tyre, N, above 0.
    pub rear_load_n: T,
}

/// When a ride is measured. The filters run from the first step on, so that they have settled by then.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clock {
    /// Length of one step, s: above 0, and at most 0.001 for the weightings to keep within their tolerance.
    pub step_s: f64,
    /// Start of measuring, s after the first step.
    pub from_s: f64,
    /// End of the bumps, s after the first step, within the time measured: a row of bumps is judged by its last third.
    pub bumps_end_s: f64,
    /// End of measuring, s after the first step.
    pub to_s: f64,
}
