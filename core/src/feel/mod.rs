//! What the rider notices of a ride, in figures.
//!
//! A ride hands over a [`Sample`] at every step; [`Feel`] gathers the [`Metrics`] as it goes, without keeping the ride.
//! [`weighting`] says how strongly people feel which frequency, [`mod@filter`] makes that run along with the ride, and
//! [`exposure`] adds up a day of it.

mod bottoming;
mod bumps;
#[cfg(test)]
mod closed_form;
mod dive;
mod ends;
pub mod exposure;
pub mod filter;
mod gather;
mod gatherer;
mod grip;
mod kick;
mod metrics;
mod packing;
mod sample;
mod travel;
mod turns;
mod vibration;
mod wallow;
pub mod weighting;

pub use ends::Ends;
pub use gatherer::Feel;
pub use metrics::Metrics;
pub use sample::{AtRest, Clock, Sample};
