//! Cautions with their signal words, set as ANSI Z535.6 sets them: the word leads, the colour supports it.

use sagwright_core::advice::{Caution, SignalWord};
use sagwright_core::words::Text;
use yew::prelude::*;

use super::Voice;

const fn class(signal: SignalWord) -> &'static str {
    match signal {
        SignalWord::Danger => "signal signal-danger",
        SignalWord::Warning => "signal signal-warning",
        SignalWord::Caution => "signal signal-caution",
        SignalWord::Notice => "signal signal-notice",
    }
}

/// Cautions, the gravest first, one panel per signal word and each text once.
pub fn grouped<'a>(voice: &Voice, cautions: impl IntoIterator<Item = &'a Caution>) -> Html {
    let cautions = gravest_first(cautions.into_iter());
    let panels = cautions
        .chunk_by(|one, next| one.signal == next.signal)
        .filter_map(|same| Some(panel(voice, same.first()?.signal, same)));
    html! { <>{ for panels }</> }
}

fn panel(voice: &Voice, signal: SignalWord, cautions: &[&Caution]) -> Html {
    let word = voice.words(format!("signal.{}", signal.word()));
    // The alert sign stands before words about injury only; a notice is about things.
    let alert = signal != SignalWord::Notice;
    let texts = cautions.iter().map(|one| {
        html! { <p>{ voice.say(&one.text) }</p> }
    });
    html! {
        <div class={class(signal)} role="note">
            <p class="signal-word">
                if alert {
                    <svg class="signal-sign" viewBox="0 0 24 22" width="24" height="22" aria-hidden="true">
                        <path class="signal-sign-edge" d="M12 1 L23 21 H1 Z" />
                        <path class="signal-sign-mark" d="M12 8 V14.5 M12 16.6 V18.6" />
                    </svg>
                }
                { word }
            </p>
            <div class="signal-texts">{ for texts }</div>
        </div>
    }
}

/// Orders by gravity and drops repetitions; equals keep their order.
fn gravest_first<'a>(cautions: impl Iterator<Item = &'a Caution>) -> Vec<&'a Caution> {
    let mut seen: Vec<&Text> = Vec::new();
    let mut ordered: Vec<&Caution> = cautions
        .filter(|one| {
            let fresh = !seen.contains(&&one.text);
            if fresh {
                seen.push(&one.text);
            }
            fresh
        })
        .collect();
    ordered.sort_by_key(|one| one.signal);
    ordered
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(signal: SignalWord, key: &'static str) -> Caution {
        Caution {
            signal,
            text: Text::new(key),
        }
    }

    #[test]
    fn the_gravest_leads_and_nothing_is_said_twice() {
        let cautions = [
            one(SignalWord::Notice, "clicks"),
            one(SignalWord::Warning, "clamps"),
            one(SignalWord::Notice, "clicks"),
            one(SignalWord::Danger, "oxygen"),
        ];
        let keys: Vec<&str> = gravest_first(cautions.iter())
            .into_iter()
            .map(|one| one.text.key.as_ref())
            .collect();
        assert_eq!(keys, ["oxygen", "clamps", "clicks"]);
    }
}
