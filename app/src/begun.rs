//! Whether the rider has begun: until then a visit downloads no more than the first question needs.

use gloo::events::{EventListener, EventListenerOptions, EventListenerPhase};
use web_sys::Window;
use yew::prelude::*;

use crate::browser;

/// What a rider does to a page before anything else: a finger or a mouse button put down, a key, a wheel, a page scrolled.
const SIGNS: [&str; 4] = ["pointerdown", "keydown", "wheel", "scroll"];

/// Whether the rider has begun: by what is known `already`, or as soon as they touch the page.
///
/// Whoever opens the site as an app of their device has begun: they keep it for where there is no signal.
#[hook]
pub fn use_begun(already: bool) -> bool {
    let touched = use_state_eq(browser::is_installed);
    let begun = already || *touched;
    {
        let touched = touched.setter();
        use_effect_with(begun, move |begun| {
            // Once they have begun, nothing is listened for any more.
            let window = web_sys::window().filter(|_| !*begun);
            let listeners = window.map(|window| SIGNS.map(|sign| listen(&window, sign, &touched)));
            move || drop(listeners)
        });
    }
    begun
}

fn listen(window: &Window, sign: &'static str, touched: &UseStateSetter<bool>) -> EventListener {
    // Before anything on the page takes the event for itself, and without the page waiting for it.
    let options = EventListenerOptions {
        phase: EventListenerPhase::Capture,
        passive: true,
    };
    let touched = touched.clone();
    EventListener::new_with_options(window, sign, options, move |_| touched.set(true))
}
