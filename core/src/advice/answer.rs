//! The form of the answer. Every number carries its reason; every sentence is a key with values.

use serde::Serialize;

use super::figure::Figure;
use super::laps::NextLap;
use super::picture::{BreakawayTable, DampingPicture, ForcePicture};
use super::remedy_finding::RemedyFinding;
use super::ridden::Ridden;
use crate::cause::Cause;
use crate::intake::{Change, End, Field, Look, Question, StopSign};
use crate::quantity::Dimension;
use crate::words::Text;

/// What Sagwright answers to an intake.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Advice {
    /// A stop-riding sign was seen: no set-up numbers, only what to do instead.
    StopRiding(StopRiding),
    /// A set-up with its reasons.
    SetUp(Box<SetUpAdvice>),
}

/// The answer when the bike is not to be ridden.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StopRiding {
    /// What was found and what it means, in one sentence.
    pub sentence: Text,
    /// Each sign seen, with what to do about it.
    pub signs: Vec<StopFinding>,
    /// Cautions that apply.
    pub cautions: Vec<Caution>,
}

/// One stop-riding sign and what to do.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StopFinding {
    /// The sign.
    pub sign: StopSign,
    /// Why it ends the ride.
    pub why: Text,
    /// What to do instead.
    pub instead: Text,
}

/// The whole answer, top to bottom as it is read.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SetUpAdvice {
    /// Most likely cause, how sure, what to do first.
    pub sentence: Text,
    /// Said beneath the sentence: no field data yet, close call, answers that contradict each other.
    pub caveats: Vec<Text>,
    /// Springs, sags, preload, every adjuster, tyre pressures.
    pub settings: Vec<Setting>,
    /// How a workshop counts clicks, where it counts from fully open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counting: Option<Text>,
    /// Causes, most likely first. Each has the chance that it is there; two can be there at once, so they need not add up to 1.
    pub causes: Vec<CauseFinding>,
    /// The check that tells most about what is wrong for the minutes it costs, then those to do instead where it cannot be
    /// done now; empty where none would tell enough.
    pub next_checks: Vec<NextCheck>,
    /// The changes worth a lap at the track, the best first; empty until the bike was ridden, and where nothing is felt.
    pub next_laps: Vec<NextLap>,
    /// Remedies in the order to try them; the first one leads.
    pub remedies: Vec<RemedyFinding>,
    /// Gas beside coil over the travel.
    pub force_picture: ForcePicture,
    /// Force to get moving, gas beside coil.
    pub breakaway: BreakawayTable,
    /// Damping over speed, a picture for each clicker; none where no damper can be sized for this bike.
    pub damping: Vec<DampingPicture>,
    /// What rides over the rider's ground found, where they were ridden.
    pub rides: Option<Ridden>,
    /// What was assumed for want of an answer, and which page would narrow it.
    pub assumptions: Vec<Assumption>,
    /// The one answer that would narrow the numbers most, where one is worth giving.
    pub narrows_most: Option<NarrowsMost>,
    /// Cautions that apply to anything advised here.
    pub cautions: Vec<Caution>,
}

/// What a row of the settings card is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SettingId {
    /// Rate of each fork spring.
    ForkRate,
    /// Fork gas pressure, gauge, at today's temperature and altitude.
    ForkPressure,
    /// Fork spring preload.
    ForkPreload,
    /// Shock spring rate.
    ShockRate,
    /// Shock spring preload.
    ShockPreload,
    /// Free sag, front, along the leg.
    ForkFreeSag,
    /// Rider sag, front, along the leg.
    ForkRiderSag,
    /// Free sag, rear axle.
    RearFreeSag,
    /// Rider sag, rear axle.
    RearRiderSag,
    /// Fork compression clicker.
    ForkCompression,
    /// Fork rebound clicker.
    ForkRebound,
    /// Shock low-speed compression clicker.
    ShockLowCompression,
    /// Shock high-speed compression adjuster, quarter turns.
    ShockHighCompression,
    /// Shock rebound clicker.
    ShockRebound,
    /// Front tyre pressure.
    FrontTyre,
    /// Rear tyre pressure.
    RearTyre,
}

