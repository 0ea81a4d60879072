//! The answer: numbers with reasons, causes with evidence, remedies with effects, cautions.

mod answer;
mod figure;
mod picture;

pub use answer::*;
pub use figure::*;
pub use picture::*;
