//! The browser's end of the line to the page around.

use std::cell::{Cell, RefCell};

use gloo::events::EventListener;
use gloo::utils::{document, window};
use js_sys::{Array, Object};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{MessageEvent, ResizeObserver, Window, console};

use super::look::{Look, Refused};
use super::message::{APP, Line, Said, Unheard, VERSION};
use crate::hosted;
use crate::route::Route;
use crate::stage::line::{listen, tell};
use crate::store::fresh_id;
use crate::words;

/// On the page's root while it is in a frame; its value is where the page around is, once that is known.
const MARK: &str = "data-framed";

/// An origin that has no name, as in a sandbox or from a file. Nothing can be sent to it alone.
const NAMELESS: &str = "null";

/// The rider hands answers and advice to the page around.
const FINISHED: &str = "sagwright-finished";

/// The page around has answered.
const ANSWERED: &str = "sagwright-around";

/// Least change of the height that is told, px.
const LEAST_CHANGE: f64 = 2.0;

thread_local! {
    static WIRE: RefCell<Option<Wire>> = const { RefCell::new(None) };
}

struct Wire {
    around: Window,
    frame: String,
    line: Line,
    said: u64,
    height: f64,
    /// The page that was last told of, or is to be told of.
    step: String,
    /// Reasons that stand in the console already.
    logged: Vec<Unheard>,
}

impl Wire {
    /// Says something with these further parts, each a JSON member with a comma before it, to whoever is at `to`.
    fn post(&mut self, kind: &str, rest: &str, to: &str) {
        self.said += 1;
        let (frame, number) = (&self.frame, self.said);
        let text = format!(
            r#"{{"app":"{APP}","version":{VERSION},"kind":"{kind}","frame":"{frame}","number":{number}{rest}}}"#
        );
        // Where that page has gone elsewhere meanwhile, the browser drops the message.
        self.around.post_message(&text.into(), to).ok();
    }

    /// Says something to the page around, once it is known where that is.
    fn say(&mut self, kind: &str, rest: &str) -> bool {
        let to = self.line.origin().filter(|to| *to != NAMELESS);
        let Some(to) = to.map(str::to_owned) else {
            return false;
        };
        self.post(kind, rest, &to);
        true
    }

