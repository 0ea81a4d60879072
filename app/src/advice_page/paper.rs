//! The advice on paper: a page to set the bike by, and a page of reasons and cautions. The screen shows the same at
//! length; what would not fit is left there, and a code in the corner leads back to it.

use sagwright_core::advice::{
    Assumption, CauseFinding, Evidence, NearestRate, NextCheck, RemedyFinding, SetUpAdvice, Setting,
};
use sagwright_core::intake::End;
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::price::price;
use super::settings::end_key;
use super::shown::shown;
use super::{Voice, signal};
use crate::browser;

/// Causes that are told with their evidence; the next as many by name alone.
const CAUSES: usize = 3;

/// Pieces of evidence for a cause. The weightiest come first.
const EVIDENCE: usize = 2;

/// Remedies listed after the one that leads, the cheapest first.
const REMEDIES: usize = 4;

/// Both pages; `corner` stands at the end of the first, `tried` is what was tried at the track.
pub fn paper(voice: &Voice, advice: &SetUpAdvice, corner: Html, tried: Html) -> Html {
    html! {
        <div class="paper">
            { first_page(voice, advice, corner) }
            { second_page(voice, advice, tried) }
        </div>
    }
}

fn first_page(voice: &Voice, advice: &SetUpAdvice, corner: Html) -> Html {
    let leading = advice.remedies.iter().find(|remedy| remedy.leads);
    let today = Arg::Raw(browser::today());
    html! {
        <section class="paper-page">
            <h2>{ voice.with("advice.paper.settings", "date", today) }</h2>
            <p class="paper-sentence">{ voice.say(&advice.sentence) }</p>
            <div class="paper-columns">
                { for End::ALL.iter().map(|&end| table(voice, &advice.settings, end)) }
            </div>
            <div class="paper-foot">
                <div>
                    { notes(voice, advice) }
                    if let Some(remedy) = leading { { steps(voice, remedy) } }
                </div>
                <div class="paper-code">{ corner }</div>
            </div>
        </section>
    }
}

fn table(voice: &Voice, settings: &[Setting], end: End) -> Html {
    let own = settings.iter().filter(|setting| setting.end == end);
    let rows: Vec<Html> = own.map(|setting| row(voice, setting)).collect();
    if rows.is_empty() {
        return Html::default();
    }
    html! {
        <table class="paper-table">
            <caption>{ voice.words(end_key(end)) }</caption>
            <thead>
                <tr>
                    <th scope="col">{ voice.words("advice.setting") }</th>
                    <th scope="col">{ voice.words("advice.setting.now") }</th>
                    <th scope="col">{ voice.words("advice.setting.advised") }</th>
                </tr>
            </thead>
            <tbody>{ for rows }</tbody>
        </table>
    }
}

fn row(voice: &Voice, setting: &Setting) -> Html {
    let row = shown(voice, setting);
    let show = |near: &NearestRate| voice.quantity(near.rate, setting.advised.dimension);
    let sold: Vec<String> = setting.nearest.iter().map(show).collect();
    html! {
        <tr>
            <th scope="row">{ row.label }</th>
            <td>
                if let Some(now) = &row.now {
                    { &now.first }
                    { now.below("paper-small") }
                } else {
                    { voice.words("advice.setting.unknown") }
                }
            </td>
            <td>
                <strong>{ &row.advised.first }</strong>
                { row.advised.below("paper-small") }
                if let Some(range) = row.range {
                    <span class="paper-small">{ voice.words("advice.setting.range") }{ range }</span>
                }
                if !sold.is_empty() {
                    <span class="paper-small">
                        { voice.with("advice.paper.sold", "rates", Arg::Raw(sold.join(", "))) }
                    </span>
                }
            </td>
        </tr>
    }
}

/// What to know about the settings, each said once.
fn notes(voice: &Voice, advice: &SetUpAdvice) -> Html {
    let mut lines: Vec<Html> = Vec::new();
    if let Some(counting) = &advice.counting {
        lines.push(html! { <li>{ voice.say(counting) }</li> });
    }
    for setting in &advice.settings {
        let stock = setting.in_stock.iter().map(|spring| &spring.text);
        for note in setting.notes.iter().chain(stock) {
            let text = Text::new("advice.paper.note")
                .with("setting", setting.label.clone().into())
                .with("note", note.clone().into());
            lines.push(html! { <li>{ voice.say(&text) }</li> });
        }
    }
    html! { if !lines.is_empty() { <ul class="paper-list">{ for lines }</ul> } }
}

/// The remedy that leads, with what to do.
fn steps(voice: &Voice, remedy: &RemedyFinding) -> Html {
    let steps = remedy.steps.iter();
    let steps = steps.map(|step| html! { <li>{ voice.say(step) }</li> });
    html! {
        <>
            <h3>
                { voice.words("advice.remedies.first") }
                { ": " }
                { voice.say(&remedy.name) }
            </h3>
            <p>{ worth(voice, remedy) }</p>
            { signal::grouped(voice, &remedy.cautions) }
            <ol class="paper-list">{ for steps }</ol>
        </>
    }
}

