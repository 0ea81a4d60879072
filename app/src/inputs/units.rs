//! The switch between the units of one kind of number.

use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use crate::desk::Desk;
use crate::state::Action;
use crate::words::say;

/// One button per unit; nothing is drawn where there is only one.
pub fn unit_switch(desk: &Desk, dimension: Dimension) -> Html {
    let units = dimension.units();
    if units.len() < 2 {
        return Html::default();
    }
    let shown = desk.wizard.units.unit(dimension);
    let buttons = units.iter().map(|unit| {
        let action = Action::Show(dimension, *unit);
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
