//! Questions answered with numbers.

use sagwright_core::intake::{Field, Question};
use yew::prelude::*;

use crate::desk::use_desk;
use crate::inputs::{NumberInput, Radios};
use crate::state::{Slot, Trouble, fields_of};
use crate::words::say;

/// One question's numbers.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Which question.
    pub question: Question,
    /// What is wrong.
    pub troubles: Vec<Trouble>,
    /// Told when the rider has said which unit was meant.
    pub settled: Callback<Field>,
}

/// The numbers, and how the spring or gas number is known.
#[component]
pub fn Numbers(props: &Props) -> Html {
    let desk = use_desk();
    let inputs = fields_of(props.question).map(|field| {
        let trouble = props.troubles.iter().find(|t| t.at == field.path());
        let trouble = trouble.cloned();
        html! { <NumberInput {field} {trouble} settled={props.settled.clone()} /> }
    });
    let known = known_how(props.question);
    let pairs = known.is_none() && fields_of(props.question).count() > 1;
    html! {
        <>
            <div class={classes!("numbers", pairs.then_some("numbers-pairs"))}>{ for inputs }</div>
            if let Some(field) = known {
                <Radios
                    slot={Slot::How(field)}
                    legend={desk.tell(&sagwright_core::words::Text::new(format!("how.{}", field.path())))}
                    open_ended=false
                    short=true
                />
                <p class="hint">{ say("how.optional") }</p>
            }
        </>
    }
}

/// The number of which it matters how it is known.
const fn known_how(question: Question) -> Option<Field> {
    match question {
        Question::ForkSpring => Some(Field::ForkRate),
        Question::ForkGas => Some(Field::ForkPressure),
        Question::ShockSpring => Some(Field::ShockRate),
        _ => None,
    }
}
