//! The page's end of the line to one worker.

use std::fmt;

use gloo::events::EventListener;
use gloo::file::ObjectUrl;
use gloo::utils::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{HtmlScriptElement, MessageEvent, Worker, WorkerOptions, WorkerType};
use yew::Callback;

use super::message::Told;
use crate::browser;

/// The script that starts this program on the page starts it in the worker too; its name changes with its content, so it is
/// read off the page.
const BOOT: &str = "script[data-rides]";

/// What comes over the line.
#[derive(Debug, Clone, PartialEq)]
pub enum Heard {
    /// The worker's own words.
    Told(Told),
    /// The worker broke, or said what nobody understands.
    Broke,
}

/// A worker, ended when dropped.
pub struct Link {
    worker: Worker,
    /// The script it was started with, where it needed one of its own.
    _wrapped: Option<ObjectUrl>,
    _listeners: [EventListener; 2],
}

impl Link {
    /// Starts a worker and hands it the program that runs on this page. `None` where the browser has no workers
    /// to give.
    pub fn open(heard: &Callback<Heard>) -> Option<Self> {
        let boot = document().query_selector(BOOT).ok()??;
        let address = boot.dyn_into::<HtmlScriptElement>().ok()?.src();
        let wrapped = browser::wrapped(&address);
        let worker = match &wrapped {
            None => {
                let options = WorkerOptions::new();
                options.set_type(WorkerType::Module);
                Worker::new_with_options(&address, &options)
            }
            Some(wrapped) => Worker::new(wrapped),
        };
        let worker = worker.ok()?;
        worker.post_message(&wasm_bindgen::module()).ok()?;
        let on_message = {
            let heard = heard.clone();
            EventListener::new(&worker, "message", move |event| heard.emit(read(event)))
        };
        let on_error = {
            let heard = heard.clone();
            EventListener::new(&worker, "error", move |_| heard.emit(Heard::Broke))
        };
        Some(Self {
            worker,
            _wrapped: wrapped,
            _listeners: [on_message, on_error],
        })
    }

    /// Sends what is asked, as text; the worker must have said that it is ready.
    pub fn send(&self, document: &str) {
        // A text can always be handed over.
        self.worker.post_message(&JsValue::from_str(document)).ok();
    }
}

impl fmt::Debug for Link {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Link").finish_non_exhaustive()
    }
}

impl Drop for Link {
    fn drop(&mut self) {
        self.worker.terminate();
    }
}

fn read(event: &web_sys::Event) -> Heard {
    event
        .dyn_ref::<MessageEvent>()
        .and_then(|message| message.data().as_string())
        .and_then(|text| Told::from_text(&text).ok())
        .map_or(Heard::Broke, Heard::Told)
}
