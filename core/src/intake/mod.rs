//! What people say and measure: types, limits, document versions.
//!
//! Invariant: an answer never given is absent, never a guess stored as an answer.

mod check;
mod checked;
mod choices;
mod document;
mod extra;
mod fields;
mod link;
mod read;

pub use check::*;
pub use checked::*;
pub(crate) use choices::choice;
pub use choices::*;
pub use document::*;
pub use extra::{ExtraAnswer, LONGEST_ASKED, LONGEST_EXTRA, MOST_EXTRA, is_extra_id};
pub use fields::*;
pub use link::*;
pub use read::*;
pub(crate) use read::{MOST_PROBLEMS, of_version, problem as misfit_at, whole};
