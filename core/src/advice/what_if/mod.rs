//! What if: something changed on the bike as it stands, seen standing still at once, and ridden when asked.
//!
//! `levers` is what can be moved and how far, `look` what shows standing still, `ridden` what rides show.

mod levers;
mod look;
mod ridden;
#[cfg(test)]
mod tests;

pub use levers::{Lever, Movable, Trying, Workbench};
pub use look::{CLEAR_STEPS, Compared, FeltMove, WhatIf};
pub use ridden::{WhatIfRidden, ride_what_if};
