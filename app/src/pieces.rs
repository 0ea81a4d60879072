//! What stands on many pages and is the same on each. Written once, each is a call elsewhere; written out, each would be a
//! tenth of a kilobyte of download at every place.

use yew::prelude::*;

use crate::route::Route;
use crate::shell::HEADING;
use crate::words::say;

/// The heading of a page, where the focus goes.
pub fn page_heading(text: String) -> Html {
    html! { <h1 id={HEADING} tabindex="-1">{ text }</h1> }
}

/// The way back, above a page.
pub fn way_back(to: Route) -> Html {
    html! { <p class="back"><a href={to.fragment()}>{ say("frame.back") }</a></p> }
}

/// A link that looks like a button, with what is said under `key`.
pub fn link_button(to: Route, key: &str) -> Html {
    link("button", to, key)
}

/// The same for where most go from a page.
pub fn main_link(to: Route, key: &str) -> Html {
    link("button button-main", to, key)
}

fn link(class: &'static str, to: Route, key: &str) -> Html {
    html! { <a {class} href={to.fragment()}>{ say(key) }</a> }
}

/// A button with what is said under `key`.
pub fn button(key: &str, onclick: Callback<MouseEvent>) -> Html {
    plain_button("button", key, onclick)
}

/// The same for what most do on a page.
pub fn main_button(key: &str, onclick: Callback<MouseEvent>) -> Html {
    plain_button("button button-main", key, onclick)
}

fn plain_button(class: &'static str, key: &str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {class} {onclick}>{ say(key) }</button> }
}

/// The button that hands in a form, with what is said under `key`.
pub fn submit_button(key: &str) -> Html {
    html! { <button type="submit" class="button button-main">{ say(key) }</button> }
}

/// A paragraph with what is said under `key`.
pub fn paragraph(key: &str) -> Html {
    html! { <p>{ say(key) }</p> }
}
