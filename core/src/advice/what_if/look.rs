//! What shows of a change with the bike standing still: quick enough to follow a finger.

use super::levers::{Trying, Workbench};
use crate::advice::draw::drawn;
use crate::advice::picture::{CurveRole, ForceCurve, ForcePicture, TravelMark};
use crate::advice::sheet::reason;
use crate::bench::Still;
use crate::cause::felt::{Felt, Seen, felt, shows_at};
use crate::intake::{End, Feeling};
use crate::quantity::Dimension;
use crate::ride::RideError;
use crate::units::metre;
use crate::words::{Arg, Text};

/// A figure before and after, SI.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// What it is.
    pub name: Text,
    /// As the bike stands.
    pub before: f64,
    /// As tried.
    pub after: f64,
    /// What it measures.
    pub dimension: Dimension,
}

/// A feeling that moved.
#[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct FeltMove {
    /// Which.
    pub feeling: Feeling,
    /// At which end.
    pub end: End,
    /// In steps that half of all riders would notice; above 0 is more of it, which is worse.
    pub steps: f64,
}

/// A change seen standing still.
#[derive(Debug, Clone, PartialEq)]
pub struct WhatIf {
    /// Sags, forces and damping.
    pub rows: Vec<Compared>,
    /// Spring force over fork travel.
    pub picture: ForcePicture,
    /// What would be felt, most first.
    pub feel: Vec<FeltMove>,
}

/// Fewer steps than this are not told: by the odds that verdicts on changes are judged by, about one rider in four would
/// notice so many.
const LEAST_STEPS: f64 = 0.3;
/// Steps from which a change is called clear: by the same odds about two riders in three would notice it.
pub const CLEAR_STEPS: f64 = 1.5;

/// The feelings that moved enough to be noticed, most first.
pub fn moves(felt: &Felt) -> Vec<FeltMove> {
    let mut all = Vec::new();
    for (place, feeling) in Feeling::ALL.iter().enumerate() {
        let ends = [End::Front, End::Rear].into_iter();
        for ((end, steps), shows) in ends.zip(felt.steps[place]).zip(shows_at(*feeling)) {
            if shows && steps.abs() >= LEAST_STEPS {
                all.push(FeltMove {
                    feeling: *feeling,
                    end,
                    steps,
                });
            }
        }
    }
    all.sort_by(|a, b| b.steps.abs().total_cmp(&a.steps.abs()));
    all
}

impl Workbench {
    /// What a change does standing still.
    ///
    /// # Errors
    /// When the bike so changed does not come to rest or cannot be put together.
    pub fn look(&self, trying: &Trying) -> Result<WhatIf, RideError> {
        let bench = self.bench()?;
        let (now, tried) = Self::trials(&bench, trying);
        let (before, after) = (Still::of(&bench, &now)?, Still::of(&bench, &tried)?);
        let seen = |trial, still| Seen {
            trial,
            still,
            ridden: &[],
        };
        let feel = moves(&felt(&seen(&tried, after), &seen(&now, before), &[]));
        let curve = |trial: &crate::bench::Trial, still: &Still, role| {
            drawn(
                role,
                &trial.machine,
                &self.situation,
                &trial.set_up,
                &trial.air,
                metre(still.ridden_m.front),
            )
        };
        let curves = [
            curve(&now, &before, CurveRole::Now)?,
            curve(&tried, &after, CurveRole::Tried)?,
        ];
        let [end_before, end_after] = [0, 1].map(|place: usize| {
            let points: &[(f64, f64)] = &curves[place].points;
            points.last().map_or(0.0, |(_, force)| *force)
        });
        let mut rows = rows(&before, &after);
        rows.push(Compared {
            name: Text::new("effect.end-force"),
            before: end_before,
            after: end_after,
            dimension: Dimension::Force,
        });
        // Less than anyone could measure.
        let stays = (before.ridden_m.front - after.ridden_m.front).abs() < 0.5e-3
            && (end_before - end_after).abs() < 5.0;
        let mark = |key, travel| TravelMark {
            name: Text::new(key),
            travel,
        };
        let full_travel = self.situation.machine.fork_stroke.value;
        let picture = ForcePicture {
            message: Text::new(if stays {
                "what-if.message-same"
            } else {
                "what-if.message"
            })
            .with("before", Arg::Quantity(end_before, Dimension::Force))
            .with("after", Arg::Quantity(end_after, Dimension::Force))
            .with(
                "sag_before",
                Arg::Quantity(before.ridden_m.front, Dimension::Length),
            )
            .with(
                "sag_after",
                Arg::Quantity(after.ridden_m.front, Dimension::Length),
            ),
            curves: curves
                .into_iter()
                .map(|one| ForceCurve {
                    name: one.name(),
                    role: one.role,
                    points: one.points,
                })
                .collect(),
            marks: vec![
                mark("picture.ride-height", after.ridden_m.front),
                mark("picture.full-travel", full_travel),
            ],
            full_travel,
            reason: reason("force-picture", Vec::new()),
        };
        Ok(WhatIf {
            rows,
            picture,
            feel,
        })
    }
}

fn rows(before: &Still, after: &Still) -> Vec<Compared> {
    type Row = (&'static str, fn(&Still) -> f64, Dimension);
    const ROWS: [Row; 6] = [
        (
            "setting.fork-free-sag",
            |s| s.free_m.front,
            Dimension::Length,
        ),
        (
            "setting.fork-rider-sag",
            |s| s.ridden_m.front,
            Dimension::Length,
        ),
        (
            "setting.rear-free-sag",
            |s| s.free_m.rear,
            Dimension::Length,
        ),
        (
            "setting.rear-rider-sag",
            |s| s.ridden_m.rear,
            Dimension::Length,
        ),
        ("effect.off-top-out", |s| s.off_top_out_n, Dimension::Force),
        (
            "effect.breakaway",
            |s| s.breakaway_n.front,
            Dimension::Force,
        ),
    ];
    const DAMPING: [&str; 4] = [
        "what-if.damping.fork-compression",
        "what-if.damping.fork-rebound",
        "what-if.damping.shock-compression",
        "what-if.damping.shock-rebound",
    ];
    let still = ROWS.iter().map(|(name, of, dimension)| Compared {
        name: Text::new(*name),
        before: of(before),
        after: of(after),
        dimension: *dimension,
    });
    let damping = DAMPING.iter().enumerate().map(|(place, name)| {
        let [then, now] = [before, after].map(|still| still.damping_n_s_per_m[place]);
        Compared {
            name: Text::new(*name),
            before: 1.0,
            after: now / then,
            dimension: Dimension::Share,
        }
    });
    still.chain(damping).collect()
}
