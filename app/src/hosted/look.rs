//! What every page says about the workshop, and where the advice leads to it.

use sagwright_core::words::{Arg, Text, UnitChoice};
use sagwright_core::workshop::Workshop;
use yew::prelude::*;

use super::courier::Courier;
use super::letter::State;
use super::settings::{Trouble, trouble, workshop};
use crate::route::Route;
use crate::words::{say, tell};

/// A sentence with the workshop's name in it.
pub fn with_name(key: &'static str, name: &str) -> String {
    let text = Text::new(key).with("name", Arg::Raw(name.to_owned()));
    tell(&text, &UnitChoice::default())
}

/// The line beside the wordmark: whom the page stands for.
pub fn names() -> Option<String> {
    workshop().map(|workshop| with_name("hosted.for", &workshop.name))
}

/// What stands above the page: that the workshop's document cannot be used, and that answers wait to be sent.
pub fn about_workshop(courier: &Courier) -> Html {
    let waiting = courier
        .letters
        .iter()
        .filter(|one| one.record.state != State::Arrived);
    let waiting: Vec<_> = waiting.collect();
    let letters = waiting.first().map(|first| {
        let refused = waiting.iter().any(|one| one.record.state != State::Waiting);
        let key = match (refused, courier.kept) {
            (true, _) => "hosted.notice-refused",
            (false, true) => "hosted.notice-waiting",
            (false, false) => "hosted.notice-unkept",
        };
        html! {
            <div class="notice">
                <p>{ with_name(key, &first.record.workshop) }</p>
                <p><a href={Route::Send.fragment()}>{ say("hosted.notice-open") }</a></p>
            </div>
        }
    });
    html! {
        <div role="status" class="notices">
            { for trouble().map(|trouble| refused(&trouble)) }
            { for letters }
        </div>
    }
}

/// Why the workshop's document is not used.
fn refused(trouble: &Trouble) -> Html {
    let key = match trouble {
        Trouble::Elsewhere => "hosted.elsewhere",
        Trouble::Missing => "hosted.missing",
        Trouble::Wrong(_) => "hosted.wrong",
    };
    let lines = match trouble {
        Trouble::Wrong(problems) => problems.as_slice(),
        _ => &[],
    };
    let lines = lines.iter().map(|(place, text)| {
        let said = tell(text, &UnitChoice::default());
        let place =
            (!place.is_empty()).then(|| html! { <><code>{ place.clone() }</code>{ ": " }</> });
        html! { <li>{ for place }{ said }</li> }
    });
    html! {
        <div class="notice">
            <p>{ say(key) }</p>
            <ul>{ for lines }</ul>
        </div>
    }
}

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
pub fn contact(workshop: &Workshop) -> Html {
    let told = &workshop.contact;
    let lines = [&told.phone, &told.email, &told.address, &told.website];
    let lines = lines.into_iter().filter(|line| !line.trim().is_empty());
    html! { <ul class="contact">{ for lines.map(|line| html! { <li>{ line.clone() }</li> }) }</ul> }
}
