//! What the rider has said so far, and every way it can change: pure, without a browser.

mod action;
mod adopt;
mod lines;
mod order;
mod saved;
mod slot;
mod subject;
mod trouble;
mod typed;
mod wizard;

#[cfg(test)]
mod tests;

pub use action::Action;
pub use lines::{Line, Value, checked_lines, label, lines};
pub use order::{Page, Section, applies};
pub use saved::{SavedError, from_saved, to_file, to_saved};
pub use slot::{Aspect, CANNOT_SAY, Slot};
pub use subject::Subject;
pub use trouble::{Offer, Trouble, troubles};
pub use wizard::{Wizard, fields_of};
