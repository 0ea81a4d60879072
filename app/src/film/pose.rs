//! Bike and rider as lines and outlines from the side: no bike in particular, in the proportions of any off-road one.
//!
//! What is fixed to the bike is given from the rear axle of the extended bike: along the line to the front axle, and across it
//! upwards. What moves follows the travels.

use sagwright_core::advice::SideView;

use super::motion::Moment;

/// A place: m ahead of where the ride began, and m up.
pub type Place = (f64, f64);

/// Wheelbase for which the outlines below are given, m; others are stretched to it.
const DRAWN_FOR_M: f64 = 1.48;

/// Seat, tank and the plastic around them.
const BODY: [Place; 12] = [
    (-0.14, 0.60),
    (-0.02, 0.57),
    (0.30, 0.55),
    (0.62, 0.54),
    (0.82, 0.62),
    (0.98, 0.62),
    (1.07, 0.52),
    (1.02, 0.24),
    (0.92, 0.20),
    (0.76, 0.36),
    (0.44, 0.40),
    (0.14, 0.49),
];
/// Engine and frame.
const ENGINE: [Place; 8] = [
    (0.50, 0.28),
    (0.76, 0.36),
    (0.92, 0.22),
    (0.98, 0.04),
    (0.90, -0.08),
    (0.62, -0.10),
    (0.50, -0.02),
    (0.46, 0.12),
];
/// The front guard, above the wheel.
const GUARD: [Place; 4] = [(1.02, 0.50), (1.40, 0.52), (1.76, 0.40), (1.38, 0.46)];
/// Where the swingarm turns.
const PIVOT: Place = (0.56, 0.08);
/// Upper end of the shock.
const SHOCK_TOP: Place = (0.58, 0.42);
/// Where on the swingarm the shock pushes, part of the way from the pivot to the axle.
const SHOCK_FOOT: f64 = 0.30;
/// Where the fork's outer tubes end, the upper one where the bar sits, m along the leg from the extended axle.
const LEG_M: [f64; 2] = [0.40, 0.80];
const PEG: Place = (0.60, 0.02);
const GRIP: Place = (0.97, 0.86);
/// Hip over the bike before the legs give: standing, seated.
const HIP: [Place; 2] = [(0.36, 0.98), (0.40, 0.70)];
/// Shoulder from the hip, head from the shoulder.
const SHOULDER: [Place; 2] = [(0.37, 0.40), (0.22, 0.48)];
const HEAD: Place = (0.12, 0.17);
/// Lengths of upper and lower leg, upper and lower arm, m.
const LEG: [f64; 2] = [0.50, 0.52];
const ARM: [f64; 2] = [0.32, 0.34];
/// Radius of a helmet, m.
pub const HEAD_M: f64 = 0.135;

/// Bike and rider at a moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Pose {
    /// Front and rear axle.
    pub axles: [Place; 2],
    /// How far the wheels have turned, rad.
    pub turned_rad: f64,
    /// Filled outlines: body, engine, guard.
    pub outlines: [Vec<Place>; 3],
    /// The swingarm.
    pub swingarm: [Place; 2],
    /// The shock.
    pub shock: [Place; 2],
    /// Inner tubes of the fork, from the axle up.
    pub inner: [Place; 2],
    /// Outer tubes.
    pub outer: [Place; 2],
    /// Bar: from the head to the grip.
    pub bar: [Place; 2],
    /// Foot, knee, hip.
    pub leg: [Place; 3],
    /// Hip, shoulder.
    pub trunk: [Place; 2],
    /// Shoulder, elbow, hand.
    pub arm: [Place; 3],
    /// Middle of the helmet.
    pub head: Place,
}

