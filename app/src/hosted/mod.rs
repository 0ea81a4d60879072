//! The workshop that this page stands for, where its address names one: what it asks besides, and how a rider's answers
//! reach it. Nothing goes anywhere before the rider has agreed to it and pressed a button.
//!
//! What stands on every page and among the questions is of the questions' program; handing over (`send_page`, `ways`,
//! `outbox_page`) and the `courier` are of the advice's, so that there is one courier on a page. It tells the first
//! program what is still `unsent`.

mod around;
mod courier;
mod dress;
mod letter;
mod look;
mod outbox_page;
mod questions;
mod send_page;
mod served;
mod settings;
mod unsent;
mod ways;
mod wire;

#[cfg(test)]
mod words_test;

pub use courier::{Bag, Courier, Hearing};
pub use dress::{dress, put_on};
pub use look::{about_workshop, names, send_heading};
pub use questions::{QuestionsPage, extra_heading, extra_rows, has_questions};
pub use send_page::{SendPage, to_send};
pub use served::{counts, offers, serves};
pub use settings::{begin, language_offered, languages, trouble, units, workshop};
pub use unsent::{Unsent, Why};
