//! "On this page": the parts of the advice, each a button that leads there.

use gloo::utils::document;
use sagwright_core::advice::SetUpAdvice;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;
use yew::prelude::*;

use super::Voice;

/// A part of the advice with a heading of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// The settings card.
    Settings,
    /// The causes.
    Causes,
    /// The next best check.
    Check,
    /// The remedies.
    Remedies,
    /// The pictures.
    Picture,
    /// What rides were like.
    Rides,
    /// What something would change.
    WhatIf,
    /// What was assumed.
    Assumed,
    /// The cautions.
    Cautions,
}

impl Part {
    /// Every part, in the order of the page.
    pub const ALL: [Self; 9] = [
        Self::Settings,
        Self::Causes,
        Self::Check,
        Self::Remedies,
        Self::Picture,
        Self::Rides,
        Self::WhatIf,
        Self::Assumed,
        Self::Cautions,
    ];

    /// The parts that a given advice has. `can_try` says whether something can be tried on its bike.
    pub fn of(advice: &SetUpAdvice, can_try: bool) -> Vec<Self> {
        Self::ALL
            .into_iter()
            .filter(|part| match part {
                Self::Rides => advice.rides.is_some(),
                Self::WhatIf => can_try,
                Self::Assumed => !advice.assumptions.is_empty() || advice.narrows_most.is_some(),
                Self::Cautions => !advice.cautions.is_empty(),
                _ => true,
            })
            .collect()
    }

    /// Key of its heading.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Settings => "advice.part.settings",
            Self::Causes => "advice.part.causes",
            Self::Check => "advice.part.check",
            Self::Remedies => "advice.part.remedies",
            Self::Picture => "advice.part.picture",
            Self::Rides => "advice.part.rides",
            Self::WhatIf => "advice.part.what-if",
            Self::Assumed => "advice.part.assumed",
            Self::Cautions => "advice.part.cautions",
        }
    }

    /// The name of its heading among the elements of the page.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Settings => "part-settings",
            Self::Causes => "part-causes",
            Self::Check => "part-check",
            Self::Remedies => "part-remedies",
            Self::Picture => "part-picture",
            Self::Rides => "part-rides",
            Self::WhatIf => "part-what-if",
            Self::Assumed => "part-assumed",
            Self::Cautions => "part-cautions",
        }
    }
}

/// The heading of a part; it can take the focus when the contents lead to it.
pub fn heading(voice: &Voice, part: Part) -> Html {
    html! { <h2 id={part.id()} tabindex="-1">{ voice.words(part.key()) }</h2> }
}

/// The list of parts. Buttons, because the fragment of the address belongs to the pages.
pub fn contents(voice: &Voice, parts: &[Part]) -> Html {
    let items = parts.iter().map(|part| {
        let id = part.id();
        html! {
            <li>
                <button type="button" class="contents-go" onclick={move |_: MouseEvent| go_to(id)}>
                    { voice.words(part.key()) }
                </button>
            </li>
        }
    });
    let title = voice.words("advice.contents");
    html! {
        <nav class="contents" aria-label={title.clone()}>
            <p class="contents-title">{ title }</p>
            <ul>{ for items }</ul>
        </nav>
    }
}

/// Scrolls to a heading and moves the focus there, so that the next Tab goes on from it.
fn go_to(id: &str) {
    let heading = document()
        .get_element_by_id(id)
        .and_then(|element| element.dyn_into::<HtmlElement>().ok());
    if let Some(heading) = heading {
        heading.scroll_into_view();
        // A heading that refuses the focus has still been scrolled to.
        heading.focus().ok();
    }
}
