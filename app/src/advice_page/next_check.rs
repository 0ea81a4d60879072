//! The check to do next: why it, how long, how, and the form for its result.

use sagwright_core::advice::NextCheck;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::price::minutes;
use super::{Voice, signal};

/// The check with its cautions before it. `id` names its heading, `form` takes its result.
pub fn next_check(voice: &Voice, check: &NextCheck, id: &'static str, form: Html) -> Html {
    let time = minutes(voice, check.minutes);
    let name = check
        .question
        .map(|question| voice.say(&Text::new(format!("answers.{}", question.word()))));
    let reading = voice.words("advice.check.reading");
    html! {
        <>
            <h3 {id} tabindex="-1">
                { name.unwrap_or_else(|| voice.words("advice.check.lap")) }
            </h3>
            <p class="check-why">{ voice.say(&check.why) }</p>
            <p><span class="chip">{ voice.with("advice.check.takes", "time", Arg::Raw(time)) }</span></p>
            { signal::grouped(voice, &check.cautions) }
            <p class="check-what">{ voice.say(&check.what) }</p>
            { form }
            <details class="more">
                <summary>{ reading }</summary>
                <p class="grounds">{ voice.say(&check.reading) }</p>
            </details>
        </>
    }
}
