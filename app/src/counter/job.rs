//! A job: one rider's intake on the desk, with everything that was told about it since.

use std::collections::{BTreeMap, BTreeSet};

use sagwright_core::intake::{ExtraAnswer, Feeling, Intake, Verdict, read_unfinished};
use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::value::RawValue;

use super::told::{Moment, Told, take_in_all};

/// The form written by this build; a newer one is refused, so that nothing in it is lost.
pub const JOB_VERSION: u32 = 1;

/// Where a job stands. The words are kept in files, so they never change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// Come in, nobody has looked at it yet.
    #[default]
    New,
    /// The bike is on the stand.
    OnStand,
    /// Parts are on order.
    WaitingParts,
    /// Done, the rider may collect it.
    Ready,
    /// Ridden again; the rider is to be asked how it goes.
    Out,
    /// Closed.
    Closed,
}

impl Stage {
    /// All of them, in the order a job goes through.
    pub const ALL: &[Self] = &[
        Self::New,
        Self::OnStand,
        Self::WaitingParts,
        Self::Ready,
        Self::Out,
        Self::Closed,
    ];

    /// Its word in files and text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::OnStand => "on-stand",
            Self::WaitingParts => "waiting-parts",
            Self::Ready => "ready",
            Self::Out => "out",
            Self::Closed => "closed",
        }
    }

    /// The stage of that word.
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|stage| stage.word() == word)
    }
}

/// What was done to the bike, as the workshop writes it down.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Work {
    /// The day, in the workshop's own words.
    pub date: String,
    /// Who did it.
    pub by: String,
    /// Oil: grade, level, hours.
    pub oil: String,
    /// Valving, in words.
    pub valving: String,
    /// Parts fitted and anything else.
    pub other: String,
    /// The numbers the bike left with: rates, pressure, preload, clicks, sags. Everything else in it stays empty.
    #[serde(deserialize_with = "document")]
    pub set: Intake,
}

/// What the rider said after riding again.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Heard {
    /// The day, in the workshop's own words.
    pub date: String,
    /// Each complaint against before; complaints not asked about are left out.
    pub felt: BTreeMap<Feeling, Verdict>,
    /// In the rider's words.
    pub words: String,
}

/// One intake on the desk. Everything told since is kept with its moment, so that two copies of a desk can be brought
/// together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Version of this form; now 1.
    pub version: u32,
    /// When it came onto the desk first.
    pub came: Moment,
    /// The rider's name or number, as the workshop writes it.
    #[serde(default)]
    pub name: Told<String>,
    /// How to reach the rider.
    #[serde(default)]
    pub contact: Told<String>,
    /// Where it stands.
    #[serde(default)]
    pub stage: Told<Stage>,
    /// Tags, and whether each is on.
    #[serde(default)]
    pub tags: BTreeMap<String, Told<bool>>,
    /// The intake as it came; its answers to the workshop's own questions are those that came last.
    #[serde(deserialize_with = "document")]
    pub intake: Intake,
    /// When those answers came, where that is after the intake itself; 0 where they came with it.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub extra_came: Moment,
    /// Answers put right at the counter: the address of the page, and an intake that holds that page's answers alone.
    #[serde(default)]
    pub corrected: BTreeMap<String, Told<Part>>,
    /// Notes, under names that no other note has. An empty one was taken out.
    #[serde(default)]
    pub notes: BTreeMap<String, Told<String>>,
    /// What was done, visit by visit. `None` where it was taken out.
    #[serde(default)]
    pub work: BTreeMap<String, Told<Option<Work>>>,
    /// What was heard back. `None` where it was taken out.
    #[serde(default)]
    pub heard: BTreeMap<String, Told<Option<Heard>>>,
}

fn is_usual<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// The answers of one page, as an intake with nothing else in it.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Part(pub Intake);

impl<'de> Deserialize<'de> for Part {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        document(from).map(Self)
    }
}

impl<T: Default> Default for Told<T> {
    /// Never told: anything told counts more.
    fn default() -> Self {
        Self {
            is: T::default(),
            at: 0,
        }
    }
}

/// Reads an intake by the one reader of documents, so that older ones are brought up to this version.
fn document<'de, D: Deserializer<'de>>(from: D) -> Result<Intake, D::Error> {
    let text = Box::<RawValue>::deserialize(from)?;
    read_unfinished(text.get()).map_err(D::Error::custom)
}

