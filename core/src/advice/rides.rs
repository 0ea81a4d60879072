//! From the settings search to what is told of it: refined adjusters, feel before and after, a picture of one ride.

use super::rehearsed::rehearsed;
use super::ridden::{FeelChange, Progress, Ridden, RiddenClicks, RidePicture, RideTrace, SideView};
use crate::bench::{Bench, Ground, Trial, grounds};
use crate::bike::ForkSpring;
use crate::feel::Metrics;
use crate::intake::{Feeling, Field, Intake, Posture};
use crate::quantity::Dimension;
use crate::remedy::search::{Found, Stage, search};
use crate::ride::RideError;
use crate::ride::ground::profile::STEP_M as PROFILE_STEP_M;
use crate::ride::ground::{Course, Feature};
use crate::ride::run::{Kept, STEP_S, trace};
use crate::stance::{Baseline, Situation};
use crate::words::{Arg, Text};

/// Steps of a ride between two points of its picture: 20 ms, finer than a phone can show.
const EVERY: usize = 40;

/// Rides the search out. `None` when told to stop or when the bike cannot be ridden on a computer.
pub fn ridden(
    intake: &Intake,
    situation: &Situation,
    baseline: &Baseline,
    progress: &mut dyn FnMut(&Progress) -> bool,
) -> Option<Ridden> {
    let sound = Bench::of(situation, baseline).ok()?;
    let bench = sound.clone().as_told(intake);
    let mut watch = |done: u32, of: u32, stage: Stage| {
        progress(&Progress {
            done,
            of,
            trying: Text::new(stage_key(stage)),
        })
    };
    let found = search(&bench, &mut watch).ok()??;
    let grounds: Vec<Ground> = found
        .feel
        .iter()
        .map(|(ground, ..)| ground.clone())
        .collect();
    let showing = grounds::showing(&sound, &grounds).ok()?;
    let mut watch = |done: u32, of: u32| {
        progress(&Progress {
            done: found.rides + done,
            of: found.rides + of,
            trying: Text::new("rides.faults"),
        })
    };
    let (rehearsal, remedied) = rehearsed(intake, situation, baseline, &showing, &mut watch)?;
    let [
        fork_compression,
        fork_rebound,
        shock_compression,
        shock_rebound,
    ] = found.best.clicks;
    let before_told = told(intake, situation);
    let fork_rate = match found.best.set_up.fork.spring {
        ForkSpring::Coil { rate, .. } => Some(rate.value),
        ForkSpring::Gas { .. } => None,
    };
    Some(Ridden {
        clicks: RiddenClicks {
            fork_compression,
            fork_rebound,
            shock_compression,
            shock_rebound,
        },
        fork_rate,
        shock_rate: found.best.set_up.shock.rate.value,
        feel: found
            .feel
            .iter()
            .flat_map(|(ground, now, best)| changes(ground, now, best))
            .collect(),
        pictures: pictures(&bench, &found, before_told).unwrap_or_default(),
        before_told,
        rides: found.rides + rehearsal.rides,
        rehearsal,
        remedied,
    })
}

/// Whether anything that a ride feels was told of the bike as it stands.
fn told(intake: &Intake, situation: &Situation) -> bool {
    let clicks = [
        Field::ForkCompressionNow,
        Field::ForkReboundNow,
        Field::ShockLowNow,
        Field::ShockReboundNow,
    ];
    let told = &situation.told;
    told.fork_spring || told.shock_rate || clicks.iter().any(|field| field.get(intake).is_some())
}

const fn stage_key(stage: Stage) -> &'static str {
    match stage {
        Stage::Ground => "rides.ground",
        Stage::Springs => "rides.springs",
        Stage::Alone => "rides.alone",
        Stage::Together => "rides.together",
        Stage::Around => "rides.around",
    }
}

