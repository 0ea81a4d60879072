//! The kinds of bike that the workshop works on, and how it counts clicks.

use sagwright_core::intake::{BikeClass, Question};
use sagwright_core::workshop::Counting;
use yew::prelude::*;

use super::look::with_name;
use super::settings::workshop;
use crate::desk::Desk;
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

/// Beside a question for clicks, that the workshop counts them from the other end. They are asked for from closed all the
/// same: whoever turns an adjuster in until it stops has counted them from there, however many there are in all.
pub fn counts(question: Question) -> Html {
    let clicks = matches!(question, Question::ForkClickers | Question::ShockClickers);
    let workshop = workshop().filter(|one| clicks && one.counting == Some(Counting::FromOpen));
    match workshop {
        Some(one) => html! { <p class="hint">{ with_name("hosted.counts", &one.name) }</p> },
        None => Html::default(),
    }
}

/// Says that not every kind of bike is offered, and that the one picked is not among them.
pub fn serves(desk: &Desk) -> Html {
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
