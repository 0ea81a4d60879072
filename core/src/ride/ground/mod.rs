//! The ground, and how fast it is ridden over.
//!
//! [`features`] knows what each kind of ground looks like and how fast riders go there, [`Course`] is one piece of it made
//! ready to ride: seeded, the same every time. [`envelope`] makes of bare ground what a wheel feels of it, [`profile`] keeps it
//! smooth, [`roughness`] is random ground of ISO 8608 [`dice`] where
//! the chances come from, and [`fit`] makes it as hard as the bike's riders do.

pub mod course;
pub mod dice;
pub mod envelope;
pub mod features;
pub mod fit;
pub mod profile;
pub mod roughness;

pub use course::{Course, Riding, Start};
pub use features::Feature;
