//! More about one complaint: how bad, when, since when, and which end for those who can tell.

use sagwright_core::intake::{Feeling, Phase};
use yew::prelude::*;

use crate::desk::use_desk;
use crate::inputs::{Radios, Tick};
use crate::state::{Action, Aspect, CANNOT_SAY, Slot, label};
use crate::words::say;

/// One complaint.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Which.
    pub feeling: Feeling,
}

/// The four groups.
#[component]
pub fn Detail(props: &Props) -> Html {
    let feeling = props.feeling;
    let picked = |aspect: Aspect, first: bool| {
        let slot = Slot::Detail(feeling, aspect);
        let legend = say(&format!("detail.{}", slot.family()));
        html! { <Radios {slot} {legend} {first} /> }
    };
    html! {
        <div class="groups">
            { picked(Aspect::Severity, true) }
            <Phases {feeling} />
            { picked(Aspect::Since, false) }
            { picked(Aspect::End, false) }
        </div>
    }
}

/// When it happens; several moments may be ticked.
#[component]
fn Phases(props: &Props) -> Html {
    let desk = use_desk();
    let feeling = props.feeling;
    let ticks = Phase::ALL.iter().map(|phase| {
        let phase = *phase;
        let complaint = desk.wizard.complaint(feeling);
        let act = desk.clone();
        html! {
            <Tick
                key_of_label={format!("phase.{}", phase.word())}
                ticked={complaint.is_some_and(|c| c.phases.contains(&phase))}
                changed={Callback::from(move |so| act.act(Action::When(feeling, phase, so)))}
            />
        }
    });
    let slot = Slot::Detail(feeling, Aspect::Phases);
    let unknown = desk.clone();
    let cannot_say = Callback::from(move |so: bool| {
        let word = if so { CANNOT_SAY } else { "" };
        unknown.act(Action::Pick(slot, word));
    });
    html! {
        <fieldset class="group">
            <legend>{ say("detail.phases") }</legend>
            <div class="rows">{ for ticks }</div>
            <p class="or">{ say("input.or") }</p>
            <Tick
                key_of_label={label(slot, CANNOT_SAY).key.into_owned()}
                ticked={slot.get(&desk.wizard) == Some(CANNOT_SAY)}
                changed={cannot_say}
            />
        </fieldset>
    }
}
