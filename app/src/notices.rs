//! What the rider has to know whatever page they are on, each in a line of its own, some with a choice.

use yew::prelude::*;

use crate::keeping::{Found, Keeping, Kept};
use crate::offline::Stand;
use crate::words::say;

/// What there may be to tell.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// What the device held at the start.
    pub found: Found,
    /// How the answers are kept.
    pub keeping: Keeping,
    /// How the site is kept.
    pub stand: Stand,
    /// Takes the newer build.
    pub renew: Callback<()>,
    /// Whether the address led nowhere.
    pub lost: bool,
}

/// The lines that apply.
#[component]
pub fn Notices(props: &Props) -> Html {
    let keeping = &props.keeping;
    html! {
        <div role="status" class="notices">
            if keeping.kept == Kept::No { <p class="notice">{ say("shell.not-kept") }</p> }
            if keeping.kept == Kept::Overtaken {
                <div class="notice">
                    <p>{ say("shell.overtaken") }</p>
                    <p class="notice-choice">
                        { button("shell.overtaken-theirs", keeping.take_over.clone()) }
                        { button("shell.overtaken-ours", keeping.insist.clone()) }
                    </p>
                </div>
            }
            if let Some(key) = put_aside(props.found) { <p class="notice">{ say(key) }</p> }
            { newer(props) }
            if props.lost { <p class="notice">{ say("shell.unknown-address") }</p> }
        </div>
    }
}

fn put_aside(found: Found) -> Option<&'static str> {
    match found {
        Found::Fine => None,
        Found::Newer => Some("shell.kept-newer"),
        Found::Unreadable => Some("shell.kept-unreadable"),
    }
}

/// The offer of a newer build. Taking it loads the page anew, so it is offered only while the answers are on the
/// device; whoever has none there meets the newer build on the next visit.
fn newer(props: &Props) -> Html {
    let (told, take) = match props.stand {
        Stand::Newer => ("shell.newer", "shell.newer-use"),
        Stand::Overtaken => ("shell.renewed", "shell.renewed-use"),
        Stand::Network | Stand::Kept => return Html::default(),
    };
    if props.keeping.kept != Kept::Yes {
        return Html::default();
    }
    html! {
        <div class="notice">
            <p>{ say(told) }</p>
            <p class="notice-choice">{ button(take, props.renew.reform(|_| ())) }</p>
        </div>
    }
}

fn button(key: &'static str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" class="button" {onclick}>{ say(key) }</button> }
}
