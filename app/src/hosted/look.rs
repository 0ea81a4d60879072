//! What every page says about the workshop, and where the advice leads to it.

use sagwright_core::words::{Arg, Text, UnitChoice};
use yew::prelude::*;

use super::settings::{Trouble, trouble, workshop};
use super::unsent::Unsent;
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

/// The heading of the page where the answers are handed over.
pub fn send_heading() -> String {
    workshop().map_or_else(
        || say("hosted.sent-heading"),
        |workshop| with_name("hosted.send", &workshop.name),
    )
}

/// What stands above the page: that the workshop's document cannot be used, and that answers wait to be sent.
pub fn about_workshop(unsent: Option<&Unsent>) -> Html {
    let letters = unsent.map(|unsent| {
        html! {
            <div class="notice">
                <p>{ with_name(unsent.why.key(), &unsent.workshop) }</p>
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
