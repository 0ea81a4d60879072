//! More about one complaint: how bad, when, since when, and which end for those who can tell.

use sagwright_core::intake::{Feeling, Phase};
use yew::prelude::*;

use crate::desk::Desk;
use crate::inputs::{Radios, tick};
use crate::state::{Action, Aspect, CANNOT_SAY, Slot, label};
use crate::words::say;

/// The four groups.
pub fn detail(desk: &Desk, feeling: Feeling) -> Html {
    let picked = |aspect: Aspect, first: bool| {
        let slot = Slot::Detail(feeling, aspect);
        let legend = say(&format!("detail.{}", slot.family()));
        let group = Radios {
            first,
            ..Radios::named(slot, legend)
        };
        group.draw(desk)
    };
    html! {
        <div class="groups">
            { picked(Aspect::Severity, true) }
            { phases(desk, feeling) }
            { picked(Aspect::Since, false) }
            { picked(Aspect::End, false) }
        </div>
    }
}

/// When it happens; several moments may be ticked.
fn phases(desk: &Desk, feeling: Feeling) -> Html {
    let ticks = Phase::ALL.iter().map(|phase| {
        let phase = *phase;
        let complaint = desk.wizard.complaint(feeling);
        let act = desk.clone();
        tick(
            &format!("phase.{}", phase.word()),
            complaint.is_some_and(|c| c.phases.contains(&phase)),
            None,
            move |so| act.act(Action::When(feeling, phase, so)),
        )
    });
    let slot = Slot::Detail(feeling, Aspect::Phases);
    let unknown = desk.clone();
    let cannot_say = tick(
        &label(slot, CANNOT_SAY).key,
        slot.get(&desk.wizard) == Some(CANNOT_SAY),
        None,
        move |so| {
            let word = if so { CANNOT_SAY } else { "" };
            unknown.act(Action::Pick(slot, word));
        },
    );
    html! {
        <fieldset class="group">
            <legend>{ say("detail.phases") }</legend>
            <div class="rows">{ for ticks }</div>
            <p class="or">{ say("input.or") }</p>
            { cannot_say }
        </fieldset>
    }
}
