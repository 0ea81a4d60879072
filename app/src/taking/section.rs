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
use crate::desk::use_desk;
use crate::route::Route;
use crate::state::to_file;
use crate::words::{book, say};

/// The field that holds the link, to be copied by hand where the clipboard is closed.
const LINK_FIELD: &str = "taking-link";

/// What is taken along.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The answers.
    pub intake: Rc<Intake>,
    /// The advice on them. One advice is made once and shared.
    pub advice: Rc<Advice>,
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
    use_effect_with((), |()| keep_for_good());
    html! {
        <section class="part take-along">
            <h2>{ say("taking.heading") }</h2>
            <Copies intake={Rc::clone(&props.intake)} />
            <HandOn intake={Rc::clone(&props.intake)} advice={Rc::clone(&props.advice)} />
            <p><a class="button" href={Route::StartAgain.fragment()}>{ say("landing.start-again") }</a></p>
        </section>
    }
}

/// What the copies are made of.
#[derive(PartialEq, Properties)]
struct CopiesProps {
    intake: Rc<Intake>,
}

/// The file and the paper.
#[component]
fn Copies(props: &CopiesProps) -> Html {
    let intake = Rc::clone(&props.intake);
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

/// The link, the code and the text.
#[component]
fn HandOn(props: &Props) -> Html {
    let desk = use_desk();
    let done = use_state_eq(|| Done::Nothing);
    let link = use_memo(Rc::clone(&props.intake), |intake| link_to(intake));
    let code = use_memo(Rc::clone(&props.intake), |intake| code_of(intake));
    let Some(address) = (*link).clone() else {
        return Html::default();
    };
    let text = {
        let voice = Voice::new(book(), desk.units().clone());
        let (advice, address) = (Rc::clone(&props.advice), address.clone());
        move || as_text(&voice, &advice, Some(&address))
    };
    let copy_link = {
        let (set, address) = (done.setter(), address.clone());
        Callback::from(move |_: MouseEvent| put(&set, address.clone(), Done::LinkCopied))
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
            <input id={LINK_FIELD} class="box link" type="text" readonly=true value={address} />
            <div class="onward">
                <button type="button" class="button" onclick={copy_link}>{ say("taking.copy-link") }</button>
                <button type="button" class="button" onclick={copy_text}>{ say("taking.copy-text") }</button>
                if can_share() {
                    <button type="button" class="button" onclick={hand_over}>{ say("taking.share") }</button>
                }
            </div>
            <p role="status" class="taken">{ told(*done) }</p>
            if let Some(code) = code.as_ref() {
                <details class="more">
                    <summary>{ say("taking.code") }</summary>
                    <div class="code-more">
                        <p>{ say("taking.code-what") }</p>
                        { code.draw(say("taking.code-name")) }
                    </div>
                </details>
            } else {
                <p class="hint">{ say("taking.code-too-long") }</p>
            }
        </>
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
