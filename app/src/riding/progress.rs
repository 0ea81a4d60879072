//! What the page shows of the rides: how far they are, a way to stop them, and what they changed.

use std::rc::Rc;

use gloo::utils::document;
use sagwright_core::intake::Intake;
use sagwright_core::words::{Arg, Text};
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, FocusOptions, HtmlElement};
use yew::prelude::*;

use super::message::Told;
use super::ride::{Event, Ride, Why};
use crate::advising::{Adviser, Change, Outcome};
use crate::counsel::use_counsel;
use crate::desk::{Desk, use_desk};
use crate::tasks::breath;
use crate::words::say;

/// What is ridden, and who is told.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The answers to ride out.
    pub intake: Rc<Intake>,
    /// Told the advice with what rides found, before the page says that they are done.
    pub on_refined: Callback<Outcome>,
    /// Told whether rides are under way, whenever that changes.
    pub on_busy: Callback<bool>,
    /// Whether the bike was ridden before, set up otherwise.
    pub again: bool,
}

/// Rides the answers out as soon as it stands on the page, and again when they change what is ridden; says how far it is.
#[component]
pub fn RideProgress(props: &Props) -> Html {
    let desk = use_desk();
    let counsel = use_counsel();
    let ride = use_reducer_eq(|| Ride::Waiting);
    let (button, status) = (use_node_ref(), use_node_ref());
    let told = {
        let heard = Heard {
            intake: Rc::clone(&props.intake),
            adviser: counsel.adviser.clone(),
            on_refined: props.on_refined.clone(),
            dispatcher: ride.dispatcher(),
            button: button.clone(),
            status: status.clone(),
        };
        Callback::from(move |event: Event| heard.clone().take(event))
    };
    {
        let (rider, told) = (counsel.rider.clone(), told.clone());
        let stopped = *ride == Ride::Stopped(Why::Cancelled);
        use_effect_with(Rc::clone(&props.intake), move |intake| {
            // Whoever stopped the rides says when to ride again.
            if !stopped {
                rider.ride(intake, &told);
            }
        });
    }
    {
        let rider = counsel.rider.clone();
        use_effect_with((), move |()| {
            // Whoever leaves the page no longer waits.
            move || rider.stop()
        });
    }
    {
        let on_busy = props.on_busy.clone();
        use_effect_with(ride.is_riding(), move |busy| on_busy.emit(*busy));
    }
    let press = {
        let (rider, ride) = (counsel.rider.clone(), ride.clone());
        let intake = Rc::clone(&props.intake);
        Callback::from(move |_: MouseEvent| {
            if ride.is_riding() {
                rider.stop();
                ride.dispatch(Event::Stopped(Why::Cancelled));
            } else {
                rider.ride(&intake, &told);
            }
        })
    };
    let label = match *ride {
        Ride::Riding(_) => Some("riding.stop"),
        Ride::Stopped(_) => Some("riding.again"),
        Ride::Waiting | Ride::Done(_) => None,
    };
    let changes = match *ride {
        Ride::Done(Some(_)) => counsel.adviser.changes(&props.intake),
        _ => Vec::new(),
    };
    html! {
        <section class="rides" aria-label={say("riding.title")}>
            <p class="rides-status" role="status" tabindex="-1" ref={status}>
                { status_of(&desk, &ride, &changes, props.again) }
            </p>
            if ride.is_riding() { { bar(&desk, &ride) } }
            if !changes.is_empty() { { list(&desk, &changes) } }
            if let Some(label) = label {
                // One button with two meanings, so that whoever pressed it keeps the focus.
                <button type="button" class="button" ref={button} onclick={press}>{ say(label) }</button>
            }
        </section>
    }
}

/// What is needed to take in what is heard of the rides.
#[derive(Clone)]
struct Heard {
    intake: Rc<Intake>,
    adviser: Adviser,
    on_refined: Callback<Outcome>,
    dispatcher: UseReducerDispatcher<Ride>,
    button: NodeRef,
    status: NodeRef,
}

impl Heard {
    /// Takes it in; what rides found first goes into the advice, a piece at a time.
    fn take(self, event: Event) {
        let (Event::Told(Told::Done(ridden)) | Event::Known(ridden)) = &event else {
            return self.dispatcher.dispatch(event);
        };
        let ridden = ridden.clone();
        spawn_local(async move {
            if let Some(ridden) = ridden {
                let refined = self.adviser.refine(&self.intake, ridden, breath);
                if let Some(refined) = refined.await {
                    self.on_refined.emit(refined);
                }
            }
            keep_focus(&self.button, &self.status);
            self.dispatcher.dispatch(event);
        });
    }
}

/// The sentence that is read out when it changes; the count is not in it, or it would never stop talking.
fn status_of(desk: &Desk, ride: &Ride, changes: &[Change], again: bool) -> String {
    match ride {
        Ride::Waiting => String::new(),
        Ride::Riding(_) if again => say("riding.riding-again"),
        Ride::Riding(_) => say("riding.riding"),
        Ride::Done(None) => say("riding.none"),
        Ride::Done(Some(ridden)) => {
            let key = if changes.is_empty() {
                "riding.unchanged"
            } else {
                "riding.done"
            };
            desk.tell(&Text::new(key).with("rides", Arg::Count(ridden.rides.into())))
        }
        Ride::Stopped(Why::Cancelled) => say("riding.cancelled"),
        Ride::Stopped(Why::Broke) => say("riding.broke"),
        Ride::Stopped(Why::Silent) => say("riding.silent"),
        Ride::Stopped(Why::NoWorker) => say("riding.no-worker"),
    }
}

/// The bar, its numbers, and what is being tried.
fn bar(desk: &Desk, ride: &Ride) -> Html {
    let (count, trying) = match ride {
        Ride::Riding(Some(progress)) => (
            desk.tell(
                &Text::new("riding.count")
                    .with("done", Arg::Count(progress.done.into()))
                    .with("of", Arg::Count(progress.of.into())),
            ),
            desk.tell(&progress.trying),
        ),
        _ => (say("riding.starting"), String::new()),
    };
    let value = ride.part().map(|part| part.to_string());
    html! {
        <div class="rides-under-way">
            <progress max="1" {value} aria-label={say("riding.title")} />
            <p class="rides-count">{ count }</p>
            <p class="rides-trying">{ trying }</p>
        </div>
    }
}

/// The settings that rides moved, before and after.
fn list(desk: &Desk, changes: &[Change]) -> Html {
    let shown = |si: f64, change: &Change| desk.units().show(si, change.dimension);
    // A setting that moved by less than it is told in reads as one that stays.
    let telling = changes
        .iter()
        .filter(|change| shown(change.before, change) != shown(change.after, change));
    let items = telling.map(|change| {
        let text = Text::new("riding.change")
            .with("setting", change.label.clone().into())
            .with("before", Arg::Quantity(change.before, change.dimension))
            .with("after", Arg::Quantity(change.after, change.dimension));
        html! { <li>{ desk.tell(&text) }</li> }
    });
    html! { <ul class="rides-changes">{ for items }</ul> }
}

/// Where the button that is about to go has the focus, hands it to the sentence beside it, without scrolling.
fn keep_focus(button: &NodeRef, status: &NodeRef) {
    let Some(button) = button.cast::<Element>() else {
        return;
    };
    if document().active_element().as_ref() != Some(&button) {
        return;
    }
    if let Some(status) = status.cast::<HtmlElement>() {
        let options = FocusOptions::new();
        options.set_prevent_scroll(true);
        // A sentence that refuses the focus loses nothing but that.
        status.focus_with_options(&options).ok();
    }
}
