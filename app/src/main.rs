//! The wizard and the advice in the browser.
//!
//! `state` holds what was said and how it changes, without a browser; `pages` and `inputs` draw it;
//! `shell` holds page and address together; every sentence is in `words/en.json`.

mod browser;
mod desk;
mod examples;
mod inputs;
mod keeping;
mod pages;
mod route;
mod shell;
mod state;
mod words;

fn main() {
    shell::start();
}
