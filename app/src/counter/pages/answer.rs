//! Putting one page of the answers right.

use std::rc::Rc;

use sagwright_core::intake::Field;
use yew::prelude::*;

use super::parts::{answering, back, came, no_job};
use crate::browser;
use crate::counter::change::Change;
use crate::counter::job::Job;
use crate::counter::opened::{Found, use_job, use_telling};
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::pages::{HowTo, SUMMARY, answer_inputs, heading, trouble_list};
use crate::shell::HEADING;
use crate::state::{Action, Page, Slot, Trouble, Wizard, troubles};
use crate::words::say;

/// Which page of which job.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
    /// The page.
    pub page: Page,
}

/// Waits for the job.
#[component]
pub fn AnswerPage(props: &Props) -> Html {
    let counter = use_counter();
    match use_job(&counter, &props.id) {
        Found::There(job) => {
            html! { <Answer id={props.id.clone()} page={props.page} {job} /> }
        }
        found => no_job(&found),
    }
}

#[derive(PartialEq, Properties)]
struct AnswerProps {
    id: String,
    page: Page,
    job: Rc<Job>,
}

/// The question with its inputs. Nothing changes on the desk until it is kept.
#[component]
fn Answer(props: &AnswerProps) -> Html {
    let counter = use_counter();
    let AnswerProps { id, page, job } = props;
    let page = *page;
    let draft = use_reducer(|| job.now());
    let found = use_state_eq(Vec::<Trouble>::new);
    let attempts = use_state_eq(|| 0_u32);
    let to_job = Place::Job(id.clone());
    let telling = {
        let to_job = to_job.fragment();
        use_telling(
            &counter,
            id,
            Callback::from(move |()| browser::follow(&to_job)),
        )
    };
    let desk = {
        let dispatch = draft.dispatcher();
        let change = Callback::from(move |action: Action| dispatch.dispatch(action));
        answering(Rc::new((*draft).clone()), change)
    };
    use_title(&heading(&desk, page), !found.is_empty());
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    let keep = telling
        .tell
        .reform(move |answers: Wizard| vec![Change::Correct(page, Rc::new(answers))]);
    let onsubmit = {
        let (draft, found, attempts) = (draft.clone(), found.clone(), attempts.clone());
        let keep = keep.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let next = draft.accepted(page);
            let wrong = troubles(&next, page);
            if wrong.is_empty() {
                keep.emit(next);
            } else {
                attempts.set(*attempts + 1);
            }
            found.set(wrong);
        })
    };
    let pass = {
        let draft = draft.clone();
        Callback::from(move |_: MouseEvent| {
            keep.emit(draft.after(Action::DontKnow(page, true)));
        })
    };
    let settled = {
        let found = found.clone();
        Callback::from(move |field: Field| {
            let rest = found.iter().filter(|t| t.at != field.path());
            found.set(rest.cloned().collect());
        })
    };
    let has_pass = !Slot::is_single(page.question());
    html! {
        <>
            { back(&to_job, "counter.back-to-job") }
            <div class="question asked">
                { trouble_list(&desk, &found) }
                <h1 id={HEADING} tabindex="-1">{ heading(&desk, page) }</h1>
                { came(&telling.came) }
                <div class="beside"><HowTo question={page.question()} /></div>
                <form novalidate=true {onsubmit}>
                    { answer_inputs(&desk, page, &found, &settled) }
                    <div class="onward">
                        <button type="submit" class="button button-main">{ say("counter.keep") }</button>
                        if has_pass {
                            <button type="button" class="button" onclick={pass}>{ say("counter.not-known") }</button>
                        }
                    </div>
                </form>
            </div>
        </>
    }
}
