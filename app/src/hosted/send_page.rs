//! Handing the answers to the workshop: what it asks the rider to agree to, then the ways it has chosen.

use std::rc::Rc;

use sagwright_core::intake::check;
use sagwright_core::workshop::{Delivery, PARCEL_VERSION, Parcel, Workshop};
use yew::prelude::*;

use super::courier::use_courier;
use super::look::{send_heading, with_name};
use super::outbox_page::outbox;
use super::questions::open_questions;
use super::settings::workshop;
use super::ways::Way;
use crate::desk::{Desk, use_desk, use_title};
use crate::framed;
use crate::inputs::tick;
use crate::route::Route;
use crate::shell::HEADING;
use crate::store::fresh_id;
use crate::words::say;

/// The end of the advice where a workshop waits for it.
pub fn to_send() -> Html {
    let Some(workshop) = workshop() else {
        return Html::default();
    };
    html! {
        <section class="part take-along">
            <h2>{ with_name("hosted.send", &workshop.name) }</h2>
            <p>{ say("hosted.send-why") }</p>
            <p><a class="button button-main" href={Route::Send.fragment()}>{ say("hosted.send-open") }</a></p>
        </section>
    }
}

/// How to reach the workshop, as text.
fn contact(workshop: &Workshop) -> Html {
    let told = &workshop.contact;
    let lines = [&told.phone, &told.email, &told.address, &told.website];
    let lines = lines.into_iter().filter(|line| !line.trim().is_empty());
    html! { <ul class="contact">{ for lines.map(|line| html! { <li>{ line.clone() }</li> }) }</ul> }
}

/// What the workshop asks riders to agree to; where it says nothing, that the answers go there.
pub fn consent_of(workshop: &Workshop) -> String {
    let own = workshop.consent.trim();
    if own.is_empty() {
        with_name("hosted.consent-usual", &workshop.name)
    } else {
        own.to_owned()
    }
}

/// The ways that are offered here; the usual ones where the workshop names none for this page. `framed` is whether there is
/// a page around that can be told.
fn ways_of(workshop: &Workshop, framed: bool) -> Vec<Delivery> {
    let named = workshop.delivery.iter();
    let here: Vec<Delivery> = named
        .filter(|way| framed || **way != Delivery::HostPage)
        .cloned()
        .collect();
    if here.is_empty() {
        vec![Delivery::File, Delivery::Link, Delivery::Code]
    } else {
        here
    }
}

/// The page.
#[component]
pub fn SendPage() -> Html {
    let desk = use_desk();
    let (courier, bag) = use_courier();
    let heading = send_heading();
    use_title(&heading, false);
    html! {
        <>
            <p class="back"><a href={Route::Advice.fragment()}>{ say("sheet.back") }</a></p>
            <div class="question wide sending">
                <h1 id={HEADING} tabindex="-1">{ heading }</h1>
                { outbox(&courier, &bag) }
                {
                    match workshop() {
                        None => html! { <p>{ say("hosted.nobody") }</p> },
                        Some(workshop) => html! { <>{ contact(&workshop) }{ to_do(&desk, &workshop) }</> },
                    }
                }
            </div>
        </>
    }
}

/// What has to be done before, or the consent.
fn to_do(desk: &Desk, workshop: &Rc<Workshop>) -> Html {
    let document = desk.wizard.document();
    let first = |key: &str, to: Route| {
        html! {
            <>
                <p>{ say(key) }</p>
                <p><a class="button button-main" href={to.fragment()}>{ say("hosted.first-open") }</a></p>
            </>
        }
    };
    if !open_questions(desk).is_empty() {
        return first("hosted.first-questions", Route::Extra);
    }
    if desk.wizard.is_untouched() || check(&document).is_err() {
        return first("hosted.first-answers", Route::Check);
    }
    html! { <Agreeing workshop={Rc::clone(workshop)} /> }
}

#[derive(PartialEq, Properties)]
struct AgreeingProps {
    workshop: Rc<Workshop>,
}

/// The consent, and once it is given the ways.
#[component]
fn Agreeing(props: &AgreeingProps) -> Html {
    let desk = use_desk();
    let agreed = use_state_eq(|| false);
    // Sent once more, it is another parcel.
    let made = use_state_eq(|| 0_u32);
    let workshop = &props.workshop;
    let parcel = use_memo((Rc::clone(&desk.wizard), *made), |(wizard, _)| Parcel {
        version: PARCEL_VERSION,
        id: fresh_id(),
        made: js_sys::Date::new_0().to_iso_string().into(),
        workshop: workshop.name.clone(),
        agreed: consent_of(workshop),
        intake: wizard.document(),
    });
    let agree = {
        let set = agreed.setter();
        tick("hosted.agree", *agreed, Some("agree"), move |so| {
            set.set(so);
        })
    };
    let another = {
        let made = made.clone();
        Callback::from(move |()| made.set(*made + 1))
    };
    let ways = ways_of(workshop, framed::around().is_some())
        .into_iter()
        .map(|way| {
            let key = way.word();
            html! { <Way {key} {way} parcel={Rc::clone(&parcel)} another={another.clone()} /> }
        });
    html! {
        <>
            <section class="part">
                <h2>{ say("hosted.consent") }</h2>
                <blockquote class="consent">{ consent_of(workshop) }</blockquote>
                { agree }
            </section>
            if *agreed {
                <>{ for ways }</>
            } else {
                <p class="hint">{ say("hosted.agree-first") }</p>
            }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_is_a_way_whatever_the_workshop_names() {
        let demo = include_str!("../../../demo-data/workshop.json");
        let mut workshop = sagwright_core::workshop::read(demo).expect("the demo workshop");
        let usual = [Delivery::File, Delivery::Link, Delivery::Code];
        for (named, offered) in [
            (vec![], &usual[..]),
            (vec![Delivery::HostPage], &usual[..]),
            (vec![Delivery::HostPage, Delivery::Link], &usual[1..2]),
        ] {
            workshop.delivery = named;
            assert_eq!(ways_of(&workshop, false), offered);
        }
        workshop.delivery = vec![Delivery::HostPage];
        assert_eq!(ways_of(&workshop, true), [Delivery::HostPage]);
    }
}
