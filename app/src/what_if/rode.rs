//! What rides show of a change: asked for, under way, done.

use std::rc::Rc;

use sagwright_core::advice::Progress;
use sagwright_core::advice::what_if::{Trying, WhatIfRidden};
use sagwright_core::intake::Intake;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::seen::felt;
use crate::advice_page::{Voice, feel};
use crate::film::Film;
use crate::riding::{Trial, use_trial};

/// Keys of the names of both bikes.
const NAMES: [&str; 2] = ["picture.ride.now", "picture.tried"];

/// A change to ride.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The bike as it stands.
    pub intake: Rc<Intake>,
    /// What is tried on it.
    pub trying: Trying,
    /// Words and units.
    pub voice: Voice,
}

/// A button to ride it, how far it is, and what came of it.
#[component]
pub fn Rode(props: &Props) -> Html {
    let Props {
        intake,
        trying,
        voice,
    } = props;
    let (trial, begin, stop) = use_trial(intake, trying);
    let said = match &trial {
        Trial::Waiting => String::new(),
        Trial::Riding(_) => voice.words("what-if.riding"),
        Trial::Done(Some(ridden)) => {
            voice.with("what-if.ridden", "rides", Arg::Count(ridden.rides.into()))
        }
        Trial::Done(None) => voice.words("what-if.cannot"),
        Trial::Broke => voice.words("what-if.broke"),
    };
    html! {
        <div class="what-if-rode">
            <p role="status">{ said }</p>
            { match &trial {
                Trial::Riding(progress) => html! {
                    <>
                        <progress
                            max="1"
                            value={progress.as_ref().and_then(Progress::part).map(|part| part.to_string())}
                            aria-label={voice.words("what-if.riding")}
                        />
                        <button type="button" class="button" onclick={stop}>{ voice.words("riding.stop") }</button>
                    </>
                },
                Trial::Done(Some(ridden)) => result(voice, ridden),
                Trial::Waiting | Trial::Done(None) | Trial::Broke => html! {
                    <button type="button" class="button" onclick={begin}>{ voice.words("what-if.ride") }</button>
                },
            } }
        </div>
    }
}

fn result(voice: &Voice, ridden: &WhatIfRidden) -> Html {
    html! {
        <>
            { felt(voice, &ridden.felt) }
            { feel(voice, &ridden.feel, NAMES) }
            <Film picture={Rc::new(ridden.picture.clone())} names={NAMES} voice={voice.clone()} />
        </>
    }
}

/// What is tried in a sentence: "Fork rebound 14 clicks; …".
pub fn tried(voice: &Voice, trying: &Trying) -> String {
    let levers = trying.levers.iter().map(|(lever, si)| {
        let text = Text::new("what-if.moved")
            .with("setting", lever.label().into())
            .with("to", Arg::Quantity(*si, lever.dimension()));
        voice.say(&text)
    });
    let remedy = trying.remedy.iter();
    let remedy = remedy.map(|one| voice.words(format!("remedy.{}.name", one.word())));
    levers.chain(remedy).collect::<Vec<_>>().join("; ")
}
