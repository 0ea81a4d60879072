//! How to find an answer out, step by step, with drawings.

use sagwright_core::intake::Question;
use yew::prelude::*;

use crate::browser;
use crate::drawings::{Drawing, step_drawing, steps};
use crate::words::{say, say_if_any};

/// Which question.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The question whose answer is to be found out.
    pub question: Question,
}

/// The steps, unfolded where there is room for them beside the answers; nothing where there is nothing to find out.
#[component]
pub fn HowTo(props: &Props) -> Html {
    let Some(how) = say_if_any(&format!("ask.{}.how", props.question.word())) else {
        return Html::default();
    };
    let drawings = steps(props.question);
    let items = how.split('\n').enumerate().map(|(at, text)| {
        let drawing = drawings.get(at).copied().flatten();
        step(text, drawing)
    });
    html! {
        <details class="how" open={browser::is_wide()}>
            <summary>{ say("frame.how") }</summary>
            <ol class="how-steps">{ for items }</ol>
        </details>
    }
}

fn step(text: &str, drawing: Option<Drawing>) -> Html {
    html! {
        <li>
            <p>{ text }</p>
            { for drawing.map(step_drawing) }
        </li>
    }
}
