//! The workshop's settings: opened, changed with a preview beside them, checked, kept here and saved as a file.

use std::rc::Rc;

use gloo::file::Blob;
use gloo::file::futures::read_as_text;
use sagwright_core::words::{Arg, Text};
use sagwright_core::workshop::{self, LARGEST_WORKSHOP, Workshop};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::parts::{heading, plain};
use super::preview::Preview;
use super::settings_form::form;
use crate::browser;
use crate::counter::settings::Draft;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::pages::{SUMMARY, problem_list};
use crate::words::say;

/// Something to put right: the box, and what to do there.
pub type Wrong = (String, Text);

/// The element of a place in the document: that of the nearest part of it that has a box.
pub fn box_of(place: &str) -> String {
    let place = place.replace(['.', '[', ']'], "-");
    ["set-", &place].concat()
}

/// The page.
#[component]
pub fn SettingsPage() -> Html {
    let counter = use_counter();
    let draft = use_state_eq(|| {
        counter
            .workshop
            .as_deref()
            .map_or_else(Draft::default, Draft::of)
    });
    let wrong = use_state_eq(Vec::<Wrong>::new);
    let told = use_state_eq(String::new);
    let attempts = use_state_eq(|| 0_u32);
    use_title(&say("counter.settings"), !wrong.is_empty());
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    use_kept_settings(&counter.workshop, &draft);
    let change = {
        let draft = draft.clone();
        Callback::from(move |next: Draft| draft.set(next))
    };
    let judged = {
        let (draft, wrong, told) = (draft.clone(), wrong.clone(), told.clone());
        let attempts = attempts.clone();
        move || match draft.finished() {
            Ok(workshop) => {
                wrong.set(Vec::new());
                Some(workshop)
            }
            Err(found) => {
                wrong.set(found);
                told.set(String::new());
                attempts.set(*attempts + 1);
                None
            }
        }
    };
    let keep = {
        let (judged, told, keeper) = (judged.clone(), told.setter(), counter.keeper.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let Some(workshop) = judged() else { return };
            let (keeper, told) = (keeper.clone(), told.clone());
            spawn_local(async move {
                told.set(match keeper.keep_workshop(&workshop).await {
                    Ok(()) => say("counter.settings.kept"),
                    Err(error) => plain(&error.text()),
                });
            });
        })
    };
    let save = {
        let told = told.setter();
        Callback::from(move |_: MouseEvent| {
            let Some(workshop) = judged() else { return };
            if let Ok(text) = serde_json::to_string_pretty(&workshop) {
                browser::save_file("workshop.json", "application/json", &text);
                told.set(say("counter.settings.saved"));
            }
        })
    };
    let open = {
        let (draft, wrong, told) = (draft.setter(), wrong.setter(), told.setter());
        let attempts = attempts.clone();
        Callback::from(move |event: Event| {
            let target = event.target();
            let Some(input) = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok()) else {
                return;
            };
            let file = input.files().and_then(|files| files.get(0));
            let Some(file) = file else { return };
            let (draft, wrong, told) = (draft.clone(), wrong.clone(), told.clone());
            let attempts = attempts.clone();
            spawn_local(async move {
                match opened(file).await {
                    Ok(workshop) => {
                        draft.set(Draft::of(&workshop));
                        wrong.set(Vec::new());
                        told.set(say("counter.settings.opened"));
                    }
                    Err(found) => {
                        wrong.set(found);
                        told.set(String::new());
                        attempts.set(*attempts + 1);
                    }
                }
            });
            // The same file chosen again is news too.
            input.set_value("");
        })
    };
    html! {
        <div class="settings-page">
            { problems(&wrong) }
            { heading(say("counter.settings")) }
            <p>{ say("counter.settings.why") }</p>
            <p role="status" class="filing-told">{ (*told).clone() }</p>
            <div class="drop">
                <label class="number-label" for="settings-file">{ say("counter.settings.open") }</label>
                <input id="settings-file" class="file" type="file" accept=".json,application/json" onchange={open} />
            </div>
            <div class="settings-two">
                <form class="lines" novalidate=true onsubmit={keep}>
                    { form(&draft, &change, &wrong) }
                    <div class="onward">
                        <button type="submit" class="button button-main">{ say("counter.settings.keep") }</button>
                        <button type="button" class="button" onclick={save}>{ say("counter.settings.save") }</button>
                    </div>
                    <p class="hint">{ say("counter.settings.then") }</p>
                </form>
                <Preview draft={Rc::new((*draft).clone())} />
            </div>
        </div>
    }
}

/// Puts kept settings into the boxes where they arrive after the page was drawn and nothing was typed yet.
#[hook]
fn use_kept_settings(kept: &Option<Rc<Workshop>>, draft: &UseStateHandle<Draft>) {
    let draft = draft.clone();
    use_effect_with(kept.clone(), move |kept| {
        if let Some(kept) = kept
            && *draft == Draft::default()
        {
            draft.set(Draft::of(kept));
        }
    });
}

/// The document in a file, or what is wrong with it.
async fn opened(file: web_sys::File) -> Result<Workshop, Vec<Wrong>> {
    let no_file = || vec![(String::new(), Text::new("counter.settings.no-file"))];
    #[expect(clippy::cast_precision_loss, reason = "the limit is a round number")]
    let readable = file.size() <= LARGEST_WORKSHOP as f64;
    if !readable {
        return Err(no_file());
    }
    let text = read_as_text(&Blob::from(file))
        .await
        .map_err(|_| no_file())?;
    workshop::read(&text).map_err(|error| {
        let problems = error.problems.into_iter();
        problems
            .map(|problem| (problem.path, problem.text))
            .collect()
    })
}

/// What is to be put right, each leading to its box.
fn problems(wrong: &[Wrong]) -> Html {
    problem_list(wrong.iter().map(|(place, text)| {
        let text = if place.is_empty() {
            text.clone()
        } else {
            Text::new("counter.at-place")
                .with("place", Arg::Raw(place.clone()))
                .with("problem", text.clone().into())
        };
        (box_of(place), plain(&text))
    }))
}
