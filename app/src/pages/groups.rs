//! Questions with several short groups on one page: the ground, and the push test.

use sagwright_core::intake::{End, Terrain};
use yew::prelude::*;

use crate::desk::Desk;
use crate::inputs::Radios;
use crate::state::Slot;
use crate::words::say;

/// How much of each kind of ground.
pub fn ground(desk: &Desk) -> Html {
    let groups = Terrain::ALL.iter().enumerate().map(|(index, terrain)| {
        let legend = say(&format!("terrain.{}", terrain.word()));
        let group = Radios {
            first: index == 0,
            open_ended: false,
            short: true,
            ..Radios::named(Slot::Ground(*terrain), legend)
        };
        group.draw(desk)
    });
    html! { <div class="groups">{ for groups }</div> }
}

/// What a slow push at each end feels like.
pub fn push(desk: &Desk) -> Html {
    let groups = [End::Front, End::Rear].into_iter().map(|end| {
        let legend = say(&format!("push.{}", end.word()));
        let group = Radios {
            first: end == End::Front,
            ..Radios::named(Slot::Push(end), legend)
        };
        group.draw(desk)
    });
    html! { <div class="groups">{ for groups }</div> }
}
