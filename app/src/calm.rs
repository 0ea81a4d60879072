//! Waiting for a calm moment: what a finger is on must not move away under it.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo::events::{EventListener, EventListenerOptions};
use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// What a reader does with hands on the page.
const HANDS_ON: [&str; 4] = ["pointerdown", "keydown", "scroll", "touchmove"];
/// Hands are off once nothing has been done for so long, ms: longer than between two taps, shorter than a thought.
const OFF_AFTER_MS: f64 = 700.0;
/// How long to wait before looking again, ms.
const LOOK_AGAIN_MS: u32 = 250;
/// After so many looks it is done all the same: news that is never told is no use.
const MOST_LOOKS: u32 = 40;

/// Does things at calm moments; the last thing asked for replaces one that still waits.
#[derive(Clone)]
pub struct Calm {
    touched: Rc<Cell<f64>>,
    waiting: Rc<RefCell<Option<Timeout>>>,
}

impl Calm {
    /// Does `task` in a task of its own, as soon as hands are off the page.
    pub fn when_calm(&self, task: impl FnOnce() + 'static) {
        self.look(MOST_LOOKS, Box::new(task));
    }

    /// Forgets what still waits.
    pub fn forget(&self) {
        self.waiting.take();
    }

    fn look(&self, looks: u32, task: Box<dyn FnOnce()>) {
        let calm = js_sys::Date::now() - self.touched.get() >= OFF_AFTER_MS;
        let timeout = if calm || looks == 0 {
            Timeout::new(0, task)
        } else {
            let again = self.clone();
            Timeout::new(LOOK_AGAIN_MS, move || again.look(looks - 1, task))
        };
        *self.waiting.borrow_mut() = Some(timeout);
    }
}

/// Watches the reader's hands for as long as the component stands.
#[hook]
pub fn use_calm() -> Calm {
    let calm = use_memo((), |()| Calm {
        touched: Rc::new(Cell::new(f64::NEG_INFINITY)),
        waiting: Rc::default(),
    });
    {
        let calm = Rc::clone(&calm);
        use_effect_with((), move |()| {
            let listeners = HANDS_ON.map(|kind| {
                let touched = Rc::clone(&calm.touched);
                let options = EventListenerOptions::run_in_capture_phase();
                EventListener::new_with_options(&gloo::utils::window(), kind, options, move |_| {
                    touched.set(js_sys::Date::now());
                })
            });
            move || {
                drop(listeners);
                calm.forget();
            }
        });
    }
    (*calm).clone()
}
