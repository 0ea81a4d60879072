//! "What to check next": what the last answer moved, the check, and its form.

use std::rc::Rc;

use sagwright_core::advice::{NextCheck, SetUpAdvice};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::course::{Course, Offer, Step, Want, subject_of};
use super::draft::Drafts;
use super::form::CheckForm;
use super::moved::{Moved, Shift};
use crate::advice_page::{Part, Voice, chance, heading, minutes, moved_bar, next_check};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::state::{Action, Subject, Wizard};

/// The name of the check; the focus goes there when another is offered.
const NAME: &str = "check-name";

/// The part of the advice about checks.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The checks worth doing, the best first.
    pub checks: Rc<Vec<NextCheck>>,
    /// How the page speaks.
    pub voice: Voice,
    /// How the checks went so far.
    pub course: UseReducerHandle<Course>,
    /// What the last step moved; `None` before the first, and while it is being worked out.
    pub moved: Option<Rc<Moved>>,
}

/// The checks of an advice, to share.
pub fn checks_of(advice: &SetUpAdvice) -> Rc<Vec<NextCheck>> {
    Rc::new(advice.next_checks.clone())
}

/// The section.
#[component]
pub fn CheckSection(props: &Props) -> Html {
    let desk = use_desk();
    let Props {
        checks,
        voice,
        course,
        moved,
    } = props;
    let offer = use_reducer(Offer::default);
    let drafts = use_state(Drafts::default);
    let offered = offer.of(checks);
    use_offer_in_focus(offer.turns());
    let said = moved
        .as_ref()
        .map(|moved| moved.sentence(voice, offered.as_ref().map(|(check, _)| *check)))
        .unwrap_or_default();
    html! {
        <section class="part check">
            { heading(voice, Part::Check) }
            <div class="moved">
                <p class="moved-said" role="status">{ said }</p>
                if let Some(moved) = moved {
                    <ul class="moved-causes">{ for moved.shown().into_iter().map(|s| shift(voice, s)) }</ul>
                }
                if let Some((subject, before)) = course.undoable() {
                    { take_back(&desk, voice, (course, &offer), subject, before) }
                }
            </div>
            if let Some((check, besides)) = offered {
                {
                    next_check(
                        voice,
                        check,
                        (NAME, name(voice, check)),
                        aside(voice, &offer, checks, check),
                        form(&desk, course, check, (&offer, &drafts, &besides)),
                    )
                }
                if !besides.is_empty() {
                    <h4>{ voice.words("advice.check.besides") }</h4>
                    <ul class="besides">{ for besides.into_iter().map(|one| beside(voice, &offer, one)) }</ul>
                }
            } else {
                <p>{ voice.words(if checks.is_empty() { "advice.check.none" } else { "advice.check.aside" }) }</p>
            }
            if offer.has_aside(checks) {
                <p>{ offer_all(voice, &offer) }</p>
            }
        </section>
    }
}

/// Once another check is offered instead, its name takes the focus from the button that has gone.
#[hook]
fn use_offer_in_focus(turns: usize) {
    let opened = use_mut_ref(|| true);
    use_effect_with(turns, move |_| {
        if !opened.replace(false) {
            browser::focus(NAME);
        }
    });
}

fn name(voice: &Voice, check: &NextCheck) -> String {
    subject_of(check).map_or_else(String::new, |subject| voice.say(&subject.name()))
}

/// A check that the same tools are good for: pressed, it is offered in place of the other.
fn beside(voice: &Voice, offer: &UseReducerHandle<Offer>, check: &NextCheck) -> Html {
    let onclick = {
        let (offer, what) = (offer.dispatcher(), check.what.clone());
        Callback::from(move |_: MouseEvent| offer.dispatch(Want::This(what.clone())))
    };
    let text = Text::new("advice.check.beside")
        .with("check", Arg::Raw(name(voice, check)))
        .with("time", Arg::Raw(minutes(voice, check.minutes)));
    html! {
        <li><button type="button" class="button quiet" {onclick}>{ voice.say(&text) }</button></li>
    }
}

/// One cause before and after.
fn shift(voice: &Voice, shift: &Shift) -> Html {
    html! {
        <li key={shift.cause.word()}>
            <span class="moved-name">{ voice.say(&shift.name) }</span>
            <span class="moved-numbers">
                { chance(voice, shift.before) }
                <span aria-hidden="true">{ " → " }</span>
                <span class="vh">{ voice.words("advice.effect.to") }</span>
                <strong>{ chance(voice, shift.after) }</strong>
            </span>
            { moved_bar(Some(shift.before), shift.after) }
        </li>
    }
}

fn take_back(
    desk: &Desk,
    voice: &Voice,
    (course, offer): (&UseReducerHandle<Course>, &UseReducerHandle<Offer>),
    subject: Subject,
    before: &Rc<Wizard>,
) -> Html {
    let (desk, course, before) = (desk.clone(), course.clone(), Rc::clone(before));
    let offer = offer.dispatcher();
    let onclick = Callback::from(move |_: MouseEvent| {
        // What was to come next came of the answer.
        offer.dispatch(Want::Next(Vec::new()));
        course.dispatch(Step::TakeBack(Rc::clone(&desk.wizard)));
        desk.act(Action::Adopt(subject, Rc::clone(&before)));
        // The button may be gone after this; the heading stays.
        browser::focus(Part::Check.id());
    });
    let text = Text::new("advice.moved.undo").with("check", subject.name().into());
    html! { <button type="button" class="button quiet" {onclick}>{ voice.say(&text) }</button> }
}

/// "I can't check this now".
fn aside(
    voice: &Voice,
    offer: &UseReducerHandle<Offer>,
    checks: &[NextCheck],
    check: &NextCheck,
) -> Html {
    let onclick = {
        let (offer, what) = (offer.dispatcher(), check.what.clone());
        Callback::from(move |_: MouseEvent| offer.dispatch(Want::NotNow(what.clone())))
    };
    let words = if offer.has_aside(checks) {
        "advice.check.cannot-either"
    } else {
        "advice.check.cannot"
    };
    html! {
        <button type="button" class="button quiet" {onclick}>{ voice.words(words) }</button>
    }
}

fn form(
    desk: &Desk,
    course: &UseReducerHandle<Course>,
    check: &NextCheck,
    (offer, drafts, besides): (&UseReducerHandle<Offer>, &Drafts, &[&NextCheck]),
) -> Html {
    let Some(subject) = subject_of(check) else {
        return Html::default();
    };
    let used = {
        let (desk, course, offer) = (desk.clone(), course.clone(), offer.dispatcher());
        let rest: Vec<Text> = besides.iter().map(|check| check.what.clone()).collect();
        Callback::from(move |answered: Rc<Wizard>| {
            offer.dispatch(Want::Next(rest.clone()));
            course.dispatch(Step::Give(subject, Rc::clone(&desk.wizard)));
            desk.act(Action::Adopt(subject, answered));
            // The form is about to go, and with it the button that was pressed.
            browser::focus(Part::Check.id());
        })
    };
    let key = match subject {
        Subject::Page(page) => page.question().word(),
        Subject::Look(look) => look.word(),
        Subject::Lap(change) => change.word(),
    };
    let drafts = drafts.clone();
    html! { <CheckForm {key} {subject} {drafts} {used} /> }
}

fn offer_all(voice: &Voice, offer: &UseReducerHandle<Offer>) -> Html {
    let offer = offer.dispatcher();
    let onclick = Callback::from(move |_: MouseEvent| offer.dispatch(Want::Again));
    html! {
        <button type="button" class="button quiet" {onclick}>{ voice.words("advice.check.again") }</button>
    }
}
