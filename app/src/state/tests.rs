//! The answers and every way they change.

use std::rc::Rc;

use sagwright_core::intake::{End, Feeling, Field, Intake, Phase, Question, StopSign};
use sagwright_core::quantity::{Dimension, How, Unit};
use yew::Reducible;

use super::*;

/// The wizard after some actions.
fn after(actions: impl IntoIterator<Item = Action>) -> Wizard {
    let start = Wizard::default();
    actions.into_iter().fold(start, |w, action| w.after(action))
}

fn typed(field: Field, text: &str) -> Action {
    Action::Type(field, text.to_owned())
}

fn pick(question: Question, word: &'static str) -> Action {
    Action::Pick(Slot::One(question), word)
}

fn keys(wizard: &Wizard, page: Page) -> Vec<String> {
    let found = troubles(&wizard.accepted(page), page);
    found.into_iter().map(|t| t.text.key.into_owned()).collect()
}

/// Kept and read back, nothing is different.
#[track_caller]
fn survives(wizard: &Wizard) {
    let text = to_saved(wizard).expect("it has a JSON form");
    let back = from_saved(&text).expect("it was just saved");
    assert_eq!(to_saved(&back).expect("it has a JSON form"), text);
    assert_eq!(back.document(), wizard.document());
    assert_eq!(back.typed, wizard.typed);
    assert_eq!(back.cannot_say, wizard.cannot_say);
}

const WEIGHT: Page = Page::Ask(Question::RiderWeight);

#[test]
fn nothing_changed_is_the_same_pointer() {
    let wizard = Rc::new(after([typed(Field::RiderWeight, "84,5")]));
    let same = Rc::clone(&wizard).reduce(typed(Field::RiderWeight, "84,5"));
    assert!(Rc::ptr_eq(&wizard, &same));
    let other = Rc::clone(&wizard).reduce(typed(Field::RiderWeight, "84"));
    assert!(!Rc::ptr_eq(&wizard, &other));
}

#[test]
fn the_letters_typed_come_back_after_any_number_of_unit_switches() {
    let mut wizard = after([typed(Field::RiderWeight, " 84,50")]);
    for _ in 0..10 {
        wizard = wizard.after(Action::Show(Dimension::Mass, Unit::Pound));
        assert_eq!(wizard.shown(Field::RiderWeight), "186");
        wizard = wizard.after(Action::Show(Dimension::Mass, Unit::Kilogram));
        assert_eq!(wizard.shown(Field::RiderWeight), " 84,50");
    }
    let answer = Field::RiderWeight
        .get(&wizard.intake)
        .expect("it was typed");
    assert_eq!((answer.value, answer.unit), (84.5, Unit::Kilogram));
}

#[test]
fn typing_while_another_unit_shows_makes_that_the_entry() {
    let wizard = after([
        typed(Field::RiderWeight, "84,5"),
        Action::Show(Dimension::Mass, Unit::Pound),
        typed(Field::RiderWeight, "187"),
    ]);
    let answer = Field::RiderWeight
        .get(&wizard.intake)
        .expect("it was typed");
    assert_eq!((answer.value, answer.unit), (187.0, Unit::Pound));
}

#[test]
fn a_wrong_text_stays_as_it_was_typed_and_is_no_answer() {
    for (text, key) in [
        ("eighty", "trouble.not-a-number"),
        ("1.084,5", "trouble.two-marks"),
        ("900", "problem.out-of-range"),
    ] {
        let wizard = after([
            typed(Field::RiderWeight, "84"),
            typed(Field::RiderWeight, text),
        ]);
        assert_eq!(keys(&wizard, WEIGHT), [key], "{text}");
        let wizard = wizard.accepted(WEIGHT);
        assert_eq!(wizard.shown(Field::RiderWeight), text);
        assert_eq!(Field::RiderWeight.get(&wizard.intake), None);
        let kept = from_saved(&to_saved(&wizard).expect("it has a JSON form"));
        assert_eq!(
            kept.expect("it was just saved").shown(Field::RiderWeight),
            text
        );
    }
}

