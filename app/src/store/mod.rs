//! Records kept on the device in the browser's database, each under a name of its own.
//!
//! A record is kept as the JSON text it gives, so a build meets exactly what an earlier one wrote, and the record's own
//! version says how to read it; what cannot be read is told and left as it is. Whoever writes says what may be written
//! over ([`Over`]), and that is checked in the transaction that writes: of two pages neither undoes the other's work
//! unasked. What is written together is kept together or not at all, whenever the page is closed.
//!
//! Where the browser has no database to give, as in some frames and private windows, records live in memory as long as
//! the page, by the same calls.

mod device;
mod entry;
mod memory;
mod notice;
mod shape;
mod trouble;

#[cfg(all(test, target_arch = "wasm32"))]
mod browser_test;
#[cfg(test)]
mod words_test;

use std::rc::Rc;

use futures_util::future::join;
use yew::Callback;

use crate::tasks::breath;
use device::Device;
use entry::Write;
pub use entry::{Entry, Kind, Listing, Over, Record, Stamp, fresh_id};
use memory::Memory;
use notice::tell;
pub use notice::{Listener, Notice};
use shape::{SHAPE, Shape};
pub use trouble::StoreError;

/// What a notice names where every record of its kind was forgotten. No record has this name.
pub const EVERYTHING: &str = "";

/// Where records are kept. Clones are the same store.
#[derive(Debug, Clone)]
pub struct Store(Rc<Inner>);

#[derive(Debug)]
struct Inner {
    shape: Shape,
    place: Place,
    trouble: Option<StoreError>,
}

#[derive(Debug)]
enum Place {
    Device(Device),
    Memory(Memory),
}

impl PartialEq for Store {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Store {
    /// The records of this site. Where the device does not open them, the store keeps new ones in memory and
    /// [`Store::trouble`] says why.
    pub async fn open() -> Self {
        Self::of(SHAPE).await
    }

    async fn of(shape: Shape) -> Self {
        let (place, trouble) = match Device::open(shape).await {
            Ok(device) => (Place::Device(device), None),
            Err(error) => (Place::Memory(Memory::default()), Some(error)),
        };
        Self(Rc::new(Inner {
            shape,
            place,
            trouble,
        }))
    }

    /// Why records live in memory only; `None` where they are on the device.
    pub fn trouble(&self) -> Option<&StoreError> {
        self.0.trouble.as_ref()
    }

    /// The record under `id`, if there is one.
    pub async fn get<R: Record>(&self, id: &str) -> Result<Option<Entry<R>>, StoreError> {
        let text = match &self.0.place {
            Place::Device(device) => device.read(R::KIND, id).await?,
            Place::Memory(memory) => memory.read(R::KIND, id),
        };
        text.map(|text| Entry::read(id, &text)).transpose()
    }

    /// All records of a kind, in the order of their names.
    pub async fn list<R: Record>(&self) -> Result<Listing<R>, StoreError> {
        let texts = match &self.0.place {
            Place::Device(device) => device.read_all(R::KIND).await?,
            Place::Memory(memory) => memory.read_all(R::KIND),
        };
        Ok(Listing::read(texts))
    }

    /// All records of a kind in the order of their names, at most so many at a time, so that a page with thousands of them
    /// stays quick while it reads them. The next are on their way while `take` has some.
    pub async fn list_slices<R: Record>(
        &self,
        most: u32,
        mut take: impl FnMut(Listing<R>),
    ) -> Result<(), StoreError> {
        let mut texts = self.some_texts(R::KIND, None, most).await?;
        while let Some(last) = texts.last().map(|(id, _)| id.clone()) {
            let next = self.some_texts(R::KIND, Some(&last), most);
            let (next, ()) = join(next, async { take(Listing::read(texts)) }).await;
            texts = next?;
            breath().await;
        }
        Ok(())
    }

    async fn some_texts(
        &self,
        kind: Kind,
        after: Option<&str>,
        most: u32,
    ) -> Result<Vec<(String, String)>, StoreError> {
        match &self.0.place {
            Place::Device(device) => device.read_some(kind, after, most).await,
            Place::Memory(memory) => Ok(memory.read_some(kind, after, most)),
        }
    }

    /// Forgets every record of a kind, those of other builds too. Other pages are told of it as [`EVERYTHING`].
    pub async fn clear(&self, kind: Kind) -> Result<(), StoreError> {
        match &self.0.place {
            Place::Device(device) => device.clear(kind).await?,
            Place::Memory(memory) => memory.clear(kind),
        }
        let everything = Write::nothing(EVERYTHING, Over::Anything);
        tell(self.0.shape.name, kind, &[everything]);
        Ok(())
    }

    /// Keeps `record` under `id`, in place of what `over` allows. The stamp is what to name when it is written over.
    pub async fn put<R: Record>(
        &self,
        id: &str,
        record: &R,
        over: Over,
    ) -> Result<Stamp, StoreError> {
        let write = Write::of(id, record, over)?;
        let stamp = write.stamp();
        self.write(R::KIND, vec![write]).await?;
        Ok(stamp)
    }

    /// Keeps all of `records`, each in place of what its own word allows, or none of them.
    pub async fn put_all<R: Record>(
        &self,
        records: &[(String, R, Over)],
    ) -> Result<(), StoreError> {
        let writes = records.iter();
        let writes = writes.map(|(id, record, over)| Write::of(id, record, over.clone()));
        let writes: Vec<Write> = writes.collect::<Result<_, _>>()?;
        self.write(R::KIND, writes).await
    }

    /// Forgets the record under `id`, where `over` allows it.
    pub async fn delete(&self, kind: Kind, id: &str, over: Over) -> Result<(), StoreError> {
        self.write(kind, vec![Write::nothing(id, over)]).await
    }

    /// Has `heard` told of every record that another page writes or forgets, for as long as the listener lives.
    /// `None` where the browser carries no notices; [`Over`] guards the records there too.
    pub fn listen(&self, heard: Callback<Notice>) -> Option<Listener> {
        Listener::start(self.0.shape.name, heard)
    }

    async fn write(&self, kind: Kind, writes: Vec<Write>) -> Result<(), StoreError> {
        match &self.0.place {
            Place::Device(device) => device.write(kind, &writes).await?,
            Place::Memory(memory) => return memory.write(kind, writes),
        }
        tell(self.0.shape.name, kind, &writes);
        Ok(())
    }
}
