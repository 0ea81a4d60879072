//! How each cause usually shows: the hand table of the first diagnosis.
//!
//! Every figure here is common practice, from memory: no outcome data exists. A simulated table can take
//! its place without touching anything else, since all that leaves this room are likelihoods.

use super::Cause;
use crate::intake::End::{Both, Front, Rear};
use crate::intake::Feeling::{
    Bottoms, Dives, Fades, HarshBigHits, HarshSmallBumps, Headshake, Kicks, Packs, Pushes, RampsUp,
    SitsWrong, Skips, Springs, Squats, Sticks, Wallows,
};
use crate::intake::Phase::{self, Braking, Exit, Landing, MidTurn, Straight, TurnEntry};
use crate::intake::Since::{self, Always, SinceWork, Slowly, Suddenly};
use crate::intake::{End, Feeling};

/// How one cause usually shows.
pub struct Signature {
    /// Odds before anything is said, relative to the other causes.
    pub prior: f64,
    /// What is felt, at which end, and the chance that a rider whose bike has the cause says so, 0 to 1.
    pub feelings: &'static [(Feeling, End, f64)],
    /// When it shows most.
    pub phases: &'static [Phase],
    /// How it usually comes on.
    pub onset: &'static [Since],
}

/// The chance that a rider mentions a feeling though nothing causes it at all, per feeling.
pub const LEAK: f64 = 0.05;

