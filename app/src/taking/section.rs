//! The end of the advice: keeping a copy and handing it on.

use std::rc::Rc;

use sagwright_core::advice::Advice;
use sagwright_core::intake::Intake;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::hand::{can_share, copy, keep_for_good, share};
use super::text::as_text;
use super::{Code, link_to, link_without_words};
use crate::advice_page::Voice;
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::route::Route;
use crate::state::to_file;
use crate::words::{book, say};

/// The field that holds the link, to be copied by hand where the clipboard is closed.
const LINK_FIELD: &str = "taking-link";

/// What is taken along.
#[derive(Properties)]
pub struct Props {
    /// The answers.
    pub intake: Rc<Intake>,
    /// The advice on them.
    pub advice: Rc<Advice>,
}

impl PartialEq for Props {
    /// Both are made once and shared, so pointers say enough.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.intake, &other.intake) && Rc::ptr_eq(&self.advice, &other.advice)
    }
}

/// What came of the last press.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Done {
    Nothing,
    LinkCopied,
    TextCopied,
    NotCopied,
}

/// A copy to keep, a link, a code, a text.
#[component]
pub fn TakeAlong(props: &Props) -> Html {
    let desk = use_desk();
    let done = use_state_eq(|| Done::Nothing);
    let link = use_memo(Rc::clone(&props.intake), |intake| link_to(intake));
    use_effect_with((), |()| keep_for_good());
    html! {
        <section class="part take-along">
            <h2>{ say("taking.heading") }</h2>
            { copies(&props.intake) }
            if let Some(link) = link.as_ref() {
                { hand_on(&desk, props, link, &done) }
                { code(&props.intake) }
            }
            <p><a class="button" href={Route::StartAgain.fragment()}>{ say("landing.start-again") }</a></p>
        </section>
    }
}

/// The file and the paper.
fn copies(intake: &Rc<Intake>) -> Html {
    let intake = Rc::clone(intake);
    let save = Callback::from(move |_: MouseEvent| {
        // A document of plain answers always has a JSON form.
        if let Ok(json) = to_file(&intake) {
            browser::save_file(&say("taking.file-name"), "application/json", &json);
        }
    });
    let print = Callback::from(|_: MouseEvent| browser::print());
    html! {
        <>
            <p>{ say("taking.keep") }</p>
            <div class="onward">
                <button type="button" class="button button-main" onclick={save}>{ say("taking.save") }</button>
                <button type="button" class="button" onclick={print}>{ say("advice.print") }</button>
                <a class="button" href={Route::Sheet.fragment()}>{ say("taking.sheet") }</a>
            </div>
        </>
    }
}

/// The link and the text, on the clipboard or to another program.
fn hand_on(desk: &Desk, props: &Props, link: &str, done: &UseStateHandle<Done>) -> Html {
    let text = {
        let voice = Voice::new(book(), desk.units().clone());
        let (advice, link) = (Rc::clone(&props.advice), link.to_owned());
        let intake = Rc::clone(&props.intake);
        move || as_text(&voice, &advice, &intake, Some(&link))
    };
    let copy_link = {
        let (set, link) = (done.setter(), link.to_owned());
        Callback::from(move |_: MouseEvent| put(&set, link.clone(), Done::LinkCopied))
    };
    let copy_text = {
        let (set, text) = (done.setter(), text.clone());
        Callback::from(move |_: MouseEvent| put(&set, text(), Done::TextCopied))
    };
    let hand_over = Callback::from(move |_: MouseEvent| {
        let text = text();
        spawn_local(async move { share(&say("shell.name"), &text).await });
    });
    html! {
        <>
            <h3>{ say("taking.link") }</h3>
            <p>{ say("taking.link-what") }</p>
            <label class="number-label" for={LINK_FIELD}>{ say("taking.link-label") }</label>
            <input id={LINK_FIELD} class="box link" type="text" readonly=true value={link.to_owned()} />
            <div class="onward">
                <button type="button" class="button" onclick={copy_link}>{ say("taking.copy-link") }</button>
                <button type="button" class="button" onclick={copy_text}>{ say("taking.copy-text") }</button>
                if can_share() {
                    <button type="button" class="button" onclick={hand_over}>{ say("taking.share") }</button>
                }
            </div>
            <p role="status" class="taken">{ told(**done) }</p>
        </>
    }
}

/// The code to scan, or that there is none.
fn code(intake: &Intake) -> Html {
    let Some(code) = code_of(intake) else {
        return html! { <p class="hint">{ say("taking.code-too-long") }</p> };
    };
    html! {
        <details class="more">
            <summary>{ say("taking.code") }</summary>
            <div class="code-more">
                <p>{ say("taking.code-what") }</p>
                { code.draw(say("taking.code-name")) }
            </div>
        </details>
    }
}

/// The code with these answers and what it is, for a sheet of paper; nothing where they do not fit into one.
pub fn paper_code(intake: &Intake) -> Html {
    let Some(code) = code_of(intake) else {
        return Html::default();
    };
    html! {
        <>
            { code.draw(say("taking.code-name")) }
            <p>{ say("taking.code-paper") }</p>
        </>
    }
}

fn code_of(intake: &Intake) -> Option<Code> {
    Code::of(&link_without_words(intake)?)
}

/// Puts a text on the clipboard and says what came of it; where nothing did, the link is there to be copied by hand.
fn put(set: &UseStateSetter<Done>, text: String, done: Done) {
    let set = set.clone();
    // Pressed again, it is said again.
    set.set(Done::Nothing);
    spawn_local(async move {
        let copied = copy(&text).await;
        set.set(if copied { done } else { Done::NotCopied });
        if !copied {
            browser::select(LINK_FIELD);
        }
    });
}

fn told(done: Done) -> String {
    match done {
        Done::Nothing => String::new(),
        Done::LinkCopied => say("taking.link-copied"),
        Done::TextCopied => say("taking.text-copied"),
        Done::NotCopied => say("taking.not-copied"),
    }
}
