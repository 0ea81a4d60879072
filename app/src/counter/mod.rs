//! The workshop's counter: riders' intakes on a desk, what was put right, done and heard back.
//!
//! Without a browser: `job` is what is kept about one rider and `told` how two copies of it come together; `name` is what
//! a job is kept under; `change` is everything that can be told about it and `limits` how much of it; `bring` reads what
//! comes in and `file` the whole desk; `find` searches and sorts, `table` writes the summary. In a browser: `keeper` keeps
//! the desk on this device, `shell` and `route` hold page and address together, `dropping` takes files dropped on them, and
//! `pages` draws it.

mod asking;
pub(crate) mod bring;
mod change;
mod dropping;
pub(crate) mod file;
pub(crate) mod find;
mod intaken;
pub(crate) mod job;
mod keeper;
pub(crate) mod limits;
pub(crate) mod merge;
pub(crate) mod name;
mod opened;
mod pages;
pub(crate) mod route;
mod settings;
mod shell;
pub(crate) mod table;
mod told;

#[cfg(test)]
mod words_test;

use sagwright_core::words::{Book, Language};

use crate::words::{self, ADVISING};

pub use shell::start;

/// The counter's own sentences.
const ENGLISH: &str = include_str!("../../words/en-counter.json");

/// Speaks with the counter's sentences beside those of the site.
pub fn speak() {
    let book = (ADVISING.english)().and(Book::of_tables(&[ENGLISH]));
    words::speak(Language::English, book, '.');
}
