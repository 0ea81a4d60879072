//! The answer: numbers with reasons, causes with evidence, remedies with effects, cautions.

mod answer;

pub use answer::*;
