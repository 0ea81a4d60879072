//! The inputs for what a check finds, where the check stands: those of the question's page, where it has one.

use std::rc::Rc;

use sagwright_core::intake::Field;
use yew::prelude::*;

use super::draft::{Draft, Drafts};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::inputs::Radios;
use crate::pages::{HowTo, SUMMARY, answer_inputs, trouble_list};
use crate::state::{Action, Slot, Subject, Trouble, Wizard};
use crate::words::say;

/// What is answered.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// What the check finds out.
    pub subject: Subject,
    /// What was typed and not used yet, of all checks.
    pub drafts: Drafts,
    /// Told the answers with this one, once it is complete and the rider uses it.
    pub used: Callback<Rc<Wizard>>,
}

/// The form. Nothing outside it changes until the answer is used, so that no number on the page moves while one types.
#[component]
pub fn CheckForm(props: &Props) -> Html {
    let desk = use_desk();
    let draft = {
        let drafts = props.drafts.clone();
        use_reducer(move || drafts.of(props.subject))
    };
    let found = use_state_eq(Vec::<Trouble>::new);
    let attempts = use_state_eq(|| 0_u32);
    let subject = props.subject;
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    {
        let drafts = props.drafts.clone();
        use_effect_with((*draft).clone(), move |draft| {
            drafts.keep(subject, draft.clone());
        });
    }
    let wizard = Rc::new(draft.on(&desk.wizard, subject));
    let own = {
        let (all, draft) = (desk.clone(), draft.dispatcher());
        Desk {
            wizard: Rc::clone(&wizard),
            change: Callback::from(move |action: Action| match action {
                // A unit is chosen for the whole page.
                Action::Show(..) => all.act(action),
                action => draft.dispatch(action),
            }),
        }
    };
    let onsubmit = {
        let (found, attempts, used) = (found.clone(), attempts.clone(), props.used.clone());
        let drafts = props.drafts.clone();
        let wizard = Rc::clone(&wizard);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let next = match subject {
                Subject::Page(page) => wizard.accepted(page),
                Subject::Look(_) | Subject::Lap(_) => (*wizard).clone(),
            };
            let wrong = subject.troubles(&next);
            if wrong.is_empty() {
                drafts.keep(subject, Draft::default());
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
        <form class="check-form" novalidate=true {onsubmit}>
            { trouble_list(&own, &found) }
            { inputs(&own, subject, &found, &settled) }
            <div class="onward">
                <button type="submit" class="button button-main">{ say("checking.use") }</button>
            </div>
        </form>
    }
}

fn inputs(desk: &Desk, subject: Subject, found: &[Trouble], settled: &Callback<Field>) -> Html {
    if let Subject::Page(page) = subject {
        return html! {
            <>
                <HowTo question={page.question()} />
                { answer_inputs(desk, page, found, settled) }
            </>
        };
    }
    let described_by = (!found.is_empty()).then_some(SUMMARY);
    let groups = subject.slots(&desk.wizard).into_iter().enumerate();
    let groups = groups.map(|(place, slot)| {
        let legend = match slot {
            Slot::Lap(_, feeling) => say(&format!("complaint.{}", feeling.word())),
            _ => say(&format!("looking.{}.ask", slot.id())),
        };
        let group = Radios {
            first: place == 0,
            open_ended: false,
            short: true,
            described_by,
            ..Radios::named(slot, legend)
        };
        group.draw(desk)
    });
    html! { <div class="groups">{ for groups }</div> }
}
