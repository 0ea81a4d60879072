//! The next lap: one change worth riding, from where the bike stands after the changes that stayed on it.
//!
//! A rider at the track wants two things of a lap: that it tells what is wrong, and that it is better. Changes are ranked by
//! both: by the bits a verdict on the worst complaint would tell, and by how much likelier the complaints are to be better
//! than worse. So of two changes that tell the same the one that helps comes first, and one that tells nothing more can
//! still be worth a lap.
//!
//! What is believed stays about the bike as it was told: a change that stayed moves where its adjuster stands, not what was
//! felt before it. Changes add up, as faults do.

use super::checks::{Case, Check, How, LAP_MINUTES, expected_bits, sensible, worst_complaint};
use super::tried::Tryout;
use crate::bench::changes::{CLICKS, GAS_PA, PRELOAD_M, TYRES};
use crate::intake::{Change, Complaint, Field, Intake, Severity, Tried, Verdict};
use crate::stance::Situation;
use crate::stance::clickers::MARGIN;

/// What a lap that is sure to be better is worth beside what it tells, bits. From judgement: a lap at the track is ridden
/// to be better, and half a bit is what the best checks tell.
const HELP_BITS: f64 = 0.5;
/// A lap worth less than this is not proposed, bits.
const LEAST_WORTH: f64 = 0.05;
/// Changes of one kind that may stay on the bike where nobody counted how far it still goes.
const MOST_UNCOUNTED: i32 = 2;
/// Least gas pressure a fork is brought to, gauge, Pa: what an intake may hold.
const LEAST_GAS_PA: f64 = 1e5;

/// A change worth a lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lap {
    /// What to change.
    pub change: Change,
    /// What a verdict on the worst complaint would tell, bits.
    pub bits: f64,
    /// Chance that the worst complaint is better, 0 to 1.
    pub better: f64,
    /// By how much likelier the complaints are to be better than worse, the bad ones counting more; -1 to 1.
    pub help: f64,
}

impl Lap {
    /// What the lap is worth, bits.
    pub fn worth(&self) -> f64 {
        self.bits + HELP_BITS * self.help
    }

    /// The same lap as a check.
    pub const fn check(&self) -> Check {
        Check {
            word: "try",
            minutes: LAP_MINUTES,
            how: How::Try(self.change),
        }
    }
}

/// The changes worth a lap from where the bike stands, the best first.
///
/// None is proposed that was tried and put back, that undoes one that stayed, or for which there is no room left.
pub fn ranked(case: &Case) -> Vec<Lap> {
    let fresh = |change: &Change| {
        sensible(case, How::Try(*change))
            && !spent(case.intake, *change)
            && has_room(case.intake, case.situation, *change)
    };
    let mut laps: Vec<Lap> = Change::ALL
        .iter()
        .copied()
        .filter(fresh)
        .filter_map(|change| lap(case, change))
        .filter(|lap| lap.worth() >= LEAST_WORTH)
        .collect();
    laps.sort_by(|a, b| b.worth().total_cmp(&a.worth()));
    laps
}

fn lap(case: &Case, change: Change) -> Option<Lap> {
    let worst = worst_complaint(case.intake)?;
    let tryout = Tryout::of(case.intake, case.rehearsal, change)?;
    let bikes = (case.hypotheses, case.belief.of_hypotheses.as_slice());
    let (mut help, mut all, mut better) = (0.0, 0.0, 0.0);
    for complaint in case.intake.complaints.iter().flatten() {
        let (weight, feeling) = (how_bad(complaint), complaint.feeling);
        let chances = tryout.expected(case.numbers, bikes, feeling);
        help += weight * (chances[Verdict::Better as usize] - chances[Verdict::Worse as usize]);
        all += weight;
        if feeling == worst {
            better = chances[Verdict::Better as usize];
        }
    }
    let unknown = Lap {
        change,
        bits: 0.0,
        better,
        help: help / all,
    };
    Some(Lap {
        bits: expected_bits(case, &unknown.check()),
        ..unknown
    })
}

/// How much a complaint counts beside others: as it counts among remedies, one that is not told as a clear one.
fn how_bad(complaint: &Complaint) -> f64 {
    match complaint.severity {
        Some(Severity::Slight) => 1.0,
        Some(Severity::Bad) => 3.0,
        Some(Severity::Clear) | None => 2.0,
    }
}

