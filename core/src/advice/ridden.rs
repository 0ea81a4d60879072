//! What rides over the rider's own ground found out: small plain data that can be kept, or cross to a worker and back.

use serde::{Deserialize, Serialize};

use crate::cause::Rehearsal;
use crate::quantity::Dimension;
use crate::remedy::Remedied;
use crate::words::Text;

/// The outcome of riding many set-ups over the rider's ground mix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Ridden {
    /// Where each adjuster did best, clicks from closed.
    pub clicks: RiddenClicks,
    /// Rate of each fork spring that did best among those sold nearby, N/m; absent for gas.
    pub fork_rate: Option<f64>,
    /// Rate of the shock spring that did best among those sold nearby, N/m.
    pub shock_rate: f64,
    /// What the rider would feel, before and after, per kind of ground.
    pub feel: Vec<FeelChange>,
    /// The bike before and after over one piece of each ground that shows a complaint, the heaviest of the mix first.
    pub pictures: Vec<RidePicture>,
    /// Whether "before" is the bike as the rider told it; where nothing of it was told it is the usual one of its class.
    pub before_told: bool,
    /// How many rides were ridden.
    pub rides: u32,
    /// What every cause would do to this bike.
    pub rehearsal: Rehearsal,
    /// What every remedy would do to this bike.
    pub remedied: Remedied,
}

impl Ridden {
    /// The same with one picture: that of `ground` if it was ridden, else that of the heaviest ground.
    #[must_use]
    pub fn showing(&self, ground: Option<&Text>) -> Self {
        let wanted = |picture: &&RidePicture| Some(&picture.ground) == ground;
        let picture = self.pictures.iter().find(wanted);
        Self {
            pictures: picture
                .or(self.pictures.first())
                .cloned()
                .into_iter()
                .collect(),
            // Thousands of figures that the causes and remedies have been worked out from: nobody reads them.
            rehearsal: Rehearsal::default(),
            remedied: Remedied::default(),
            ..self.clone()
        }
    }
}

/// Low-speed adjusters, clicks from closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct RiddenClicks {
    /// Fork compression.
    pub fork_compression: u8,
    /// Fork rebound.
    pub fork_rebound: u8,
    /// Shock low-speed compression.
    pub shock_compression: u8,
    /// Shock rebound.
    pub shock_rebound: u8,
}

/// One figure of feel on one kind of ground, before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FeelChange {
    /// The kind of ground.
    pub ground: Text,
    /// What is felt.
    pub name: Text,
    /// What the figure means.
    pub because: Text,
    /// Where its definition comes from.
    pub source: Text,
    /// As it is now, SI.
    pub before: f64,
    /// As advised, SI.
    pub after: f64,
    /// What it measures.
    pub dimension: Dimension,
}

/// Fork stroke and rear travel over time on one piece of ground, before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RidePicture {
    /// What the fork's travel says in a sentence.
    pub message: Text,
    /// What the rear's travel says in a sentence.
    pub rear_message: Text,
    /// The kind of ground.
    pub ground: Text,
    /// Time between two points, s.
    pub every_s: f64,
    /// As it is now.
    pub before: RideTrace,
    /// As advised.
    pub after: RideTrace,
    /// Full travel, fork along the leg and rear axle, m.
    pub full_travel: (f64, f64),
    /// Seen from the side.
    pub side: SideView,
}

/// What it takes to draw the bike from the side as it rides. Ways are from where the rear wheel starts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SideView {
    /// Way of the rear wheel at each point of the traces, m; the front wheel is a wheelbase further on.
    pub way: Vec<f32>,
    /// Heights of the ground as the tyres feel it, m, from way 0 on; beyond the last it goes on level.
    pub heights: Vec<f32>,
    /// Distance between two heights, m.
    pub every_m: f64,
    /// From axle to axle with the bike extended, m.
    pub wheelbase_m: f64,
    /// Angle of the fork from the vertical, rad.
    pub rake_rad: f64,
    /// Radius of the tyres, m.
    pub tyre_radius_m: f64,
    /// Whether the rider sits.
    pub seated: bool,
}

/// One ride.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RideTrace {
    /// Stroke of the fork along the leg, m.
    pub fork: Vec<f32>,
    /// Travel of the rear axle, m.
    pub rear: Vec<f32>,
    /// Height of the ground under the front wheel, m.
    pub ground: Vec<f32>,
    /// Height of the front wheel over where it just touches level ground of height 0, m.
    pub front_wheel: Vec<f32>,
    /// The same of the rear wheel, m.
    pub rear_wheel: Vec<f32>,
    /// How far the rider's body has come down towards the bike since the legs carried nothing, m.
    pub squat: Vec<f32>,
}

/// How far the riding has come.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Progress {
    /// Rides done.
    pub done: u32,
    /// Rides there will be, as far as is known.
    pub of: u32,
    /// What is being tried.
    pub trying: Text,
}

impl Progress {
    /// The part done, 0 to 1; `None` while nobody knows how much there will be.
    pub fn part(&self) -> Option<f64> {
        (self.of > 0).then(|| (f64::from(self.done) / f64::from(self.of)).min(1.0))
    }
}
