//! The answers that are not the same in two columns.

use std::rc::Rc;

use yew::prelude::*;

use super::columns::Pane;
use super::parts::desk_of;
use crate::pages::{name, said};
use crate::state::{Page, Wizard, lines};
use crate::words::say;

/// What is held against each other.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The columns.
    pub panes: Rc<Vec<Pane>>,
}

/// The answers that are not the same in both columns.
#[component]
pub fn Different(props: &Props) -> Html {
    let wizards = use_memo(Rc::clone(&props.panes), |panes| {
        let wizards = panes
            .iter()
            .map(|pane| Wizard::from_intake(pane.intake.clone()));
        wizards.map(Rc::new).collect::<Vec<_>>()
    });
    let [one, other] = wizards.as_slice() else {
        return Html::default();
    };
    let mut pages = Page::all(&one.intake);
    for page in Page::all(&other.intake) {
        if !pages.contains(&page) {
            pages.push(page);
        }
    }
    pages.sort();
    let differing = pages
        .into_iter()
        .filter(|page| lines(one, *page) != lines(other, *page));
    let rows: Vec<Html> = differing
        .map(|page| {
            let cells = [one, other].map(|wizard| {
                let desk = desk_of(Rc::clone(wizard));
                html! { <td>{ said(&desk, lines(wizard, page)) }</td> }
            });
            let desk = desk_of(Rc::clone(one));
            html! { <tr><th scope="row">{ name(&desk, page) }</th>{ for cells }</tr> }
        })
        .collect();
    let names = props
        .panes
        .iter()
        .map(|pane| html! { <th scope="col">{ pane.name.clone() }</th> });
    html! {
        <>
            <h3>{ say("counter.columns.different") }</h3>
            if rows.is_empty() {
                <p>{ say("counter.columns.all-the-same") }</p>
            } else {
                <div class="wide-table" role="region" tabindex="0" aria-label={say("counter.columns.different")}>
                    <table class="side-table">
                        <thead><tr><th scope="col">{ say("counter.columns.answer") }</th>{ for names }</tr></thead>
                        <tbody>{ for rows }</tbody>
                    </table>
                </div>
            }
        </>
    }
}
