//! What must hold for every bike, rider and set-up, tried on many.

mod parts;
mod refusals;
mod stance;
