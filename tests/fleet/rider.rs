//! What the rider says of what is felt: a response of its own, with the noise of words.
//!
//! Each rider has a threshold and, for every feeling, a gain of their own; a complaint is made where the felt steps, the
//! rider's passing mood on top, pass the threshold (a probit response; the library's is logistic with three kinds of
//! rider). Then words get lost or mixed up.

use crate::luck::Luck;
use sagwright_core::cause::Cause;
use sagwright_core::cause::felt::{FEELINGS, Felt, shows_at};
use sagwright_core::cause::said::onset;
use sagwright_core::intake::{Complaint, End, Feeling, Phase, Severity, Since};
use sagwright_core::sorted::Set;

/// Steps at which a middling rider complains half of the time, and how far riders differ in that.
const THRESHOLD: [f64; 2] = [2.0, 0.4];
/// How far riders differ in what each feeling means to them, natural logarithm.
const GAINS_DIFFER: f64 = 0.35;
/// Mood of the day about each feeling at each end, steps.
const MOOD: f64 = 1.0;
/// Beyond so many steps riders tell less and less difference: the felt grows with this power there.
const FELT_POWER: f64 = 0.8;
/// Chance of placing at the wrong end, of leaving the end out, of saying "both" where both do it.
const WRONG_END: f64 = 0.08;
const NO_END: f64 = 0.15;
const SAYS_BOTH: f64 = 0.6;
/// Strength over the threshold from which it is called clear, and bad.
const CLEAR: f64 = 1.2;
const BAD: f64 = 3.2;
/// Chance of a word one too mild or too strong, and of none.
const OFF_BY_ONE: f64 = 0.20;
const NO_SEVERITY: f64 = 0.25;
/// Chance of no moments, and of a moment ticked for nothing.
const NO_MOMENTS: f64 = 0.30;
const STRAY_MOMENT: f64 = 0.06;
/// Chance that a history is told, and that it is usual for the cause then.
const HISTORY: f64 = 0.60;
const USUAL_HISTORY: f64 = 0.75;
/// Chance of one more complaint that nothing causes.
const IMAGINED: f64 = 0.10;
/// Most complaints named.
const MOST: usize = 4;

/// A rider.
pub struct Rider {
    threshold: f64,
    gains: [f64; FEELINGS],
    names_most: usize,
}

impl Rider {
    /// Draws a rider.
    pub fn draw(luck: &mut Luck) -> Self {
        Self {
            threshold: THRESHOLD[0] + luck.normal(THRESHOLD[1]),
            gains: core::array::from_fn(|_| luck.factor(GAINS_DIFFER)),
            names_most: 2 + luck.weighted(&[0.25, 0.35, 0.40]),
        }
    }

    /// What a step of a feeling means to this rider.
    pub const fn gain(&self, feeling: Feeling) -> f64 {
        self.gains[feeling as usize]
    }

    /// How far a feeling at an end is over the threshold.
    fn over(&self, feeling: Feeling, steps: f64, luck: &mut Luck) -> f64 {
        let size = steps.abs();
        let felt = if size > 1.0 {
            libm::copysign(libm::pow(size, FELT_POWER), steps)
        } else {
            steps
        };
        self.gains[feeling as usize] * felt + luck.normal(MOOD) - self.threshold
    }

    /// Everything the rider complains of, the worst first.
    pub fn complaints(&self, felt: &Felt, causes: &[Cause], luck: &mut Luck) -> Vec<Complaint> {
        let mut felt_bad: Vec<(f64, Complaint)> = Vec::new();
        let since = history(causes, luck);
        for (place, feeling) in Feeling::ALL.iter().enumerate() {
            let shows = shows_at(*feeling);
            let over: [f64; 2] = core::array::from_fn(|end| {
                if shows[end] {
                    self.over(*feeling, felt.steps[place][end], luck)
                } else {
                    f64::NEG_INFINITY
                }
            });
            let worse = over[0].max(over[1]);
            if worse > 0.0 {
                felt_bad.push((
                    worse,
                    Complaint {
                        feeling: *feeling,
                        end: end(over, shows, luck),
                        phases: moments(&felt.moments[place], luck),
                        severity: severity(worse, luck),
                        since,
                    },
                ));
            }
        }
        felt_bad.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut all: Vec<Complaint> = felt_bad
            .into_iter()
            .map(|(_, complaint)| complaint)
            .collect();
        all.truncate(self.names_most.min(MOST));
        if luck.happens(IMAGINED) {
            let feeling = luck.one_of(Feeling::ALL);
            if all.len() < MOST && all.iter().all(|complaint| complaint.feeling != feeling) {
                all.push(Complaint {
                    feeling,
                    end: None,
                    phases: Set::new(),
                    severity: Some(Severity::Slight),
                    since,
                });
            }
        }
        all
    }
}

fn end(over: [f64; 2], shows: [bool; 2], luck: &mut Luck) -> Option<End> {
    if luck.happens(NO_END) {
        return None;
    }
    if shows == [true, false] {
        return Some(End::Front);
    }
    if shows == [false, true] {
        return Some(End::Rear);
    }
    if over[0] > 0.0 && over[1] > 0.0 && luck.happens(SAYS_BOTH) {
        return Some(End::Both);
    }
    let front = over[0] > over[1];
    Some(if front == luck.happens(WRONG_END) {
        End::Rear
    } else {
        End::Front
    })
}

fn severity(over: f64, luck: &mut Luck) -> Option<Severity> {
    if luck.happens(NO_SEVERITY) {
        return None;
    }
    let mut place = if over < CLEAR {
        0
    } else if over < BAD {
        1
    } else {
        2
    };
    if luck.happens(OFF_BY_ONE) {
        place = match place {
            0 | 2 => 1,
            _ => luck.one_of(&[0, 2]),
        };
    }
    Some(Severity::ALL[place])
}

/// Moments in which it is nearly as bad as in the worst.
fn moments(moved: &[f64], luck: &mut Luck) -> Set<Phase> {
    if luck.happens(NO_MOMENTS) {
        return Set::new();
    }
    let noticed: Vec<f64> = moved.iter().map(|steps| steps + luck.normal(0.7)).collect();
    let worst = noticed.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let ticked = Phase::ALL.iter().zip(&noticed).filter(|(_, steps)| {
        (**steps > worst - 1.0 && **steps > 0.5) || luck.happens(STRAY_MOMENT)
    });
    ticked.map(|(phase, _)| *phase).collect()
}

fn history(causes: &[Cause], luck: &mut Luck) -> Option<Since> {
    if !luck.happens(HISTORY) {
        return None;
    }
    let usual = causes.first().map_or(&[][..], |cause| onset(*cause));
    Some(if !usual.is_empty() && luck.happens(USUAL_HISTORY) {
        luck.one_of(usual)
    } else {
        luck.one_of(Since::ALL)
    })
}
