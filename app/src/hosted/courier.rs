//! Sends what waits, tries again, and never forgets what has not arrived.
//!
//! A letter is kept on the device before the first try, and each try is written there before it is made; so a page closed
//! at any moment leaves a letter that the next page goes on with. Two pages do not try at once, and where one could not
//! tell whether the workshop has it, it is sent again under the same name.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use js_sys::Date;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::letter::{Letter, State};
use super::wire;
use crate::store::{Entry, Kind, Listener, Over, Store, StoreError};

/// Longest wait that a browser's timer takes in one go, ms; then it is looked again.
const LONGEST_WAIT: f64 = 600_000.0;

/// What was handed to the courier.
#[derive(Clone)]
pub struct Courier {
    inner: Rc<Inner>,
    /// All letters, the newest last.
    pub letters: Rc<Vec<Entry<Letter>>>,
    /// Whether they outlive the page.
    pub kept: bool,
}

impl PartialEq for Courier {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.letters, &other.letters) && self.kept == other.kept
    }
}

struct Inner {
    store: RefCell<Option<Store>>,
    told: UseStateSetter<Rc<Vec<Entry<Letter>>>>,
    kept: UseStateSetter<bool>,
    /// When to look again.
    timer: RefCell<Option<Timeout>>,
    /// Hears what other pages write.
    listener: RefCell<Option<Listener>>,
    /// Whether this page is at it.
    busy: Cell<bool>,
    /// Whether something came in between.
    again: Cell<bool>,
}

impl Courier {
    /// Keeps a letter and sends it; under a name that was used before, nothing happens but that it stays.
    ///
    /// # Errors
    /// [`StoreError`] where it could not be kept. Then nothing is sent.
    pub async fn hand(&self, name: &str, letter: &Letter) -> Result<(), StoreError> {
        let store = self.inner.store().await;
        match store.put(name, letter, Over::Nothing).await {
            Ok(_) | Err(StoreError::Overtaken(_)) => {}
            Err(error) => return Err(error),
        }
        Inner::run(&self.inner);
        Ok(())
    }

    /// Tries a letter now; one that is being tried is left alone.
    pub fn try_now(&self, entry: &Entry<Letter>) {
        let (inner, entry) = (Rc::clone(&self.inner), entry.clone());
        spawn_local(async move {
            let now = Date::now();
            if entry.record.is_held(now) {
                return;
            }
            let store = inner.store().await;
            let now = entry.record.at_once(now);
            // Where another page was quicker, its word stands.
            store
                .put(&entry.id, &now, Over::Seen(entry.stamp))
                .await
                .ok();
            Inner::run(&inner);
        });
    }

    /// Forgets a letter, as the rider asks.
    pub fn forget(&self, entry: &Entry<Letter>) {
        let (inner, entry) = (Rc::clone(&self.inner), entry.clone());
        spawn_local(async move {
            let store = inner.store().await;
            let over = Over::Seen(entry.stamp);
            store.delete(Kind::Outbox, &entry.id, over).await.ok();
            Inner::run(&inner);
        });
    }
}

impl Inner {
    /// The store, opened once.
    async fn store(&self) -> Store {
        if let Some(store) = self.store.borrow().clone() {
            return store;
        }
        let store = Store::open().await;
        // Opened twice at once, the first one stays, so that letters in memory are not in two places.
        let mut place = self.store.borrow_mut();
        place.get_or_insert(store).clone()
    }

    /// Looks for letters that are due and sends them, one after the other.
    fn run(inner: &Rc<Self>) {
        if inner.busy.replace(true) {
            inner.again.set(true);
            return;
        }
        let inner = Rc::clone(inner);
        spawn_local(async move {
            loop {
                inner.again.set(false);
                let sent = inner.round().await;
                if !sent && !inner.again.get() {
                    break;
                }
            }
            inner.busy.set(false);
        });
    }

