//! What can go wrong, and how it is said.

use idb::Error;
use js_sys::Reflect;
use sagwright_core::words::Text;
use wasm_bindgen::JsValue;

/// Why something was not kept or found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StoreError {
    /// The device has no room left; what stood there still stands.
    Full,
    /// The browser has no database to give here, as in some frames and private windows.
    Unavailable,
    /// Another page with an older build holds the database and does not let go.
    Blocked,
    /// A newer build has kept its records here; this one would misread them.
    Newer,
    /// Under this name stands something that was not to be written over.
    Overtaken(String),
    /// What stands under this name cannot be read by this build; it stays as it is.
    Unreadable(String),
    /// The browser failed without saying why.
    Failed,
}

impl StoreError {
    /// What to tell people.
    pub fn text(&self) -> Text {
        Text::new(match self {
            Self::Full => "store.full",
            Self::Unavailable => "store.unavailable",
            Self::Blocked => "store.blocked",
            Self::Newer => "store.newer",
            Self::Overtaken(_) => "store.overtaken",
            Self::Unreadable(_) => "store.unreadable",
            Self::Failed => "store.failed",
        })
    }

    /// What stopped the database from opening. Browsers refuse in several ways where they keep nothing for a page.
    pub(super) fn at_opening(error: &Error) -> Self {
        match name(error).as_deref() {
            Some("VersionError") => Self::Newer,
            Some("QuotaExceededError") => Self::Full,
            _ => Self::Unavailable,
        }
    }

    /// The same for an exception as the browser threw it.
    pub(super) fn of_exception(exception: &JsValue) -> Self {
        match name_of(exception).as_deref() {
            Some("QuotaExceededError") => Self::Full,
            _ => Self::Failed,
        }
    }
}

impl From<Error> for StoreError {
    fn from(error: Error) -> Self {
        match name(&error).as_deref() {
            Some("QuotaExceededError") => Self::Full,
            _ => Self::Failed,
        }
    }
}

/// The name of the exception behind an error.
fn name(error: &Error) -> Option<String> {
    match error {
        Error::DomException(exception) => Some(exception.name()),
        Error::AddFailed(cause)
        | Error::DeleteFailed(cause)
        | Error::GetAllFailed(cause)
        | Error::GetAllKeysFailed(cause)
        | Error::GetFailed(cause)
        | Error::IndexedDbNotFound(cause)
        | Error::IndexedDbOpenFailed(cause)
        | Error::ObjectStoreNotFound(cause)
        | Error::TransactionOpenFailed(cause)
        | Error::UpdateFailed(cause) => name_of(cause),
        _ => None,
    }
}

fn name_of(exception: &JsValue) -> Option<String> {
    Reflect::get(exception, &JsValue::from_str("name"))
        .ok()?
        .as_string()
}
