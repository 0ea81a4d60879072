//! The check to do next, and the way to enter what it shows.

use sagwright_core::advice::NextCheck;
use sagwright_core::intake::Question;
use sagwright_core::words::Arg;
use yew::prelude::*;

use super::contents::{Part, heading};
use super::price::minutes;
use super::{Voice, signal};

/// The check with its cautions before it.
pub fn next_check(voice: &Voice, check: &NextCheck, on_question: &Callback<Question>) -> Html {
    let time = minutes(voice, check.minutes);
    html! {
        <section class="part check">
            { heading(voice, Part::Check) }
            <p class="check-why">{ voice.say(&check.why) }</p>
            <p><span class="chip">{ voice.with("advice.check.takes", "time", Arg::Raw(time)) }</span></p>
            { signal::grouped(voice, &check.cautions) }
            <p class="check-what">{ voice.say(&check.what) }</p>
            <h3>{ voice.words("advice.check.reading") }</h3>
            <p>{ voice.say(&check.reading) }</p>
            if let Some(question) = check.question {
                <button
                    type="button"
                    class="button button-main"
                    onclick={on_question.reform(move |_: MouseEvent| question)}
                >
                    { voice.words("advice.check.enter") }
                </button>
            }
        </section>
    }
}
