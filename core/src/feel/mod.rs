//! What the rider notices of a ride, in figures.
//!
//! A ride hands over a [`Sample`] at every step and the figures are gathered as it goes, without keeping the ride.

mod sample;

pub use sample::{AtRest, Clock, Sample};
