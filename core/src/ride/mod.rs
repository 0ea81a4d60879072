//! How the bike moves: over ground, on its tyres, springs and dampers, with its rider on it.
//!
//! [`bike`] holds what is ridden, one set-up per lane; [`model`] its equations of motion; [`ground`] what it is ridden
//! over; [`run`] rides it and hands over a [`crate::feel::Sample`] at every step. Nothing is kept and nothing allocated on the way, so that
//! hundreds of rides can be asked for while a rider waits.
//!
//! **The model.** Five heights or angles move: the sprung mass up and in pitch, both wheels up, and the rider up. Angles
//! are small, wheels move vertically, and the speed along the course is given. A wheel also moves back as it rises: along the
//! rake at the front, about the swingarm's pivot at the rear. The mass this adds to the wheel is left out, but the work
//! that braking and driving do on that way is in, as a force that pulls the suspension together or apart (see [`parts::Parts`]).
//!
//! **Time.** Runge and Kutta's classical fourth-order step of fixed length, [`run::STEP_S`] unless told otherwise. Friction and the plate of a
//! mid-valve depend on where they came from and are carried from step to step ([`friction`]).

pub mod bike;
mod curve;
pub mod error;
pub mod friction;
pub mod ground;
pub mod model;
pub mod parts;
mod put_together;
pub mod rider;
pub mod run;

pub use bike::{Bike, Candidate, Tyres};
pub use error::RideError;
pub use ground::Course;
pub use rider::Rider;
pub use run::{ride, trace};
