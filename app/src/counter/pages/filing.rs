//! The desk as a file, as a table, and the way to clear it.

use sagwright_core::words::{Text, UnitChoice};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::parts::{counted, heading, plain};
use crate::browser;
use crate::counter::file::to_file;
use crate::counter::job::Job;
use crate::counter::keeper::now;
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::counter::table::{Pen, table};
use crate::desk::use_title;
use crate::words::{say, tell};

/// A way to write all jobs into one file.
#[derive(Debug, Clone, Copy)]
enum Form {
    Desk,
    Table,
}

/// The page.
#[component]
pub fn FilingPage() -> Html {
    let counter = use_counter();
    use_title(&say("counter.filing"), false);
    let told = use_state_eq(String::new);
    let save = |form: Form| {
        let (keeper, told) = (counter.keeper.clone(), told.setter());
        Callback::from(move |_: MouseEvent| {
            let (keeper, told) = (keeper.clone(), told.clone());
            told.set(say("counter.writing"));
            spawn_local(async move {
                let jobs = match keeper.all().await {
                    Ok(jobs) => jobs,
                    Err(error) => {
                        told.set(plain(&error.text()));
                        return;
                    }
                };
                told.set(match written(form, &jobs) {
                    Some((name, kind, text)) => {
                        browser::save_file(&name, kind, &text);
                        counted("counter.written", jobs.len())
                    }
                    None => say("store.failed"),
                });
            });
        })
    };
    let jobs = counter.sight.briefs.len();
    html! {
        <div class="filing">
            { heading(say("counter.filing")) }
            <p>{ counted("counter.filing.count", jobs) }</p>
            <p role="status" class="filing-told">{ (*told).clone() }</p>
            <section class="part">
                <h2>{ say("counter.filing.desk") }</h2>
                <p>{ say("counter.filing.desk.why") }</p>
                <button type="button" class="button button-main" onclick={save(Form::Desk)}>
                    { say("counter.filing.desk.save") }
                </button>
            </section>
            <section class="part">
                <h2>{ say("counter.filing.table") }</h2>
                <p>{ say("counter.filing.table.why") }</p>
                <button type="button" class="button" onclick={save(Form::Table)}>
                    { say("counter.filing.table.save") }
                </button>
            </section>
            <section class="part">
                <h2>{ say("counter.filing.merge") }</h2>
                <p>{ say("counter.filing.merge.why") }</p>
                <a class="button" href={Place::BringIn.fragment()}>{ say("counter.bring-in") }</a>
            </section>
            <section class="part">
                <h2>{ say("counter.delete-all") }</h2>
                <p>{ say("counter.delete-all.why") }</p>
                <a class="button" href={Place::DeleteAll.fragment()}>{ say("counter.delete-all.go") }</a>
            </section>
        </div>
    }
}

/// Name, kind and text of the file.
fn written(form: Form, jobs: &[(String, Job)]) -> Option<(String, &'static str, String)> {
    let all = jobs.iter().map(|(id, job)| (id.as_str(), job));
    let today = browser::day(now());
    let name = |end: &str| ["sagwright-desk-", &today, end].concat();
    match form {
        Form::Desk => Some((name(".json"), "application/json", to_file(all).ok()?)),
        Form::Table => {
            let units = UnitChoice::default();
            let pen = Pen {
                say: &|text: &Text| tell(text, &units),
                day: &browser::day,
            };
            Some((name(".csv"), "text/csv", table(all, &pen).ok()?))
        }
    }
}
