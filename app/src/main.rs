//! The wizard and the advice in the browser.
//!
//! `state` holds what was said and how it changes, without a browser; `pages` and `inputs` draw it;
//! `drawings` shows how to measure; `wear` is what colours the page wears;
//! `shell` holds page and address together; `keeping`, `store` and `offline` keep answers, records and site on the device; `advising` asks
//! the core, `riding` has it ride in a worker, `advice_page` and `pictures` show what it says, `checking` has the next check
//! answered there, `taking` hands it on;
//! every sentence is in `words/`.

mod advice_page;
mod advising;
mod browser;
mod calm;
mod checking;
#[allow(dead_code, reason = "no page shows it yet")]
mod counter;
mod desk;
mod drawings;
mod examples;
mod inputs;
mod keeping;
mod notices;
mod offline;
mod pages;
mod pictures;
mod riding;
mod route;
mod shell;
mod state;
#[allow(dead_code, unused_imports, reason = "no page keeps records yet")]
mod store;
mod taking;
mod wear;
mod words;

#[cfg(test)]
mod words_test;

/// The page and its worker run the same program; each does its own part of it.
fn main() {
    if riding::is_worker() {
        riding::serve();
    } else {
        shell::start();
    }
}
