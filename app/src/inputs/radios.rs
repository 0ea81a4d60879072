//! One answer out of several, as rows wide enough for a thumb.

use yew::prelude::*;

use crate::desk::Desk;
use crate::drawings::beside_answer;
use crate::hosted;
use crate::shell::HEADING;
use crate::state::{Action, CANNOT_SAY, Slot, label};
use crate::words::say_if_any;

/// One group.
pub struct Radios {
    /// What is picked.
    pub slot: Slot,
    /// What the group asks; without it the page's heading does.
    pub legend: Option<String>,
    /// Whether the page's errors lead here.
    pub first: bool,
    /// Whether "I don't know" is among the options.
    pub open_ended: bool,
    /// Short options side by side.
    pub short: bool,
    /// The element that says that the answer is missing, when it is.
    pub described_by: Option<&'static str>,
}

impl Radios {
    /// A group under the page's heading, its rows one below the other and "I don't know" the last.
    pub const fn of(slot: Slot) -> Self {
        Self {
            slot,
            legend: None,
            first: false,
            open_ended: true,
            short: false,
            described_by: None,
        }
    }

    /// The same under a name of its own.
    pub fn named(slot: Slot, legend: String) -> Self {
        Self {
            legend: Some(legend),
            ..Self::of(slot)
        }
    }

    /// The group, nothing picked until the rider picks.
    pub fn draw(&self, desk: &Desk) -> Html {
        let picked = self.slot.get(&desk.wizard);
        // What was picked stays to be seen, whatever a workshop offers.
        let offered = |word: &&&str| hosted::offers(self.slot, word) || picked == Some(**word);
        let words = self.slot.words();
        let rows = words
            .iter()
            .filter(offered)
            .enumerate()
            .map(|(index, word)| {
                let id = (self.first && index == 0).then_some("first-answer");
                row(desk, self.slot, word, id)
            });
        let labelled_by = self.legend.is_none().then_some(HEADING);
        html! {
            <fieldset
                class={classes!("group", self.short.then_some("group-short"))}
                aria-labelledby={labelled_by}
                aria-describedby={self.described_by}
                aria-invalid={self.described_by.is_some().then_some("true")}
                role="radiogroup"
            >
                if let Some(legend) = &self.legend { <legend>{ legend }</legend> }
                <div class="rows">{ for rows }</div>
                if self.open_ended {
                    <p class="or">{ crate::words::say("input.or") }</p>
                    { row(desk, self.slot, CANNOT_SAY, None) }
                }
            </fieldset>
        }
    }
}

fn row(desk: &Desk, slot: Slot, word: &'static str, id: Option<&'static str>) -> Html {
    let text = label(slot, word);
    let hint = say_if_any(&format!("{}.hint", text.key));
    let picture = beside_answer(slot, word);
    let checked = slot.get(&desk.wizard) == Some(word);
    let changed = desk.clone();
    let onchange = Callback::from(move |_: Event| changed.act(Action::Pick(slot, word)));
    html! {
        <label class="row">
            <input type="radio" {id} name={slot.id()} value={word} {checked} {onchange} />
            <span class="row-text">
                { desk.tell(&text) }
                if let Some(hint) = hint { <span class="row-hint">{ hint }</span> }
            </span>
            { picture }
        </label>
    }
}
