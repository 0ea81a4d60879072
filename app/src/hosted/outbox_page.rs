//! What was sent from here, what waits, and what the rider can do about it.

use sagwright_core::words::{Arg, Text, UnitChoice};
use yew::prelude::*;

use super::courier::{Bag, Courier};
use super::letter::{Letter, State};
use super::look::with_name;
use crate::browser;
use crate::store::Entry;
use crate::words::{say, tell};

/// The letters, the newest first; nothing where there are none.
pub fn outbox(courier: &Courier, bag: &Bag) -> Html {
    if bag.letters.is_empty() {
        return Html::default();
    }
    let letters = bag.letters.iter().rev();
    let letters = letters.map(|entry| one(courier, entry, bag.kept));
    html! {
        <section class="part outbox">
            <h2>{ say("hosted.outbox") }</h2>
            <ul>{ for letters }</ul>
        </section>
    }
}

fn one(courier: &Courier, entry: &Entry<Letter>, kept: bool) -> Html {
    let letter = &entry.record;
    let act = |key: &str, onclick: Callback<MouseEvent>| {
        html! { <button type="button" class="button" {onclick}>{ say(key) }</button> }
    };
    let try_now = {
        let (courier, entry) = (courier.clone(), entry.clone());
        Callback::from(move |_| courier.try_now(&entry))
    };
    let forget = {
        let (courier, entry) = (courier.clone(), entry.clone());
        Callback::from(move |_| courier.forget(&entry))
    };
    let save = {
        let text = letter.text.clone();
        Callback::from(move |_| {
            browser::save_file(&say("taking.file-name"), "application/json", &text);
        })
    };
    let arrived = letter.state == State::Arrived;
    html! {
        <li class="letter" key={entry.id.clone()}>
            <p class="letter-state" role="status">{ state(letter, kept) }</p>
            <p class="hint">{ with_name("hosted.goes-to", &letter.address) }</p>
            <p class="onward">
                if arrived {
                    { act("hosted.forget", forget) }
                } else {
                    { act("hosted.try-now", try_now) }
                    { act("hosted.letter-save", save) }
                    { act("hosted.take-back", forget) }
                }
            </p>
        </li>
    }
}

/// What has become of a letter; `kept` where it outlives the page.
fn state(letter: &Letter, kept: bool) -> String {
    let (key, status) = match letter.state {
        State::Arrived => ("hosted.arrived", 0),
        State::Refused(status) => ("hosted.refused-status", status),
        State::Waiting if letter.tries == 0 => ("hosted.waiting", 0),
        State::Waiting if kept => ("hosted.waiting-tried", 0),
        State::Waiting => ("hosted.waiting-unkept", 0),
    };
    let text = Text::new(key)
        .with("name", Arg::Raw(letter.workshop.clone()))
        .with("tries", Arg::Count(i64::from(letter.tries)))
        .with("status", Arg::Raw(status.to_string()));
    tell(&text, &UnitChoice::default())
}
