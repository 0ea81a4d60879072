//! What is wrong, in riders' words, grouped by what the bike is doing.

use sagwright_core::intake::{Feeling, Question};
use yew::prelude::*;

use crate::desk::Desk;
use crate::inputs::{Radios, tick};
use crate::state::{Action, Aspect, Page, Slot};
use crate::words::say;

/// The feelings by what the bike is doing, each once.
const BY_MOMENT: [(&str, &[Feeling]); 5] = [
    (
        "moment.bumps",
        &[
            Feeling::HarshSmallBumps,
            Feeling::HarshBigHits,
            Feeling::Skips,
            Feeling::Sticks,
        ],
    ),
    (
        "moment.rows",
        &[Feeling::Packs, Feeling::Kicks, Feeling::Springs],
    ),
    ("moment.big", &[Feeling::Bottoms, Feeling::RampsUp]),
    (
        "moment.turns",
        &[
            Feeling::Dives,
            Feeling::Pushes,
            Feeling::Squats,
            Feeling::Wallows,
        ],
    ),
    (
        "moment.always",
        &[Feeling::Headshake, Feeling::Fades, Feeling::SitsWrong],
    ),
];

/// The list, and the two answers that stand alone.
pub fn complaints(desk: &Desk) -> Html {
    let groups = BY_MOMENT
        .iter()
        .enumerate()
        .map(|(at, (legend, feelings))| {
            let ticks = feelings.iter().enumerate().map(|(index, feeling)| {
                let id = (at == 0 && index == 0).then_some("first-answer");
                felt(desk, *feeling, id)
            });
            html! {
                <fieldset class="group">
                    <legend>{ say(legend) }</legend>
                    <div class="rows">{ for ticks }</div>
                </fieldset>
            }
        });
    let nothing = desk.wizard.intake.complaints.as_ref();
    let calm = desk.clone();
    let unknown = desk.clone();
    let page = Page::Ask(Question::Complaints);
    let nothing = tick(
        "complaints.nothing",
        nothing.is_some_and(Vec::is_empty),
        None,
        move |so| calm.act(Action::NothingWrong(so)),
    );
    let unknown = tick(
        "complaints.dont-know",
        desk.wizard.is_passed(page),
        None,
        move |so| unknown.act(Action::DontKnow(page, so)),
    );
    html! {
        <>
            { for groups }
            <p class="or">{ say("input.or") }</p>
            <div class="rows">
                { nothing }
                { unknown }
            </div>
        </>
    }
}

/// One sentence to tick; once it is, how bad it is is one more tap.
fn felt(desk: &Desk, feeling: Feeling, id: Option<&'static str>) -> Html {
    let felt = desk.wizard.complaint(feeling).is_some();
    let act = desk.clone();
    let so = tick(
        &format!("complaint.{}", feeling.word()),
        felt,
        id,
        move |so| act.act(Action::Feel(feeling, so)),
    );
    let severity = felt.then(|| {
        let slot = Slot::Detail(feeling, Aspect::Severity);
        let group = Radios {
            open_ended: false,
            ..Radios::named(slot, say("detail.severity"))
        };
        group.draw(desk)
    });
    html! {
        <div class={classes!("felt", felt.then_some("felt-so"))}>
            { so }
            { for severity }
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_feeling_is_offered_once() {
        let mut offered: Vec<Feeling> = BY_MOMENT.iter().flat_map(|(_, f)| *f).copied().collect();
        offered.sort();
        assert_eq!(offered, Feeling::ALL);
    }
}
