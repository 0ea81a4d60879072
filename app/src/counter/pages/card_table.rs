//! The numbers of the job card: as the bike came in, as advised, and as it goes out.

use sagwright_core::advice::Setting;
use sagwright_core::intake::{End, Field, Intake};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::parts::plain;
use crate::advice_page::{Voice, shown};
use crate::counter::job::Job;
use crate::words::{beside, say};

/// The numbers the bike left with, visit after visit, and nothing else.
pub fn last_numbers(job: &Job) -> Intake {
    let mut out = Intake::default();
    for (_, work) in job.work() {
        for field in Field::ALL {
            if let Some(number) = field.get(&work.set) {
                field.set(&mut out, Some(number));
            }
        }
    }
    out
}

/// One end: as it came in, as advised, and as it goes out, by hand where nothing was written down.
pub fn table(voice: &Voice, settings: &[Setting], end: End, out: &Intake) -> Html {
    let own: Vec<&Setting> = settings.iter().filter(|one| one.end == end).collect();
    if own.is_empty() {
        return Html::default();
    }
    let rows = own.iter().map(|setting| {
        let row = shown(voice, setting);
        let field = setting.id.field();
        let left = field.get(out).map(|typed| {
            let text = Text::new("line.number")
                .with("number", Arg::Raw(typed.value.to_string()))
                .with("unit", Arg::Raw(beside(field, typed.unit)));
            let left = plain(&text);
            if setting.counted.is_some() {
                voice.with("advice.setting.from-closed", "clicks", Arg::Raw(left))
            } else {
                left
            }
        });
        html! {
            <tr>
                <th scope="row">
                    { row.label }
                    if let Some(spring) = &setting.in_stock {
                        <span class="job-card-below">{ voice.say(&spring.text) }</span>
                    }
                </th>
                <td>
                    if let Some(now) = &row.now {
                        { &now.first }
                        { now.below("job-card-below") }
                    } else {
                        { "–" }
                    }
                </td>
                <td>
                    <strong>{ &row.advised.first }</strong>
                    if let Some(range) = row.range { <span class="job-card-below">{ range }</span> }
                    { row.advised.below("job-card-below") }
                </td>
                <td class="job-card-out">{ left }</td>
            </tr>
        }
    });
    let key = match end {
        End::Front => "advice.end.front",
        End::Rear => "advice.end.rear",
        End::Both => "advice.end.both",
    };
    html! {
        <table>
            <thead>
                <tr>
                    <th scope="col">{ say(key) }</th>
                    <th scope="col">{ say("counter.beside.in") }</th>
                    <th scope="col">{ say("advice.setting.advised") }</th>
                    <th scope="col">{ say("counter.beside.out") }</th>
                </tr>
            </thead>
            <tbody>{ for rows }</tbody>
        </table>
    }
}
