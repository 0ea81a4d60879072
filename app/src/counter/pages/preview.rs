//! A small look at the riders' page as the settings would have it.

use std::rc::Rc;

use sagwright_core::words::{Arg, Text};
use sagwright_core::workshop::{ColourScheme, contrast_with_white};
use web_sys::HtmlElement;
use yew::prelude::*;

use super::parts::plain;
use crate::counter::settings::Draft;
use crate::words::say;

/// The least contrast at which a colour is worn.
const LEAST_CONTRAST: f64 = 7.0;

/// What the settings are now.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The boxes.
    pub draft: Rc<Draft>,
}

/// Masthead, a question, a button and a price.
#[component]
pub fn Preview(props: &Props) -> Html {
    let draft = &props.draft;
    let stage = use_node_ref();
    {
        let stage = stage.clone();
        use_effect_with(Rc::clone(draft), move |draft| wear(&stage, draft));
    }
    let scheme = match draft.colours {
        Some(ColourScheme::Dark) => "preview preview-dark",
        Some(ColourScheme::Light) => "preview preview-light",
        Some(ColourScheme::Device) | None => "preview",
    };
    let name = if draft.name.trim().is_empty() {
        say("counter.card.no-workshop")
    } else {
        draft.name.trim().to_owned()
    };
    let price = Text::new("advice.cost.money")
        .with(
            "band",
            Arg::Raw([draft.labour.0.trim(), "–", draft.labour.1.trim()].concat()),
        )
        .with("currency", Arg::Raw(draft.currency.trim().to_owned()));
    let question = draft.questions.first().map(|one| one.text.clone());
    let question = question.filter(|text| !text.trim().is_empty());
    html! {
        <aside class="preview-aside" aria-label={say("counter.preview")}>
            <h2>{ say("counter.preview") }</h2>
            <div ref={stage} class={scheme}>
                <p class="preview-name">{ name }</p>
                <p class="preview-question">{ question.unwrap_or_else(|| say("ask.rider-weight")) }</p>
                <p class="preview-row">{ say("counter.preview.answer") }</p>
                <p><span class="preview-button">{ say("frame.continue") }</span></p>
                <p class="preview-price">{ say("counter.preview.price") }{ " " }{ plain(&price) }</p>
            </div>
        </aside>
    }
}

/// Puts the colours and sizes on. What does not fit its limits is left as it is everywhere else.
fn wear(stage: &NodeRef, draft: &Draft) {
    let Some(stage) = stage.cast::<HtmlElement>() else {
        return;
    };
    let style = stage.style();
    let accent = draft.accent.trim();
    let fit = contrast_with_white(accent).is_some_and(|contrast| contrast >= LEAST_CONTRAST);
    let corner = draft
        .corner
        .trim()
        .parse::<u8>()
        .ok()
        .filter(|px| *px <= 24);
    let text = draft.text.trim().parse::<u8>().ok();
    let text = text.filter(|percent| (90..=150).contains(percent));
    let values = [
        ("--preview-accent", fit.then(|| accent.to_owned())),
        ("--preview-corner", corner.map(|px| format!("{px}px"))),
        ("--preview-text", text.map(|percent| format!("{percent}%"))),
    ];
    for (name, value) in values {
        // Neither can fail: the names are well-formed, and a value that is none is passed over.
        match value {
            Some(value) => style.set_property(name, &value).ok(),
            None => style.remove_property(name).ok().map(drop),
        };
    }
}
