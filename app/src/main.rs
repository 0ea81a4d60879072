//! The wizard and the advice in the browser.

use yew::prelude::*;

#[component]
fn App() -> Html {
    html! { <h1>{ "Sagwright" }</h1> }
}

fn main() {
    yew::Renderer::<App>::new().render();
}
