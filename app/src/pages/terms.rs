//! Words of the trade that a question needs, each explained once, on tap.

use sagwright_core::intake::Question;
use sagwright_core::words::Text;
use yew::prelude::*;

use crate::desk::Desk;
use crate::words::say;

/// A button per word; its meaning opens over the page and closes by itself, by Escape or by a tap beside it.
pub fn terms(desk: &Desk, question: Question) -> Html {
    let words = words_of(question);
    if words.is_empty() {
        return Html::default();
    }
    html! {
        <div class="terms" role="group" aria-label={say("frame.words")}>
            { for words.iter().map(|word| term(desk, word)) }
        </div>
    }
}

fn term(desk: &Desk, word: &'static str) -> Html {
    let id = format!("term-{word}");
    let name = Text::new(format!("term.{word}"));
    let asked = Text::new("frame.term").with("term", name.clone().into());
    let (name, asked) = (desk.tell(&name), desk.tell(&asked));
    html! {
        <>
            <button type="button" class="term" popovertarget={id.clone()}>{ asked }</button>
            <div class="term-card" popover="auto" id={id.clone()} role="note">
                <p><dfn>{ name }</dfn>{ ": " }{ say(&format!("term.{word}.means")) }</p>
                <button type="button" class="button" popovertarget={id} popovertargetaction="hide">
                    { say("frame.close") }
                </button>
            </div>
        </>
    }
}

/// The words on the page of a question that not every rider knows.
const fn words_of(question: Question) -> &'static [&'static str] {
    match question {
        Question::BikeClass => &["travel", "linkage", "swingarm"],
        Question::BikeFork => &["fork-leg", "damping", "clicker"],
        Question::ForkSpring | Question::ShockSpring => &["spring-rate", "preload"],
        Question::ForkGas => &["fork-leg", "gauge-pressure"],
        Question::BikeShock => &["linkage", "swingarm"],
        Question::ForkClickers => &["clicker", "damping", "compression", "rebound"],
        Question::ShockClickers => &[
            "clicker",
            "compression",
            "rebound",
            "low-speed",
            "high-speed",
        ],
        Question::ServiceHours => &["seal", "clicker"],
        Question::GroundMix => &["braking-bumps", "whoops"],
        Question::Complaints => &["bottoming", "square-edge", "travel"],
        Question::SagFront => &["sag", "fork-leg", "clamp"],
        Question::SagRear => &["sag", "swingarm"],
        Question::TravelUsed => &["travel", "seal"],
        Question::PushTest => &["friction"],
        Question::StopSigns => &["damping", "swingarm", "clamp"],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use sagwright_core::words::Book;

    use super::*;

    #[test]
    fn every_word_is_explained_and_no_explanation_is_left_over() {
        let own = Book::from_json(include_str!("../../words/en/terms.json"))
            .expect("the table is a flat object of sentences");
        let keys: BTreeSet<String> = Question::ALL
            .iter()
            .flat_map(|question| words_of(*question))
            .flat_map(|word| [format!("term.{word}"), format!("term.{word}.means")])
            .collect();
        let missing: Vec<_> = keys.iter().filter(|key| !own.has(key)).collect();
        assert!(missing.is_empty(), "not explained: {missing:?}");
        let idle: Vec<_> = own.keys().filter(|key| !keys.contains(*key)).collect();
        assert!(idle.is_empty(), "on no page: {idle:?}");
    }
}
