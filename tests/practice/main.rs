//! Checks against common practice: figures of the trade, from memory, without a printed source.
//!
//! They say that the model gives what a practitioner would expect, within the width of practice. They do not
//! say that it is precise.

mod changes;
mod clickers;
mod damper;
mod damper_law;
mod feel;
mod gas;
mod rates;
mod remedies;

#[allow(dead_code, reason = "the checks of the motion use the rest")]
#[path = "../rides/bikes.rs"]
mod bikes;

use bikes::reference;
