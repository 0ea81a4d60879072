//! One change ridden beside the bike as it stands, in a worker of its own that ends with it.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::advice::Progress;
use sagwright_core::advice::what_if::{Trying, WhatIfRidden};
use sagwright_core::intake::Intake;
use yew::prelude::*;

use super::link::{Heard, Link};
use super::message::Told;
use super::rider::document;

/// How far a change has been ridden.
#[derive(Debug, Clone, Default, PartialEq)]
pub enum Trial {
    /// Nobody asked.
    #[default]
    Waiting,
    /// Under way.
    Riding(Option<Progress>),
    /// Ridden; `None` where it cannot be ridden.
    Done(Option<Rc<WhatIfRidden>>),
    /// No worker, or one that broke.
    Broke,
}

/// How far the rides of `trying` are, and the way to begin and to stop them. Another bike or change drops them.
#[hook]
pub fn use_trial(
    intake: &Rc<Intake>,
    trying: &Trying,
) -> (Trial, Callback<MouseEvent>, Callback<MouseEvent>) {
    let trial = use_state_eq(Trial::default);
    let link: Rc<RefCell<Option<Rc<Link>>>> = use_mut_ref(|| None);
    {
        let (set, link) = (trial.setter(), Rc::clone(&link));
        use_effect_with((Rc::clone(intake), trying.clone()), move |_| {
            // Dropping the link ends its worker.
            move || {
                link.take();
                set.set(Trial::Waiting);
            }
        });
    }
    let begin = {
        let (set, link) = (trial.setter(), Rc::clone(&link));
        let (intake, trying) = (Rc::clone(intake), trying.clone());
        Callback::from(move |_: MouseEvent| {
            let heard = {
                let (set, link) = (set.clone(), Rc::clone(&link));
                let (intake, trying) = (Rc::clone(&intake), trying.clone());
                Callback::from(move |heard: Heard| match heard {
                    Heard::Told(Told::Ready) => {
                        let open = link.borrow().clone();
                        match (open, document(&intake, Some(trying.clone()))) {
                            (Some(open), Some(text)) => open.send(&text),
                            _ => set.set(Trial::Broke),
                        }
                    }
                    Heard::Told(Told::Riding(progress)) => set.set(Trial::Riding(Some(progress))),
                    Heard::Told(Told::Tried(ridden)) => {
                        link.take();
                        set.set(Trial::Done(ridden.map(Rc::from)));
                    }
                    Heard::Told(Told::Done(_)) | Heard::Broke => {
                        link.take();
                        set.set(Trial::Broke);
                    }
                })
            };
            let opened = Link::open(&heard).map(Rc::new);
            set.set(match &opened {
                Some(_) => Trial::Riding(None),
                None => Trial::Broke,
            });
            *link.borrow_mut() = opened;
        })
    };
    let stop = {
        let set = trial.setter();
        Callback::from(move |_: MouseEvent| {
            link.take();
            set.set(Trial::Waiting);
        })
    };
    ((*trial).clone(), begin, stop)
}
