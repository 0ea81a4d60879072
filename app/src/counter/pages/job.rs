//! One job: who it is, where it stands, what it needs, what was done and heard back.

use std::rc::Rc;

use sagwright_core::words::Text;
use yew::prelude::*;

use super::columns::{Columns, Pane};
use super::parts::{back, called, came, choose, heading, line, lines, no_job, plain, stages};
use super::said_here::SaidHere;
use crate::browser;
use crate::counter::change::Change;
use crate::counter::find::{Shown, Wanted, find, title};
use crate::counter::job::{Heard, Job, Stage, Work};
use crate::counter::opened::{Found, Telling, use_job, use_telling};
use crate::counter::route::{Place, Side};
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::store::fresh_id;
use crate::words::say;

/// Which job.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name it is kept under.
    pub id: String,
}

/// The page.
#[component]
pub fn JobPage(props: &Props) -> Html {
    let counter = use_counter();
    let found = use_job(&counter, &props.id);
    let telling = use_telling(&counter, &props.id, Callback::noop());
    let name = match &found {
        Found::There(job) => called(&title(job)),
        _ => say("counter.gone"),
    };
    use_title(&name, false);
    let Found::There(job) = &found else {
        return no_job(&found);
    };
    let id = &props.id;
    html! {
        <>
            { back(&Place::Desk, "counter.back") }
            <div class="counter-head">
                { heading(name) }
                <p class="job-ways">
                    <a class="button" href={Place::Card(id.clone()).fragment()}>{ say("counter.card") }</a>
                    <a class="button" href={Place::Delete(id.clone()).fragment()}>{ say("counter.delete.go") }</a>
                </p>
            </div>
            { came(&telling.came) }
            <div class="job">
                <div class="job-side">
                    <Who job={Rc::clone(job)} telling={telling.clone()} />
                    <Tags job={Rc::clone(job)} telling={telling.clone()} />
                    <Notes job={Rc::clone(job)} telling={telling.clone()} />
                    { done(id, job, &telling) }
                    { heard_back(id, job, &telling) }
                </div>
                <div class="job-main">
                    <Needs job={Rc::clone(job)} id={id.clone()} />
                    <Others id={id.clone()} />
                    <SaidHere job={Rc::clone(job)} id={id.clone()} />
                </div>
            </div>
        </>
    }
}

#[derive(PartialEq, Properties)]
struct Open {
    job: Rc<Job>,
    telling: Telling,
}

/// Name, contact and stage.
#[component]
fn Who(props: &Open) -> Html {
    let Open { job, telling } = props;
    let name = use_state_eq(|| job.name.is.clone());
    let contact = use_state_eq(|| job.contact.is.clone());
    let onsubmit = {
        let (tell, name, contact) = (telling.tell.clone(), (*name).clone(), (*contact).clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            tell.emit(vec![
                Change::Name(name.trim().to_owned()),
                Change::Contact(contact.trim().to_owned()),
            ]);
        })
    };
    let stage = telling.tell.reform(|word: String| {
        let stage = Stage::of(&word).unwrap_or_default();
        vec![Change::Stage(stage)]
    });
    let type_name = {
        let set = name.setter();
        Callback::from(move |text| set.set(text))
    };
    let type_contact = {
        let set = contact.setter();
        Callback::from(move |text| set.set(text))
    };
    html! {
        <section class="part">
            <h2>{ say("counter.who") }</h2>
            { choose("job-stage", "counter.column.stage", &stages(), job.stage.is.word(), stage) }
            <form class="lines" novalidate=true {onsubmit}>
                { line("job-name", "counter.who.name", &name, type_name) }
                { line("job-contact", "counter.who.contact", &contact, type_contact) }
                <button type="submit" class="button">{ say("counter.keep") }</button>
            </form>
            if !job.intake.note.is_empty() {
                <p class="hint">{ say("counter.who.note") }</p>
                <p><q>{ job.intake.note.clone() }</q></p>
            }
        </section>
    }
}

