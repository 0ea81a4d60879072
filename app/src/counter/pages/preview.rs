//! A small look at the riders' page as the settings would have it.

use std::rc::Rc;

use sagwright_core::words::{Arg, Text};
use sagwright_core::workshop::Theme;
use web_sys::HtmlElement;
use yew::prelude::*;

use super::parts::plain;
use crate::counter::settings::Draft;
use crate::hosted::put_on;
use crate::words::say;

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
            <div ref={stage} class="preview">
                <p class="preview-name">{ name }</p>
                <p class="preview-question">{ question.unwrap_or_else(|| say("ask.rider-weight")) }</p>
                <p class="preview-row">{ say("counter.preview.answer") }</p>
                <p><span class="preview-button">{ say("frame.continue") }</span></p>
                <p class="preview-price">{ say("counter.preview.price") }{ " " }{ plain(&price) }</p>
            </div>
        </aside>
    }
}

/// Puts the look on. What does not keep to its limits is left as it is everywhere else.
fn wear(stage: &NodeRef, draft: &Draft) {
    let theme = Theme {
        accent: Some(draft.accent.trim().to_owned()),
        corner: draft.corner.trim().parse().ok(),
        text: draft.text.trim().parse().ok(),
        colours: draft.colours,
    };
    if let Some(stage) = stage.cast::<HtmlElement>() {
        put_on(&stage.style(), &theme);
    }
}
