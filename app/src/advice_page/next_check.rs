//! The check to do next: why it, how long, how, and the form for its result.

use sagwright_core::advice::NextCheck;
use sagwright_core::words::Arg;
use yew::prelude::*;

use super::price::minutes;
use super::{Voice, signal};

/// The check with its cautions before it. The heading has an id and a name; `aside` puts the check off, `form` takes its
/// result.
pub fn next_check(
    voice: &Voice,
    check: &NextCheck,
    (id, name): (&'static str, String),
    aside: Html,
    form: Html,
) -> Html {
    let time = minutes(voice, check.minutes);
    let reading = voice.words("advice.check.reading");
    html! {
        <>
            <h3 {id} tabindex="-1">{ name }</h3>
            <p class="check-why">{ voice.say(&check.why) }</p>
            <div class="check-now">
                <span class="chip">{ voice.with("advice.check.takes", "time", Arg::Raw(time)) }</span>
                { aside }
            </div>
            { signal::grouped(voice, &check.cautions) }
            <p class="check-what">{ voice.say(&check.what) }</p>
            // A look or a lap is judged by it; a number is only typed in.
            <details class="more" open={check.question.is_none()}>
                <summary>{ reading }</summary>
                <p class="grounds">{ voice.say(&check.reading) }</p>
            </details>
            { form }
        </>
    }
}
