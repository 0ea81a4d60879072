//! What happens in the browser: the rider's wizard and advice, and the workshop's counter.
//!
//! Each is a program of its own, so that nobody downloads what they do not need: [`questions`], [`advice`] and [`workshop`].
//! The first two share the riders' page (`stage`).
//!
//! `state` holds what was said and how it changes, without a browser; `pages` and `inputs` draw it;
//! `drawings` shows how to measure; `wear` is what colours the page wears, `language` what it speaks;
//! `shell` holds page and address together; `begun` tells who only looks from who begins; `keeping`, `store` and `offline` keep answers, records and site on the device; `advising` asks
//! the core, `riding` has it ride in a worker, `advice_page` and `pictures` show what it says, `checking` has the next check
//! answered there, `taking` hands it on, `hosted` is what a workshop
//! whose page this is asks and gets, `framed` speaks with the page around where there is one, `track` is the log at the track; `counter` is the workshop's own;
//! every sentence is in `words/`.

mod advice_page;
mod advising;
mod begun;
mod browser;
mod calm;
mod checking;
mod counsel;
mod counter;
mod desk;
mod drawings;
mod examples;
mod film;
mod framed;
mod hosted;
mod inputs;
mod keeping;
mod language;
mod later;
mod notices;
mod offline;
mod pages;
mod pictures;
mod pieces;
#[cfg(feature = "readers")]
pub mod readers;
mod riding;
mod route;
mod shell;
mod stage;
mod state;
mod store;
mod taking;
mod tasks;
mod track;
mod wear;
mod what_if;
mod words;

#[cfg(test)]
mod words_test;

/// The riders' first program: the questions and all that stands around every page.
pub fn questions() {
    shell::start();
}

/// The riders' second program, which draws where the first leaves it room. The page and its worker run the same one; each does
/// its own part of it.
pub fn advice() {
    run(stage::start);
}

/// The workshop's program, on its page and in its worker.
pub fn workshop() {
    run(counter::start);
}

fn run(start: fn()) {
    if riding::is_worker() {
        riding::serve();
    } else {
        start();
    }
}
