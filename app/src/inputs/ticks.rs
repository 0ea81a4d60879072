//! One box to tick, as a row wide enough for a thumb.

use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use crate::words::say_if_any;

/// The box with its label: `key` is the text key of that, `<key>.hint` adds a line; `id` is for links to it, and `changed` is
/// told the new state.
pub fn tick(
    key: &str,
    ticked: bool,
    id: Option<&'static str>,
    changed: impl Fn(bool) + 'static,
) -> Html {
    boxed(key, ticked, id, &Callback::from(changed))
}

fn boxed(key: &str, ticked: bool, id: Option<&'static str>, changed: &Callback<bool>) -> Html {
    let onchange = changed.reform(|event: Event| {
        let target = event.target();
        let input = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
        input.is_some_and(|input| input.checked())
    });
    let hint = say_if_any(&format!("{key}.hint"));
    html! {
        <label class="row">
            <input type="checkbox" {id} checked={ticked} {onchange} />
            <span class="row-text">
                { crate::words::say(key) }
                if let Some(hint) = hint { <span class="row-hint">{ hint }</span> }
            </span>
        </label>
    }
}
