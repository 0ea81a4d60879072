//! Gathers every figure as the ride goes.

use super::bottoming::Bottoming;
use super::bumps::Bumps;
use super::dive::Dive;
use super::ends::Ends;
use super::grip::Grip;
use super::kick::Kick;
use super::metrics::Metrics;
use super::packing::Packing;
use super::sample::{AtRest, Clock, Sample};
use super::travel::Travel;
use super::vibration::Vibration;
use super::wallow::Wallow;
use crate::lane::Lane;

/// Heave and pitch that turn by less than this are at rest: m and rad.
const WALLOW_WIGGLE: f64 = 0.002;

/// What has been felt so far. It neither keeps the ride nor allocates.
#[derive(Debug, Clone)]
pub struct Feel<T> {
    /// Steps taken, and those after which measuring begins, the last third of the bumps begins and ends, and measuring ends.
    steps: f64,
    from: f64,
    late: f64,
    bumps_end: f64,
    to: f64,
    vibration: Vibration<T>,
    bumps: Bumps<T>,
    packing: Ends<Packing<T>>,
    dive: Dive<T>,
    kick: Kick<T>,
    bottoming: Ends<Bottoming<T>>,
    heave: Wallow<T>,
    pitch: Wallow<T>,
    grip: Ends<Grip<T>>,
    travel: Ends<Travel<T>>,
}

impl<T: Lane> Feel<T> {
    /// Before the first step of a ride that starts from rest.
    pub fn new(clock: &Clock, rest: &AtRest<T>) -> Self {
        let step_s = clock.step_s;
        let late_s = clock.bumps_end_s - (clock.bumps_end_s - clock.from_s) / 3.0;
        Self {
            steps: 0.0,
            from: (clock.from_s / step_s).round(),
            late: (late_s / step_s).round(),
            bumps_end: (clock.bumps_end_s / step_s).round(),
            to: (clock.to_s / step_s).round(),
            vibration: Vibration::new(step_s),
            bumps: Bumps::new(step_s),
            packing: Ends {
                front: Packing::new(rest.fork_stroke_m),
                rear: Packing::new(rest.rear_travel_m),
            },
            dive: Dive::new(step_s, rest),
            kick: Kick::new(),
            bottoming: Ends {
                front: Bottoming::new(step_s),
                rear: Bottoming::new(step_s),
            },
            heave: Wallow::new(WALLOW_WIGGLE),
            pitch: Wallow::new(WALLOW_WIGGLE),
            grip: Ends {
                front: Grip::new(rest.front_load_n),
                rear: Grip::new(rest.rear_load_n),
            },
            travel: Ends {
                front: Travel::new(rest.fork_full_m, step_s),
                rear: Travel::new(rest.rear_full_m, step_s),
            },
        }
    }

    /// Takes the state at the end of the next step. What a ride hands over before its first step is not meant.
    pub fn step(&mut self, sample: &Sample<T>) {
        self.steps += 1.0;
        let measuring = self.from < self.steps && self.steps <= self.to;
        self.vibration.step(sample, measuring);
        self.dive.step(sample, measuring);
        if !measuring {
            return;
        }
        let late = self.late < self.steps && self.steps <= self.bumps_end;
        self.bumps.step(sample);
        if late {
            self.packing.front.step(sample.fork_stroke_m);
            self.packing.rear.step(sample.rear_travel_m);
        }
        self.kick.step(sample);
        self.bottoming
            .front
            .step(sample.fork_stop_n, sample.fork_rate_m_s);
        self.bottoming
            .rear
            .step(sample.rear_stop_n, sample.rear_rate_m_s);
        self.heave.step(sample.heave_m);
        self.pitch.step(sample.pitch_rad);
        self.grip.front.step(sample.front_load_n);
        self.grip.rear.step(sample.rear_load_n);
        self.travel.front.step(sample.fork_stroke_m);
        self.travel.rear.step(sample.rear_travel_m);
    }

    /// The figures of what was measured so far.
    pub fn metrics(&self) -> Metrics<T> {
        Metrics {
            hand_m_s2: self.vibration.hand_m_s2(),
            body_m_s2: self.vibration.body_m_s2(),
            body_dose_m_s1_75: self.vibration.body_dose_m_s1_75(),
            body_fore_aft_m_s2: self.vibration.body_fore_aft_m_s2(),
            small_bumps_felt: self.vibration.small_bumps_felt(),
            bumps: self.bumps.count(),
            bumps_ignored: self.bumps.ignored(),
            packed_m: self.packing.as_ref().map(Packing::packed_m),
            dive_m: self.dive.added_m(),
            dive_pitch_rad: self.dive.nose_down_rad(),
            dive_rate_m_s: self.dive.quickest_m_s,
            kick_rad_s: self.kick.nose_down_rad_s,
            nose_up_rad_s: self.kick.nose_up_rad_s,
            rear_lift_m: self.kick.rear_lift_m,
            bottoming_n: self.bottoming.as_ref().map(|end| end.peak_n),
            bottoming_j: self.bottoming.as_ref().map(|end| end.energy_j),
            heave_overshoot: self.heave.overshoot(),
            heave_swings: self.heave.swings(),
            pitch_overshoot: self.pitch.overshoot(),
            pitch_swings: self.pitch.swings(),
            light_share: self.grip.as_ref().map(Grip::light_share),
            load_unsteadiness: self.grip.as_ref().map(Grip::unsteadiness),
            travel_used: self.travel.as_ref().map(Travel::used),
            travel_deepest: self.travel.as_ref().map(Travel::deepest),
        }
    }
}
