use std::cell::Cell;

use futures_util::FutureExt as _;
use sagwright_core::advice::RiddenClicks;
use sagwright_core::cause::Rehearsal;
use sagwright_core::intake::{Field, PushFeel};
use sagwright_core::quantity::{Typed, Unit};
use sagwright_core::remedy::Remedied;

use super::*;

fn ridden(clicks: u8) -> Ridden {
    Ridden {
        clicks: RiddenClicks {
            fork_compression: clicks,
            fork_rebound: 4,
            shock_compression: 5,
            shock_rebound: 6,
        },
        fork_rate: None,
        shock_rate: 50_000.0,
        feel: Vec::new(),
        pictures: Vec::new(),
        before_told: true,
        rides: 1,
        rehearsal: Rehearsal::default(),
        remedied: Remedied::default(),
    }
}

fn pushed() -> Intake {
    let mut intake = Intake::default();
    intake.measured.push_front = Some(PushFeel::SticksFirst);
    intake
}

fn clicked() -> Intake {
    let mut intake = Intake::default();
    let two = Typed {
        value: 2.0,
        unit: Unit::Click,
        how: None,
    };
    Field::ForkReboundNow.set(&mut intake, Some(two));
    intake
}

/// What comes of work that waits for nothing.
fn at_once<T>(work: impl Future<Output = T>) -> T {
    work.now_or_never().expect("it waits for nothing")
}

fn ask(adviser: &Adviser, intake: &Intake) -> Outcome {
    at_once(adviser.ask(intake, async || ()))
}

fn refine(adviser: &Adviser, intake: &Intake, ridden: Ridden) -> Option<Outcome> {
    at_once(adviser.refine(intake, Rc::new(ridden), async || ()))
}

#[track_caller]
fn stands_on(outcome: &Outcome, expected: Stand) {
    match outcome {
        Outcome::Advice(_, stand) => assert_eq!(*stand, expected),
        Outcome::Refused(error) => panic!("refused: {error:?}"),
    }
}

#[test]
fn the_same_answers_are_worked_out_once() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    assert_eq!(adviser.known(&intake), None);
    let first = ask(&adviser, &intake);
    stands_on(&first, Stand::Still);
    assert_eq!(adviser.known(&intake), Some(first.clone()));
    assert_eq!(ask(&adviser, &intake), first);
    assert_ne!(ask(&adviser, &pushed()), first);
    // Asked about again, as when an answer is taken back.
    assert_eq!(ask(&adviser, &intake), first);
}

#[test]
fn a_bike_standing_still_is_looked_at_once() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    let seen = |adviser: &Adviser| {
        let inner = adviser.0.borrow();
        let still = inner.still.as_ref();
        Rc::clone(&still.expect("it was looked at").1)
    };
    stands_on(&ask(&adviser, &intake), Stand::Still);
    let before = seen(&adviser);
    // A push test shows on the same bike standing still.
    ask(&adviser, &pushed());
    assert!(Rc::ptr_eq(&before, &seen(&adviser)));
    ask(&adviser, &clicked());
    assert!(!Rc::ptr_eq(&before, &seen(&adviser)));
}

#[test]
fn rides_that_come_in_while_advice_is_worked_out_are_heeded() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    ask(&adviser, &intake);
    let taken_in = Cell::new(false);
    let then = pushed();
    let outcome = adviser.ask(&then, async || {
        if !taken_in.replace(true) {
            refine(&adviser, &intake, ridden(3));
        }
    });
    stands_on(&at_once(outcome), Stand::Ridden);
    assert!(taken_in.get());
}

#[test]
fn no_more_is_kept_than_is_of_use() {
    let adviser = Adviser::default();
    for name in ["one", "two", "three", "four", "five"] {
        let note = name.to_owned();
        ask(
            &adviser,
            &Intake {
                note,
                ..Intake::default()
            },
        );
    }
    assert_eq!(adviser.0.borrow().told.len(), MOST_KEPT);
}

#[test]
fn rides_refine_what_was_asked_last() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    let at_once = ask(&adviser, &intake);
    let refined = refine(&adviser, &intake, ridden(3)).expect("it was asked");
    stands_on(&refined, Stand::Ridden);
    assert_ne!(refined, at_once);
    assert_eq!(adviser.known(&intake), Some(refined.clone()));
    assert!(!adviser.changes(&intake).is_empty(), "nothing was moved");
    // The same rides again change nothing.
    assert_eq!(refine(&adviser, &intake, ridden(3)), Some(refined));
}

#[test]
fn a_push_test_keeps_the_rides_and_clicks_only_until_they_are_ridden() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    ask(&adviser, &intake);
    refine(&adviser, &intake, ridden(3));
    stands_on(&ask(&adviser, &pushed()), Stand::Ridden);
    assert_eq!(adviser.changes(&pushed()), adviser.changes(&intake));
    stands_on(&ask(&adviser, &clicked()), Stand::RiddenBefore);
    assert_eq!(adviser.changes(&clicked()), []);
    let again = refine(&adviser, &clicked(), ridden(9));
    stands_on(&again.expect("it was asked"), Stand::Ridden);
    assert_eq!(adviser.changes(&clicked()).len(), 1);
    // Back to the clicks of before: these rides are not of that bike.
    stands_on(&ask(&adviser, &intake), Stand::RiddenBefore);
}

#[test]
fn rides_that_come_before_the_question_answer_it_all_the_same() {
    let adviser = Adviser::default();
    let intake = Intake::default();
    ask(&adviser, &clicked());
    assert_eq!(refine(&adviser, &intake, ridden(3)), None);
    stands_on(&ask(&adviser, &intake), Stand::Ridden);
}
