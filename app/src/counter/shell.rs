//! The frame around every page of the counter: it follows the address, holds the desk, and moves the focus.

use std::collections::BTreeSet;
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use sagwright_core::words::UnitChoice;
use sagwright_core::workshop::Workshop;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::dropping::use_dropping;
use super::keeper::{Keeper, Sight};
use super::pages::page;
use super::route::Place;
use crate::browser;
use crate::offline::{Stand, use_offline};
use crate::riding::Rider;
use crate::shell::HEADING;
use crate::store::{Listener, Notice};
use crate::wear::ThemeSwitch;
use crate::words::{say, tell};

/// How long notices of other pages are gathered before the desk looks at them, ms.
const GATHER_MS: u32 = 150;

/// What the shell lays out for every page of the counter.
#[derive(Clone, PartialEq)]
pub struct Counter {
    /// The one who keeps the desk.
    pub keeper: Keeper,
    /// The desk as it looks now.
    pub sight: Sight,
    /// Which units numbers are shown in.
    pub units: Rc<UnitChoice>,
    /// The way to choose others.
    pub choose: Callback<UnitChoice>,
    /// The one who rides advice out.
    pub rider: Rider,
    /// What the workshop says about itself, where it has.
    pub workshop: Option<Rc<Workshop>>,
    /// Files dropped on the page that nobody has taken in yet.
    pub dropped: super::dropping::Dropped,
}

/// The counter. Only for components inside the shell.
#[hook]
pub fn use_counter() -> Counter {
    #[expect(
        clippy::expect_used,
        reason = "the shell puts every page inside its context provider"
    )]
    use_context::<Counter>().expect("pages are drawn inside the shell")
}

/// Draws the counter in its place on the page, or in the page's body where the place is missing.
pub fn start() {
    super::speak();
    match browser::stage() {
        Some(stage) => yew::Renderer::<Shell>::with_root(stage).render(),
        None => yew::Renderer::<Shell>::new().render(),
    };
}

/// The whole counter.
#[component]
fn Shell() -> Html {
    let sight = use_state_eq(Sight::default);
    let keeper = {
        let set = sight.setter();
        use_memo((), move |()| {
            Keeper::new(Callback::from(move |sight| set.set(sight)))
        })
    };
    use_desk_of_this_device(&keeper);
    let units = use_state_eq(|| Rc::new(UnitChoice::default()));
    let choose = {
        let set = units.setter();
        use_callback((), move |units: UnitChoice, ()| set.set(Rc::new(units)))
    };
    let rider = use_memo((), |()| Rider::default());
    let dropped = use_dropping();
    let (stand, renew) = use_offline(true);
    let place = use_place();
    use_arrival(&place);
    let counter = Counter {
        keeper: (*keeper).clone(),
        sight: (*sight).clone(),
        units: Rc::clone(&units),
        choose,
        rider: (*rider).clone(),
        workshop: sight.workshop.clone(),
        dropped,
    };
    let skip = Callback::from(|event: MouseEvent| {
        // The fragment is the address of the page, so the jump is made by hand.
        event.prevent_default();
        browser::focus(HEADING);
    });
    html! {
        <ContextProvider<Counter> context={counter}>
            <header class="masthead">
                <a class="skip" href={place.fragment()} onclick={skip}>{ say("shell.skip") }</a>
                <a class="wordmark" href="#/">{ say("shell.name") }</a>
                <p class="tagline">{ say("counter.tagline") }</p>
                <nav class="counter-nav" aria-label={say("counter.nav")}>{ for links(&place) }</nav>
                <ThemeSwitch />
            </header>
            <div class="ruler" aria-hidden="true" />
            <div role="status" class="notices">
                if let Some(trouble) = &sight.trouble {
                    <p class="notice">{ tell(&trouble.text(), &UnitChoice::default()) }</p>
                }
                if sight.unreadable > 0 { <p class="notice">{ say("counter.unreadable") }</p> }
                if place == Place::Unknown { <p class="notice">{ say("counter.unknown-address") }</p> }
            </div>
            <main>{ page(&place) }</main>
            <footer class="footer">
                <p>{ say("counter.privacy") }</p>
                <div role="status">
                    if stand == Stand::Newer {
                        <p>{ say("counter.newer") }</p>
                        <p class="notice-choice">
                            <button type="button" class="button" onclick={renew.reform(|_| ())}>
                                { say("shell.newer-use") }
                            </button>
                        </p>
                    }
                </div>
                <p><a href="./">{ say("counter.to-riders") }</a></p>
            </footer>
        </ContextProvider<Counter>>
    }
}

/// The pages that can be reached from everywhere.
fn links(place: &Place) -> impl Iterator<Item = Html> {
    let pages = [
        (Place::Desk, "counter.nav.desk"),
        (Place::BringIn, "counter.nav.bring-in"),
        (Place::Filing, "counter.nav.filing"),
        (Place::Settings, "counter.nav.settings"),
    ];
    pages
        .map(|(to, key)| {
            let here = (to == *place).then_some("page");
            html! { <a href={to.fragment()} aria-current={here}>{ say(key) }</a> }
        })
        .into_iter()
}

/// Opens the desk, and hears what other pages change on it for as long as the page lives.
#[hook]
fn use_desk_of_this_device(keeper: &Rc<Keeper>) {
    let listener = use_mut_ref(|| None::<Listener>);
    let waiting = use_mut_ref(|| (BTreeSet::<String>::new(), None::<Timeout>));
    let keeper = (**keeper).clone();
    use_effect_with((), move |()| {
        spawn_local(async move {
            let heard = {
                let keeper = keeper.clone();
                Callback::from(move |notice: Notice| {
                    let kind = notice.kind;
                    waiting.borrow_mut().0.insert(notice.id);
                    let (keeper, gathered) = (keeper.clone(), Rc::clone(&waiting));
                    // An import tells of thousands: the last one starts the look at all of them.
                    let look = Timeout::new(GATHER_MS, move || {
                        let ids = std::mem::take(&mut gathered.borrow_mut().0);
                        spawn_local(async move { keeper.heard(kind, ids).await });
                    });
                    waiting.borrow_mut().1 = Some(look);
                })
            };
            let store = keeper.open().await;
            *listener.borrow_mut() = store.listen(heard);
        });
    });
}

/// Where the address leads now.
#[hook]
fn use_place() -> Place {
    let place = use_state_eq(|| Place::from_fragment(&browser::fragment()));
    let set = place.setter();
    use_effect_with((), move |()| {
        let listener = web_sys::window().map(|window| {
            EventListener::new(&window, "hashchange", move |_| {
                set.set(Place::from_fragment(&browser::fragment()));
            })
        });
        move || drop(listener)
    });
    (*place).clone()
}

/// On a new page: to its top, with the focus on its heading. The first page leaves the focus to the browser.
#[hook]
fn use_arrival(place: &Place) {
    let arrived = use_mut_ref(|| false);
    use_effect_with(place.clone(), move |_| {
        if arrived.replace(true) {
            browser::scroll_to_top();
            browser::focus(HEADING);
        }
    });
}
