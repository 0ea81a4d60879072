//! The kinds of bike that the workshop works on.

use sagwright_core::intake::{BikeClass, Question};
use yew::prelude::*;

use super::look::with_name;
use super::settings::workshop;
use crate::desk::use_desk;
use crate::state::Slot;

/// Whether this answer is offered: of the kinds of bike, those that the workshop works on; of all else, everything.
pub fn offers(slot: Slot, word: &str) -> bool {
    if slot != Slot::One(Question::BikeClass) {
        return true;
    }
    let class = BikeClass::ALL.iter().find(|class| class.word() == word);
    let serves = |class: &BikeClass| workshop().is_none_or(|workshop| workshop.serves(*class));
    class.is_none_or(serves)
}

/// Says that not every kind of bike is offered, and that the one picked is not among them.
#[component]
pub fn Served() -> Html {
    let desk = use_desk();
    let Some(workshop) = workshop().filter(|workshop| workshop.classes.is_some()) else {
        return Html::default();
    };
    let picked = desk.wizard.intake.bike.class;
    if picked.is_some_and(|class| !workshop.serves(class)) {
        html! { <p class="notice">{ with_name("hosted.serves-not", &workshop.name) }</p> }
    } else {
        html! { <p class="hint">{ with_name("hosted.serves", &workshop.name) }</p> }
    }
}
