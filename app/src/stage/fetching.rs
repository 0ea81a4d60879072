//! Getting the advice's program onto the page.

use std::cell::Cell;

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use gloo::utils::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlScriptElement;
use yew::prelude::*;

use super::line::HERE;
use crate::browser;

/// How long the page is left alone after it has been drawn, ms, where the browser does not say when it is idle. Long enough
/// for a first tap to be answered, and short against the time that a question takes.
const LEAVE_ALONE_MS: u32 = 1500;

/// The page says under this name which script starts the program.
const ENTRY: &str = "sagwright-advice";

/// Where the advice's program is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrival {
    /// It is not here yet.
    Coming,
    /// It has started and hears.
    Here,
    /// It did not arrive.
    Missing,
}

/// When the advice's program is fetched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fetch {
    /// Not yet: the rider may only be looking.
    Later,
    /// As soon as the page has had nothing to do for a while.
    WhenIdle,
    /// At once: the page is drawn by it.
    Now,
}

/// Fetches the advice's program when it is time. The callback tries again where it did not arrive.
#[hook]
pub fn use_advice_program(time: Fetch) -> (Arrival, Callback<()>) {
    let arrival = use_state_eq(|| Arrival::Coming);
    let tries = use_memo((), |()| Cell::new(0_u32));
    let fetch = {
        let (arrival, tries) = (arrival.setter(), tries.clone());
        use_callback((), move |(), ()| {
            arrival.set(Arrival::Coming);
            tries.set(tries.get() + 1);
            let missing = arrival.clone();
            if add_script(tries.get(), move || missing.set(Arrival::Missing)).is_none() {
                arrival.set(Arrival::Missing);
            }
        })
    };
    {
        let arrival = arrival.setter();
        use_effect_with((), move |()| {
            let listener = web_sys::window().map(|window| {
                EventListener::once(&window, HERE, move |_| arrival.set(Arrival::Here))
            });
            move || drop(listener)
        });
    }
    {
        let fetch = fetch.clone();
        use_effect_with(time, move |time| {
            let begin = move || {
                if tries.get() == 0 {
                    fetch.emit(());
                }
            };
            match time {
                Fetch::Later => {}
                Fetch::WhenIdle => when_idle(begin),
                Fetch::Now => begin(),
            }
        });
    }
    (*arrival, fetch)
}

/// Puts the script that starts the program on the page; `None` where the page does not name it.
///
/// Browsers remember a script that did not arrive, so every further try asks under another address for the same file.
fn add_script(tries: u32, missing: impl FnOnce() + 'static) -> Option<()> {
    let (name, integrity) = browser::named(ENTRY)?;
    let script: HtmlScriptElement = document().create_element("script").ok()?.dyn_into().ok()?;
    script.set_type("module");
    script.set_attribute("integrity", &integrity).ok()?;
    script.set_attribute("data-rides", "").ok()?;
    let again = if tries > 1 {
        format!("?{tries}")
    } else {
        String::new()
    };
    script.set_src(&format!("{name}{again}"));
    EventListener::once(&script, "error", move |_| missing()).forget();
    document().head()?.append_child(&script).ok()?;
    Some(())
}

/// Does `task` when the page has nothing else to do.
fn when_idle(task: impl FnOnce() + 'static) {
    let Some(window) = web_sys::window() else {
        return;
    };
    // Not every browser says when it is idle.
    let can_say = js_sys::Reflect::has(&window, &JsValue::from_str("requestIdleCallback"));
    if can_say.unwrap_or(false) {
        let told = wasm_bindgen::closure::Closure::once_into_js(task);
        window.request_idle_callback(told.unchecked_ref()).ok();
    } else {
        Timeout::new(LEAVE_ALONE_MS, task).forget();
    }
}
