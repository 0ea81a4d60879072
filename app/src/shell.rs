//! The frame around every page: it follows the address, keeps the answers, and moves the focus.

use std::cell::Cell;
use std::rc::Rc;

use gloo::events::EventListener;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::begun::use_begun;
use crate::browser::{self, Device};
use crate::desk::Desk;
use crate::framed;
use crate::hosted::{self, QuestionsPage};
use crate::keeping::{Keeper, use_keeping};
use crate::language::{self, LanguageSwitch};
use crate::notices::{about_answers, about_site};
use crate::offline::{is_kept, use_offline};
use crate::pages::{CheckPage, LandingPage, QuestionPage, StartAgainPage};
use crate::pieces::paragraph;
use crate::route::Route;
use crate::stage::{Arrival, Fetch, Stage, on_unsent, use_advice_program};
use crate::state::{Action, Wizard};
use crate::tasks::breath;
use crate::wear::ThemeSwitch;
use crate::words::{self, say};

/// The heading of every page; the focus goes there on a new page.
pub const HEADING: &str = "page-heading";

/// Draws the app in the rider's language, once its sentences are there.
pub fn start() {
    spawn_local(async {
        // On a phone each of these steps takes its time, and a touch comes in between.
        breath().await;
        // The language follows what the workshop offers.
        hosted::begin().await;
        // Not in `begin`: the other program begins too, and what the page around says of the look meanwhile comes first.
        if let Some(workshop) = hosted::workshop() {
            hosted::dress(&workshop.theme);
        }
        language::begin().await;
        framed::begin();
        breath().await;
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
    let unsent = use_state_eq(|| None);
    {
        let set = unsent.setter();
        use_effect_with((), move |()| {
            let listener = on_unsent(move |unsent| set.set(unsent));
            move || drop(listener)
        });
    }
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
    // Who only looks at the first page downloads no more than that. What a device keeps comes to it at no price.
    let begun = use_begun(route != Route::Landing || !wizard.is_untouched() || is_kept());
    let (arrival, again) = use_advice_program(match (route.is_on_stage(), begun) {
        (true, _) => Fetch::Now,
        (false, true) => Fetch::WhenIdle,
        (false, false) => Fetch::Later,
    });
    // What is kept on the device is most of the site. It waits until all that this page needs has come.
    let (stand, renew) = use_offline(arrival != Arrival::Coming);
    use_effect_with((arrival == Arrival::Here, *spoken), |(here, spoken)| {
        if *here {
            language::bring_advice(*spoken);
        }
    });
    let arrivals = use_memo((), |()| Arrivals::default());
    use_arrival(route, &arrivals);
    use_effect_with(route, |route| framed::step(*route));

    let desk = Desk { wizard, change };
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
            { hosted::about_workshop(unsent.as_ref()) }
            <main>
                if route.is_on_stage() {
                    <Stage {route} arrivals={(*arrivals).clone()} {arrival} {again} />
                } else {
                    { page(route) }
                }
            </main>
            <footer class="footer">
                { paragraph("shell.privacy") }
                { about_site(keeping.kept, stand, &renew) }
                { paragraph("shell.scope") }
                <LanguageSwitch {on_spoken} />
            </footer>
            </>
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
        Route::Ask { page, changing } => {
            html! { <QuestionPage key={route.fragment()} {page} {changing} /> }
        }
        Route::Check => html! { <CheckPage /> },
        Route::Extra => html! { <QuestionsPage /> },
        Route::StartAgain => html! { <StartAgainPage /> },
        _ => html! { <LandingPage /> },
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

/// Where the rider has arrived. Clones are of one rider.
#[derive(Clone, Default, PartialEq)]
pub struct Arrivals(Rc<Cell<Option<Route>>>);

impl Arrivals {
    /// Whether this is a new page to the rider; they have arrived there now. The first page is none.
    pub fn at(&self, route: Route) -> bool {
        let before = self.0.replace(Some(route));
        before.is_some_and(|before| before != route)
    }
}

/// Leads to the top of a new page, with the focus on its heading.
pub fn lead_in() {
    browser::scroll_to_top();
    browser::focus(HEADING);
}

/// Leads into every new page. The first page leaves the focus to the browser.
#[hook]
fn use_arrival(route: Route, arrivals: &Arrivals) {
    let arrivals = arrivals.clone();
    use_effect_with(route, move |route| {
        if arrivals.at(*route) {
            lead_in();
        }
    });
}
