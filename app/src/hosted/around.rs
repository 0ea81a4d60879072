//! Handing the answers to the page around, where this one is in a frame.

use std::rc::Rc;

use gloo::timers::callback::Timeout;
use sagwright_core::intake::write;
use sagwright_core::workshop::Parcel;
use yew::prelude::*;

use super::look::with_name;
use super::ways::preview;
use crate::framed;
use crate::words::say;

/// How long the page around may take to answer, ms.
const PATIENCE_MS: u32 = 15_000;

/// How far the parcel has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stand {
    Here,
    OnItsWay,
    Silent,
    Taken,
    Refused,
}

/// What is handed over.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// What goes.
    pub parcel: Rc<Parcel>,
}

/// The button that hands it over, and what the page around answers. Pressed again, the same parcel goes.
#[component]
pub fn ToPageAround(props: &Props) -> Html {
    let parcel = &props.parcel;
    let stand = use_state_eq(|| Stand::Here);
    let patience = use_mut_ref(|| None::<Timeout>);
    {
        let (set, patience) = (stand.setter(), Rc::clone(&patience));
        use_effect_with(parcel.id.clone(), move |id| {
            set.set(Stand::Here);
            let id = id.clone();
            let listener = framed::on_answered(move |answered| {
                if answered.id == id {
                    patience.take();
                    set.set(if answered.taken {
                        Stand::Taken
                    } else {
                        Stand::Refused
                    });
                }
            });
            move || drop(listener)
        });
    }
    let Some(origin) = framed::around() else {
        return Html::default();
    };
    let text = parcel.text().unwrap_or_default();
    let onclick = {
        let (set, text) = (stand.setter(), text.clone());
        let intake = write(&parcel.intake).unwrap_or_default();
        Callback::from(move |_: MouseEvent| {
            set.set(Stand::OnItsWay);
            let silent = set.clone();
            let end = Timeout::new(PATIENCE_MS, move || silent.set(Stand::Silent));
            patience.replace(Some(end));
            framed::hand(&text, &intake);
        })
    };
    let told = match *stand {
        Stand::Here => String::new(),
        Stand::OnItsWay => with_name("hosted.waiting", &parcel.workshop),
        Stand::Silent => say("hosted.around-silent"),
        Stand::Taken => with_name("hosted.arrived", &parcel.workshop),
        Stand::Refused => say("hosted.around-refused"),
    };
    html! {
        <>
            <p>{ say("hosted.around-what") }</p>
            <p><button type="button" class="button button-main" {onclick}>{ say("hosted.around-hand") }</button></p>
            <p role="status" class="taken">{ told }</p>
            { preview(Some(&origin), &text) }
        </>
    }
}
