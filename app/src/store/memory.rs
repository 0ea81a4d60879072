//! Records in memory, for as long as the page.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::entry::Write;
use super::{Kind, StoreError};

/// Keeps records as the device would, until the page is closed.
#[derive(Debug, Default)]
pub struct Memory(RefCell<BTreeMap<(Kind, String), String>>);

impl Memory {
    /// The text under `id`.
    pub fn read(&self, kind: Kind, id: &str) -> Option<String> {
        self.0.borrow().get(&(kind, id.to_owned())).cloned()
    }

    /// All names and texts, in the order of the names.
    pub fn read_all(&self, kind: Kind) -> Vec<(String, String)> {
        let all = self.0.borrow();
        let of_kind = all.iter().filter(|((of, _), _)| *of == kind);
        of_kind
            .map(|((_, id), text)| (id.clone(), text.clone()))
            .collect()
    }

    /// Writes all or nothing.
    pub fn write(&self, kind: Kind, writes: Vec<Write>) -> Result<(), StoreError> {
        let mut all = self.0.borrow_mut();
        let mut after = all.clone();
        for write in writes {
            let place = (kind, write.id);
            if !write.over.allows(after.get(&place).map(String::as_str)) {
                return Err(StoreError::Overtaken(place.1));
            }
            match write.text {
                Some(text) => after.insert(place, text),
                None => after.remove(&place),
            };
        }
        *all = after;
        Ok(())
    }
}
