//! Signs that mean the bike is not to be ridden.

use std::collections::BTreeSet;

use sagwright_core::intake::{Question, StopSign};
use yew::prelude::*;

use crate::desk::use_desk;
use crate::inputs::Tick;
use crate::state::{Action, Page};
use crate::words::say;

/// The signs, and the two answers that stand alone.
#[component]
pub fn Signs() -> Html {
    let desk = use_desk();
    let seen = desk.wizard.intake.stop_signs.as_ref();
    let ticks = StopSign::ALL.iter().enumerate().map(|(index, sign)| {
        let sign = *sign;
        let act = desk.clone();
        html! {
            <Tick
                key_of_label={format!("sign.{}", sign.word())}
                ticked={seen.is_some_and(|signs| signs.contains(&sign))}
                changed={Callback::from(move |so| act.act(Action::Sign(sign, so)))}
                id={(index == 0).then_some("first-answer")}
            />
        }
    });
    let none = desk.clone();
    let unknown = desk.clone();
    let page = Page::Ask(Question::StopSigns);
    html! {
        <fieldset class="group" aria-labelledby={crate::shell::HEADING}>
            <div class="rows">{ for ticks }</div>
            <p class="or">{ say("input.or") }</p>
            <div class="rows">
                <Tick
                    key_of_label="signs.none"
                    ticked={seen.is_some_and(BTreeSet::is_empty)}
                    changed={Callback::from(move |so| none.act(Action::NoSigns(so)))}
                />
                <Tick
                    key_of_label="signs.dont-know"
                    ticked={desk.wizard.is_passed(page)}
                    changed={Callback::from(move |so| unknown.act(Action::DontKnow(page, so)))}
                />
            </div>
        </fieldset>
    }
}
