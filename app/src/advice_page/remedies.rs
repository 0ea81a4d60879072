//! The remedies: the one that leads, then all others from free to wholesale.

use sagwright_core::advice::{Effect, RemedyFinding};
use sagwright_core::quantity::Dimension;
use sagwright_core::remedy::Tier;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::contents::{Part, heading};
use super::price::{minutes, price};
use super::reason::why;
use super::{Voice, signal};

/// The ladder.
pub fn remedies(voice: &Voice, remedies: &[RemedyFinding]) -> Html {
    let leading = remedies.iter().find(|remedy| remedy.leads);
    html! {
        <section class="part">
            { heading(voice, Part::Remedies) }
            <p>{ voice.words("advice.remedies.lead") }</p>
            if let Some(remedy) = leading {
                <article class="remedy remedy-first">
                    <p class="remedy-mark">{ voice.words("advice.remedies.first") }</p>
                    <h3>{ voice.say(&remedy.name) }</h3>
                    { facts(voice, remedy) }
                    { body(voice, remedy) }
                </article>
            }
            { for Tier::ALL.iter().map(|&tier| rung(voice, remedies, tier)) }
        </section>
    }
}

/// The remedies of one tier but for the leading one, which stands above.
fn rung(voice: &Voice, remedies: &[RemedyFinding], tier: Tier) -> Html {
    let own: Vec<&RemedyFinding> = remedies
        .iter()
        .filter(|remedy| remedy.tier == tier && !remedy.leads)
        .collect();
    if own.is_empty() {
        return Html::default();
    }
    let folded = own.iter().map(|remedy| {
        html! {
            <details class="remedy">
                <summary>
                    <span class="remedy-name">{ voice.say(&remedy.name) }</span>
                    { facts(voice, remedy) }
                </summary>
                { body(voice, remedy) }
            </details>
        }
    });
    let word = tier.word();
    html! {
        <section class="rung">
            <h3>{ voice.words(format!("tier.{word}")) }</h3>
            <p>{ voice.words(format!("tier.{word}.what")) }</p>
            { for folded }
        </section>
    }
}

/// Below this share a relief is not told.
const LEAST_RELIEF: f64 = 0.01;

/// Relief, cost, time and whether it can be undone, at a glance.
fn facts(voice: &Voice, remedy: &RemedyFinding) -> Html {
    // Leaving the bike alone takes nothing away, and saying so would read as if it failed.
    let relief = (remedy.relief >= LEAST_RELIEF).then(|| {
        voice.with(
            "advice.remedy.relief",
            "share",
            Arg::Quantity(remedy.relief, Dimension::Share),
        )
    });
    let undo = if remedy.reversible {
        "advice.remedy.undo"
    } else {
        "advice.remedy.no-undo"
    };
    html! {
        <span class="facts">
            if let Some(relief) = relief {
                <span class="chip">{ relief }</span>
            }
            <span class="chip">{ price(voice, &remedy.cost) }</span>
            <span class="chip">{ minutes(voice, remedy.minutes) }</span>
            <span class="chip">{ voice.words(undo) }</span>
        </span>
    }
}

/// What it does to the complaints, cautions, steps, what it cures and what it cannot, and where all that comes from.
fn body(voice: &Voice, remedy: &RemedyFinding) -> Html {
    let steps = remedy.steps.iter().map(|step| {
        html! { <li>{ voice.say(step) }</li> }
    });
    let cures = remedy.cures.iter().map(|cure| {
        let text = Text::new("advice.remedy.cure")
            .with("cause", cure.name.clone().into())
            .with("share", Arg::Quantity(cure.share, Dimension::Share));
        html! { <li>{ voice.say(&text) }</li> }
    });
    let eased = remedy
        .complaints
        .iter()
        .map(|effect| voice.say(&effect.text));
    let worse = remedy
        .side_effects
        .iter()
        .map(|effect| voice.say(&effect.text));
    let restack = remedy.restack.iter().map(|text| voice.say(text));
    html! {
        <div class="remedy-body">
            if let Some(check) = &remedy.check_first {
                <p class="remedy-mark">{ voice.say(check) }</p>
            }
            if let Some(dominated) = &remedy.dominated_by {
                <p>{ voice.say(&dominated.text) }</p>
            }
            { list(voice, "advice.remedy.complaints", eased) }
            { list(voice, "advice.remedy.worse", worse) }
            { effects(voice, &remedy.effects) }
            { signal::grouped(voice, &remedy.cautions) }
            <ol class="steps">{ for steps }</ol>
            { list(voice, "advice.remedy.restack", restack) }
            if !remedy.cures.is_empty() {
                <h4>{ voice.words("advice.remedy.cures") }</h4>
                <ul>{ for cures }</ul>
            }
            if let Some(spring) = &remedy.in_stock {
                <p>{ voice.say(&spring.text) }</p>
            }
            <h4>{ voice.words("advice.remedy.cannot") }</h4>
            <p>{ voice.say(&remedy.cannot) }</p>
            <p class="hint">{ voice.say(&remedy.source) }</p>
            <p class="hint">{ voice.say(&remedy.cost.source) }</p>
        </div>
    }
}

/// A list with its heading; nothing for no items.
fn list(voice: &Voice, heading: &'static str, items: impl Iterator<Item = String>) -> Html {
    let items: Vec<Html> = items.map(|text| html! { <li>{ text }</li> }).collect();
    if items.is_empty() {
        return Html::default();
    }
    html! {
        <>
            <h4>{ voice.words(heading) }</h4>
            <ul>{ for items }</ul>
        </>
    }
}

fn effects(voice: &Voice, effects: &[Effect]) -> Html {
    if effects.is_empty() {
        return Html::default();
    }
    let items = effects.iter().map(|effect| {
        let name = voice.say(&effect.name);
        html! {
            <li class="effect">
                <span class="effect-name">{ &name }</span>
                <span class="effect-change">
                    if let Some(before) = effect.before {
                        { voice.quantity(before, effect.dimension) }
                        <span aria-hidden="true">{ " → " }</span>
                        <span class="vh">{ voice.words("advice.effect.to") }</span>
                    }
                    <strong>{ voice.quantity(effect.after, effect.dimension) }</strong>
                </span>
                { why(voice, &name, &effect.reason, effect.dimension) }
            </li>
        }
    });
    html! {
        <>
            <h4>{ voice.words("advice.remedy.effects") }</h4>
            <ul class="effects">{ for items }</ul>
        </>
    }
}
