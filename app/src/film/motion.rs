//! Where everything was at a moment of a ride, read off between the moments that were kept.

use sagwright_core::advice::{RidePicture, RideTrace};

/// Keys of the names of both rides.
pub type Names = [&'static str; 2];

/// Which of the two rides.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The bike before anything is changed.
    Before,
    /// The bike as advised, or as tried.
    After,
}

impl Side {
    /// Both, in the order shown.
    pub const BOTH: [Self; 2] = [Self::Before, Self::After];

    /// Its name of two.
    pub const fn name(self, [before, after]: Names) -> &'static str {
        match self {
            Self::Before => before,
            Self::After => after,
        }
    }

    /// Its trace.
    pub const fn of(self, picture: &RidePicture) -> &RideTrace {
        match self {
            Self::Before => &picture.before,
            Self::After => &picture.after,
        }
    }
}

/// One moment of one ride, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Way of the rear wheel, m.
    pub way_m: f64,
    /// Stroke of the fork along the leg, m.
    pub fork_m: f64,
    /// Travel of the rear axle, m.
    pub rear_m: f64,
    /// Heights of the axles over level ground of height 0, m.
    pub axles_m: [f64; 2],
    /// How far the rider's legs are bent, m.
    pub squat_m: f64,
    /// Height of the ground under the front wheel, m.
    pub ground_m: f64,
    /// Attitude of the bike, rad, nose up.
    pub nose_up_rad: f64,
}

/// How long the longer of the rides is, s.
pub fn lasts_s(picture: &RidePicture) -> f64 {
    let points = picture.before.fork.len().max(picture.after.fork.len());
    // A ride has some thousand points at most.
    f64::from(u32::try_from(points.saturating_sub(1)).unwrap_or(0)) * picture.every_s
}

/// Where everything was `at_s` after the start; the end where that is later.
pub fn moment(picture: &RidePicture, side: Side, at_s: f64) -> Moment {
    let trace = side.of(picture);
    let view = &picture.side;
    let place = at_s / picture.every_s;
    let read = |figures: &[f32]| between(figures, place);
    let (fork_m, rear_m) = (read(&trace.fork), read(&trace.rear));
    let radius = view.tyre_radius_m;
    let axles_m = [read(&trace.front_wheel), read(&trace.rear_wheel)].map(|up| up + radius);
    // Where the axles would be with both ends extended: that line is fixed to the bike.
    let head = axles_m[0] - fork_m * libm::cos(view.rake_rad);
    let tail = axles_m[1] - rear_m;
    Moment {
        way_m: read(&view.way),
        fork_m,
        rear_m,
        axles_m,
        squat_m: read(&trace.squat),
        ground_m: read(&trace.ground),
        nose_up_rad: libm::asin(((head - tail) / view.wheelbase_m).clamp(-1.0, 1.0)),
    }
}

/// Height of the ground at a way, m.
pub fn ground(picture: &RidePicture, way_m: f64) -> f64 {
    between(&picture.side.heights, way_m / picture.side.every_m)
}

/// A row of figures read straight between two of them; beyond its ends it goes on as there, and an empty one is 0.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the place is not below 0, and what is beyond the last figure is cut there"
)]
fn between(figures: &[f32], place: f64) -> f64 {
    let place = place.max(0.0);
    let index = place as usize;
    let last = figures.last().copied().unwrap_or_default();
    let from = f64::from(figures.get(index).copied().unwrap_or(last));
    let to = f64::from(figures.get(index + 1).copied().unwrap_or(last));
    from + place.fract() * (to - from)
}

#[cfg(test)]
pub mod tests {
    use sagwright_core::advice::SideView;
    use sagwright_core::words::Text;

    use super::*;

    /// A bike on level ground, at full extension and then on its stops.
    pub fn picture() -> RidePicture {
        let trace = RideTrace {
            fork: vec![0.0, 0.3],
            rear: vec![0.0, 0.3],
            ground: vec![0.0, 0.0],
            front_wheel: vec![0.0, 0.0],
            rear_wheel: vec![0.0, 0.0],
            squat: vec![0.0, 0.1],
        };
        RidePicture {
            message: Text::new("front"),
            rear_message: Text::new("rear"),
            ground: Text::new("ground.whoops"),
            every_s: 0.5,
            before: trace.clone(),
            after: trace,
            full_travel: (0.3, 0.3),
            side: SideView {
                way: vec![0.0, 5.0],
                heights: vec![0.0, 0.1, 0.3],
                every_m: 0.1,
                wheelbase_m: 1.5,
                rake_rad: 0.0,
                tyre_radius_m: 0.35,
                seated: false,
            },
        }
    }

    #[test]
    fn moments_are_read_between_those_kept_and_end_with_them() {
        let picture = picture();
        let middle = moment(&picture, Side::Before, 0.25);
        assert!((middle.way_m - 2.5).abs() < 1e-6 && (middle.fork_m - 0.15).abs() < 1e-6);
        assert!((middle.axles_m[0] - 0.35).abs() < 1e-6);
        let end = moment(&picture, Side::After, 9.0);
        assert!((end.rear_m - 0.3).abs() < 1e-6 && (end.squat_m - 0.1).abs() < 1e-6);
        assert!((lasts_s(&picture) - 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_bike_that_dives_has_its_nose_down() {
        let mut picture = picture();
        picture.before.rear = vec![0.0, 0.0];
        let level = moment(&picture, Side::Before, 0.0);
        let dived = moment(&picture, Side::Before, 0.5);
        assert!(level.nose_up_rad.abs() < 1e-9);
        assert!((dived.nose_up_rad + libm::asin(0.3 / 1.5)).abs() < 1e-6);
    }

    #[test]
    fn the_ground_goes_on_level_beyond_its_ends() {
        let picture = picture();
        for (way, height) in [(-1.0, 0.0), (0.05, 0.05), (0.15, 0.2), (7.0, 0.3)] {
            assert!((ground(&picture, way) - height).abs() < 1e-6, "at {way}");
        }
    }
}
