//! Every place where one answer is picked out of a few, under one roof.

use std::borrow::Cow;

use sagwright_core::intake::{
    BikeClass, Change, Complaint, End, Feeling, Field, ForkKind, FuelLoad, Look, Pace, Posture,
    PushFeel, Question, Severity, Share, ShockKind, Since, Terrain, Tried, Verdict, YesNo,
};
use sagwright_core::quantity::How;
use sagwright_core::sorted::Map;

use super::Wizard;
use super::order::Page;
use super::subject::Subject;

/// The option of equal rank with which a rider says that they do not know.
pub const CANNOT_SAY: &str = "dont-know";

/// What is asked about one complaint by picking.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Aspect {
    /// Which end.
    End,
    /// How bad.
    Severity,
    /// Since when.
    Since,
    /// When; several may be ticked, so only "I can't say" is picked here.
    Phases,
}

/// A group of options of which one is picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slot {
    /// A question answered by one pick.
    One(Question),
    /// The push test at one end.
    Push(End),
    /// How much of one kind of ground.
    Ground(Terrain),
    /// One thing about a complaint.
    Detail(Feeling, Aspect),
    /// How a number is known.
    How(Field),
    /// Whether a look at the parked bike found it.
    Look(Look),
    /// How a complaint was on a lap with one change.
    Lap(Change, Feeling),
}

/// A closed list of answers, each with its word.
trait Listed: Copy + PartialEq + 'static {
    const LIST: &'static [Self];
    fn name(self) -> &'static str;
}

macro_rules! listed {
    ($($kind:ty),+) => {
        $(impl Listed for $kind {
            const LIST: &'static [Self] = <$kind>::ALL;
            fn name(self) -> &'static str { self.word() }
        })+
    };
}
listed!(
    YesNo, Pace, Posture, BikeClass, FuelLoad, ForkKind, ShockKind, PushFeel, Share, End, Severity,
    Since, Verdict
);

impl Listed for How {
    const LIST: &'static [Self] = &[Self::ReadOff, Self::Measured, Self::Guess];
    fn name(self) -> &'static str {
        match self {
            Self::Measured => "measured",
            Self::ReadOff => "read-off",
            Self::Guess => "guess",
        }
    }
}

fn names<T: Listed>() -> Vec<&'static str> {
    T::LIST.iter().map(|item| item.name()).collect()
}

fn named<T: Listed>(word: &str) -> Option<T> {
    T::LIST.iter().copied().find(|item| item.name() == word)
}

fn name<T: Listed>(item: Option<T>) -> Option<&'static str> {
    item.map(Listed::name)
}

/// One arm per question that is answered by a single pick: its list and its place in the document.
macro_rules! single_picks {
    ($($question:ident: $kind:ty, $($place:ident).+;)+) => {
        fn one_names(question: Question) -> Vec<&'static str> {
            match question { $(Question::$question => names::<$kind>(),)+ _ => Vec::new() }
        }
        fn one_get(wizard: &Wizard, question: Question) -> Option<&'static str> {
            match question { $(Question::$question => name(wizard.intake.$($place).+),)+ _ => None }
        }
        fn one_set(wizard: &mut Wizard, question: Question, word: &str) {
            match question {
                $(Question::$question => wizard.intake.$($place).+ = named::<$kind>(word),)+
                _ => {}
            }
        }
    };
}

single_picks! {
    RiderGear: YesNo, rider.weight_in_gear;
    RiderPace: Pace, rider.pace;
    RiderPosture: Posture, rider.posture;
    BikeClass: BikeClass, bike.class;
    BikeFuel: FuelLoad, bike.fuel;
    BikeFork: ForkKind, bike.fork;
    BikeShock: ShockKind, bike.shock;
}

impl Slot {
    /// Whether `question` is answered by a single pick.
    pub fn is_single(question: Question) -> bool {
        !one_names(question).is_empty()
    }

