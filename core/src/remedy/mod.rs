//! What to do: remedies from free to wholesale, what each is worth here.
//!
//! [`apply`] does a remedy to a bike, [`remedied`] rides what comes of it, [`relief`] says how much of this rider's complaints
//! goes under the belief, [`ladder`] puts them in order, and [`restack`] turns damping that does not suit into shims.

pub mod apply;
pub mod catalogue;
mod ladder;
mod list;
mod reach;
pub mod relief;
pub mod remedied;
pub mod restack;
pub mod search;

pub use ladder::{Rung, ladder};
pub use list::{RemedyId, Tier};
pub use remedied::Remedied;
