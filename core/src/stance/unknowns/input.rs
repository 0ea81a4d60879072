//! What is not known exactly: how it is spread, and which question would settle it.

use super::kinds;
use crate::bike::Class;
use crate::intake::{FuelLoad, Pace, Posture, Question, Terrain};
use crate::stance::situation::Situation;
use crate::units::{kg, metre};

/// Something that is never, or was not, known exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Input {
    /// Class of bike.
    Class,
    /// Mass of the rider with gear, kg.
    Rider,
    /// Whether the rider's weight included gear.
    Gear,
    /// How the rider spends most of the time.
    Posture,
    /// Share of the rider on the front axle in that posture.
    RiderShare,
    /// Mass of the bike, kg.
    Bike,
    /// Fuel aboard on a usual ride.
    Fuel,
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
    /// Pace.
    Pace,
    /// Ground.
    Ground,
    /// What the rider likes in damping, standard deviations towards firm.
    Taste,
    /// What a click is worth, as the logarithm of its ratio to the usual.
    Click,
    /// Positions of the fork's compression adjuster.
    ForkCompressionRange,
    /// Positions of the fork's rebound adjuster.
    ForkReboundRange,
    /// Positions of the shock's low-speed compression adjuster.
    ShockCompressionRange,
    /// Positions of the shock's rebound adjuster.
    ShockReboundRange,
    /// Positions of the shock's high-speed compression adjuster.
    HighSpeedRange,
    /// What the rider likes in tyre pressure, standard deviations towards hard.
    TyreTaste,
}

/// How an input is spread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spread {
    /// Known.
    Known,
    /// Normal about the likeliest, with this standard deviation in the input's own SI unit.
    Normal(f64),
    /// Even chances over so many kinds that have no order.
    Kinds(usize),
    /// Even chances over so many counts, lowest first.
    Counts(usize),
}

/// Standard deviations to either side that hold four in five of a normal distribution (table value 1.2816).
pub const FOUR_IN_FIVE: f64 = 1.2816;
/// One standard deviation of a rider that was weighed, with what is worn on another day, kg (common practice).
const WEIGHED_RIDER_KG: f64 = 2.0;
/// One standard deviation of the riders of one class, kg (common practice).
const RIDERS_OF_A_CLASS_KG: f64 = 12.0;
/// One standard deviation of a bike that was weighed, kg (common practice).
const WEIGHED_BIKE_KG: f64 = 2.0;
/// One standard deviation of a weight that was guessed, relative (common practice, from memory).
const GUESSED: f64 = 0.025;
/// One standard deviation with which a sag is set, m: 3 mm at best (common practice).
const SAG_SET_M: f64 = 0.003;

impl Input {
    /// All of them, in the order in which they are drawn: the class first, since it brings the figures of the rest.
    pub const ALL: [Self; 24] = [
        Self::Class,
        Self::Rider,
        Self::Gear,
        Self::Posture,
        Self::RiderShare,
        Self::Bike,
        Self::Fuel,
        Self::FrontShare,
        Self::ForkSag,
        Self::RearSag,
        Self::ForkPreload,
        Self::AirGap,
        Self::MotionRatio,
        Self::ShockPreload,
        Self::Pace,
        Self::Ground,
        Self::Taste,
        Self::Click,
        Self::ForkCompressionRange,
        Self::ForkReboundRange,
        Self::ShockCompressionRange,
        Self::ShockReboundRange,
        Self::HighSpeedRange,
        Self::TyreTaste,
    ];

