//! Keeps the log on the device press by press, and hears when another page has gone on with it.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use yew::Callback;

use super::log::Log;
use crate::store::{Entry, Kind, Listener, Over, Stamp, Store, StoreError, fresh_id};

/// What the keeper tells the page.
#[derive(Debug, Clone, PartialEq)]
pub enum News {
    /// The device was asked: the logs on it, the newest last, and what is wrong with the device.
    Opened(Vec<Entry<Log>>, Option<StoreError>),
    /// The last press is kept, or not.
    Kept(Option<StoreError>),
    /// Another page has gone on with the log while everything pressed here was kept.
    Theirs(Box<Log>),
    /// Another page has kept a log while this one was not kept yet.
    Another(Entry<Log>),
}

/// Keeps one log. Clones are the same keeper.
#[derive(Clone)]
pub struct Keeper(Rc<Inner>);

struct Inner {
    tell: Callback<News>,
    store: RefCell<Option<Store>>,
    listener: RefCell<Option<Listener>>,
    /// The name of the log.
    id: RefCell<String>,
    /// How it stood when it was last read or written here; `None` while it is not on the device.
    stamp: RefCell<Option<Stamp>>,
    /// What is to be written next: of several presses only the last counts.
    waiting: RefCell<Option<Log>>,
    writing: Cell<bool>,
    /// Whether what is written next goes over whatever another page has made of the log.
    over_theirs: Cell<bool>,
}

impl PartialEq for Keeper {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Keeper {
    /// Asks the device for its logs. What is kept from here on is another one, until one of them is gone on with.
    pub fn open(tell: Callback<News>) -> Self {
        let keeper = Self(Rc::new(Inner {
            tell,
            store: RefCell::default(),
            listener: RefCell::default(),
            id: RefCell::new(fresh_id()),
            stamp: RefCell::default(),
            waiting: RefCell::default(),
            writing: Cell::new(false),
            over_theirs: Cell::new(false),
        }));
        let opening = keeper.clone();
        spawn_local(async move { opening.look().await });
        keeper
    }

    /// Keeps `log` in place of what was last read or written here.
    pub fn keep(&self, log: Log) {
        self.0.waiting.replace(Some(log));
        self.write();
    }

    /// Hears no more of other pages, once its own page has gone. What is still to be kept is kept.
    pub fn close(&self) {
        self.0.listener.replace(None);
    }

    /// Goes on with a log that is on the device.
    pub fn go_on(&self, entry: &Entry<Log>) {
        self.0.id.replace(entry.id.clone());
        self.0.stamp.replace(Some(entry.stamp.clone()));
    }

    /// Keeps a log that another one is about to take the place of on the page, so that it can be gone on with later.
    pub fn leave(&self, log: Log) {
        let (id, stamp) = (self.0.id.borrow().clone(), self.0.stamp.borrow().clone());
        let over = stamp.map_or(Over::Nothing, Over::Seen);
        if let Some(store) = self.0.store.borrow().clone() {
            let keeper = self.clone();
            spawn_local(async move {
                let put = store.put(&id, &log, over).await;
                keeper.0.tell.emit(News::Kept(put.err()));
            });
        }
    }

    /// Forgets a log, unless another page has gone on with it meanwhile.
    pub fn forget(&self, entry: Entry<Log>) {
        if let Some(store) = self.0.store.borrow().clone() {
            let keeper = self.clone();
            spawn_local(async move {
                let over = Over::Seen(entry.stamp);
                let gone = store.delete(Kind::Logs, &entry.id, over).await;
                keeper.0.tell.emit(News::Kept(gone.err()));
            });
        }
    }

    /// Keeps `log` although another page has gone on with it.
    pub fn insist(&self, log: Log) {
        self.0.over_theirs.set(true);
        self.keep(log);
    }

    /// Tells what another page has made of the log.
    pub fn take_over(&self) {
        let keeper = self.clone();
        spawn_local(async move {
            if let Some(theirs) = keeper.read().await {
                keeper.0.tell.emit(News::Theirs(Box::new(theirs)));
            }
        });
    }

    /// Another page has written a log: this one, or one that may be of the same answers before this one was kept at all.
    fn hear(&self, id: String) {
        if id == *self.0.id.borrow() {
            self.take_over();
        } else if self.0.stamp.borrow().is_none() {
            let keeper = self.clone();
            spawn_local(async move {
                let store = keeper.0.store.borrow().clone();
                if let Some(store) = store
                    && let Ok(Some(entry)) = store.get::<Log>(&id).await
                {
                    keeper.0.tell.emit(News::Another(entry));
                }
            });
        }
    }

    /// Whether everything pressed here is kept.
    fn is_idle(&self) -> bool {
        !self.0.writing.get() && self.0.waiting.borrow().is_none()
    }

    async fn look(&self) {
        let store = Store::open().await;
        let trouble = store.trouble().cloned();
        let hearing = self.clone();
        let listener = store.listen(Callback::from(move |notice: crate::store::Notice| {
            if notice.kind == Kind::Logs && hearing.is_idle() {
                hearing.hear(notice.id);
            }
        }));
        self.0.listener.replace(listener);
        let (logs, trouble) = match store.list::<Log>().await {
            Ok(mut found) => {
                let unreadable = found.unreadable.pop().map(StoreError::Unreadable);
                (found.entries, trouble.or(unreadable))
            }
            Err(error) => (Vec::new(), trouble.or(Some(error))),
        };
        self.0.store.replace(Some(store));
        self.0.tell.emit(News::Opened(logs, trouble));
        self.write();
    }

    async fn read(&self) -> Option<Log> {
        let store = self.0.store.borrow().clone()?;
        let id = self.0.id.borrow().clone();
        let entry = store.get::<Log>(&id).await.ok()?;
        let Some(entry) = entry else {
            self.0.stamp.replace(None);
            return None;
        };
        self.go_on(&entry);
        Some(entry.record)
    }

    fn write(&self) {
        let store = self.0.store.borrow().clone();
        let Some(store) = store.filter(|_| !self.0.writing.get()) else {
            return;
        };
        let keeper = self.clone();
        keeper.0.writing.set(true);
        spawn_local(async move {
            while let Some(log) = keeper.0.waiting.take() {
                let id = keeper.0.id.borrow().clone();
                let over = match keeper.0.stamp.borrow().clone() {
                    _ if keeper.0.over_theirs.take() => Over::Anything,
                    Some(stamp) => Over::Seen(stamp),
                    None => Over::Nothing,
                };
                let put = store.put(&id, &log, over).await;
                let trouble = match put {
                    Ok(stamp) => {
                        keeper.0.stamp.replace(Some(stamp));
                        store.trouble().cloned()
                    }
                    Err(error) => Some(error),
                };
                keeper.0.tell.emit(News::Kept(trouble));
            }
            keeper.0.writing.set(false);
        });
    }
}