/// The name of a kind of ground.
pub fn ground_text(feature: Feature) -> Text {
    Text::new(match feature {
        Feature::SmallRipple => "ground.small-ripple",
        Feature::RootsRocks => "ground.roots-rocks",
        Feature::Chatter => "ground.chatter",
        Feature::SquareEdge => "ground.square-edge",
        Feature::BrakingBumps => "ground.braking-bumps",
        Feature::AccelerationBumps => "ground.acceleration-bumps",
        Feature::Whoops => "ground.whoops",
        Feature::JumpToSlope => "ground.jump-to-slope",
        Feature::JumpToFlat => "ground.jump-to-flat",
        Feature::TakeOff => "ground.take-off",
        Feature::GOut => "ground.g-out",
        Feature::Rollers => "ground.rollers",
        Feature::Gravel => "ground.gravel",
        Feature::Braking => "ground.braking",
        Feature::Heave => "ground.heave",
    })
}

/// What this ground is there to show, before and after.
pub fn changes(ground: &Ground, now: &Metrics<f64>, best: &Metrics<f64>) -> Vec<FeelChange> {
    type Figure = (&'static str, fn(&Metrics<f64>) -> f64, Dimension);
    const HANDS: Figure = ("feel.hands", |m| m.hand_m_s2, Dimension::Acceleration);
    const FRONT_LIGHT: Figure = (
        "feel.front-light",
        |m| m.light_share.front,
        Dimension::Share,
    );
    const REAR_LIGHT: Figure = ("feel.rear-light", |m| m.light_share.rear, Dimension::Share);
    const FORK_SUNK: Figure = ("feel.fork-sunk", |m| m.packed_m.front, Dimension::Length);
    const REAR_SUNK: Figure = ("feel.rear-sunk", |m| m.packed_m.rear, Dimension::Length);
    const DIVE: Figure = ("feel.dive", |m| m.dive_m, Dimension::Length);
    const KICK: Figure = ("feel.kick", |m| m.kick_rad_s, Dimension::PitchRate);
    const FORK_DEEPEST: Figure = (
        "feel.fork-deepest",
        |m| m.travel_deepest.front,
        Dimension::Share,
    );
    const REAR_DEEPEST: Figure = (
        "feel.rear-deepest",
        |m| m.travel_deepest.rear,
        Dimension::Share,
    );
    let figures: &[Figure] = match ground.feature {
        Feature::BrakingBumps | Feature::Braking => &[HANDS, DIVE, FORK_SUNK, FORK_DEEPEST],
        Feature::Whoops | Feature::AccelerationBumps | Feature::Rollers => {
            &[FORK_SUNK, REAR_SUNK, KICK, FORK_DEEPEST]
        }
        Feature::TakeOff => &[KICK, FORK_DEEPEST, REAR_DEEPEST],
        Feature::JumpToSlope | Feature::JumpToFlat | Feature::GOut => &[FORK_DEEPEST, REAR_DEEPEST],
        _ => &[HANDS, FRONT_LIGHT, REAR_LIGHT],
    };
    figures
        .iter()
        .map(|(key, of, dimension)| FeelChange {
            ground: ground_text(ground.feature),
            name: Text::new(*key),
            because: Text::new(format!("{key}.because")),
            source: Text::new(format!("{key}.source")),
            before: of(now),
            after: of(best),
            dimension: *dimension,
        })
        .collect()
}

/// Rides before and after, over each ground that shows some complaint, and over the heaviest of the mix.
fn pictures(
    bench: &Bench,
    found: &Found,
    before_told: bool,
) -> Result<Vec<RidePicture>, RideError> {
    let grounds = found.feel.iter().enumerate();
    let keys = if before_told {
        ["rides.message", "rides.message-rear"]
    } else {
        ["rides.message-usual", "rides.message-rear-usual"]
    };
    let telling = |feature: Feature| Feeling::ALL.iter().any(|one| shows(*one) == Some(feature));
    grounds
        .filter(|(place, (ground, ..))| *place == 0 || telling(ground.feature))
        .filter_map(|(_, (ground, ..))| {
            let course = ground.pieces.first()?;
            let both = [&found.now, &found.best];
            Some(picture(bench, both, (ground.feature, course), keys))
        })
        .collect()
}

/// Two trials over one piece of ground, the later one last; `keys` are of the sentences for fork and rear.
pub fn picture(
    bench: &Bench,
    [first, second]: [&Trial; 2],
    (feature, course): (Feature, &Course),
    [fork_key, rear_key]: [&'static str; 2],
) -> Result<RidePicture, RideError> {
    let ride = |trial: &Trial| -> Result<RideTrace, RideError> {
        let bike = bench.bike::<f64>(std::slice::from_ref(trial))?;
        let kept = trace(&bike, course, EVERY);
        let of = |figure: fn(&Kept) -> f64| -> Vec<f32> {
            kept.iter().map(|moment| short(figure(moment))).collect()
        };
        Ok(RideTrace {
            fork: of(|at| at.sample.fork_stroke_m),
            rear: of(|at| at.sample.rear_travel_m),
            ground: of(|at| at.sample.ground_front_m),
            front_wheel: of(|at| at.state.place[2]),
            rear_wheel: of(|at| at.state.place[3]),
            squat: of(|at| at.squat_m),
        })
    };
    let (before, after) = (ride(first)?, ride(second)?);
    let machine = bench.machine();
    let deepest = |travel: &[f32]| {
        let deepest_m = f64::from(travel.iter().copied().fold(0.0, f32::max));
        Arg::Quantity(deepest_m, Dimension::Length)
    };
    let message = |key: &'static str, before: &[f32], after: &[f32]| {
        Text::new(key)
            .with("ground", ground_text(feature).into())
            .with("before", deepest(before))
            .with("after", deepest(after))
    };
    #[expect(clippy::cast_precision_loss, reason = "a few dozen steps")]
    let every_s = EVERY as f64 * STEP_S;
    Ok(RidePicture {
        side: side_view(bench, course, every_s, before.fork.len())?,
        message: message(fork_key, &before.fork, &after.fork),
        rear_message: message(rear_key, &before.rear, &after.rear),
        ground: ground_text(feature),
        every_s,
        before,
        after,
        full_travel: (machine.fork_stroke.value, machine.leverage.travel_m),
    })
}

/// A figure for a picture, which needs no more digits.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a picture needs no more digits"
)]
const fn short(figure: f64) -> f32 {
    figure as f32
}

