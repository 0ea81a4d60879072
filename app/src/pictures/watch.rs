//! Says when a picture has to be drawn again: another size, density or colour scheme.

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, ResizeObserver};
use yew::prelude::*;

use crate::wear;

/// Media whose change alters the colours of the page.
const COLOUR_MEDIA: [&str; 3] = [
    "(prefers-color-scheme: dark)",
    "(prefers-contrast: more)",
    "(forced-colors: active)",
];

/// Watches one element as long as it is kept.
struct Watch {
    observer: Option<ResizeObserver>,
    _on_resize: Closure<dyn FnMut()>,
    _listeners: Vec<EventListener>,
}

impl Watch {
    fn on(element: &Element, changed: &Callback<()>) -> Self {
        let on_resize = {
            let changed = changed.clone();
            Closure::<dyn FnMut()>::new(move || changed.emit(()))
        };
        let observer = ResizeObserver::new(on_resize.as_ref().unchecked_ref()).ok();
        if let Some(observer) = &observer {
            observer.observe(element);
        }
        let density = format!("(resolution: {}dppx)", pixel_ratio());
        let listeners = COLOUR_MEDIA
            .iter()
            .copied()
            .chain([density.as_str()])
            .filter_map(|media| window().match_media(media).ok().flatten())
            .map(|media| {
                let changed = changed.clone();
                EventListener::new(&media, "change", move |_| changed.emit(()))
            })
            .chain([{
                let changed = changed.clone();
                EventListener::new(&window(), wear::CHANGED, move |_| changed.emit(()))
            }])
            .collect();
        Self {
            observer,
            _on_resize: on_resize,
            _listeners: listeners,
        }
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        if let Some(observer) = &self.observer {
            observer.disconnect();
        }
    }
}

/// Device pixels per CSS pixel, never less than one.
pub fn pixel_ratio() -> f64 {
    window().device_pixel_ratio().max(1.0)
}

/// A count that grows whenever `element` has to be drawn again.
#[hook]
pub fn use_redraw_count(element: &NodeRef) -> u32 {
    let count = use_reducer(Count::default);
    {
        let element = element.clone();
        let dispatcher = count.dispatcher();
        // The density is part of the key: its listener only hears the step away from the present one.
        use_effect_with(pixel_ratio().to_bits(), move |_| {
            let watch = element.cast::<Element>().map(|element| {
                Watch::on(&element, &Callback::from(move |()| dispatcher.dispatch(())))
            });
            move || drop(watch)
        });
    }
    count.0
}

#[derive(Default)]
struct Count(u32);

impl Reducible for Count {
    type Action = ();

    fn reduce(self: std::rc::Rc<Self>, (): ()) -> std::rc::Rc<Self> {
        std::rc::Rc::new(Self(self.0.wrapping_add(1)))
    }
}