    /// The words to pick from, without [`CANNOT_SAY`].
    pub fn words(self) -> Vec<&'static str> {
        match self {
            Self::One(question) => one_names(question),
            Self::Push(_) => names::<PushFeel>(),
            Self::Ground(_) => names::<Share>(),
            Self::Detail(_, Aspect::End) => names::<End>(),
            Self::Detail(_, Aspect::Severity) => names::<Severity>(),
            Self::Detail(_, Aspect::Since) => names::<Since>(),
            Self::Detail(_, Aspect::Phases) => Vec::new(),
            Self::How(_) => names::<How>(),
            Self::Look(_) => names::<YesNo>(),
            Self::Lap(..) => names::<Verdict>(),
        }
    }

    /// The middle of the text key of a label: `choice.<family>.<word>`.
    pub const fn family(self) -> &'static str {
        match self {
            Self::One(question) => question.word(),
            Self::Push(_) => "push",
            Self::Ground(_) => "share",
            Self::Detail(_, Aspect::End) => "end",
            Self::Detail(_, Aspect::Severity) => "severity",
            Self::Detail(_, Aspect::Since) => "since",
            Self::Detail(_, Aspect::Phases) => "phases",
            Self::How(_) => "how",
            Self::Look(_) => "look",
            Self::Lap(..) => "verdict",
        }
    }

    /// A name for the group that is unique on its page, for the elements on it.
    pub fn id(self) -> Cow<'static, str> {
        match self {
            Self::One(question) => question.word().into(),
            Self::Push(End::Front) => "push-front".into(),
            Self::Push(_) => "push-rear".into(),
            Self::Ground(terrain) => terrain.word().into(),
            Self::Detail(feeling, _) => format!("{}/{}", feeling.word(), self.family()).into(),
            Self::How(field) => field.path().into(),
            Self::Look(look) => look.word().into(),
            Self::Lap(_, feeling) => feeling.word().into(),
        }
    }

    /// What it belongs to.
    pub const fn subject(self) -> Subject {
        Subject::Page(match self {
            Self::One(question) => Page::Ask(question),
            Self::Push(_) => Page::Ask(Question::PushTest),
            Self::Ground(_) => Page::Ask(Question::GroundMix),
            Self::Detail(feeling, _) => Page::Detail(feeling),
            Self::How(field) => Page::Ask(field.question()),
            Self::Look(look) => return Subject::Look(look),
            Self::Lap(change, _) => return Subject::Lap(change),
        })
    }

    /// The word picked, if any; [`CANNOT_SAY`] where the rider said that they do not know.
    pub fn get(self, wizard: &Wizard) -> Option<&'static str> {
        let picked = match self {
            Self::One(question) => {
                let unknown = wizard.intake.dont_know.contains(&question);
                return unknown
                    .then_some(CANNOT_SAY)
                    .or_else(|| one_get(wizard, question));
            }
            Self::Push(End::Front) => name(wizard.intake.measured.push_front),
            Self::Push(_) => name(wizard.intake.measured.push_rear),
            Self::Ground(terrain) => {
                let mix = wizard.intake.ground.mix.as_ref();
                name(mix.and_then(|mix| mix.get(&terrain)).copied())
            }
            Self::Detail(feeling, aspect) => wizard.complaint(feeling).and_then(|c| match aspect {
                Aspect::End => name(c.end),
                Aspect::Severity => name(c.severity),
                Aspect::Since => name(c.since),
                Aspect::Phases => None,
            }),
            Self::How(field) => name(wizard.typed.get(&field).and_then(|typed| typed.how)),
            Self::Look(look) => {
                let looks = wizard.intake.measured.looks.as_ref();
                name(looks.and_then(|looks| looks.get(&look)).copied())
            }
            Self::Lap(change, feeling) => {
                let mut laps = wizard.intake.tried.iter().rev();
                let last = laps.find(|lap| lap.change == change);
                name(last.and_then(|lap| lap.felt.get(&feeling)).copied())
            }
        };
        picked.or_else(|| wizard.cannot_say.contains(&self).then_some(CANNOT_SAY))
    }

    /// Picks `word`; [`CANNOT_SAY`] takes an earlier pick back.
    pub fn set(self, wizard: &mut Wizard, word: &str) {
        if word == CANNOT_SAY && !matches!(self, Self::One(_)) {
            wizard.cannot_say.insert(self);
        } else {
            wizard.cannot_say.remove(&self);
        }
        match self {
            Self::One(question) => {
                one_set(wizard, question, word);
                if word == CANNOT_SAY {
                    wizard.intake.dont_know.insert(question);
                } else {
                    wizard.intake.dont_know.remove(&question);
                }
            }
            Self::Push(end) => {
                let measured = &mut wizard.intake.measured;
                let place = if end == End::Front {
                    &mut measured.push_front
                } else {
                    &mut measured.push_rear
                };
                *place = named(word);
                wizard.intake.dont_know.remove(&Question::PushTest);
            }
            Self::Ground(terrain) => {
                let mix = wizard.intake.ground.mix.get_or_insert_default();
                match named(word) {
                    Some(share) => mix.insert(terrain, share),
                    None => mix.remove(&terrain),
                };
                wizard.intake.dont_know.remove(&Question::GroundMix);
            }
            Self::Detail(feeling, aspect) => {
                if let Some(complaint) = wizard.complaint_mut(feeling) {
                    set_aspect(complaint, aspect, word);
                }
            }
            Self::How(field) => {
                wizard.box_of(field).how = named(word);
                wizard.settle(field);
            }
            Self::Look(look) => {
                let looks = wizard.intake.measured.looks.get_or_insert_default();
                match named(word) {
                    Some(seen) => looks.insert(look, seen),
                    None => looks.remove(&look),
                };
            }
            Self::Lap(change, feeling) => {
                let felt = felt_with(&mut wizard.intake.tried, change);
                match named(word) {
                    Some(verdict) => felt.insert(feeling, verdict),
                    None => felt.remove(&feeling),
                };
            }
        }
    }
}

/// What was felt on the last lap with a change; a new lap where there was none.
fn felt_with(laps: &mut Vec<Tried>, change: Change) -> &mut Map<Feeling, Verdict> {
    let place = laps.iter().rposition(|lap| lap.change == change);
    let place = place.unwrap_or_else(|| {
        laps.push(Tried {
            change,
            felt: Map::new(),
            kept: false,
        });
        laps.len() - 1
    });
    &mut laps[place].felt
}

fn set_aspect(complaint: &mut Complaint, aspect: Aspect, word: &str) {
    match aspect {
        Aspect::End => complaint.end = named(word),
        Aspect::Severity => complaint.severity = named(word),
        Aspect::Since => complaint.since = named(word),
        Aspect::Phases => complaint.phases.clear(),
    }
}
