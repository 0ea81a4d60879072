//! "What to check next": what the last answer moved, the check, and its form.

use std::rc::Rc;

use sagwright_core::advice::{NextCheck, SetUpAdvice};
use sagwright_core::words::Text;
use yew::prelude::*;

use super::course::{Course, Step};
use super::form::CheckForm;
use super::moved::{Moved, Shift, name};
use crate::advice_page::{Part, Voice, chance, heading, moved_bar, next_check};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::state::{Action, Page, Wizard};

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
    let offered = course.offered(checks);
    use_offer_in_focus(course);
    let said = moved
        .as_ref()
        .map(|moved| moved.sentence(voice, offered))
        .unwrap_or_default();
    html! {
        <section class="part check">
            { heading(voice, Part::Check) }
            <div class="moved">
                <p class="moved-said" role="status">{ said }</p>
                if let Some(moved) = moved {
                    <ul class="moved-causes">{ for moved.shown().into_iter().map(|s| shift(voice, s)) }</ul>
                }
                if let Some((page, before)) = course.undoable() {
                    { take_back(&desk, voice, course, page, before) }
                }
            </div>
            if let Some(check) = offered {
                { next_check(voice, check, NAME, form(&desk, voice, course, checks, check)) }
            } else {
                <p>{ voice.words(if checks.is_empty() { "advice.check.none" } else { "advice.check.aside" }) }</p>
            }
            if course.has_aside(checks) {
                <p>{ offer_all(voice, course) }</p>
            }
        </section>
    }
}

/// Once another check is offered instead, its name takes the focus from the button that has gone.
#[hook]
fn use_offer_in_focus(course: &Course) {
    let opened = use_mut_ref(|| true);
    use_effect_with(course.aside_count(), move |_| {
        if !opened.replace(false) {
            browser::focus(NAME);
        }
    });
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
    course: &UseReducerHandle<Course>,
    page: Page,
    before: &Rc<Wizard>,
) -> Html {
    let (desk, course, before) = (desk.clone(), course.clone(), Rc::clone(before));
    let onclick = Callback::from(move |_: MouseEvent| {
        course.dispatch(Step::TakeBack(Rc::clone(&desk.wizard)));
        desk.act(Action::Adopt(page, Rc::clone(&before)));
        // The button may be gone after this; the heading stays.
        browser::focus(Part::Check.id());
    });
    let text = Text::new("advice.moved.undo").with("check", name(page).into());
    html! { <button type="button" class="button quiet" {onclick}>{ voice.say(&text) }</button> }
}

fn form(
    desk: &Desk,
    voice: &Voice,
    course: &UseReducerHandle<Course>,
    checks: &[NextCheck],
    check: &NextCheck,
) -> Html {
    let aside = {
        let (course, what) = (course.clone(), check.what.clone());
        Callback::from(move |_: MouseEvent| course.dispatch(Step::PutAside(what.clone())))
    };
    let words = if course.has_other(checks) {
        "advice.check.cannot"
    } else {
        "advice.check.cannot-last"
    };
    let aside = html! {
        <button type="button" class="button" onclick={aside}>{ voice.words(words) }</button>
    };
    let Some(question) = check.question else {
        return html! { <div class="onward">{ aside }</div> };
    };
    let used = {
        let (desk, course) = (desk.clone(), course.clone());
        Callback::from(move |answered: Rc<Wizard>| {
            let page = Page::Ask(question);
            course.dispatch(Step::Give(page, Rc::clone(&desk.wizard)));
            desk.act(Action::Adopt(page, answered));
            // The form is about to go, and with it the button that was pressed.
            browser::focus(Part::Check.id());
        })
    };
    html! { <CheckForm key={question.word()} {question} {used}>{ aside }</CheckForm> }
}

fn offer_all(voice: &Voice, course: &UseReducerHandle<Course>) -> Html {
    let course = course.clone();
    let onclick = Callback::from(move |_: MouseEvent| course.dispatch(Step::OfferAll));
    html! {
        <button type="button" class="button quiet" {onclick}>{ voice.words("advice.check.again") }</button>
    }
}
