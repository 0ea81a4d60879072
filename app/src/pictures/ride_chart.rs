//! A ride before and after as two charts: the fork's stroke and the rear's travel over time.

use sagwright_core::advice::{RidePicture, RideTrace};
use sagwright_core::intake::End;
use sagwright_core::quantity::Dimension;
use sagwright_core::words::Text;

use super::chart::{Axis, Chart, ChartWords, Curve, Mark, Measure, Pen};

/// The chart of one end. `before_told` says whether "before" is the rider's own bike or the usual one of its class.
pub fn ride_chart(picture: &RidePicture, end: End, before_told: bool) -> Chart {
    let of = |trace: &RideTrace| -> Vec<(f64, f64)> {
        let travel = if end == End::Rear {
            &trace.rear
        } else {
            &trace.fork
        };
        // A ride has some thousand points at most, so a 32-bit count holds them all.
        (0_u32..)
            .zip(travel)
            .map(|(index, &travel)| (f64::from(index) * picture.every_s, f64::from(travel)))
            .collect()
    };
    let (before, after) = (of(&picture.before), of(&picture.after));
    let last = |points: &[(f64, f64)]| points.last().map_or(0.0, |&(at, _)| at);
    let level_end = last(&before).max(last(&after));
    let marks = marks(&before);
    let message = match end {
        End::Rear => picture.rear_message.clone(),
        End::Front | End::Both => picture.message.clone(),
    };
    let (name, file) = match end {
        End::Rear => ("picture.ride.rear.name", "picture.ride.rear.file"),
        End::Front | End::Both => ("picture.ride.fork.name", "picture.ride.fork.file"),
    };
    Chart {
        name: Text::new(name).with("ground", picture.ground.clone().into()),
        message,
        level: Axis {
            title: "picture.axis.time",
            measure: Measure::Seconds,
        },
        upright: Axis {
            title: match end {
                End::Rear => "picture.axis.rear",
                End::Front | End::Both => "picture.axis.fork",
            },
            measure: Measure::Of(Dimension::Length),
        },
        level_end,
        curves: vec![
            Curve {
                name: Text::new(before_key(before_told)),
                pen: Pen::Now,
                points: before,
            },
            Curve {
                name: Text::new("picture.ride.advised"),
                pen: Pen::Advised,
                points: after,
            },
        ],
        marks,
        words: ChartWords {
            read: "picture.ride.read.label",
            start: "picture.ride.read.start",
            at: "picture.read.at",
            column: "picture.ride.time",
            file,
        },
        table_steps: 20,
    }
}

/// The moments of the bike before that a complaint is about: its deepest, and where it is hit fastest.
fn marks(before: &[(f64, f64)]) -> Vec<Mark> {
    let deepest = before.iter().max_by(|a, b| a.1.total_cmp(&b.1));
    let strokes = before.windows(2);
    let fastest = strokes.max_by(|a, b| (a[1].1 - a[0].1).total_cmp(&(b[1].1 - b[0].1)));
    let mark = |key: &'static str, at: f64| Mark {
        name: Text::new(key),
        at,
    };
    let deepest = deepest.map(|(at, _)| mark("picture.ride.deepest", *at));
    let fastest = fastest.map(|pair| mark("picture.ride.fastest", pair[1].0));
    deepest.into_iter().chain(fastest).collect()
}

/// Key of what the bike before is called: the rider's own where it was told, else the usual one of its class.
pub const fn before_key(told: bool) -> &'static str {
    if told {
        "picture.ride.now"
    } else {
        "picture.ride.usual"
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::advice::SideView;

    use super::*;

    fn picture() -> RidePicture {
        let trace = |fork: &[f32], rear: &[f32]| RideTrace {
            fork: fork.to_vec(),
            rear: rear.to_vec(),
            ground: vec![0.0; fork.len()],
            front_wheel: vec![0.0; fork.len()],
            rear_wheel: vec![0.0; fork.len()],
            squat: vec![0.0; fork.len()],
        };
        RidePicture {
            message: Text::new("front"),
            rear_message: Text::new("rear"),
            ground: Text::new("ground.whoops"),
            every_s: 0.5,
            before: trace(&[0.0, 0.25, 0.125], &[0.0, 0.5, 0.25]),
            after: trace(&[0.0, 0.125], &[0.0, 0.25]),
            full_travel: (0.3, 0.3),
            side: SideView {
                way: vec![0.0, 5.0, 10.0],
                heights: vec![0.0],
                every_m: 0.1,
                wheelbase_m: 1.5,
                rake_rad: 0.4,
                tyre_radius_m: 0.35,
                seated: false,
            },
        }
    }

    #[test]
    fn each_end_gets_its_own_trace_over_time() {
        let front = ride_chart(&picture(), End::Front, true);
        assert_eq!(
            front.curves[0].points,
            [(0.0, 0.0), (0.5, 0.25), (1.0, 0.125)]
        );
        assert_eq!(front.curves[1].points, [(0.0, 0.0), (0.5, 0.125)]);
        let rear = ride_chart(&picture(), End::Rear, true);
        assert_eq!(rear.curves[0].points[1], (0.5, 0.5));
        assert_eq!(front.message.key, "front");
        assert_eq!(rear.message.key, "rear");
    }

    #[test]
    fn the_axis_holds_the_longer_of_the_two_rides() {
        let chart = ride_chart(&picture(), End::Front, true);
        assert!((chart.level_end - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_bike_that_was_not_told_is_not_called_the_riders() {
        let name = |told| {
            ride_chart(&picture(), End::Front, told).curves[0]
                .name
                .key
                .clone()
        };
        assert_ne!(name(true), name(false));
    }
}
