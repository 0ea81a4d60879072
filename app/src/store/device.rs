//! Records in the browser's database.

use std::cell::{Cell, RefCell};
use std::future::IntoFuture;
use std::rc::Rc;

use futures_channel::oneshot;
use gloo::timers::callback::Timeout;
use idb::{
    Database, Factory, KeyRange, ObjectStore, Query, Transaction, TransactionMode,
    TransactionResult,
};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::{IdbDatabase, IdbTransaction};

use super::entry::Write;
use super::shape::Shape;
use super::{Kind, StoreError};

/// A database that opens again by itself where it had to be let go.
#[derive(Debug)]
pub struct Device {
    shape: Shape,
    open: RefCell<Rc<Connection>>,
}

/// An open database, let go when dropped.
#[derive(Debug)]
struct Connection {
    database: Database,
    /// Whether it was let go already, for a newer build or because the browser cleared it away.
    gone: Rc<Cell<bool>>,
}

impl Drop for Connection {
    fn drop(&mut self) {
        self.database.close();
    }
}

impl Device {
    /// Opens the database, made or brought to the newest version where that has to be.
    pub async fn open(shape: Shape) -> Result<Self, StoreError> {
        let connection = connect(shape).await?;
        Ok(Self {
            shape,
            open: RefCell::new(Rc::new(connection)),
        })
    }

    /// The text under `id`.
    pub async fn read(&self, kind: Kind, id: &str) -> Result<Option<String>, StoreError> {
        let turn = self.turn(kind, TransactionMode::ReadOnly).await?;
        let got = text_under(&turn.place, id).await;
        turn.end(got).await
    }

    /// All names and texts, in the order of the names.
    pub async fn read_all(&self, kind: Kind) -> Result<Vec<(String, String)>, StoreError> {
        let turn = self.turn(kind, TransactionMode::ReadOnly).await?;
        let got = all_texts(&turn.place).await;
        turn.end(got).await
    }

    /// So many names and texts that follow `after` in the order of the names; from the first one where that is `None`.
    pub async fn read_some(
        &self,
        kind: Kind,
        after: Option<&str>,
        most: u32,
    ) -> Result<Vec<(String, String)>, StoreError> {
        let turn = self.turn(kind, TransactionMode::ReadOnly).await?;
        let got = some_texts(&turn.place, after, most).await;
        turn.end(got).await
    }

    /// Forgets everything of a kind.
    pub async fn clear(&self, kind: Kind) -> Result<(), StoreError> {
        let turn = self.turn(kind, TransactionMode::ReadWrite).await?;
        let done = cleared(&turn.place).await;
        turn.end(done).await
    }

    /// Writes all or nothing, in one transaction.
    pub async fn write(&self, kind: Kind, writes: &[Write]) -> Result<(), StoreError> {
        let turn = self.turn(kind, TransactionMode::ReadWrite).await?;
        let done = write_all(&turn.place, writes).await;
        if done.is_ok() {
            // Said at once, so that it is kept even where the page is closed before it hears that it is. A browser that
            // does not know the word keeps it all the same, a moment later.
            Transaction::from(turn.transaction.clone()).commit().ok();
        }
        turn.end(done).await
    }

    async fn turn(&self, kind: Kind, mode: TransactionMode) -> Result<Turn, StoreError> {
        let mut connection = Rc::clone(&self.open.borrow());
        if connection.gone.get() {
            connection = Rc::new(connect(self.shape).await?);
            self.open.replace(Rc::clone(&connection));
        }
        Turn::start(connection, kind, mode)
    }
}

async fn connect(shape: Shape) -> Result<Connection, StoreError> {
    let mut database = opened(shape).await?;
    let gone = Rc::new(Cell::new(false));
    {
        let gone = Rc::clone(&gone);
        // Another page brings the database to a newer version, or clears it away: it waits until all others let go.
        database.on_version_change(move |event| {
            gone.set(true);
            let target = event.target().and_then(|target| target.dyn_into().ok());
            if let Some(database) = target.as_ref() {
                IdbDatabase::close(database);
            }
        });
    }
    {
        let gone = Rc::clone(&gone);
        database.on_close(move |_| gone.set(true));
    }
    Ok(Connection { database, gone })
}

/// Opens the database, or gives up when that takes too long.
async fn opened(shape: Shape) -> Result<Database, StoreError> {
    let factory = Factory::new().map_err(|error| StoreError::at_opening(&error))?;
    let request = factory.open(shape.name, Some(shape.version()));
    let mut request = request.map_err(|error| StoreError::at_opening(&error))?;
    request.on_upgrade_needed(move |event| shape.upgrade(&event));
    let (answer, answered) = oneshot::channel();
    let answer = Rc::new(Cell::new(Some(answer)));
    let too_long = {
        let answer = Rc::clone(&answer);
        Timeout::new(shape.patience_ms, move || {
            if let Some(answer) = answer.take() {
                // Nobody is left to hear it when the page has gone on.
                answer.send(Err(StoreError::Blocked)).ok();
            }
        })
    };
    spawn_local(async move {
        let opened = request.await;
        let opened = opened.map_err(|error| StoreError::at_opening(&error));
        let unheard = match answer.take() {
            Some(answer) => answer.send(opened).err(),
            None => Some(opened),
        };
        if let Some(Ok(late)) = unheard {
            late.close();
        }
    });
    let opened = answered.await.map_err(|_| StoreError::Failed)?;
    drop(too_long);
    opened
}

