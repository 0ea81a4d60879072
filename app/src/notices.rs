//! What the rider has to know whatever page they are on, some of it with a choice.

use yew::prelude::*;

use crate::keeping::{Found, Keeping, Kept};
use crate::offline::Stand;
use crate::pieces::{button, paragraph};
use crate::words::say;

/// What stands above the page: about the answers and the address. `lost` is whether the address led nowhere.
pub fn about_answers(found: Found, keeping: &Keeping, lost: bool) -> Html {
    html! {
        <div role="status" class="notices">
            if keeping.kept == Kept::No { <p class="notice">{ say("shell.not-kept") }</p> }
            if keeping.kept == Kept::Overtaken {
                <div class="notice">
                    { paragraph("shell.overtaken") }
                    <p class="notice-choice">
                        { button("shell.overtaken-theirs", keeping.take_over.clone()) }
                        { button("shell.overtaken-ours", keeping.insist.clone()) }
                    </p>
                </div>
            }
            if let Some(key) = put_aside(found) { <p class="notice">{ say(key) }</p> }
            if lost { <p class="notice">{ say("shell.unknown-address") }</p> }
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

/// Whether the site is on this device, and the offer of a newer build, taken by `renew`. It stands at the foot of the
/// page, so that nothing moves under the rider's thumb when it comes.
///
/// Taking a newer build loads the page anew, so it is offered only while the answers are on the device; whoever has
/// none there meets it on the next visit.
pub fn about_site(kept: Kept, stand: Stand, renew: &Callback<()>) -> Html {
    let offer = |told: &'static str, take: &'static str| {
        html! {
            <>
                { paragraph(told) }
                <p class="notice-choice">{ button(take, renew.reform(|_| ())) }</p>
            </>
        }
    };
    html! {
        <div role="status">
            {
                match (stand, kept) {
                    (Stand::Network, _) => Html::default(),
                    (Stand::Newer, Kept::Yes) => offer("shell.newer", "shell.newer-use"),
                    (Stand::Overtaken, Kept::Yes) => offer("shell.renewed", "shell.renewed-use"),
                    _ => paragraph("shell.offline"),
                }
            }
        </div>
    }
}
