//! Files dropped anywhere on the counter's page.

use std::rc::Rc;

use gloo::events::{EventListener, EventListenerOptions};
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, File};
use yew::prelude::*;

use super::route::Place;
use crate::browser;

/// Files that wait to be taken in. Two are the same while no others have been dropped.
#[derive(Debug, Clone)]
pub struct Dropped {
    files: Rc<Vec<File>>,
    turn: u32,
}

impl PartialEq for Dropped {
    fn eq(&self, other: &Self) -> bool {
        self.turn == other.turn
    }
}

impl Dropped {
    /// The files, and which drop they came with; `None` before the first.
    pub fn files(&self) -> Option<(u32, Rc<Vec<File>>)> {
        (self.turn > 0).then(|| (self.turn, Rc::clone(&self.files)))
    }
}

/// Takes files dropped on the page and goes to where they are taken in. A file dropped beside would otherwise be opened
/// by the browser in place of the page.
#[hook]
pub fn use_dropping() -> Dropped {
    let dropped = use_state_eq(|| Dropped {
        files: Rc::default(),
        turn: 0,
    });
    let set = dropped.setter();
    use_effect_with((), move |()| {
        let mut turn = 0_u32;
        let listeners = web_sys::window().map(|window| {
            let options = EventListenerOptions::enable_prevent_default();
            let over = EventListener::new_with_options(&window, "dragover", options, |event| {
                event.prevent_default();
            });
            let drop = EventListener::new_with_options(&window, "drop", options, move |event| {
                event.prevent_default();
                let files = event
                    .dyn_ref::<DragEvent>()
                    .and_then(DragEvent::data_transfer)
                    .and_then(|carried| carried.files());
                let files =
                    files.map(|files| (0..files.length()).filter_map(|at| files.get(at)).collect());
                let files: Vec<File> = files.unwrap_or_default();
                if !files.is_empty() {
                    turn += 1;
                    set.set(Dropped {
                        files: Rc::new(files),
                        turn,
                    });
                    browser::follow(&Place::BringIn.fragment());
                }
            });
            [over, drop]
        });
        move || drop(listeners)
    });
    (*dropped).clone()
}
