//! Asking once more before everything is cleared.

use yew::prelude::*;

use crate::browser;
use crate::desk::{use_desk, use_title};
use crate::route::Route;
use crate::shell::HEADING;
use crate::state::Action;
use crate::words::say;

/// Clear, or keep.
#[component]
pub fn StartAgainPage() -> Html {
    let desk = use_desk();
    use_title(&say("start-again.heading"), false);
    let clear = Callback::from(move |_: MouseEvent| {
        desk.act(Action::Clear);
        browser::go(Route::Landing);
    });
    html! {
        <div class="question">
            <h1 id={HEADING} tabindex="-1">{ say("start-again.heading") }</h1>
            <p>{ say("start-again.text") }</p>
            <div class="onward">
                <button type="button" class="button button-main" onclick={clear}>{ say("start-again.yes") }</button>
                <a class="button" href={Route::Landing.fragment()}>{ say("start-again.no") }</a>
            </div>
        </div>
    }
}
