//! An open job: read from the desk, told what changes, and read again when another page has changed it.

use std::rc::Rc;

use sagwright_core::words::Text;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::change::Change;
use super::job::Job;
use super::shell::Counter;

/// What stands under a name on the desk.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// Not read yet.
    Reading,
    /// Nothing, or nothing any more.
    Gone,
    /// It cannot be shown; why.
    Unreadable(Text),
    /// A job.
    There(Rc<Job>),
}

/// The job under `id`, as it stands on the desk now.
#[hook]
pub fn use_job(counter: &Counter, id: &str) -> Found {
    let found = use_state_eq(|| (String::new(), Found::Reading));
    let (keeper, set) = (counter.keeper.clone(), found.setter());
    use_effect_with((id.to_owned(), counter.sight.turn), move |(id, turn)| {
        // Before the first turn there is no desk to look on.
        if *turn > 0 {
            let id = id.clone();
            spawn_local(async move {
                let there = match keeper.job(&id).await {
                    Ok(Some(job)) => Found::There(Rc::new(job)),
                    Ok(None) => Found::Gone,
                    Err(error) => Found::Unreadable(error.text()),
                };
                set.set((id, there));
            });
        }
    });
    if found.0 == id {
        found.1.clone()
    } else {
        Found::Reading
    }
}

/// The way to tell a job something, and what came of the last time.
#[derive(Debug, Clone, PartialEq)]
pub struct Telling {
    /// Tells all of these at once.
    pub tell: Callback<Vec<Change>>,
    /// What came of it: nothing yet, kept, or why not.
    pub came: Came,
}

/// What came of telling.
#[derive(Debug, Clone, PartialEq)]
pub enum Came {
    /// Nothing was told yet.
    Nothing,
    /// It is kept.
    Kept,
    /// It is not kept, and why.
    Not(Text),
}

/// The way to tell the job under `id` something; `then` hears when it is kept.
#[hook]
pub fn use_telling(counter: &Counter, id: &str, then: Callback<()>) -> Telling {
    let came = use_state_eq(|| Came::Nothing);
    let tell = {
        let (keeper, id, set) = (counter.keeper.clone(), id.to_owned(), came.setter());
        Callback::from(move |changes: Vec<Change>| {
            let (keeper, id, set, then) = (keeper.clone(), id.clone(), set.clone(), then.clone());
            spawn_local(async move {
                match keeper.tell(&id, &changes).await {
                    Ok(()) => {
                        set.set(Came::Kept);
                        then.emit(());
                    }
                    Err(why) => set.set(Came::Not(why)),
                }
            });
        })
    };
    Telling {
        tell,
        came: (*came).clone(),
    }
}