/// Tags to take off and put on.
#[component]
fn Tags(props: &Open) -> Html {
    let Open { job, telling } = props;
    let typed = use_state_eq(String::new);
    let onsubmit = {
        let (tell, text, clear) = (telling.tell.clone(), (*typed).clone(), typed.setter());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let tags = text.split(',').map(str::trim).filter(|tag| !tag.is_empty());
            let changes: Vec<Change> = tags.map(|tag| Change::Tag(tag.to_owned(), true)).collect();
            if !changes.is_empty() {
                tell.emit(changes);
                clear.set(String::new());
            }
        })
    };
    let tags = job.tags();
    let items = tags.iter().map(|tag| {
        let change = Change::Tag((*tag).to_owned(), false);
        let onclick = telling
            .tell
            .reform(move |_: MouseEvent| vec![change.clone()]);
        html! {
            <li>
                <span class="tag">{ *tag }</span>
                <button type="button" class="button quiet" {onclick}>
                    { say("counter.take-off") }<span class="vh">{ ": " }{ *tag }</span>
                </button>
            </li>
        }
    });
    let type_tag = {
        let set = typed.setter();
        Callback::from(move |text| set.set(text))
    };
    html! {
        <section class="part">
            <h2>{ say("counter.column.tags") }</h2>
            if !tags.is_empty() { <ul class="entries">{ for items }</ul> }
            <form class="lines" novalidate=true {onsubmit}>
                { line("job-tag", "counter.tag.new", &typed, type_tag) }
                <button type="submit" class="button">{ say("counter.tag.put-on") }</button>
            </form>
        </section>
    }
}

/// Notes to read, take out and add.
#[component]
fn Notes(props: &Open) -> Html {
    let Open { job, telling } = props;
    let typed = use_state_eq(String::new);
    let onsubmit = {
        let (tell, text, clear) = (telling.tell.clone(), (*typed).clone(), typed.setter());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let text = text.trim();
            if !text.is_empty() {
                tell.emit(vec![Change::Note(fresh_id(), text.to_owned())]);
                clear.set(String::new());
            }
        })
    };
    let items = job.notes().map(|(name, told)| {
        let change = Change::Note(name.to_owned(), String::new());
        let onclick = telling.tell.reform(move |_: MouseEvent| vec![change.clone()]);
        html! {
            <li>
                <p class="hint">{ browser::day(told.at) }</p>
                <p class="as-written">{ told.is.clone() }</p>
                <button type="button" class="button quiet" {onclick}>{ say("counter.note.take-out") }</button>
            </li>
        }
    });
    let type_note = {
        let set = typed.setter();
        Callback::from(move |text| set.set(text))
    };
    html! {
        <section class="part">
            <h2>{ say("counter.column.notes") }</h2>
            if job.notes().next().is_some() { <ul class="entries">{ for items }</ul> }
            <form class="lines" novalidate=true {onsubmit}>
                { lines("job-note", "counter.note.new", &typed, type_note) }
                <button type="submit" class="button">{ say("counter.note.add") }</button>
            </form>
        </section>
    }
}

fn done(id: &str, job: &Job, telling: &Telling) -> Html {
    let items = job.work().map(|(name, work)| {
        let Work { date, by, oil, valving, other, .. } = work;
        let words = [oil, valving, other].into_iter().filter(|words| !words.is_empty());
        let change = Place::Work(id.to_owned(), Some(name.to_owned()));
        let out = Change::Work(name.to_owned(), None);
        let onclick = telling.tell.reform(move |_: MouseEvent| vec![out.clone()]);
        html! {
            <li>
                <p><strong>{ date }</strong>{ " " }{ by }</p>
                { for words.map(|words| html! { <p class="as-written">{ words }</p> }) }
                <p class="job-ways">
                    <a class="button quiet" href={change.fragment()}>{ say("counter.change") }</a>
                    <button type="button" class="button quiet" {onclick}>{ say("counter.work.take-out") }</button>
                </p>
            </li>
        }
    });
    html! {
        <section class="part">
            <h2>{ say("counter.work") }</h2>
            if job.work().next().is_some() {
                <ul class="entries">{ for items }</ul>
                <p>
                    <a href={Place::Beside(id.to_owned(), Side::AsLeft).fragment()}>{ say("counter.beside.left") }</a>
                </p>
            }
            <a class="button" href={Place::Work(id.to_owned(), None).fragment()}>{ say("counter.work.add") }</a>
        </section>
    }
}

