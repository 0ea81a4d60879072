//! "Why?": what a number rests on.

use sagwright_core::advice::{Figure, Provenance, Reason, ReasonInput};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::Voice;

/// A number with its range in words: "4.6–5.0 N/mm, most likely 4.8 N/mm", or the number alone where the range
/// reads the same.
pub fn figure(voice: &Voice, figure: &Figure) -> String {
    let value = voice.quantity(figure.value, figure.dimension);
    match range(voice, figure) {
        None => value,
        Some(range) => voice.say(
            &Text::new("advice.figure.range")
                .with("range", Arg::Raw(range))
                .with("value", Arg::Raw(value)),
        ),
    }
}

/// The range of a number, where it reads other than the number itself.
pub fn range(voice: &Voice, figure: &Figure) -> Option<String> {
    let range = voice
        .units()
        .show_span(figure.low, figure.high, figure.dimension);
    (range != voice.quantity(figure.value, figure.dimension)).then_some(range)
}

/// The folded "Why?" of a number. `name` says which number, for those who hear the page.
pub fn why(voice: &Voice, name: &str, reason: &Reason, dimension: Dimension) -> Html {
    folded(voice, name, grounds(voice, reason, dimension))
}

/// "Why?" with what it opens to.
pub fn folded(voice: &Voice, name: &str, body: Html) -> Html {
    html! {
        <details class="more why-number">
            <summary>
                { voice.words("advice.why") }
                <span class="vh">{ " " }{ name }</span>
            </summary>
            { body }
        </details>
    }
}

/// All that a number rests on: sentence, inputs, equation, source, and how far it would move.
fn grounds(voice: &Voice, reason: &Reason, dimension: Dimension) -> Html {
    let inputs = reason.inputs.iter().map(|input| input_row(voice, input));
    let moves = reason.sensitivity.iter().map(|sensitivity| {
        let text = Text::new("advice.why.moves")
            .with("supposing", sensitivity.supposing.clone().into())
            .with("change", Arg::Change(sensitivity.moves_by, dimension));
        html! { <li>{ voice.say(&text) }</li> }
    });
    let from = reason.range_from.iter().map(|part| {
        let share = Arg::Quantity(part.share, Dimension::Share);
        let text = Text::new("advice.why.range.part")
            .with("what", part.name.clone().into())
            .with("share", share);
        html! { <li>{ voice.say(&text) }</li> }
    });
    html! {
        <div class="grounds">
            <p>{ voice.say(&reason.because) }</p>
            if !reason.inputs.is_empty() {
                <table class="data inputs">
                    <caption>{ voice.words("advice.why.inputs") }</caption>
                    <thead class="vh">
                        <tr>
                            <th scope="col">{ voice.words("advice.why.input") }</th>
                            <th scope="col">{ voice.words("advice.why.value") }</th>
                            <th scope="col">{ voice.words("advice.why.known") }</th>
                        </tr>
                    </thead>
                    <tbody>{ for inputs }</tbody>
                </table>
            }
            <dl>
                <dt>{ voice.words("advice.why.equation") }</dt>
                <dd class="equation">{ voice.say(&reason.equation) }</dd>
                <dt>{ voice.words("advice.why.source") }</dt>
                <dd>{ voice.say(&reason.source) }</dd>
                if !reason.sensitivity.is_empty() {
                    <dt>{ voice.words("advice.why.otherwise") }</dt>
                    <dd><ul>{ for moves }</ul></dd>
                }
                if !reason.range_from.is_empty() {
                    <dt>{ voice.words("advice.why.range") }</dt>
                    <dd><ul>{ for from }</ul></dd>
                }
            </dl>
        </div>
    }
}

fn input_row(voice: &Voice, input: &ReasonInput) -> Html {
    html! {
        <tr>
            <th scope="row">{ voice.say(&input.name) }</th>
            <td>{ voice.quantity(input.value, input.dimension) }</td>
            <td><span class="chip">{ voice.words(known(input.provenance)) }</span></td>
        </tr>
    }
}

/// Key of the words for where an input comes from.
pub const fn known(provenance: Provenance) -> &'static str {
    match provenance {
        Provenance::Given => "advice.known.given",
        Provenance::Guessed => "advice.known.guessed",
        Provenance::TypicalOfClass => "advice.known.typical",
        Provenance::Computed => "advice.known.computed",
        Provenance::Practice => "advice.known.practice",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice_page::words_test::{no_reason, voice};

    #[track_caller]
    fn reads(low: f64, value: f64, high: f64, expected: &str) {
        let number = Figure {
            value,
            low,
            high,
            dimension: Dimension::Rate,
            reason: no_reason(),
        };
        assert_eq!(figure(&voice(), &number).replace('\u{202f}', " "), expected);
    }

    #[test]
    fn a_range_is_told_only_where_it_can_be_seen() {
        reads(4600.0, 4800.0, 5000.0, "4.6–5.0 N/mm, most likely 4.8 N/mm");
        reads(4790.0, 4800.0, 4810.0, "4.8 N/mm");
    }
}
