//! Rides in a worker of their own, so that the page stays quick meanwhile.
//!
//! `worker` is the worker's end and `link` the page's end of one line; `message` is what goes over it. `ride` is
//! how far it has come, without a browser; `rider` keeps worker and result for all pages; `progress` shows it; `trial` has
//! one change ridden in a worker of its own.

mod link;
mod message;
mod progress;
mod ride;
mod rider;
mod trial;
mod worker;

pub use message::Told;
pub use progress::RideProgress;
pub use ride::Event;
pub use rider::Rider;
pub use trial::{Trial, use_trial};
pub use worker::{is_worker, serve};
