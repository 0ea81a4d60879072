//! Asking once more before everything is cleared.

use yew::prelude::*;

use crate::browser;
use crate::desk::{use_desk, use_title};
use crate::pieces::{link_button, main_button, page_heading, paragraph};
use crate::route::Route;
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
            { page_heading(say("start-again.heading")) }
            { paragraph("start-again.text") }
            <div class="onward">
                { main_button("start-again.yes", clear) }
                { link_button(Route::Landing, "start-again.no") }
            </div>
        </div>
    }
}
