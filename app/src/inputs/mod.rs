//! The few kinds of input there are: a number with its unit, one out of several, several at once.

mod number;
mod radios;
mod ticks;
mod units;

pub use number::NumberInput;
pub use radios::Radios;
pub use ticks::Tick;
pub use units::UnitSwitch;
