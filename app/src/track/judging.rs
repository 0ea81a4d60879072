//! A lap judged: better, no different or worse for each complaint, and whether the change stays.

use sagwright_core::intake::{Change, Feeling, Intake, Verdict};
use sagwright_core::sorted::Map;
use sagwright_core::words::Text;
use yew::prelude::*;

use super::log::Press;
use crate::advice_page::Voice;

/// The heading; the focus goes there when a lap was ridden.
pub const JUDGING: &str = "lap-judging";

/// The questions.
pub fn judging(
    voice: &Voice,
    intake: &Intake,
    (change, felt): (Change, &Map<Feeling, Option<Verdict>>),
    press: &Callback<Press>,
) -> Html {
    let what = Text::new(format!("lap.do.{}", change.word()));
    let complaints = intake.complaints.iter().flatten();
    let groups = complaints.map(|complaint| {
        let feeling = complaint.feeling;
        let picked = |verdict: Option<Verdict>| felt.get(&feeling) == Some(&verdict);
        group(voice, feeling, picked, press)
    });
    let counted = |verdict| felt.values().filter(|said| **said == Some(verdict)).count();
    // What helped is likelier to stay, and what did not to go: that one is offered as the first.
    let stays = counted(Verdict::Better) > counted(Verdict::Worse);
    let button = |key: &'static str, does: Press, main: bool| {
        let class = if main { "button button-main" } else { "button" };
        html! {
            <button type="button" {class} onclick={press.reform(move |_: MouseEvent| does)}>
                { voice.words(key) }
            </button>
        }
    };
    html! {
        <section class="lap" aria-labelledby={JUDGING}>
            <p class="lap-number">{ voice.say(&what) }</p>
            <h2 id={JUDGING} class="lap-ask" tabindex="-1">{ voice.words("track.judge") }</h2>
            { for groups }
            <p class="lap-ask">{ voice.words("track.stay") }</p>
            <div class="lap-buttons">
                { button("track.keep", Press::Settle { keep: true }, stays) }
                { button("track.put-back", Press::Settle { keep: false }, !stays) }
                { button("track.not-ridden", Press::NotRidden, false) }
            </div>
        </section>
    }
}

/// One complaint.
fn group(
    voice: &Voice,
    feeling: Feeling,
    picked: impl Fn(Option<Verdict>) -> bool,
    press: &Callback<Press>,
) -> Html {
    let options = Verdict::ALL.iter().map(|verdict| Some(*verdict));
    let rows = options.chain([None]).map(|verdict| {
        let key = verdict.map_or("track.cannot-tell".to_owned(), |verdict| {
            format!("choice.verdict.{}", verdict.word())
        });
        let onchange = press.reform(move |_: Event| Press::Felt(feeling, verdict));
        html! {
            <label class="row">
                <input type="radio" name={feeling.word()} checked={picked(verdict)} {onchange} />
                <span class="row-text">{ voice.words(key) }</span>
            </label>
        }
    });
    html! {
        <fieldset class="group verdicts" role="radiogroup" key={feeling.word()}>
            <legend>{ voice.words(format!("complaint.{}", feeling.word())) }</legend>
            <div class="rows">{ for rows }</div>
        </fieldset>
    }
}
