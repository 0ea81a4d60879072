//! Handing the answers to the page around, where this one is in a frame.

use std::rc::Rc;

use gloo::timers::callback::Timeout;
use sagwright_core::workshop::Parcel;
use yew::prelude::*;

use super::look::with_name;
use super::ways::{going, preview};
use crate::advising::Outcome;
use crate::counsel::use_counsel;
use crate::framed;
use crate::tasks::{begin, breath};
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

/// The button that hands it over with the advice on it, and what the page around answers. Pressed again, the same goes.
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
    let advice = use_advice(parcel);
    let Some(origin) = framed::around() else {
        return Html::default();
    };
    let Some(advice) = advice else {
        return html! { <p role="status">{ say("advice.working") }</p> };
    };
    let text = parcel.text().unwrap_or_default();
    let onclick = {
        let (set, text, advice) = (stand.setter(), text.clone(), advice.clone());
        Callback::from(move |_: MouseEvent| {
            set.set(Stand::OnItsWay);
            let silent = set.clone();
            let end = Timeout::new(PATIENCE_MS, move || silent.set(Stand::Silent));
            patience.replace(Some(end));
            framed::hand(&text, &advice);
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
            <details class="more">
                <summary>{ say("hosted.preview-advice") }</summary>
                { going("hosted.preview-advice", &advice) }
            </details>
        </>
    }
}

/// The advice on the answers in a parcel as JSON, once it is worked out.
#[hook]
fn use_advice(parcel: &Rc<Parcel>) -> Option<AttrValue> {
    let counsel = use_counsel();
    let advice = use_state_eq(|| None);
    let set = advice.setter();
    use_effect_with(parcel.intake.clone(), move |intake| {
        let intake = intake.clone();
        let work = begin(async move {
            let Outcome::Advice(advice, _) = counsel.adviser.ask(&intake, breath).await else {
                return;
            };
            let text = serde_json::to_string(&*advice).ok();
            set.set(text.map(|text| (intake, AttrValue::from(text))));
        });
        move || work.abort()
    });
    // What was worked out on answers of before is not on these.
    let on_these = advice.as_ref().filter(|(on, _)| *on == parcel.intake);
    on_these.map(|(_, text)| text.clone())
}
