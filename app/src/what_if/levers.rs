//! The settings to move and the remedies to do.

use std::collections::BTreeMap;

use sagwright_core::advice::Setting;
use sagwright_core::advice::what_if::{Lever, Movable};
use sagwright_core::remedy::RemedyId;
use sagwright_core::words::{Arg, Text};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::course::Step;
use crate::advice_page::Voice;

/// One slider per setting. `moved` is what is tried.
pub fn levers(
    voice: &Voice,
    all: &[Movable],
    moved: &BTreeMap<Lever, f64>,
    settings: &[Setting],
    act: &Callback<Step>,
) -> Html {
    let rows = all.iter().map(|one| {
        let at = moved.get(&one.lever).copied().unwrap_or(one.now);
        let advised = settings
            .iter()
            .find(|row| row.id.word() == one.lever.word());
        let advised = advised.map(|row| row.advised.value);
        lever(voice, *one, at, advised, act)
    });
    html! { <div class="what-if-levers">{ for rows }</div> }
}

/// A setting with what it is now, what is advised, and where it is moved to.
fn lever(voice: &Voice, one: Movable, at: f64, advised: Option<f64>, act: &Callback<Step>) -> Html {
    let Movable {
        lever,
        now,
        low,
        high,
        step,
    } = one;
    let told = voice.quantity(at, lever.dimension());
    // The slider counts steps from where the setting stands, so that it can always be put back there exactly.
    let steps = |si: f64| ((si - now) / step).round();
    let first = ((low - now) / step).ceil();
    let last = ((high - now) / step).floor();
    let oninput = act.reform(move |event: InputEvent| {
        let count = event
            .target_dyn_into::<HtmlInputElement>()
            .and_then(|input| input.value().parse::<f64>().ok())
            .unwrap_or_default();
        Step::Move(lever, now, now + count * step)
    });
    let mut stands = Text::new("what-if.stands").with("now", Arg::Quantity(now, lever.dimension()));
    if let Some(advised) = advised {
        stands.key = "what-if.stands-advised".into();
        stands = stands.with("advised", Arg::Quantity(advised, lever.dimension()));
    }
    let moved = steps(at) != 0.0;
    html! {
        <label class={classes!("what-if-lever", moved.then_some("shifted"))} key={lever.word()}>
            <span class="what-if-name">{ voice.say(&lever.label()) }</span>
            <strong class="what-if-at">{ &told }</strong>
            <input
                type="range"
                min={first.to_string()}
                max={last.to_string()}
                step="1"
                value={steps(at).to_string()}
                aria-valuetext={told.clone()}
                {oninput}
            />
            <span class="hint">{ voice.say(&stands) }</span>
        </label>
    }
}

/// The remedies to choose from.
pub fn remedies(
    voice: &Voice,
    all: &[RemedyId],
    done: Option<RemedyId>,
    act: &Callback<Step>,
) -> Html {
    if all.is_empty() {
        return Html::default();
    }
    let options = all.iter().map(|one| {
        html! {
            <option selected={Some(*one) == done}>
                { voice.words(format!("remedy.{}.name", one.word())) }
            </option>
        }
    });
    let known = all.to_vec();
    let onchange = act.reform(move |event: Event| {
        let chosen = event
            .target_dyn_into::<HtmlSelectElement>()
            .and_then(|list| usize::try_from(list.selected_index()).ok());
        // The first option is "nothing".
        Step::Do(chosen.and_then(|place| known.get(place.checked_sub(1)?).copied()))
    });
    html! {
        <label class="what-if-remedy">
            <span class="what-if-name">{ voice.words("what-if.remedy") }</span>
            <select {onchange}>
                <option selected={done.is_none()}>{ voice.words("what-if.remedy.none") }</option>
                { for options }
            </select>
        </label>
    }
}
