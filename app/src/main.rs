//! The wizard and the advice in the browser.
//!
//! `state` holds what was said and how it changes, without a browser; `pages` and `inputs` draw it;
//! `shell` holds page and address together; `advising` asks the core, `advice_page` and `pictures` show what it says;
//! every sentence is in `words/`.

mod advice_page;
mod advising;
mod browser;
mod desk;
mod examples;
mod inputs;
mod keeping;
mod pages;
mod pictures;
mod route;
mod shell;
mod state;
mod words;

#[cfg(test)]
mod words_test;

fn main() {
    shell::start();
}
