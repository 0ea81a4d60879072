//! The worker's end: it hears an intake, alone or with something to try on its bike, rides it, and tells how far it is.

use std::rc::Rc;

use gloo::events::EventListener;
use sagwright_core::advice::what_if::{Trying, WhatIfRidden, Workbench, ride_what_if};
use sagwright_core::advice::{Progress, Ridden, ride_out};
use sagwright_core::intake::read_unfinished;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

use super::message::{Asked, Told};

/// Least time between two reports of progress, ms: quicker than anyone reads, too slow to keep the page busy.
const REPORT_MS: f64 = 100.0;

/// The scope of the worker this runs in; `None` on the page.
fn scope() -> Option<DedicatedWorkerGlobalScope> {
    js_sys::global().dyn_into().ok()
}

/// Whether this runs in a worker rather than on the page.
pub fn is_worker() -> bool {
    scope().is_some()
}

/// Rides whatever the page asks for, one after the other, for as long as the worker lives.
pub fn serve() {
    let Some(scope) = scope() else { return };
    let listener = EventListener::new(&scope, "message", |event| {
        let Some(event) = event.dyn_ref::<MessageEvent>() else {
            return;
        };
        let asked = event.data().as_string();
        let Some(asked) = asked.and_then(|text| Asked::from_text(&text).ok()) else {
            return;
        };
        tell(&match &asked.trying {
            None => Told::Done(ride(&asked.intake).map(Rc::new)),
            Some(trying) => Told::Tried(ride_tried(&asked.intake, trying).map(Box::new)),
        });
    });
    listener.forget();
    tell(&Told::Ready);
}

fn ride(document: &str) -> Option<Ridden> {
    // The page has had static advice on these very answers, so they have passed their checks.
    let intake = read_unfinished(document).ok()?;
    ride_out(&intake, &mut report()).ok().flatten()
}

fn ride_tried(document: &str, trying: &Trying) -> Option<WhatIfRidden> {
    let intake = read_unfinished(document).ok()?;
    ride_what_if(&Workbench::of(&intake)?, trying, &mut report())
}

/// Tells the page how far it is, now and then.
fn report() -> impl FnMut(&Progress) -> bool {
    let mut last = f64::NEG_INFINITY;
    move |progress| {
        let now = js_sys::Date::now();
        if now - last >= REPORT_MS {
            last = now;
            tell(&Told::Riding(progress.clone()));
        }
        // Stopping is the page's doing: it ends the whole worker, which hears nothing while it rides.
        true
    }
}

fn tell(told: &Told) {
    if let (Some(scope), Ok(text)) = (scope(), told.to_text()) {
        // A text can always be handed over; where the page is gone, nobody waits for it.
        scope.post_message(&JsValue::from_str(&text)).ok();
    }
}