impl Pose {
    /// The pose at a moment.
    pub fn of(view: &SideView, at: &Moment) -> Self {
        let (sin, cos) = libm::sincos(at.nose_up_rad);
        let stretch = view.wheelbase_m / DRAWN_FOR_M;
        let origin = (at.way_m, at.axles_m[1] - at.rear_m);
        let set = |(along, up): Place| {
            (
                origin.0 + along * cos - up * sin,
                origin.1 + along * sin + up * cos,
            )
        };
        let place = |(along, up): Place| set((along * stretch, up));
        let (lean, rise) = libm::sincos(view.rake_rad);
        let up_leg = |by: f64| set((view.wheelbase_m - by * lean, by * rise));
        let front = up_leg(at.fork_m);
        let pivot = (PIVOT.0 * stretch, PIVOT.1);
        let arm_m = libm::hypot(pivot.0, pivot.1);
        let drop = at.rear_m - pivot.1;
        let rear = set((
            pivot.0 - (arm_m * arm_m - drop * drop).max(0.0).sqrt(),
            at.rear_m,
        ));
        let pivot = set(pivot);

        let sits = usize::from(view.seated);
        let squat = if view.seated { 0.4 } else { 1.0 } * at.squat_m;
        let hip = place((HIP[sits].0 - 0.4 * squat, HIP[sits].1 - squat));
        let shoulder = plus(hip, (SHOULDER[sits].0, SHOULDER[sits].1 - 0.3 * squat));
        let (foot, hand) = (place(PEG), place(GRIP));
        Self {
            axles: [front, rear],
            turned_rad: -at.way_m / view.tyre_radius_m,
            outlines: [
                BODY.map(place).to_vec(),
                ENGINE.map(place).to_vec(),
                GUARD.map(place).to_vec(),
            ],
            swingarm: [pivot, rear],
            shock: [place(SHOCK_TOP), part(pivot, rear, SHOCK_FOOT)],
            inner: [front, up_leg(LEG_M[1])],
            outer: [up_leg(LEG_M[0]), up_leg(LEG_M[1])],
            bar: [up_leg(LEG_M[1]), hand],
            leg: [foot, bent(foot, hip, [LEG[1], LEG[0]], -1.0), hip],
            trunk: [hip, shoulder],
            arm: [shoulder, bent(shoulder, hand, ARM, -1.0), hand],
            head: plus(shoulder, HEAD),
        }
    }
}

fn plus(one: Place, two: Place) -> Place {
    (one.0 + two.0, one.1 + two.1)
}

/// A part of the way from one place to another.
fn part(from: Place, to: Place, share: f64) -> Place {
    (
        from.0 + share * (to.0 - from.0),
        from.1 + share * (to.1 - from.1),
    )
}

/// The joint between two bones of given lengths; straight where they do not reach. `side` is 1 to the left of the way, −1 to the
/// right.
fn bent(from: Place, to: Place, [first, second]: [f64; 2], side: f64) -> Place {
    let (ahead, up) = (to.0 - from.0, to.1 - from.1);
    let apart = libm::hypot(ahead, up).max(1e-6);
    let along = f64::midpoint((first * first - second * second) / apart, apart);
    let out = (first * first - along * along).max(0.0).sqrt() * side;
    (
        from.0 + (along * ahead - out * up) / apart,
        from.1 + (along * up + out * ahead) / apart,
    )
}

#[cfg(test)]
mod tests {
    use super::super::motion::tests::picture;
    use super::super::motion::{Side, moment};
    use super::*;

    fn pose(at_s: f64) -> Pose {
        let picture = picture();
        Pose::of(&picture.side, &moment(&picture, Side::Before, at_s))
    }

    fn near(one: f64, other: f64) -> bool {
        (one - other).abs() < 1e-6
    }

    #[test]
    fn wheels_stand_where_the_ride_had_them() {
        for at_s in [0.0, 0.25, 0.5] {
            let [front, rear] = pose(at_s).axles;
            assert!(
                near(front.1, 0.35) && near(rear.1, 0.35),
                "{front:?} {rear:?}"
            );
        }
        let [front, rear] = pose(0.0).axles;
        assert!(near(front.0 - rear.0, 1.5));
    }

    #[test]
    fn the_bike_comes_down_by_its_travel_and_its_rider_by_more() {
        let (up, down) = (pose(0.0), pose(0.5));
        let tank = |pose: &Pose| pose.outlines[0][4].1;
        assert!(near(tank(&up) - tank(&down), 0.3));
        assert!(near(up.leg[2].1 - down.leg[2].1, 0.4));
        let length = |[one, two]: [Place; 2]| libm::hypot(one.0 - two.0, one.1 - two.1);
        assert!(length(down.shock) < length(up.shock));
        assert!(near(length(up.inner) - length(down.inner), 0.3));
        assert!(near(length(up.outer), length(down.outer)));
    }

    #[test]
    fn joints_keep_the_length_of_bones() {
        let knee = bent((0.0, 0.0), (0.0, 0.8), [0.5, 0.5], -1.0);
        assert!(near(knee.0, 0.3) && near(knee.1, 0.4));
        // Out of reach: halfway, not nowhere.
        let far = bent((0.0, 0.0), (0.0, 2.0), [0.5, 0.5], -1.0);
        assert!(near(far.0, 0.0) && near(far.1, 1.0));
    }
}
