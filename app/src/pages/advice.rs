//! The advice: worked out once per set of answers, shown by the advice's own pages.

use yew::prelude::*;

use crate::desk::use_title;
use crate::shell::HEADING;
use crate::words::say;

/// The advice on the answers given.
#[component]
pub fn AdvicePage() -> Html {
    use_title(&say("advice.heading"), false);
    html! {
        <div class="question wide">
            <h1 id={HEADING} tabindex="-1">{ say("advice.heading") }</h1>
            <button class="button">{ say("advice.print") }</button>
        </div>
    }
}
