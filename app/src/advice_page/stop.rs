//! The answer when the bike is not to be ridden: no numbers, only what to do instead.

use sagwright_core::advice::StopRiding;
use sagwright_core::words::Text;
use yew::prelude::*;

use super::{Voice, signal};

/// The stop, every sign with its reason, and the cautions.
pub fn stop(voice: &Voice, stop: &StopRiding) -> Html {
    let signs = stop.signs.iter().map(|finding| {
        let sign = Text::new(format!("sign.{}", finding.sign.word()));
        html! {
            <section class="stop-sign">
                <h2>{ voice.say(&sign) }</h2>
                <p>{ voice.say(&finding.why) }</p>
                <p class="stop-instead">{ voice.say(&finding.instead) }</p>
            </section>
        }
    });
    html! {
        <>
            <section class="stop" aria-label={voice.words("advice.stop.title")}>
                <p class="stop-title">
                    <svg class="stop-mark" viewBox="0 0 24 24" width="40" height="40" aria-hidden="true">
                        <path d="M8 2 H16 L22 8 V16 L16 22 H8 L2 16 V8 Z" />
                    </svg>
                    { voice.words("advice.stop.title") }
                </p>
                <p class="verdict-sentence">{ voice.say(&stop.sentence) }</p>
            </section>
            { for signs }
            { signal::grouped(voice, &stop.cautions) }
        </>
    }
}
