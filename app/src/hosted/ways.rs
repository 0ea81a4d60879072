//! Each way in which the answers reach the workshop, with what exactly goes.

use std::rc::Rc;

use js_sys::{Date, encode_uri_component};
use sagwright_core::intake::Intake;
use sagwright_core::workshop::{Delivery, Parcel};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::around::ToPageAround;
use super::courier::use_courier;
use super::letter::{Letter, State};
use super::look::with_name;
use crate::browser;
use crate::state::to_file;
use crate::taking::{Code, copy, link_to, link_without_words};
use crate::words::{say, tell};

/// The field that holds the link.
const LINK_FIELD: &str = "sending-link";

/// One way.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Which.
    pub way: Delivery,
    /// What goes.
    pub parcel: Rc<Parcel>,
    /// Makes another parcel of the same answers.
    pub another: Callback<()>,
}

/// Its part of the page.
#[component]
pub fn Way(props: &Props) -> Html {
    let inside = match &props.way {
        Delivery::File => file(&props.parcel),
        Delivery::Link => html! { <Link parcel={Rc::clone(&props.parcel)} /> },
        Delivery::Code => code(&props.parcel.intake),
        Delivery::Email { address } => email(&props.parcel, address),
        Delivery::HostPage => html! { <ToPageAround parcel={Rc::clone(&props.parcel)} /> },
        Delivery::Endpoint { url } => html! {
            <Post url={url.clone()} parcel={Rc::clone(&props.parcel)} another={props.another.clone()} />
        },
    };
    html! {
        <section class="part">
            <h2>{ say(&format!("hosted.way.{}", props.way.word())) }</h2>
            { inside }
        </section>
    }
}

/// What goes, to the letter.
pub fn preview(to: Option<&str>, text: &str) -> Html {
    html! {
        <details class="more" open=true>
            <summary>{ say("hosted.preview") }</summary>
            <div class="code-more">
                if let Some(to) = to { <p>{ with_name("hosted.goes-to", to) }</p> }
                { going("hosted.preview", text) }
            </div>
        </details>
    }
}

/// A text that goes, under what is said by `key`.
pub fn going(key: &str, text: &str) -> Html {
    html! {
        <pre class="going" tabindex="0" role="region" aria-label={say(key)}>{ text.to_owned() }</pre>
    }
}

fn file(parcel: &Rc<Parcel>) -> Html {
    // A document of plain answers always has a JSON form.
    let text = to_file(&parcel.intake).unwrap_or_default();
    let save = {
        let text = text.clone();
        Callback::from(move |_: MouseEvent| {
            browser::save_file(&say("taking.file-name"), "application/json", &text);
        })
    };
    html! {
        <>
            <p>{ with_name("hosted.file-what", &parcel.workshop) }</p>
            <p><button type="button" class="button" onclick={save}>{ say("hosted.file-save") }</button></p>
            { preview(None, &text) }
        </>
    }
}

#[derive(PartialEq, Properties)]
struct LinkProps {
    parcel: Rc<Parcel>,
}

#[component]
fn Link(props: &LinkProps) -> Html {
    let told = use_state_eq(String::new);
    let Some(link) = link_to(&props.parcel.intake) else {
        return html! { <p>{ say("hosted.link-too-long") }</p> };
    };
    let onclick = {
        let (told, link) = (told.setter(), link.clone());
        Callback::from(move |_: MouseEvent| {
            let (told, link) = (told.clone(), link.clone());
            spawn_local(async move {
                let copied = copy(&link).await;
                told.set(say(if copied {
                    "taking.link-copied"
                } else {
                    "taking.not-copied"
                }));
                if !copied {
                    browser::select(LINK_FIELD);
                }
            });
        })
    };
    html! {
        <>
            <p>{ with_name("hosted.link-what", &props.parcel.workshop) }</p>
            <label class="number-label" for={LINK_FIELD}>{ say("taking.link-label") }</label>
            <input id={LINK_FIELD} class="box link" type="text" readonly=true value={link.clone()} />
            <p><button type="button" class="button" {onclick}>{ say("taking.copy-link") }</button></p>
            <p role="status" class="taken">{ (*told).clone() }</p>
        </>
    }
}

