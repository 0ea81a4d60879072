//! What people say and measure: types, limits, document versions.
//!
//! Invariant: an answer never given is absent, never a guess stored as an answer.

mod check;
mod choices;
mod document;
mod fields;
mod link;
mod read;
mod workshop;

pub use check::*;
pub(crate) use choices::choice;
pub use choices::*;
pub use document::*;
pub use fields::*;
pub use link::*;
pub use read::*;
pub use workshop::*;
