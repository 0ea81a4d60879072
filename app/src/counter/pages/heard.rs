//! Writing down what the rider says after riding again.

use std::rc::Rc;

use sagwright_core::intake::{Feeling, Verdict};
use yew::prelude::*;

use super::parts::{back, came, heading, line, lines, no_job, plain, radios};
use crate::browser;
use crate::counter::change::Change;
use crate::counter::find::feeling_name;
use crate::counter::job::{Heard, Job};
use crate::counter::keeper::now;
use crate::counter::opened::{Found, use_job, use_telling};
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::store::fresh_id;
use crate::words::say;

/// The option of a complaint that was not asked about.
const NOT_ASKED: &str = "not-asked";

/// Which call of which job; a new one where it has no name yet.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
    /// The name of the call.
    pub name: Option<String>,
}

/// Waits for the job.
#[component]
pub fn HeardPage(props: &Props) -> Html {
    let counter = use_counter();
    match use_job(&counter, &props.id) {
        Found::There(job) => {
            html! { <Form id={props.id.clone()} name={props.name.clone()} {job} /> }
        }
        found => no_job(&found),
    }
}

#[derive(PartialEq, Properties)]
struct FormProps {
    id: String,
    name: Option<String>,
    job: Rc<Job>,
}

#[component]
fn Form(props: &FormProps) -> Html {
    let counter = use_counter();
    let FormProps { id, name, job } = props;
    let heard = use_state_eq(|| {
        let known = job
            .heard()
            .find(|(known, _)| Some(*known) == name.as_deref());
        let heard = known.map(|(_, heard)| heard.clone());
        heard.unwrap_or_else(|| Heard {
            date: browser::day(now()),
            ..Heard::default()
        })
    });
    let to_job = Place::Job(id.clone());
    let telling = {
        let to_job = to_job.fragment();
        use_telling(
            &counter,
            id,
            Callback::from(move |()| browser::follow(&to_job)),
        )
    };
    use_title(&say("counter.heard.add"), false);
    let with = |change: fn(&mut Heard, String)| {
        let heard = heard.clone();
        Callback::from(move |text: String| {
            let mut next = (*heard).clone();
            change(&mut next, text);
            heard.set(next);
        })
    };
    let onsubmit = {
        let (tell, heard, name) = (telling.tell.clone(), (*heard).clone(), name.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let name = name.clone().unwrap_or_else(fresh_id);
            tell.emit(vec![Change::Heard(name, Some(heard.clone()))]);
        })
    };
    let complaints = job.now().intake.complaints.unwrap_or_default();
    let asked = complaints.iter().map(|one| verdict(&heard, one.feeling));
    html! {
        <>
            { back(&to_job, "counter.back-to-job") }
            <div class="question wide">
                { heading(say("counter.heard.add")) }
                { came(&telling.came) }
                <form class="lines" novalidate=true {onsubmit}>
                    { line("heard-date", "counter.date", &heard.date, with(|heard, text| heard.date = text)) }
                    if complaints.is_empty() { <p>{ say("counter.heard.none") }</p> }
                    <div class="groups">{ for asked }</div>
                    { lines("heard-words", "counter.heard.words", &heard.words, with(|heard, text| heard.words = text)) }
                    <div class="onward">
                        <button type="submit" class="button button-main">{ say("counter.keep") }</button>
                    </div>
                </form>
            </div>
        </>
    }
}

/// Better, the same or worse, or not asked about.
fn verdict(heard: &UseStateHandle<Heard>, feeling: Feeling) -> Html {
    let words = Verdict::ALL.iter().map(|verdict| verdict.word());
    let mut options: Vec<(&'static str, String)> = words
        .map(|word| (word, say(&format!("choice.verdict.{word}"))))
        .collect();
    options.push((NOT_ASKED, say("counter.heard.not-asked")));
    let chosen = heard.felt.get(&feeling).map_or(NOT_ASKED, |one| one.word());
    let picked = {
        let heard = heard.clone();
        Callback::from(move |word: &'static str| {
            let mut next = (*heard).clone();
            match Verdict::ALL.iter().find(|verdict| verdict.word() == word) {
                Some(verdict) => next.felt.insert(feeling, *verdict),
                None => next.felt.remove(&feeling),
            };
            heard.set(next);
        })
    };
    radios(
        feeling.word(),
        &plain(&feeling_name(feeling)),
        &options,
        chosen,
        &picked,
    )
}
