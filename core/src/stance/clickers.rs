//! Where the adjusters start: clicks out from closed that give the damping aimed at.
//!
//! No adjuster says how much it does, so it is calibrated by what its maker had in mind: in the middle of its
//! range, the class's usual rider on the usual spring has the middle of the damping ratios of practice, which is
//! the target of club pace on mixed ground. From there each click is worth 5 % of low-speed force (practice: 3 to 8 %).
//! The first two and last two clicks are left alone, as adjusters tend to do nothing or everything there.

use super::damping::{at_axle, targets};
use super::error::StanceError;
use super::loads::Load;
use super::settle::{Ends, Stance, settle};
use super::wanted::Case;
use crate::bike::limits::within;
use crate::bike::{Class, SetUp, Surroundings};
use crate::intake::{ForkKind, Pace, Share, Terrain};
use crate::units::{Band, DampingRate, newton_second_per_meter};

/// Change of low-speed force by one click, relative.
pub const CLICK: Band<f64> = Band {
    low: 0.03,
    middle: 0.05,
    high: 0.08,
};
/// Clicks left alone at either end of the range.
pub const MARGIN: u8 = 2;

/// How many clicks each adjuster has from closed to open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ranges {
    /// Fork compression.
    pub fork_compression: u8,
    /// Fork rebound.
    pub fork_rebound: u8,
    /// Shock low-speed compression.
    pub shock_compression: u8,
    /// Shock rebound.
    pub shock_rebound: u8,
}

impl Default for Ranges {
    /// What is usual when nobody counted.
    fn default() -> Self {
        let usual = Class::CLICKS.middle;
        Self {
            fork_compression: usual,
            fork_rebound: usual,
            shock_compression: usual,
            shock_rebound: usual,
        }
    }
}

/// That an adjuster does not reach far enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clipped {
    /// Clicks from closed that would be needed; may be below zero or beyond the range.
    pub wanted: f64,
    /// Share of the wanted damping that the setting gives: below one it is too soft, above one too firm.
    pub share: f64,
}

/// The start of one adjuster, and the damping it stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Baseline {
    /// Damping ratio aimed at, dimensionless.
    pub ratio: Band<f64>,
    /// Damping coefficient at the axle, vertical, N s/m.
    pub at_axle: DampingRate,
    /// Damping coefficient along the fork leg (both legs together) or at the shock shaft, N s/m.
    pub at_part: DampingRate,
    /// Damping coefficient of each damper: the whole of `at_part` where one leg does the work of two.
    pub each_damper: DampingRate,
    /// Clicks from closed, within the range of the adjuster. The ends come from taste and from what a click may be worth.
    pub clicks: Band<u8>,
    /// Damping coefficient at the axle that the middle of the range stands for, N s/m.
    pub in_middle: DampingRate,
    /// Clicks there are.
    pub range: u8,
    /// What the range cut off, if anything.
    pub clipped: Option<Clipped>,
}

/// The start of all four low-speed adjusters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clickers {
    /// Fork compression.
    pub fork_compression: Baseline,
    /// Fork rebound.
    pub fork_rebound: Baseline,
    /// Shock low-speed compression.
    pub shock_compression: Baseline,
    /// Shock rebound.
    pub shock_rebound: Baseline,
}

