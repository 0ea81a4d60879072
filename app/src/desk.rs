//! The answers as every page sees them, and the way to change them.

use std::rc::Rc;

use sagwright_core::words::{Text, UnitChoice};
use yew::prelude::*;

use crate::browser;
use crate::state::{Action, Wizard};
use crate::words;

/// What every page finds laid out for it.
#[derive(Clone, PartialEq)]
pub struct Desk {
    /// The answers as they stood when the page was drawn.
    pub wizard: Rc<Wizard>,
    /// The way to change them.
    pub change: Callback<Action>,
}

impl Desk {
    /// Does `action`.
    pub fn act(&self, action: Action) {
        self.change.emit(action);
    }

    /// The units the rider chose.
    pub fn units(&self) -> &UnitChoice {
        &self.wizard.units
    }

    /// The sentence for `text` in the rider's units.
    pub fn tell(&self, text: &Text) -> String {
        words::tell(text, self.units())
    }
}

/// The desk. Only for components inside its provider.
#[hook]
pub fn use_desk() -> Desk {
    #[expect(
        clippy::expect_used,
        reason = "every page is drawn inside its context provider"
    )]
    use_context::<Desk>().expect("pages are drawn with a desk")
}

/// Names the page in the browser's tab; `wrong` when it shows an error.
#[hook]
pub fn use_title(heading: &str, wrong: bool) {
    let key = if wrong { "title.wrong" } else { "title.plain" };
    let text = Text::new(key).with("page", sagwright_core::words::Arg::Raw(heading.to_owned()));
    let title = words::tell(&text, &UnitChoice::default());
    use_effect_with(title, |title| browser::set_title(title));
}
