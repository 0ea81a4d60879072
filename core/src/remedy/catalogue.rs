//! What each remedy cures, takes and costs: common practice, from memory, before any workshop's own figures.

use super::{RemedyId, Tier};
use crate::cause::Cause;
use crate::cause::Cause::{
    Attitude, ForkBound, ForkCompressionLittle, ForkCompressionMuch, ForkFriction, ForkOilHigh,
    ForkOilLow, ForkOilWorn, ForkPreload, ForkRateSoft, ForkRateStiff, ForkReboundFast,
    ForkReboundSlow, ForkReservoir, GasDrag, GasHigh, GasLow, GasNegative, GasShifted,
    HeadBearings, LinkageDry, MidValve, NothingWrong, ShockCompressionLittle, ShockCompressionMuch,
    ShockGasLost, ShockPreload, ShockRateSoft, ShockRateStiff, ShockReboundFast, ShockReboundSlow,
    TyreHigh, TyreLow,
};

/// One remedy of the catalogue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Which remedy.
    pub id: RemedyId,
    /// From free to wholesale.
    pub tier: Tier,
    /// Part of each cause that it takes away, 0 to 1.
    pub cures: &'static [(Cause, f64)],
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

const fn free(
    id: RemedyId,
    cures: &'static [(Cause, f64)],
    minutes: u32,
    cautions: &'static [&'static str],
) -> Entry {
    Entry {
        id,
        tier: Tier::Adjust,
        cures,
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
    cures: &'static [(Cause, f64)],
    minutes: u32,
    labour_hours: (f64, f64),
    cautions: &'static [&'static str],
) -> Entry {
    Entry {
        id,
        tier,
        cures,
        minutes,
        labour_hours,
        reversible: false,
        steps: 3,
        cautions,
    }
}

