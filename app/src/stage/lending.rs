//! The questions' end: the stage, what stands on it, and what comes back.

use std::rc::Rc;

use yew::prelude::*;

use super::fetching::Arrival;
use super::line::{self, Scene};
use crate::desk::{use_desk, use_title};
use crate::hosted;
use crate::pieces::{main_button, page_heading, paragraph, way_back};
use crate::route::Route;
use crate::shell::{Arrivals, lead_in};
use crate::state::{Action, from_saved, to_saved};
use crate::words::{self, say};

/// The element that the advice's program draws in.
pub const STAGE: &str = "stage";

/// What to show.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Where the address leads.
    pub route: Route,
    /// Where the rider has arrived.
    pub arrivals: Arrivals,
    /// Where the advice's program is.
    pub arrival: Arrival,
    /// Tries again to get it.
    pub again: Callback<()>,
}

/// The stage, and what stands there until the advice's program draws on it.
#[component]
pub fn Stage(props: &Props) -> Html {
    let desk = use_desk();
    // What both programs know last: what comes back from there is not told there again.
    let known = use_mut_ref(|| None::<Scene>);
    {
        let known = Rc::clone(&known);
        let arriving = use_mut_ref(|| false);
        let (arrivals, here) = (props.arrivals.clone(), props.arrival == Arrival::Here);
        let depends = (props.route, Rc::clone(&desk.wizard), here);
        use_effect_with(depends, move |(route, wizard, here)| {
            let mut arriving = arriving.borrow_mut();
            *arriving |= arrivals.at(*route);
            let Ok(answers) = to_saved(wizard) else {
                return;
            };
            if !here {
                if *arriving {
                    lead_in();
                }
                return;
            }
            let scene = Scene {
                route: *route,
                answers,
                language: words::language(),
                arriving: std::mem::take(&mut *arriving),
            };
            let mut known = known.borrow_mut();
            if known.as_ref().is_none_or(|known| known.differs(&scene)) {
                line::show(&scene);
                *known = Some(scene);
            }
        });
    }
    {
        let change = desk.change.clone();
        use_effect_with((), move |()| {
            let listener = line::on_answered(move |answers| {
                // Both programs are of one build, so what the one writes the other reads.
                let Ok(wizard) = from_saved(&answers) else {
                    return;
                };
                if let Some(scene) = &mut *known.borrow_mut() {
                    scene.answers = answers;
                }
                change.emit(Action::TakeOver(Box::new(wizard)));
            });
            move || {
                drop(listener);
                line::leave();
            }
        });
    }
    html! {
        <>
            if props.arrival != Arrival::Here {
                <Waiting route={props.route} arrival={props.arrival} again={props.again.clone()} />
            }
            <div id={STAGE} />
        </>
    }
}

/// What is waited for.
#[derive(PartialEq, Properties)]
struct WaitingProps {
    route: Route,
    arrival: Arrival,
    again: Callback<()>,
}

/// Stands in for the page until its program is here.
#[component]
fn Waiting(props: &WaitingProps) -> Html {
    let heading = match props.route {
        Route::Track => say("landing.track"),
        Route::Sheet => say("sheet.heading"),
        Route::Send => hosted::send_heading(),
        Route::Open => say("open.heading"),
        Route::Link => say("link.heading"),
        _ => say("advice.heading"),
    };
    // Whoever opens answers from elsewhere may have none of their own to go back to.
    let back = match props.route {
        Route::Open | Route::Link => Route::Landing,
        _ => Route::Check,
    };
    let missing = props.arrival == Arrival::Missing;
    use_title(&heading, missing);
    let again = props.again.reform(|_: MouseEvent| ());
    html! {
        <>
            { way_back(back) }
            <div class="question">
                { page_heading(heading) }
                <div role="status">
                    { paragraph(if missing { "stage.missing" } else { "stage.coming" }) }
                </div>
                if missing {
                    <p>{ main_button("stage.again", again) }</p>
                }
            </div>
        </>
    }
}