    /// The word that stands for it in text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Class => "class",
            Self::Rider => "rider",
            Self::Gear => "gear",
            Self::Posture => "posture",
            Self::RiderShare => "rider-share",
            Self::Bike => "bike",
            Self::Fuel => "fuel",
            Self::FrontShare => "front-share",
            Self::ForkSag => "fork-sag",
            Self::RearSag => "rear-sag",
            Self::ForkPreload => "fork-preload",
            Self::AirGap => "air-gap",
            Self::MotionRatio => "motion-ratio",
            Self::ShockPreload => "shock-preload",
            Self::Pace => "pace",
            Self::Ground => "ground",
            Self::Taste => "taste",
            Self::Click => "click",
            Self::ForkCompressionRange => "fork-compression-range",
            Self::ForkReboundRange => "fork-rebound-range",
            Self::ShockCompressionRange => "shock-compression-range",
            Self::ShockReboundRange => "shock-rebound-range",
            Self::HighSpeedRange => "high-speed-range",
            Self::TyreTaste => "tyre-taste",
        }
    }

    /// How it is spread in a situation. Figures of a class spread as its bikes do, all common practice.
    pub fn spread(self, situation: &Situation) -> Spread {
        let (told, class) = (&situation.told, Class::SPREAD);
        let unless = |told: bool, spread: Spread| if told { Spread::Known } else { spread };
        let count = |told: bool, kinds: kinds::Counts| unless(told, Spread::Counts(kinds.len()));
        match self {
            Self::Class if situation.could_be.is_empty() => Spread::Known,
            Self::Class => Spread::Kinds(situation.could_be.len()),
            Self::Rider if !told.rider => Spread::Normal(RIDERS_OF_A_CLASS_KG),
            Self::Rider => Spread::Normal(weighed(
                WEIGHED_RIDER_KG,
                told.rider_guessed,
                situation.load.rider.value,
            )),
            Self::Gear => unless(told.gear || !told.rider, Spread::Kinds(2)),
            Self::Posture => unless(told.posture, Spread::Kinds(Posture::ALL.len())),
            Self::RiderShare => Spread::Normal(class.rider_share),
            Self::Bike if told.bike => Spread::Normal(weighed(
                WEIGHED_BIKE_KG,
                told.bike_guessed,
                situation.machine.wet_mass.value,
            )),
            Self::Bike => Spread::Normal(class.wet_mass * situation.machine.wet_mass.value),
            Self::Fuel => unless(told.fuel, Spread::Kinds(FuelLoad::ALL.len())),
            Self::FrontShare => Spread::Normal(class.front_share),
            Self::ForkSag | Self::RearSag => Spread::Normal(SAG_SET_M),
            Self::ForkPreload | Self::ShockPreload => Spread::Normal(class.preload.value),
            Self::AirGap => Spread::Normal(class.air_gap.value),
            Self::MotionRatio => Spread::Normal(class.motion_ratio),
            Self::Pace => unless(told.pace, Spread::Kinds(Pace::ALL.len())),
            // Even ground, or plenty of one kind.
            Self::Ground => unless(told.ground, Spread::Kinds(1 + Terrain::ALL.len())),
            Self::Taste | Self::TyreTaste => Spread::Normal(1.0),
            Self::Click => Spread::Normal(kinds::click_deviation()),
            Self::ForkCompressionRange => count(told.counted.fork_compression, kinds::CLICKS),
            Self::ForkReboundRange => count(told.counted.fork_rebound, kinds::CLICKS),
            Self::ShockCompressionRange => count(told.counted.shock_compression, kinds::CLICKS),
            Self::ShockReboundRange => count(told.counted.shock_rebound, kinds::CLICKS),
            Self::HighSpeedRange => count(told.counted.high_speed, kinds::QUARTER_TURNS),
        }
    }

    /// The question that would settle it, where it was not answered or only by a guess.
    pub fn question(self, situation: &Situation) -> Option<Question> {
        let told = &situation.told;
        let unless = |told: bool, question: Question| (!told).then_some(question);
        match self {
            Self::Class => unless(told.class, Question::BikeClass),
            Self::Rider => unless(told.rider && !told.rider_guessed, Question::RiderWeight),
            Self::Gear => unless(told.gear || !told.rider, Question::RiderGear),
            Self::Posture => unless(told.posture, Question::RiderPosture),
            Self::Bike => unless(told.bike && !told.bike_guessed, Question::BikeWeight),
            Self::Fuel => unless(told.fuel, Question::BikeFuel),
            Self::Pace => unless(told.pace, Question::RiderPace),
            Self::Ground => unless(told.ground, Question::GroundMix),
            Self::ForkCompressionRange => {
                unless(told.counted.fork_compression, Question::ForkClickers)
            }
            Self::ForkReboundRange => unless(told.counted.fork_rebound, Question::ForkClickers),
            Self::ShockCompressionRange => {
                unless(told.counted.shock_compression, Question::ShockClickers)
            }
            Self::ShockReboundRange => unless(told.counted.shock_rebound, Question::ShockClickers),
            Self::HighSpeedRange => unless(told.counted.high_speed, Question::ShockClickers),
            Self::RiderShare
            | Self::FrontShare
            | Self::ForkSag
            | Self::RearSag
            | Self::ForkPreload
            | Self::AirGap
            | Self::MotionRatio
            | Self::ShockPreload
            | Self::Taste
            | Self::Click
            | Self::TyreTaste => None,
        }
    }

    /// The part of this input's variance that a measured answer to its question would leave, 0 to 1.
    pub fn left_by_an_answer(self, situation: &Situation) -> f64 {
        let measured = match self {
            Self::Rider => WEIGHED_RIDER_KG,
            Self::Bike => WEIGHED_BIKE_KG,
            _ => 0.0,
        };
        match self.spread(situation) {
            Spread::Normal(deviation) => (measured / deviation) * (measured / deviation),
            Spread::Known | Spread::Kinds(_) | Spread::Counts(_) => 0.0,
        }
    }

    /// The same situation with this input elsewhere: moved by `at` in its own SI unit where it is spread normally, else the
    /// kind or count numbered `at` from 0. A kind there is none of changes nothing.
    #[must_use]
    pub fn put(self, situation: &Situation, at: f64) -> Situation {
        let mut moved = situation.clone();
        match self {
            Self::Class => {
                if let Some(other) = kinds::nth(&situation.could_be, at) {
                    moved = other.clone();
                }
            }
            Self::Rider => moved.load.rider = (moved.load.rider + kg(at)).max(kg(15.0)),
            Self::Gear => {
                // First without gear, which is what is taken; then with it.
                if at > 0.5 {
                    moved.load.rider =
                        (moved.load.rider - moved.machine.class.rider_gear).max(kg(15.0));
                }
            }
            Self::Posture => kinds::put_posture(&mut moved.load, at),
            Self::RiderShare => moved.load.rider_front_share += at,
            Self::Bike => moved.machine.wet_mass = (moved.machine.wet_mass + kg(at)).max(kg(40.0)),
            Self::Fuel => {
                moved.load.fuel = kinds::nth(FuelLoad::ALL, at)
                    .copied()
                    .unwrap_or(moved.load.fuel);
            }
            Self::FrontShare => moved.machine.front_share += at,
            Self::ForkSag => moved.fork_sag += metre(at),
            Self::RearSag => moved.rear_sag += metre(at),
            Self::ForkPreload => {
                moved.fork_preload = (moved.fork_preload + metre(at)).max(metre(0.0));
            }
            Self::AirGap => moved.now.fork.air_gap += metre(at),
            Self::MotionRatio => {
                moved.machine.leverage.top *= 1.0 + at;
                moved.machine.leverage.bottom *= 1.0 + at;
            }
            Self::ShockPreload => {
                moved.shock_preload = (moved.shock_preload + metre(at)).max(metre(0.0));
            }
            Self::Pace => moved.pace = kinds::nth(Pace::ALL, at).copied().unwrap_or(moved.pace),
            Self::Ground => moved.ground = kinds::ground(at),
            Self::ForkCompressionRange => moved.ranges.fork_compression = kinds::CLICKS.nth(at),
            Self::ForkReboundRange => moved.ranges.fork_rebound = kinds::CLICKS.nth(at),
            Self::ShockCompressionRange => moved.ranges.shock_compression = kinds::CLICKS.nth(at),
            Self::ShockReboundRange => moved.ranges.shock_rebound = kinds::CLICKS.nth(at),
            Self::HighSpeedRange => moved.high_speed_range = kinds::QUARTER_TURNS.nth(at),
            // These belong to the rider's hand and to the adjuster, not to where the bike sits.
            Self::Taste | Self::Click | Self::TyreTaste => {}
        }
        moved
    }
}

/// One standard deviation of a weight told: that of a scale, and that of a guess where it was one.
fn weighed(scale_kg: f64, guessed: bool, mass_kg: f64) -> f64 {
    let guess_kg = if guessed { GUESSED * mass_kg } else { 0.0 };
    (scale_kg * scale_kg + guess_kg * guess_kg).sqrt()
}
