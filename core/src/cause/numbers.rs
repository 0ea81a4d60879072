//! Every hand-set number of the diagnosis in one table.
//!
//! No outcome data exists. Odds, shares and histories are common practice, from memory; how strongly a rider answers to a step,
//! and what is said without cause, were fitted to one fleet of virtual bikes and are scored on another. `docs/diagnosis.md` says what happens to the
//! answers when any of these is halved or doubled.

use super::Cause;
use super::felt::FEELINGS;
use crate::intake::Feeling;

/// The numbers that turn what a bike does into what a rider says, and back.
#[derive(Debug, Clone, PartialEq)]
pub struct Numbers {
    /// Odds that a bike brought in has each cause, in the order of [`Cause::ALL`]; that of "nothing is wrong" is the weight
    /// of a bike without any.
    pub prior: [f64; Cause::COUNT],
    /// Share of a cause's odds that goes to its mild degree.
    pub mild: f64,
    /// Chance that a rider complains of a feeling at one end though nothing causes it, in the order of [`Feeling::ALL`].
    pub leak: [f64; FEELINGS],
    /// How much the log odds of a complaint rise with each step that can just be noticed, in the same order.
    pub gain: [f64; FEELINGS],
    /// How far riders differ in what they put up with: log odds between the middling and the touchy third.
    pub touchiness: f64,
    /// How much a feeling that is not mentioned counts, where three and more others are: riders name the worst few. It counts in
    /// full where one is.
    pub silence: f64,
    /// How much each counts when the rider says outright that nothing is wrong.
    pub denial: f64,
    /// Chance that a rider places at the wrong end what one end alone does.
    pub wrong_end: f64,
    /// Chance that a rider says "both" of what one end alone does.
    pub says_both: f64,
    /// How much the log odds of a worse word rise with each step.
    pub severity: f64,
    /// How much the log odds of a moment rise with each step more in that moment than in the rest of the lap.
    pub moment: f64,
    /// Chance that a history told is one that is usual for the cause; otherwise it is any.
    pub history: f64,
    /// Chance that a reading is wrong altogether: another unit, another bike, a misread tape.
    pub blunder: f64,
    /// How far the size of a fault varies about its two degrees, relative.
    pub vagueness: f64,
    /// Share of damping faults that stand in the clickers, the rest in the valves.
    pub in_clickers: f64,
    /// How much the log odds of what a push test shows rise with each step that can just be noticed.
    pub push: f64,
    /// How much the weight of everything said and measured counts: 1 where each piece is worth what it says. Fitted, it comes
    /// out at 1.1; no evidence is let count more than once.
    pub temper: f64,
    /// Factor on the odds of two faults at once beside the product of their odds: riders seek help before a second comes.
    pub together: f64,
    /// Steps at which half of those who complain find it more than slight.
    pub clear_at: f64,
    /// Steps at which half of those who complain find it bad.
    pub bad_at: f64,
    /// Share of the moments of a lap that riders tick, whatever they complain of.
    pub ticked: f64,
    /// How much each moment ticked counts: moments of one complaint are not independent.
    pub each_moment: f64,
}

impl Numbers {
    /// The numbers in use.
    pub const USUAL: Self = Self {
        prior: priors(),
        mild: 0.5,
        leak: per_feeling(true),
        gain: per_feeling(false),
        touchiness: 0.44,
        silence: 0.54,
        denial: 2.9,
        wrong_end: 0.06,
        says_both: 0.094,
        severity: 0.6,
        moment: 1.5,
        history: 0.7,
        blunder: 0.027,
        vagueness: 0.35,
        in_clickers: 0.67,
        push: 2.0,
        temper: 1.0,
        together: 0.4,
        clear_at: 1.2,
        bad_at: 5.4,
        ticked: 0.19,
        each_moment: 0.9,
    };
}

/// Odds of each cause among bikes of riders who ask for help.
#[expect(
    clippy::match_same_arms,
    reason = "a table that is read by what the causes have in common"
)]
const fn priors() -> [f64; Cause::COUNT] {
    let mut all = [0.0; Cause::COUNT];
    let mut place = 0;
    while place < Cause::COUNT {
        all[place] = match Cause::ALL[place] {
            Cause::ForkRateSoft | Cause::ShockPreload | Cause::ForkFriction => 0.08,
            Cause::GasDrag | Cause::GasLow | Cause::GasHigh => 0.08,
            Cause::ForkCompressionMuch | Cause::ShockRateSoft => 0.07,
            Cause::ForkRateStiff
            | Cause::ForkCompressionLittle
            | Cause::ForkReboundSlow
            | Cause::ShockReboundFast
            | Cause::ShockReboundSlow
            | Cause::ShockCompressionMuch => 0.06,
            Cause::ForkReboundFast
            | Cause::ShockRateStiff
            | Cause::LinkageDry
            | Cause::ForkOilWorn
            | Cause::Attitude
            | Cause::TyreHigh
            | Cause::ShockCompressionLittle => 0.05,
            Cause::ForkPreload | Cause::ForkOilLow | Cause::TyreLow | Cause::ShockGasLost => 0.04,
            Cause::ForkBound
            | Cause::ForkOilHigh
            | Cause::MidValve
            | Cause::GasNegative
            | Cause::GasShifted
            | Cause::HeadBearings => 0.035,
            Cause::ForkReservoir => 0.03,
            Cause::NothingWrong => 0.6,
        };
        place += 1;
    }
    all
}

/// Leak or gain of each feeling.
const fn per_feeling(leak: bool) -> [f64; FEELINGS] {
    let mut all = [0.0; FEELINGS];
    let mut place = 0;
    while place < FEELINGS {
        let (own_leak, own_gain) = match Feeling::ALL[place] {
            Feeling::HarshSmallBumps => (0.021, 1.9),
            Feeling::HarshBigHits => (0.021, 2.9),
            Feeling::Dives => (0.040, 1.7),
            Feeling::Packs => (0.040, 1.75),
            Feeling::Bottoms => (0.039, 2.4),
            Feeling::RampsUp => (0.052, 1.9),
            Feeling::Kicks => (0.017, 2.7),
            Feeling::Wallows => (0.0145, 2.6),
            Feeling::Springs => (0.031, 1.95),
            Feeling::Pushes => (0.0135, 1.9),
            Feeling::Headshake => (0.026, 2.2),
            Feeling::Squats => (0.017, 1.7),
            Feeling::Skips => (0.030, 2.9),
            Feeling::Sticks => (0.011, 2.1),
            Feeling::Fades => (0.019, 2.9),
            Feeling::SitsWrong => (0.039, 2.15),
        };
        all[place] = if leak { own_leak } else { own_gain };
        place += 1;
    }
    all
}
