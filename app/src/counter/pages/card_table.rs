//! The numbers of the job card: as the bike came in, as advised, and as it goes out.

use sagwright_core::advice::{Setting, SettingId as Id};
use sagwright_core::intake::{End, Field, Intake};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::parts::plain;
use crate::advice_page::{Voice, range};
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
        let advised = &setting.advised;
        let show = |si: f64| voice.quantity(si, advised.dimension);
        let field = field_of(setting);
        let left = field.get(out).map(|typed| {
            let text = Text::new("line.number")
                .with("number", Arg::Raw(typed.value.to_string()))
                .with("unit", Arg::Raw(beside(field, typed.unit)));
            plain(&text)
        });
        html! {
            <tr>
                <th scope="row">{ voice.say(&setting.label) }</th>
                <td>{ setting.now.map_or_else(|| "–".to_owned(), show) }</td>
                <td>
                    <strong>{ show(advised.value) }</strong>
                    if let Some(range) = range(voice, advised) { <span class="job-card-range">{ range }</span> }
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

/// The answer in which a setting is written down.
const fn field_of(setting: &Setting) -> Field {
    match setting.id {
        Id::ForkRate => Field::ForkRate,
        Id::ForkPressure => Field::ForkPressure,
        Id::ForkPreload => Field::ForkPreload,
        Id::ShockRate => Field::ShockRate,
        Id::ShockPreload => Field::ShockPreload,
        Id::ForkFreeSag => Field::ForkFreeSag,
        Id::ForkRiderSag => Field::ForkRiderSag,
        Id::RearFreeSag => Field::RearFreeSag,
        Id::RearRiderSag => Field::RearRiderSag,
        Id::ForkCompression => Field::ForkCompressionNow,
        Id::ForkRebound => Field::ForkReboundNow,
        Id::ShockLowCompression => Field::ShockLowNow,
        Id::ShockHighCompression => Field::ShockHighNow,
        Id::ShockRebound => Field::ShockReboundNow,
        Id::FrontTyre => Field::FrontTyre,
        Id::RearTyre => Field::RearTyre,
    }
}