/// Where to start with the set-up in `case`, which should be the one that will be ridden.
pub fn clickers(
    case: &Case,
    pace: Pace,
    ground: &[(Terrain, Share)],
    ranges: &Ranges,
) -> Result<Clickers, StanceError> {
    let Case {
        machine,
        load,
        set_up,
        surroundings,
        ..
    } = *case;
    let stance = settle(machine, load, set_up, surroundings)?;
    let usual = SetUp::usual(machine);
    let usual_load = Load::usual(machine.class);
    let reference = settle(machine, &usual_load, &usual, &Surroundings::USUAL)?;
    let aim = targets(pace, ground);
    let middle = targets(Pace::Club, &[]);

    let ends = Ends::build(machine, set_up, surroundings);
    // Speeds along the leg are higher than the axle's by 1/cos(rake), forces lower by cos(rake).
    let fork_share = ends.fork.cos_rake * ends.fork.cos_rake;
    let ratio = ends.shock.leverage.ratio(stance.ridden.rear.middle.value);
    let shaft_share = 1.0 / (ratio * ratio);
    let dampers = if machine.fork == ForkKind::CoilBothLegs {
        2.0
    } else {
        1.0
    };

    let front = |stance: &Stance, ratio| {
        at_axle(ratio, stance.front_wheel_rate, stance.ridden.front_load).value
    };
    let rear = |stance: &Stance, ratio| {
        at_axle(ratio, stance.rear_wheel_rate, stance.ridden.rear_load).value
    };
    let fork = |ratio: Band<f64>, usual: f64, range| {
        let wanted = ratio.map(|ratio| front(&stance, ratio));
        baseline(
            ratio,
            wanted,
            front(&reference, usual),
            fork_share,
            dampers,
            range,
        )
    };
    let shock = |ratio: Band<f64>, usual: f64, range| {
        let wanted = ratio.map(|ratio| rear(&stance, ratio));
        baseline(
            ratio,
            wanted,
            rear(&reference, usual),
            shaft_share,
            1.0,
            range,
        )
    };
    let (compression, rebound) = (middle.compression.middle, middle.rebound.middle);
    Ok(Clickers {
        fork_compression: fork(aim.compression, compression, ranges.fork_compression)?,
        fork_rebound: fork(aim.rebound, rebound, ranges.fork_rebound)?,
        shock_compression: shock(aim.compression, compression, ranges.shock_compression)?,
        shock_rebound: shock(aim.rebound, rebound, ranges.shock_rebound)?,
    })
}

fn baseline(
    ratio: Band<f64>,
    wanted: Band<f64>,
    in_middle: f64,
    part_share: f64,
    dampers: f64,
    range: u8,
) -> Result<Baseline, StanceError> {
    within("clicks of an adjuster", f64::from(range), 4.0, 60.0)?;
    let at = |rate: f64, click: f64| clicks_for(rate, in_middle, click, range);
    let exact = at(wanted.middle, CLICK.middle);
    // Few clicks out is firm: the firm end of the band is the low end of the clicks.
    let of_any_click =
        |rate: f64| [CLICK.low, CLICK.middle, CLICK.high].map(|click| at(rate, click));
    let lowest = of_any_click(wanted.high).into_iter().fold(exact, f64::min);
    let highest = of_any_click(wanted.low).into_iter().fold(exact, f64::max);

    let set = usable(exact, range);
    let clipped = ((set - exact).abs() > 0.5).then(|| Clipped {
        wanted: exact,
        share: libm::exp((exact - set) * libm::log1p(CLICK.middle)),
    });
    Ok(Baseline {
        ratio,
        at_axle: newton_second_per_meter(wanted.middle),
        at_part: newton_second_per_meter(wanted.middle * part_share),
        each_damper: newton_second_per_meter(wanted.middle * part_share / dampers),
        clicks: Band {
            low: lowest,
            middle: exact,
            high: highest,
        }
        .map(|clicks| whole(usable(clicks, range))),
        in_middle: newton_second_per_meter(in_middle),
        range,
        clipped,
    })
}

/// Clicks from closed at which an adjuster gives a damping at the axle, N s/m, when its middle gives `in_middle`.
fn clicks_for(rate: f64, in_middle: f64, click: f64, range: u8) -> f64 {
    0.5 * f64::from(range) - libm::log(rate / in_middle) / libm::log1p(click)
}

/// Clicks within the range of an adjuster, less those left alone at its ends.
fn usable(clicks: f64, range: u8) -> f64 {
    clicks.clamp(f64::from(MARGIN), f64::from(range - MARGIN))
}

impl Baseline {
    /// Clicks from closed for another taste and another worth of a click, neither rounded nor held within the range.
    ///
    /// `taste` is 0 for the middle of the damping ratios aimed at, −1 for their soft end, 1 for their firm end; `click` is the
    /// change of low-speed force by one click, relative, above 0.
    pub fn exact(&self, taste: f64, click: f64) -> f64 {
        let Band { low, middle, high } = self.ratio;
        let end = if taste < 0.0 {
            middle - low
        } else {
            high - middle
        };
        // Nobody's taste is for less than a tenth of what is aimed at.
        let share = (1.0 + taste * end / middle).max(0.1);
        clicks_for(
            share * self.at_axle.value,
            self.in_middle.value,
            click,
            self.range,
        )
    }

    /// Clicks held within the range of the adjuster, less those left alone at its ends.
    pub fn held(&self, clicks: f64) -> f64 {
        usable(clicks, self.range)
    }
}

/// The nearest whole click of a figure within the range of an adjuster.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "limited to the range of an adjuster, which is 4 to 60 clicks"
)]
fn whole(clicks: f64) -> u8 {
    clicks.round() as u8
}