/// The code at the counter: with the answers to the workshop's own questions where they fit in.
fn code(intake: &Intake) -> Html {
    let bare = Intake {
        extra: Vec::new(),
        ..intake.clone()
    };
    let drawn = |intake: &Intake| Code::of(&link_without_words(intake)?);
    let whole = drawn(intake);
    let shortened = whole.is_none() && !intake.extra.is_empty();
    match whole.or_else(|| drawn(&bare)) {
        None => html! { <p>{ say("taking.code-too-long") }</p> },
        Some(code) => html! {
            <>
                <p>{ say(if shortened { "hosted.code-without" } else { "hosted.code-what" }) }</p>
                { code.draw(say("taking.code-name")) }
            </>
        },
    }
}

/// A draft in the rider's own mail program. Nothing goes before the rider sends it there.
fn email(parcel: &Rc<Parcel>, address: &str) -> Html {
    let subject = with_name("hosted.mail-subject", &parcel.workshop);
    let mut lines = vec![say("hosted.mail-hello"), String::new()];
    for one in &parcel.intake.extra {
        lines.extend([one.question.clone(), one.answer.clone(), String::new()]);
    }
    lines.push(link_to(&parcel.intake).unwrap_or_else(|| say("hosted.mail-attach")));
    lines.extend([
        String::new(),
        say("hosted.mail-agreed"),
        parcel.agreed.clone(),
    ]);
    // Line ends as mail has them (RFC 5322), in an address as RFC 6068 wants it: with its at sign as it is.
    let coded = |text: &str| String::from(encode_uri_component(text));
    let (to, about, body) = (
        coded(address).replace("%40", "@"),
        coded(&subject),
        coded(&lines.join("\r\n")),
    );
    let href = format!("mailto:{to}?subject={about}&body={body}");
    let shown = [subject, String::new()].into_iter().chain(lines);
    html! {
        <>
            <p>{ say("hosted.mail-what") }</p>
            <p><a class="button" {href}>{ say("hosted.mail-draft") }</a></p>
            { preview(Some(address), &shown.collect::<Vec<_>>().join("\n")) }
        </>
    }
}

#[derive(PartialEq, Properties)]
struct PostProps {
    url: String,
    parcel: Rc<Parcel>,
    another: Callback<()>,
}

/// Sending to the workshop's own address.
#[component]
fn Post(props: &PostProps) -> Html {
    let (courier, bag) = use_courier();
    let trouble = use_state_eq(String::new);
    let parcel = &props.parcel;
    let text = parcel.text().unwrap_or_default();
    let letter = bag.letters.iter().find(|one| one.id == parcel.id);
    let send = {
        let trouble = trouble.setter();
        let (parcel, url, text) = (Rc::clone(parcel), props.url.clone(), text.clone());
        Callback::from(move |_: MouseEvent| {
            let (courier, trouble) = (courier.clone(), trouble.clone());
            let letter = Letter::new(
                url.clone(),
                parcel.workshop.clone(),
                text.clone(),
                Date::now(),
            );
            let name = parcel.id.clone();
            spawn_local(async move {
                trouble.set(match courier.hand(&name, &letter).await {
                    Ok(()) => String::new(),
                    Err(error) => {
                        tell(&error.text(), &sagwright_core::words::UnitChoice::default())
                    }
                });
            });
        })
    };
    let again = props.another.reform(|_: MouseEvent| ());
    let told = letter.map(|letter| match letter.record.state {
        State::Arrived => with_name("hosted.arrived", &parcel.workshop),
        State::Waiting => with_name("hosted.waiting", &parcel.workshop),
        State::Refused(_) => with_name("hosted.refused", &parcel.workshop),
    });
    html! {
        <>
            <p>{ with_name("hosted.post-what", &parcel.workshop) }</p>
            if letter.is_none() {
                <p><button type="button" class="button button-main" onclick={send}>{ say("hosted.post") }</button></p>
            } else {
                <p><button type="button" class="button" onclick={again}>{ say("hosted.post-again") }</button></p>
            }
            <p role="status" class="taken">{ told.unwrap_or_else(|| (*trouble).clone()) }</p>
            { preview(Some(&props.url), &text) }
        </>
    }
}
