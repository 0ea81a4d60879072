//! The site kept on the device by its service worker, and newer builds of it offered to the rider.
//!
//! A newer build never takes over by itself: it waits until the rider says so, or until the site is next opened with
//! no other page of it around.

use std::cell::Cell;
use std::rc::Rc;

use gloo::events::EventListener;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    RegistrationOptions, ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration,
    ServiceWorkerState, ServiceWorkerUpdateViaCache,
};
use yew::prelude::*;

use crate::browser;

/// The service worker, as the build writes it.
const WORKER: &str = "sw.js";

/// What the service worker takes as the word to use the build that waits.
const TAKE_OVER: &str = "take over";

/// How the site stands on this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// It comes from the network: the device does not keep it, or not yet.
    Network,
    /// All of it is kept here and opens without a signal.
    Kept,
    /// A newer build is kept here and waits for the rider's word.
    Newer,
    /// Another page of the site has gone over to a newer build; this one runs on as it is.
    Overtaken,
}

/// Has the site kept on this device once there is `time`, and follows how it stands. The callback takes the newer build,
/// which loads the page anew.
#[hook]
pub fn use_offline(time: bool) -> (Stand, Callback<()>) {
    let stand = use_state_eq(|| Stand::Network);
    let asked = use_memo((), |()| Cell::new(false));
    {
        let (stand, asked) = (stand.setter(), Rc::clone(&asked));
        use_effect_with((), move |()| {
            if let Some(container) = container() {
                watch(&container, &stand, asked);
            }
        });
    }
    {
        let stand = stand.setter();
        use_effect_with(time, move |time| {
            let Some(container) = container().filter(|_| *time) else {
                return;
            };
            spawn_local(async move {
                // A browser that refuses, as in a private window, leaves the site as it is without one.
                if let Some(registration) = register(&container).await {
                    follow(&container, &registration, &stand);
                }
            });
        });
    }
    let now = *stand;
    let take = Callback::from(move |()| {
        asked.set(true);
        if now == Stand::Overtaken {
            reload();
        } else {
            spawn_local(async { tell_waiting().await.unwrap_or_else(reload) });
        }
    });
    (now, take)
}

/// The browser's place for service workers; `None` where it has none, or does not let this page at it.
fn container() -> Option<ServiceWorkerContainer> {
    browser::gives("serviceWorker")?.dyn_into().ok()
}

/// Whether this page comes from what the device keeps.
pub fn is_kept() -> bool {
    container().is_some_and(|container| container.controller().is_some())
}

async fn register(container: &ServiceWorkerContainer) -> Option<ServiceWorkerRegistration> {
    let options = RegistrationOptions::new();
    options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
    let registered = container.register_with_options(WORKER, &options);
    JsFuture::from(registered).await.ok()?.dyn_into().ok()
}

/// Notices when this page comes under another service worker.
fn watch(container: &ServiceWorkerContainer, stand: &UseStateSetter<Stand>, asked: Rc<Cell<bool>>) {
    let kept = Cell::new(is_kept());
    if kept.get() {
        stand.set(Stand::Kept);
    }
    let stand = stand.clone();
    let listener = EventListener::new(container, "controllerchange", move |_| {
        if asked.get() {
            reload();
        } else if kept.replace(true) {
            stand.set(Stand::Overtaken);
        } else {
            stand.set(Stand::Kept);
        }
    });
    // For as long as the page lives.
    listener.forget();
}

/// Notices when a newer build is complete on the device: now, or later while the page is open.
fn follow(
    container: &ServiceWorkerContainer,
    registration: &ServiceWorkerRegistration,
    stand: &UseStateSetter<Stand>,
) {
    if registration.waiting().is_some() && container.controller().is_some() {
        stand.set(Stand::Newer);
    }
    let (container, found) = (container.clone(), registration.clone());
    let stand = stand.clone();
    let arriving = move || {
        if let Some(worker) = found.installing() {
            watch_install(&worker, container.clone(), stand.clone());
        }
    };
    arriving();
    EventListener::new(registration, "updatefound", move |_| arriving()).forget();
}

fn watch_install(
    worker: &ServiceWorker,
    container: ServiceWorkerContainer,
    stand: UseStateSetter<Stand>,
) {
    let state = worker.clone();
    let listener = EventListener::new(worker, "statechange", move |_| {
        // The very first one has nothing to wait for and takes over by itself.
        if state.state() == ServiceWorkerState::Installed && container.controller().is_some() {
            stand.set(Stand::Newer);
        }
    });
    listener.forget();
}

/// Tells the build that waits to take over; `None` where none waits any more.
async fn tell_waiting() -> Option<()> {
    let found = JsFuture::from(container()?.get_registration()).await.ok()?;
    let registration: ServiceWorkerRegistration = found.dyn_into().ok()?;
    let word = JsValue::from_str(TAKE_OVER);
    registration.waiting()?.post_message(&word).ok()
}

/// Loads the page anew.
fn reload() {
    if let Some(window) = web_sys::window() {
        // Where the browser refuses, the rider still has its own button.
        window.location().reload().ok();
    }
}
