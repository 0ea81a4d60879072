//! Bringing riders in: from files, dropped or chosen, from links, and from the text of a code.

use std::rc::Rc;

use gloo::file::Blob;
use gloo::file::futures::read_as_text;
use sagwright_core::words::{Arg, Text};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{File, HtmlInputElement};
use yew::prelude::*;

use super::parts::{called, counted, heading, plain, value_of};
use crate::browser;
use crate::counter::bring::{Brought, Refused, bring};
use crate::counter::file::LARGEST_DESK;
use crate::counter::intaken::{Intaken, read_jobs};
use crate::counter::job::Job;
use crate::counter::keeper::{Keeper, now};
use crate::counter::name::{another_name, name_of};
use crate::counter::route::Place;
use crate::counter::shell::{Counter, use_counter};
use crate::desk::use_title;
use crate::store::StoreError;
use crate::words::say;

/// What became of what was brought in; the focus goes there.
const OUTCOME: &str = "brought-in";

/// How far taking in has come.
#[derive(Debug, Clone, PartialEq)]
enum Stand {
    /// Nothing was brought in yet.
    Waiting,
    /// It is being read and written.
    Busy,
    /// It is done.
    Done(Rc<Came>),
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Default)]
struct Came {
    intaken: Intaken,
    /// Each file or line that was no use, and the reasons.
    no_use: Vec<(String, Refused)>,
    /// Answers that are on the desk already: to put them there once more, if they are another rider's.
    again: Vec<(String, Job)>,
    /// Why nothing was kept.
    trouble: Option<StoreError>,
}

/// A text and where it came from; `None` where the browser could not read it.
type Source = (String, Option<String>);

/// The page.
#[component]
pub fn BringInPage() -> Html {
    let counter = use_counter();
    use_title(&say("counter.bring-in"), false);
    let stand = use_state_eq(|| Stand::Waiting);
    let pasted = use_state_eq(String::new);
    let take = {
        let (keeper, set) = (counter.keeper.clone(), stand.setter());
        Callback::from(move |files: Vec<File>| {
            let (keeper, set) = (keeper.clone(), set.clone());
            set.set(Stand::Busy);
            spawn_local(async move {
                let mut sources = Vec::new();
                for file in files {
                    sources.push(text_of(file).await);
                }
                finish(&keeper, sources, &set).await;
            });
        })
    };
    use_dropped_files(&counter, &take);
    let picked = {
        let take = take.clone();
        Callback::from(move |event: Event| {
            let target = event.target();
            let Some(input) = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok()) else {
                return;
            };
            let files = input.files();
            let files =
                files.map(|files| (0..files.length()).filter_map(|at| files.get(at)).collect());
            let files: Vec<File> = files.unwrap_or_default();
            if !files.is_empty() {
                take.emit(files);
            }
            // The same file chosen again is news too.
            input.set_value("");
        })
    };
    let oninput = {
        let pasted = pasted.setter();
        Callback::from(move |event: InputEvent| {
            if let Some(text) = value_of(&event) {
                pasted.set(text);
            }
        })
    };
    let onsubmit = {
        let (keeper, set) = (counter.keeper.clone(), stand.setter());
        let text = (*pasted).clone();
        let clear = pasted.setter();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (keeper, set, clear) = (keeper.clone(), set.clone(), clear.clone());
            let source = (say("counter.pasted"), Some(text.clone()));
            set.set(Stand::Busy);
            spawn_local(async move {
                // What was of no use stays in the field, to be put right.
                if finish(&keeper, vec![source], &set).await {
                    clear.set(String::new());
                }
            });
        })
    };
    html! {
        <div class="bring-in">
            { heading(say("counter.bring-in")) }
            <p>{ say("counter.bring-in.why") }</p>
            { outcome(&counter, &stand) }
            <div class="drop">
                <label class="number-label" for="bring-files">{ say("counter.files") }</label>
                <p class="hint" id="bring-files-hint">{ say("counter.files.hint") }</p>
                <input
                    id="bring-files"
                    class="file"
                    type="file"
                    multiple=true
                    accept=".json,application/json,.txt,text/plain"
                    aria-describedby="bring-files-hint"
                    onchange={picked}
                />
            </div>
            <form novalidate=true {onsubmit}>
                <label class="number-label" for="bring-text">{ say("counter.paste") }</label>
                <p class="hint" id="bring-text-hint">{ say("counter.paste.hint") }</p>
                <textarea
                    id="bring-text"
                    class="paste"
                    rows="5"
                    spellcheck="false"
                    aria-describedby="bring-text-hint"
                    value={(*pasted).clone()}
                    {oninput}
                />
                <div class="onward">
                    <button type="submit" class="button button-main">{ say("counter.take-in") }</button>
                </div>
            </form>
        </div>
    }
}

