//! The workshop's settings: the document as it stands in the boxes of a form, and how it is kept on this device.

mod draft;
mod kept;

pub use draft::{AskDraft, Draft, PRICES, high_of};
pub use kept::{KEPT_AS, Kept};
