//! The advice, top to bottom: what to do, then why.
//!
//! `view` puts the sections in order, one file per section; `reason`, `signal`, `units` and `price` are what several
//! sections share. The page decides nothing: it lays out what the core has said, in the reader's units.

mod breakaway;
mod causes;
mod contents;
mod nearest;
mod next_check;
mod paper;
mod price;
mod reason;
mod remedies;
mod rides;
mod settings;
mod signal;
mod stop;
mod units;
mod view;
mod voice;

#[cfg(test)]
mod words_test;

pub use reason::figure;
pub use view::AdviceView;
pub use voice::Voice;