#[test]
fn a_number_that_fits_another_unit_is_asked_about_once() {
    let page = Page::Ask(Question::ForkSpring);
    let wizard = after([typed(Field::ForkRate, "0,48")]);
    let found = troubles(&wizard.accepted(page), page);
    let offer = found[0].offer.expect("0.48 N/mm carries nobody");
    assert_eq!(offer.unit, Unit::KilogramForcePerMillimetre);

    let meant = wizard.after(Action::Meant(Field::ForkRate, offer.unit));
    assert_eq!(keys(&meant, page), Vec::<String>::new());
    let answer = Field::ForkRate.get(&meant.intake).expect("it is usual now");
    assert_eq!((answer.value, answer.unit), (0.48, offer.unit));
    assert_eq!(meant.shown(Field::ForkRate), "0,48");

    let kept = wizard.after(Action::KeepUnit(Field::ForkRate));
    assert_eq!(keys(&kept, page), ["problem.out-of-range"]);
    let again = kept.after(typed(Field::ForkRate, "0,5"));
    assert_eq!(keys(&again, page), ["trouble.did-you-mean"]);
}

#[test]
fn every_page_asks_for_an_answer_and_takes_one() {
    let wizard = after([Action::Feel(Feeling::Dives, true)]);
    for page in Page::all(&wizard.intake) {
        if page != Page::Ask(Question::Complaints) {
            assert!(!wizard.is_answered(page), "{page:?}");
            assert_eq!(keys(&wizard, page).len(), 1, "{page:?}");
        }
        let passed = wizard.after(Action::DontKnow(page, true));
        assert!(passed.is_answered(page), "{page:?}");
        assert!(passed.is_passed(page), "{page:?}");
        assert_eq!(lines(&passed, page), Value::DontKnow, "{page:?}");
        assert_eq!(keys(&passed, page), Vec::<String>::new(), "{page:?}");
        let back = passed.after(Action::DontKnow(page, false));
        assert!(!back.is_passed(page), "{page:?}");
    }
}

#[test]
fn something_typed_overrules_not_knowing_only_when_it_is_let_stand() {
    let page = Page::Ask(Question::ServiceHours);
    let wizard = after([typed(Field::ForkHours, "40"), Action::DontKnow(page, true)]);
    assert_eq!(Field::ForkHours.get(&wizard.document()), None);
    assert_eq!(wizard.shown(Field::ForkHours), "40");
    let stands = wizard.after(Action::Accept(page));
    assert!(!stands.is_passed(page));
    assert_eq!(Field::ForkHours.si(&stands.document()), Some(40.0 * 3600.0));
}

#[test]
fn what_another_fork_makes_void_is_left_out_and_comes_back() {
    let gas = after([
        pick(Question::BikeFork, "gas-one-leg"),
        typed(Field::ForkPressure, "10,4"),
    ]);
    assert!(Field::ForkPressure.get(&gas.document()).is_some());
    let coil = gas.after(pick(Question::BikeFork, "coil-both-legs"));
    assert!(Field::ForkPressure.get(&coil.document()).is_none());
    assert!(!Page::all(&coil.intake).contains(&Page::Ask(Question::ForkGas)));
    assert!(Page::all(&coil.intake).contains(&Page::Ask(Question::ForkSpring)));
    let back = coil.after(pick(Question::BikeFork, "gas-one-leg"));
    assert_eq!(back.document(), gas.document());
}

#[test]
fn a_fork_not_known_is_asked_for_its_spring_not_its_gas() {
    let wizard = after([pick(Question::BikeFork, CANNOT_SAY)]);
    let pages = Page::all(&wizard.intake);
    assert!(pages.contains(&Page::Ask(Question::ForkSpring)));
    assert!(!pages.contains(&Page::Ask(Question::ForkGas)));
}

#[test]
fn nothing_wrong_and_not_asked_are_told_apart() {
    let cleared = after([
        Action::Feel(Feeling::Dives, true),
        Action::Feel(Feeling::Dives, false),
    ]);
    assert_eq!(cleared.intake.complaints, None);
    let calm = cleared.after(Action::NothingWrong(true));
    assert_eq!(calm.intake.complaints, Some(Vec::new()));
    let felt = calm.after(Action::Feel(Feeling::Packs, true));
    assert!(felt.complaint(Feeling::Packs).is_some());

    let unticked = after([
        Action::Sign(StopSign::NoReturn, true),
        Action::Sign(StopSign::NoReturn, false),
    ]);
    assert_eq!(unticked.intake.stop_signs, None);
    let none = unticked.after(Action::NoSigns(true));
    assert!(none.is_answered(Page::Ask(Question::StopSigns)));
}

