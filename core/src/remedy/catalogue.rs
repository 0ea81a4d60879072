//! What each remedy takes and costs: common practice, from memory, before any workshop's own figures.

use super::{RemedyId, Tier};

/// One remedy of the catalogue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Which remedy.
    pub id: RemedyId,
    /// From free to wholesale.
    pub tier: Tier,
    /// Minutes of work.
    pub minutes: u32,
    /// Lowest and highest price in units of one hour of workshop labour, parts included.
    pub labour_hours: (f64, f64),
    /// Whether it can be undone at no cost.
    pub reversible: bool,
    /// How many steps its instructions have: texts `remedy.<word>.step1` and on.
    pub steps: u32,
    /// Cautions before doing it: texts `caution.<word>`.
    pub cautions: &'static [&'static str],
}

const fn free(id: RemedyId, minutes: u32, cautions: &'static [&'static str]) -> Entry {
    Entry {
        id,
        tier: Tier::Adjust,
        minutes,
        labour_hours: (0.0, 0.0),
        reversible: true,
        steps: 3,
        cautions,
    }
}

const fn paid(
    id: RemedyId,
    tier: Tier,
    minutes: u32,
    labour_hours: (f64, f64),
    cautions: &'static [&'static str],
) -> Entry {
    Entry {
        id,
        tier,
        minutes,
        labour_hours,
        reversible: false,
        steps: 3,
        cautions,
    }
}

/// Every remedy, from free to wholesale.
pub const CATALOGUE: &[Entry] = &[
    free(RemedyId::RideOn, 1, &[]),
    free(RemedyId::OpenForkCompression, 2, &["clicks"]),
    free(RemedyId::CloseForkCompression, 2, &["clicks"]),
    free(RemedyId::OpenForkRebound, 2, &["clicks"]),
    free(RemedyId::CloseForkRebound, 2, &["clicks"]),
    free(RemedyId::OpenShockCompression, 2, &["clicks"]),
    free(RemedyId::CloseShockCompression, 2, &["clicks"]),
    free(RemedyId::OpenShockRebound, 2, &["clicks"]),
    free(RemedyId::CloseShockRebound, 2, &["clicks"]),
    free(RemedyId::SetTyres, 5, &["tyres"]),
    free(
        RemedyId::SetGasPressure,
        10,
        &["gas-fork", "marked-maximum"],
    ),
    free(RemedyId::LevelNegative, 10, &["gas-fork"]),
    free(RemedyId::BleedAir, 5, &["trapped-air"]),
    free(RemedyId::AlignAxle, 20, &["axle-clamps"]),
    free(
        RemedyId::SetShockPreload,
        20,
        &["spring-preload", "clearance"],
    ),
    free(RemedyId::LevelBike, 30, &["axle-clamps", "clearance"]),
    paid(
        RemedyId::ServiceHead,
        Tier::Service,
        90,
        (1.0, 2.5),
        &["workshop-lift", "axle-clamps"],
    ),
    paid(
        RemedyId::ServiceSeals,
        Tier::Service,
        120,
        (1.0, 3.0),
        &["gas-fork", "axle-clamps", "oil-off-disc"],
    ),
    paid(
        RemedyId::ServiceForkOil,
        Tier::Service,
        120,
        (1.0, 2.5),
        &["gas-fork", "axle-clamps", "oil-off-disc"],
    ),
    paid(
        RemedyId::ServiceLinkage,
        Tier::Service,
        120,
        (1.0, 3.0),
        &["workshop-lift", "axle-clamps"],
    ),
    paid(
        RemedyId::ServiceShock,
        Tier::Service,
        180,
        (2.0, 4.0),
        &["shock-gas"],
    ),
    paid(
        RemedyId::ForkSpacer,
        Tier::Workshop,
        60,
        (0.5, 1.5),
        &["spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ReduceDrag,
        Tier::Workshop,
        180,
        (2.0, 5.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::RestoreReservoir,
        Tier::Workshop,
        120,
        (1.0, 3.0),
        &["gas-fork"],
    ),
    paid(
        RemedyId::ForkSprings,
        Tier::Workshop,
        90,
        (1.5, 3.5),
        &["spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ShockSpring,
        Tier::Workshop,
        60,
        (1.5, 3.0),
        &["spring-preload", "clearance"],
    ),
    paid(
        RemedyId::FloatMidValve,
        Tier::Workshop,
        180,
        (2.0, 4.0),
        &["gas-fork"],
    ),
    paid(
        RemedyId::RevalveFork,
        Tier::Workshop,
        240,
        (3.0, 6.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::RevalveShock,
        Tier::Workshop,
        240,
        (3.0, 6.0),
        &["shock-gas"],
    ),
    paid(
        RemedyId::ConvertToCoil,
        Tier::Convert,
        240,
        (6.0, 12.0),
        &["gas-fork", "spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ReplaceForkInternals,
        Tier::Replace,
        300,
        (15.0, 30.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::ReplaceShock,
        Tier::Replace,
        120,
        (10.0, 25.0),
        &["workshop-lift", "axle-clamps"],
    ),
];

impl Entry {
    /// Cost for ordering: middle price in labour hours plus the rider's own time at a third of that rate.
    ///
    /// The rider's time holds a quarter of an hour to ride and judge: a free two-minute change is not free of effort.
    pub fn effort(&self) -> f64 {
        const TRIAL_MINUTES: f64 = 15.0;
        let (low, high) = self.labour_hours;
        0.5 * (low + high) + (f64::from(self.minutes) + TRIAL_MINUTES) / 180.0
    }
}
