//! The settings card: what to set, old beside new, a table per end.

use sagwright_core::advice::{Caution, Setting};
use sagwright_core::intake::End;
use sagwright_core::quantity::{Dimension, Unit};
use sagwright_core::words::Text;
use yew::prelude::*;

use super::contents::{Part, heading};
use super::nearest::nearest;
use super::reason::why;
use super::shown::{Shown, shown};
use super::units::unit_switches;
use super::{Voice, signal};

/// Kinds of number on the card that riders read in more than one unit.
const SWITCHED: [Dimension; 3] = [Dimension::Rate, Dimension::Pressure, Dimension::Length];

/// The card.
pub fn settings(
    voice: &Voice,
    settings: &[Setting],
    counting: Option<&Text>,
    on_unit: &Callback<(Dimension, Unit)>,
) -> Html {
    let shared = shared_cautions(settings);
    let shown: Vec<Dimension> = SWITCHED
        .into_iter()
        .filter(|&kind| settings.iter().any(|one| one.advised.dimension == kind))
        .collect();
    html! {
        <section class="part settings">
            { heading(voice, Part::Settings) }
            { unit_switches(voice, &shown, on_unit) }
            if let Some(counting) = counting { <p>{ voice.say(counting) }</p> }
            { signal::grouped(voice, shared.iter().copied()) }
            <div class="cards">
                { for End::ALL.iter().map(|&end| end_card(voice, settings, end, &shared)) }
            </div>
        </section>
    }
}

/// The table of one end; nothing where the advice has nothing to set there.
fn end_card(voice: &Voice, settings: &[Setting], end: End, shared: &[&Caution]) -> Html {
    let own: Vec<&Setting> = settings.iter().filter(|s| s.end == end).collect();
    if own.is_empty() {
        return Html::default();
    }
    let rows = own.iter().map(|setting| rows_of(voice, setting, shared));
    html! {
        <div class="end-card">
            <h3>{ voice.words(end_key(end)) }</h3>
            // The roles are those the elements have anyway, said again for where the style makes them a grid.
            <table class="card" role="table">
                <caption class="vh">{ voice.words(end_key(end)) }</caption>
                <thead role="rowgroup">
                    <tr role="row">
                        <th scope="col" role="columnheader">{ voice.words("advice.setting") }</th>
                        <th scope="col" role="columnheader">{ voice.words("advice.setting.now") }</th>
                        <th scope="col" role="columnheader">{ voice.words("advice.setting.advised") }</th>
                    </tr>
                </thead>
                { for rows }
            </table>
        </div>
    }
}

/// Key of the name of an end.
pub const fn end_key(end: End) -> &'static str {
    match end {
        End::Front => "advice.end.front",
        End::Rear => "advice.end.rear",
        End::Both => "advice.end.both",
    }
}

/// The cautions that stand on more than one row: said once, before the tables, not on every row.
fn shared_cautions(settings: &[Setting]) -> Vec<&Caution> {
    let every = || settings.iter().flat_map(|setting| &setting.cautions);
    every()
        .filter(|one| every().filter(|other| other == one).count() > 1)
        .collect()
}

fn rows_of(voice: &Voice, setting: &Setting, shared: &[&Caution]) -> Html {
    let advised = &setting.advised;
    let row = shown(voice, setting);
    let label = &row.label;
    let own = setting.cautions.iter().filter(|one| !shared.contains(one));
    html! {
        <tbody role="rowgroup">
            <tr class="card-values" role="row">
                <th scope="row" role="rowheader">{ label }</th>
                <td role="cell">{ now(voice, &row) }</td>
                <td role="cell">
                    <strong class={row.advised.class("card-number")}>{ &row.advised.first }</strong>
                    { row.advised.below("hint block") }
                    if let Some(range) = &row.range {
                        <span class="hint block">
                            { voice.words("advice.setting.range") }
                            <span class="unbroken">{ range }</span>
                        </span>
                    }
                </td>
            </tr>
            <tr class="card-notes" role="row">
                <td colspan="3" role="cell">
                    { signal::grouped(voice, own) }
                    { for setting.notes.iter().map(|note| html! { <p>{ voice.say(note) }</p> }) }
                    if let Some(spring) = &setting.in_stock { <p>{ voice.say(&spring.text) }</p> }
                    { nearest(voice, &setting.nearest) }
                    { why(voice, label, &advised.reason, advised.dimension) }
                </td>
            </tr>
        </tbody>
    }
}

/// How a setting stands now, and that it may stay where that is what is advised.
fn now(voice: &Voice, row: &Shown) -> Html {
    let Some(now) = &row.now else {
        return html! { <span class="hint">{ voice.words("advice.setting.unknown") }</span> };
    };
    html! {
        <>
            <span class={now.class("card-now")}>{ &now.first }</span>
            { now.below("hint block") }
            if *now == row.advised {
                <span class="hint block">{ voice.words("advice.setting.keep") }</span>
            }
        </>
    }
}