/// Takes files in as they are dropped, those that led to this page too.
#[hook]
fn use_dropped_files(counter: &Counter, take: &Callback<Vec<File>>) {
    thread_local! {
        /// The drop taken in last: coming back to this page takes none in twice.
        static TAKEN: std::cell::Cell<u32> = const { std::cell::Cell::new(0) };
    }
    let take = take.clone();
    use_effect_with(counter.dropped.clone(), move |dropped| {
        if let Some((turn, files)) = dropped.files()
            && TAKEN.replace(turn) != turn
        {
            take.emit(files.to_vec());
        }
    });
}

async fn text_of(file: File) -> Source {
    let name = file.name();
    // A file that is too large is not read at all; the reader of texts then says so in the same words.
    #[expect(clippy::cast_precision_loss, reason = "the limit is a round number")]
    let readable = file.size() <= LARGEST_DESK as f64;
    if !readable {
        return (name, None);
    }
    let blob = Blob::from(file);
    let text = read_as_text(&blob).await.ok();
    (name, text)
}

/// Reads the texts, puts what they hold on the desk and tells what became of it; `true` where all of it was of use.
async fn finish(keeper: &Keeper, sources: Vec<Source>, set: &UseStateSetter<Stand>) -> bool {
    let came = take_in(keeper, sources).await;
    let all_of_use =
        came.no_use.is_empty() && came.trouble.is_none() && came.intaken.refused_count == 0;
    set.set(Stand::Done(Rc::new(came)));
    browser::focus(OUTCOME);
    all_of_use
}

async fn take_in(keeper: &Keeper, sources: Vec<Source>) -> Came {
    let mut came = Came::default();
    let mut jobs: Vec<(String, Job)> = Vec::new();
    for (name, text) in sources {
        let Some(text) = text else {
            let refused = Refused::from(Text::new("counter.bad.no-file"));
            came.no_use.push((name, refused));
            continue;
        };
        for brought in bring(&text) {
            match brought {
                Ok(Brought::Rider(intake)) => {
                    jobs.push((name_of(&intake), Job::new(*intake, now())));
                }
                Ok(Brought::Desk(texts)) => {
                    let (desk, refused) = read_jobs(texts).await;
                    jobs.extend(desk);
                    came.intaken.refuse(refused);
                }
                Err(refused) => came.no_use.push((name.clone(), refused)),
            }
        }
    }
    // The same rider twice in one go is one job.
    let mut apart: std::collections::BTreeMap<String, Job> = std::collections::BTreeMap::new();
    let mut twice = Vec::new();
    for (id, job) in jobs {
        match apart.get_mut(&id) {
            Some(there) => {
                there.take_in(&job);
                twice.push(id);
            }
            None => {
                apart.insert(id, job);
            }
        }
    }
    let jobs: Vec<(String, Job)> = apart.into_iter().collect();
    match keeper.take_in(jobs.clone()).await {
        Ok(mut told) => {
            told.same_count += twice.len();
            came.again = jobs
                .into_iter()
                .filter(|(id, _)| told.same.contains(id))
                .collect();
            came.intaken.add(told);
        }
        Err(error) => came.trouble = Some(error),
    }
    came
}

