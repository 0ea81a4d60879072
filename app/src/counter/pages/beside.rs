//! Two columns: the same bike before and after, or two riders side by side.

use std::rc::Rc;

use sagwright_core::intake::Intake;
use yew::prelude::*;

use super::columns::{Columns, Pane};
use super::parts::{back, called, heading, no_job};
use crate::counter::find::title;
use crate::counter::job::Job;
use crate::counter::opened::{Found, use_job};
use crate::counter::route::{Place, Side};
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::words::say;

/// Which job, held against what.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name of the job.
    pub id: String,
    /// What it is held against.
    pub side: Side,
}

/// The page of two columns.
#[component]
pub fn BesidePage(props: &Props) -> Html {
    let counter = use_counter();
    let found = use_job(&counter, &props.id);
    let other = match &props.side {
        Side::Other(id) => id.clone(),
        Side::AsCame | Side::AsLeft => props.id.clone(),
    };
    let other = use_job(&counter, &other);
    use_title(&say("counter.beside"), false);
    let (job, other) = match (&found, &other) {
        (Found::There(job), Found::There(other)) => (job, other),
        (Found::There(_), missing) | (missing, _) => return no_job(missing),
    };
    html! {
        <>
            { back(&Place::Job(props.id.clone()), "counter.back-to-job") }
            { heading(say("counter.beside")) }
            <Two job={Rc::clone(job)} other={Rc::clone(other)} side={props.side.clone()} />
        </>
    }
}

#[derive(PartialEq, Properties)]
struct TwoProps {
    job: Rc<Job>,
    other: Rc<Job>,
    side: Side,
}

#[component]
fn Two(props: &TwoProps) -> Html {
    let TwoProps { job, other, side } = props;
    let panes = use_memo(
        (Rc::clone(job), Rc::clone(other), side.clone()),
        |(job, other, side)| {
            let now = job.now().document();
            let pane = |name: String, intake: Intake| Pane { name, intake };
            match side {
                Side::AsCame => vec![
                    pane(say("counter.beside.came"), job.as_came().document()),
                    pane(say("counter.beside.now"), now),
                ],
                Side::AsLeft => vec![
                    pane(say("counter.beside.in"), now),
                    pane(say("counter.beside.out"), job.after_work()),
                ],
                Side::Other(_) => vec![
                    pane(called(&title(job)), now),
                    pane(called(&title(other)), other.now().document()),
                ],
            }
        },
    );
    html! { <Columns {panes} answers=true /> }
}
