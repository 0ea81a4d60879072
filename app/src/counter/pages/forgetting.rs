//! Deleting one rider, or everything, once that has been confirmed.

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::parts::{back, called, counted, heading, plain};
use crate::browser;
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::store::StoreError;
use crate::words::say;

/// Which rider.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
}

/// Asks before a rider is deleted.
#[component]
pub fn DeletePage(props: &Props) -> Html {
    let counter = use_counter();
    let trouble = use_state_eq(|| None::<StoreError>);
    use_title(&say("counter.delete"), false);
    let brief = counter
        .sight
        .briefs
        .iter()
        .find(|brief| brief.id == props.id);
    let Some(brief) = brief else {
        return html! {
            <>
                { back(&Place::Desk, "counter.back") }
                { heading(say("counter.gone")) }
                <p>{ say("counter.gone.text") }</p>
            </>
        };
    };
    let onclick = {
        let (keeper, id, trouble) = (counter.keeper.clone(), props.id.clone(), trouble.setter());
        Callback::from(move |_: MouseEvent| {
            let (keeper, id, trouble) = (keeper.clone(), id.clone(), trouble.clone());
            spawn_local(async move {
                match keeper.forget(&id).await {
                    Ok(()) => browser::follow(&Place::Desk.fragment()),
                    Err(error) => trouble.set(Some(error)),
                }
            });
        })
    };
    let job = Place::Job(props.id.clone());
    html! {
        <div class="question">
            { back(&job, "counter.back-to-job") }
            { heading(say("counter.delete")) }
            <p class="lead">{ called(&brief.title) }</p>
            <p>{ say("counter.delete.what") }</p>
            { told(trouble.as_ref()) }
            <div class="onward">
                <button type="button" class="button button-main" {onclick}>{ say("counter.delete.yes") }</button>
                <a class="button" href={job.fragment()}>{ say("counter.delete.no") }</a>
            </div>
        </div>
    }
}

/// Asks before everything is deleted.
#[component]
pub fn DeleteAllPage() -> Html {
    let counter = use_counter();
    let trouble = use_state_eq(|| None::<StoreError>);
    use_title(&say("counter.delete-all"), false);
    let onclick = {
        let (keeper, trouble) = (counter.keeper.clone(), trouble.setter());
        Callback::from(move |_: MouseEvent| {
            let (keeper, trouble) = (keeper.clone(), trouble.clone());
            spawn_local(async move {
                match keeper.forget_all().await {
                    Ok(()) => browser::follow(&Place::Desk.fragment()),
                    Err(error) => trouble.set(Some(error)),
                }
            });
        })
    };
    html! {
        <div class="question">
            { back(&Place::Filing, "counter.back-to-filing") }
            { heading(say("counter.delete-all")) }
            <p>{ counted("counter.delete-all.what", counter.sight.briefs.len()) }</p>
            { told(trouble.as_ref()) }
            <div class="onward">
                <button type="button" class="button button-main" {onclick}>{ say("counter.delete-all.yes") }</button>
                <a class="button" href={Place::Filing.fragment()}>{ say("counter.delete.no") }</a>
            </div>
        </div>
    }
}

fn told(trouble: Option<&StoreError>) -> Html {
    html! {
        <div role="alert">
            if let Some(trouble) = trouble { <p class="notice">{ plain(&trouble.text()) }</p> }
        </div>
    }
}
