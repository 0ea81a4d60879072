//! Reading the answers over before the advice.

use sagwright_core::intake::{Question, check};
use yew::prelude::*;

use super::answers::answers;
use crate::desk::{Desk, use_desk, use_title};
use crate::hosted;
use crate::pieces::{main_link, page_heading, paragraph, way_back};
use crate::route::Route;
use crate::state::Page;
use crate::words::say;

/// The answers, what contradicts itself in them, and the way to the advice.
#[component]
pub fn CheckPage() -> Html {
    let desk = use_desk();
    let problems = problems(&desk);
    use_title(&say("check.heading"), !problems.is_empty());
    let back = if hosted::has_questions() {
        Route::Extra
    } else {
        Route::ask(Page::Ask(Question::StopSigns))
    };
    html! {
        <>
            { way_back(back) }
            <div class="question wide">
                if !problems.is_empty() {
                    <div class="problems" role="alert" aria-labelledby="problems-heading">
                        <h2 id="problems-heading">{ say("check.contradiction") }</h2>
                        <ul>{ for problems.iter().cloned() }</ul>
                    </div>
                }
                { page_heading(say("check.heading")) }
                <p class="why">{ say("check.why") }</p>
                { answers(&desk, true) }
                if problems.is_empty() {
                    <div class="onward">
                        { main_link(next(&desk), "check.advice") }
                    </div>
                } else {
                    { paragraph("check.mend-first") }
                }
            </div>
        </>
    }
}

/// What the rules say is wrong, each leading to its question.
fn problems(desk: &Desk) -> Vec<Html> {
    let Err(error) = check(&desk.wizard.document()) else {
        return Vec::new();
    };
    let shown = error.problems.iter().map(|problem| {
        let text = desk.tell(&problem.text);
        match problem.question {
            Some(question) => {
                let href = Route::change(Page::Ask(question)).fragment();
                html! { <li><a {href}>{ text }</a></li> }
            }
            None => html! { <li>{ text }</li> },
        }
    });
    shown.collect()
}

/// The advice, or first the one page that may not be left out: the stop-riding signs.
fn next(desk: &Desk) -> Route {
    let signs = Page::Ask(Question::StopSigns);
    if desk.wizard.is_answered(signs) {
        Route::Advice
    } else {
        Route::change(signs)
    }
}
