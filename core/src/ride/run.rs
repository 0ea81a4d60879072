//! Riding it: one fixed step after the other.

use super::bike::Bike;
use super::curve::Curve;
use super::friction::held;
use super::ground::{Course, Start};
use super::model::{FREEDOMS, Held, Moment, Motion, State};
use super::put_together::METAL_N_PER_M;
use crate::bike::stops::BUMP_SHARE;
use crate::feel::{AtRest, Sample};
use crate::lane::Lane;
use crate::units::STANDARD_GRAVITY;

/// Length of a step, s. The study in `docs/ride.md` says what it costs and what shorter ones would gain.
pub const STEP_S: f64 = 0.5e-3;

/// A step for searches, s, twice as fast: figures of a ride then are within 0.03 % (same study).
pub const SEARCH_STEP_S: f64 = 1e-3;
/// Pitch at which a bike has gone over, rad: about 70°, far beyond what small angles can tell.
pub const FALLEN_RAD: f64 = 1.2;
/// Bisections for the stroke at which a wheel hangs on its spring in the air: to 30 mm / 2³⁰.
const HANGING_STEPS: u32 = 30;
/// Furthest a wheel hangs beyond full extension, m.
const HANGING_M: f64 = 0.03;

/// A ride under way.
#[derive(Debug, Clone)]
pub struct Ride<'a, T: Lane> {
    bike: &'a Bike<T>,
    course: &'a Course,
    size: T,
    step_s: f64,
    steps: u32,
    /// Where everything is.
    pub state: State<T>,
    /// What depends on the way it came.
    pub held: Held<T>,
    /// Forces and accelerations now.
    pub now: Motion<T>,
    here: Moment<T>,
    rest_sprung_m: T,
}

impl<'a, T: Lane> Ride<'a, T> {
    /// Before the first step. `step_s` is usually [`STEP_S`], and at most 1 ms.
    pub fn start(bike: &'a Bike<T>, course: &'a Course, step_s: f64) -> Self {
        Self::sized(bike, course, step_s, T::splat(course.size))
    }

    /// As [`Self::start`], over ground whose size differs by lane, in place of the course's own.
    pub fn sized(bike: &'a Bike<T>, course: &'a Course, step_s: f64, size: T) -> Self {
        let state = match course.start {
            Start::Settled => bike.at_rest(),
            Start::Falling { m_per_s } => {
                bike.falling(&moment(course, 0.0, size), size * T::splat(m_per_s))
            }
        };
        Self::placed(bike, course, step_s, size, state)
    }

    /// As [`Self::sized`], from another state than the course's own start. Friction starts unbent.
    pub fn placed(
        bike: &'a Bike<T>,
        course: &'a Course,
        step_s: f64,
        size: T,
        state: State<T>,
    ) -> Self {
        let here = moment(course, 0.0, size);
        let zero = T::splat(0.0);
        let mut held = Held {
            travel_m: bike.travels_m(state.place),
            bent_m: [zero; 2],
            limit_m: [zero; 2],
            float_m: [zero; 2],
        };
        let now = bike.motion(&state, &held, &here);
        held.limit_m = bike.slip_m(&now);
        Self {
            bike,
            course,
            size,
            step_s,
            steps: 0,
            state,
            held,
            now,
            here,
            rest_sprung_m: bike.at_rest().place[0],
        }
    }

    /// Time since the start, s.
    pub fn time_s(&self) -> f64 {
        f64::from(self.steps) * self.step_s
    }

    /// Whether the course is at its end.
    pub fn over(&self) -> bool {
        self.time_s() >= self.course.lasts_s
    }

    /// 1 in lanes that ride, 0 in those that have fallen: their pitch passed [`FALLEN_RAD`], and what they hand over from
    /// then on is that of a bike that stands still in the air.
    #[inline]
    pub fn rides(&self) -> T {
        let (one, zero) = (T::splat(1.0), T::splat(0.0));
        T::splat(FALLEN_RAD).if_above(self.state.place[1].size(), one, zero)
    }

