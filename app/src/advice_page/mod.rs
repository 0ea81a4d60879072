//! The advice, top to bottom: what to do, then why.
//!
//! `view` puts the sections in order, one file per section; `reason`, `signal`, `chances`, `units` and `price` are
//! what several sections share. The page decides nothing: it lays out what the core has said, in the reader's units.

mod breakaway;
mod causes;
mod chances;
mod contents;
mod evidence;
mod nearest;
mod next_check;
mod paper;
mod price;
mod reason;
mod remedies;
mod rides;
mod settings;
mod shown;
mod signal;
mod stop;
mod units;
mod view;
mod voice;

#[cfg(test)]
mod words_test;

pub use chances::{chance, moved_bar};
pub use contents::{Part, heading};
pub use next_check::next_check;
pub use paper::worth;
pub use price::minutes;
pub use reason::{figure, range};
pub use rides::feel;
pub use shown::shown;
pub use signal::grouped as cautions;
pub use units::unit_switches;
pub use view::AdviceView;
pub use voice::Voice;

#[cfg(test)]
pub use words_test::{no_reason, voice as test_voice};
