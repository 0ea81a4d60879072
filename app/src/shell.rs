//! The frame around every page: it follows the address, keeps the answers, and moves the focus.

use std::rc::Rc;

use gloo::events::EventListener;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::advising::Adviser;
use crate::browser::{self, Device};
use crate::desk::Desk;
use crate::hosted::{self, Courier, QuestionsPage, SendPage, use_courier};
use crate::keeping::{Keeper, use_keeping};
use crate::language::{self, LanguageSwitch};
use crate::notices::{about_answers, about_site};
use crate::offline::use_offline;
use crate::pages::{
    AdvicePage, CheckPage, LandingPage, LinkPage, OpenPage, QuestionPage, SheetPage, StartAgainPage,
};
use crate::riding::Rider;
use crate::route::Route;
use crate::state::{Action, Wizard};
use crate::track::TrackPage;
use crate::wear::ThemeSwitch;
use crate::words::{self, say};

/// The heading of every page; the focus goes there on a new page.
pub const HEADING: &str = "page-heading";

/// Draws the app in the rider's language, once its sentences are there.
pub fn start() {
    spawn_local(async {
        // The language follows what the workshop offers.
        hosted::begin().await;
        language::begin().await;
        draw();
    });
}

/// Draws the app in its place on the page, or in the page's body where the place is missing.
fn draw() {
    match browser::stage() {
        Some(stage) => yew::Renderer::<Shell>::with_root(stage).render(),
        None => yew::Renderer::<Shell>::new().render(),
    };
}

/// The whole app.
#[component]
pub fn Shell() -> Html {
    let start = use_memo((), |()| {
        let (keeper, mut wizard, found) = Keeper::open(Device);
        if wizard == Wizard::default() {
            for (of, unit) in hosted::units() {
                wizard.units.choose(of, unit);
            }
        }
        (Rc::new(keeper), wizard, found)
    });
    let store = use_reducer(|| start.1.clone());
    let spoken = use_state_eq(words::language);
    let wizard = Rc::new(Wizard {
        units: words::marked(&store.units),
        ..(*store).clone()
    });
    let keeping = use_keeping(&start.0, &wizard, store.dispatcher());
    let (stand, renew) = use_offline();
    let rider = use_memo((), |()| Rider::default());
    let adviser = use_memo((), |()| {
        Adviser::of(hosted::workshop().map(|workshop| (*workshop).clone()))
    });
    let courier = use_courier();
    let change = use_callback(store.dispatcher(), |action, store| {
        let cleared = action == Action::Clear;
        store.dispatch(action);
        if cleared {
            // Begun anew, it begins as the workshop has it.
            for (of, unit) in hosted::units() {
                store.dispatch(Action::Show(of, unit));
            }
        }
    });
    let route = use_route();
    use_arrival(route);

    let desk = Desk {
        wizard,
        change,
        adviser: (*adviser).clone(),
        rider: (*rider).clone(),
    };
    let skip = Callback::from(|event: MouseEvent| {
        // The fragment is the address of the page, so the jump is made by hand.
        event.prevent_default();
        browser::focus(HEADING);
    });
    let on_spoken = {
        let set = spoken.setter();
        Callback::from(move |language| set.set(language))
    };
    html! {
        <ContextProvider<Desk> context={desk}>
        <ContextProvider<Courier> context={courier.clone()}>
            // Another language draws everything anew; answers, advice and rides are kept above.
            < key={spoken.tag()}>
            <header class="masthead">
                <a class="skip" href={route.fragment()} onclick={skip}>{ say("shell.skip") }</a>
                <a class="wordmark" href="#/">{ say("shell.name") }</a>
                { tagline() }
                <ThemeSwitch />
            </header>
            <div class="ruler" aria-hidden="true" />
            { about_answers(start.2, &keeping, route == Route::Unknown) }
            { hosted::about_workshop(&courier) }
            <main>{ page(route) }</main>
            <footer class="footer">
                <p>{ say("shell.privacy") }</p>
                { about_site(keeping.kept, stand, &renew) }
                <p>{ say("shell.scope") }</p>
                <LanguageSwitch {on_spoken} />
            </footer>
            </>
        </ContextProvider<Courier>>
        </ContextProvider<Desk>>
    }
}

/// What the page is, or whose.
fn tagline() -> Html {
    match hosted::names() {
        Some(whose) => html! { <p class="tagline tagline-whose">{ whose }</p> },
        None => html! { <p class="tagline">{ say("shell.tagline") }</p> },
    }
}

fn page(route: Route) -> Html {
    match route {
        Route::Landing | Route::Unknown => html! { <LandingPage /> },
        Route::Ask { page, changing } => {
            html! { <QuestionPage key={route.fragment()} {page} {changing} /> }
        }
        Route::Check => html! { <CheckPage /> },
        Route::Advice => html! { <AdvicePage /> },
        Route::Track => html! { <TrackPage /> },
        Route::Sheet => html! { <SheetPage /> },
        Route::Extra => html! { <QuestionsPage /> },
        Route::Send => html! { <SendPage /> },
        Route::Open => html! { <OpenPage /> },
        Route::Link => html! { <LinkPage /> },
        Route::StartAgain => html! { <StartAgainPage /> },
    }
}

/// Where the address leads now.
#[hook]
fn use_route() -> Route {
    let route = use_state_eq(|| Route::from_fragment(&browser::fragment()));
    let set_route = route.setter();
    use_effect_with((), move |()| {
        let listener = web_sys::window().map(|window| {
            EventListener::new(&window, "hashchange", move |_| {
                set_route.set(Route::from_fragment(&browser::fragment()));
            })
        });
        move || drop(listener)
    });
    *route
}

/// On a new page: to its top, with the focus on its heading. The first page leaves the focus to the browser.
#[hook]
fn use_arrival(route: Route) {
    let arrived = use_mut_ref(|| false);
    use_effect_with(route, move |_| {
        if arrived.replace(true) {
            browser::scroll_to_top();
            browser::focus(HEADING);
        }
    });
}
