//! The form in which a remedy is told.

use serde::Serialize;

use super::answer::{Caution, InStock};
use super::figure::Reason;
use crate::cause::Cause;
use crate::intake::{End, Feeling};
use crate::quantity::Dimension;
use crate::remedy::{RemedyId, Tier};
use crate::words::Text;

/// A remedy with what it is worth to this rider.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RemedyFinding {
    /// Which remedy.
    pub id: RemedyId,
    /// From free to wholesale.
    pub tier: Tier,
    /// Its name.
    pub name: Text,
    /// What to do, step by step.
    pub steps: Vec<Text>,
    /// The causes for which it helps, with how much of the complaints then goes, 0 to 1.
    pub cures: Vec<Cure>,
    /// Share of the complaints, weighted by how bad they are, that is expected to go, −1 to 1.
    pub relief: f64,
    /// Share of the complaints that goes beyond what cheaper tiers can do: what the step up buys.
    pub gain: f64,
    /// What it does to each thing that was complained of, in the order it was said.
    pub complaints: Vec<ComplaintEffect>,
    /// What gets worse by more than can just be noticed.
    pub side_effects: Vec<SideEffect>,
    /// That a check is worth doing before paying for it.
    pub check_first: Option<Text>,
    /// A remedy that does as much for less.
    pub dominated_by: Option<Dominated>,
    /// Computed effect on this bike.
    pub effects: Vec<Effect>,
    /// What valves have to change, for remedies that change them: force in percent and what that is in shims.
    pub restack: Vec<Text>,
    /// Where its effect comes from.
    pub source: Text,
    /// What it cannot do.
    pub cannot: Text,
    /// The nearest spring that the workshop has in stock, where there is a workshop and the remedy needs one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_stock: Option<InStock>,
    /// What it costs.
    pub cost: CostBand,
    /// Minutes of work.
    pub minutes: u32,
    /// Whether it can be undone at no cost.
    pub reversible: bool,
    /// The first to try.
    pub leads: bool,
    /// Cautions before doing it.
    pub cautions: Vec<Caution>,
}

/// How much of a cause a remedy takes away.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cure {
    /// The cause.
    pub cause: Cause,
    /// Its name.
    pub name: Text,
    /// Part of the complaints that goes when this cause is there, 0 to 1.
    pub share: f64,
}

/// What a remedy does to one complaint.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ComplaintEffect {
    /// The complaint.
    pub feeling: Feeling,
    /// Share of it that is expected to go, −1 to 1.
    pub goes: f64,
    /// The same in a sentence.
    pub text: Text,
}

/// Something that a remedy makes worse.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SideEffect {
    /// What gets worse.
    pub feeling: Feeling,
    /// At which end.
    pub end: End,
    /// By how many steps that can just be noticed, above 1.
    pub steps: f64,
    /// The same in a sentence.
    pub text: Text,
}

/// The remedy that another is not worth its cost beside.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Dominated {
    /// That remedy.
    pub by: RemedyId,
    /// The same in a sentence.
    pub text: Text,
}

/// A computed before and after.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Effect {
    /// What changes.
    pub name: Text,
    /// Before, SI; absent for something that was not there before.
    pub before: Option<f64>,
    /// After, SI.
    pub after: f64,
    /// What it measures.
    pub dimension: Dimension,
    /// How it was worked out.
    pub reason: Reason,
}

/// What something costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CostBand {
    /// Lowest and highest price in hours of workshop labour, parts included; both 0 for free.
    pub labour_hours: (f64, f64),
    /// The same in money, where a workshop has named its rate.
    pub money: Option<Money>,
    /// Whose price it is: a workshop's, or common practice.
    pub source: Text,
}

/// A price band in money.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Money {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
    /// Three-letter currency code after ISO 4217.
    pub currency: String,
}