    fn tell_height(&mut self, height: f64) {
        if (height - self.height).abs() >= LEAST_CHANGE
            && self.say("height", &format!(r#","height":{height}"#))
        {
            self.height = height;
        }
    }

    fn tell_step(&mut self) {
        let rest = format!(r#","step":"{}""#, self.step);
        self.say("step", &rest);
    }

    fn hear(&mut self, event: &MessageEvent) -> Option<Said> {
        let from = event.source();
        let around = from.is_some_and(|from| Object::is(&from, &self.around));
        let text = event.data().as_string();
        match self.line.hear(around, &event.origin(), text.as_deref()) {
            Ok(said) => Some(said),
            Err(why) => {
                if !self.logged.contains(&why) {
                    self.logged.push(why);
                    let reason = why.reason();
                    warn(&format!("A message to Sagwright is ignored: {reason}."));
                }
                None
            }
        }
    }
}

fn warn(text: &str) {
    console::warn_1(&text.into());
}

/// Does something with the line; nothing where this page is in no frame.
fn with(task: impl FnOnce(&mut Wire)) {
    WIRE.with_borrow_mut(|wire| wire.as_mut().map(task));
}

/// Says that this page is there, where it is in a frame, and hears the page around from then on.
pub fn begin() {
    let here = window();
    let around = here.parent().ok().flatten();
    let Some(around) = around.filter(|around| !Object::is(around, &here)) else {
        return;
    };
    let frame = fresh_id();
    let mut wire = Wire {
        around,
        line: Line::new(frame.clone()),
        frame,
        said: 0,
        height: 0.0,
        step: String::new(),
        logged: Vec::new(),
    };
    EventListener::new(&here, "message", |event| {
        let mut said = None;
        if let Some(event) = event.dyn_ref::<MessageEvent>() {
            with(|wire| said = wire.hear(event));
        }
        if let Some(said) = said {
            heed(said);
        }
    })
    .forget();
    let listener = listen(FINISHED, |detail| {
        with(|wire| {
            wire.say("finished", &detail.as_string().unwrap_or_default());
        });
    });
    listener.into_iter().for_each(EventListener::forget);
    // Nobody is known to be there yet, so it goes to whoever is, and holds nothing.
    wire.post("hello", "", "*");
    WIRE.set(Some(wire));
}

fn heed(said: Said) {
    match said {
        Said::Begin(look) => {
            wear(&Look::of(&look));
            with(|wire| {
                let origin = wire.line.origin().unwrap_or_default();
                if origin == NAMELESS {
                    warn(
                        "The page around Sagwright has no origin of its own, so it is told nothing.",
                    );
                } else if let Some(root) = document().document_element() {
                    // Any element takes an attribute.
                    root.set_attribute(MARK, origin).ok();
                }
                let language = words::language().tag();
                wire.say("ready", &format!(r#","lang":"{language}""#));
                if let Some(trouble) = hosted::trouble() {
                    let reason = trouble.word();
                    wire.say("error", &format!(r#","reason":"workshop-{reason}""#));
                }
                wire.tell_step();
            });
            measure();
        }
        Said::Look(look) => wear(&Look::of(&look)),
        Said::Taken(id) => tell(ANSWERED, &Array::of2(&id.into(), &true.into())),
        Said::Refused(id) => tell(ANSWERED, &Array::of2(&id.into(), &false.into())),
    }
}

fn wear((look, refused): &(Look, Vec<Refused>)) {
    look.wear();
    for (name, why) in refused {
        warn(&format!("Sagwright does not wear `{name}`: {why}."));
    }
}

/// Tells the height of the page now and whenever it changes.
fn measure() {
    thread_local! {
        static MEASURING: Cell<bool> = const { Cell::new(false) };
    }
    if MEASURING.replace(true) {
        return;
    }
    let Some(root) = document().document_element() else {
        return;
    };
    let measured = root.clone();
    let told = Closure::<dyn Fn()>::new(move || {
        let height = measured.get_bounding_client_rect().height().ceil();
        with(|wire| wire.tell_height(height));
    });
    if let Ok(observer) = ResizeObserver::new(told.as_ref().unchecked_ref()) {
        observer.observe(&root);
    }
    // For as long as the page lives.
    told.forget();
}

/// Tells that the rider is on this page: its name alone, never an answer.
pub fn step(route: Route) {
    with(|wire| {
        let fragment = route.fragment();
        let name = fragment.split('/').nth(1).filter(|name| !name.is_empty());
        name.unwrap_or("start").clone_into(&mut wire.step);
        wire.tell_step();
    });
}

/// Where the page around is; `None` where there is none that can be told anything.
pub fn around() -> Option<String> {
    let origin = document().document_element()?.get_attribute(MARK)?;
    (!origin.is_empty()).then_some(origin)
}

/// Hands a parcel and the advice on it, each as JSON, to the page around.
pub fn hand(parcel: &str, advice: &str) {
    tell(
        FINISHED,
        &format!(r#","parcel":{parcel},"advice":{advice}"#).into(),
    );
}

/// What the page around answers to a parcel.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// The parcel's name.
    pub id: String,
    /// Whether it has it, or does not take it.
    pub taken: bool,
}

/// Hears what the page around answers, for as long as the listener lives.
pub fn on_answered(hear: impl Fn(Answered) + 'static) -> Option<EventListener> {
    listen(ANSWERED, move |detail| {
        let Ok(detail) = detail.dyn_into::<Array>() else {
            return;
        };
        if let (Some(id), Some(taken)) = (detail.get(0).as_string(), detail.get(1).as_bool()) {
            hear(Answered { id, taken });
        }
    })
}