fn outcome(counter: &Counter, stand: &Stand) -> Html {
    let inside = match stand {
        Stand::Waiting => Html::default(),
        Stand::Busy => html! { <p>{ say("counter.taking-in") }</p> },
        Stand::Done(came) => done(counter, came),
    };
    html! { <div id={OUTCOME} class="brought" role="status" tabindex="-1">{ inside }</div> }
}

fn done(counter: &Counter, came: &Came) -> Html {
    let Intaken {
        new,
        new_count,
        updated,
        same_count,
        refused,
        refused_count,
        ..
    } = &came.intaken;
    let line = |n: usize, one: &'static str, more: &'static str| match n {
        0 => Html::default(),
        1 => html! { <p>{ say(one) }</p> },
        n => html! { <p>{ counted(more, n) }</p> },
    };
    let links = new.iter().map(|id| job_here(counter, id));
    html! {
        <>
            if let Some(trouble) = &came.trouble {
                <p class="notice">{ plain(&trouble.text()) }</p>
            }
            { line(*new_count, "counter.came.one", "counter.came.more") }
            if !new.is_empty() { <ul class="came">{ for links }</ul> }
            if *new_count > new.len() { <p><a href={Place::Desk.fragment()}>{ say("counter.came.all") }</a></p> }
            { line(*updated, "counter.updated.one", "counter.updated.more") }
            { line(*same_count, "counter.same.one", "counter.same.more") }
            if !came.again.is_empty() {
                <ul class="came">{ for came.again.iter().map(|(id, job)| once_more(counter, id, job)) }</ul>
            }
            { line(*refused_count, "counter.refused.one", "counter.refused.more") }
            if !refused.is_empty() {
                <ul>{ for refused.iter().map(|text| html! { <li>{ plain(text) }</li> }) }</ul>
            }
            { for came.no_use.iter().map(|(name, refused)| no_use(name, refused)) }
        </>
    }
}

fn job_here(counter: &Counter, id: &str) -> Html {
    let briefs = &counter.sight.briefs;
    let title = briefs.iter().find(|brief| brief.id == id);
    let title = called(title.map(|brief| brief.title.as_str()).unwrap_or_default());
    let to = Place::Job(id.to_owned());
    html! { <li><a href={to.fragment()}>{ title }</a></li> }
}

/// Answers that are on the desk already, with the offer to put them there as another rider's.
fn once_more(counter: &Counter, id: &str, job: &Job) -> Html {
    let onclick = {
        let (keeper, id, job) = (counter.keeper.clone(), id.to_owned(), job.clone());
        Callback::from(move |_: MouseEvent| {
            let name = another_name(&id, |name| keeper.has(name));
            let (keeper, job) = (keeper.clone(), job.clone());
            spawn_local(async move {
                let to = Place::Job(name.clone());
                // A device that keeps nothing says so above the page.
                if keeper.take_in(vec![(name, job)]).await.is_ok() {
                    browser::follow(&to.fragment());
                }
            });
        })
    };
    let to = Place::Job(id.to_owned());
    let briefs = &counter.sight.briefs;
    let title = briefs.iter().find(|brief| brief.id == id);
    let title = called(title.map(|brief| brief.title.as_str()).unwrap_or_default());
    html! {
        <li>
            <a href={to.fragment()}>{ title }</a>
            <button type="button" class="button quiet" {onclick}>{ say("counter.another") }</button>
        </li>
    }
}

/// A file or line that was no use, and why.
fn no_use(name: &str, refused: &Refused) -> Html {
    let Refused(problems) = refused;
    let lines = problems.iter().map(|(path, text)| {
        let text = if path.is_empty() {
            text.clone()
        } else {
            Text::new("counter.at-place")
                .with("place", Arg::Raw(path.clone()))
                .with("problem", text.clone().into())
        };
        html! { <li>{ plain(&text) }</li> }
    });
    let heading = Text::new("counter.no-use").with("name", Arg::Raw(name.to_owned()));
    html! {
        <div class="problems">
            <h2>{ plain(&heading) }</h2>
            <ul>{ for lines }</ul>
        </div>
    }
}
