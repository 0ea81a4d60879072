//! This page in a frame on another page: what it tells that page and hears from it (docs/embedding.md).
//!
//! `message` judges what is heard, `look` what may be worn; here is the browser's end. The questions' program holds the one
//! line to the page around; what the rider hands over comes from the advice's. The two speak by events on the window, as
//! everywhere (`stage`).

mod line;
mod look;
mod message;

pub use line::{around, begin, hand, on_answered, step};
#[cfg(feature = "readers")]
pub use look::Look;
#[cfg(feature = "readers")]
pub use message::{Message, Said};
