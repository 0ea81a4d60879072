//! The versions of the database: which places it has.
//!
//! A later version adds a step and never changes an earlier one, so that a device of any age arrives at the same shape.
//! How a record itself is written is the record's own affair.

use idb::{Database, DatabaseEvent, Event, ObjectStoreParams, Request, event::VersionChangeEvent};

use super::Kind;

/// What a step does to the database.
type Step = fn(&Database) -> Result<(), idb::Error>;

/// A database and how it came to be what it is.
#[derive(Debug, Clone, Copy)]
pub struct Shape {
    /// Its name; the channel of notices about it has the same.
    pub name: &'static str,
    /// The steps from nothing to the newest version.
    pub steps: &'static [Step],
    /// How long the database may take to open, ms. A page that holds it with an older build has been asked to let go.
    pub patience_ms: u32,
}

/// The database of this site.
pub const SHAPE: Shape = Shape {
    name: "sagwright",
    steps: &[the_first_places, a_place_for_what_is_sent],
    patience_ms: 10_000,
};

/// A place for each kind of record, under names given from outside.
pub fn the_first_places(database: &Database) -> Result<(), idb::Error> {
    for kind in [Kind::Logs, Kind::Intakes, Kind::Meta] {
        database.create_object_store(kind.word(), ObjectStoreParams::new())?;
    }
    Ok(())
}

/// A place for what is on its way to a workshop.
fn a_place_for_what_is_sent(database: &Database) -> Result<(), idb::Error> {
    database.create_object_store(Kind::Outbox.word(), ObjectStoreParams::new())?;
    Ok(())
}

impl Shape {
    /// The newest version, from 1.
    pub fn version(&self) -> u32 {
        u32::try_from(self.steps.len()).unwrap_or(u32::MAX)
    }

    /// Brings an older database to the newest version; where a step fails, it stays what it was.
    pub fn upgrade(&self, event: &VersionChangeEvent) {
        if self.climb(event).is_err() {
            let upgrade = event
                .target()
                .ok()
                .and_then(|request| request.transaction());
            // Fails only where the browser has ended the upgrade by itself.
            upgrade.and_then(|upgrade| upgrade.abort().ok());
        }
    }

    fn climb(&self, event: &VersionChangeEvent) -> Result<(), idb::Error> {
        let database = event.database()?;
        let done = usize::try_from(event.old_version()?).unwrap_or(usize::MAX);
        self.steps
            .iter()
            .skip(done)
            .try_for_each(|step| step(&database))
    }
}
