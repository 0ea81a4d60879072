//! What the two programs say to each other.

use gloo::events::EventListener;
use js_sys::Array;
use sagwright_core::words::Language;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit};

use crate::hosted::{Unsent, Why};
use crate::route::Route;

/// The advice's program says that it is there.
pub const HERE: &str = "sagwright-here";

/// The questions' program says what to show.
const SHOW: &str = "sagwright-show";

/// The questions' program takes the stage away.
const LEAVE: &str = "sagwright-leave";

/// The advice's program says that the answers have become others.
const ANSWERED: &str = "sagwright-answered";

/// The advice's program says which answers have not reached their workshop.
const UNSENT: &str = "sagwright-unsent";

/// What stands on the stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Where the address leads.
    pub route: Route,
    /// The answers, in the form in which the device keeps them.
    pub answers: String,
    /// What is spoken.
    pub language: Language,
    /// Whether the rider came here from another page of the site, and is led to the heading.
    pub arriving: bool,
}

impl Scene {
    /// Whether there is something else to show.
    pub fn differs(&self, other: &Self) -> bool {
        self.route != other.route || self.answers != other.answers
    }
}

/// Shows a scene on the stage.
pub fn show(scene: &Scene) {
    let parts = Array::of4(
        &scene.route.fragment().into(),
        &scene.answers.as_str().into(),
        &scene.language.tag().into(),
        &scene.arriving.into(),
    );
    tell(SHOW, &parts);
}

/// Hears what to show, for as long as the page lives.
pub fn on_show(hear: impl Fn(Scene) + 'static) {
    listen(SHOW, move |detail| {
        if let Some(scene) = scene_of(detail) {
            hear(scene);
        }
    })
    .into_iter()
    .for_each(EventListener::forget);
}

fn scene_of(detail: JsValue) -> Option<Scene> {
    let parts: Array = detail.dyn_into().ok()?;
    Some(Scene {
        route: Route::from_fragment(&parts.get(0).as_string()?),
        answers: parts.get(1).as_string()?,
        language: Language::of(&parts.get(2).as_string()?)?,
        arriving: parts.get(3).as_bool()?,
    })
}

/// Takes the stage away.
pub fn leave() {
    tell(LEAVE, &JsValue::UNDEFINED);
}

/// Hears that the stage is taken away, for as long as the page lives.
pub fn on_leave(hear: impl Fn() + 'static) {
    listen(LEAVE, move |_| hear())
        .into_iter()
        .for_each(EventListener::forget);
}

/// Says that the answers have become these, in the form in which the device keeps them.
pub fn answered(answers: &str) {
    tell(ANSWERED, &answers.into());
}

/// Hears what the answers have become, for as long as the listener lives.
pub fn on_answered(hear: impl Fn(String) + 'static) -> Option<EventListener> {
    listen(ANSWERED, move |detail| {
        if let Some(answers) = detail.as_string() {
            hear(answers);
        }
    })
}

/// Says what has not reached its workshop, or that nothing is on its way.
pub fn unsent(unsent: Option<&Unsent>) {
    let parts = unsent.map_or_else(Array::new, |unsent| {
        Array::of2(&unsent.why.key().into(), &unsent.workshop.as_str().into())
    });
    tell(UNSENT, &parts);
}

/// Hears what has not reached its workshop, for as long as the listener lives.
pub fn on_unsent(hear: impl Fn(Option<Unsent>) + 'static) -> Option<EventListener> {
    listen(UNSENT, move |detail| hear(unsent_of(detail)))
}

fn unsent_of(detail: JsValue) -> Option<Unsent> {
    let parts: Array = detail.dyn_into().ok()?;
    Some(Unsent {
        why: Why::of(&parts.get(0).as_string()?)?,
        workshop: parts.get(1).as_string()?,
    })
}

/// Tells whoever listens on the window.
pub fn tell(event: &str, detail: &JsValue) {
    let options = CustomEventInit::new();
    options.set_detail(detail);
    let event = CustomEvent::new_with_event_init_dict(event, &options);
    if let (Some(window), Ok(event)) = (web_sys::window(), event) {
        // Fails only for an event that is being told already.
        window.dispatch_event(&event).ok();
    }
}

/// Hears what is told on the window, for as long as the listener lives.
pub fn listen(event: &'static str, hear: impl Fn(JsValue) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(&window, event, move |event| {
        if let Some(event) = event.dyn_ref::<CustomEvent>() {
            hear(event.detail());
        }
    }))
}