fn heard_back(id: &str, job: &Job, telling: &Telling) -> Html {
    let items = job.heard().map(|(name, heard)| {
        let Heard { date, felt, words } = heard;
        let verdicts = felt.iter().map(|(feeling, verdict)| {
            let text = Text::new("counter.heard-line")
                .with("complaint", crate::counter::find::feeling_name(*feeling).into())
                .with("verdict", Text::new(format!("choice.verdict.{}", verdict.word())).into());
            html! { <li>{ plain(&text) }</li> }
        });
        let change = Place::Heard(id.to_owned(), Some(name.to_owned()));
        let out = Change::Heard(name.to_owned(), None);
        let onclick = telling.tell.reform(move |_: MouseEvent| vec![out.clone()]);
        html! {
            <li>
                <p><strong>{ date }</strong></p>
                <ul>{ for verdicts }</ul>
                if !words.is_empty() { <p class="as-written">{ words }</p> }
                <p class="job-ways">
                    <a class="button quiet" href={change.fragment()}>{ say("counter.change") }</a>
                    <button type="button" class="button quiet" {onclick}>{ say("counter.heard.take-out") }</button>
                </p>
            </li>
        }
    });
    html! {
        <section class="part">
            <h2>{ say("counter.column.heard") }</h2>
            if job.heard().next().is_some() { <ul class="entries">{ for items }</ul> }
            <a class="button" href={Place::Heard(id.to_owned(), None).fragment()}>{ say("counter.heard.add") }</a>
        </section>
    }
}

#[derive(PartialEq, Properties)]
struct NeedsProps {
    id: String,
    job: Rc<Job>,
}

/// What the bike needs; where answers were put right, as it came beside as it is.
#[component]
fn Needs(props: &NeedsProps) -> Html {
    let NeedsProps { id, job } = props;
    let panes = use_memo(Rc::clone(job), |job| {
        let now = Pane {
            name: say("counter.beside.now"),
            intake: job.now().document(),
        };
        if job.pages_put_right().is_empty() {
            return vec![now];
        }
        let as_came = Pane {
            name: say("counter.beside.came"),
            intake: job.as_came().document(),
        };
        vec![as_came, now]
    });
    let put_right = panes.len() > 1;
    html! {
        <section class="part">
            <h2>{ say("counter.needs") }</h2>
            if put_right {
                <p>{ say("counter.needs.put-right") }</p>
                <p><a href={Place::Beside(id.clone(), Side::AsCame).fragment()}>{ say("counter.beside.came.all") }</a></p>
            }
            <Columns {panes} answers=false />
        </section>
    }
}

#[derive(PartialEq, Properties)]
struct OthersProps {
    id: String,
}

/// Jobs to hold this one against, at most.
const OTHERS: usize = 6;

/// Looking for another rider to hold this one against.
#[component]
fn Others(props: &OthersProps) -> Html {
    let counter = use_counter();
    let typed = use_state_eq(String::new);
    let found = if typed.trim().is_empty() {
        Vec::new()
    } else {
        let wanted = Wanted {
            words: (*typed).clone(),
            shown: Shown::All,
            ..Wanted::default()
        };
        find(&counter.sight.briefs, &wanted)
    };
    let others = found
        .iter()
        .filter(|brief| brief.id != props.id)
        .take(OTHERS);
    let items = others.map(|brief| {
        let to = Place::Beside(props.id.clone(), Side::Other(brief.id.clone()));
        html! { <li><a href={to.fragment()}>{ called(&brief.title) }</a></li> }
    });
    let type_words = {
        let set = typed.setter();
        Callback::from(move |text| set.set(text))
    };
    html! {
        <section class="part">
            <h2>{ say("counter.others") }</h2>
            { line("job-others", "counter.others.search", &typed, type_words) }
            <ul class="came" role="status">{ for items }</ul>
        </section>
    }
}
