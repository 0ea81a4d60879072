//! Opening the answers in a link: what they are, and whether they take the place of those that are there.

use std::rc::Rc;

use gloo::events::EventListener;
use sagwright_core::intake::{Intake, IntakeError, from_link};
use yew::prelude::*;

use super::answers::answers;
use super::open::line;
use crate::browser;
use crate::desk::{Desk, use_desk, use_title};
use crate::route::{LINK, Route};
use crate::shell::HEADING;
use crate::state::{Action, Wizard};
use crate::words::say;

/// Shows what the link holds and asks; or says why it holds nothing.
#[component]
pub fn LinkPage() -> Html {
    let desk = use_desk();
    let word = use_word();
    let found = use_memo((*word).clone(), |word| from_link(word));
    let heading = if found.is_ok() {
        "link.heading"
    } else {
        "link.refused"
    };
    use_title(&say(heading), found.is_err());
    html! {
        <div class="question wide">
            {
                match found.as_ref() {
                    Ok(intake) => held(&desk, intake),
                    Err(error) => nothing(&desk, error),
                }
            }
        </div>
    }
}

/// The word after `#/link/`, whatever stands there now: another link followed on this page changes no more than that.
#[hook]
fn use_word() -> UseStateHandle<String> {
    let word = use_state_eq(word_now);
    let set = word.setter();
    use_effect_with((), move |()| {
        let listener = web_sys::window()
            .map(|window| EventListener::new(&window, "hashchange", move |_| set.set(word_now())));
        move || drop(listener)
    });
    word
}

fn word_now() -> String {
    let fragment = browser::fragment();
    let word = fragment.strip_prefix(&format!("#/{LINK}/"));
    word.unwrap_or_default().to_owned()
}

fn held(desk: &Desk, intake: &Intake) -> Html {
    let theirs = Rc::new(Wizard::from_intake(intake.clone()));
    let kept = !desk.wizard.is_untouched();
    let same = desk.wizard.document() == *intake;
    let open = {
        let (desk, intake) = (desk.clone(), intake.clone());
        Callback::from(move |_: MouseEvent| {
            desk.act(Action::Open(Box::new(intake.clone())));
            browser::replace(Route::Check);
        })
    };
    // The same list as everywhere, of other answers.
    let shown = Desk {
        wizard: theirs,
        ..desk.clone()
    };
    let (question, yes) = match (kept, same) {
        (_, true) => ("link.same", None),
        (true, false) => ("link.replace", Some("link.yes-replace")),
        (false, false) => ("link.nothing-lost", Some("link.yes")),
    };
    html! {
        <>
            <h1 id={HEADING} tabindex="-1">{ say("link.heading") }</h1>
            <p class="why">{ say("link.why") }</p>
            <p class="notice">{ say(question) }</p>
            <div class="onward">
                if let Some(yes) = yes {
                    <button type="button" class="button button-main" onclick={open}>{ say(yes) }</button>
                }
                if kept {
                    <a class="button" href={Route::Check.fragment()}>{ say("link.no") }</a>
                }
            </div>
            if !intake.note.is_empty() { <p><q>{ intake.note.clone() }</q></p> }
            { answers(&shown, false) }
        </>
    }
}

/// Why there are no answers in it. The page's heading says so and takes the focus, as on every page.
fn nothing(desk: &Desk, error: &IntakeError) -> Html {
    let lines = error.problems.iter().map(|problem| line(desk, problem));
    html! {
        <>
            <h1 id={HEADING} tabindex="-1">{ say("link.refused") }</h1>
            <ul>{ for lines.map(|line| html! { <li>{ line }</li> }) }</ul>
            <p>{ say("link.unchanged") }</p>
            <div class="onward">
                <a class="button button-main" href={Route::Landing.fragment()}>{ say("link.first-page") }</a>
                <a class="button" href={Route::Open.fragment()}>{ say("landing.open") }</a>
            </div>
        </>
    }
}
