//! The log at the track: one change, one lap, better or worse, and what to change next.
//!
//! `log` is where the rider is and what follows from each press, without a browser; `hold` opens it and goes on with it,
//! `keeper` keeps it on the device and hears of other pages; `page` puts `next`, `judging`, `laps` and `earlier` on the
//! screen; `told` is the log for a message and for paper. The laps themselves are answers like all others, so that the file,
//! the link and the advice have them too.

mod earlier;
mod hold;
mod judging;
mod keeper;
mod laps;
pub(crate) mod log;
mod next;
mod page;
mod told;

#[cfg(test)]
mod words_test;

pub use page::TrackPage;
pub use told::{laps_as_text, laps_on_paper};
