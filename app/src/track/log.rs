//! Where the rider is between two laps, and what follows from each press.

use sagwright_core::intake::{Change, Feeling, Intake, Tried, Verdict};
use sagwright_core::sorted::Map;
use serde::{Deserialize, Serialize};

use crate::state::{Wizard, from_saved, to_saved};
use crate::store::{Kind, Record};

/// What is kept of a log on the device.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Log {
    version: Version,
    /// All answers with the laps among them, as they are kept between visits.
    pub answers: String,
    /// Where the rider is.
    pub step: Step,
    /// Changes that cannot be made today.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aside: Vec<Change>,
    /// Changes to take back before the next lap, the last one first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub back: Vec<Change>,
}

impl Record for Log {
    const KIND: Kind = Kind::Logs;
}

/// The form of a log that this build writes and reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "u32", into = "u32")]
struct Version;

impl Version {
    const NUMBER: u32 = 1;
}

impl From<Version> for u32 {
    fn from(_: Version) -> Self {
        Version::NUMBER
    }
}

impl TryFrom<u32> for Version {
    type Error = &'static str;

    fn try_from(number: u32) -> Result<Self, Self::Error> {
        (number == Self::NUMBER)
            .then_some(Self)
            .ok_or("a log of another version")
    }
}

/// Where the rider is.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// A change is proposed.
    #[default]
    Choosing,
    /// A lap was ridden with a change, and is being judged.
    Judging {
        /// The change.
        change: Change,
        /// What was picked; `None` where the rider cannot tell.
        felt: Map<Feeling, Option<Verdict>>,
    },
}

/// Something the rider pressed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Press {
    /// The lap with this change is ridden.
    Ridden(Change),
    /// This is how a complaint was; `None` where the rider cannot tell.
    Felt(Feeling, Option<Verdict>),
    /// It is not ridden yet after all.
    NotRidden,
    /// The lap is judged, and the change stays or goes.
    Settle {
        /// Whether it stays.
        keep: bool,
    },
    /// This change cannot be made today.
    PutAside(Change),
    /// Offer again what was put aside.
    OfferAll,
    /// Take the last lap back.
    Undo,
    /// Take the change of an earlier lap, known by its place, off the bike.
    TakeOff(usize),
}

impl Log {
    /// A log that begins with these answers.
    pub fn begin(wizard: &Wizard) -> Self {
        Self {
            version: Version,
            answers: saved(wizard),
            step: Step::default(),
            aside: Vec::new(),
            back: Vec::new(),
        }
    }

    /// The log after a press, and the laps where they change.
    pub fn after(&self, laps: &[Tried], press: Press) -> (Self, Option<Vec<Tried>>) {
        let mut next = self.clone();
        let mut laps = laps.to_vec();
        match (press, &mut next.step) {
            (Press::Ridden(change), _) => {
                next.back.clear();
                next.step = Step::Judging {
                    change,
                    felt: Map::new(),
                };
            }
            (Press::Felt(feeling, verdict), Step::Judging { felt, .. }) => {
                felt.insert(feeling, verdict);
            }
            (Press::NotRidden, _) => next.step = Step::Choosing,
            (Press::Settle { keep }, Step::Judging { change, felt }) => {
                let (change, felt) = (*change, felt.iter());
                let told = felt.filter_map(|(feeling, verdict)| Some((*feeling, (*verdict)?)));
                laps.push(Tried {
                    change,
                    felt: told.collect(),
                    kept: keep,
                });
                if !keep {
                    next.back.insert(0, change);
                }
                next.step = Step::Choosing;
                return (next, Some(laps));
            }
            (Press::PutAside(change), _) => next.aside.push(change),
            (Press::OfferAll, _) => next.aside.clear(),
            (Press::Undo, _) => {
                if let Some(lap) = laps.pop() {
                    next.back.retain(|change| *change != lap.change);
                    let felt = lap.felt.into_iter();
                    next.step = Step::Judging {
                        change: lap.change,
                        felt: felt.map(|(feeling, said)| (feeling, Some(said))).collect(),
                    };
                    return (next, Some(laps));
                }
            }
            (Press::TakeOff(place), _) => {
                if let Some(lap) = laps.get_mut(place).filter(|lap| lap.kept) {
                    lap.kept = false;
                    next.back.insert(0, lap.change);
                    return (next, Some(laps));
                }
            }
            (Press::Felt(..) | Press::Settle { .. }, Step::Choosing) => {}
        }
        (next, None)
    }

    /// The same log with the answers as they are now.
    #[must_use]
    pub fn with(self, wizard: &Wizard) -> Self {
        Self {
            answers: saved(wizard),
            ..self
        }
    }

    /// The answers it was kept with; `None` where this build cannot read them.
    pub fn wizard(&self) -> Option<Wizard> {
        from_saved(&self.answers).ok()
    }
}

fn saved(wizard: &Wizard) -> String {
    // Plain answers always have a JSON form.
    to_saved(wizard).unwrap_or_default()
}

/// How a log found on the device and the answers on the page go together.
#[derive(Debug, Clone, PartialEq)]
pub enum Meeting {
    /// It is the log of these answers, to go on with.
    Same(Box<Log>),
    /// It is of other answers.
    Other,
}

/// Holds a log found on the device against the answers on the page.
///
/// Laps may have come to the answers elsewhere, as on the advice page. Those on the page count; where they differ from the
/// log's, whatever was being judged was judged there.
pub fn meet(wizard: &Wizard, log: &Log) -> Meeting {
    let Some(theirs) = log.wizard() else {
        return Meeting::Other;
    };
    if without_laps(wizard) == without_laps(&theirs) {
        let mut log = log.clone();
        if theirs.intake.tried != wizard.intake.tried {
            log.step = Step::Choosing;
            log.back.clear();
        }
        return Meeting::Same(Box::new(log.with(wizard)));
    }
    Meeting::Other
}

