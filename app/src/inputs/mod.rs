//! The few kinds of input there are: a number with its unit, one out of several, several at once.
//!
//! They remember nothing, so they are functions of the desk: each component of its own is half a kilobyte of download.

mod number;
mod radios;
mod ticks;
mod units;

pub use number::number_input;
pub use radios::Radios;
pub use ticks::tick;
