//! The workshop that this page stands for, where its address names one: what it asks besides, and how a rider's answers
//! reach it. Nothing goes anywhere before the rider has agreed to it and pressed a button.

mod courier;
mod letter;
mod look;
mod outbox_page;
mod questions;
mod send_page;
mod served;
mod settings;
mod ways;
mod wire;

#[cfg(test)]
mod words_test;

pub use courier::{Courier, use_courier};
pub use look::{about_workshop, names, to_send};
pub use questions::{QuestionsPage, extra_heading, extra_rows, has_questions};
pub use send_page::SendPage;
pub use served::{Served, offers};
pub use settings::{begin, language_offered, languages, units, workshop};
