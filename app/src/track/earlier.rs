//! Logs of other answers on this device: to go on with, or to forget.

use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::log::Log;
use crate::desk::use_desk;
use crate::state::Wizard;
use crate::store::Entry;
use crate::words::say;

/// What is listed, and what can be done with it.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The logs, the newest last.
    pub logs: Vec<Entry<Log>>,
    /// Goes on with one.
    pub go_on: Callback<Entry<Log>>,
    /// Forgets one.
    pub forget: Callback<Entry<Log>>,
}

/// The list.
#[component]
pub fn Earlier(props: &Props) -> Html {
    let desk = use_desk();
    // The one that is to go once its button is pressed again: what is forgotten does not come back.
    let going = use_state_eq(|| None::<String>);
    let readable = props.logs.iter().rev();
    let readable = readable.filter_map(|entry| Some((entry, entry.record.wizard()?)));
    let items = readable.map(|(entry, wizard)| {
        let sure = going.as_ref() == Some(&entry.id);
        let about = desk.tell(&about(&wizard));
        let go_on = {
            let (does, entry) = (props.go_on.clone(), entry.clone());
            Callback::from(move |_: MouseEvent| does.emit(entry.clone()))
        };
        let forget = {
            let (does, going, entry) = (props.forget.clone(), going.clone(), entry.clone());
            Callback::from(move |_: MouseEvent| {
                if sure {
                    does.emit(entry.clone());
                } else {
                    going.set(Some(entry.id.clone()));
                }
            })
        };
        let beside = html! { <span class="vh">{ ": " }{ about.clone() }</span> };
        html! {
            <li key={entry.id.clone()}>
                <p class="tried-what">{ about }</p>
                <div class="lap-buttons">
                    <button type="button" class="button" onclick={go_on}>{ say("track.earlier-go-on") }{ beside.clone() }</button>
                    <button type="button" class="button" onclick={forget}>
                        { say(if sure { "track.forget-sure" } else { "track.forget" }) }
                        { beside }
                    </button>
                </div>
            </li>
        }
    });
    let items: Vec<Html> = items.collect();
    html! {
        if !items.is_empty() {
            <section class="tried">
                <h2>{ say("track.earlier") }</h2>
                <p>{ say("track.earlier-what") }</p>
                <ol>{ for items }</ol>
            </section>
        }
    }
}

/// What a log is about: how many laps, and the first thing that bothered.
fn about(wizard: &Wizard) -> Text {
    let laps = i64::try_from(wizard.intake.tried.len()).unwrap_or(i64::MAX);
    let complaint = wizard.intake.complaints.iter().flatten().next();
    let what = complaint.map_or(Text::new("track.earlier-nothing"), |complaint| {
        Text::new(format!("complaint.{}", complaint.feeling.word()))
    });
    Text::new(match laps {
        0 => "track.earlier-unridden",
        1 => "track.earlier-one",
        _ => "track.earlier-many",
    })
    .with("laps", Arg::Count(laps))
    .with("what", what.into())
}
