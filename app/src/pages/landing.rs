//! What this is, and the ways to begin.

use yew::prelude::*;

use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::examples;
use crate::pieces::{link_button, main_link, page_heading, paragraph};
use crate::route::Route;
use crate::state::{Action, Page};
use crate::words::say;

/// The first page.
#[component]
pub fn LandingPage() -> Html {
    let desk = use_desk();
    use_effect_with((), |()| browser::set_title(&say("title.landing")));
    html! {
        <div class="landing">
            { page_heading(say("landing.heading")) }
            <p class="lead">{ say("landing.what") }</p>
            { begin(&desk) }
            <p class="hint">{ say("landing.time") }</p>
            <p>{ link_button(Route::Open, "landing.open") }</p>
            <details class="try">
                <summary>{ say("landing.examples") }</summary>
                { paragraph("landing.examples-text") }
                { examples(&desk) }
            </details>
        </div>
    }
}

/// Start, or go on where one left off.
fn begin(desk: &Desk) -> Html {
    let first = Page::all(&desk.wizard.intake).first().copied();
    let start = first.map_or(Route::Check, Route::ask);
    if desk.wizard.is_untouched() {
        return html! {
            <p>{ main_link(start, "landing.start") }</p>
        };
    }
    let open = desk.wizard.first_open().map_or(Route::Check, Route::ask);
    html! {
        <div class="onward">
            { main_link(open, "landing.continue") }
            { link_button(Route::Check, "landing.answers") }
            { link_button(Route::Track, "landing.track") }
            { link_button(Route::StartAgain, "landing.start-again") }
        </div>
    }
}

/// The invented riders. Opening one takes the place of the answers, so it is offered only with that said.
fn examples(desk: &Desk) -> Html {
    let buttons = examples::offered().map(|example| {
        let desk = desk.clone();
        let who = say(&example.key());
        let onclick = Callback::from(move |_: MouseEvent| {
            if let Some(rider) = example.rider() {
                desk.act(Action::Open(Box::new(rider)));
                browser::go(Route::Check);
            }
        });
        html! { <li><button type="button" class="button" {onclick}>{ who }</button></li> }
    });
    html! {
        <>
            if !desk.wizard.is_untouched() { <p class="hint">{ say("landing.examples-replace") }</p> }
            <ul class="examples">{ for buttons }</ul>
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::Wizard;

    #[test]
    fn the_links_that_stand_before_the_program_has_come_lead_where_ours_do() {
        let before = include_str!("../../../index.html");
        let first = Page::all(&Wizard::default().intake)[0];
        for route in [Route::ask(first), Route::Open] {
            let to = route.fragment();
            assert!(before.contains(&format!("href=\"{to}\"")), "{to}");
            // Its line is shown once the link was followed.
            assert!(before.contains(&format!("id=\"{}\"", &to[1..])), "{to}");
        }
    }
}
