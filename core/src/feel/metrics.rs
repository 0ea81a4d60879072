//! The figures of a ride.

use super::ends::Ends;
use crate::lane::Lane;

/// What the rider noticed, one lane per set-up, over the time measured.
///
/// A figure means something on the ground it belongs to: packing in a row of bumps, wallowing after a single rise,
/// diving under the brakes. On other ground it is computed all the same. Where nothing happened it is 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metrics<T> {
    /// Weighted vibration of the hands, m/s²: root mean square of the acceleration of the grips weighted with Wh, upward
    /// and forward added as a vector (ISO 5349-1:2001; the sideways axis, which a ride in one plane has not, is left out).
    pub hand_m_s2: T,
    /// Weighted vibration of the body, m/s²: root mean square of the upward acceleration weighted with Wk
    /// (ISO 2631-1:1997, 6.1).
    pub body_m_s2: T,
    /// Vibration dose of the body, m/s^1.75: fourth root of the integral of the fourth power of the same
    /// acceleration over time (ISO 2631-1:1997, 6.3.2). It grows with single jolts and with the length of the ride.
    pub body_dose_m_s1_75: T,
    /// Weighted vibration of the body fore and aft, m/s²: root mean square of the forward acceleration weighted with Wd
    /// (ISO 2631-1:1997, 6.1).
    pub body_fore_aft_m_s2: T,
    /// How much of small bumps reaches the hands, dimensionless: root mean square of the upward acceleration of the
    /// grips between 8 and 30 Hz over that of the ground under the front tyre. Band after common practice.
    pub small_bumps_felt: T,
    /// Bumps of 3 mm and more that the front wheel crossed and another followed.
    pub bumps: T,
    /// Share of these, 0 to 1, in which friction held the fork for so much of the time that it slid less than a quarter of
    /// the way in and out that the bump's height asks for. The tyre swallows some bumps even without friction. Our own
    /// definition.
    pub bumps_ignored: T,
    /// Packing, m: mean travel over the last third of the bumps less that at rest, below 0 when the end rides high. Front
    /// along the leg, rear at the axle. Our own definition of a word of the trade; it compares set-ups on the same bumps.
    pub packed_m: Ends<T>,
    /// Dive, m: mean stroke of the fork once the brakes have been on for half a second, less that at rest.
    pub dive_m: T,
    /// Pitch while diving, rad, nose down positive: mean over the same time, less that at rest.
    pub dive_pitch_rad: T,
    /// Rate of diving, m/s: greatest rate of the fork with the brakes on, after a Butterworth low-pass of 4 Hz, which
    /// leaves out what bumps do.
    pub dive_rate_m_s: T,
    /// Kick: greatest pitch rate, rad/s, nose down.
    pub kick_rad_s: T,
    /// Greatest pitch rate, rad/s, nose up.
    pub nose_up_rad_s: T,
    /// Greatest height of the rear tyre over the ground, m.
    pub rear_lift_m: T,
    /// Bottoming: greatest force of the stop, N. Front along the leg, rear at the axle.
    pub bottoming_n: Ends<T>,
    /// Bottoming: energy put into the stop over all hits, J.
    pub bottoming_j: Ends<T>,
    /// Wallow in heave: the first swing back over the first swing, dimensionless. A damping ratio ζ, after release from
    /// rest, gives exp(−π ζ / √(1 − ζ²)) (logarithmic decrement; any textbook of vibration).
    pub heave_overshoot: T,
    /// Swings in heave after the first that are over a tenth of it, and deeper than 2 mm.
    pub heave_swings: T,
    /// Wallow in pitch, as [`Self::heave_overshoot`].
    pub pitch_overshoot: T,
    /// Swings in pitch after the first that are over a tenth of it, and deeper than 2 mrad.
    pub pitch_swings: T,
    /// Grip: share of the time, 0 to 1, in which the tyre carries under a fifth of its load at rest.
    pub light_share: Ends<T>,
    /// Grip: standard deviation of the tyre's load over its load at rest, dimensionless.
    pub load_unsteadiness: Ends<T>,
    /// Travel not exceeded for 95 % of the time, share of full travel.
    pub travel_used: Ends<T>,
    /// Deepest travel, share of full travel.
    pub travel_deepest: Ends<T>,
}