/// Every remedy, from free to wholesale.
pub const CATALOGUE: &[Entry] = &[
    free(RemedyId::RideOn, &[(NothingWrong, 1.0)], 1, &[]),
    free(
        RemedyId::OpenForkCompression,
        &[
            (ForkCompressionMuch, 0.8),
            (MidValve, 0.2),
            (ForkOilHigh, 0.1),
        ],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::CloseForkCompression,
        &[
            (ForkCompressionLittle, 0.8),
            (ForkRateSoft, 0.2),
            (GasLow, 0.15),
            (ForkOilWorn, 0.2),
            (ForkOilLow, 0.1),
        ],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::OpenForkRebound,
        &[(ForkReboundSlow, 0.85), (ForkFriction, 0.1)],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::CloseForkRebound,
        &[
            (ForkReboundFast, 0.85),
            (ForkOilWorn, 0.3),
            (ForkReservoir, 0.1),
        ],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::OpenShockCompression,
        &[(ShockCompressionMuch, 0.8), (ShockRateStiff, 0.15)],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::CloseShockCompression,
        &[(ShockCompressionLittle, 0.8), (ShockRateSoft, 0.15)],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::OpenShockRebound,
        &[(ShockReboundSlow, 0.85), (LinkageDry, 0.05)],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::CloseShockRebound,
        &[(ShockReboundFast, 0.85), (ShockGasLost, 0.1)],
        2,
        &["clicks"],
    ),
    free(
        RemedyId::SetTyres,
        &[
            (TyreHigh, 1.0),
            (TyreLow, 1.0),
            (ForkFriction, 0.05),
            (GasDrag, 0.05),
        ],
        5,
        &["tyres"],
    ),
    free(
        RemedyId::SetGasPressure,
        &[
            (GasLow, 1.0),
            (GasHigh, 1.0),
            (GasShifted, 1.0),
            (GasDrag, 0.2),
            (GasNegative, 0.2),
        ],
        10,
        &["gas-fork", "marked-maximum"],
    ),
    free(
        RemedyId::LevelNegative,
        &[(GasNegative, 0.9)],
        10,
        &["gas-fork"],
    ),
    free(
        RemedyId::BleedAir,
        &[
            (ForkRateStiff, 0.1),
            (ForkOilHigh, 0.2),
            (GasHigh, 0.1),
            (GasShifted, 0.5),
            (ForkFriction, 0.05),
        ],
        5,
        &["trapped-air"],
    ),
    free(
        RemedyId::AlignAxle,
        &[(ForkBound, 0.7), (ForkFriction, 0.1)],
        20,
        &["axle-clamps"],
    ),
    free(
        RemedyId::SetShockPreload,
        &[
            (ShockPreload, 1.0),
            (ShockRateSoft, 0.3),
            (ShockRateStiff, 0.25),
            (Attitude, 0.4),
        ],
        20,
        &["spring-preload", "clearance"],
    ),
    free(
        RemedyId::LevelBike,
        &[(Attitude, 0.8), (ShockPreload, 0.2), (ForkPreload, 0.2)],
        30,
        &["axle-clamps", "clearance"],
    ),
    paid(
        RemedyId::ServiceHead,
        Tier::Service,
        &[(HeadBearings, 0.9)],
        90,
        (1.0, 2.5),
        &["workshop-lift", "axle-clamps"],
    ),
    paid(
        RemedyId::ServiceSeals,
        Tier::Service,
        &[(ForkFriction, 0.8), (ForkBound, 0.15), (GasDrag, 0.2)],
        120,
        (1.0, 3.0),
        &["gas-fork", "axle-clamps", "oil-off-disc"],
    ),
    paid(
        RemedyId::ServiceForkOil,
        Tier::Service,
        &[
            (ForkOilWorn, 0.95),
            (ForkOilLow, 1.0),
            (ForkOilHigh, 1.0),
            (ForkFriction, 0.35),
            (ForkReservoir, 0.3),
        ],
        120,
        (1.0, 2.5),
        &["gas-fork", "axle-clamps", "oil-off-disc"],
    ),
    paid(
        RemedyId::ServiceLinkage,
        Tier::Service,
        &[(LinkageDry, 0.95)],
        120,
        (1.0, 3.0),
        &["workshop-lift", "axle-clamps"],
    ),
    paid(
        RemedyId::ServiceShock,
        Tier::Service,
        &[(ShockGasLost, 0.95), (ShockReboundFast, 0.1)],
        180,
        (2.0, 4.0),
        &["shock-gas"],
    ),
    paid(
        RemedyId::ForkSpacer,
        Tier::Workshop,
        &[(ForkPreload, 0.95)],
        60,
        (0.5, 1.5),
        &["spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ReduceDrag,
        Tier::Workshop,
        &[(GasDrag, 0.4), (ForkFriction, 0.45)],
        180,
        (2.0, 5.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::RestoreReservoir,
        Tier::Workshop,
        &[(ForkReservoir, 0.95), (MidValve, 0.2)],
        120,
        (1.0, 3.0),
        &["gas-fork"],
    ),
    paid(
        RemedyId::ForkSprings,
        Tier::Workshop,
        &[
            (ForkRateSoft, 1.0),
            (ForkRateStiff, 1.0),
            (ForkPreload, 0.8),
        ],
        90,
        (1.5, 3.5),
        &["spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ShockSpring,
        Tier::Workshop,
        &[
            (ShockRateSoft, 1.0),
            (ShockRateStiff, 1.0),
            (ShockPreload, 0.5),
        ],
        60,
        (1.5, 3.0),
        &["spring-preload", "clearance"],
    ),
    paid(
        RemedyId::FloatMidValve,
        Tier::Workshop,
        &[(MidValve, 0.85), (ForkCompressionMuch, 0.3)],
        180,
        (2.0, 4.0),
        &["gas-fork"],
    ),
    paid(
        RemedyId::RevalveFork,
        Tier::Workshop,
        &[
            (ForkCompressionMuch, 0.95),
            (ForkCompressionLittle, 0.95),
            (ForkReboundSlow, 0.95),
            (ForkReboundFast, 0.95),
            (MidValve, 0.6),
        ],
        240,
        (3.0, 6.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::RevalveShock,
        Tier::Workshop,
        &[
            (ShockCompressionMuch, 0.95),
            (ShockCompressionLittle, 0.95),
            (ShockReboundSlow, 0.95),
            (ShockReboundFast, 0.95),
            (ShockGasLost, 0.9),
        ],
        240,
        (3.0, 6.0),
        &["shock-gas"],
    ),
    paid(
        RemedyId::ConvertToCoil,
        Tier::Convert,
        &[
            (GasDrag, 0.9),
            (GasLow, 0.9),
            (GasHigh, 0.9),
            (GasNegative, 1.0),
            (ForkFriction, 0.5),
        ],
        240,
        (6.0, 12.0),
        &["gas-fork", "spring-preload", "axle-clamps"],
    ),
    paid(
        RemedyId::ReplaceForkInternals,
        Tier::Replace,
        &[
            (MidValve, 0.9),
            (GasDrag, 0.9),
            (ForkReservoir, 1.0),
            (ForkOilWorn, 1.0),
            (ForkCompressionMuch, 0.9),
            (ForkCompressionLittle, 0.9),
            (ForkReboundSlow, 0.9),
            (ForkReboundFast, 0.9),
        ],
        300,
        (15.0, 30.0),
        &["gas-fork", "axle-clamps"],
    ),
    paid(
        RemedyId::ReplaceShock,
        Tier::Replace,
        &[
            (ShockGasLost, 1.0),
            (ShockCompressionMuch, 0.9),
            (ShockCompressionLittle, 0.9),
            (ShockReboundSlow, 0.9),
            (ShockReboundFast, 0.9),
        ],
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
