//! What several pages of the counter share.

use std::rc::Rc;

use sagwright_core::words::{Arg, Text};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement};
use yew::prelude::*;

use crate::counter::find::{Brief, stage_name};
use crate::counter::job::Stage;
use crate::counter::opened::{Came, Found};
use crate::counter::route::Place;
use crate::desk::Desk;
use crate::shell::HEADING;
use crate::state::{Action, Wizard};
use crate::words::{say, tell};

/// What stands in the field an event came from.
pub fn value_of(event: &Event) -> Option<String> {
    let target = event.target()?;
    if let Some(field) = target.dyn_ref::<HtmlInputElement>() {
        return Some(field.value());
    }
    if let Some(list) = target.dyn_ref::<HtmlSelectElement>() {
        return Some(list.value());
    }
    target
        .dyn_ref::<HtmlTextAreaElement>()
        .map(HtmlTextAreaElement::value)
}

/// The heading of a page.
pub fn heading(text: String) -> Html {
    html! { <h1 id={HEADING} tabindex="-1">{ text }</h1> }
}

/// A way back.
pub fn back(to: &Place, key: &str) -> Html {
    html! { <p class="back"><a href={to.fragment()}>{ say(key) }</a></p> }
}

/// A list to choose one of.
pub fn choose(
    id: &'static str,
    label: &str,
    options: &[(String, String)],
    chosen: &str,
    onchange: Callback<String>,
) -> Html {
    let rows = options.iter().map(|(word, name)| {
        html! { <option value={word.clone()} selected={word == chosen}>{ name }</option> }
    });
    let onchange = Callback::from(move |event: Event| {
        if let Some(word) = value_of(&event) {
            onchange.emit(word);
        }
    });
    html! {
        <div class="choose">
            <label for={id}>{ say(label) }</label>
            <select {id} {onchange}>{ for rows }</select>
        </div>
    }
}

/// Every stage with its word and name.
pub fn stages() -> Vec<(String, String)> {
    let stages = Stage::ALL.iter();
    stages
        .map(|stage| (stage.word().to_owned(), plain(&stage_name(*stage))))
        .collect()
}

/// What a job is called; a job without name or note is called so.
pub fn called(title: &str) -> String {
    if title.is_empty() {
        say("counter.no-name")
    } else {
        title.to_owned()
    }
}

/// The link to a job.
pub fn job_link(brief: &Brief) -> Html {
    let to = Place::Job(brief.id.clone());
    html! { <a href={to.fragment()}>{ called(&brief.title) }</a> }
}

/// A sentence without quantities.
pub fn plain(text: &Text) -> String {
    tell(text, &sagwright_core::words::UnitChoice::default())
}

/// A sentence with one number in it.
pub fn counted(key: &'static str, n: usize) -> String {
    plain(&Text::new(key).with("n", count(n)))
}

/// A whole number in a sentence.
pub fn count(n: usize) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

/// A line to type in.
pub fn line(id: &'static str, label: &str, value: &str, typed: Callback<String>) -> Html {
    let oninput = typing(typed);
    html! {
        <div class="choose">
            <label for={id}>{ say(label) }</label>
            <input {id} class="box" type="text" autocomplete="off" value={value.to_owned()} {oninput} />
        </div>
    }
}

/// Room for a few lines.
pub fn lines(id: &'static str, label: &str, value: &str, typed: Callback<String>) -> Html {
    let oninput = typing(typed);
    html! {
        <div class="choose">
            <label for={id}>{ say(label) }</label>
            <textarea {id} class="paste" rows="3" value={value.to_owned()} {oninput} />
        </div>
    }
}

fn typing(typed: Callback<String>) -> Callback<InputEvent> {
    Callback::from(move |event: InputEvent| {
        if let Some(text) = value_of(&event) {
            typed.emit(text);
        }
    })
}

/// One of a few, side by side.
pub fn radios(
    name: &str,
    legend: &str,
    options: &[(&'static str, String)],
    chosen: &str,
    picked: &Callback<&'static str>,
) -> Html {
    let rows = options.iter().map(|(word, label)| {
        let word = *word;
        let onchange = picked.reform(move |_: Event| word);
        html! {
            <label class="row">
                <input type="radio" name={name.to_owned()} value={word} checked={word == chosen} {onchange} />
                <span class="row-text">{ label }</span>
            </label>
        }
    });
    html! {
        <fieldset class="group group-short">
            <legend>{ legend }</legend>
            <div class="rows">{ for rows }</div>
        </fieldset>
    }
}

/// What came of telling a job something; read out when it changes.
pub fn came(came: &Came) -> Html {
    let (class, text) = match came {
        Came::Nothing => return html! { <p class="told" role="status"></p> },
        Came::Kept => ("told", say("counter.kept")),
        Came::Not(why) => ("told told-not", plain(why)),
    };
    html! { <p {class} role="status">{ text }</p> }
}

/// In place of a job that is not there, or not yet.
pub fn no_job(found: &Found) -> Html {
    let (title, text) = match found {
        Found::Unreadable(why) => (say("counter.unreadable-job"), plain(why)),
        Found::Gone => (say("counter.gone"), say("counter.gone.text")),
        Found::Reading | Found::There(_) => (say("counter.reading"), String::new()),
    };
    html! {
        <>
            { back(&Place::Desk, "counter.back") }
            { heading(title) }
            <p role="status">{ text }</p>
        </>
    }
}

/// The desk of answers that the pages of the wizard expect around their inputs.
pub const fn answering(wizard: Rc<Wizard>, change: Callback<Action>) -> Desk {
    Desk { wizard, change }
}

/// The same, for answers that are only shown.
pub fn desk_of(wizard: Rc<Wizard>) -> Desk {
    answering(wizard, Callback::noop())
}