fn without_laps(wizard: &Wizard) -> Intake {
    Intake {
        tried: Vec::new(),
        ..wizard.document()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::Action;

    const OPEN: Change = Change::ForkReboundOpen;
    const DIVES: Feeling = Feeling::Dives;

    fn answers() -> Wizard {
        Wizard::default().after(Action::Feel(DIVES, true))
    }

    /// The log and the laps after some presses.
    fn pressed(presses: &[Press]) -> (Log, Vec<Tried>) {
        let begin = (Log::begin(&answers()), Vec::new());
        presses.iter().fold(begin, |(log, laps), press| {
            let (log, changed) = log.after(&laps, *press);
            (log, changed.unwrap_or(laps))
        })
    }

    fn better() -> Press {
        Press::Felt(DIVES, Some(Verdict::Better))
    }

    #[test]
    fn three_presses_make_a_lap() {
        let (log, laps) = pressed(&[Press::Ridden(OPEN), better(), Press::Settle { keep: true }]);
        assert_eq!(log.step, Step::Choosing);
        let lap = Tried {
            change: OPEN,
            felt: [(DIVES, Verdict::Better)].into(),
            kept: true,
        };
        assert_eq!(laps, [lap]);
        assert!(log.back.is_empty(), "what stays is not put back");
    }

    #[test]
    fn what_nobody_could_tell_is_no_evidence() {
        let (_, laps) = pressed(&[
            Press::Ridden(OPEN),
            better(),
            Press::Felt(DIVES, None),
            Press::Settle { keep: false },
        ]);
        assert!(laps[0].felt.is_empty());
    }

    #[test]
    fn what_goes_is_to_be_put_back_before_the_next_lap() {
        let gone = [Press::Ridden(OPEN), Press::Settle { keep: false }];
        let (log, _) = pressed(&gone);
        assert_eq!(log.back, [OPEN]);
        let (log, laps) = log.after(&[], Press::Ridden(Change::ForkUp));
        assert!(log.back.is_empty() && laps.is_none());
    }

    #[test]
    fn undoing_leads_back_to_judging_with_what_was_picked() {
        for keep in [true, false] {
            let settle = Press::Settle { keep };
            let (before, _) = pressed(&[Press::Ridden(OPEN), better()]);
            let (log, laps) = pressed(&[Press::Ridden(OPEN), better(), settle, Press::Undo]);
            assert_eq!(log, before);
            assert!(laps.is_empty());
        }
        let (log, laps) = pressed(&[Press::Undo]);
        assert_eq!((log, laps), pressed(&[]), "there was nothing to undo");
    }

    #[test]
    fn a_change_that_stayed_can_be_taken_off_later() {
        let lap = [Press::Ridden(OPEN), Press::Settle { keep: true }];
        let (_, laps) = pressed(&lap);
        assert!(laps[0].kept);
        let (log, laps) = pressed(&[lap[0], lap[1], Press::TakeOff(0)]);
        assert!(!laps[0].kept);
        assert_eq!(log.back, [OPEN]);
        let (same, _) = log.after(&laps, Press::TakeOff(0));
        assert_eq!(same, log, "it is off already");
        assert_eq!(log.after(&laps, Press::TakeOff(7)).0, log);
    }

    #[test]
    fn what_comes_at_the_wrong_moment_changes_nothing() {
        for press in [better(), Press::Settle { keep: true }] {
            assert_eq!(pressed(&[press]), pressed(&[]));
        }
    }

    #[test]
    fn a_log_survives_being_kept_at_every_step() {
        let presses = [
            Press::PutAside(Change::TyresLess),
            Press::Ridden(OPEN),
            better(),
            Press::Felt(Feeling::Packs, None),
            Press::Settle { keep: false },
        ];
        for many in 0..=presses.len() {
            let (log, _) = pressed(&presses[..many]);
            let text = serde_json::to_string(&log).expect("plain data");
            let again: Log = serde_json::from_str(&text).expect("it was just written");
            assert_eq!(again, log);
        }
        let (log, _) = pressed(&[]);
        let newer = serde_json::to_string(&log).expect("plain data");
        let newer = newer.replace(r#""version":1"#, r#""version":2"#);
        assert!(serde_json::from_str::<Log>(&newer).is_err());
    }

    #[test]
    fn a_log_meets_its_own_answers_and_others() {
        let (judging, _) = pressed(&[Press::Ridden(OPEN), better()]);
        let wizard = answers();
        let same = |log: &Log| match meet(&wizard, log) {
            Meeting::Same(log) => *log,
            other @ Meeting::Other => panic!("{other:?}"),
        };
        assert_eq!(same(&judging).step, judging.step);
        // A lap that came to the answers elsewhere.
        let lap = Tried {
            change: OPEN,
            felt: Map::new(),
            kept: false,
        };
        let elsewhere = wizard.after(Action::Laps(vec![lap]));
        let ahead = Log::begin(&elsewhere);
        assert_eq!(same(&ahead).wizard().map(|w| w.intake.tried), Some(vec![]));
        let log = Log {
            step: judging.step.clone(),
            ..ahead.clone()
        };
        assert_eq!(same(&log).step, Step::Choosing);

        let other = Wizard::default().after(Action::Feel(Feeling::Packs, true));
        assert_eq!(meet(&other, &judging), Meeting::Other);
        assert_eq!(meet(&other, &ahead), Meeting::Other);
        let unreadable = Log {
            answers: "{".to_owned(),
            ..judging
        };
        assert_eq!(meet(&wizard, &unreadable), Meeting::Other);
    }
}
