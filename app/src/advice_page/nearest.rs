//! The rates that are sold, with the sag each gives.

use sagwright_core::advice::NearestRate;
use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use super::Voice;

/// A small table to unfold; nothing where nothing is sold in steps.
pub fn nearest(voice: &Voice, rates: &[NearestRate]) -> Html {
    if rates.is_empty() {
        return Html::default();
    }
    let rows = rates.iter().map(|rate| {
        html! {
            <tr>
                <th scope="row">{ voice.quantity(rate.rate, Dimension::Rate) }</th>
                <td>{ voice.quantity(rate.rider_sag, Dimension::Length) }</td>
                <td>{ voice.quantity(rate.free_sag, Dimension::Length) }</td>
            </tr>
        }
    });
    html! {
        <details class="more">
            <summary>{ voice.words("advice.nearest") }</summary>
            <table class="data nearest">
                <caption class="vh">{ voice.words("advice.nearest") }</caption>
            <thead>
                <tr>
                    <th scope="col">{ voice.words("advice.nearest.rate") }</th>
                    <th scope="col">{ voice.words("advice.nearest.rider-sag") }</th>
                    <th scope="col">{ voice.words("advice.nearest.free-sag") }</th>
                </tr>
            </thead>
            <tbody>{ for rows }</tbody>
            </table>
        </details>
    }
}
