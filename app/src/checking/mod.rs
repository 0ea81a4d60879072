//! The next check, answered on the advice page itself, and what the answer moved.
//!
//! `draft` holds what is being answered until it is used; `course` is which checks were answered, taken back or put
//! aside, without a browser; `moved` compares the causes before and after; `form` and `section` draw them.

mod course;
mod draft;
mod form;
mod moved;
mod section;

pub use course::Course;
pub use moved::{Moved, Shift};
pub use section::{CheckSection, checks_of};
