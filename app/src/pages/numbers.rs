//! Questions answered with numbers.

use sagwright_core::intake::{Field, Question};
use sagwright_core::words::Text;
use yew::prelude::*;

use crate::desk::Desk;
use crate::inputs::{Radios, number_input};
use crate::state::{Slot, Trouble, fields_of};
use crate::words::say;

/// The numbers, with what is wrong, and how the spring or gas number is known. `settled` is told when the rider has said
/// which unit was meant.
pub fn numbers(
    desk: &Desk,
    question: Question,
    troubles: &[Trouble],
    settled: &Callback<Field>,
) -> Html {
    let inputs = fields_of(question).map(|field| number_input(desk, field, troubles, settled));
    let known = known_how(question);
    let pairs = known.is_none() && fields_of(question).count() > 1;
    let how = known.map(|field| {
        let legend = desk.tell(&Text::new(format!("how.{}", field.path())));
        let group = Radios {
            open_ended: false,
            short: true,
            ..Radios::named(Slot::How(field), legend)
        };
        group.draw(desk)
    });
    html! {
        <>
            <div class={classes!("numbers", pairs.then_some("numbers-pairs"))}>{ for inputs }</div>
            if let Some(how) = how {
                { how }
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
