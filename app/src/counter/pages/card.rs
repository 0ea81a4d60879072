//! The job card: everything the bench needs on one sheet of paper.

use std::rc::Rc;

use sagwright_core::advice::{Advice, Caution, RemedyFinding, SetUpAdvice, Setting, SignalWord};
use sagwright_core::intake::{End, Field, Intake};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::beside::worth;
use super::parts::{back, called, desk_of, heading, no_job, plain};
use crate::advice_page::{Voice, chance, range};
use crate::advising::Outcome;
use crate::browser;
use crate::counter::asking::use_answered;
use crate::counter::find::{class_name, feeling_name, stage_name, title};
use crate::counter::job::{Job, Work};
use crate::counter::keeper::now;
use crate::counter::opened::{Found, use_job};
use crate::counter::route::Place;
use crate::counter::shell::{Counter, use_counter};
use crate::desk::use_title;
use crate::pages::said;
use crate::state::{Page, Value, lines};
use crate::words::{beside, book, say};

/// Remedies with a box to tick.
const REMEDIES: usize = 5;

/// Causes named.
const CAUSES: usize = 3;

/// Which job.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The name it is kept under.
    pub id: String,
}

/// Waits for the job.
#[component]
pub fn CardPage(props: &Props) -> Html {
    let counter = use_counter();
    use_title(&say("counter.card"), false);
    match use_job(&counter, &props.id) {
        Found::There(job) => html! { <Card id={props.id.clone()} {job} /> },
        found => no_job(&found),
    }
}

#[derive(PartialEq, Properties)]
struct CardProps {
    id: String,
    job: Rc<Job>,
}

/// The card on the screen as it comes out of the printer.
#[component]
fn Card(props: &CardProps) -> Html {
    let counter = use_counter();
    let CardProps { id, job } = props;
    let intakes = use_memo(Rc::clone(job), |job| vec![job.now().document()]);
    let answered = use_answered(&counter.rider, &intakes, counter.workshop.as_ref());
    let voice = Voice::new(book(), (*counter.units).clone());
    let print = Callback::from(|_: MouseEvent| browser::print());
    let outcome = answered.outcomes.first().and_then(Option::as_ref);
    html! {
        <>
            <div class="card-screen">
                { back(&Place::Job(id.clone()), "counter.back-to-job") }
                { heading(say("counter.card")) }
                <p>{ say("counter.card.why") }</p>
                <p class="job-ways">
                    <button type="button" class="button button-main" onclick={print}>{ say("advice.print") }</button>
                </p>
                <p class="hint" role="status">
                    { say(if answered.busy { "counter.columns.busy" } else { "counter.card.ready" }) }
                </p>
            </div>
            <article class="job-card" aria-label={say("counter.card")}>
                { head(&counter, job) }
                { who(&counter, job) }
                {
                    match outcome {
                        None => html! { <p>{ say("advice.working") }</p> },
                        Some(Outcome::Refused(error)) => html! {
                            <ul>{ for error.problems.iter().map(|one| html! { <li>{ voice.say(&one.text) }</li> }) }</ul>
                        },
                        Some(Outcome::Advice(advice, _)) => match advice.as_ref() {
                            Advice::StopRiding(stop) => html! {
                                <>
                                    <p class="job-card-sentence">{ voice.say(&stop.sentence) }</p>
                                    <ul>{ for stop.signs.iter().map(|sign| html! { <li>{ voice.say(&sign.instead) }</li> }) }</ul>
                                    { warnings(&voice, stop.cautions.iter()) }
                                </>
                            },
                            Advice::SetUp(set_up) => set_up_parts(&voice, job, set_up),
                        },
                    }
                }
                { done(job) }
                { signatures() }
            </article>
        </>
    }
}

/// The workshop, the day, and what the job is kept under.
fn head(counter: &Counter, job: &Job) -> Html {
    let day = Text::new("counter.card.day")
        .with("came", Arg::Raw(browser::day(job.came)))
        .with("today", Arg::Raw(browser::day(now())));
    let workshop = counter.workshop.as_ref();
    html! {
        <header class="job-card-head">
            <div>
                <p class="job-card-workshop">
                    { workshop.map_or_else(|| say("counter.card.no-workshop"), |workshop| workshop.name.clone()) }
                </p>
            </div>
            <div class="job-card-right">
                <p><strong>{ say("counter.card") }</strong>{ " · " }{ plain(&stage_name(job.stage.is)) }</p>
                <p>{ plain(&day) }</p>
            </div>
        </header>
    }
}

