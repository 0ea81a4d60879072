//! Signs that mean the bike is not to be ridden.

use sagwright_core::intake::{Question, StopSign};
use sagwright_core::sorted::Set;
use yew::prelude::*;

use crate::desk::Desk;
use crate::inputs::tick;
use crate::state::{Action, Page};
use crate::words::say;

/// The signs, and the two answers that stand alone.
pub fn signs(desk: &Desk) -> Html {
    let seen = desk.wizard.intake.stop_signs.as_ref();
    let ticks = StopSign::ALL.iter().enumerate().map(|(index, sign)| {
        let sign = *sign;
        let act = desk.clone();
        tick(
            &format!("sign.{}", sign.word()),
            seen.is_some_and(|signs| signs.contains(&sign)),
            (index == 0).then_some("first-answer"),
            move |so| act.act(Action::Sign(sign, so)),
        )
    });
    let none = desk.clone();
    let unknown = desk.clone();
    let page = Page::Ask(Question::StopSigns);
    let none = tick(
        "signs.none",
        seen.is_some_and(Set::is_empty),
        None,
        move |so| none.act(Action::NoSigns(so)),
    );
    let unknown = tick(
        "signs.dont-know",
        desk.wizard.is_passed(page),
        None,
        move |so| unknown.act(Action::DontKnow(page, so)),
    );
    html! {
        <fieldset class="group" aria-labelledby={crate::shell::HEADING}>
            <div class="rows">{ for ticks }</div>
            <p class="or">{ say("input.or") }</p>
            <div class="rows">
                { none }
                { unknown }
            </div>
        </fieldset>
    }
}
