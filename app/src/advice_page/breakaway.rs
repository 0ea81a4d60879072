//! How hard a fork has to be pushed before it moves, gas beside coil.

use sagwright_core::advice::BreakawayTable;
use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use super::Voice;
use super::chances::bar;
use super::reason::why;

/// The table with a bar per number; nothing where nothing was worked out.
pub fn breakaway(voice: &Voice, table: &BreakawayTable) -> Html {
    let rows = &table.rows;
    if rows.is_empty() {
        return Html::default();
    }
    let longest = rows
        .iter()
        .flat_map(|row| [row.off_top_out, row.at_ride_height])
        .fold(0.0, f64::max);
    let cell = |force: f64| {
        let part = if longest > 0.0 { force / longest } else { 0.0 };
        html! {
            <td>
                { voice.quantity(force, Dimension::Force) }
                { bar(part) }
            </td>
        }
    };
    let rows = rows.iter().map(|row| {
        html! {
            <tr>
                <th scope="row">{ voice.say(&row.name) }</th>
                { cell(row.off_top_out) }
                { cell(row.at_ride_height) }
            </tr>
        }
    });
    let reasons = [
        ("advice.breakaway.top-out", &table.off_top_out),
        ("advice.breakaway.ride-height", &table.at_ride_height),
    ]
    .map(|(key, reason)| {
        let name = voice.words(key);
        html! {
            <>
                <h4>{ &name }</h4>
                { why(voice, &name, reason, Dimension::Force) }
            </>
        }
    });
    html! {
        <div class="breakaway">
            <h3>{ voice.words("advice.breakaway") }</h3>
            <p>{ voice.words("advice.breakaway.lead") }</p>
            <table class="data">
                <caption class="vh">{ voice.words("advice.breakaway") }</caption>
                <thead>
                    <tr>
                        <th scope="col">{ voice.words("advice.breakaway.fork") }</th>
                        <th scope="col">{ voice.words("advice.breakaway.top-out") }</th>
                        <th scope="col">{ voice.words("advice.breakaway.ride-height") }</th>
                    </tr>
                </thead>
                <tbody>{ for rows }</tbody>
            </table>
            { for reasons }
        </div>
    }
}