/// The course and the bike from the side, at so many moments.
fn side_view(
    bench: &Bench,
    course: &Course,
    every_s: f64,
    moments: usize,
) -> Result<SideView, RideError> {
    /// Of the heights that a ride feels, one in so many is drawn: 40 mm apart, a few pixels.
    const THINNED: usize = 4;
    let class = bench.machine().class;
    let way = (0_u32..).take(moments).map(|moment| {
        let [way, ..] = course.riding.at(f64::from(moment) * every_s);
        short(way)
    });
    let heights = course.ground().heights_m().iter().step_by(THINNED);
    #[expect(clippy::cast_precision_loss, reason = "a handful")]
    let every_m = PROFILE_STEP_M * THINNED as f64;
    Ok(SideView {
        way: way.collect(),
        heights: heights.map(|height| short(course.size * height)).collect(),
        every_m,
        wheelbase_m: class.wheelbase.value,
        rake_rad: class.rake.value,
        tyre_radius_m: bench.tyre_radius_m()?,
        seated: bench.situation().load.posture == Posture::Seated,
    })
}

/// The ground that shows the first of the complaints that some ground shows.
pub fn shown_ground(intake: &Intake) -> Option<Text> {
    let mut complaints = intake.complaints.iter().flatten();
    complaints
        .find_map(|complaint| shows(complaint.feeling))
        .map(ground_text)
}

/// The ground on which a complaint shows best, if it is one of riding at all.
const fn shows(feeling: Feeling) -> Option<Feature> {
    match feeling {
        Feeling::HarshSmallBumps | Feeling::Sticks | Feeling::Skips => Some(Feature::RootsRocks),
        Feeling::Dives | Feeling::HarshBigHits => Some(Feature::BrakingBumps),
        Feeling::Packs | Feeling::Kicks | Feeling::Wallows => Some(Feature::Whoops),
        Feeling::Bottoms | Feeling::RampsUp | Feeling::Springs => Some(Feature::JumpToSlope),
        _ => None,
    }
}