    /// One step on: Runge and Kutta's classical fourth-order rule.
    #[inline]
    pub fn step(&mut self) {
        let first = self.now;
        let start_s = self.time_s();
        self.steps += 1;
        let half_s = T::splat(0.5 * self.step_s);
        let whole_s = T::splat(self.step_s);
        let middle = moment(self.course, start_s + 0.5 * self.step_s, self.size);
        let end = moment(self.course, self.time_s(), self.size);
        let State { place, rate } = self.state;

        // The friction limits hold for the step.
        let second_at = State {
            place: along(place, half_s, rate),
            rate: along(rate, half_s, first.acceleration),
        };
        let second = self.bike.motion(&second_at, &self.held, &middle);
        let third_at = State {
            place: along(place, half_s, second_at.rate),
            rate: along(rate, half_s, second.acceleration),
        };
        let third = self.bike.motion(&third_at, &self.held, &middle);
        let fourth_at = State {
            place: along(place, whole_s, third_at.rate),
            rate: along(rate, whole_s, third.acceleration),
        };
        let fourth = self.bike.motion(&fourth_at, &self.held, &end);

        let sixth_s = T::splat(self.step_s / 6.0);
        let mean = |a: [T; FREEDOMS], b: [T; FREEDOMS], c: [T; FREEDOMS], d: [T; FREEDOMS]| {
            core::array::from_fn(|i| {
                let inner = b[i] + c[i];
                sixth_s * (a[i] + inner + inner + d[i])
            })
        };
        let way: [T; FREEDOMS] = mean(rate, second_at.rate, third_at.rate, fourth_at.rate);
        let gain: [T; FREEDOMS] = mean(
            first.acceleration,
            second.acceleration,
            third.acceleration,
            fourth.acceleration,
        );
        // Who has fallen stays where they fell.
        let rides = self.rides();
        self.state = State {
            place: core::array::from_fn(|i| place[i] + rides * way[i]),
            rate: core::array::from_fn(|i| rides * (rate[i] + gain[i])),
        };
        self.here = end;
        // The end of this step is the start of the next: its forces are computed once, with the limits of this one.
        self.now = self.bike.motion(&self.state, &self.held, &end);
        self.held = Held {
            travel_m: self.now.travel_m,
            bent_m: self.now.bent_m,
            limit_m: self.bike.slip_m(&self.now),
            float_m: self.now.float_m,
        };
    }

    /// What the rider could notice now.
    #[inline]
    pub fn sample(&self) -> Sample<T> {
        let now = &self.now;
        let p = &self.bike.parts;
        let zero = T::splat(0.0);
        let [sprung_a, pitch_a, ..] = now.acceleration;
        let [stroke, travel] = now.travel_m;
        let [ground_front, ground_rear] = self.here.ground_m;
        let [sprung, pitch, front, rear, _] = self.state.place;
        let ratio = self.bike.ratio(travel);
        let shaft_m = self.bike.shock_stroke_m(travel);
        Sample {
            hand_up_m_s2: sprung_a + p.grips_ahead_m * pitch_a,
            hand_forward_m_s2: zero - p.grips_above_m * pitch_a,
            body_up_m_s2: sprung_a + p.body_ahead_m * pitch_a,
            body_forward_m_s2: zero - p.pegs_above_m * pitch_a,
            course_forward_m_s2: T::splat(-self.here.braking_m_per_s2),
            fork_stroke_m: stroke,
            fork_rate_m_s: now.travel_m_per_s[0],
            rear_travel_m: travel,
            rear_rate_m_s: now.travel_m_per_s[1],
            fork_stop_n: bump_n(stroke, p.travel_m[0], p.bump_n[0])
                + metal_n(stroke, p.travel_m[0]),
            rear_stop_n: ratio * bump_n(shaft_m, p.shock_stroke_m, p.bump_n[1])
                + metal_n(travel, p.travel_m[1]),
            fork_held: held(self.held.bent_m[0], self.held.limit_m[0]),
            front_load_n: now.load_n[0],
            rear_load_n: now.load_n[1],
            front_gap_m: (front - ground_front).greater(zero),
            rear_gap_m: (rear - ground_rear).greater(zero),
            heave_m: sprung - self.rest_sprung_m,
            pitch_rad: pitch,
            pitch_rate_rad_s: self.state.rate[1],
            ground_front_m: ground_front,
        }
    }
}

/// Force of a bump stop, N, over the last of its stroke as [`crate::bike::stops::Stops`] has it.
fn bump_n<T: Lane>(stroke_m: T, full_m: T, most_n: T) -> T {
    let length = T::splat(BUMP_SHARE) * full_m;
    let into = (stroke_m - (full_m - length)).greater(T::splat(0.0)) / length;
    most_n * into * into * into
}

/// Force of what is beyond full travel, N.
fn metal_n<T: Lane>(travel_m: T, full_m: T) -> T {
    T::splat(METAL_N_PER_M) * (travel_m - full_m).greater(T::splat(0.0))
}

