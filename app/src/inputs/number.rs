//! A number as riders type it, its unit beside it.

use sagwright_core::intake::Field;
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text};
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::units::unit_switch;
use crate::browser;
use crate::desk::Desk;
use crate::state::{Action, Offer, Trouble};
use crate::words::{beside, say, say_if_any};

/// Label, usual range, box, unit, and what is wrong if anything is among `troubles`. `settled` is told when the rider has
/// said which unit was meant.
pub fn number_input(
    desk: &Desk,
    field: Field,
    troubles: &[Trouble],
    settled: &Callback<Field>,
) -> Html {
    let trouble = troubles.iter().find(|trouble| trouble.at == field.path());
    let id = field.path();
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let unit = desk.wizard.unit_of(field);
    let wrong = trouble.is_some();
    let described_by = if wrong {
        format!("{error_id} {hint_id}")
    } else {
        hint_id.clone()
    };
    let whole = matches!(field.dimension(), Dimension::Clicks | Dimension::Time);
    let typing = desk.clone();
    let oninput = Callback::from(move |event: InputEvent| {
        let target = event.target();
        if let Some(input) = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok()) {
            typing.act(Action::Type(field, input.value()));
        }
    });
    html! {
        <div class={classes!("number", wrong.then_some("wrong"))}>
            <label class="number-label" for={id}>
                { say(&format!("field.{id}")) }
                <span class="vh">{ format!(", {}", beside(field, unit)) }</span>
            </label>
            <p class="hint" id={hint_id}>{ hint(desk, field) }</p>
            if let Some(trouble) = trouble {
                <div class="error" id={error_id}>
                    <p><span class="vh">{ say("input.error") }</span>{ desk.tell(&trouble.text) }</p>
                    if let Some(offer) = trouble.offer { { unit_question(desk, offer, settled) } }
                </div>
            }
            <div class="number-line">
                <input
                    type="text"
                    class="box"
                    autocomplete="off"
                    spellcheck="false"
                    inputmode={whole.then_some("numeric")}
                    aria-describedby={described_by}
                    aria-invalid={wrong.then_some("true")}
                    {id}
                    name={id}
                    value={desk.wizard.shown(field)}
                    {oninput}
                />
                if field.dimension().units().len() > 1 {
                    { unit_switch(desk, field.dimension()) }
                } else {
                    <span class="unit-alone" aria-hidden="true">{ beside(field, unit) }</span>
                }
            </div>
        </div>
    }
}

/// What the number is, where that needs saying, and what is usual.
fn hint(desk: &Desk, field: Field) -> String {
    let usual = field.usual();
    let span = Arg::Span(usual.low, usual.high, field.dimension());
    let usual = desk.tell(&Text::new("input.usual").with("span", span));
    match say_if_any(&format!("about.{}", field.path())) {
        Some(about) => format!("{about} {usual}"),
        None => usual,
    }
}

/// "Yes, kgf/mm" and "No, N/mm is right".
fn unit_question(desk: &Desk, offer: Offer, settled: &Callback<Field>) -> Html {
    let answer = |action: Action| {
        let (desk, settled) = (desk.clone(), settled.clone());
        Callback::from(move |_: MouseEvent| {
            desk.act(action.clone());
            settled.emit(offer.field);
            browser::focus(offer.field.path());
        })
    };
    let symbol = |key: &'static str, unit: sagwright_core::quantity::Unit| {
        desk.tell(&Text::new(key).with("unit", Arg::Raw(unit.symbol().to_owned())))
    };
    html! {
        <div class="unit-question">
            <button type="button" class="button" onclick={answer(Action::Meant(offer.field, offer.unit))}>
                { symbol("input.yes-unit", offer.unit) }
            </button>
            <button type="button" class="button" onclick={answer(Action::KeepUnit(offer.field))}>
                { symbol("input.no-unit", offer.instead_of) }
            </button>
        </div>
    }
}