/// One transaction over one kind of record.
struct Turn {
    place: ObjectStore,
    transaction: IdbTransaction,
    ended: <Transaction as IntoFuture>::IntoFuture,
    /// Held open until the transaction has ended.
    _connection: Rc<Connection>,
}

impl Turn {
    fn start(
        connection: Rc<Connection>,
        kind: Kind,
        mode: TransactionMode,
    ) -> Result<Self, StoreError> {
        let transaction = connection.database.transaction(&[kind.word()], mode)?;
        let place = transaction.object_store(kind.word())?;
        let transaction: IdbTransaction = transaction.into();
        Ok(Self {
            place,
            ended: Transaction::from(transaction.clone()).into_future(),
            transaction,
            _connection: connection,
        })
    }

    /// Waits until the browser has kept everything, or takes everything back where something went wrong.
    async fn end<T>(self, outcome: Result<T, StoreError>) -> Result<T, StoreError> {
        if outcome.is_err() {
            // Fails where the browser has taken it back already.
            self.transaction.abort().ok();
        }
        let ended = self.ended.await;
        // Nobody listens from here on, and an event may still be on its way.
        self.transaction.set_oncomplete(None);
        self.transaction.set_onabort(None);
        self.transaction.set_onerror(None);
        let value = outcome?;
        match ended {
            Ok(TransactionResult::Committed) => Ok(value),
            // Room may run out only when all is written and to be kept: then the reason stands with the transaction.
            _ => Err(match self.transaction.error() {
                Some(reason) => StoreError::of_exception(&reason),
                None => StoreError::Failed,
            }),
        }
    }
}

async fn text_under(place: &ObjectStore, id: &str) -> Result<Option<String>, StoreError> {
    let there = place.get(JsValue::from_str(id))?.await?;
    there.map(|value| text(id, &value)).transpose()
}

async fn all_texts(place: &ObjectStore) -> Result<Vec<(String, String)>, StoreError> {
    let ids = place.get_all_keys(None, None)?.await?;
    let values = place.get_all(None, None)?.await?;
    Ok(pairs(&ids, &values))
}

async fn some_texts(
    place: &ObjectStore,
    after: Option<&str>,
    most: u32,
) -> Result<Vec<(String, String)>, StoreError> {
    let range = || {
        let after = after.map(JsValue::from_str);
        let range = after.map(|after| KeyRange::lower_bound(&after, Some(true)));
        range.transpose().map(|range| range.map(Query::KeyRange))
    };
    // Both are asked for before either is waited for: a desk is opened in many such steps.
    let ids = place.get_all_keys(range()?, Some(most))?;
    let values = place.get_all(range()?, Some(most))?;
    let (ids, values) = (ids.await?, values.await?);
    Ok(pairs(&ids, &values))
}

async fn cleared(place: &ObjectStore) -> Result<(), StoreError> {
    place.clear()?.await?;
    Ok(())
}

fn pairs(ids: &[JsValue], values: &[JsValue]) -> Vec<(String, String)> {
    let pairs = ids.iter().zip(values).filter_map(|(id, value)| {
        let id = id.as_string()?;
        // What is no text was not written by this site; reading it as a record fails and tells its name.
        let text = value.as_string().unwrap_or_default();
        Some((id, text))
    });
    pairs.collect()
}

async fn write_all(place: &ObjectStore, writes: &[Write]) -> Result<(), StoreError> {
    for write in writes {
        let there = text_under(place, &write.id).await;
        // What cannot be read stands there all the same.
        let there = match &there {
            Err(StoreError::Unreadable(_)) => Some(""),
            Err(error) => return Err(error.clone()),
            Ok(text) => text.as_deref(),
        };
        if !write.over.allows(there) {
            return Err(StoreError::Overtaken(write.id.clone()));
        }
        let key = JsValue::from_str(&write.id);
        // Nothing waits for these: the transaction ends when both are done, or with what stopped them.
        match &write.text {
            Some(text) => drop(place.put(&JsValue::from_str(text), Some(&key))?),
            None => drop(place.delete(key)?),
        }
    }
    Ok(())
}

fn text(id: &str, value: &JsValue) -> Result<String, StoreError> {
    let text = value.as_string();
    text.ok_or_else(|| StoreError::Unreadable(id.to_owned()))
}