/// Rider, bike and complaints.
fn who(counter: &Counter, job: &Job) -> Html {
    let wizard = Rc::new(job.now());
    let desk = desk_of(counter, Rc::clone(&wizard));
    let facts = [
        sagwright_core::intake::Question::RiderWeight,
        sagwright_core::intake::Question::RiderPace,
        sagwright_core::intake::Question::ServiceHours,
    ];
    let facts = facts.into_iter().filter_map(|question| {
        let page = Page::Ask(question);
        let value = lines(&wizard, page);
        matches!(value, Value::Said(_)).then(|| {
            html! {
                <div>
                    <dt>{ crate::pages::name(&desk, page) }</dt>
                    <dd>{ said(&desk, value) }</dd>
                </div>
            }
        })
    });
    let complaints = wizard.intake.complaints.iter().flatten();
    let felt: Vec<Html> = complaints
        .map(|one| {
            let severity = one.severity.map(|severity| {
                let text = Text::new(format!("choice.severity.{}", severity.word()));
                html! { <>{ " – " }{ plain(&text) }</> }
            });
            html! { <li>{ plain(&feeling_name(one.feeling)) }{ severity }</li> }
        })
        .collect();
    let class = wizard.intake.bike.class;
    html! {
        <div class="job-card-who">
            <dl>
                <div>
                    <dt>{ say("counter.column.name") }</dt>
                    <dd>{ called(&title(job)) }</dd>
                </div>
                if !job.contact.is.is_empty() {
                    <div><dt>{ say("counter.column.contact") }</dt><dd>{ job.contact.is.clone() }</dd></div>
                }
                if let Some(class) = class {
                    <div><dt>{ say("counter.column.class") }</dt><dd>{ plain(&class_name(class)) }</dd></div>
                }
                { for facts }
            </dl>
            <div>
                <h2>{ say("counter.column.complaints") }</h2>
                if felt.is_empty() {
                    <p>{ say("counter.card.no-complaint") }</p>
                } else {
                    <ul>{ for felt }</ul>
                }
            </div>
        </div>
    }
}

fn set_up_parts(voice: &Voice, job: &Job, advice: &SetUpAdvice) -> Html {
    let out = last_numbers(job);
    let tables = End::ALL
        .iter()
        .map(|end| table(voice, &advice.settings, *end, &out));
    let causes = advice.causes.iter().take(CAUSES);
    let causes = causes.map(|cause| {
        html! { <li>{ voice.say(&cause.name) }{ ", " }{ chance(voice, cause.probability) }</li> }
    });
    let leading = advice.remedies.iter().filter(|remedy| remedy.leads);
    let others = advice.remedies.iter().filter(|remedy| !remedy.leads);
    let remedies: Vec<&RemedyFinding> = leading.chain(others).take(REMEDIES).collect();
    let own = remedies.first().map(|remedy| remedy.cautions.iter());
    let all = own.into_iter().flatten().chain(&advice.cautions);
    let all = all.chain(advice.settings.iter().flat_map(|setting| &setting.cautions));
    html! {
        <>
            <p class="job-card-sentence">{ voice.say(&advice.sentence) }</p>
            <div class="job-card-tables">{ for tables }</div>
            <div class="job-card-two">
                <section>
                    <h2>{ say("advice.part.causes") }</h2>
                    <ul>{ for causes }</ul>
                </section>
                <section>
                    <h2>{ say("counter.card.remedies") }</h2>
                    <ul class="boxes">{ for remedies.iter().map(|remedy| html! {
                        <li>{ voice.say(&remedy.name) }{ " – " }{ worth(voice, remedy) }</li>
                    }) }</ul>
                </section>
            </div>
            { warnings(voice, all) }
        </>
    }
}

/// The numbers the bike left with, visit after visit, and nothing else.
fn last_numbers(job: &Job) -> Intake {
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
fn table(voice: &Voice, settings: &[Setting], end: End, out: &Intake) -> Html {
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
    use sagwright_core::advice::SettingId as Id;
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

/// Every caution once, the gravest first, in words that need no colour.
fn warnings<'a>(voice: &Voice, cautions: impl Iterator<Item = &'a Caution>) -> Html {
    let mut once: Vec<&Caution> = Vec::new();
    for caution in cautions {
        if !once.iter().any(|known| known.text == caution.text) {
            once.push(caution);
        }
    }
    once.sort_by_key(|caution| caution.signal);
    let items = once.iter().map(|caution| {
        let word = say(&format!("signal.{}", caution.signal.word()));
        let grave = matches!(caution.signal, SignalWord::Danger | SignalWord::Warning);
        html! {
            <li>
                <strong class={classes!("job-card-signal", grave.then_some("job-card-grave"))}>{ word }</strong>
                { " " }
                { voice.say(&caution.text) }
            </li>
        }
    });
    html! {
        <section class="job-card-cautions">
            <h2>{ say("counter.card.cautions") }</h2>
            <ul>{ for items }</ul>
        </section>
    }
}

/// What was done, and lines to write on where nothing was written down yet.
fn done(job: &Job) -> Html {
    let last: Option<Work> = job.work().next_back().map(|(_, work)| work.clone());
    let Work {
        date,
        by,
        oil,
        valving,
        other,
        ..
    } = last.unwrap_or_default();
    let fields = [
        ("counter.date", date),
        ("counter.by", by),
        ("counter.column.oil", oil),
        ("counter.column.valving", valving),
        ("counter.column.other", other),
    ];
    let rows = fields.into_iter().map(|(key, text)| {
        html! { <div class="job-card-line"><dt>{ say(key) }</dt><dd>{ text }</dd></div> }
    });
    html! {
        <section class="job-card-done">
            <h2>{ say("counter.work") }</h2>
            <dl>{ for rows }</dl>
        </section>
    }
}

fn signatures() -> Html {
    html! {
        <footer class="job-card-signatures">
            <p>{ say("counter.card.rider-signs") }</p>
            <p>{ say("counter.card.workshop-signs") }</p>
        </footer>
    }
}
