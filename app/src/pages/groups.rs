//! Questions with several short groups on one page: the ground, and the push test.

use sagwright_core::intake::{End, Terrain};
use yew::prelude::*;

use crate::inputs::Radios;
use crate::state::Slot;
use crate::words::say;

/// How much of each kind of ground.
#[component]
pub fn Ground() -> Html {
    let groups = Terrain::ALL.iter().enumerate().map(|(index, terrain)| {
        html! {
            <Radios
                slot={Slot::Ground(*terrain)}
                legend={say(&format!("terrain.{}", terrain.word()))}
                first={index == 0}
                open_ended=false
                short=true
            />
        }
    });
    html! { <div class="groups">{ for groups }</div> }
}

/// What a slow push at each end feels like.
#[component]
pub fn Push() -> Html {
    let groups = [End::Front, End::Rear].into_iter().map(|end| {
        html! {
            <Radios
                slot={Slot::Push(end)}
                legend={say(&format!("push.{}", end.word()))}
                first={end == End::Front}
            />
        }
    });
    html! { <div class="groups">{ for groups }</div> }
}
