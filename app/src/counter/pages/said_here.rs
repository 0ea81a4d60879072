//! Everything the rider answered, with what was put right at the counter and the way to put more right.

use std::rc::Rc;

use yew::prelude::*;

use super::parts::desk_of;
use crate::counter::change::Change;
use crate::counter::job::Job;
use crate::counter::opened::use_telling;
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::hosted::{extra_heading, extra_rows};
use crate::pages::{heading, name, said};
use crate::state::{Page, Section, lines};
use crate::words::say;

/// Whose answers.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
    /// The job.
    pub job: Rc<Job>,
}

/// The answers by section.
#[component]
pub fn SaidHere(props: &Props) -> Html {
    let counter = use_counter();
    let Props { id, job } = props;
    let telling = use_telling(&counter, id, Callback::noop());
    let wizards = use_memo(Rc::clone(job), |job| {
        (
            Rc::new(job.as_came()),
            Rc::new(job.now()),
            job.pages_put_right(),
        )
    });
    let (as_came, now, put_right) = wizards.as_ref();
    let before = desk_of(Rc::clone(as_came));
    let desk = desk_of(Rc::clone(now));
    let pages = Page::all(&now.intake);
    let row = |page: Page| {
        let right = put_right.contains(&page);
        let to = Place::Answer(id.clone(), page).fragment();
        let undo = {
            let change = Change::Correct(page, Rc::clone(as_came));
            telling
                .tell
                .reform(move |_: MouseEvent| vec![change.clone()])
        };
        html! {
            <div class="given">
                <dt>{ name(&desk, page) }</dt>
                <dd>
                    { said(&desk, lines(now, page)) }
                    if right {
                        <div class="came-as">
                            <p class="hint">{ say("counter.came-as") }</p>
                            { said(&before, lines(as_came, page)) }
                            <button type="button" class="button quiet" onclick={undo}>
                                { say("counter.back-to-came") }
                                <span class="vh">{ ": " }{ name(&desk, page) }</span>
                            </button>
                        </div>
                    }
                </dd>
                <dd class="given-change">
                    <a href={to}>
                        { say("counter.put-right") }
                        <span class="vh">{ ": " }{ heading(&desk, page) }</span>
                    </a>
                </dd>
            </div>
        }
    };
    let sections = Section::ALL.iter().map(|section| {
        let rows = pages.iter().filter(|page| page.section() == *section);
        html! {
            <section class="answers">
                <h3>{ say(&format!("section.{}", section.word())) }</h3>
                <dl>{ for rows.map(|page| row(*page)) }</dl>
            </section>
        }
    });
    let extra = extra_rows(&desk, false).map(|rows| {
        html! { <section class="answers"><h3>{ extra_heading() }</h3>{ rows }</section> }
    });
    html! {
        <section class="part">
            <h2>{ say("counter.said") }</h2>
            <p>{ say("counter.said.why") }</p>
            { for sections }
            { for extra }
        </section>
    }
}
