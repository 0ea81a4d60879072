//! The answers on one sheet, to print or to hand to a workshop.

use yew::prelude::*;

use super::answers::answers;
use crate::browser;
use crate::desk::{use_desk, use_title};
use crate::route::Route;
use crate::shell::HEADING;
use crate::words::say;

/// The sheet.
#[component]
pub fn SheetPage() -> Html {
    let desk = use_desk();
    use_title(&say("sheet.heading"), false);
    let print = Callback::from(|_: MouseEvent| browser::print());
    html! {
        <>
            <p class="back"><a href={Route::Advice.fragment()}>{ say("sheet.back") }</a></p>
            <div class="question wide">
                <h1 id={HEADING} tabindex="-1">{ say("sheet.heading") }</h1>
                <p class="why">{ say("sheet.why") }</p>
                { answers(&desk, false) }
                <div class="onward">
                    <button type="button" class="button button-main" onclick={print}>{ say("advice.print") }</button>
                </div>
            </div>
        </>
    }
}
