//! What the rider has to know whatever page they are on, some of it with a choice.

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

/// How the site itself stands.
#[derive(PartialEq, Properties)]
pub struct SiteProps {
    /// How the answers are kept.
    pub kept: Kept,
    /// How the site is kept.
    pub stand: Stand,
    /// Takes the newer build.
    pub renew: Callback<()>,
}

/// Whether the site is on this device, and the offer of a newer build. It stands at the foot of the page, so that
/// nothing moves under the rider's thumb when it comes.
///
/// Taking a newer build loads the page anew, so it is offered only while the answers are on the device; whoever has
/// none there meets it on the next visit.
#[component]
pub fn SiteNotice(props: &SiteProps) -> Html {
    let offer = |told: &'static str, take: &'static str| {
        html! {
            <>
                <p>{ say(told) }</p>
                <p class="notice-choice">{ button(take, props.renew.reform(|_| ())) }</p>
            </>
        }
    };
    html! {
        <div role="status">
            {
                match (props.stand, props.kept) {
                    (Stand::Network, _) => Html::default(),
                    (Stand::Newer, Kept::Yes) => offer("shell.newer", "shell.newer-use"),
                    (Stand::Overtaken, Kept::Yes) => offer("shell.renewed", "shell.renewed-use"),
                    _ => html! { <p>{ say("shell.offline") }</p> },
                }
            }
        </div>
    }
}

fn button(key: &'static str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" class="button" {onclick}>{ say(key) }</button> }
}
