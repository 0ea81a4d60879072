//! The log as the page holds it: opened, gone on with press by press, and kept.

use std::cell::Cell;
use std::rc::Rc;

use yew::prelude::*;

use super::keeper::{Keeper, News};
use super::log::{Log, Meeting, Press, meet};
use crate::browser;
use crate::desk::Desk;
use crate::shell::HEADING;
use crate::state::Action;
use crate::store::{Entry, StoreError};

/// The log as the page holds it.
#[derive(Debug, Clone, Default, PartialEq)]
pub enum Held {
    /// The device is being asked.
    #[default]
    Opening,
    /// It is open.
    Open(Box<Log>),
}

/// All that the page holds.
pub struct Opened {
    /// The log.
    pub held: UseStateHandle<Held>,
    /// What keeps the log from being kept.
    pub trouble: UseStateHandle<Option<StoreError>>,
    /// Logs of other answers.
    pub earlier: UseStateHandle<Vec<Entry<Log>>>,
    /// Who keeps it.
    pub keeper: Keeper,
}

/// Opens the log of these answers, or begins one.
#[hook]
pub fn use_log(desk: &Desk) -> Opened {
    let held = use_state_eq(Held::default);
    let trouble = use_state_eq(|| None);
    let earlier = use_state_eq(Vec::new);
    // Two news may come before the page is drawn again, so they wait in a row.
    let news = use_mut_ref(Vec::<News>::new);
    let told = use_state_eq(|| 0_u32);
    let keeper = use_memo((), |()| {
        let (news, told, count) = (Rc::clone(&news), told.setter(), Cell::new(0_u32));
        Keeper::open(Callback::from(move |one| {
            news.borrow_mut().push(one);
            count.set(count.get().wrapping_add(1));
            told.set(count.get());
        }))
    });
    {
        let (desk, held, keeper) = (desk.clone(), held.clone(), (*keeper).clone());
        let (trouble, earlier) = (trouble.setter(), earlier.setter());
        // Taken in here, where the answers are those that the page shows now.
        use_effect_with(*told, move |_| {
            let news = std::mem::take(&mut *news.borrow_mut());
            for one in news {
                match one {
                    News::Opened(mut logs, error) => {
                        trouble.set(error);
                        let own = logs.iter().rposition(|entry| is_of(&desk, entry));
                        let log = own.map(|place| {
                            let entry = logs.remove(place);
                            keeper.go_on(&entry);
                            entry.record
                        });
                        held.set(Held::Open(Box::new(met(&desk, log))));
                        earlier.set(logs);
                    }
                    News::Kept(error) => trouble.set(error),
                    News::Theirs(log) => {
                        trouble.set(None);
                        take_over(&desk, &held, &log);
                    }
                    News::Another(entry) if is_of(&desk, &entry) => {
                        keeper.go_on(&entry);
                        take_over(&desk, &held, &entry.record);
                    }
                    News::Another(_) => {}
                }
            }
        });
    }
    {
        let keeper = (*keeper).clone();
        use_effect_with((), move |()| move || keeper.close());
    }
    Opened {
        held,
        trouble,
        earlier,
        keeper: (*keeper).clone(),
    }
}

/// Whether a log is of the answers on the page.
fn is_of(desk: &Desk, entry: &Entry<Log>) -> bool {
    matches!(meet(&desk.wizard, &entry.record), Meeting::Same(_))
}

/// The log of these answers as it goes on, or a new one.
fn met(desk: &Desk, found: Option<Log>) -> Log {
    match found.map(|log| meet(&desk.wizard, &log)) {
        Some(Meeting::Same(log)) => *log,
        Some(Meeting::Other) | None => Log::begin(&desk.wizard),
    }
}

/// Goes on with a log and its answers.
pub fn take_over(desk: &Desk, held: &UseStateHandle<Held>, log: &Log) {
    if let Some(wizard) = log.wizard() {
        desk.act(Action::TakeOver(Box::new(wizard)));
    }
    held.set(Held::Open(Box::new(log.clone())));
}

/// Does what was pressed: the log and the answers go on together, and both are kept.
#[hook]
pub fn use_press(desk: &Desk, held: &UseStateHandle<Held>, keeper: &Keeper) -> Callback<Press> {
    let (desk, held, keeper) = (desk.clone(), held.clone(), keeper.clone());
    Callback::from(move |press| {
        let Held::Open(log) = &*held else {
            // Nothing can be pressed before there is a log.
            return;
        };
        let (next, laps) = log.after(&desk.wizard.intake.tried, press);
        let moved_on = next.step != log.step || laps.is_some() || next.aside != log.aside;
        let next = match laps {
            Some(laps) => {
                let action = Action::Laps(laps);
                let next = next.with(&desk.wizard.after(action.clone()));
                desk.act(action);
                next
            }
            None => next.with(&desk.wizard),
        };
        keeper.keep(next.clone());
        held.set(Held::Open(Box::new(next)));
        if moved_on && !matches!(press, Press::Felt(..)) {
            // The button that was pressed has gone; the heading stays, and what follows stands under it.
            browser::scroll_to_top();
            browser::focus(HEADING);
        }
    })
}
