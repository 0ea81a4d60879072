//! The desk on this device: what the list knows of every job, and every change to one.
//!
//! A change is told to the job as it stands on the device at that moment, in the transaction that writes it. So two pages
//! may work on the same job, and neither undoes the other's work.

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use gloo::timers::future::TimeoutFuture;
use js_sys::Date;
use sagwright_core::words::{Text, UnitChoice};
use sagwright_core::workshop::Workshop;
use yew::Callback;

use super::change::Change;
use super::find::Brief;
use super::intaken::{Intaken, push_few};
use super::job::Job;
use super::limits::keeps_to_limits;
use super::merge::{Fate, merge};
use super::settings::{KEPT_AS, Kept};
use super::told::Moment;
use crate::store::{EVERYTHING, Kind, Over, Record, Store, StoreError};
use crate::tasks::breath;
use crate::words;

/// Jobs read in one go: few enough that a key press waits less than a tenth of a second for them.
const SLICE: u32 = 300;

/// How long to wait before looking whether the database has opened, ms.
const WAIT_MS: u32 = 20;

/// How often a change is told anew where another page was quicker.
const TRIES: usize = 5;

impl Record for Job {
    const KIND: Kind = Kind::Intakes;
}

/// The desk as a page sees it at one moment.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sight {
    /// What the list knows of every job.
    pub briefs: Rc<Vec<Rc<Brief>>>,
    /// Whether all of them have been read.
    pub complete: bool,
    /// How many on the device cannot be read by this build.
    pub unreadable: usize,
    /// Why nothing is kept on the device; `None` where it is.
    pub trouble: Option<StoreError>,
    /// What the workshop says about itself, where it has.
    pub workshop: Option<Rc<Workshop>>,
    /// Counts up with every change, so that an open job is read again.
    pub turn: u32,
}

/// Keeps the desk. Clones are the same keeper.
#[derive(Clone)]
pub struct Keeper(Rc<Inner>);

struct Inner {
    store: RefCell<Option<Store>>,
    briefs: RefCell<BTreeMap<String, Rc<Brief>>>,
    workshop: RefCell<Option<Rc<Workshop>>>,
    unreadable: Cell<usize>,
    complete: Cell<bool>,
    turn: Cell<u32>,
    seen: Callback<Sight>,
}

impl PartialEq for Keeper {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Keeper {
    /// A keeper that tells `seen` whenever the desk looks otherwise.
    pub fn new(seen: Callback<Sight>) -> Self {
        Self(Rc::new(Inner {
            store: RefCell::default(),
            briefs: RefCell::default(),
            workshop: RefCell::default(),
            unreadable: Cell::default(),
            complete: Cell::default(),
            turn: Cell::default(),
            seen,
        }))
    }

    /// Opens the desk and reads what is on it, slice after slice.
    pub async fn open(&self) -> Store {
        let store = Store::open().await;
        self.0.store.replace(Some(store.clone()));
        self.read_workshop(&store).await;
        self.read_all(&store).await;
        store
    }

    async fn read_all(&self, store: &Store) {
        self.0.briefs.borrow_mut().clear();
        self.0.unreadable.set(0);
        self.0.complete.set(false);
        let read = store.list_slices::<Job>(SLICE, |slice| {
            let mut briefs = self.0.briefs.borrow_mut();
            for entry in slice.entries {
                let brief = Rc::new(brief(&entry.id, &entry.record));
                briefs.insert(entry.id, brief);
            }
            let unreadable = self.0.unreadable.get() + slice.unreadable.len();
            self.0.unreadable.set(unreadable);
        });
        // What has been read until the database failed is shown.
        read.await.ok();
        self.0.complete.set(true);
        self.show();
    }

    /// Takes in what another page has written under these names.
    pub async fn heard(&self, kind: Kind, ids: BTreeSet<String>) {
        let Some(store) = self.store() else { return };
        match kind {
            Kind::Intakes => {}
            Kind::Meta => {
                self.read_workshop(&store).await;
                self.show();
                return;
            }
            Kind::Logs | Kind::Outbox => return,
        }
        // Many at once are read in slices rather than one by one.
        if ids.contains(EVERYTHING) || ids.len() > 50 {
            self.read_all(&store).await;
            return;
        }
        for id in ids {
            match store.get::<Job>(&id).await {
                Ok(Some(entry)) => self.remember(&entry.id, &entry.record),
                Ok(None) => {
                    self.0.briefs.borrow_mut().remove(&id);
                }
                // What cannot be read now stays as the list knows it.
                Err(_) => {}
            }
        }
        self.show();
    }

    /// Keeps the workshop's settings on this device.
    pub async fn keep_workshop(&self, workshop: &Workshop) -> Result<(), StoreError> {
        let store = self.opened().await;
        store
            .put(KEPT_AS, &Kept::of(workshop), Over::Anything)
            .await?;
        self.0.workshop.replace(Some(Rc::new(workshop.clone())));
        self.show();
        Ok(())
    }

    /// Settings that cannot be read are as good as none; they stay where they are until others are kept.
    async fn read_workshop(&self, store: &Store) {
        let kept = store.get::<Kept>(KEPT_AS).await.ok().flatten();
        let workshop = kept.and_then(|entry| entry.record.read());
        self.0.workshop.replace(workshop.map(Rc::new));
    }

    /// The job under `id` as it stands on the device.
    pub async fn job(&self, id: &str) -> Result<Option<Job>, StoreError> {
        let store = self.opened().await;
        let entry = store.get::<Job>(id).await?;
        Ok(entry.map(|entry| entry.record))
    }