/// How `cause` usually shows.
#[allow(
    clippy::too_many_lines,
    reason = "one table, read top to bottom; splitting it would hide the comparison"
)]
pub const fn of(cause: Cause) -> Signature {
    match cause {
        Cause::ForkRateSoft => signature(
            1.6,
            &[
                (Dives, Front, 0.75),
                (Bottoms, Front, 0.65),
                (SitsWrong, Front, 0.5),
                (HarshBigHits, Front, 0.25),
                (Packs, Front, 0.2),
                (Headshake, Front, 0.2),
            ],
            &[Braking, Landing, TurnEntry],
            &[Always, SinceWork],
        ),
        Cause::ForkRateStiff => signature(
            1.2,
            &[
                (RampsUp, Front, 0.6),
                (HarshSmallBumps, Front, 0.45),
                (HarshBigHits, Front, 0.45),
                (Pushes, Front, 0.45),
                (SitsWrong, Front, 0.4),
                (Skips, Front, 0.35),
            ],
            &[TurnEntry, MidTurn, Straight],
            &[Always, SinceWork],
        ),
        Cause::ForkPreload => signature(
            0.8,
            &[
                (SitsWrong, Front, 0.6),
                (HarshSmallBumps, Front, 0.3),
                (Pushes, Front, 0.25),
                (Dives, Front, 0.25),
            ],
            &[TurnEntry, Braking],
            &[Always, SinceWork],
        ),
        Cause::GasLow => signature(
            1.4,
            &[
                (Dives, Front, 0.75),
                (Bottoms, Front, 0.6),
                (SitsWrong, Front, 0.55),
                (Packs, Front, 0.2),
                (Headshake, Front, 0.2),
            ],
            &[Braking, Landing, TurnEntry],
            &[Slowly, Suddenly],
        ),
        Cause::GasHigh => signature(
            1.3,
            &[
                (HarshSmallBumps, Front, 0.6),
                (RampsUp, Front, 0.55),
                (Sticks, Front, 0.5),
                (Pushes, Front, 0.4),
                (Skips, Front, 0.4),
                (SitsWrong, Front, 0.35),
                (HarshBigHits, Front, 0.3),
            ],
            &[Straight, TurnEntry, MidTurn],
            &[Always, SinceWork],
        ),
        Cause::GasNegative => signature(
            0.6,
            &[
                (HarshSmallBumps, Front, 0.6),
                (Sticks, Front, 0.5),
                (SitsWrong, Front, 0.45),
                (Skips, Front, 0.3),
                (Dives, Front, 0.2),
            ],
            &[Straight, TurnEntry],
            &[Suddenly, SinceWork],
        ),
        Cause::GasDrag => signature(
            2.0,
            &[
                (HarshSmallBumps, Front, 0.75),
                (Sticks, Front, 0.6),
                (RampsUp, Front, 0.45),
                (Skips, Front, 0.4),
                (Dives, Front, 0.35),
            ],
            &[Straight, Braking],
            &[Always],
        ),
        Cause::ForkFriction => signature(
            1.6,
            &[
                (HarshSmallBumps, Front, 0.75),
                (Sticks, Front, 0.7),
                (Skips, Front, 0.4),
                (HarshBigHits, Front, 0.2),
                (Pushes, Front, 0.2),
                (SitsWrong, Front, 0.15),
            ],
            &[Straight, Braking],
            &[Slowly],
        ),
        Cause::ForkBound => signature(
            0.7,
            &[
                (Sticks, Front, 0.7),
                (HarshSmallBumps, Front, 0.6),
                (HarshBigHits, Front, 0.3),
                (Skips, Front, 0.3),
            ],
            &[Straight, Braking],
            &[Suddenly, SinceWork],
        ),
        Cause::ForkOilLow => signature(
            0.8,
            &[
                (Bottoms, Front, 0.75),
                (Dives, Front, 0.4),
                (HarshBigHits, Front, 0.2),
                (Fades, Front, 0.15),
            ],
            &[Landing, Braking],
            &[Slowly, SinceWork],
        ),
        Cause::ForkOilHigh => signature(
            0.6,
            &[(RampsUp, Front, 0.75), (HarshBigHits, Front, 0.5)],
            &[Landing, Braking],
            &[SinceWork],
        ),
        Cause::ForkOilWorn => signature(
            1.0,
            &[
                (Fades, Front, 0.55),
                (Springs, Front, 0.35),
                (Dives, Front, 0.35),
                (Wallows, Front, 0.35),
                (Bottoms, Front, 0.3),
            ],
            &[Braking, Straight],
            &[Slowly],
        ),
        Cause::ForkCompressionMuch => signature(
            1.5,
            &[
                (HarshBigHits, Front, 0.7),
                (HarshSmallBumps, Front, 0.5),
                (RampsUp, Front, 0.45),
                (Skips, Front, 0.45),
                (Pushes, Front, 0.25),
            ],
            &[Straight, Braking],
            &[Always, SinceWork],
        ),
        Cause::ForkCompressionLittle => signature(
            1.2,
            &[
                (Dives, Front, 0.6),
                (Bottoms, Front, 0.5),
                (Wallows, Front, 0.35),
            ],
            &[Braking, Landing],
            &[Always, SinceWork],
        ),
        Cause::ForkReboundSlow => signature(
            1.2,
            &[
                (Packs, Front, 0.8),
                (HarshBigHits, Front, 0.35),
                (HarshSmallBumps, Front, 0.3),
                (Skips, Front, 0.3),
                (SitsWrong, Front, 0.2),
                (Sticks, Front, 0.15),
            ],
            &[Straight, Braking],
            &[Always, SinceWork],
        ),
        Cause::ForkReboundFast => signature(
            1.0,
            &[
                (Springs, Front, 0.75),
                (Headshake, Front, 0.4),
                (Skips, Front, 0.35),
                (Pushes, Front, 0.3),
                (Wallows, Front, 0.3),
            ],
            &[TurnEntry, Straight, Landing],
            &[Always, SinceWork],
        ),
        Cause::MidValve => signature(
            0.7,
            &[
                (HarshBigHits, Front, 0.65),
                (HarshSmallBumps, Front, 0.45),
                (RampsUp, Front, 0.3),
                (Fades, Front, 0.25),
                (Sticks, Front, 0.2),
            ],
            &[Landing, Braking, Straight],
            &[Always],
        ),
        Cause::ForkReservoir => signature(
            0.5,
            &[
                (Fades, Front, 0.65),
                (Springs, Front, 0.3),
                (Wallows, Front, 0.3),
                (Dives, Front, 0.3),
                (Bottoms, Front, 0.3),
            ],
            &[Braking, Landing, Straight],
            &[Slowly, Suddenly],
        ),
        Cause::ShockRateSoft => signature(
            1.4,
            &[
                (Bottoms, Rear, 0.65),
                (Squats, Rear, 0.6),
                (SitsWrong, Rear, 0.55),
                (Pushes, Front, 0.35),
                (Wallows, Rear, 0.3),
                (Kicks, Rear, 0.25),
                (Packs, Rear, 0.2),
            ],
            &[Exit, Landing],
            &[Always, SinceWork],
        ),
        Cause::ShockRateStiff => signature(
            1.0,
            &[
                (Kicks, Rear, 0.5),
                (Skips, Rear, 0.5),
                (HarshBigHits, Rear, 0.4),
                (HarshSmallBumps, Rear, 0.35),
                (SitsWrong, Rear, 0.35),
                (RampsUp, Rear, 0.35),
                (Headshake, Front, 0.15),
            ],
            &[Braking, Straight],
            &[Always, SinceWork],
        ),
        Cause::ShockPreload => signature(
            1.6,
            &[
                (SitsWrong, Rear, 0.6),
                (Squats, Rear, 0.4),
                (Pushes, Front, 0.35),
                (Headshake, Front, 0.25),
                (Kicks, Rear, 0.2),
            ],
            &[TurnEntry, Exit, MidTurn],
            &[Always, SinceWork],
        ),
        Cause::ShockCompressionMuch => signature(
            1.1,
            &[
                (HarshBigHits, Rear, 0.6),
                (Kicks, Rear, 0.55),
                (Skips, Rear, 0.45),
                (HarshSmallBumps, Rear, 0.4),
                (RampsUp, Rear, 0.3),
            ],
            &[Straight, Braking],
            &[Always, SinceWork],
        ),
        Cause::ShockCompressionLittle => signature(
            0.9,
            &[
                (Bottoms, Rear, 0.55),
                (Squats, Rear, 0.5),
                (Wallows, Rear, 0.45),
            ],
            &[Exit, Landing],
            &[Always, SinceWork],
        ),
        Cause::ShockReboundSlow => signature(
            1.1,
            &[
                (Packs, Rear, 0.8),
                (Skips, Rear, 0.4),
                (HarshBigHits, Rear, 0.35),
                (Squats, Rear, 0.25),
                (SitsWrong, Rear, 0.2),
            ],
            &[Straight, Exit],
            &[Always, SinceWork],
        ),
        Cause::ShockReboundFast => signature(
            1.1,
            &[
                (Kicks, Rear, 0.75),
                (Springs, Rear, 0.6),
                (Wallows, Rear, 0.35),
                (Skips, Rear, 0.3),
            ],
            &[Braking, Straight, Landing],
            &[Always, SinceWork],
        ),
        Cause::ShockGasLost => signature(
            0.7,
            &[
                (Fades, Rear, 0.7),
                (Wallows, Rear, 0.55),
                (Springs, Rear, 0.4),
                (Bottoms, Rear, 0.35),
                (Kicks, Rear, 0.35),
            ],
            &[Straight, Landing, Exit],
            &[Slowly, Suddenly],
        ),
        Cause::LinkageDry => signature(
            1.0,
            &[
                (Sticks, Rear, 0.55),
                (HarshSmallBumps, Rear, 0.5),
                (Skips, Rear, 0.4),
                (Kicks, Rear, 0.25),
                (Packs, Rear, 0.15),
            ],
            &[Straight, Braking],
            &[Slowly],
        ),
        Cause::Attitude => signature(
            0.9,
            &[
                (Pushes, Front, 0.55),
                (Headshake, Front, 0.5),
                (SitsWrong, Both, 0.45),
                (Kicks, Rear, 0.15),
            ],
            &[TurnEntry, MidTurn, Straight],
            &[Always, SinceWork],
        ),
        Cause::TyreHigh => signature(
            0.9,
            &[
                (Skips, Both, 0.55),
                (HarshSmallBumps, Both, 0.5),
                (Pushes, Front, 0.3),
            ],
            &[Straight, Braking, MidTurn],
            &[Always, SinceWork],
        ),
        Cause::TyreLow => signature(
            0.6,
            &[
                (Wallows, Both, 0.35),
                (Pushes, Front, 0.35),
                (HarshBigHits, Both, 0.15),
            ],
            &[MidTurn, TurnEntry],
            &[Slowly, Suddenly],
        ),
        Cause::HeadBearings => signature(
            0.7,
            &[(Headshake, Front, 0.65), (Pushes, Front, 0.3)],
            &[Straight, Braking],
            &[Slowly],
        ),
        Cause::NothingWrong => signature(1.5, &[], &[], &[]),
    }
}

/// One row of the table.
const fn signature(
    prior: f64,
    feelings: &'static [(Feeling, End, f64)],
    phases: &'static [Phase],
    onset: &'static [Since],
) -> Signature {
    Signature {
        prior,
        feelings,
        phases,
        onset,
    }
}
