//! Whether the rider has begun: until then a visit downloads no more than the first question needs.

use gloo::events::{EventListener, EventListenerOptions, EventListenerPhase};
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
    {
        let touched = touched.setter();
        use_effect_with((), move |()| {
            let listeners = web_sys::window().map(|window| {
                SIGNS.map(|sign| {
                    let touched = touched.clone();
                    // Before anything on the page takes the event for itself, and without the page waiting for it.
                    let options = EventListenerOptions {
                        phase: EventListenerPhase::Capture,
                        passive: true,
                    };
                    EventListener::new_with_options(&window, sign, options, move |_| {
                        touched.set(true);
                    })
                })
            });
            move || drop(listeners)
        });
    }
    already || *touched
}
