//! The causes, most likely first, each with what speaks for and against it.

use sagwright_core::advice::{CauseFinding, SetUpAdvice};
use sagwright_core::cause::Cause;
use sagwright_core::sorted::Set;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::Voice;
use super::chances::{chance, moved_bar};
use super::contents::{Part, heading};
use super::evidence::evidence;
use crate::advising::Stand;
use crate::checking::Moved;

/// Causes less likely than this are folded away, and those beyond so many.
const TOLD_FROM: f64 = 0.05;
const MOST_TOLD: usize = 5;
/// The core's words that two causes are a close call.
const CLOSE_CALLS: [&str; 2] = ["caveat.close-call", "caveat.alike"];
/// The core's word that two causes may be there at once.
const BOTH: &str = "caveat.both";
/// The core's word on where the chances come from.
const NO_FIELD_DATA: &str = "caveat.no-field-data";

/// Whether a caveat is about the chances, and so stands by them, not by the answer.
pub fn is_of_chances(caveat: &Text) -> bool {
    caveat.key == BOTH || caveat.key == NO_FIELD_DATA
}

/// What the ranked causes are told from.
#[derive(Clone, Copy)]
pub struct Told<'a> {
    /// The advice.
    pub advice: &'a SetUpAdvice,
    /// What it rests on.
    pub stand: Stand,
    /// Whether rides are under way that will move it.
    pub busy: bool,
    /// What the last check moved.
    pub moved: Option<&'a Moved>,
}

/// The ranked causes.
pub fn causes(voice: &Voice, told: Told) -> Html {
    let causes = &told.advice.causes;
    let worth = causes
        .iter()
        .take_while(|cause| cause.probability >= TOLD_FROM)
        .take(MOST_TOLD)
        .count();
    // Whatever leads is told, however little is known.
    let (leading, others) = causes.split_at(worth.max(1).min(causes.len()));
    let close = close_calls(told.advice);
    let leading = leading.iter().enumerate().map(|(rank, cause)| {
        let was = told.moved.and_then(|moved| moved.before(cause.cause));
        in_full(voice, rank, cause, was, close.contains(&cause.cause))
    });
    let caveat = |key: &str| {
        let mut caveats = told.advice.caveats.iter();
        let text = caveats.find(|caveat| caveat.key == key);
        text.map(|text| voice.say(text))
    };
    html! {
        <section class="part">
            { heading(voice, Part::Causes) }
            if let Some(key) = provisional(told.stand, told.busy) {
                <p class="provisional">{ voice.words(key) }</p>
            }
            <p>{ voice.words("advice.causes.lead") }</p>
            if let Some(text) = caveat(BOTH) { <p class="together">{ text }</p> }
            <ol class="causes">{ for leading }</ol>
            { folded(voice, others) }
            if let Some(text) = caveat(NO_FIELD_DATA) { <p class="hint">{ text }</p> }
        </section>
    }
}

/// Key of the sentence that says what the chances rest on, where that is less than rides of this very bike.
const fn provisional(stand: Stand, busy: bool) -> Option<&'static str> {
    match (stand, busy) {
        (Stand::Ridden, _) => None,
        (Stand::Still, true) => Some("advice.causes.riding"),
        (Stand::Still, false) => Some("advice.causes.still"),
        (Stand::RiddenBefore, true) => Some("advice.causes.riding-again"),
        (Stand::RiddenBefore, false) => Some("advice.causes.before"),
    }
}

/// The two causes between which it is a close call, where the core says so.
fn close_calls(advice: &SetUpAdvice) -> Set<Cause> {
    let calls = |one: &Text| CLOSE_CALLS.contains(&one.key.as_ref());
    let close = advice.caveats.iter().any(calls);
    let leading = advice.causes.iter().take(if close { 2 } else { 0 });
    leading.map(|cause| cause.cause).collect()
}

/// One cause. The leading one is unfolded, because it is what the answer rests on; the others are a line and a bar until
/// they are opened.
fn in_full(
    voice: &Voice,
    rank: usize,
    cause: &CauseFinding,
    was: Option<f64>,
    close: bool,
) -> Html {
    let head = html! {
        <>
            <h3>
                <span class="cause-name">{ voice.say(&cause.name) }</span>
                if close { <span class="chip">{ voice.words("advice.cause.close") }</span> }
            </h3>
            <span class="cause-chance">
                <span>{ voice.say(&cause.chance) }</span>
                <span>
                    if let Some(was) = was.filter(|was| reads_other(voice, *was, cause.probability)) {
                        <span class="cause-was">
                            { voice.with("advice.cause.was", "share", Arg::Raw(chance(voice, was))) }
                        </span>
                        { " " }
                    }
                    { chance(voice, cause.probability) }
                </span>
            </span>
            { moved_bar(was, cause.probability) }
        </>
    };
    let body = html! {
        <div class="cause-more">
            <div class="weighed">
                { evidence(voice, "advice.evidence.for", &cause.evidence_for) }
                { evidence(voice, "advice.evidence.against", &cause.evidence_against) }
            </div>
            <dl>
                <dt>{ voice.words("advice.cause.feel") }</dt>
                <dd>{ voice.say(&cause.feel) }</dd>
                <dt>{ voice.words("advice.cause.confirm") }</dt>
                <dd>{ voice.say(&cause.confirm) }</dd>
                <dt>{ voice.words("advice.cause.cures") }</dt>
                <dd>{ voice.say(&cause.cures) }</dd>
            </dl>
        </div>
    };
    let what = html! { <p>{ voice.say(&cause.what) }</p> };
    let key = cause.cause.word();
    if rank > 0 {
        return html! {
            <li class="cause" {key}>
                <details class="cause-fold">
                    <summary>
                        <span class="cause-head">{ head }</span>
                    </summary>
                    { what }
                    { body }
                </details>
            </li>
        };
    }
    html! {
        <li class="cause cause-first" {key}>
            { head }
            { what }
            <details class="more" open=true>
                <summary>{ voice.words("advice.cause.more") }</summary>
                { body }
            </details>
        </li>
    }
}

/// Whether two chances read differently.
fn reads_other(voice: &Voice, one: f64, other: f64) -> bool {
    chance(voice, one) != chance(voice, other)
}

/// The causes that are hardly likely, as a list to unfold.
fn folded(voice: &Voice, others: &[CauseFinding]) -> Html {
    let Some(likeliest) = others.first() else {
        return Html::default();
    };
    let count = i64::try_from(others.len()).unwrap_or(i64::MAX);
    let summary = Text::new("advice.causes.others")
        .with("count", Arg::Count(count))
        .with("share", Arg::Raw(chance(voice, likeliest.probability)));
    let rows = others.iter().map(|cause| {
        html! {
            <tr>
                <th scope="row">{ voice.say(&cause.name) }</th>
                <td>{ chance(voice, cause.probability) }</td>
            </tr>
        }
    });
    html! {
        <details class="more">
            <summary>{ voice.say(&summary) }</summary>
            <table class="data">
                <thead class="vh">
                    <tr>
                        <th scope="col">{ voice.words("advice.causes.cause") }</th>
                        <th scope="col">{ voice.words("advice.causes.chance") }</th>
                    </tr>
                </thead>
                <tbody>{ for rows }</tbody>
            </table>
        </details>
    }
}