/// The course at a time, its ground `size` times as high.
fn moment<T: Lane>(course: &Course, time_s: f64, size: T) -> Moment<T> {
    let under = course.at(time_s);
    let sized = |figures: [f64; 2]| figures.map(|figure| size * T::splat(figure));
    Moment {
        ground_m: sized(under.ground_m),
        ground_m_per_s: sized(under.ground_m_per_s),
        lie: sized(under.lie),
        braking_m_per_s2: under.braking_m_per_s2,
        tyre_damping: course.tyre_damping,
    }
}

/// A place a while further on at a rate.
#[inline]
fn along<T: Lane>(from: [T; FREEDOMS], while_s: T, rate: [T; FREEDOMS]) -> [T; FREEDOMS] {
    core::array::from_fn(|i| from[i] + while_s * rate[i])
}

impl<T: Lane> Bike<T> {
    /// In the air above the ground at a moment, both tyres about to touch and nothing swinging.
    fn falling(&self, here: &Moment<T>, m_per_s: T) -> State<T> {
        let p = &self.parts;
        let hangs = |force: &Curve<T>| {
            let (mut low, mut high) = (T::splat(-HANGING_M), T::splat(HANGING_M));
            for _ in 0..HANGING_STEPS {
                let middle = T::splat(0.5) * (low + high);
                let pushes = force.at(middle);
                let zero = T::splat(0.0);
                low = pushes.if_above(zero, low, middle);
                high = pushes.if_above(zero, middle, high);
            }
            T::splat(0.5) * (low + high)
        };
        let [front, rear] = here.ground_m;
        let head = front - hangs(&self.fork) / p.per_cos;
        let tail = rear - hangs(&self.rear);
        let pitch = (head - tail) / (p.front_ahead_m + p.rear_behind_m);
        let sprung = head - p.front_ahead_m * pitch - self.lift_m(pitch);
        // Legs and arms together carry nothing.
        let lean = p.grips_ahead_m - p.body_ahead_m;
        let reach = self.squat_at_rest_m() - lean * (pitch - p.rest_pitch_rad);
        let squat = p.arm[0] * reach / (p.leg[0] + p.arm[0]);
        let down = here.ground_m_per_s[0] - m_per_s;
        State {
            place: [
                sprung,
                pitch,
                front,
                rear,
                sprung + p.body_ahead_m * pitch - squat,
            ],
            rate: [down, T::splat(0.0), down, down, down],
        }
    }

    /// The bike standing still on level ground with its rider.
    pub fn resting(&self) -> AtRest<T> {
        let p = &self.parts;
        let gravity = T::splat(STANDARD_GRAVITY);
        AtRest {
            fork_stroke_m: p.rest_m[0],
            rear_travel_m: p.rest_m[1],
            fork_full_m: p.travel_m[0],
            rear_full_m: p.travel_m[1],
            pitch_rad: p.rest_pitch_rad,
            front_load_n: p.rest_n[0] + p.front_kg * gravity,
            rear_load_n: p.rest_n[1] + p.rear_kg * gravity,
        }
    }
}

/// Rides a course to its end and hands over a sample at its start and after every step of `step_s` (usually [`STEP_S`]).
pub fn ride<T: Lane>(
    bike: &Bike<T>,
    course: &Course,
    step_s: f64,
    mut notice: impl FnMut(&Sample<T>),
) {
    let mut ride = Ride::start(bike, course, step_s);
    notice(&ride.sample());
    while !ride.over() {
        ride.step();
        notice(&ride.sample());
    }
}

/// One moment of a ride kept for a picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kept {
    /// Time since the start, s.
    pub time_s: f64,
    /// What the rider could notice.
    pub sample: Sample<f64>,
    /// Where everything was.
    pub state: State<f64>,
    /// How far the rider's body had come down towards the bike since the legs carried nothing, m.
    pub squat_m: f64,
}

/// A ride kept for a picture: one moment out of `every` steps of [`STEP_S`].
pub fn trace(bike: &Bike<f64>, course: &Course, every: usize) -> Vec<Kept> {
    let mut kept = Vec::new();
    let mut ride = Ride::start(bike, course, STEP_S);
    let mut steps = 0_usize;
    loop {
        if steps.is_multiple_of(every.max(1)) {
            let [sprung, pitch, _, _, rider] = ride.state.place;
            kept.push(Kept {
                time_s: ride.time_s(),
                sample: ride.sample(),
                state: ride.state,
                squat_m: sprung + bike.parts.body_ahead_m * pitch - rider,
            });
        }
        if ride.over() {
            return kept;
        }
        ride.step();
        steps += 1;
    }
}
