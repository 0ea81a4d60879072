//! The choice of units, beside the numbers it changes.

use sagwright_core::quantity::{Dimension, Unit};
use yew::prelude::*;

use super::Voice;

/// One switch per kind of number.
pub fn unit_switches(
    voice: &Voice,
    kinds: &[Dimension],
    on_unit: &Callback<(Dimension, Unit)>,
) -> Html {
    let switches = kinds.iter().map(|&kind| {
        let buttons = kind.units().iter().map(|&unit| {
            let chosen = voice.units().unit(kind) == unit;
            html! {
                <button
                    type="button"
                    class="unit"
                    aria-pressed={chosen.to_string()}
                    onclick={on_unit.reform(move |_: MouseEvent| (kind, unit))}
                >
                    { unit.symbol() }
                </button>
            }
        });
        html! {
            <div class="units" role="group" aria-label={voice.words(name_key(kind))}>{ for buttons }</div>
        }
    });
    html! { <div class="switches">{ for switches }</div> }
}

/// Key of the name of a switch.
const fn name_key(kind: Dimension) -> &'static str {
    match kind {
        Dimension::Rate => "advice.unit.rate",
        Dimension::Pressure => "advice.unit.pressure",
        Dimension::Force => "advice.unit.force",
        _ => "advice.unit.length",
    }
}
