//! The inputs of a check's page, where the check stands.

use std::rc::Rc;

use sagwright_core::intake::{Field, Question};
use yew::prelude::*;

use super::draft::Draft;
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::pages::{SUMMARY, answer_inputs, trouble_list};
use crate::state::{Action, Page, Trouble, Wizard, troubles};
use crate::words::say;

/// Which page is answered.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// The question whose page takes the result.
    pub question: Question,
    /// Told the answers with this one, once it is complete and the rider uses it.
    pub used: Callback<Rc<Wizard>>,
    /// More buttons beside "use this answer".
    pub children: Html,
}

/// The form. Nothing outside it changes until the answer is used, so that no number on the page moves while one types.
#[component]
pub fn CheckForm(props: &Props) -> Html {
    let desk = use_desk();
    let draft = use_reducer(Draft::default);
    let found = use_state_eq(Vec::<Trouble>::new);
    let attempts = use_state_eq(|| 0_u32);
    let page = Page::Ask(props.question);
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    let wizard = Rc::new(draft.on(&desk.wizard));
    let own = {
        let (all, draft) = (desk.clone(), draft.dispatcher());
        Desk {
            wizard: Rc::clone(&wizard),
            change: Callback::from(move |action: Action| match action {
                // A unit is chosen for the whole page.
                Action::Show(..) => all.act(action),
                action => draft.dispatch(action),
            }),
            ..desk.clone()
        }
    };
    let onsubmit = {
        let (found, attempts, used) = (found.clone(), attempts.clone(), props.used.clone());
        let wizard = Rc::clone(&wizard);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let next = wizard.accepted(page);
            let wrong = troubles(&next, page);
            if wrong.is_empty() {
                used.emit(Rc::new(next));
            } else {
                attempts.set(*attempts + 1);
            }
            found.set(wrong);
        })
    };
    let settled = {
        let found = found.clone();
        Callback::from(move |field: Field| {
            let rest = found.iter().filter(|t| t.at != field.path());
            found.set(rest.cloned().collect());
        })
    };
    html! {
        <ContextProvider<Desk> context={own.clone()}>
            <form class="check-form" novalidate=true {onsubmit}>
                { trouble_list(&own, &found) }
                { answer_inputs(page, &found, settled) }
                <div class="onward">
                    <button type="submit" class="button button-main">{ say("checking.use") }</button>
                    { props.children.clone() }
                </div>
            </form>
        </ContextProvider<Desk>>
    }
}