impl SettingId {
    /// All of them, in the order of the sheet.
    pub const ALL: [Self; 16] = [
        Self::ForkRate,
        Self::ForkPressure,
        Self::ForkPreload,
        Self::ShockRate,
        Self::ShockPreload,
        Self::ForkFreeSag,
        Self::ForkRiderSag,
        Self::RearFreeSag,
        Self::RearRiderSag,
        Self::ForkCompression,
        Self::ForkRebound,
        Self::ShockLowCompression,
        Self::ShockHighCompression,
        Self::ShockRebound,
        Self::FrontTyre,
        Self::RearTyre,
    ];

    /// The answer in which it is told how it stands.
    pub const fn field(self) -> Field {
        match self {
            Self::ForkRate => Field::ForkRate,
            Self::ForkPressure => Field::ForkPressure,
            Self::ForkPreload => Field::ForkPreload,
            Self::ShockRate => Field::ShockRate,
            Self::ShockPreload => Field::ShockPreload,
            Self::ForkFreeSag => Field::ForkFreeSag,
            Self::ForkRiderSag => Field::ForkRiderSag,
            Self::RearFreeSag => Field::RearFreeSag,
            Self::RearRiderSag => Field::RearRiderSag,
            Self::ForkCompression => Field::ForkCompressionNow,
            Self::ForkRebound => Field::ForkReboundNow,
            Self::ShockLowCompression => Field::ShockLowNow,
            Self::ShockHighCompression => Field::ShockHighNow,
            Self::ShockRebound => Field::ShockReboundNow,
            Self::FrontTyre => Field::FrontTyre,
            Self::RearTyre => Field::RearTyre,
        }
    }

    /// What kind of quantity it is.
    pub const fn dimension(self) -> Dimension {
        self.field().dimension()
    }

    /// The word that stands for it in text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::ForkRate => "fork-rate",
            Self::ForkPressure => "fork-pressure",
            Self::ForkPreload => "fork-preload",
            Self::ShockRate => "shock-rate",
            Self::ShockPreload => "shock-preload",
            Self::ForkFreeSag => "fork-free-sag",
            Self::ForkRiderSag => "fork-rider-sag",
            Self::RearFreeSag => "rear-free-sag",
            Self::RearRiderSag => "rear-rider-sag",
            Self::ForkCompression => "fork-compression",
            Self::ForkRebound => "fork-rebound",
            Self::ShockLowCompression => "shock-low-compression",
            Self::ShockHighCompression => "shock-high-compression",
            Self::ShockRebound => "shock-rebound",
            Self::FrontTyre => "front-tyre",
            Self::RearTyre => "rear-tyre",
        }
    }
}

/// One row of the settings card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Setting {
    /// Which setting.
    pub id: SettingId,
    /// Which end it belongs to.
    pub end: End,
    /// Its label.
    pub label: Text,
    /// How it stands now, SI, if told or measured.
    pub now: Option<f64>,
    /// What is advised.
    pub advised: Figure,
    /// The nearest rates sold, with the rider sag each gives; empty where nothing is sold in steps.
    pub nearest: Vec<NearestRate>,
    /// What to know about it: which spring to fit, clipped to the adjuster, held under the marked maximum.
    pub notes: Vec<Text>,
    /// The nearest spring that the workshop has in stock, where there is a workshop and another spring is due.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_stock: Option<InStock>,
    /// The same clicks counted from fully open, where the workshop counts so and all clicks of the adjuster are known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counted: Option<Counted>,
    /// Cautions before touching it.
    pub cautions: Vec<Caution>,
}

