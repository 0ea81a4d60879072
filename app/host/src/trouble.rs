//! What went wrong, and what to do about it.

use std::fmt;

/// A failure a person can act on. Shown as two sentences; never as a backtrace.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trouble {
    /// What happened, with the names and numbers involved.
    what: String,
    /// The next step for whoever reads it.
    cure: String,
}

impl Trouble {
    /// Pairs what happened with what to do about it.
    pub fn new(what: impl Into<String>, cure: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            cure: cure.into(),
        }
    }

    /// A file or folder that could not be read, written or moved.
    pub fn file(doing: &str, path: &std::path::Path, error: &std::io::Error) -> Self {
        Self::new(
            format!("{doing} {} failed: {error}.", path.display()),
            "Check that the folder exists, that you may write there, and that the disk has room.",
        )
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n{}", self.what, self.cure)
    }
}

impl std::error::Error for Trouble {}