#[test]
fn a_complaint_keeps_its_detail_and_its_place() {
    let slot = |aspect| Slot::Detail(Feeling::Dives, aspect);
    let wizard = after([
        Action::Feel(Feeling::Packs, true),
        Action::Feel(Feeling::Dives, true),
        Action::Pick(slot(Aspect::End), "front"),
        Action::When(Feeling::Dives, Phase::Braking, true),
        Action::Pick(slot(Aspect::Since), CANNOT_SAY),
    ]);
    let complaint = wizard.complaint(Feeling::Dives).expect("it was ticked");
    assert_eq!(complaint.end, Some(End::Front));
    assert!(complaint.phases.contains(&Phase::Braking));
    assert_eq!(slot(Aspect::Since).get(&wizard), Some(CANNOT_SAY));
    let details: Vec<Page> = Page::all(&wizard.intake)
        .into_iter()
        .filter(|page| matches!(page, Page::Detail(_)))
        .collect();
    assert_eq!(
        details,
        [Page::Detail(Feeling::Dives), Page::Detail(Feeling::Packs)]
    );
    assert_eq!(
        details[0].step(&wizard.intake).map(|s| (s.at, s.of)),
        Some((1, 2))
    );
}

#[test]
fn numbers_that_contradict_each_other_are_told_on_their_page() {
    let page = Page::Ask(Question::SagFront);
    let wizard = after([
        typed(Field::ForkFreeSag, "60"),
        typed(Field::ForkRiderSag, "40"),
    ]);
    assert_eq!(keys(&wizard, page), ["problem.rider-sag-below-free"]);
    let page = Page::Ask(Question::ForkClickers);
    let wizard = after([
        typed(Field::ForkReboundRange, "20"),
        typed(Field::ForkReboundNow, "22"),
    ]);
    assert_eq!(keys(&wizard, page), ["problem.clicks-beyond-range"]);
    let half = after([typed(Field::ForkReboundNow, "12,5")]);
    assert_eq!(keys(&half, page), ["trouble.whole-clicks"]);
}

#[test]
fn an_opened_document_is_the_document_again() {
    for rider in crate::examples::riders() {
        let wizard = Wizard::from_intake(rider.clone());
        assert_eq!(wizard.document(), rider, "{}", rider.note);
        survives(&wizard);
    }
}

#[test]
fn everything_said_survives_being_kept() {
    let wizard = after([
        typed(Field::RiderWeight, "eighty"),
        typed(Field::ForkRate, "0.48"),
        Action::Show(Dimension::Pressure, Unit::Psi),
        Action::KeepUnit(Field::ForkRate),
        Action::Pick(Slot::How(Field::ForkRate), "guess"),
        Action::Feel(Feeling::Kicks, true),
        Action::DontKnow(Page::Detail(Feeling::Kicks), true),
        Action::Pick(Slot::Push(End::Rear), CANNOT_SAY),
        pick(Question::RiderPace, CANNOT_SAY),
    ]);
    assert_eq!(wizard.typed[&Field::ForkRate].how, Some(How::Guess));
    survives(&wizard);
}

#[test]
fn kept_answers_of_another_form_are_refused_by_name() {
    let text = to_saved(&Wizard::default()).expect("it has a JSON form");
    let newer = text.replacen("\"version\":1", "\"version\":2", 1);
    assert_eq!(from_saved(&newer), Err(SavedError::Newer));
    for text in ["", "{}", "[]", "{\"version\":1}"] {
        assert_eq!(from_saved(text), Err(SavedError::Unreadable), "{text}");
    }
}

#[test]
fn starting_again_leaves_nothing() {
    let wizard = after([typed(Field::RiderWeight, "84"), Action::Clear]);
    assert!(wizard.is_untouched());
    assert_eq!(wizard.document(), Intake::default());
    assert_eq!(wizard.first_open(), Some(WEIGHT));
}

#[test]
fn nothing_measured_passes_what_was_not_answered_and_keeps_what_was() {
    let wizard = after([typed(Field::FrontTyre, "0,9"), Action::NothingMeasured]);
    for page in Page::all(&wizard.intake) {
        if page.section() == Section::Measured {
            assert!(wizard.is_answered(page), "{page:?}");
        }
    }
    assert!(!wizard.is_passed(Page::Ask(Question::TyrePressures)));
    assert!(wizard.is_passed(Page::Ask(Question::PushTest)));
    assert!(!wizard.is_answered(WEIGHT));
}
