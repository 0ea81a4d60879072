//! The switch between the units of one kind of number.

use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use crate::desk::use_desk;
use crate::state::Action;
use crate::words::say;

/// Which kind of number.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The kind of number switched.
    pub dimension: Dimension,
}

/// One button per unit; nothing is drawn where there is only one.
#[component]
pub fn UnitSwitch(props: &Props) -> Html {
    let desk = use_desk();
    let units = props.dimension.units();
    if units.len() < 2 {
        return Html::default();
    }
    let shown = desk.wizard.units.unit(props.dimension);
    let buttons = units.iter().map(|unit| {
        let action = Action::Show(props.dimension, *unit);
        let desk = desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.act(action.clone()));
        html! {
            <button type="button" class="unit" aria-pressed={(*unit == shown).to_string()} {onclick}>
                { unit.symbol() }
            </button>
        }
    });
    html! {
        <div class="units" role="group" aria-label={say("input.unit")}>{ for buttons }</div>
    }
}