    /// One look; whether there was a letter to send.
    async fn round(self: &Rc<Self>) -> bool {
        let store = self.store().await;
        let Some(letters) = self.show(&store).await else {
            self.look_later();
            return false;
        };
        let now = Date::now();
        let due = letters
            .iter()
            .find(|one| one.record.due().is_some_and(|due| due <= now));
        let Some(entry) = due else {
            self.look_again(&letters, now);
            return false;
        };
        let held = entry.record.held(now);
        let over = Over::Seen(entry.stamp.clone());
        // Another page was quicker: look at what it has written.
        let Ok(stamp) = store.put(&entry.id, &held, over).await else {
            self.look_later();
            return false;
        };
        self.show(&store).await;
        let answered = wire::send(&held.address, &entry.id, &held.text).await;
        let after = held.after(&answered, Date::now());
        if store
            .put(&entry.id, &after, Over::Seen(stamp))
            .await
            .is_err()
        {
            self.look_later();
            return false;
        }
        true
    }

    /// Tells the page what there is; `None` where the device does not say, and then what was told stands.
    async fn show(&self, store: &Store) -> Option<Rc<Vec<Entry<Letter>>>> {
        let found = store.list::<Letter>().await.ok()?;
        let letters = Rc::new(found.entries);
        self.told.set(Rc::clone(&letters));
        Some(letters)
    }

    fn look_again(self: &Rc<Self>, letters: &[Entry<Letter>], now: f64) {
        let due = letters.iter().filter_map(|one| one.record.due());
        let soonest = due.fold(f64::INFINITY, f64::min);
        let wait = (soonest - now).max(0.0);
        *self.timer.borrow_mut() = soonest.is_finite().then(|| self.in_ms(wait));
    }

    /// The device did not take a word, or another page did: a moment later things stand otherwise.
    fn look_later(self: &Rc<Self>) {
        *self.timer.borrow_mut() = Some(self.in_ms(2000.0));
    }

    fn in_ms(self: &Rc<Self>, wait: f64) -> Timeout {
        let inner = Rc::clone(self);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "at least 0 and at most ten minutes"
        )]
        let wait = wait.min(LONGEST_WAIT).ceil() as u32;
        Timeout::new(wait, move || Self::run(&inner))
    }

    /// The network is back: nothing has to wait any longer.
    async fn hurry(self: &Rc<Self>) {
        let store = self.store().await;
        let letters = self.show(&store).await.unwrap_or_default();
        let now = Date::now();
        let waits = |letter: &Letter| letter.state == State::Waiting && !letter.is_held(now);
        for entry in letters.iter().filter(|one| waits(&one.record)) {
            let over = Over::Seen(entry.stamp.clone());
            let at_once = entry.record.at_once(now);
            store.put(&entry.id, &at_once, over).await.ok();
        }
        Self::run(self);
    }
}

/// The courier of this page. It begins with what an earlier page has left.
#[hook]
pub fn use_courier() -> Courier {
    let letters = use_state_eq(Rc::<Vec<Entry<Letter>>>::default);
    let kept = use_state_eq(|| true);
    let inner = use_memo((), |()| {
        Rc::new(Inner {
            store: RefCell::default(),
            told: letters.setter(),
            kept: kept.setter(),
            timer: RefCell::default(),
            listener: RefCell::default(),
            busy: Cell::new(false),
            again: Cell::new(false),
        })
    });
    {
        let inner = Rc::clone(&*inner);
        use_effect_with((), move |()| {
            let back = {
                let inner = Rc::clone(&inner);
                web_sys::window().map(|window| {
                    EventListener::new(&window, "online", move |_| {
                        let inner = Rc::clone(&inner);
                        spawn_local(async move { inner.hurry().await });
                    })
                })
            };
            spawn_local(async move {
                let store = inner.store().await;
                inner.kept.set(store.trouble().is_none());
                let heard = Rc::downgrade(&inner);
                let heard = Callback::from(move |notice: crate::store::Notice| {
                    if notice.kind == Kind::Outbox
                        && let Some(inner) = heard.upgrade()
                    {
                        Inner::run(&inner);
                    }
                });
                *inner.listener.borrow_mut() = store.listen(heard);
                Inner::run(&inner);
            });
            move || drop(back)
        });
    }
    Courier {
        inner: Rc::clone(&*inner),
        letters: (*letters).clone(),
        kept: *kept,
    }
}