/// Whether a change need not be ridden again: it was put back, it did no good, or it would undo one that stayed.
///
/// One that stayed and did good may go further.
fn spent(intake: &Intake, change: Change) -> bool {
    let did_good = |lap: &Tried| {
        let count = |verdict| lap.felt.values().filter(|felt| **felt == verdict).count();
        lap.kept && count(Verdict::Better) > count(Verdict::Worse)
    };
    let same = intake.tried.iter().rfind(|lap| lap.change == change);
    let undoes = change
        .opposite()
        .is_some_and(|opposite| stayed(intake, opposite) > 0);
    undoes || same.is_some_and(|lap| !did_good(lap))
}

/// How often a change stayed on the bike, less how often its opposite did.
pub fn stayed(intake: &Intake, change: Change) -> i32 {
    let kept = intake.tried.iter().filter(|lap| lap.kept);
    kept.map(|lap| {
        if lap.change == change {
            1
        } else if Some(lap.change) == change.opposite() {
            -1
        } else {
            0
        }
    })
    .sum()
}

/// Whether the bike can be changed so once more from where it stands.
fn has_room(intake: &Intake, situation: &Situation, change: Change) -> bool {
    let rows = turns(intake, change);
    if rows.iter().all(|turn| turn.to.is_none()) {
        return stayed(intake, change) < MOST_UNCOUNTED;
    }
    let ranges = &situation.ranges;
    rows.iter().all(|turn| {
        let Some(to) = turn.to else {
            return true;
        };
        let clicks = |range: u8| {
            let (low, high) = (f64::from(MARGIN), f64::from(range.saturating_sub(MARGIN)));
            (low..=high).contains(&to)
        };
        match turn.field {
            Field::ForkCompressionNow => clicks(ranges.fork_compression),
            Field::ForkReboundNow => clicks(ranges.fork_rebound),
            Field::ShockLowNow => clicks(ranges.shock_compression),
            Field::ShockReboundNow => clicks(ranges.shock_rebound),
            Field::ForkPressure => {
                let most = Field::ForkPressureMax.si(intake);
                to >= LEAST_GAS_PA && most.is_none_or(|most| to <= most)
            }
            field => field.allowed().holds(to) && stayed(intake, change) < MOST_UNCOUNTED,
        }
    })
}

/// One number that a change moves, from where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    /// Which number.
    pub field: Field,
    /// Where it stands, SI or clicks from closed; `None` where nobody told.
    pub from: Option<f64>,
    /// Where the change brings it.
    pub to: Option<f64>,
}

/// The numbers that a change moves from where the bike stands now; none for the fork in its clamps, which has no number.
pub fn turns(intake: &Intake, change: Change) -> Vec<Turn> {
    let turn = |field: Field, step: Step| {
        let from = standing(intake, field);
        Turn {
            field,
            from,
            to: from.map(|from| step.once(from)),
        }
    };
    let moved = moves(change).into_iter();
    moved.map(|(field, step)| turn(field, step)).collect()
}

/// Where a number stands after the changes that stayed; `None` where it was never told.
pub fn standing(intake: &Intake, field: Field) -> Option<f64> {
    let told = field.si(intake)?;
    let kept = intake.tried.iter().filter(|lap| lap.kept);
    let steps = kept.flat_map(|lap| moves(lap.change));
    let own = steps.filter(|(of, _)| *of == field);
    Some(own.fold(told, |at, (_, step)| step.once(at)))
}

/// How far a change moves a number.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Step {
    /// By so much, SI or clicks.
    By(f64),
    /// By so large a share of itself.
    Share(f64),
}

impl Step {
    fn once(self, from: f64) -> f64 {
        match self {
            Self::By(by) => from + by,
            Self::Share(share) => from * (1.0 + share),
        }
    }
}

