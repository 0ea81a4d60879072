//! "See it ride": what rides were like before and after, as pictures and in figures of feel.

use std::rc::Rc;

use sagwright_core::advice::{FeelChange, Ridden};
use sagwright_core::intake::End;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::Voice;
use super::contents::{Part, heading};
use super::reason::folded;
use crate::film::Film;
use crate::later::Later;
use crate::pictures::{Figure, before_key, ride_chart};

/// The section.
pub fn rides(voice: &Voice, ridden: &Ridden) -> Html {
    let lead = if ridden.before_told {
        "advice.rides.lead"
    } else {
        "advice.rides.lead-usual"
    };
    let names = [before_key(ridden.before_told), "picture.ride.advised"];
    let films = ridden.pictures.iter().map(|picture| {
        html! {
            <Later>
                <Film
                    picture={Rc::new(picture.clone())}
                    {names}
                    voice={voice.clone()}
                />
            </Later>
        }
    });
    let figures = ridden.pictures.iter().flat_map(|picture| {
        [End::Front, End::Rear].map(|end| {
            let chart = Rc::new(ride_chart(picture, end, ridden.before_told));
            html! { <Later><Figure {chart} voice={voice.clone()} /></Later> }
        })
    });
    html! {
        <section class="part">
            { heading(voice, Part::Rides) }
            <p>{ voice.words(lead) }</p>
            <div class="ride-figures">{ for films }{ for figures }</div>
            { feel(voice, &ridden.feel, names) }
        </section>
    }
}

/// The figures of feel before and after, each called by its key, a group of rows per kind of ground.
pub fn feel(voice: &Voice, changes: &[FeelChange], [before, after]: [&'static str; 2]) -> Html {
    if changes.is_empty() {
        return Html::default();
    }
    let grounds = changes.chunk_by(|one, next| one.ground == next.ground);
    let bodies = grounds.map(|rows| {
        let ground = rows.first().map(|row| voice.say(&row.ground));
        html! {
            <tbody>
                <tr><th class="feel-ground" scope="rowgroup" colspan="3">{ ground }</th></tr>
                { for rows.iter().map(|row| feel_row(voice, row)) }
            </tbody>
        }
    });
    let kinds = changes.chunk_by(|one, next| one.ground == next.ground);
    let count = i64::try_from(kinds.count()).unwrap_or(i64::MAX);
    let summary = Text::new("advice.rides.feel.fold").with("count", Arg::Count(count));
    html! {
        <details class="more feel">
            <summary>{ voice.say(&summary) }</summary>
            <table class="data">
                <caption class="vh">{ voice.words("advice.rides.feel") }</caption>
                <thead>
                    <tr>
                        <th scope="col">{ voice.words("advice.rides.feel.what") }</th>
                        <th scope="col">{ voice.words(before) }</th>
                        <th scope="col">{ voice.words(after) }</th>
                    </tr>
                </thead>
                { for bodies }
            </table>
            { meanings(voice, changes) }
        </details>
    }
}

fn feel_row(voice: &Voice, row: &FeelChange) -> Html {
    html! {
        <tr>
            <th scope="row">{ voice.say(&row.name) }</th>
            <td>{ voice.quantity(row.before, row.dimension) }</td>
            <td>{ voice.quantity(row.after, row.dimension) }</td>
        </tr>
    }
}

/// What each figure means and where that comes from, once for all kinds of ground.
fn meanings(voice: &Voice, rows: &[FeelChange]) -> Html {
    let first = |(at, row): &(usize, &FeelChange)| {
        rows.iter().position(|other| other.name == row.name) == Some(*at)
    };
    let terms = rows.iter().enumerate().filter(first).map(|(_, row)| {
        html! {
            <>
                <dt>{ voice.say(&row.name) }</dt>
                <dd>
                    { voice.say(&row.because) }{ " " }
                    <span class="hint">{ voice.say(&row.source) }</span>
                </dd>
            </>
        }
    });
    let body = html! { <dl class="grounds">{ for terms }</dl> };
    folded(voice, &voice.words("advice.rides.feel"), body)
}
