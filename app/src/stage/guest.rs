//! The advice's end: it draws on the stage for as long as there is one.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::utils::document;
use wasm_bindgen_futures::spawn_local;
use web_sys::Element;
use yew::AppHandle;
use yew::prelude::*;

use super::lending::STAGE;
use super::line::{self, HERE, Scene};
use crate::advising::Adviser;
use crate::browser;
use crate::counsel::Counsel;
use crate::desk::Desk;
use crate::hosted::{self, Bag, Courier, Hearing, SendPage};
use crate::language;
use crate::pages::{AdvicePage, LinkPage, OpenPage, SheetPage};
use crate::riding::Rider;
use crate::route::Route;
use crate::shell::lead_in;
use crate::state::{Action, Wizard, from_saved, to_saved};
use crate::tasks::breath;
use crate::track::TrackPage;
use crate::words::{self, ADVISING};

/// Hears what to show, and says that it does, once it is known whose page this is.
pub fn start() {
    spawn_local(async {
        // The page may be in use already: nothing here holds it up for long.
        breath().await;
        hosted::begin().await;
        take_first_number();
        breath().await;
        let courier = Courier::begin();
        let unsent = Callback::from(|bag: Bag| line::unsent(bag.unsent().as_ref()));
        let guest = Rc::new(Guest {
            _unsent: courier.hear(unsent),
            courier,
            counsel: Counsel {
                adviser: Adviser::of(hosted::workshop().map(|workshop| (*workshop).clone())),
                rider: Rider::default(),
            },
            scene: RefCell::default(),
            drawn: RefCell::default(),
        });
        let shown = Rc::clone(&guest);
        line::on_show(move |scene| shown.show(scene));
        line::on_leave(move || guest.leave());
        browser::tell(HERE);
    });
}

/// Yew numbers what it draws in from one upwards in every program, and tells by the number whose part of the page an event
/// comes from. The questions' program draws in one place and so has only the first number; once that is spent here
/// too, no number means both.
fn take_first_number() {
    if let Ok(nowhere) = document().create_element("div") {
        yew::Renderer::<Nothing>::with_root(nowhere)
            .render()
            .destroy();
    }
}

#[component]
fn Nothing() -> Html {
    Html::default()
}

/// What lives as long as the page.
struct Guest {
    counsel: Counsel,
    courier: Courier,
    /// Tells the questions' program what the courier has.
    _unsent: Hearing,
    /// What is to be shown; `None` while there is no stage.
    scene: RefCell<Option<Scene>>,
    /// What is drawn, and where.
    drawn: RefCell<Option<(Element, AppHandle<Page>)>>,
}

impl Guest {
    /// Shows a scene, once its language can be spoken.
    fn show(self: &Rc<Self>, scene: Scene) {
        let language = scene.language;
        self.scene.replace(Some(scene));
        if words::speaks(language) {
            self.draw();
            return;
        }
        let guest = Rc::clone(self);
        spawn_local(async move {
            // Where the sentences do not arrive, those of before are better than none.
            if !language::speak(language, &ADVISING).await && !words::speaks_any() {
                let english = sagwright_core::words::Language::English;
                language::speak(english, &ADVISING).await;
            }
            guest.draw();
        });
    }

    fn draw(&self) {
        let Some(scene) = self.scene.borrow().clone() else {
            return;
        };
        let (Some(stage), Ok(wizard)) = (
            document().get_element_by_id(STAGE),
            from_saved(&scene.answers),
        ) else {
            return;
        };
        let props = Props {
            scene,
            wizard: Rc::new(wizard),
            counsel: self.counsel.clone(),
            courier: self.courier.clone(),
        };
        let mut drawn = self.drawn.borrow_mut();
        match &mut *drawn {
            Some((on, page)) if *on == stage => page.update(props),
            _ => {
                let page = yew::Renderer::with_root_and_props(stage.clone(), props).render();
                if let Some((_, gone)) = drawn.replace((stage, page)) {
                    gone.destroy();
                }
            }
        }
    }

    fn leave(&self) {
        self.scene.take();
        if let Some((_, page)) = self.drawn.take() {
            page.destroy();
        }
    }
}

/// What is drawn.
#[derive(PartialEq, Properties)]
struct Props {
    scene: Scene,
    /// The answers in the scene.
    wizard: Rc<Wizard>,
    counsel: Counsel,
    courier: Courier,
}

/// A page on the stage, with the answers as the questions' program last told them and as they were changed here since.
#[component]
fn Page(props: &Props) -> Html {
    let Props {
        scene,
        wizard,
        counsel,
        courier,
    } = props;
    let store = use_reducer(|| wizard.as_ref().clone());
    // The answers as they are now, and as both programs know them last.
    let latest = use_mut_ref(|| wizard.as_ref().clone());
    let known = use_mut_ref(|| scene.answers.clone());
    {
        let (latest, known, store) = (Rc::clone(&latest), Rc::clone(&known), store.dispatcher());
        use_effect_with(scene.answers.clone(), {
            let wizard = Rc::clone(wizard);
            move |answers| {
                if *known.borrow() != *answers {
                    known.replace(answers.clone());
                    latest.replace(wizard.as_ref().clone());
                    store.dispatch(Action::TakeOver(Box::new(wizard.as_ref().clone())));
                }
            }
        });
    }
    // Told before anything else happens: whoever answers and goes to another page takes the stage away, perhaps before
    // the answer has been drawn.
    let change = use_callback(store.dispatcher(), move |action, store| {
        let next = latest.borrow().after(action);
        latest.replace(next.clone());
        if let Ok(answers) = to_saved(&next)
            && *known.borrow() != answers
        {
            known.replace(answers.clone());
            line::answered(&answers);
        }
        store.dispatch(Action::TakeOver(Box::new(next)));
    });
    let wizard = Rc::new(Wizard {
        units: words::marked(&store.units),
        ..(*store).clone()
    });
    {
        let arriving = scene.arriving;
        use_effect_with(scene.route, move |_| {
            if arriving {
                lead_in();
            }
        });
    }
    let desk = Desk { wizard, change };
    html! {
        <ContextProvider<Desk> context={desk}>
            <ContextProvider<Counsel> context={counsel.clone()}>
                <ContextProvider<Courier> context={courier.clone()}>
                    // Another language draws everything anew; answers, advice and rides are kept above.
                    < key={words::language().tag()}>{ page(scene.route) }</>
                </ContextProvider<Courier>>
            </ContextProvider<Counsel>>
        </ContextProvider<Desk>>
    }
}

fn page(route: Route) -> Html {
    match route {
        Route::Track => html! { <TrackPage /> },
        Route::Sheet => html! { <SheetPage /> },
        Route::Send => html! { <SendPage /> },
        Route::Open => html! { <OpenPage /> },
        Route::Link => html! { <LinkPage /> },
        _ => html! { <AdvicePage /> },
    }
}