impl Job {
    /// A job for an intake that has just come in.
    pub fn new(intake: Intake, now: Moment) -> Self {
        Self {
            version: JOB_VERSION,
            came: now,
            name: Told::default(),
            contact: Told::default(),
            stage: Told::default(),
            tags: BTreeMap::new(),
            intake,
            extra_came: 0,
            corrected: BTreeMap::new(),
            notes: BTreeMap::new(),
            work: BTreeMap::new(),
            heard: BTreeMap::new(),
        }
    }

    /// Takes in another copy of the same job: whatever was told later counts, entries of both are kept.
    pub fn take_in(&mut self, other: &Self) {
        // Answers from a code come without the note, and at times without what the workshop asked besides.
        if self.intake.note.is_empty() {
            self.intake.note.clone_from(&other.intake.note);
        }
        // A rider who sends again may have answered the workshop otherwise: it is the same bike and the same job.
        let mut extra = self.extra();
        extra.take_in(&other.extra());
        self.came = self.came.min(other.came);
        self.extra_came = if extra.at > self.came { extra.at } else { 0 };
        self.intake.extra = extra.is;
        self.name.take_in(&other.name);
        self.contact.take_in(&other.contact);
        self.stage.take_in(&other.stage);
        take_in_all(&mut self.tags, &other.tags);
        take_in_all(&mut self.corrected, &other.corrected);
        take_in_all(&mut self.notes, &other.notes);
        take_in_all(&mut self.work, &other.work);
        take_in_all(&mut self.heard, &other.heard);
    }

    /// The answers to the workshop's own questions, and when they came; none count as never told.
    fn extra(&self) -> Told<Vec<ExtraAnswer>> {
        if self.intake.extra.is_empty() {
            return Told::default();
        }
        Told::new(self.intake.extra.clone(), self.came.max(self.extra_came))
    }

    /// The tags that are on.
    pub fn tags(&self) -> BTreeSet<&str> {
        let on = self.tags.iter().filter(|(_, told)| told.is);
        on.map(|(tag, _)| tag.as_str()).collect()
    }

    /// The notes, the first one first.
    pub fn notes(&self) -> impl Iterator<Item = (&str, &Told<String>)> {
        let there = self.notes.iter().filter(|(_, told)| !told.is.is_empty());
        there.map(|(name, told)| (name.as_str(), told))
    }

    /// What was done, the first visit first.
    pub fn work(&self) -> impl DoubleEndedIterator<Item = (&str, &Work)> {
        let there = self.work.iter();
        there.filter_map(|(name, told)| Some((name.as_str(), told.is.as_ref()?)))
    }

    /// What was heard back, the first first.
    pub fn heard(&self) -> impl DoubleEndedIterator<Item = (&str, &Heard)> {
        let there = self.heard.iter();
        there.filter_map(|(name, told)| Some((name.as_str(), told.is.as_ref()?)))
    }

    /// When anything about it was told last.
    pub fn changed(&self) -> Moment {
        fn last<T>(told: &BTreeMap<String, Told<T>>) -> Moment {
            told.values().map(|told| told.at).max().unwrap_or_default()
        }
        let moments = [
            self.came,
            self.extra_came,
            self.name.at,
            self.contact.at,
            self.stage.at,
            last(&self.tags),
            last(&self.corrected),
            last(&self.notes),
            last(&self.work),
            last(&self.heard),
        ];
        moments.into_iter().max().unwrap_or_default()
    }

    /// Brings moments that lie after `now` back to it: a clock that runs ahead would win every draw for ever.
    pub fn not_after(&mut self, now: Moment) {
        fn all<T>(told: &mut BTreeMap<String, Told<T>>, now: Moment) {
            for told in told.values_mut() {
                told.at = told.at.min(now);
            }
        }
        self.came = self.came.min(now);
        self.extra_came = self.extra_came.min(now);
        self.name.at = self.name.at.min(now);
        self.contact.at = self.contact.at.min(now);
        self.stage.at = self.stage.at.min(now);
        all(&mut self.tags, now);
        all(&mut self.corrected, now);
        all(&mut self.notes, now);
        all(&mut self.work, now);
        all(&mut self.heard, now);
    }
}
