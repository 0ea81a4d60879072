//! Which drawing shows which step of finding something out.

use sagwright_core::intake::{BikeClass, End, Question};
use yew::AttrValue;

use super::scenes::{self, Load};

/// One drawing.
#[derive(Debug, Clone, Copy)]
pub struct Drawing {
    /// Its word in the text keys: `drawing.<word>` names it, `drawing.<word>.what` says what it shows.
    pub word: &'static str,
    source: Source,
}

#[derive(Debug, Clone, Copy)]
enum Source {
    /// Drawn on a whole bike.
    Scene(fn() -> String),
    /// Drawn by hand, in `app/drawings/`.
    Sheet(&'static str),
}

impl Drawing {
    const fn scene(word: &'static str, draw: fn() -> String) -> Self {
        let source = Source::Scene(draw);
        Self { word, source }
    }

    const fn sheet(word: &'static str, svg: &'static str) -> Self {
        let source = Source::Sheet(svg);
        Self { word, source }
    }

    /// What it shows of its plane; both kinds have the same shape on the page.
    pub const fn view_box(&self) -> &'static str {
        match self.source {
            Source::Scene(_) => "-440 -1900 2720 1940",
            Source::Sheet(_) => "0 0 2720 1940",
        }
    }

    /// The elements of the drawing.
    pub fn svg(&self) -> AttrValue {
        match self.source {
            Source::Scene(draw) => draw().into(),
            Source::Sheet(svg) => svg.into(),
        }
    }
}

/// Equal when they are the same drawing.
impl PartialEq for Drawing {
    fn eq(&self, other: &Self) -> bool {
        self.word == other.word
    }
}

macro_rules! sheet {
    ($word:literal) => {
        Drawing::sheet(
            $word,
            include_str!(concat!("../../drawings/", $word, ".svg")),
        )
    };
}

const CLICKER_IN: Drawing = sheet!("clicker-in");
const CLICKER_OUT: Drawing = sheet!("clicker-out");
const CLICKER_BACK: Drawing = sheet!("clicker-back");
const QUARTER_TURN: Drawing = sheet!("quarter-turn");
const FORK_TOPS: Drawing = sheet!("fork-tops");
const FORK_VALVE: Drawing = sheet!("fork-valve");
const FORK_BOTH_CLICKERS: Drawing = sheet!("fork-both-clickers");
const SPRING_RATE: Drawing = sheet!("spring-rate");
const SPRING_PRELOAD: Drawing = sheet!("spring-preload");
const GAS_LIMIT: Drawing = sheet!("gas-limit");
const GAS_BELOW: Drawing = sheet!("gas-below");
const MARKER_SET: Drawing = sheet!("marker-set");
const MARKER_READ: Drawing = sheet!("marker-read");
const TYRE_GAUGE: Drawing = sheet!("tyre-gauge");
const GAS_PUMP: Drawing = Drawing::scene("gas-pump", scenes::pump);
const LEVERS: Drawing = Drawing::scene("shock-levers", || {
    scenes::rear_end(BikeClass::EnduroLinkage)
});
const STRAIGHT: Drawing = Drawing::scene("shock-straight", || {
    scenes::rear_end(BikeClass::EnduroLinkless)
});
const FRONT_HANGING: Drawing =
    Drawing::scene("front-hanging", || scenes::sag(End::Front, Load::Hanging));
const FRONT_ALONE: Drawing = Drawing::scene("front-alone", || scenes::sag(End::Front, Load::Alone));
const FRONT_RIDDEN: Drawing =
    Drawing::scene("front-ridden", || scenes::sag(End::Front, Load::Ridden));
const REAR_HANGING: Drawing =
    Drawing::scene("rear-hanging", || scenes::sag(End::Rear, Load::Hanging));
