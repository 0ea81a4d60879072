//! Two programs on one page: the questions', which comes first, and the advice's, which comes when there is time.
//!
//! The questions' program draws all that stands on every page, holds the answers and keeps them on the device. Where an
//! address leads to the advice, it leaves a stage free (`lending`) on which the advice's program draws (`guest`).
//! `fetching` gets that program, in idle time or when it is wanted; `line` is what the two say to each other: events on
//! the window that carry text. Neither can call the other or see its memory, so nothing else of them has to fit together.

mod fetching;
mod guest;
mod lending;
pub mod line;

pub use fetching::{Arrival, Fetch, use_advice_program};
pub use guest::start;
pub use lending::Stage;
pub use line::on_unsent;
