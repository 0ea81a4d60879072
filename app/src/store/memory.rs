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

    /// So many names and texts that follow `after` in the order of the names; from the first one where that is `None`.
    pub fn read_some(&self, kind: Kind, after: Option<&str>, most: u32) -> Vec<(String, String)> {
        let mut all = self.read_all(kind);
        all.retain(|(id, _)| after.is_none_or(|after| id.as_str() > after));
        all.truncate(usize::try_from(most).unwrap_or(usize::MAX));
        all
    }

    /// Forgets everything of a kind.
    pub fn clear(&self, kind: Kind) {
        self.0.borrow_mut().retain(|(of, _), _| *of != kind);
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
