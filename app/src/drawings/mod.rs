//! Our own drawings: kinds of bike by their silhouette, and how to measure, step by step.
//!
//! `build` and `bike` draw a bike from the figures that the core has of its class, `people` draws who is on it,
//! `scenes` measures on it, `steps` says which drawing belongs to which step of a question, `pen` writes it all as
//! SVG. What needs no whole bike is drawn in `app/drawings/`. Colours and strokes are the style sheet's.

mod bike;
mod build;
mod pen;
mod people;
mod scenes;
mod steps;

use sagwright_core::intake::{BikeClass, Question, ShockKind};
use yew::prelude::*;

use bike::{Bike, Stance};
use pen::Pen;
pub use steps::{Drawing, steps};

use crate::state::Slot;
use crate::words::say;

/// What a silhouette shows, mm; the same for every class, so that they compare.
const SILHOUETTE_BOX: &str = "-390 -1570 2370 1590";

/// The drawing of one step, with a name and what it shows for those who do not see it.
pub fn step_drawing(drawing: Drawing) -> Html {
    let name = format!("drawing.{}", drawing.word);
    let (title_id, what_id) = (name.clone(), format!("{name}.what"));
    html! {
        <svg
            class="drawing"
            viewBox={drawing.view_box()}
            role="img"
            aria-labelledby={title_id.clone()}
            aria-describedby={what_id.clone()}
        >
            <title id={title_id}>{ say(&name) }</title>
            <desc id={what_id.clone()}>{ say(&what_id) }</desc>
            { inside(drawing.svg()) }
        </svg>
    }
}

/// The silhouette beside an answer, where bikes are told apart by the eye. The words of the answer say the same.
pub fn beside_answer(slot: Slot, word: &str) -> Option<Html> {
    let kind = match slot {
        Slot::One(Question::BikeClass) => BikeClass::ALL.iter().find(|k| k.word() == word).copied(),
        Slot::One(Question::BikeShock) => {
            ShockKind::ALL
                .iter()
                .find(|k| k.word() == word)
                .map(|kind| match kind {
                    ShockKind::Linkage => BikeClass::EnduroLinkage,
                    ShockKind::Linkless => BikeClass::EnduroLinkless,
                })
        }
        _ => None,
    };
    kind.map(|kind| html! { <Silhouette {kind} /> })
}

#[derive(PartialEq, Properties)]
struct SilhouetteProps {
    kind: BikeClass,
}

/// A kind of bike from the side.
#[component]
fn Silhouette(props: &SilhouetteProps) -> Html {
    let mut pen = Pen::new();
    Bike::of(props.kind).draw(&mut pen, Stance::default());
    html! {
        <svg class="silhouette" viewBox={SILHOUETTE_BOX} aria-hidden="true">
            { inside(pen.finish().into()) }
        </svg>
    }
}

/// Our own SVG, as elements.
fn inside(svg: AttrValue) -> Html {
    Html::from_html_unchecked(svg)
}
