//! The job card: everything the bench needs on one sheet of paper.

use std::rc::Rc;

use sagwright_core::advice::{Advice, Caution, RemedyFinding, SetUpAdvice, SignalWord};
use sagwright_core::intake::{End, Question};
use sagwright_core::words::{Arg, Text};
use sagwright_core::workshop::{Contact, Workshop};
use web_sys::HtmlElement;
use yew::prelude::*;

use super::card_table::{last_numbers, table};
use super::parts::{back, called, desk_of, heading, no_job, plain};
use crate::advice_page::{Voice, chance, worth};
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
use crate::words::{book, say};

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
    let card = use_node_ref();
    {
        let card = card.clone();
        use_effect_with(counter.workshop.clone(), move |workshop| {
            wear(&card, workshop.as_ref());
        });
    }
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
            <article ref={card} class="job-card" aria-label={say("counter.card")}>
                { head(&counter, job) }
                { who(job) }
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
                if let Some(workshop) = workshop { { reach(&workshop.contact) } }
            </div>
            <div class="job-card-right">
                <p><strong>{ say("counter.card") }</strong>{ " · " }{ plain(&stage_name(job.stage.is)) }</p>
                <p>{ plain(&day) }</p>
            </div>
        </header>
    }
}

/// How to reach the workshop, on one line.
fn reach(contact: &Contact) -> Html {
    let Contact {
        phone,
        email,
        address,
        website,
    } = contact;
    let told = [address, phone, email, website].into_iter();
    let told = told.filter(|line| !line.is_empty());
    html! { <ul class="job-card-reach">{ for told.map(|line| html! { <li>{ line }</li> }) }</ul> }
}

/// The workshop's colour on the card's rule, where it has one that is dark enough for paper.
fn wear(card: &NodeRef, workshop: Option<&Rc<Workshop>>) {
    let Some(card) = card.cast::<HtmlElement>() else {
        return;
    };
    let accent = workshop.and_then(|workshop| workshop.theme.accent.clone());
    let style = card.style();
    // Neither can fail: the name is well-formed.
    match accent {
        Some(accent) => style.set_property("--card-accent", &accent).ok(),
        None => style.remove_property("--card-accent").ok().map(drop),
    };
}

/// Rider, bike and complaints.
fn who(job: &Job) -> Html {
    let wizard = Rc::new(job.now());
    let desk = desk_of(Rc::clone(&wizard));
    let facts = [
        Question::RiderWeight,
        Question::RiderPace,
        Question::ServiceHours,
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
            if let Some(counting) = &advice.counting { <p>{ voice.say(counting) }</p> }
            <div class="job-card-tables">{ for tables }</div>
            <div class="job-card-two">
                <section>
                    <h2>{ say("advice.part.causes") }</h2>
                    <ul>{ for causes }</ul>
                </section>
                <section>
                    <h2>{ say("counter.card.remedies") }</h2>
                    <ul class="boxes">{ for remedies.iter().map(|remedy| html! {
                        <li>
                            { voice.say(&remedy.name) }{ " – " }{ worth(voice, remedy) }
                            if let Some(spring) = &remedy.in_stock { { " " }{ voice.say(&spring.text) } }
                        </li>
                    }) }</ul>
                </section>
            </div>
            { warnings(voice, all) }
        </>
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
