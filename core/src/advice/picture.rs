//! What the pictures show, as numbers: the page draws, it computes nothing.

use serde::Serialize;

use super::answer::SettingId;
use super::figure::Reason;
use crate::words::Text;

/// Spring force over travel, along the fork leg, both legs together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ForcePicture {
    /// The picture's message in a sentence.
    pub message: Text,
    /// The curves, all over the same travel.
    pub curves: Vec<ForceCurve>,
    /// Points to mark.
    pub marks: Vec<TravelMark>,
    /// Full travel, m.
    pub full_travel: f64,
    /// What the forces rest on.
    pub reason: Reason,
}

/// One curve.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ForceCurve {
    /// What it is.
    pub name: Text,
    /// The fork's own, or the other kind for comparison.
    pub role: CurveRole,
    /// Travel (m) and force (N).
    pub points: Vec<(f64, f64)>,
}

/// What a curve stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CurveRole {
    /// A coil spring.
    Coil,
    /// A gas spring.
    Gas,
    /// The fork as it stands now, before any change.
    Now,
    /// The fork with something tried on it.
    Tried,
}

/// A travel worth marking.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TravelMark {
    /// What is there.
    pub name: Text,
    /// Where, m of fork stroke.
    pub travel: f64,
}

/// Damping force over the speed of leg or shaft, all dampers of one end together, one way.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DampingPicture {
    /// Whose clicker it shows.
    pub setting: SettingId,
    /// What it shows, in a few words.
    pub name: Text,
    /// The picture's message in a sentence.
    pub message: Text,
    /// The curves, all over the same speeds.
    pub curves: Vec<DampingCurve>,
    /// Speeds to mark.
    pub marks: Vec<DampingMark>,
    /// Speed of leg or shaft in a hard hit, m/s.
    pub top_speed: f64,
    /// What the forces rest on.
    pub reason: Reason,
}

/// Damping with the clicker in one place.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DampingCurve {
    /// Where the clicker stands.
    pub name: Text,
    /// The same, to draw it by.
    pub role: DampingRole,
    /// Speed (m/s) and the force against it (N), both 0 or more.
    pub points: Vec<(f64, f64)>,
}

/// Where a clicker stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum DampingRole {
    /// Where it is advised.
    Chosen,
    /// Where the rider has it, where that is elsewhere.
    Now,
    /// Fully closed.
    Closed,
    /// Fully open.
    Open,
}

/// A speed worth marking.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DampingMark {
    /// What moves so fast.
    pub name: Text,
    /// Where, m/s of leg or shaft.
    pub speed: f64,
}

/// Force to get a fork moving, gas beside coil.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BreakawayTable {
    /// One row per fork; none where no set-up finds a rest.
    pub rows: Vec<BreakawayRow>,
    /// What the forces off the top-out rest on.
    pub off_top_out: Reason,
    /// What the forces at ride height rest on.
    pub at_ride_height: Reason,
}

/// Force to get one fork moving.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BreakawayRow {
    /// Which fork.
    pub name: Text,
    /// Its spring.
    pub role: CurveRole,
    /// Off its top-out, N.
    pub off_top_out: f64,
    /// At ride height, N beyond what already carries the bike.
    pub at_ride_height: f64,
}