    /// Tells the job under `id` all of `changes`.
    ///
    /// # Errors
    /// Why nothing of it was kept, in words.
    pub async fn tell(&self, id: &str, changes: &[Change]) -> Result<(), Text> {
        let store = self.opened().await;
        let mut tries = TRIES;
        loop {
            let entry = store.get::<Job>(id).await.map_err(|error| error.text())?;
            let entry = entry.ok_or_else(|| Text::new("counter.gone.text"))?;
            let mut job = entry.record;
            for change in changes {
                job.hear(change.clone(), now());
            }
            // What does not keep to the limits could not be taken in again from a file.
            if !keeps_to_limits(&job) {
                return Err(Text::new("counter.too-long"));
            }
            match store.put(id, &job, Over::Seen(entry.stamp)).await {
                Ok(_) => {
                    self.remember(id, &job);
                    self.show();
                    return Ok(());
                }
                Err(StoreError::Overtaken(_)) if tries > 1 => tries -= 1,
                Err(error) => return Err(error.text()),
            }
        }
    }

    /// Puts jobs on the desk, all of them in one transaction. Those that are there already take in what is news.
    pub async fn take_in(&self, jobs: Vec<(String, Job)>) -> Result<Intaken, StoreError> {
        let store = self.opened().await;
        let mut tries = TRIES;
        loop {
            // What the list knows saves looking; where it turned out not to know all, everything is looked up.
            let trust = tries == TRIES && self.0.complete.get();
            let (writes, told) = self.prepared(&store, &jobs, trust).await?;
            if writes.is_empty() {
                return Ok(told);
            }
            match store.put_all(&writes).await {
                Ok(()) => {
                    for (at, (id, job, _)) in writes.iter().enumerate() {
                        self.remember(id, job);
                        if at % 500 == 499 {
                            breath().await;
                        }
                    }
                    self.show();
                    return Ok(told);
                }
                Err(StoreError::Overtaken(_)) if tries > 1 => tries -= 1,
                Err(error) => return Err(error),
            }
        }
    }

    async fn prepared(
        &self,
        store: &Store,
        jobs: &[(String, Job)],
        trust: bool,
    ) -> Result<(Vec<(String, Job, Over)>, Intaken), StoreError> {
        let mut writes = Vec::new();
        let mut told = Intaken::default();
        for (id, coming) in jobs {
            let there = if self.has(id) || !trust {
                store.get::<Job>(id).await?
            } else {
                None
            };
            let (job, fate) = merge(there.as_ref().map(|entry| &entry.record), coming.clone());
            match fate {
                Fate::New => {
                    told.new_count += 1;
                    push_few(&mut told.new, id);
                }
                Fate::Updated => told.updated += 1,
                Fate::Same => {
                    told.same_count += 1;
                    push_few(&mut told.same, id);
                    continue;
                }
            }
            let over = there.map_or(Over::Nothing, |entry| Over::Seen(entry.stamp));
            writes.push((id.clone(), job, over));
        }
        Ok((writes, told))
    }

    /// Every job with its name, read slice after slice.
    pub async fn all(&self) -> Result<Vec<(String, Job)>, StoreError> {
        let store = self.opened().await;
        let mut all = Vec::new();
        let read = store.list_slices::<Job>(SLICE, |slice| {
            let entries = slice.entries.into_iter();
            all.extend(entries.map(|entry| (entry.id, entry.record)));
        });
        read.await?;
        Ok(all)
    }

    /// Forgets one rider.
    pub async fn forget(&self, id: &str) -> Result<(), StoreError> {
        let store = self.opened().await;
        store.delete(Kind::Intakes, id, Over::Anything).await?;
        self.0.briefs.borrow_mut().remove(id);
        self.show();
        Ok(())
    }

    /// Forgets every rider.
    pub async fn forget_all(&self) -> Result<(), StoreError> {
        let store = self.opened().await;
        store.clear(Kind::Intakes).await?;
        self.0.briefs.borrow_mut().clear();
        self.0.unreadable.set(0);
        self.show();
        Ok(())
    }

    /// Whether a job is on the desk.
    pub fn has(&self, id: &str) -> bool {
        self.0.briefs.borrow().contains_key(id)
    }

    /// The store, waited for where the page was quicker than the database.
    async fn opened(&self) -> Store {
        loop {
            if let Some(store) = self.store() {
                return store;
            }
            TimeoutFuture::new(WAIT_MS).await;
        }
    }

    fn store(&self) -> Option<Store> {
        self.0.store.borrow().clone()
    }

    fn remember(&self, id: &str, job: &Job) {
        let brief = Rc::new(brief(id, job));
        self.0.briefs.borrow_mut().insert(id.to_owned(), brief);
    }

    fn show(&self) {
        let turn = self.0.turn.get().wrapping_add(1);
        self.0.turn.set(turn);
        let store = self.store();
        self.0.seen.emit(Sight {
            briefs: Rc::new(self.0.briefs.borrow().values().cloned().collect()),
            complete: self.0.complete.get(),
            unreadable: self.0.unreadable.get(),
            trouble: store.and_then(|store| store.trouble().cloned()),
            workshop: self.0.workshop.borrow().clone(),
            turn,
        });
    }
}

fn brief(id: &str, job: &Job) -> Brief {
    Brief::of(id, job, &|text| words::tell(text, &UnitChoice::default()))
}

/// Now, by the device's clock.
pub fn now() -> Moment {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "milliseconds since 1970 fit for longer than there are clocks"
    )]
    let now = Date::now().max(0.0) as Moment;
    now
}