impl<T: Copy> Metrics<T> {
    /// Changes every figure in the same way.
    pub fn map<U>(&self, mut change: impl FnMut(T) -> U) -> Metrics<U> {
        Metrics {
            hand_m_s2: change(self.hand_m_s2),
            body_m_s2: change(self.body_m_s2),
            body_dose_m_s1_75: change(self.body_dose_m_s1_75),
            body_fore_aft_m_s2: change(self.body_fore_aft_m_s2),
            small_bumps_felt: change(self.small_bumps_felt),
            bumps: change(self.bumps),
            bumps_ignored: change(self.bumps_ignored),
            packed_m: self.packed_m.map(&mut change),
            dive_m: change(self.dive_m),
            dive_pitch_rad: change(self.dive_pitch_rad),
            dive_rate_m_s: change(self.dive_rate_m_s),
            kick_rad_s: change(self.kick_rad_s),
            nose_up_rad_s: change(self.nose_up_rad_s),
            rear_lift_m: change(self.rear_lift_m),
            bottoming_n: self.bottoming_n.map(&mut change),
            bottoming_j: self.bottoming_j.map(&mut change),
            heave_overshoot: change(self.heave_overshoot),
            heave_swings: change(self.heave_swings),
            pitch_overshoot: change(self.pitch_overshoot),
            pitch_swings: change(self.pitch_swings),
            light_share: self.light_share.map(&mut change),
            load_unsteadiness: self.load_unsteadiness.map(&mut change),
            travel_used: self.travel_used.map(&mut change),
            travel_deepest: self.travel_deepest.map(change),
        }
    }

    /// Joins every figure with the same figure of another ride.
    pub fn with<U>(&self, other: &Self, mut join: impl FnMut(T, T) -> U) -> Metrics<U> {
        Metrics {
            hand_m_s2: join(self.hand_m_s2, other.hand_m_s2),
            body_m_s2: join(self.body_m_s2, other.body_m_s2),
            body_dose_m_s1_75: join(self.body_dose_m_s1_75, other.body_dose_m_s1_75),
            body_fore_aft_m_s2: join(self.body_fore_aft_m_s2, other.body_fore_aft_m_s2),
            small_bumps_felt: join(self.small_bumps_felt, other.small_bumps_felt),
            bumps: join(self.bumps, other.bumps),
            bumps_ignored: join(self.bumps_ignored, other.bumps_ignored),
            packed_m: self.packed_m.with(other.packed_m, &mut join),
            dive_m: join(self.dive_m, other.dive_m),
            dive_pitch_rad: join(self.dive_pitch_rad, other.dive_pitch_rad),
            dive_rate_m_s: join(self.dive_rate_m_s, other.dive_rate_m_s),
            kick_rad_s: join(self.kick_rad_s, other.kick_rad_s),
            nose_up_rad_s: join(self.nose_up_rad_s, other.nose_up_rad_s),
            rear_lift_m: join(self.rear_lift_m, other.rear_lift_m),
            bottoming_n: self.bottoming_n.with(other.bottoming_n, &mut join),
            bottoming_j: self.bottoming_j.with(other.bottoming_j, &mut join),
            heave_overshoot: join(self.heave_overshoot, other.heave_overshoot),
            heave_swings: join(self.heave_swings, other.heave_swings),
            pitch_overshoot: join(self.pitch_overshoot, other.pitch_overshoot),
            pitch_swings: join(self.pitch_swings, other.pitch_swings),
            light_share: self.light_share.with(other.light_share, &mut join),
            load_unsteadiness: self
                .load_unsteadiness
                .with(other.load_unsteadiness, &mut join),
            travel_used: self.travel_used.with(other.travel_used, &mut join),
            travel_deepest: self.travel_deepest.with(other.travel_deepest, join),
        }
    }
}

impl<T: Lane> Metrics<T> {
    /// The figures of the set-up in lane `at`, which is below [`Lane::LANES`].
    pub fn lane(&self, at: usize) -> Metrics<f64> {
        self.map(|figure| figure.lane(at))
    }
}

impl Metrics<f64> {
    /// The mean of each figure over several rides; `None` for no rides.
    pub fn mean(rides: &[Self]) -> Option<Self> {
        let (first, rest) = rides.split_first()?;
        let sum = rest
            .iter()
            .fold(*first, |sum, ride| sum.with(ride, |a, b| a + b));
        #[expect(clippy::cast_precision_loss, reason = "a handful of rides")]
        let count = rides.len() as f64;
        Some(sum.map(|figure| figure / count))
    }
}
