//! Sends what waits, tries again, and never forgets what has not arrived.
//!
//! A letter is kept on the device before the first try, and each try is written there before it is made; so a page closed
//! at any moment leaves a letter that the next page goes on with. Two pages do not try at once, and where one could not
//! tell whether the workshop has it, it is sent again under the same name.

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use js_sys::Date;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::letter::{Letter, State};
use super::unsent::{Unsent, Why};
use super::wire;
use crate::store::{Entry, Kind, Listener, Notice, Over, Store, StoreError};

/// Longest wait that a browser's timer takes in one go, ms; then it is looked again.
const LONGEST_WAIT: f64 = 600_000.0;

/// The one who carries letters for as long as the page lives. Clones are the same courier.
#[derive(Clone)]
pub struct Courier(Rc<Inner>);

impl PartialEq for Courier {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// What was handed to the courier.
#[derive(Clone, PartialEq)]
pub struct Bag {
    /// All letters, the newest last.
    pub letters: Rc<Vec<Entry<Letter>>>,
    /// Whether they outlive the page.
    pub kept: bool,
}

impl Bag {
    /// What has not reached its workshop, in short; `None` where nothing is on its way.
    pub fn unsent(&self) -> Option<Unsent> {
        let waiting = self.letters.iter().map(|one| &one.record);
        let waiting: Vec<_> = waiting.filter(|one| one.state != State::Arrived).collect();
        let refused = waiting.iter().any(|one| one.state != State::Waiting);
        let why = match (refused, self.kept) {
            (true, _) => Why::Refused,
            (false, true) => Why::Waiting,
            (false, false) => Why::Unkept,
        };
        let workshop = waiting.first()?.workshop.clone();
        Some(Unsent { why, workshop })
    }
}

/// Who hears what becomes of the letters, for as long as it is held.
pub type Hearing = Rc<Callback<Bag>>;

struct Inner {
    store: RefCell<Option<Store>>,
    bag: RefCell<Bag>,
    hearings: RefCell<Vec<Weak<Callback<Bag>>>>,
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
    /// Begins with what an earlier page has left.
    pub fn begin() -> Self {
        let inner = Rc::new(Inner {
            store: RefCell::default(),
            bag: RefCell::new(Bag {
                letters: Rc::default(),
                kept: true,
            }),
            hearings: RefCell::default(),
            timer: RefCell::default(),
            listener: RefCell::default(),
            busy: Cell::new(false),
            again: Cell::new(false),
        });
        if let Some(window) = web_sys::window() {
            let inner = Rc::clone(&inner);
            let back = EventListener::new(&window, "online", move |_| {
                let inner = Rc::clone(&inner);
                spawn_local(async move { inner.hurry().await });
            });
            back.forget();
        }
        spawn_local({
            let inner = Rc::clone(&inner);
            async move { inner.start().await }
        });
        Self(inner)
    }

    /// What there is now.
    pub fn bag(&self) -> Bag {
        self.0.bag.borrow().clone()
    }

    /// Has `told` hear whenever there is something else.
    pub fn hear(&self, told: Callback<Bag>) -> Hearing {
        let hearing = Rc::new(told);
        let mut hearings = self.0.hearings.borrow_mut();
        hearings.retain(|one| one.strong_count() > 0);
        hearings.push(Rc::downgrade(&hearing));
        hearing
    }

    /// Keeps a letter and sends it; under a name that was used before, nothing happens but that it stays.
    ///
    /// # Errors
    /// [`StoreError`] where it could not be kept. Then nothing is sent.
    pub async fn hand(&self, name: &str, letter: &Letter) -> Result<(), StoreError> {
        let store = self.0.store().await;
        match store.put(name, letter, Over::Nothing).await {
            Ok(_) | Err(StoreError::Overtaken(_)) => {}
            Err(error) => return Err(error),
        }
        Inner::run(&self.0);
        Ok(())
    }

    /// Tries a letter now; one that is being tried is left alone.
    pub fn try_now(&self, entry: &Entry<Letter>) {
        let (inner, entry) = (Rc::clone(&self.0), entry.clone());
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
        let (inner, entry) = (Rc::clone(&self.0), entry.clone());
        spawn_local(async move {
            let store = inner.store().await;
            let over = Over::Seen(entry.stamp);
            store.delete(Kind::Outbox, &entry.id, over).await.ok();
            Inner::run(&inner);
        });
    }
}

impl Inner {
    async fn start(self: &Rc<Self>) {
        let store = self.store().await;
        let kept = store.trouble().is_none();
        self.bag.borrow_mut().kept = kept;
        let heard = Rc::downgrade(self);
        let heard = Callback::from(move |notice: Notice| {
            if notice.kind == Kind::Outbox
                && let Some(inner) = heard.upgrade()
            {
                Self::run(&inner);
            }
        });
        *self.listener.borrow_mut() = store.listen(heard);
        Self::run(self);
    }

    fn tell(&self) {
        let bag = self.bag.borrow().clone();
        // Whoever hears may begin to hear something else.
        let hearings = self.hearings.borrow().clone();
        for hearing in hearings.iter().filter_map(Weak::upgrade) {
            hearing.emit(bag.clone());
        }
    }

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

    /// Tells the pages what there is; `None` where the device does not say, and then what was told stands.
    async fn show(&self, store: &Store) -> Option<Rc<Vec<Entry<Letter>>>> {
        let found = store.list::<Letter>().await.ok()?;
        let letters = Rc::new(found.entries);
        self.bag.borrow_mut().letters = Rc::clone(&letters);
        self.tell();
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

/// The courier, and what there is now. Only for components inside its provider.
#[hook]
pub fn use_courier() -> (Courier, Bag) {
    #[expect(
        clippy::expect_used,
        reason = "whoever shows letters is drawn inside the courier's context provider"
    )]
    let courier = use_context::<Courier>().expect("letters are shown with their courier");
    let bag = use_state_eq(|| courier.bag());
    {
        let set = bag.setter();
        use_effect_with(courier.clone(), move |courier| {
            let hearing = courier.hear(Callback::from(move |bag| set.set(bag)));
            move || drop(hearing)
        });
    }
    let now = (*bag).clone();
    (courier, now)
}
