//! What is wrong: causes, the evidence for and against each, and the belief that follows.

mod list;

pub use list::Cause;
