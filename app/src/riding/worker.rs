//! The worker's end: it hears an intake, rides it out, and tells how far it is.

use gloo::events::EventListener;
use sagwright_core::advice::{Ridden, ride_out};
use sagwright_core::intake::read_unfinished;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

use super::message::Told;

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

/// Rides whatever the page sends, one intake after the other, for as long as the worker lives.
pub fn serve() {
    let Some(scope) = scope() else { return };
    let listener = EventListener::new(&scope, "message", |event| {
        let Some(event) = event.dyn_ref::<MessageEvent>() else {
            return;
        };
        if let Some(document) = event.data().as_string() {
            tell(&Told::Done(ride(&document).map(Box::new)));
        }
    });
    listener.forget();
    tell(&Told::Ready);
}

fn ride(document: &str) -> Option<Ridden> {
    // The page has had static advice on these very answers, so they have passed their checks.
    let intake = read_unfinished(document).ok()?;
    let mut last = f64::NEG_INFINITY;
    ride_out(&intake, &mut |progress| {
        let now = js_sys::Date::now();
        if now - last >= REPORT_MS {
            last = now;
            tell(&Told::Riding(progress.clone()));
        }
        // Stopping is the page's doing: it ends the whole worker, which hears nothing while it rides.
        true
    })
    .ok()
    .flatten()
}

fn tell(told: &Told) {
    if let (Some(scope), Ok(text)) = (scope(), told.to_text()) {
        // A text can always be handed over; where the page is gone, nobody waits for it.
        scope.post_message(&JsValue::from_str(&text)).ok();
    }
}
