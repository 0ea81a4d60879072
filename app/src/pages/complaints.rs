//! What is wrong, in riders' words, grouped by what the bike is doing.

use sagwright_core::intake::{Feeling, Question};
use yew::prelude::*;

use crate::desk::use_desk;
use crate::inputs::{Radios, Tick};
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
#[component]
pub fn Complaints() -> Html {
    let desk = use_desk();
    let groups = BY_MOMENT
        .iter()
        .enumerate()
        .map(|(at, (legend, feelings))| {
            let ticks = feelings.iter().enumerate().map(|(index, feeling)| {
                let id = (at == 0 && index == 0).then_some("first-answer");
                html! { <Felt feeling={*feeling} {id} /> }
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
    html! {
        <>
            { for groups }
            <p class="or">{ say("input.or") }</p>
            <div class="rows">
                <Tick
                    key_of_label="complaints.nothing"
                    ticked={nothing.is_some_and(Vec::is_empty)}
                    changed={Callback::from(move |so| calm.act(Action::NothingWrong(so)))}
                />
                <Tick
                    key_of_label="complaints.dont-know"
                    ticked={desk.wizard.is_passed(page)}
                    changed={Callback::from(move |so| unknown.act(Action::DontKnow(page, so)))}
                />
            </div>
        </>
    }
}

#[derive(PartialEq, Properties)]
struct FeltProps {
    feeling: Feeling,
    #[prop_or_default]
    id: Option<&'static str>,
}

/// One sentence to tick; once it is, how bad it is is one more tap.
#[component]
fn Felt(props: &FeltProps) -> Html {
    let desk = use_desk();
    let feeling = props.feeling;
    let felt = desk.wizard.complaint(feeling).is_some();
    let act = desk.clone();
    html! {
        <div class={classes!("felt", felt.then_some("felt-so"))}>
            <Tick
                key_of_label={format!("complaint.{}", feeling.word())}
                ticked={felt}
                id={props.id}
                changed={Callback::from(move |so| act.act(Action::Feel(feeling, so)))}
            />
            if felt {
                <Radios
                    slot={Slot::Detail(feeling, Aspect::Severity)}
                    legend={say("detail.severity")}
                    open_ended=false
                />
            }
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
