//! How far an answer could be off because an input is not known better: one input moved at a time.

use super::error::StanceError;
use super::situation::Situation;
use crate::bike::Class;
use crate::units::{kg, metre};

/// An input that is never known exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Input {
    /// Mass of the rider with gear, kg.
    Rider,
    /// Share of the rider on the front axle.
    RiderShare,
    /// Mass of the bike, kg.
    Bike,
    /// Share of the bike on the front axle.
    FrontShare,
    /// Rider sag aimed at, fork, m.
    ForkSag,
    /// Rider sag aimed at, rear, m.
    RearSag,
    /// Preload from which the rate of the fork springs is worked out, m.
    ForkPreload,
    /// Air gap over the oil of the fork, m.
    AirGap,
    /// Motion ratio of the rear, relative.
    MotionRatio,
    /// Preload from which the rate of the shock spring is worked out, m.
    ShockPreload,
}

impl Input {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Rider,
        Self::RiderShare,
        Self::Bike,
        Self::FrontShare,
        Self::ForkSag,
        Self::RearSag,
        Self::ForkPreload,
        Self::AirGap,
        Self::MotionRatio,
        Self::ShockPreload,
    ];

    /// One standard deviation of this input in a situation, in the input's own SI unit.
    ///
    /// Given weights: scales and gear differ by about 2 kg. A weight not told: riders of one class differ by
    /// about 12 kg. A sag is set to 3 mm at best. The rest is the spread within a class. All common practice.
    pub fn deviation(self, situation: &Situation) -> f64 {
        let (told, spread) = (&situation.told, Class::SPREAD);
        match self {
            Self::Rider if !told.rider => 12.0,
            Self::Rider if !told.gear => 0.5 * situation.machine.class.rider_gear.value,
            Self::Rider => spread.gear.value,
            Self::RiderShare if told.posture => spread.rider_share,
            Self::RiderShare => 2.0 * spread.rider_share,
            Self::Bike if told.bike => 2.0,
            Self::Bike => spread.wet_mass * situation.machine.wet_mass.value,
            Self::FrontShare => spread.front_share,
            Self::ForkSag | Self::RearSag => 0.003,
            Self::ForkPreload | Self::ShockPreload => spread.preload.value,
            Self::AirGap => spread.air_gap.value,
            Self::MotionRatio => spread.motion_ratio,
        }
    }

    /// The same situation with this input moved by `by` (its own SI unit).
    #[must_use]
    pub fn moved(self, situation: &Situation, by: f64) -> Situation {
        let mut moved = situation.clone();
        match self {
            Self::Rider => moved.load.rider = (moved.load.rider + kg(by)).max(kg(15.0)),
            Self::RiderShare => moved.load.rider_front_share += by,
            Self::Bike => moved.machine.wet_mass = (moved.machine.wet_mass + kg(by)).max(kg(40.0)),
            Self::FrontShare => moved.machine.front_share += by,
            Self::ForkSag => moved.fork_sag += metre(by),
            Self::RearSag => moved.rear_sag += metre(by),
            Self::ForkPreload => {
                moved.fork_preload = (moved.fork_preload + metre(by)).max(metre(0.0));
            }
            Self::AirGap => moved.now.fork.air_gap += metre(by),
            Self::MotionRatio => {
                moved.machine.leverage.top *= 1.0 + by;
                moved.machine.leverage.bottom *= 1.0 + by;
            }
            Self::ShockPreload => {
                moved.shock_preload = (moved.shock_preload + metre(by)).max(metre(0.0));
            }
        }
        moved
    }
}

/// How far an answer moves with one input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// The input.
    pub input: Input,
    /// One standard deviation of it, its own SI unit.
    pub deviation: f64,
    /// How far the answer moves when the input rises by that much, the answer's SI unit.
    pub moves_by: f64,
}

/// An answer with its likely range and what moves it.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranged {
    /// The answer with every input at its likeliest.
    pub value: f64,
    /// Half the width of the range that covers about four cases in five.
    pub half_width: f64,
    /// What moves it, most first; inputs that do not matter are left out.
    pub moves: Vec<Move>,
}

/// Standard deviations to either side that cover four in five of a normal distribution (table value 1.28).
const FOUR_IN_FIVE: f64 = 1.28;

/// Moves each input by one standard deviation either way and adds the effects as independent: root of the sum of squares.
///
/// # Errors
/// That of `answer` in the situation itself. A moved situation without answer leaves its input out.
pub fn ranged(
    situation: &Situation,
    answer: impl Fn(&Situation) -> Result<f64, StanceError>,
) -> Result<Ranged, StanceError> {
    let value = answer(situation)?;
    let mut moves: Vec<Move> = Input::ALL
        .into_iter()
        .filter_map(|input| {
            let deviation = input.deviation(situation);
            let up = answer(&input.moved(situation, deviation)).ok()?;
            let down = answer(&input.moved(situation, -deviation)).ok()?;
            Some(Move {
                input,
                deviation,
                moves_by: 0.5 * (up - down),
            })
        })
        .filter(|m| m.moves_by.abs() > 1e-4 * value.abs())
        .collect();
    moves.sort_by(|a, b| b.moves_by.abs().total_cmp(&a.moves_by.abs()));
    let variance: f64 = moves.iter().map(|m| m.moves_by * m.moves_by).sum();
    Ok(Ranged {
        value,
        half_width: FOUR_IN_FIVE * variance.sqrt(),
        moves,
    })
}
