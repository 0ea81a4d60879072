//! The proposal: what to change, from where to where, which way, what to ride and what to feel.

use sagwright_core::advice::{LapMove, NextLap, put_back};
use sagwright_core::intake::{Change, Intake};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::log::Press;
use crate::advice_page::{Voice, cautions as signals};

/// The heading of a proposal; the focus goes there when another is offered.
pub const PROPOSAL: &str = "lap-proposal";

/// A change to make, with what to take back before it.
pub fn proposal(
    voice: &Voice,
    lap: &NextLap,
    (intake, back): (&Intake, &[Change]),
    press: &Callback<Press>,
) -> Html {
    let change = lap.change;
    let number = Arg::Count(i64::try_from(intake.tried.len() + 1).unwrap_or(i64::MAX));
    html! {
        <section class="lap" aria-labelledby={PROPOSAL}>
            <p class="lap-number">{ voice.with("track.lap", "number", number) }</p>
            { back_first(voice, intake, back) }
            <h2 id={PROPOSAL} class="lap-what" tabindex="-1">{ voice.say(&lap.what) }</h2>
            { for lap.moves.iter().map(|one| from_to(voice, one)) }
            <p>{ voice.say(&lap.turn) }</p>
            if let Some(caution) = &lap.caution { { signals(voice, [caution]) } }
            <p>{ voice.say(&lap.ride) }</p>
            <p class="lap-feel">{ voice.say(&lap.feel) }</p>
            <div class="lap-buttons">
                <button type="button" class="button button-main" onclick={press.reform(move |_: MouseEvent| Press::Ridden(change))}>
                    { voice.words("track.ridden") }
                </button>
                <button type="button" class="button" onclick={press.reform(move |_: MouseEvent| Press::PutAside(change))}>
                    { voice.words("track.cannot") }
                </button>
            </div>
            <p class="lap-why">{ voice.say(&lap.why) }</p>
        </section>
    }
}

/// What went for the last lap only has to go before the next one: never two changes at once.
pub fn back_first(voice: &Voice, intake: &Intake, back: &[Change]) -> Html {
    let items = back.iter().map(|change| {
        let what = Text::new(format!("lap.do.{}", change.word()));
        let moved = put_back(intake, *change);
        html! {
            <li>
                { voice.with("track.back-first", "what", what.into()) }
                { for moved.iter().map(|one| from_to(voice, one)) }
            </li>
        }
    });
    html! { if !back.is_empty() { <ul class="lap-back">{ for items }</ul> } }
}

/// One number before and after.
pub fn from_to(voice: &Voice, moved: &LapMove) -> Html {
    let (Some(from), Some(to)) = (moved.from, moved.to) else {
        let told = voice.with("track.uncounted", "what", moved.label.clone().into());
        return html! { <p>{ told }</p> };
    };
    html! {
        <p class="lap-move">
            <span class="lap-label">{ voice.say(&moved.label) }</span>
            <span class="lap-numbers">
                { voice.quantity(from, moved.dimension) }
                <span aria-hidden="true">{ " → " }</span>
                <span class="vh">{ voice.words("advice.effect.to") }</span>
                <strong>{ voice.quantity(to, moved.dimension) }</strong>
            </span>
        </p>
    }
}
