//! What a workshop says about itself: who it is, what it offers at what price, what it asks besides, how its page looks
//! and where intakes go. One document, versioned, and nothing in it that is run.

mod answers;
mod check;
mod colour;
mod document;
mod offer;
mod parcel;
mod shelf;

pub use answers::answers_in;
pub use check::{LARGEST_WORKSHOP, Problems, read};
pub use colour::{Colour, LEAST_CONTRAST};
pub use document::*;
pub use parcel::{PARCEL_VERSION, Parcel};
pub use shelf::{Nearest, nearest};