/// A spring that a workshop has in stock.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct InStock {
    /// Its rate, N/m.
    pub rate: f64,
    /// Whether it lies within what is advised; one that does not is told and not advised.
    pub advised: bool,
    /// The same in a sentence.
    pub text: Text,
}

/// Clicks of an adjuster counted in from fully open.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Counted {
    /// The label of the row, without an end to count from.
    pub label: Text,
    /// What is advised, clicks.
    pub advised: f64,
    /// Lower end of its range, clicks.
    pub low: f64,
    /// Upper end of its range, clicks.
    pub high: f64,
    /// How it stands now, clicks, if told.
    pub now: Option<f64>,
}

/// A rate that is sold, and what it does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NearestRate {
    /// The rate, N/m.
    pub rate: f64,
    /// Rider sag with it, m (front axial, rear vertical at the axle).
    pub rider_sag: f64,
    /// Free sag with it, m.
    pub free_sag: f64,
}

/// A cause with the chance that it is there.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CauseFinding {
    /// Which cause.
    pub cause: Cause,
    /// Its name.
    pub name: Text,
    /// What it is, in plain words.
    pub what: Text,
    /// What a rider would feel of it.
    pub feel: Text,
    /// How to confirm it.
    pub confirm: Text,
    /// What cures it, from cheap to dear.
    pub cures: Text,
    /// Chance that it is there, 0 to 1.
    pub probability: f64,
    /// That share in words ("likely, about 2 in 3").
    pub chance: Text,
    /// What speaks for it, weightiest first.
    pub evidence_for: Vec<Evidence>,
    /// What speaks against it, weightiest first.
    pub evidence_against: Vec<Evidence>,
}

/// One piece of evidence.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Evidence {
    /// In words.
    pub text: Text,
    /// Natural logarithm of the likelihood ratio against the average of all causes; positive speaks for.
    pub weight: f64,
}

impl Evidence {
    /// How many times as often it would be met on the side it speaks for as on the other, at least 1.
    pub fn times(&self) -> f64 {
        libm::exp(self.weight.abs())
    }
}

/// The check to do next.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NextCheck {
    /// What to do.
    pub what: Text,
    /// Why this one.
    pub why: Text,
    /// How to read the result.
    pub reading: Text,
    /// Minutes it takes.
    pub minutes: u32,
    /// The page on which its result can be entered, where there is one.
    pub question: Option<Question>,
    /// The look at the parked bike, where that is the check; its result goes into [`crate::intake::Measured::looks`].
    pub look: Option<Look>,
    /// The change to ride a lap with, where that is the check; its result goes into [`crate::intake::Intake::tried`].
    pub change: Option<Change>,
    /// Cautions before doing it.
    pub cautions: Vec<Caution>,
    /// What else is worth doing while the same tools are out, the best first.
    pub besides: Vec<NextCheck>,
}

/// Something taken for want of an answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Assumption {
    /// What was taken.
    pub text: Text,
    /// The page that would replace it.
    pub question: Option<Question>,
}

/// The answer that would narrow the numbers most.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NarrowsMost {
    /// The page that asks for it.
    pub question: Question,
    /// What to answer or measure, and what it would do.
    pub text: Text,
    /// By how much the ranges would shrink, on average over all numbers, 0 to 1.
    pub narrows_by: f64,
}

/// How bad it would be, after ANSI Z535.6.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SignalWord {
    /// Will kill or maim.
    Danger,
    /// Could kill or maim.
    Warning,
    /// Could injure a little.
    Caution,
    /// Could damage things; nobody is hurt.
    Notice,
}

impl SignalWord {
    /// The word that stands for it in text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Warning => "warning",
            Self::Caution => "caution",
            Self::Notice => "notice",
        }
    }
}

/// One caution: hazard, consequence, what to do, in one short text.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Caution {
    /// How bad.
    pub signal: SignalWord,
    /// The text.
    pub text: Text,
}
