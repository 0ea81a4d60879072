//! The causes, most likely first, each with what speaks for and against it.

use sagwright_core::advice::{CauseFinding, Evidence};
use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use super::Voice;
use super::contents::{Part, heading};

/// How many causes are told in full; the others are listed.
const IN_FULL: usize = 5;

/// Where the logarithm of a likelihood ratio turns from weak to fair (a factor of 2) and from fair to strong (a
/// factor of 5). Judgement: few readers tell more than three grades apart.
const FAIR_FROM: f64 = core::f64::consts::LN_2;
const STRONG_FROM: f64 = 1.609_437_912_434_100_4;

/// The ranked causes.
pub fn causes(voice: &Voice, causes: &[CauseFinding]) -> Html {
    let (leading, others) = causes.split_at(causes.len().min(IN_FULL));
    let leading = leading
        .iter()
        .enumerate()
        .map(|(rank, cause)| in_full(voice, rank, cause));
    html! {
        <section class="part">
            { heading(voice, Part::Causes) }
            <p>{ voice.words("advice.causes.lead") }</p>
            <ol class="causes">{ for leading }</ol>
            if !others.is_empty() {
                <details class="more">
                    <summary>{ voice.words("advice.causes.others") }</summary>
                    { listed(voice, others) }
                </details>
            }
        </section>
    }
}

/// One cause; the leading one unfolded, because it is what the answer rests on.
fn in_full(voice: &Voice, rank: usize, cause: &CauseFinding) -> Html {
    html! {
        <li class="cause">
            <h3><span class="cause-name">{ voice.say(&cause.name) }</span></h3>
            <p class="cause-chance">
                <span>{ voice.say(&cause.chance) }</span>
                <span>{ voice.quantity(cause.probability, Dimension::Share) }</span>
            </p>
            { bar(cause.probability) }
            <p>{ voice.say(&cause.what) }</p>
            <details class="more" open={rank == 0}>
                <summary>
                    { voice.words("advice.cause.more") }
                    <span class="vh">{ " " }{ voice.say(&cause.name) }</span>
                </summary>
                <div class="cause-more">
                    <div class="weighed">
                        { evidence(voice, "advice.evidence.for", &cause.evidence_for) }
                        { evidence(voice, "advice.evidence.against", &cause.evidence_against) }
                    </div>
                    <dl>
                        <dt>{ voice.words("advice.cause.feel") }</dt>
                        <dd>{ voice.say(&cause.feel) }</dd>
                        <dt>{ voice.words("advice.cause.confirm") }</dt>
                        <dd>{ voice.say(&cause.confirm) }</dd>
                        <dt>{ voice.words("advice.cause.cures") }</dt>
                        <dd>{ voice.say(&cause.cures) }</dd>
                    </dl>
                </div>
            </details>
        </li>
    }
}

/// A bar as long as a share. The number stands beside it, so it is drawn for the eye only.
pub fn bar(share: f64) -> Html {
    let length = (share.clamp(0.0, 1.0) * 100.0).to_string();
    html! {
        <svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
            <rect class="bar-whole" x="0" y="0" width="100" height="10" />
            <rect class="bar-part" x="0" y="0" width={length} height="10" />
        </svg>
    }
}

fn evidence(voice: &Voice, key: &'static str, evidence: &[Evidence]) -> Html {
    if evidence.is_empty() {
        return Html::default();
    }
    let items = evidence.iter().map(|piece| {
        html! {
            <li>
                { voice.say(&piece.text) }
                <span class="hint">{ " " }{ voice.words(strength(piece.weight)) }</span>
            </li>
        }
    });
    html! {
        <div class="evidence">
            <h4>{ voice.words(key) }</h4>
            <ul>{ for items }</ul>
        </div>
    }
}

/// Key of the word for how much a piece of evidence says.
fn strength(weight: f64) -> &'static str {
    match weight.abs() {
        w if w >= STRONG_FROM => "advice.evidence.strong",
        w if w >= FAIR_FROM => "advice.evidence.fair",
        _ => "advice.evidence.weak",
    }
}

fn listed(voice: &Voice, causes: &[CauseFinding]) -> Html {
    let rows = causes.iter().map(|cause| {
        html! {
            <tr>
                <th scope="row">{ voice.say(&cause.name) }</th>
                <td>{ voice.say(&cause.chance) }</td>
            </tr>
        }
    });
    html! {
        <table class="data">
            <thead class="vh">
                <tr>
                    <th scope="col">{ voice.words("advice.causes.cause") }</th>
                    <th scope="col">{ voice.words("advice.causes.chance") }</th>
                </tr>
            </thead>
            <tbody>{ for rows }</tbody>
        </table>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn evidence_is_graded_by_factors_of_two_and_five_either_way() {
        assert_eq!(strength(0.5), "advice.evidence.weak");
        assert_eq!(strength(-0.7), "advice.evidence.fair");
        assert_eq!(strength(1.7), "advice.evidence.strong");
    }
}
