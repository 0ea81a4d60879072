//! Opening answers saved before, from a file or pasted.

use std::rc::Rc;

use gloo::file::File;
use gloo::file::callbacks::{FileReader, read_as_text};
use sagwright_core::intake::Problem;
use sagwright_core::workshop::answers_in;
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

use crate::browser;
use crate::desk::{Desk, use_desk, use_title};
use crate::route::Route;
use crate::shell::HEADING;
use crate::state::Action;
use crate::words::say;

/// The list of what is wrong with the document.
const PROBLEMS: &str = "open-problems";

/// What came of opening a document.
#[derive(Clone, PartialEq)]
enum Outcome {
    /// Nothing was opened yet.
    Waiting,
    /// The browser could not read the file.
    NoFile,
    /// It is no document that can be worked with.
    Refused(Rc<Vec<Problem>>),
}

/// A file or pasted text, and what is wrong with it.
#[component]
pub fn OpenPage() -> Html {
    let desk = use_desk();
    let outcome = use_state_eq(|| Outcome::Waiting);
    let pasted = use_state(String::new);
    let reader = use_mut_ref(|| None::<FileReader>);
    use_title(&say("open.heading"), *outcome != Outcome::Waiting);
    use_effect_with((*outcome).clone(), |outcome| {
        if *outcome != Outcome::Waiting {
            browser::focus(PROBLEMS);
        }
    });

    let take = {
        let (desk, outcome) = (desk.clone(), outcome.setter());
        Callback::from(move |text: String| match answers_in(&text) {
            Ok(intake) => {
                desk.act(Action::Open(Box::new(intake)));
                browser::go(Route::Check);
            }
            Err(error) => outcome.set(Outcome::Refused(Rc::new(error.problems))),
        })
    };
    let picked = {
        let (take, outcome) = (take.clone(), outcome.setter());
        Callback::from(move |event: Event| {
            let input = event
                .target()
                .and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
            let Some(file) = input.and_then(|i| i.files()).and_then(|files| files.get(0)) else {
                return;
            };
            let (take, outcome) = (take.clone(), outcome.clone());
            let task = read_as_text(&File::from(file), move |text| match text {
                Ok(text) => take.emit(text),
                Err(_) => outcome.set(Outcome::NoFile),
            });
            // Dropping the task would stop the reading.
            *reader.borrow_mut() = Some(task);
        })
    };
    let typing = pasted.setter();
    let oninput = Callback::from(move |event: InputEvent| {
        let area = event
            .target()
            .and_then(|t| t.dyn_into::<HtmlTextAreaElement>().ok());
        if let Some(area) = area {
            typing.set(area.value());
        }
    });
    let text = (*pasted).clone();
    let open = take.reform(move |event: SubmitEvent| {
        event.prevent_default();
        text.clone()
    });
    html! {
        <>
            <p class="back"><a href={Route::Landing.fragment()}>{ say("frame.back") }</a></p>
            <div class="question">
                { refused(&desk, &outcome) }
                <h1 id={HEADING} tabindex="-1">{ say("open.heading") }</h1>
                <p class="why">{ say("open.why") }</p>
                if !desk.wizard.is_untouched() { <p class="notice">{ say("open.replace") }</p> }
                <div class="number">
                    <label class="number-label" for="open-file">{ say("open.file") }</label>
                    <input id="open-file" class="file" type="file" accept=".json,application/json" onchange={picked} />
                </div>
                <form novalidate=true onsubmit={open}>
                    <label class="number-label" for="open-text">{ say("open.paste") }</label>
                    <textarea id="open-text" class="paste" rows="8" spellcheck="false" value={(*pasted).clone()} {oninput} />
                    <div class="onward">
                        <button type="submit" class="button button-main">{ say("open.open") }</button>
                    </div>
                </form>
            </div>
        </>
    }
}

fn refused(desk: &Desk, outcome: &Outcome) -> Html {
    let lines = match outcome {
        Outcome::Waiting => return Html::default(),
        Outcome::NoFile => vec![say("open.no-file")],
        Outcome::Refused(problems) => problems.iter().map(|p| line(desk, p)).collect(),
    };
    html! {
        <div class="problems" id={PROBLEMS} role="alert" tabindex="-1" aria-labelledby="problems-heading">
            <h2 id="problems-heading">{ say("open.refused") }</h2>
            <ul>{ for lines.iter().map(|line| html! { <li>{ line }</li> }) }</ul>
        </div>
    }
}

/// The place in the document, where there is one, and what is wrong there.
pub fn line(desk: &Desk, problem: &Problem) -> String {
    let text = desk.tell(&problem.text);
    if problem.path.is_empty() {
        text
    } else {
        format!("{}: {text}", problem.path)
    }
}
