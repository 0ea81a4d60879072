//! One answer out of several, as rows wide enough for a thumb.

use yew::prelude::*;

use crate::desk::{Desk, use_desk};
use crate::drawings::beside_answer;
use crate::hosted;
use crate::shell::HEADING;
use crate::state::{Action, CANNOT_SAY, Slot, label};
use crate::words::say_if_any;

/// One group.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// What is picked.
    pub slot: Slot,
    /// What the group asks; without it the page's heading does.
    #[prop_or_default]
    pub legend: Option<String>,
    /// Whether the page's errors lead here.
    #[prop_or_default]
    pub first: bool,
    /// Whether "I don't know" is among the options.
    #[prop_or(true)]
    pub open_ended: bool,
    /// Short options side by side.
    #[prop_or_default]
    pub short: bool,
    /// The element that says that the answer is missing, when it is.
    #[prop_or_default]
    pub described_by: Option<&'static str>,
}

/// The group, nothing picked until the rider picks.
#[component]
pub fn Radios(props: &Props) -> Html {
    let desk = use_desk();
    let picked = props.slot.get(&desk.wizard);
    // What was picked stays to be seen, whatever a workshop offers.
    let offered = |word: &&&str| hosted::offers(props.slot, word) || picked == Some(**word);
    let words = props.slot.words();
    let rows = words
        .iter()
        .filter(offered)
        .enumerate()
        .map(|(index, word)| {
            let id = (props.first && index == 0).then_some("first-answer");
            row(&desk, props.slot, word, id)
        });
    let labelled_by = props.legend.is_none().then_some(HEADING);
    html! {
        <fieldset
            class={classes!("group", props.short.then_some("group-short"))}
            aria-labelledby={labelled_by}
            aria-describedby={props.described_by}
            aria-invalid={props.described_by.is_some().then_some("true")}
            role="radiogroup"
        >
            if let Some(legend) = &props.legend { <legend>{ legend }</legend> }
            <div class="rows">{ for rows }</div>
            if props.open_ended {
                <p class="or">{ crate::words::say("input.or") }</p>
                { row(&desk, props.slot, CANNOT_SAY, None) }
            }
        </fieldset>
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