const REAR_ALONE: Drawing = Drawing::scene("rear-alone", || scenes::sag(End::Rear, Load::Alone));
const REAR_RIDDEN: Drawing = Drawing::scene("rear-ridden", || scenes::sag(End::Rear, Load::Ridden));
const PUSH_FRONT: Drawing = Drawing::scene("push-front", || scenes::push_test(End::Front));
const PUSH_REAR: Drawing = Drawing::scene("push-rear", || scenes::push_test(End::Rear));

/// The drawings of a question, one per line of its `ask.<question>.how`; empty where there is nothing to show.
pub fn steps(question: Question) -> &'static [Option<Drawing>] {
    match question {
        Question::BikeFork => &[Some(FORK_TOPS), Some(FORK_VALVE), Some(FORK_BOTH_CLICKERS)],
        Question::ForkSpring => &[Some(SPRING_RATE), None],
        Question::ForkGas => &[Some(GAS_PUMP), Some(GAS_LIMIT), Some(GAS_BELOW)],
        Question::BikeShock => &[None, Some(LEVERS), Some(STRAIGHT)],
        Question::ShockSpring => &[Some(SPRING_RATE), Some(SPRING_PRELOAD)],
        Question::ForkClickers => &[Some(CLICKER_IN), Some(CLICKER_OUT), Some(CLICKER_BACK)],
        Question::ShockClickers => &[Some(CLICKER_IN), Some(QUARTER_TURN), Some(CLICKER_BACK)],
        Question::SagFront => &[Some(FRONT_HANGING), Some(FRONT_ALONE), Some(FRONT_RIDDEN)],
        Question::SagRear => &[Some(REAR_HANGING), Some(REAR_ALONE), Some(REAR_RIDDEN)],
        Question::TravelUsed => &[Some(MARKER_SET), Some(MARKER_READ)],
        Question::TyrePressures => &[None, Some(TYRE_GAUGE)],
        Question::PushTest => &[None, Some(PUSH_FRONT), Some(PUSH_REAR)],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use sagwright_core::words::Book;

    use super::*;
    use crate::words::{book, say_if_any};

    #[test]
    fn every_step_of_a_how_to_has_its_place() {
        for question in Question::ALL {
            let how = say_if_any(&format!("ask.{}.how", question.word()));
            let lines = how.map_or(0, |how| how.lines().count());
            let drawn = steps(*question).len();
            assert_eq!(drawn, lines, "{question:?}");
        }
    }

    #[test]
    fn every_drawing_is_named_and_described_and_no_words_are_left_over() {
        let mut keys = BTreeSet::new();
        for drawing in Question::ALL.iter().flat_map(|q| steps(*q)).flatten() {
            keys.insert(format!("drawing.{}", drawing.word));
            keys.insert(format!("drawing.{}.what", drawing.word));
        }
        let book = book();
        let missing: Vec<_> = keys.iter().filter(|key| !book.has(key)).collect();
        assert!(missing.is_empty(), "without words: {missing:?}");
        let own = Book::from_json(include_str!("../../words/en-drawings.json"))
            .expect("the table is a flat object of sentences");
        let idle: Vec<_> = own.keys().filter(|key| !keys.contains(*key)).collect();
        assert!(idle.is_empty(), "never drawn: {idle:?}");
    }

    #[test]
    fn every_drawing_is_made_of_whole_elements() {
        for drawing in Question::ALL.iter().flat_map(|q| steps(*q)).flatten() {
            let svg = drawing.svg();
            let word = drawing.word;
            assert!(
                svg.trim_start().starts_with('<'),
                "{word} begins with no element"
            );
            assert!(
                !svg.contains("NaN") && !svg.contains("inf"),
                "{word} has no place"
            );
            let opened = svg.matches("<text").count();
            assert_eq!(opened, svg.matches("</text>").count(), "{word}");
            // The policy of the site allows no styles inside a page.
            assert!(!svg.contains("style="), "{word} brings its own style");
            assert!(!svg.contains(" id="), "{word} could clash with another");
        }
    }
}
