//! What to do: remedies from free to wholesale, what each is worth here.

pub mod catalogue;
mod ladder;
mod list;
pub mod search;

pub use ladder::{Rung, ladder};
pub use list::{RemedyId, Tier};
