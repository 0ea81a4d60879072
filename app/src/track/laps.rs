//! What was tried so far, what the last lap moved, and where the bike stands now.

use sagwright_core::advice::moved_by_laps;
use sagwright_core::intake::{Intake, Tried};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::log::Press;
use super::next::from_to;
use crate::advice_page::{Voice, chance, moved_bar};
use crate::checking::Moved;

/// A change of belief smaller than this is told as none.
const TELLING: f64 = 0.03;

/// What the last lap moved: each leading cause before and after, and the same in a sentence that is read out.
pub fn moved(voice: &Voice, moved: Option<&Moved>) -> Html {
    let shifts = moved.map(Moved::shown).unwrap_or_default();
    let rows = shifts.iter().map(|shift| {
        html! {
            <li key={shift.cause.word()}>
                <span class="moved-name">{ voice.say(&shift.name) }</span>
                <span class="moved-numbers">
                    { chance(voice, shift.before) }
                    <span aria-hidden="true">{ " → " }</span>
                    <span class="vh">{ voice.words("advice.effect.to") }</span>
                    <strong>{ chance(voice, shift.after) }</strong>
                </span>
                { moved_bar(Some(shift.before), shift.after) }
            </li>
        }
    });
    let said = moved.map(|moved| sentence(voice, moved));
    html! {
        <div class="moved">
            <p class="moved-said" role="status">{ said }</p>
            if !shifts.is_empty() { <ul class="moved-causes">{ for rows }</ul> }
        </div>
    }
}

fn sentence(voice: &Voice, moved: &Moved) -> String {
    let shown = moved.shown();
    let by = |shift: &&&crate::checking::Shift| (shift.after - shift.before).abs();
    let furthest = shown.iter().max_by(|one, two| by(one).total_cmp(&by(two)));
    let Some(shift) = furthest.filter(|shift| by(shift) >= TELLING) else {
        return voice.words("track.moved.little");
    };
    let key = if shift.after > shift.before {
        "track.moved.up"
    } else {
        "track.moved.down"
    };
    let text = Text::new(key)
        .with("cause", shift.name.clone().into())
        .with("before", Arg::Raw(chance(voice, shift.before)))
        .with("after", Arg::Raw(chance(voice, shift.after)));
    voice.say(&text)
}

/// All laps, the last one first, with the ways to take them back.
pub fn timeline(voice: &Voice, intake: &Intake, press: &Callback<Press>) -> Html {
    if intake.tried.is_empty() {
        return Html::default();
    }
    let last = intake.tried.len() - 1;
    let items = intake.tried.iter().enumerate().rev().map(|(place, lap)| {
        let what = Text::new(format!("lap.do.{}", lap.change.word()));
        html! {
            <li key={place}>
                <p class="tried-what">{ name(voice, place, lap) }</p>
                <p>{ verdicts(voice, lap) }</p>
                <p>{ voice.words(if lap.kept { "track.kept" } else { "track.gone" }) }</p>
                <div class="lap-buttons">
                    if place == last {
                        <button type="button" class="button" onclick={press.reform(|_: MouseEvent| Press::Undo)}>
                            { voice.words("track.undo") }
                        </button>
                    }
                    if lap.kept {
                        <button type="button" class="button" onclick={press.reform(move |_: MouseEvent| Press::TakeOff(place))}>
                            { voice.words("track.put-back") }
                            <span class="vh">{ ": " }{ voice.say(&what) }</span>
                        </button>
                    }
                </div>
            </li>
        }
    });
    html! {
        <section class="tried">
            <h2>{ voice.words("track.tried") }</h2>
            <ol reversed=true>{ for items }</ol>
        </section>
    }
}

/// The number of a lap and its change.
pub fn name(voice: &Voice, place: usize, lap: &Tried) -> String {
    let number = Arg::Count(i64::try_from(place + 1).unwrap_or(i64::MAX));
    let text = Text::new("track.lap-what").with("number", number).with(
        "what",
        Text::new(format!("lap.do.{}", lap.change.word())).into(),
    );
    voice.say(&text)
}

/// How a lap was judged, in one line.
pub fn verdicts(voice: &Voice, lap: &Tried) -> String {
    if lap.felt.is_empty() {
        return voice.words("track.untold");
    }
    let said = lap.felt.iter().map(|(feeling, verdict)| {
        let text = Text::new("track.felt")
            .with(
                "complaint",
                Text::new(format!("complaint.{}", feeling.word())).into(),
            )
            .with(
                "verdict",
                Text::new(format!("track.was.{}", verdict.word())).into(),
            );
        voice.say(&text)
    });
    said.collect::<Vec<_>>().join(" ")
}

/// Where the bike stands now, beside where it stood when it was told.
pub fn standing_now(voice: &Voice, intake: &Intake) -> Html {
    let moved = moved_by_laps(intake);
    if moved.is_empty() {
        return Html::default();
    }
    html! {
        <section class="tried">
            <h2>{ voice.words("track.stands") }</h2>
            { for moved.iter().map(|one| from_to(voice, one)) }
        </section>
    }
}