/// Which numbers a change moves, and how far.
fn moves(change: Change) -> Vec<(Field, Step)> {
    let clicks = f64::from(CLICKS);
    let one = |field, by| vec![(field, Step::By(by))];
    match change {
        Change::ForkCompressionOpen => one(Field::ForkCompressionNow, clicks),
        Change::ForkCompressionClose => one(Field::ForkCompressionNow, -clicks),
        Change::ForkReboundOpen => one(Field::ForkReboundNow, clicks),
        Change::ForkReboundClose => one(Field::ForkReboundNow, -clicks),
        Change::ShockCompressionOpen => one(Field::ShockLowNow, clicks),
        Change::ShockCompressionClose => one(Field::ShockLowNow, -clicks),
        Change::ShockReboundOpen => one(Field::ShockReboundNow, clicks),
        Change::ShockReboundClose => one(Field::ShockReboundNow, -clicks),
        Change::ForkGasLess => one(Field::ForkPressure, -GAS_PA),
        Change::ForkGasMore => one(Field::ForkPressure, GAS_PA),
        Change::ShockPreloadLess => one(Field::ShockPreload, -PRELOAD_M),
        Change::ShockPreloadMore => one(Field::ShockPreload, PRELOAD_M),
        Change::TyresLess => [Field::FrontTyre, Field::RearTyre]
            .map(|field| (field, Step::Share(-TYRES)))
            .into(),
        Change::ForkUp | Change::ForkDown => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::intake::Feeling;
    use crate::quantity::{Typed, Unit};

    fn lap(change: Change, felt: &[Verdict], kept: bool) -> Tried {
        let felt = Feeling::ALL.iter().copied().zip(felt.iter().copied());
        Tried {
            change,
            felt: felt.collect(),
            kept,
        }
    }

    fn after(laps: &[Tried]) -> Intake {
        let mut intake = Intake {
            tried: laps.to_vec(),
            ..Intake::default()
        };
        let twelve = Typed {
            value: 12.0,
            unit: Unit::Click,
            how: None,
        };
        Field::ForkCompressionNow.set(&mut intake, Some(twelve));
        intake
    }

    const OPEN: Change = Change::ForkCompressionOpen;
    const CLOSE: Change = Change::ForkCompressionClose;

    #[test]
    fn a_change_is_made_from_where_the_ones_before_left_the_bike() {
        let at = |laps: &[Tried]| {
            let turn = turns(&after(laps), OPEN)[0];
            (turn.from, turn.to)
        };
        assert_eq!(at(&[]), (Some(12.0), Some(16.0)));
        assert_eq!(at(&[lap(OPEN, &[], false)]), (Some(12.0), Some(16.0)));
        assert_eq!(at(&[lap(OPEN, &[], true)]), (Some(16.0), Some(20.0)));
        let back = [lap(OPEN, &[], true), lap(CLOSE, &[], true)];
        assert_eq!(at(&back), (Some(12.0), Some(16.0)));
        let other = turns(&after(&[]), Change::ShockReboundOpen)[0];
        assert_eq!((other.from, other.to), (None, None));
    }

    #[test]
    fn what_was_put_back_did_no_good_or_would_be_undone_is_not_proposed_again() {
        use Verdict::{Better, Same, Worse};
        let spent_after = |laps: &[Tried], change| spent(&after(laps), change);
        assert!(!spent_after(&[], OPEN));
        assert!(spent_after(&[lap(OPEN, &[Worse], false)], OPEN));
        assert!(!spent_after(&[lap(OPEN, &[Worse], false)], CLOSE));
        assert!(!spent_after(&[lap(OPEN, &[Better], true)], OPEN));
        assert!(spent_after(&[lap(OPEN, &[Better], true)], CLOSE));
        assert!(spent_after(&[lap(OPEN, &[Same], true)], OPEN));
        // Nobody could tell: another is worth more.
        assert!(spent_after(&[lap(OPEN, &[], false)], OPEN));
    }

    #[test]
    fn there_is_room_up_to_the_clicks_left_alone_at_either_end() {
        let room = |laps: &[Tried], change| {
            let intake = after(laps);
            has_room(&intake, &Situation::of(&intake), change)
        };
        // Twelve out of the usual number: four more each way, not eight more out.
        assert!(room(&[], OPEN) && room(&[], CLOSE));
        let open = [lap(OPEN, &[], true), lap(OPEN, &[], true)];
        assert!(!room(&open, OPEN));
        // Uncounted, two steps one way are as far as it goes.
        let up = |times| vec![lap(Change::ForkUp, &[], true); times];
        assert!(room(&up(1), Change::ForkUp));
        assert!(!room(&up(2), Change::ForkUp));
        assert!(room(&up(2), Change::ForkDown));
    }
}
