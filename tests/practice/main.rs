//! Checks against common practice: figures of the trade, from memory, without a printed source.
//!
//! They say that the model gives what a practitioner would expect, within the width of practice. They do not
//! say that it is precise.

mod clickers;
mod damper;
mod feel;
mod gas;
mod rates;
mod reference;

#[path = "../rides/bikes.rs"]
mod bikes;
