//! On paper nothing can be unfolded, so everything is, for as long as the page is being printed.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsCast;
use web_sys::Element;
use yew::prelude::*;

/// Opens what is folded inside `page` before printing, and folds it again after.
#[hook]
pub fn use_open_on_paper(page: &NodeRef) {
    let page = page.clone();
    use_effect_with((), move |()| {
        let opened = Rc::new(RefCell::new(Vec::<Element>::new()));
        let before = {
            let opened = Rc::clone(&opened);
            EventListener::new(&window(), "beforeprint", move |_| {
                opened.borrow_mut().extend(unfold(&page));
            })
        };
        let after = EventListener::new(&window(), "afterprint", move |_| {
            for details in opened.take() {
                // Taking away an attribute by its plain name never fails.
                details.remove_attribute("open").ok();
            }
        });
        move || drop((before, after))
    });
}

/// Unfolds every folded element inside `page` and gives those that were.
fn unfold(page: &NodeRef) -> Vec<Element> {
    let Some(folded) = page
        .cast::<Element>()
        .and_then(|page| page.query_selector_all("details:not([open])").ok())
    else {
        return Vec::new();
    };
    (0..folded.length())
        .filter_map(|index| folded.get(index)?.dyn_into::<Element>().ok())
        .filter(|details| details.set_attribute("open", "").is_ok())
        .collect()
}
