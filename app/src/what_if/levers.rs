//! The settings to move and the remedies to do.

use sagwright_core::advice::Setting;
use sagwright_core::advice::what_if::{Lever, Movable};
use sagwright_core::remedy::RemedyId;
use sagwright_core::sorted::Map;
use sagwright_core::words::{Arg, Text};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::course::Step;
use crate::advice_page::Voice;

/// One slider per setting. `moved` is what is tried.
pub fn levers(
    voice: &Voice,
    all: &[Movable],
    moved: &Map<Lever, f64>,
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
        lever, now, step, ..
    } = one;
    let told = voice.quantity(at, lever.dimension());
    // The slider counts steps from where the setting stands, so that it can always be put back there exactly.
    let steps = |si: f64| ((si - now) / step).round();
    let (first, last) = ends(&one);
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

/// First and last step of a slider, counted from where the setting stands.
fn ends(one: &Movable) -> (f64, f64) {
    /// A part of a step that is rounding and must not cost the last of them.
    const HAIR: f64 = 1e-6;
    let steps = |si: f64| (si - one.now) / one.step;
    (
        (steps(one.low) - HAIR).ceil(),
        (steps(one.high) + HAIR).floor(),
    )
}

/// What can be done, and what is.
#[derive(Debug, PartialEq, Properties)]
pub struct RemediesProps {
    /// Words and units.
    pub voice: Voice,
    /// What can be done.
    pub all: Vec<RemedyId>,
    /// What is tried.
    pub done: Option<RemedyId>,
    /// Told what to do.
    pub act: Callback<Step>,
}

/// The remedies to choose from.
#[component]
pub fn Remedies(props: &RemediesProps) -> Html {
    let RemediesProps {
        voice,
        all,
        done,
        act,
    } = props;
    let list = use_node_ref();
    let place = done.and_then(|done| all.iter().position(|one| *one == done));
    // The first option is "nothing". Once a hand has chosen, what the options say of themselves no longer counts: the list
    // itself has to be told, or undoing leaves it behind.
    let shown = place.map_or(0, |place| place + 1);
    {
        let list = list.clone();
        use_effect_with((shown, all.clone()), move |(shown, _)| {
            if let (Some(list), Ok(shown)) =
                (list.cast::<HtmlSelectElement>(), i32::try_from(*shown))
            {
                list.set_selected_index(shown);
            }
        });
    }
    if all.is_empty() {
        return Html::default();
    }
    let options = all.iter().map(|one| {
        html! { <option>{ voice.words(format!("remedy.{}.name", one.word())) }</option> }
    });
    let known = all.clone();
    let onchange = act.reform(move |event: Event| {
        let chosen = event
            .target_dyn_into::<HtmlSelectElement>()
            .and_then(|list| usize::try_from(list.selected_index()).ok());
        Step::Do(chosen.and_then(|place| known.get(place.checked_sub(1)?).copied()))
    });
    html! {
        <label class="what-if-remedy">
            <span class="what-if-name">{ voice.words("what-if.remedy") }</span>
            <select ref={list} {onchange}>
                <option>{ voice.words("what-if.remedy.none") }</option>
                { for options }
            </select>
        </label>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slider_reaches_both_ends_whatever_rounding_does() {
        // From 18 mm to 25 mm are 7 mm, and by the sums of a machine a hair less.
        for millimetres in 0..=25 {
            let now = f64::from(millimetres) * 1e-3;
            let one = Movable {
                lever: Lever::ForkPreload,
                now,
                low: 0.0,
                high: 25.0 * 1e-3,
                step: 1e-3,
            };
            let counted = (-f64::from(millimetres), f64::from(25 - millimetres));
            assert_eq!(ends(&one), counted);
        }
    }

    #[test]
    fn a_slider_stays_within_ends_that_lie_between_steps() {
        let one = Movable {
            lever: Lever::ForkPreload,
            now: 0.0075,
            low: 0.0,
            high: 0.025,
            step: 1e-3,
        };
        assert_eq!(ends(&one), (-7.0, 17.0));
    }
}
