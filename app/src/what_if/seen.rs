//! What shows of a change with the bike standing still.

use std::rc::Rc;

use sagwright_core::advice::what_if::{CLEAR_STEPS, Compared, FeltMove, WhatIf};
use sagwright_core::words::Text;
use yew::prelude::*;

use crate::advice_page::Voice;
use crate::pictures::{Chart, Figure};

/// Most feelings told: what moves less is lost beside them.
const MOST_TOLD: usize = 6;

/// Feel, sags and picture.
pub fn seen(voice: &Voice, what_if: &WhatIf) -> Html {
    html! {
        <>
            <h3>{ voice.words("what-if.feel") }</h3>
            { felt(voice, &what_if.feel) }
            <h3>{ voice.words("what-if.stance") }</h3>
            { table(voice, &what_if.rows) }
            <Figure chart={Rc::new(Chart::of_force(&what_if.picture))} voice={voice.clone()} />
        </>
    }
}

/// What would be felt, in words, most first.
pub fn felt(voice: &Voice, moves: &[FeltMove]) -> Html {
    if moves.is_empty() {
        return html! { <p>{ voice.words("what-if.feel.none") }</p> };
    }
    let items = moves.iter().take(MOST_TOLD).map(|one| {
        let key = match (one.steps > 0.0, one.steps.abs() >= CLEAR_STEPS) {
            (true, true) => "what-if.feel.much-more",
            (true, false) => "what-if.feel.more",
            (false, true) => "what-if.feel.much-less",
            (false, false) => "what-if.feel.less",
        };
        let text = Text::new(key)
            .with(
                "feeling",
                Text::new(format!("feeling.{}", one.feeling.word())).into(),
            )
            .with(
                "end",
                Text::new(format!("what-if.end.{}", one.end.word())).into(),
            );
        html! { <li>{ voice.say(&text) }</li> }
    });
    html! { <ul>{ for items }</ul> }
}

/// Figures before and after; those that do not move are left out.
fn table(voice: &Voice, rows: &[Compared]) -> Html {
    let told = rows.iter().map(|row| {
        let [before, after] = [row.before, row.after].map(|si| voice.quantity(si, row.dimension));
        (row, before, after)
    });
    let rows = told.map(|(row, before, after)| {
        let class = (before != after).then_some("shifted");
        html! {
            <tr {class}>
                <th scope="row">{ voice.say(&row.name) }</th>
                <td>{ before }</td>
                <td>{ after }</td>
            </tr>
        }
    });
    html! {
        <table class="data what-if-rows">
            <caption class="vh">{ voice.words("what-if.stance") }</caption>
            <thead>
                <tr>
                    <th scope="col">{ voice.words("what-if.what") }</th>
                    <th scope="col">{ voice.words("picture.ride.now") }</th>
                    <th scope="col">{ voice.words("picture.tried") }</th>
                </tr>
            </thead>
            <tbody>{ for rows }</tbody>
        </table>
    }
}
