//! What the ride shows, as numbers at even times.

use std::rc::Rc;

use sagwright_core::advice::RidePicture;
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::motion::{Moment, Names, Side, lasts_s, moment};
use crate::advice_page::Voice;
use crate::pictures::scrolled;

/// Rows of the table less one.
const STEPS: u32 = 20;

/// What a column tells of a ride.
type Column = (&'static str, fn(&Moment) -> f64, Dimension);

const COLUMNS: [Column; 2] = [
    ("film.fork", |at| at.fork_m, Dimension::Length),
    ("film.rear", |at| at.rear_m, Dimension::Length),
];

/// A ride and how it is told.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The ride.
    pub picture: Rc<RidePicture>,
    /// What the two rides are called.
    pub names: Names,
    /// Words and units.
    pub voice: Voice,
    /// What it says in a sentence.
    pub message: String,
}

/// The table.
#[component]
pub fn Numbers(props: &Props) -> Html {
    let Props {
        picture,
        names,
        voice,
        message,
    } = props;
    let columns = || {
        let each = |side| COLUMNS.iter().map(move |column| (side, column));
        Side::BOTH.into_iter().flat_map(each)
    };
    let heads = columns().map(|(side, (what, ..))| {
        let head = Text::new("film.column")
            .with("bike", Text::new(side.name(*names)).into())
            .with("what", Text::new(*what).into());
        html! { <th scope="col">{ voice.say(&head) }</th> }
    });
    let end_s = lasts_s(picture);
    let rows = (0..=STEPS).map(|step| {
        let at_s = end_s * f64::from(step) / f64::from(STEPS);
        let cells = columns().map(|(side, (_, figure, dimension))| {
            let at = moment(picture, side, at_s);
            html! { <td>{ voice.quantity(figure(&at), *dimension) }</td> }
        });
        let ground_m = moment(picture, Side::After, at_s).ground_m;
        html! {
            <tr>
                <th scope="row">{ seconds(voice, at_s) }</th>
                <td>{ voice.quantity(ground_m, Dimension::Length) }</td>
                { for cells }
            </tr>
        }
    });
    let heads = html! {
        <>
            <th scope="col">{ voice.words("picture.ride.time") }</th>
            <th scope="col">{ voice.words("film.ground") }</th>
            { for heads }
        </>
    };
    scrolled(voice, message, heads, rows.collect())
}

/// A time within the ride.
pub fn seconds(voice: &Voice, at_s: f64) -> String {
    format!("{}\u{a0}s", voice.units().number(at_s, 2))
}

/// "fork 120 mm, rear 95 mm".
pub fn travels(voice: &Voice, at: &Moment) -> String {
    let text = Text::new("film.travels")
        .with("fork", Arg::Quantity(at.fork_m, Dimension::Length))
        .with("rear", Arg::Quantity(at.rear_m, Dimension::Length));
    voice.say(&text)
}