/// What a remedy costs and what it is worth.
pub fn worth(voice: &Voice, remedy: &RemedyFinding) -> String {
    let relief = Arg::Quantity(remedy.relief, Dimension::Share);
    let relief = Text::new("advice.remedy.relief").with("share", relief);
    let text = Text::new("advice.paper.worth")
        .with("price", Arg::Raw(price(voice, &remedy.cost)))
        .with("relief", relief.into());
    voice.say(&text)
}

fn second_page(voice: &Voice, advice: &SetUpAdvice, tried: Html) -> Html {
    html! {
        <section class="paper-page">
            <h2>{ voice.words("advice.paper.reasons") }</h2>
            <div class="paper-flow">
                { causes(voice, &advice.causes) }
                { tried }
                if let Some(check) = advice.next_checks.first() { { next_check(voice, check) } }
                { remedies(voice, &advice.remedies) }
                { reasons(voice, &advice.settings) }
                { assumed(voice, &advice.assumptions) }
            </div>
            <div class="paper-signals">{ signal::grouped(voice, &advice.cautions) }</div>
            <p class="paper-small">
                { for advice.caveats.iter().map(|caveat| html! { <>{ voice.say(caveat) }{ " " }</> }) }
            </p>
        </section>
    }
}

fn causes(voice: &Voice, causes: &[CauseFinding]) -> Html {
    let (leading, others) = causes.split_at(causes.len().min(CAUSES));
    let leading = leading.iter().map(|cause| {
        let evidence = |key: &'static str, pieces: &[Evidence]| {
            let said: Vec<String> = pieces.iter().take(EVIDENCE).map(|p| voice.say(&p.text)).collect();
            html! {
                if !said.is_empty() {
                    <span class="paper-small"><b>{ voice.words(key) }{ ": " }</b>{ said.join(" ") }</span>
                }
            }
        };
        html! {
            <li>
                { cause_line(voice, cause) }
                { evidence("advice.evidence.for", &cause.evidence_for) }
                { evidence("advice.evidence.against", &cause.evidence_against) }
            </li>
        }
    });
    let others = others.iter().take(CAUSES);
    let others = others.map(|cause| html! { <li>{ cause_line(voice, cause) }</li> });
    html! {
        <>
            <h3>{ voice.words("advice.part.causes") }</h3>
            <ol class="paper-list">{ for leading }{ for others }</ol>
        </>
    }
}

fn cause_line(voice: &Voice, cause: &CauseFinding) -> String {
    let text = Text::new("advice.paper.cause")
        .with("cause", cause.name.clone().into())
        .with("chance", cause.chance.clone().into());
    voice.say(&text)
}

fn next_check(voice: &Voice, check: &NextCheck) -> Html {
    html! {
        <>
            <h3>{ voice.words("advice.part.check") }</h3>
            <p>{ voice.say(&check.what) }{ " " }{ voice.say(&check.reading) }</p>
        </>
    }
}

fn remedies(voice: &Voice, remedies: &[RemedyFinding]) -> Html {
    let others = remedies
        .iter()
        .filter(|remedy| !remedy.leads)
        .take(REMEDIES);
    let items = others.map(|remedy| {
        html! {
            <li>
                { voice.say(&remedy.name) }
                <span class="paper-small">{ worth(voice, remedy) }</span>
            </li>
        }
    });
    html! {
        <>
            <h3>{ voice.words("advice.part.remedies") }</h3>
            <ol class="paper-list">{ for items }</ol>
        </>
    }
}

/// Why the settings are what they are, each reason once with all the settings it stands behind.
fn reasons(voice: &Voice, settings: &[Setting]) -> Html {
    let mut told: Vec<(String, Vec<String>)> = Vec::new();
    for setting in settings {
        let because = voice.say(&setting.advised.reason.because);
        let label = voice.say(&setting.label);
        match told.iter_mut().find(|(known, _)| *known == because) {
            Some((_, labels)) => labels.push(label),
            None => told.push((because, vec![label])),
        }
    }
    let items = told.iter().map(|(because, labels)| {
        html! { <li><b>{ labels.join("; ") }{ ": " }</b>{ because }</li> }
    });
    html! {
        <>
            <h3>{ voice.words("advice.paper.why") }</h3>
            <ul class="paper-list">{ for items }</ul>
        </>
    }
}

fn assumed(voice: &Voice, assumptions: &[Assumption]) -> Html {
    if assumptions.is_empty() {
        return Html::default();
    }
    let items = assumptions.iter();
    let items = items.map(|one| html! { <li>{ voice.say(&one.text) }</li> });
    html! {
        <>
            <h3>{ voice.words("advice.part.assumed") }</h3>
            <ul class="paper-list">{ for items }</ul>
        </>
    }
}
