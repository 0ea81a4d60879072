//! A question: its answers inside the frame, and where one goes from it.

use sagwright_core::intake::{Field, Question};
use yew::prelude::*;

use super::complaints::complaints;
use super::detail::detail;
use super::frame::{Frame, SUMMARY, heading};
use super::groups::{ground, push};
use super::numbers::numbers;
use super::signs::signs;
use crate::browser;
use crate::desk::{Desk, use_desk, use_title};
use crate::hosted;
use crate::inputs::Radios;
use crate::pieces::{link_button, page_heading, paragraph};
use crate::route::Route;
use crate::state::{Action, Page, Slot, Trouble, Wizard, troubles};
use crate::words::say;

/// One question.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Which.
    pub page: Page,
    /// Whether it was opened to change an answer.
    pub changing: bool,
}

/// The page of one question.
#[component]
pub fn QuestionPage(props: &Props) -> Html {
    let desk = use_desk();
    let (page, changing) = (props.page, props.changing);
    let found = use_state_eq(Vec::<Trouble>::new);
    let attempts = use_state_eq(|| 0_u32);
    use_title(&heading(&desk, page), !found.is_empty());
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    if !Page::all(&desk.wizard.intake).contains(&page) {
        return not_asked();
    }

    let onward = {
        let (desk, found, attempts) = (desk.clone(), found.clone(), attempts.clone());
        Callback::from(move |()| {
            let next = desk.wizard.accepted(page);
            let wrong = troubles(&next, page);
            desk.act(Action::Accept(page));
            if wrong.is_empty() {
                browser::go(onward_from(&next, page, changing));
            } else {
                attempts.set(*attempts + 1);
            }
            found.set(wrong);
        })
    };
    let pass = {
        let desk = desk.clone();
        Callback::from(move |()| {
            let action = Action::DontKnow(page, true);
            let next = desk.wizard.after(action.clone());
            desk.act(action);
            browser::go(onward_from(&next, page, changing));
        })
    };
    let settled = {
        let found = found.clone();
        Callback::from(move |field: Field| {
            let rest = found.iter().filter(|t| t.at != field.path());
            found.set(rest.cloned().collect());
        })
    };
    let leap = {
        let desk = desk.clone();
        Callback::from(move |()| {
            desk.act(Action::NothingMeasured);
            browser::go(Route::ask(Page::Ask(Question::StopSigns)));
        })
    };
    let opens_measuring = page == Page::Ask(Question::SagFront) && !changing;
    let passed = desk.wizard.is_passed(page);
    let frame = Frame {
        page,
        back: back_from(&desk.wizard, page, changing),
        troubles: (*found).clone(),
        onward,
        pass: has_pass(page).then_some(pass),
        passed,
        leap: opens_measuring.then_some(leap),
        answers: answer_inputs(&desk, page, &found, &settled),
    };
    frame.draw(&desk)
}

/// The inputs of a page, wherever they stand.
pub fn answer_inputs(
    desk: &Desk,
    page: Page,
    troubles: &[Trouble],
    settled: &Callback<Field>,
) -> Html {
    match page {
        Page::Detail(feeling) => detail(desk, feeling),
        Page::Ask(Question::Complaints) => complaints(desk),
        Page::Ask(Question::StopSigns) => signs(desk),
        Page::Ask(Question::GroundMix) => ground(desk),
        Page::Ask(Question::PushTest) => push(desk),
        Page::Ask(single) if Slot::is_single(single) => {
            let group = Radios {
                first: true,
                described_by: (!troubles.is_empty()).then_some(SUMMARY),
                ..Radios::of(Slot::One(single))
            };
            html! {
                <>
                    if single == Question::BikeClass { { hosted::serves(desk) } }
                    { group.draw(desk) }
                </>
            }
        }
        Page::Ask(question) => {
            html! {
                <>
                    { hosted::counts(question) }
                    { numbers(desk, question, troubles, settled) }
                </>
            }
        }
    }
}

/// Whether "I don't know" is a button of the page rather than one of its options.
fn has_pass(page: Page) -> bool {
    match page.question() {
        Question::Complaints | Question::StopSigns => false,
        question => !Slot::is_single(question),
    }
}

/// The next question; after a change, what the change brought up, then the answers.
fn onward_from(wizard: &Wizard, page: Page, changing: bool) -> Route {
    if changing {
        let brought_up = Page::all(&wizard.intake)
            .into_iter()
            .find(|other| page.brings_up(*other) && !wizard.is_answered(*other));
        return brought_up.map_or(Route::Check, Route::change);
    }
    let last = if hosted::has_questions() {
        Route::Extra
    } else {
        Route::Check
    };
    page.after(&wizard.intake).map_or(last, Route::ask)
}

fn back_from(wizard: &Wizard, page: Page, changing: bool) -> Route {
    if changing {
        return Route::Check;
    }
    page.before(&wizard.intake)
        .map_or(Route::Landing, Route::ask)
}

/// Reached by address only: a question that the answers given leave no place for.
fn not_asked() -> Html {
    html! {
        <div class="question">
            { page_heading(say("not-asked.heading")) }
            { paragraph("not-asked.text") }
            <p>{ link_button(Route::Check, "not-asked.answers") }</p>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::Feeling;

    use super::*;

    fn picked(question: Question, word: &'static str) -> Wizard {
        Wizard::default().after(Action::Pick(Slot::One(question), word))
    }

    #[test]
    fn a_change_leads_back_to_the_answers() {
        let wizard = picked(Question::RiderPace, "club");
        let next = onward_from(&wizard, Page::Ask(Question::RiderPace), true);
        assert_eq!(next, Route::Check);
    }

    #[test]
    fn a_change_that_brings_up_a_question_asks_it_first() {
        let wizard = picked(Question::BikeFork, "gas-one-leg");
        let next = onward_from(&wizard, Page::Ask(Question::BikeFork), true);
        assert_eq!(next, Route::change(Page::Ask(Question::ForkGas)));

        let wizard = Wizard::default().after(Action::Feel(Feeling::Dives, true));
        let next = onward_from(&wizard, Page::Ask(Question::Complaints), true);
        assert_eq!(next, Route::change(Page::Detail(Feeling::Dives)));
    }

    #[test]
    fn the_way_through_ends_at_the_answers() {
        let wizard = Wizard::default();
        let mut at = Page::Ask(Question::RiderWeight);
        let mut met = 1;
        while let Route::Ask { page, changing } = onward_from(&wizard, at, false) {
            assert!(!changing);
            assert_eq!(back_from(&wizard, page, false), Route::ask(at));
            at = page;
            met += 1;
        }
        assert_eq!(at, Page::Ask(Question::StopSigns));
        // Every question but the gas of a fork not known to have any and the detail of no complaint.
        assert_eq!(met, Question::ALL.len() - 2);
    }
}
