//! The parts that make force, each on its own: springs, gas, friction, stops, the leverage of the rear.
//!
//! [`class`] says what a kind of bike is usually made of, [`machine`] what this bike is made of,
//! [`setup`] what is screwed, poured and pumped into it. [`fork`] and [`shock`] put the parts
//! together into one force per end of the bike. Where the bike then sits is the matter of `stance`.
//!
//! Signs and places: fork stroke is measured along the leg from full extension, rear travel is the
//! vertical travel of the axle from full extension; both are positive in compression. Forces are
//! positive when they hold the bike up. Pressures say gauge or absolute in their name.

pub mod atmosphere;
pub mod class;
mod classes;
pub mod coil;
pub mod damping;
pub mod fork;
pub mod friction;
pub mod gas;
pub mod leverage;
pub mod limits;
pub mod machine;
pub mod setup;
pub mod shock;
pub mod stops;
pub mod trapped_air;
pub mod tyre;

pub use atmosphere::{Air, Surroundings};
pub use class::Class;
pub use limits::OutOfRange;
pub use machine::Machine;
pub use setup::{ForkSet, ForkSpring, SetUp, ShockSet};
pub use tyre::Tyre;
