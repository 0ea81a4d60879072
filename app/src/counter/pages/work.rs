//! Writing down what was done: the numbers the bike leaves with, oil, valving and the rest in words.

use std::rc::Rc;

use sagwright_core::intake::{Field, Question, check};
use yew::prelude::*;

use super::parts::{answering, back, came, heading, line, lines, no_job};
use crate::browser;
use crate::counter::change::{Change, LEAVES_WITH};
use crate::counter::job::{Job, Work};
use crate::counter::keeper::now;
use crate::counter::opened::{Found, use_job, use_telling};
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::inputs::number_input;
use crate::pages::{SUMMARY, trouble_list};
use crate::state::{Action, Page, Trouble, Wizard, applies, troubles};
use crate::store::fresh_id;
use crate::words::say;

/// Which visit of which job; a new one where it has no name yet.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
    /// The name of the visit.
    pub name: Option<String>,
}

/// Waits for the job.
#[component]
pub fn WorkPage(props: &Props) -> Html {
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

/// The form. Nothing changes on the desk until it is kept.
#[component]
fn Form(props: &FormProps) -> Html {
    let counter = use_counter();
    let FormProps { id, name, job } = props;
    let start = use_memo((), |()| {
        let known = job
            .work()
            .find(|(known, _)| Some(*known) == name.as_deref());
        let work = known.map(|(_, work)| work.clone());
        work.unwrap_or_else(|| Work {
            date: browser::day(now()),
            ..Work::default()
        })
    });
    let work = use_state_eq(|| (*start).clone());
    let draft = use_reducer(|| numbers_to_start(job, &start));
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
    use_title(&say("counter.work.add"), !found.is_empty());
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    let with = |change: fn(&mut Work, String)| {
        let work = work.clone();
        Callback::from(move |text: String| {
            let mut next = (*work).clone();
            change(&mut next, text);
            work.set(next);
        })
    };
    let settled = {
        let found = found.clone();
        Callback::from(move |field: Field| {
            let rest = found.iter().filter(|t| t.at != field.path());
            found.set(rest.cloned().collect());
        })
    };
    let onsubmit = {
        let (draft, work, found, attempts) =
            (draft.clone(), work.clone(), found.clone(), attempts.clone());
        let (job, tell) = (Rc::clone(job), telling.tell.clone());
        let name = name.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let name = name.clone().unwrap_or_else(fresh_id);
            let (change, wrong) = finished(&job, &draft, &work, name);
            if wrong.is_empty() {
                tell.emit(vec![change]);
            } else {
                attempts.set(*attempts + 1);
            }
            found.set(wrong);
        })
    };
    let inputs = asked(job).map(|field| number_input(&desk, field, &found, &settled));
    html! {
        <>
            { back(&to_job, "counter.back-to-job") }
            <div class="question wide">
                { trouble_list(&desk, &found) }
                { heading(say("counter.work.add")) }
                <p>{ say("counter.work.why") }</p>
                { came(&telling.came) }
                <form class="lines" novalidate=true {onsubmit}>
                    <div class="line-pair">
                        { line("work-date", "counter.date", &work.date, with(|work, text| work.date = text)) }
                        { line("work-by", "counter.by", &work.by, with(|work, text| work.by = text)) }
                    </div>
                    { lines("work-oil", "counter.column.oil", &work.oil, with(|work, text| work.oil = text)) }
                    { lines("work-valving", "counter.column.valving", &work.valving, with(|work, text| work.valving = text)) }
                    { lines("work-other", "counter.column.other", &work.other, with(|work, text| work.other = text)) }
                    <h2>{ say("counter.leaves-with") }</h2>
                    <p>{ say("counter.leaves-with.why") }</p>
                    <div class="numbers numbers-pairs">{ for inputs }</div>
                    <div class="onward">
                        <button type="submit" class="button button-main">{ say("counter.keep") }</button>
                    </div>
                </form>
            </div>
        </>
    }
}

/// The numbers that this bike has at all.
fn asked(job: &Job) -> impl Iterator<Item = Field> {
    let intake = job.now().intake;
    let fields = LEAVES_WITH.iter().copied();
    fields.filter(move |field| applies(field.question(), &intake))
}

/// The boxes as they stand at first: what was written down for this visit, in the units of the rider's own answers.
fn numbers_to_start(job: &Job, work: &Work) -> Wizard {
    let mut wizard = Wizard::from_intake(work.set.clone());
    wizard.units = job.now().units;
    wizard
}

/// What is to be told, and what is wrong with the boxes.
fn finished(job: &Job, draft: &Wizard, work: &Work, name: String) -> (Change, Vec<Trouble>) {
    let fields: Vec<Field> = asked(job).collect();
    let questions: Vec<Question> = fields.iter().fold(Vec::new(), |mut all, field| {
        if !all.contains(&field.question()) {
            all.push(field.question());
        }
        all
    });
    let typed = |at: &str| {
        let field = fields.iter().find(|field| field.path() == at);
        let typed = field.and_then(|field| draft.typed.get(field));
        typed.is_some_and(|typed| !typed.is_blank())
    };
    let draft = questions.iter().fold(draft.clone(), |draft, question| {
        draft.accepted(Page::Ask(*question))
    });
    // A page left empty is no trouble here: not every number is set on every visit.
    let mut wrong: Vec<Trouble> = questions
        .iter()
        .flat_map(|question| troubles(&draft, Page::Ask(*question)))
        .filter(|trouble| typed(trouble.at))
        .collect();
    let mut set = sagwright_core::intake::Intake::default();
    for field in &fields {
        field.set(&mut set, field.get(&draft.intake));
    }
    let work = Work {
        set,
        ..work.clone()
    };
    let change = Change::Work(name, Some(Box::new(work)));
    if wrong.is_empty() {
        let mut after = job.clone();
        after.hear(change.clone(), now());
        wrong.extend(contradictions(&after, &fields));
    }
    (change, wrong)
}

/// Where the numbers contradict what the rider told, such as clicks beyond the range of the adjuster.
fn contradictions(after: &Job, fields: &[Field]) -> Vec<Trouble> {
    let Err(error) = check(&after.after_work()) else {
        return Vec::new();
    };
    let first = fields.first().map_or("first-answer", |field| field.path());
    let problems = error.problems.into_iter();
    problems
        .map(|problem| {
            let at = fields.iter().find(|field| field.path() == problem.path);
            Trouble {
                at: at.map_or(first, |field| field.path()),
                text: problem.text,
                offer: None,
            }
        })
        .collect()
}
