//! One box to tick, as a row wide enough for a thumb.

use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use crate::words::say_if_any;

/// One box.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The text key of its label; `<key>.hint` adds a line.
    pub key_of_label: String,
    /// Whether it is ticked.
    pub ticked: bool,
    /// Told the new state.
    pub changed: Callback<bool>,
    /// Name for links to it.
    #[prop_or_default]
    pub id: Option<&'static str>,
}

/// The box with its label.
#[component]
pub fn Tick(props: &Props) -> Html {
    let onchange = props.changed.reform(|event: Event| {
        let target = event.target();
        let input = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
        input.is_some_and(|input| input.checked())
    });
    let hint = say_if_any(&format!("{}.hint", props.key_of_label));
    html! {
        <label class="row">
            <input type="checkbox" id={props.id} checked={props.ticked} {onchange} />
            <span class="row-text">
                { crate::words::say(&props.key_of_label) }
                if let Some(hint) = hint { <span class="row-hint">{ hint }</span> }
            </span>
        </label>
    }
}
