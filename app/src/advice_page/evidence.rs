//! What speaks for and against a cause, with its weight in words, as a bar, and as a sentence to unfold.

use sagwright_core::advice::Evidence;
use sagwright_core::cause::belief::MOST_LOG_ODDS;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::Voice;
use super::chances::bar;

/// Where the logarithm of a likelihood ratio turns from slight to some (a factor of 2) and from some to strong (a
/// factor of 5). Judgement: few readers tell more than three grades apart.
const SOME_FROM: f64 = core::f64::consts::LN_2;
const STRONG_FROM: f64 = 1.609_437_912_434_100_4;

/// The pieces on one side under their heading; nothing where there are none.
pub fn evidence(voice: &Voice, key: &'static str, evidence: &[Evidence]) -> Html {
    if evidence.is_empty() {
        return Html::default();
    }
    let items = evidence.iter().map(|piece| one(voice, piece));
    html! {
        <div class="evidence">
            <h4>{ voice.words(key) }</h4>
            <ul>{ for items }</ul>
        </div>
    }
}

fn one(voice: &Voice, piece: &Evidence) -> Html {
    html! {
        <li>
            <details class="piece">
                <summary>
                    <span class="piece-said">{ voice.say(&piece.text) }</span>
                    <span class="piece-weight">{ voice.words(strength(piece.weight)) }</span>
                    { bar(piece.weight.abs() / MOST_LOG_ODDS) }
                </summary>
                <p class="grounds">{ voice.say(&likelier(piece.weight)) }</p>
            </details>
        </li>
    }
}

/// Key of the word for how much a piece of evidence says.
fn strength(weight: f64) -> &'static str {
    match weight.abs() {
        w if w >= STRONG_FROM => "advice.evidence.strong",
        w if w >= SOME_FROM => "advice.evidence.some",
        _ => "advice.evidence.slight",
    }
}

/// The weight as the factor it is.
fn likelier(weight: f64) -> Text {
    let key = if weight >= 0.0 {
        "advice.evidence.times-with"
    } else {
        "advice.evidence.times-without"
    };
    let factor = weight.abs().exp();
    let decimals = usize::from(factor < 10.0);
    Text::new(key).with("times", Arg::Plain(factor, decimals))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice_page::words_test::voice;

    #[test]
    fn evidence_is_graded_by_factors_of_two_and_five_either_way() {
        assert_eq!(strength(0.5), "advice.evidence.slight");
        assert_eq!(strength(-0.7), "advice.evidence.some");
        assert_eq!(strength(1.7), "advice.evidence.strong");
    }

    #[test]
    fn a_weight_is_told_as_its_factor() {
        let voice = voice();
        let told = voice.say(&likelier(4.0_f64.ln()));
        assert!(told.contains("4.0 times"), "{told}");
        let against = voice.say(&likelier(-(20.0_f64.ln())));
        assert!(against.contains("20 times"), "{against}");
        assert_ne!(told, against);
    }
}
