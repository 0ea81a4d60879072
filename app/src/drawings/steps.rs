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
    Bike(fn() -> String),
    /// Drawn on a whole bike with somebody on or beside it, who needs headroom.
    Rider(fn() -> String),
    /// Drawn by hand, in `app/drawings/`, so high.
    Sheet(&'static str, u16),
}

impl Drawing {
    const fn bike(word: &'static str, draw: fn() -> String) -> Self {
        let source = Source::Bike(draw);
        Self { word, source }
    }

    const fn rider(word: &'static str, draw: fn() -> String) -> Self {
        let source = Source::Rider(draw);
        Self { word, source }
    }

    const fn sheet(word: &'static str, svg: &'static str, height: u16) -> Self {
        let source = Source::Sheet(svg, height);
        Self { word, source }
    }

    /// What it shows of its plane; all are equally wide, so that strokes are equally heavy.
    pub fn view_box(&self) -> AttrValue {
        match self.source {
            Source::Bike(_) => "-440 -1500 2720 1540".into(),
            Source::Rider(_) => "-440 -1900 2720 1940".into(),
            Source::Sheet(_, height) => format!("0 0 2720 {height}").into(),
        }
    }

    /// The elements of the drawing.
    pub fn svg(&self) -> AttrValue {
        match self.source {
            Source::Bike(draw) | Source::Rider(draw) => draw().into(),
            Source::Sheet(svg, _) => svg.into(),
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
    ($word:literal, $height:literal) => {
        Drawing::sheet(
            $word,
            include_str!(concat!("../../drawings/", $word, ".svg")),
            $height,
        )
    };
}

const CLICKER_IN: Drawing = sheet!("clicker-in", 1940);
const CLICKER_OUT: Drawing = sheet!("clicker-out", 1940);
const CLICKER_BACK: Drawing = sheet!("clicker-back", 1940);
const QUARTER_TURN: Drawing = sheet!("quarter-turn", 1940);
const FORK_TOPS: Drawing = sheet!("fork-tops", 1420);
const FORK_VALVE: Drawing = sheet!("fork-valve", 1420);
const FORK_BOTH_CLICKERS: Drawing = sheet!("fork-both-clickers", 1420);
const SPRING_RATE: Drawing = sheet!("spring-rate", 1940);
const SPRING_PRELOAD: Drawing = sheet!("spring-preload", 1940);
const GAS_LIMIT: Drawing = sheet!("gas-limit", 1940);
const GAS_BELOW: Drawing = sheet!("gas-below", 1940);
const MARKER_SET: Drawing = sheet!("marker-set", 1940);
const MARKER_READ: Drawing = sheet!("marker-read", 1940);
const TYRE_GAUGE: Drawing = sheet!("tyre-gauge", 1940);
const GAS_PUMP: Drawing = Drawing::rider("gas-pump", scenes::pump);
const LEVERS: Drawing = Drawing::bike("shock-levers", || {
    scenes::rear_end(BikeClass::EnduroLinkage)
});
const STRAIGHT: Drawing = Drawing::bike("shock-straight", || {
    scenes::rear_end(BikeClass::EnduroLinkless)
});
const FRONT_HANGING: Drawing =
    Drawing::bike("front-hanging", || scenes::sag(End::Front, Load::Hanging));
const FRONT_ALONE: Drawing = Drawing::bike("front-alone", || scenes::sag(End::Front, Load::Alone));
const FRONT_RIDDEN: Drawing =
    Drawing::rider("front-ridden", || scenes::sag(End::Front, Load::Ridden));
const REAR_HANGING: Drawing =
    Drawing::bike("rear-hanging", || scenes::sag(End::Rear, Load::Hanging));
const REAR_ALONE: Drawing = Drawing::bike("rear-alone", || scenes::sag(End::Rear, Load::Alone));
const REAR_RIDDEN: Drawing = Drawing::rider("rear-ridden", || scenes::sag(End::Rear, Load::Ridden));
const PUSH_FRONT: Drawing = Drawing::rider("push-front", || scenes::push_test(End::Front));
const PUSH_REAR: Drawing = Drawing::rider("push-rear", || scenes::push_test(End::Rear));

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
        let own = Book::from_json(include_str!("../../words/en/drawings.json"))
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
